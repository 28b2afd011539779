"""Are two expressions equal wherever both are defined?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import product
from random import Random

from checker.budget import Budget, OutOfTimeError
from checker.numeric import Evaluator, UnsureError, approximate, difference, is_near_zero
from checker.polynomial import Poly, Quotient, TooLargeError, coefficients_in, letters_in
from checker.real_roots import real_roots
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Absolute, Function, Node, Number, Power, Root, Symbol, children, letters, to_latex, walk
from checker.verdict import No, Undecided, Verdict, Yes
from checker.written import polynomial_latex

__all__ = ["equal", "points_for", "uses_euler"]

CONSTANTS = frozenset({"i", "pi"})
_SMALL = tuple(Fraction(value) for value in (1, 2, 3, -1, -2, 5, 4, -3, 7, 0))
_MAGNITUDES = (
    Fraction(1), Fraction(2), Fraction(3), Fraction(2, 7), Fraction(19, 5), Fraction(11, 3), Fraction(5, 9),
    Fraction(23, 2),
)
_ENOUGH = 6  # points where both are defined, for a YES by sampling


def uses_euler(*nodes: Node) -> bool:
    """Is e the base of natural logarithms here: a base under a power that is no whole number, or beside ln or exp?"""
    waiting = list(nodes)
    while waiting:
        node = waiting.pop()
        kind = type(node)
        if kind is Number or kind is Symbol:
            continue
        if isinstance(node, Function) and node.name in ("ln", "exp"):
            return True
        if isinstance(node, Power) and letters(node.exponent) and letters(node.base) == {"e"}:
            return True
        waiting.extend(children(node))
    return False


def equal(a: Node, b: Node, *, budget: Budget | None = None, euler: bool | None = None) -> Verdict:
    """Decide whether two expressions have the same value wherever both are defined.

    Args:
        a, b: the two trees.
        budget: time that may be spent; two seconds when left out.
        euler: is e the base of natural logarithms? Found from the trees when left out.
    Returns:
        Yes with how it is known, No with a point where they differ, or Undecided with the reason.
    """
    budget = budget or Budget(2.0)
    if euler is None:
        euler = uses_euler(a, b)
    try:
        exact = _exact(a, b, euler=euler)
        return exact if exact is not None else _sampled(a, b, budget, euler=euler)
    except TooLargeError:
        if to_latex(a) == to_latex(b):
            return Yes("written alike")
        return Undecided("The numbers or powers are too large to work out.")
    except UnsupportedError:
        if to_latex(a) == to_latex(b):
            return Yes("written alike")
        return Undecided("It holds a construct that is not worked out here.")
    except (UnsureError, OutOfTimeError):
        return Undecided("The time for this comparison ran out.")
    except UndefinedError:
        return Undecided("One of the two has no value, such as a division by zero.")


def _exact(a: Node, b: Node, *, euler: bool) -> Yes | No | None:
    """Exact algebra: Yes, No with a point, or None when it cannot tell."""

    def compare(ring: Ring) -> Yes | No | None:
        left = ring.quotient(a)
        below_a = len(ring.denominators)
        right = ring.quotient(b)
        rest = ring.difference(left, right)
        if not rest:
            conditions = _conditions(ring, ring.denominators[:below_a], ring.denominators[below_a:])
            return Yes("exact algebra", conditions)
        if not ring.is_exact(rest, left[1], right[1]):
            return None
        return _refuted(ring, rest, left, right)

    try:
        return in_ring(compare, euler=euler)
    except (TooLargeError, UnsupportedError):
        return None


def _conditions(ring: Ring, first: list[Poly], second: list[Poly]) -> tuple[str, ...]:
    """Where exactly one of the two sides has a zero below."""
    if not first and not second:
        return ()
    budget = Budget(0.05)
    zeros = [_zeros(ring, polys, budget) for polys in (first, second)]
    return tuple(sorted(zeros[0] ^ zeros[1]))


def _zeros(ring: Ring, polys: list[Poly], budget: Budget) -> frozenset[str]:
    found: set[str] = set()
    for poly in polys:
        names = letters_in(poly)
        if len(names) == 1 and not names & ring.opaque and not names & ring.relations.keys():
            (letter,) = names
            plain = [part.get(0, 0) for part in coefficients_in(poly, letter)]
            try:
                name = polynomial_latex({1 << (20 * letter): 1}, ring.names)
                found |= {f"{name} \\ne {root.latex}" for root in real_roots(plain, budget)}
            except (TooLargeError, OutOfTimeError):
                continue
        elif not any(ring.names[letter].startswith("\0") for letter in names):
            monomials = [{1 << (20 * letter): 1} for letter in sorted(names)] if len(poly) == 1 else [poly]
            found |= {f"{polynomial_latex(part, ring.names)} \\ne 0" for part in monomials}
    return frozenset(found)


def _refuted(ring: Ring, rest: Poly, left: Quotient, right: Quotient) -> No | None:
    """A point of small integers where the exact difference is not zero and both are defined."""
    names = ring.free()
    for point in _small_points(names):
        if not ring.value_at(rest, point):
            continue
        if not all(ring.value_at(poly, point) for poly in ring.denominators):
            continue
        if not ring.value_at(left[1], point) or not ring.value_at(right[1], point):
            continue
        return No(point, _value_text(ring, left, point), _value_text(ring, right, point))
    return None


def _value_text(ring: Ring, quotient: Quotient, point: Mapping[str, Fraction]) -> str:
    top, bottom = (ring.value_at(poly, dict(point)) for poly in quotient)
    if not top:
        return "0"
    if set(top) == {0} and set(bottom) == {0}:
        value = top[0] / bottom[0]
        return str(value) if max(value.numerator.bit_length(), value.denominator.bit_length()) < 200 else ""
    return ""


def _small_points(names: list[str]) -> Iterator[dict[str, Fraction]]:
    if not names:
        yield {}
        return
    if len(names) == 1:
        for value in (*_SMALL, *(Fraction(n) for n in range(8, 60))):
            yield {names[0]: value}
        return
    for shift in range(40):
        # neighbours get different values, so that x - y and the like do not vanish
        yield {name: _SMALL[(shift + 2 * at + shift * at) % 9] for at, name in enumerate(names)}
    random = Random(1)
    for _ in range(60):
        yield {name: Fraction(random.randint(-30, 30)) for name in names}


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
    whole = random.sample(range(1, 9), min(8, 8))
    for shift in range(8):
        yield {name: Fraction(whole[(shift + at) % 8]) for at, name in enumerate(names)}


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


def _has_letter_index(top: Node) -> bool:
    return any(isinstance(node, Root) and node.index is not None and letters(node.index) for node in walk(top))


def _sampled(a: Node, b: Node, budget: Budget, *, euler: bool) -> Verdict:
    """Intervals at chosen points: No where they are apart, Yes by sampling where they agree everywhere."""
    written = letters(a) | letters(b)
    names = sorted(written - CONSTANTS - ({"e"} if euler else set()))
    complex_numbers = "i" in written
    agreed = tried = 0
    obstacle: Exception | None = None
    for point in points_for(a, b, names, budget, euler=euler):
        budget.check()
        tried += 1
        evaluator = Evaluator(point, euler=euler, complex_numbers=complex_numbers)
        try:
            left, right = evaluator.value(a), evaluator.value(b)
            if not is_near_zero(difference(left, right)):
                if _has_letter_index(a) or _has_letter_index(b):
                    return Undecided("The index of a root is a letter, and it matters whether it is odd or even.")
                return No(point, approximate(left), approximate(right))
            agreed += 1
        except UndefinedError:
            continue
        except (UnsureError, TooLargeError, UnsupportedError) as error:
            obstacle = error
            if isinstance(error, UnsupportedError):
                break
    if agreed and not names and obstacle is None:
        return Yes("values to 35 digits", proved=False)
    if agreed >= _ENOUGH and not isinstance(obstacle, UnsupportedError):
        return Yes(f"sampling at {agreed} points of every sign pattern, to 35 digits", proved=False)
    if obstacle is not None:
        raise obstacle
    if not agreed:
        return Undecided("No point was found where both have a value.")
    return Undecided("Too few points were found where both have a value.")


