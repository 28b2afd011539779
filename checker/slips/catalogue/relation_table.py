"""The documented slips in solving."""

from __future__ import annotations

from checker.slips.catalogue import relation_rules as relations
from checker.slips.catalogue.entries import RelationSlip

__all__ = ["RELATION_SLIPS"]

RELATION_SLIPS: tuple[RelationSlip, ...] = (
    RelationSlip(
        "linear-transpose-sign", relations.moved_unchanged, "sign-moved",
        "a term that changes sides changes its sign",
        ("S84", "PS90", "H02", "K92"),
    ),
    RelationSlip(
        "linear-transpose-sign-variable", relations.moved_unchanged, "sign-moved",
        "a term that changes sides changes its sign",
        ("S84", "H02", "MaE MaE33"),
    ),
    RelationSlip(
        "linear-redistribution", relations.moved_unchanged, "sign-moved",
        "what is added on one side is added on the other",
        ("K92", "H02"),
    ),
    RelationSlip(
        "linear-switch-addends", relations.moved_unchanged, "sign-moved",
        "an addition is undone by subtracting on both sides",
        ("K92", "H02", "PUP"),
    ),
    RelationSlip(
        "linear-divide-by-subtracting", relations.divided_by_subtracting, "arithmetic",
        "a number times a letter is undone by dividing",
        ("S84", "PS90", "PUP"),
    ),
    RelationSlip(
        "linear-divide-upside-down", relations.divided_upside_down, "arithmetic",
        "the other side is divided by the number before the letter, not the other way round",
        ("S84", "PS90", "H02", "PUP"),
    ),
    RelationSlip(
        "linear-divide-sign-lost", relations.sign_lost_in_dividing, "sign-product",
        "dividing by a negative number turns the sign",
        ("PUP", "H02"),
    ),
    RelationSlip(
        "linear-minus-x", relations.minus_letter, "sign-product",
        "both sides change their sign",
        ("PUP",),
    ),
    RelationSlip(
        "linear-divide-one-term", relations.one_term_divided, "divide-each-term",
        "every term of both sides is divided",
        ("S84", "PS90", "LAM"),
    ),
    RelationSlip(
        "linear-multiply-one-term", relations.one_term_multiplied, "multiply-each-term",
        "every term of both sides is multiplied",
        ("S84", "H02"),
    ),
    RelationSlip(
        "linear-divide-for-multiply", relations.divided_for_multiplied, "product",
        "a division is undone by multiplying",
        ("S84", "PUP"),
    ),
    RelationSlip(
        "linear-letter-dropped", relations.letter_dropped, "letter-lost",
        "the letter stays with its number",
        ("PUP",),
    ),
    RelationSlip(
        "linear-both-sides-same-op-once", relations.one_side_only, "one-side-only",
        "what is done to one side is done to the other",
        ("K92", "MaE MaE51"),
    ),
    RelationSlip(
        "linear-collect-coefficients-to-one", relations.coefficient_subtracted, "arithmetic",
        "the number before the letter is divided by, not subtracted",
        ("S84",), telling=True,
    ),
    RelationSlip(
        "linear-bracket-divided-wrong", relations.bracket_divided_by_subtracting, "arithmetic",
        "the factor before the bracket is divided by, not subtracted",
        ("S84", "PS90"), telling=True,
    ),
    RelationSlip(
        "quad-root-one-lost", relations.positive_root_only, "root-lost",
        "a square has a positive and a negative root",
        ("VC06", "LAM", "OS m82551"), telling=True,
    ),
    RelationSlip(
        "quad-divide-by-x", relations.divided_by_letter, "root-lost",
        "dividing by the letter loses the root 0",
        ("VC06", "LAM"), telling=True,
    ),
    RelationSlip(
        "quad-roots-sign", relations.root_signs, "sign-product",
        "each factor is set to zero, which turns the sign of its number",
        ("VC06",), telling=True,
    ),
    RelationSlip(
        "quad-product-not-zero", relations.product_not_zero, "product-not-zero",
        "only a product that is zero splits into its factors",
        ("M82", "VC06"), telling=True, whole=True,
    ),
    RelationSlip(
        "quad-half-the-square", relations.half_for_root, "arithmetic",
        "a square is undone by its root, not by halving",
        ("VC06", "A82"), telling=True,
    ),
    RelationSlip(
        "quad-formula-sign-b", relations.formula_sign_of_b, "sign-product",
        "the formula starts with minus b",
        ("PRACTICE",), telling=True, detail=relations.detail_of_b,
    ),
    RelationSlip(
        "quad-formula-disc-sign", relations.formula_sign_under_root, "sign-product",
        "under the root stands b squared minus 4ac, with the signs of a and c",
        ("PRACTICE",), telling=True, detail=relations.detail_under_root,
    ),
    RelationSlip(
        "quad-formula-denominator-partial", relations.formula_part_divided, "divide-each-term",
        "the whole top of the formula is divided by 2a",
        ("LAM",), telling=True, detail=relations.detail_of_bottom,
    ),
    RelationSlip(
        "complete-square-not-balanced", relations.square_not_balanced, "one-side-only",
        "the number that completes the square is added on both sides",
        ("OS m81405",), telling=True,
    ),
    RelationSlip(
        "fraction-invert-each-term", relations.reciprocal_term_by_term, "fraction-sum",
        "a sum of fractions is added first and turned over as a whole",
        ("M82",), telling=True, whole=True,
    ),
    RelationSlip(
        "surd-square-both-sides-termwise", relations.squared_term_by_term, "square-of-sum",
        "a side is squared as a whole, not term by term",
        ("M82", "OS m82551"), telling=True, whole=True,
    ),
    RelationSlip(
        "ineq-negative-no-turn", relations.turned_or_not, "inequality-direction",
        "dividing by a negative number turns the sign round",
        ("TA01", "OS m81366"), telling=True,
    ),
    RelationSlip(
        "ineq-turned-for-negative-answer", relations.turned_or_not, "inequality-direction",
        "the sign turns only when multiplying or dividing by a negative number",
        ("TA01",), telling=True,
    ),
    RelationSlip(
        "ineq-minus-x", relations.turned_or_not, "inequality-direction",
        "changing the sign of both sides turns the sign round",
        ("TA01",), telling=True,
    ),
    RelationSlip(
        "ineq-square", relations.root_of_both, "root-lost",
        "a square below a number lies between its two roots",
        ("TA01",), telling=True, whole=True,
    ),
    RelationSlip(
        "ineq-multiply-by-letter", relations.multiplied_by_letter, "inequality-direction",
        "the letter may be negative, which would turn the sign",
        ("TA01",), telling=True, whole=True,
    ),
    RelationSlip(
        "abs-one-case", relations.one_case, "root-lost",
        "a number and its opposite have the same absolute value",
        ("OS m81426",), telling=True,
    ),
    RelationSlip(
        "copy-number-changed", relations.number_copied_wrong, "copied",
        "a number changed between the lines",
        ("S84",),
    ),
    RelationSlip(
        "copy-sign-changed", relations.sign_copied_wrong, "copied",
        "a sign changed between the lines",
        ("S84",),
    ),
    RelationSlip(
        "copy-power-dropped", relations.power_copied_wrong, "copied",
        "a power changed between the lines",
        ("S84",),
    ),
)
