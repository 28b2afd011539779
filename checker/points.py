"""Points at which two expressions are tried: every sign pattern, both sides of 1 and of inner zeros."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product
from random import Random

from checker.budget import Budget, OutOfTimeError
from checker.polynomial import TooLargeError, coefficients_in
from checker.real_roots import real_roots
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Absolute, Function, Node, Postfix, Power, Root, letters, walk

__all__ = ["points_for", "whole_points"]

_SMALL = (1, 2, 3, -1, -2, 5, 4, -3, 7, 0)
_COUNTING = frozenset({"binom", "sum", "prod"})
_MAGNITUDES = (
    Fraction(1), Fraction(2), Fraction(3), Fraction(2, 7), Fraction(19, 5), Fraction(11, 3), Fraction(5, 9),
    Fraction(23, 2),
)


def whole_points(count: int) -> Iterator[tuple[int, ...]]:
    """Values of so many letters, the smallest numbers first."""
    if not count:
        yield ()
        return
    if count == 1:
        for value in (*_SMALL, *range(8, 60)):
            yield (value,)
        return
    for shift in range(40):
        # neighbours get different values, so that x - y and the like do not vanish
        yield tuple(_SMALL[(shift + 2 * at + shift * at) % 9] for at in range(count))
    random = Random(1)
    for _ in range(60):
        yield tuple(random.randint(-30, 30) for _ in range(count))


def points_for(a: Node, b: Node, names: list[str], budget: Budget, *, euler: bool) -> Iterator[dict[str, Fraction]]:
    """Points of every sign pattern, on both sides of 1 and of the zeros under roots and between bars.

    Args:
        a, b: the trees whose roots, bars and logs are looked into.
        names: the letters to give values.
        budget: time that may be spent on finding inner zeros.
        euler: is e the base of natural logarithms?
    """
    if not names:
        yield {}
        return
    random = Random(len(names))
    patterns = list(product((1, -1), repeat=len(names))) if len(names) <= 4 else [
        tuple(1 for _ in names), tuple(-1 for _ in names),
        *(tuple(random.choice((1, -1)) for _ in names) for _ in range(22)),
    ]
    per_pattern = 6 if len(names) <= 2 else 3
    for round_number in range(per_pattern):
        for signs in patterns:
            yield {
                name: sign * _MAGNITUDES[(round_number + at * (round_number + 1)) % len(_MAGNITUDES)]
                for at, (name, sign) in enumerate(zip(names, signs, strict=True))
            }
    yield from _around_inner_zeros(a, b, names, budget, euler=euler)
    for _ in range(12):
        yield {name: Fraction(random.randint(-200, 200), random.randint(1, 12)) for name in names}
    for _ in range(12):
        yield {name: Fraction(random.randint(1, 100), random.randint(90, 110)) for name in names}
    whole = random.sample(range(1, 9), 8)
    for shift in range(8):
        yield {name: Fraction(whole[(shift + at) % 8]) for at, name in enumerate(names)}
    # choices and factorials ask for whole numbers of which one is the larger
    for ordered in (names, names[::-1]) if _counts(a) or _counts(b) else ():
        for _ in range(12):
            values = sorted((random.randint(0, 12) for _ in names), reverse=True)
            yield {name: Fraction(value) for name, value in zip(ordered, values, strict=True)}


def _counts(top: Node) -> bool:
    return any(
        (isinstance(node, Postfix) and node.mark == "!") or (isinstance(node, Function) and node.name in _COUNTING)
        for node in walk(top)
    )


def _around_inner_zeros(
    a: Node, b: Node, names: list[str], budget: Budget, *, euler: bool
) -> Iterator[dict[str, Fraction]]:
    inner = [
        node.radicand if isinstance(node, Root) else node.body if isinstance(node, Absolute) else node.base
        for top in (a, b) for node in walk(top)
        if isinstance(node, Root | Absolute) or (isinstance(node, Power) and letters(node.base) and not _is_whole(node))
    ]
    inner += [
        node.arguments[0] for top in (a, b) for node in walk(top)
        if isinstance(node, Function) and node.name in ("ln", "log")
    ]
    random = Random(7)
    for node in inner[:12]:
        for name in names[:4]:
            others = {one: Fraction(random.randint(-9, 9) or 1) for one in names if one != name}
            for zero in _zeros_of(node, name, others, budget, euler=euler):
                for step in (Fraction(1, 3), Fraction(-1, 3), Fraction(3), Fraction(-3)):
                    yield {**others, name: zero + step}


def _is_whole(node: Power) -> bool:
    exponent = node.exponent
    return not letters(exponent) and getattr(exponent, "value", Fraction(1, 2)).denominator == 1


def _zeros_of(
    node: Node, name: str, others: dict[str, Fraction], budget: Budget, *, euler: bool
) -> list[Fraction]:
    def work(ring: Ring) -> list[int]:
        top = ring.quotient(node)[0]
        if name not in ring.index:
            return []
        parts = [ring.value_at(part, others) for part in coefficients_in(top, ring.index[name])]
        if any(set(part) - {0} for part in parts):
            return []
        values = [part.get(0, Fraction(0)) for part in parts]
        scale = 1
        for value in values:
            scale *= value.denominator
        return [int(value * scale) for value in values]

    try:
        plain = in_ring(work, euler=euler)
        if len(plain) < 2 or not any(plain[1:]):
            return []
        return [Fraction(root.middle).limit_denominator(10_000) for root in real_roots(plain, budget.part(0.1))]
    except (TooLargeError, UnsupportedError, UndefinedError, OutOfTimeError):
        return []
