"""The documented slips with brackets, squares, factors and like terms."""

from __future__ import annotations

from checker.slips.catalogue import bracket_rules as brackets
from checker.slips.catalogue.entries import ExpressionSlip

__all__ = ["BRACKET_SLIPS"]

BRACKET_SLIPS: tuple[ExpressionSlip, ...] = (
    ExpressionSlip(
        "expand-first-only", brackets.outside_not_spread, "multiply-each-term",
        "each term in the bracket is multiplied by what stands before it",
        ("S84", "PS90", "L10", "A82"),
    ),
    ExpressionSlip(
        "expand-last-lost-coefficient", brackets.outside_not_spread, "multiply-each-term",
        "each term in the bracket is multiplied by what stands before it",
        ("PS90", "L10"),
    ),
    ExpressionSlip(
        "expand-minus-second", brackets.minus_not_spread, "sign-bracket",
        "a minus before a bracket turns the sign of each term in it",
        ("S84", "A82", "T24", "OS m81322"),
    ),
    ExpressionSlip(
        "expand-minus-bracket-product", brackets.product_sign, "sign-product",
        "the sign of a product comes from the signs of both factors",
        ("L10", "A82", "MaE MaE32", "OS m81322"),
    ),
    ExpressionSlip(
        "expand-minus-only-first", brackets.product_sign, "sign-product",
        "the negative factor multiplies every term in the bracket",
        ("L10", "A82"),
    ),
    ExpressionSlip(
        "expand-subtract-product", brackets.minus_not_spread, "sign-product",
        "the minus belongs to the factor and multiplies every term in the bracket",
        ("PS90", "T24"),
    ),
    ExpressionSlip(
        "expand-left-to-right", brackets.left_to_right, "operation-order",
        "multiplication comes before subtraction, so the factor stays with its bracket",
        ("S84", "PS90", "MaE MaE34"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "square-sum-no-middle", brackets.no_middle, "square-of-sum",
        "the square of a sum has a middle term, twice the product",
        ("M82", "A82", "P16", "LAM", "OS m82551"), telling=True,
    ),
    ExpressionSlip(
        "square-difference-as-two-squares", brackets.as_two_squares, "square-of-sum",
        "the square of a difference has a middle term and ends in a plus",
        ("M82", "MaE MaE04"), telling=True,
    ),
    ExpressionSlip(
        "square-sign-of-last", brackets.last_sign, "sign-product",
        "the square of a negative term is positive",
        ("A82",),
    ),
    ExpressionSlip(
        "square-middle-not-doubled", brackets.middle_once, "square-of-sum",
        "the product of the two terms comes twice",
        ("A82",),
    ),
    ExpressionSlip(
        "square-coefficient-not-squared", brackets.coefficient_not_squared, "power-law",
        "the number before the letter is squared too",
        ("C13", "OS m81342"),
    ),
    ExpressionSlip(
        "two-brackets-ends-only", brackets.ends_only, "dropped-term",
        "each term of one bracket multiplies each of the other",
        ("M82", "A82"),
    ),
    ExpressionSlip(
        "two-brackets-sign-of-product", brackets.product_sign, "sign-product",
        "the sign of a product comes from the signs of both factors",
        ("L10", "MaE MaE19"),
    ),
    ExpressionSlip(
        "two-brackets-middle-added-wrong", brackets.middle_sum_sign, "like-terms",
        "the two middle products are collected with their signs",
        ("MaE MaE18",),
    ),
    ExpressionSlip(
        "three-terms-one-missed", brackets.outside_not_spread, "multiply-each-term",
        "every term in the bracket is multiplied, the last one too",
        ("A82", "OS m82507"),
    ),
    ExpressionSlip(
        "power-dropped-in-product", brackets.power_dropped, "power-law",
        "a letter times itself is its square",
        ("B84", "A82"),
    ),
    ExpressionSlip(
        "cube-sum", brackets.power_spread, "square-of-sum",
        "a power does not spread over a sum",
        ("M82", "LAM"), telling=True,
    ),
    ExpressionSlip(
        "factor-sign-of-pair", brackets.pair_sign, "factor-pair",
        "the two numbers multiply to the last term and add to the middle one, signs counted",
        ("OS m81387",),
    ),
    ExpressionSlip(
        "factor-sum-only", brackets.pair_adds_only, "factor-pair",
        "the two numbers must multiply to the last term as well as add to the middle one",
        ("OS m81387",),
    ),
    ExpressionSlip(
        "factor-product-only", brackets.pair_multiplies_only, "factor-pair",
        "the two numbers must add to the middle term as well as multiply to the last one",
        ("OS m81387",),
    ),
    ExpressionSlip(
        "factor-common-left-one", brackets.common_left_out, "dropped-term",
        "a term divided by itself leaves 1",
        ("OS m81437",),
    ),
    ExpressionSlip(
        "factor-common-only-one-term", brackets.common_from_one, "divide-each-term",
        "the common factor is taken out of every term",
        ("OS m81437",),
    ),
    ExpressionSlip(
        "factor-negative-out", brackets.negative_taken_out, "sign-product",
        "taking out a negative factor turns the sign of every term left inside",
        ("OS m81437",),
    ),
    ExpressionSlip(
        "sum-of-squares-factored", brackets.sum_of_squares, "factor-pair",
        "a sum of two squares has no real factors",
        ("M82", "OS m82528"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "two-squares-root-missing", brackets.squares_without_root, "factor-pair",
        "the factors of a difference of two squares hold the square roots",
        ("OS m82528",), telling=True,
    ),
    ExpressionSlip(
        "two-squares-coefficient", brackets.coefficient_without_root, "factor-pair",
        "the square root is taken of the number before the letter too",
        ("OS m82528",), telling=True,
    ),
    ExpressionSlip(
        "collect-unlike", brackets.unlike_collected, "unlike-terms",
        "only terms with the same letters and powers are collected",
        ("B84", "S84", "L10", "P16", "K92"),
    ),
    ExpressionSlip(
        "collect-unlike-letters", brackets.letters_joined, "unlike-terms",
        "terms in different letters are not collected",
        ("B84", "L10", "P16"),
    ),
    ExpressionSlip(
        "collect-powers", brackets.powers_joined, "unlike-terms",
        "terms in different powers are not collected",
        ("B84", "A82"),
    ),
    ExpressionSlip(
        "collect-like-adds-powers", brackets.powers_joined, "like-terms",
        "adding like terms keeps the power",
        ("A82",),
    ),
    ExpressionSlip(
        "collect-letter-subtracts-away", brackets.letter_taken_away, "like-terms",
        "a letter alone stands for once that letter",
        ("B84", "S84", "L10", "P16"),
    ),
    ExpressionSlip(
        "collect-one-ignored", brackets.one_ignored, "like-terms",
        "a letter alone counts once",
        ("L10", "MaE MaE55"),
    ),
    ExpressionSlip(
        "collect-sign-with-wrong-term", brackets.sign_of_neighbour, "like-terms",
        "a sign belongs to the term that follows it",
        ("HL94", "L10"),
    ),
    ExpressionSlip(
        "collect-negative-sum", brackets.negatives_subtracted, "like-terms",
        "two negative terms add up to a larger negative term",
        ("MaE MaE32", "L10"),
    ),
    ExpressionSlip(
        "collect-minus-detached", brackets.minus_detached, "like-terms",
        "the minus belongs to the one term after it",
        ("HL94", "MaE MaE33"),
    ),
    ExpressionSlip(
        "collect-two-negatives-plus", brackets.negatives_make_plus, "like-terms",
        "two negatives make a plus in a product, not in a sum",
        ("MaE MaE19",),
    ),
)
