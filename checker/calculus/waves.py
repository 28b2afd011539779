"""Products of sines and cosines of linear angles as sums of single ones, and their integrals."""

from __future__ import annotations

from fractions import Fraction as Rational

from checker.calculus.building import ZERO, added, applied, is_number, number, over, subtracted, symbol, times
from checker.calculus.parts import Factor, coefficients, linear_slope
from checker.refusals import UnsupportedError
from checker.syntax import Function, Node

__all__ = ["integrated_waves"]

_MOST_FACTORS = 8
Wave = tuple[Rational, str, Node]  # a share of "sin" or "cos" of an angle


def integrated_waves(factors: tuple[Factor, ...], name: str) -> Node:
    """The integral of a product of whole powers of sines and cosines of linear angles.

    Raises:
        UnsupportedError: it is no such product, or has too many factors.
    """
    waves: list[Wave] = [(Rational(1), "cos", ZERO)]
    count = 0
    for factor in factors:
        base = factor.base
        if not isinstance(base, Function) or base.name not in ("sin", "cos") or factor.power.denominator != 1:
            raise UnsupportedError
        count += int(factor.power)
        if factor.power < 1 or count > _MOST_FACTORS or linear_slope(base.arguments[0], name) is None:
            raise UnsupportedError
        for _ in range(int(factor.power)):
            waves = [part for wave in waves for part in _product(wave, base.name, base.arguments[0])]
    return added(*(_integrated(wave, name) for wave in waves))


def _product(wave: Wave, name: str, angle: Node) -> list[Wave]:
    share, kind, other = wave
    half = share / 2
    total, gap = added(other, angle), subtracted(other, angle)
    match kind, name:
        case "cos", "cos":
            return [(half, "cos", gap), (half, "cos", total)]
        case "sin", "sin":
            return [(half, "cos", gap), (-half, "cos", total)]
        case "sin", _:
            return [(half, "sin", total), (half, "sin", gap)]
        case _:
            return [(half, "sin", total), (-half, "sin", gap)]


def _integrated(wave: Wave, name: str) -> Node:
    share, kind, angle = wave
    parts = coefficients(angle, name)
    if parts is None or len(parts) > 2:
        raise UnsupportedError
    constant = parts[0] if parts else ZERO
    if len(parts) < 2 or is_number(parts[1], 0):
        return times(number(share), applied(kind, constant), symbol(name))
    angle = added(times(parts[1], symbol(name)), constant)
    if kind == "cos":
        return over(times(number(share), applied("sin", angle)), parts[1])
    return over(times(number(-share), applied("cos", angle)), parts[1])
