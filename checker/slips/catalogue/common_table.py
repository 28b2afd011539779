"""Slips that teachers meet every day and that no work of the catalogue lists; common practice, no source."""

from __future__ import annotations

from checker.slips.catalogue import common_rules as common
from checker.slips.catalogue.entries import ExpressionSlip

__all__ = ["COMMON_SLIPS"]

COMMON_SLIPS: tuple[ExpressionSlip, ...] = (
    ExpressionSlip(
        "log-sum-joined", common.logs_joined, "log-law",
        "the sum of two logarithms is the logarithm of the product, the difference that of the quotient",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-sum-multiplied", common.logs_multiplied, "log-law",
        "the sum of two logarithms is the logarithm of the product, the difference that of the quotient",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "log-number-over-both", common.number_over_both_logs, "log-law",
        "a number before a logarithm belongs to that logarithm only, as a power of what is in it",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "power-after-product", common.number_taken_into_power, "operation-order",
        "the power comes before the product, so the factor stays outside or goes in as its root",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "left-to-right-product", common.subtracted_before_multiplied, "operation-order",
        "multiplication comes before addition and subtraction",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "powers-of-numbers-added", common.powers_of_numbers_added, "power-law",
        "powers are collected like any other term: the base is not added",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "cancelled-in-one-term", common.cancelled_in_one_term, "cancelled-term",
        "every term of the top is divided by the bottom, not only the one with the factor",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "wrong-factor-left", common.wrong_factor_left, "sign-product",
        "the top is the sum times the difference, so the bracket that is not below stays",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "number-times-root-power", common.root_of_power, "power-law",
        "a power with a fraction is a root, not a product with the fraction",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "negative-root-power", common.negative_fraction_power, "power-law",
        "a negative power is a reciprocal, not a negative number",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "pythagoras-not-squared", common.pythagoras_not_squared, "power-law",
        "the squares of sine and cosine add up to 1, so what is left is a square",
        ("PRACTICE",), telling=True, whole=True,
    ),
    ExpressionSlip(
        "root-product-squared", common.square_of_root_squared, "power-law",
        "a root times itself is the number under it",
        ("PRACTICE",), telling=True, whole=True,
    ),
)
