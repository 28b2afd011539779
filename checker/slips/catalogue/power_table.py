"""The documented slips with powers, roots, logarithms and functions."""

from __future__ import annotations

from checker.slips.catalogue import power_rules as powers
from checker.slips.catalogue.entries import ExpressionSlip

__all__ = ["POWER_SLIPS"]

POWER_SLIPS: tuple[ExpressionSlip, ...] = (
    ExpressionSlip(
        "index-product-multiplies", powers.powers_multiplied, "power-law",
        "powers of one base are added when they are multiplied",
        ("A82", "OS m51241"), telling=True,
    ),
    ExpressionSlip(
        "index-power-adds", powers.powers_added, "power-law",
        "a power of a power multiplies",
        ("OS m51241",), telling=True,
    ),
    ExpressionSlip(
        "index-coefficient-missed", powers.coefficient_not_raised, "power-law",
        "the power belongs to the number in the bracket too",
        ("OS m81342", "C13"), telling=True,
    ),
    ExpressionSlip(
        "index-coefficient-multiplied", powers.coefficient_times_power, "power-law",
        "a power of a number is repeated multiplication, not number times power",
        ("MaE MaE03", "A82"), telling=True,
    ),
    ExpressionSlip(
        "index-negative-as-negative", powers.negative_power_as_negative, "power-law",
        "a negative power is a reciprocal, not a negative number",
        ("C13", "MaE MaE03", "OS m81342"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "index-negative-takes-coefficient", powers.negative_power_takes_number, "power-law",
        "the power belongs to the letter only",
        ("C13", "OS m82514"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "index-zero", powers.zero_power_as_zero, "power-law",
        "anything but 0 to the power 0 is 1",
        ("C13",), telling=True,
    ),
    ExpressionSlip(
        "index-minus-squared", powers.minus_squared, "power-law",
        "the power comes before the minus",
        ("C13", "OS m82514"), telling=True,
    ),
    ExpressionSlip(
        "index-quotient-divides", powers.powers_divided, "power-law",
        "powers of one base are subtracted when they are divided",
        ("OS m51241",), telling=True,
    ),
    ExpressionSlip(
        "index-bases-multiplied", powers.bases_multiplied, "power-law",
        "the base stays as it is while the powers are added",
        ("OS m51241",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "index-half-as-half", powers.half_power_as_half, "power-law",
        "a power of one half is a square root",
        ("C13",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "index-sum-of-powers", powers.sum_of_powers, "unlike-terms",
        "powers are added when multiplying, not when adding",
        ("A82", "M82"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "surd-sum-split", powers.root_spread, "root-of-sum",
        "a root does not spread over a sum",
        ("M82", "LAM"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "surd-sum-joined", powers.roots_joined, "root-of-sum",
        "roots are joined by multiplying, not by adding",
        ("M82", "LAM"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "surd-factor-not-rooted", powers.factor_not_rooted, "power-law",
        "a square factor comes out of the root as its square root",
        ("OS m81445",), telling=True,
    ),
    ExpressionSlip(
        "surd-square-of-product", powers.root_number_not_squared, "power-law",
        "the number before the root is squared too",
        ("OS m82551",), telling=True,
    ),
    ExpressionSlip(
        "surd-square-of-sum", powers.root_square_no_middle, "square-of-sum",
        "the square of a sum has a middle term, twice the product",
        ("OS m82551", "M82"), telling=True,
    ),
    ExpressionSlip(
        "surd-conjugate-sign", powers.conjugate_sign, "sign-product",
        "a root times its negative is negative",
        ("OS m81446",), telling=True,
    ),
    ExpressionSlip(
        "surd-root-of-square", powers.root_of_square, "root-of-square",
        "the root of a square is never negative, so it is the absolute value",
        ("LAM", "OS m81445"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-of-sum", powers.log_spread, "function-of-sum",
        "the logarithm of a sum does not split; that of a product does",
        ("CW05", "LOG", "M82"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-product-as-product", powers.log_of_product_as_product, "log-law",
        "the logarithm of a product is the sum of the logarithms",
        ("CW05", "LOG"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-quotient-as-quotient", powers.log_of_quotient_as_quotient, "log-law",
        "the logarithm of a quotient is the difference of the logarithms",
        ("CW05", "LOG"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-power-of-log", powers.power_of_log_taken_down, "log-law",
        "only a power inside the logarithm comes down as a factor",
        ("CW05", "LOG"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-cancel-name", powers.log_name_cancelled, "cancelled-term",
        "the name of a function is no factor and does not cancel",
        ("CW05", "M82"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-constant-out", powers.constant_out_of_log, "log-law",
        "a factor inside a logarithm becomes a term, not a factor",
        ("CW05", "LOG"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "trig-linear", powers.constant_out_of_function, "function-of-product",
        "a number inside a function does not come out as a factor",
        ("M82", "LAM"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "trig-sum", powers.function_spread, "function-of-sum",
        "the function does not spread over a sum",
        ("M82", "LAM"), telling=True, whole=True,
    ),
    ExpressionSlip(
        "abs-sum", powers.bars_spread, "function-of-sum",
        "the bars do not spread over a sum",
        ("M82",), telling=True, whole=True,
    ),
)
