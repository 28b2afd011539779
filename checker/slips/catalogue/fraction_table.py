"""The documented slips with fractions, and in arithmetic."""

from __future__ import annotations

from checker.slips.catalogue import fraction_rules as fractions
from checker.slips.catalogue import number_rules as numbers
from checker.slips.catalogue.entries import ExpressionSlip

__all__ = ["FRACTION_SLIPS"]

FRACTION_SLIPS: tuple[ExpressionSlip, ...] = (
    ExpressionSlip(
        "fraction-cancel-term", fractions.term_cancelled, "cancelled-term",
        "only a factor of the whole top cancels, not one of its terms",
        ("M82", "R11", "LAM", "OS m82534"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-cancel-terms-both", fractions.terms_cancelled, "cancelled-term",
        "only factors cancel, not terms",
        ("M82", "R11"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-divide-one-term", fractions.one_term_divided, "divide-each-term",
        "every term of the top is divided",
        ("R11", "LAM"), telling=True,
    ),
    ExpressionSlip(
        "fraction-add-tops-bottoms", fractions.tops_and_bottoms_added, "fraction-sum",
        "fractions are added over a common bottom; the bottoms are not added",
        ("M82", "MaE MaE08"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-top-not-scaled", fractions.tops_not_scaled, "fraction-sum",
        "when the bottom is multiplied, the top is multiplied too",
        ("MaE MaE09",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-split-bottom", fractions.bottom_split, "fraction-sum",
        "a fraction can be split along its top only",
        ("M82", "LAM"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-minus-spread", fractions.minus_at_bar, "sign-bracket",
        "the bar works as a bracket: the minus turns every term of the top",
        ("OS m82534", "T24"), telling=True,
    ),
    ExpressionSlip(
        "fraction-divide-no-flip", fractions.not_turned_over, "fraction-division",
        "dividing by a fraction is multiplying by it turned over",
        ("MaE MaE15",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-flip-the-first", fractions.first_turned_over, "fraction-division",
        "the fraction that one divides by is turned over, not the first",
        ("MaE MaE15",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-multiply-both", fractions.both_multiplied, "fraction-product",
        "a whole number multiplies the top only",
        ("MaE MaE13",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-reciprocal-of-sum", fractions.reciprocal_spread, "fraction-sum",
        "one over a sum is not the sum of the single reciprocals",
        ("M82",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "fraction-opposites-cancel", fractions.opposites_cancelled, "sign-product",
        "a difference divided by its opposite is -1",
        ("OS m81392",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "subst-no-bracket", numbers.substituted_without_bracket, "sign-product",
        "the square of a negative number is positive",
        ("MaE MaE32", "LAM"),
    ),
    ExpressionSlip(
        "subst-juxtaposed", numbers.digits_side_by_side, "product",
        "numbers side by side after a substitution are multiplied",
        ("B84", "MaE MaE55"),
    ),
    ExpressionSlip(
        "order-add-first", numbers.added_first, "operation-order",
        "multiplication comes before addition",
        ("S84", "MaE MaE34"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "order-reversed-subtraction", numbers.subtracted_backwards, "like-terms",
        "the second number is taken from the first, so the sign counts",
        ("PUP", "MaE MaE31"),
    ),
    ExpressionSlip(
        "arith-sign-of-quotient", numbers.quotient_sign, "sign-product",
        "the sign of a quotient comes from the signs of both numbers",
        ("PUP", "MaE MaE19"),
    ),
)
