"""Are two expressions equal wherever both are defined?"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from checker.budget import Budget, OutOfTimeError
from checker.calculus.derivative import differentiated
from checker.calculus.working_out import worked_out_in
from checker.numeric import Evaluator, UnsureError, approximate, difference, is_near_zero
from checker.points import points_for, whole_points
from checker.polynomial import ONE, Poly, Quotient, TooLargeError, coefficients_in, letters_in, value_of
from checker.real_roots import real_roots
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Function, Node, Number, Power, Root, Symbol, children, letters, to_latex, walk
from checker.verdict import No, Undecided, Verdict, Yes
from checker.written import polynomial_latex

__all__ = ["equal", "points_for", "uses_euler"]

CONSTANTS = frozenset({"i", "pi", "infty"})
_LONGEST_BITS = 200  # of a value that is shown in full
_EXACT = Yes("exact algebra")
_NATURAL = frozenset({"ln", "exp", "sinh", "cosh", "tanh", "sech", "csch", "coth"})
_USUAL_CONSTANTS = frozenset({
    *"abcdefgijklmnpqABCEFGHIJKLMNQRTX", "pi", "alpha", "beta", "gamma", "lambda", "mu", "omega", "kappa", "epsilon",
})  # letters that hardly ever stand for what changes with another one
_CALCULUS = frozenset({"deriv", "int", "lim", "limabove", "limbelow", "between", "sum", "prod"})
_ENOUGH = 6  # points where both are defined, for a YES by sampling


def uses_euler(*nodes: Node) -> bool:
    """Is e the base of natural logarithms here: a base under a power that is no whole number, or beside ln or exp?"""
    waiting = list(nodes)
    while waiting:
        node = waiting.pop()
        kind = type(node)
        if kind is Number or kind is Symbol:
            continue
        if isinstance(node, Function) and (node.name in _NATURAL or _has_base_e(node) or _runs_beside_e(node)):
            return True
        if isinstance(node, Power) and letters(node.exponent) and letters(node.base) == {"e"}:
            return True
        waiting.extend(children(node))
    return False


def _has_base_e(node: Function) -> bool:
    return isinstance(node.base, Symbol) and node.base.name == "e"


def _runs_beside_e(node: Function) -> bool:
    """A derivative, integral or limit by another letter that has e in it."""
    return len(node.arguments) > 1 and node.name in _CALCULUS and any(
        isinstance(one, Symbol) and one.name == "e" for one in walk(node)
    ) and letters(node.arguments[1]) != {"e"}


def equal(a: Node, b: Node, *, budget: Budget | None = None, euler: bool | None = None) -> Verdict:
    """Decide whether two expressions have the same value wherever both are defined.

    Args:
        a, b: the two trees.
        budget: time that may be spent; two seconds when left out.
        euler: is e the base of natural logarithms? Found from the trees when left out.
    Returns:
        Yes with how it is known, No with a point where they differ, or Undecided with the reason.
    """
    try:
        exact = _exact(a, b, euler=euler)
        if exact is not None:
            return exact
        known = uses_euler(a, b) if euler is None else euler
        return _without_dependent(_sampled(a, b, budget or Budget(2.0), euler=known), a, b)
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


def _exact(a: Node, b: Node, *, euler: bool | None) -> Verdict | None:
    """Exact algebra: Yes, No with a point, or None when it cannot tell."""

    def compare(ring: Ring) -> Verdict | None:
        ring.by_sizes = True
        left = ring.quotient(a)
        below_a = len(ring.denominators)
        right = ring.quotient(b)
        if euler is None and not ring.euler and "e" in ring.index and uses_euler(a, b):
            return in_ring(compare, euler=True)
        rest = ring.difference(left, right)
        if rest and ring.runs:
            return with_calculus(ring, rest, left, right)
        if not rest:
            if not ring.denominators:
                return _EXACT
            conditions = _conditions(ring, ring.denominators[:below_a], ring.denominators[below_a:])
            return Yes("exact algebra", conditions)
        return _decided(ring, rest, left, right)

    def with_calculus(ring: Ring, rest: Poly, left: Quotient, right: Quotient) -> Verdict | None:
        if ring.indefinite:
            found: Verdict | None = _up_to_a_constant(a, b, frozenset(ring.indefinite))
        else:
            found = _decided(ring, rest, left, right)
        return None if found is None else _without_dependent(found, a, b)

    try:
        return in_ring(compare, euler=bool(euler))
    except (TooLargeError, UnsupportedError):
        return None


def _decided(ring: Ring, rest: Poly, left: Quotient, right: Quotient) -> No | None:
    """What a difference that is no zero polynomial says."""
    if ring.relations or ring.opaque:
        return _refuted(ring, rest, left, right) if ring.is_exact(rest, left[1], right[1]) else None
    return _refuted_whole(ring, rest, left, right)


def _without_dependent(found: Verdict, a: Node, b: Node) -> Verdict:
    """No is not said where a letter that may change stands under a derivative or integral by another."""
    if isinstance(found, No) and (_holds_dependent(a) or _holds_dependent(b)):
        return Undecided("A letter may change with the one that is differentiated or integrated by.")
    return found


def _up_to_a_constant(a: Node, b: Node, names: frozenset[str]) -> Verdict:
    """Integrals without bounds: equal when their derivatives are."""
    if len(names) > 1:
        return Undecided("The two are integrated by different letters.")
    (name,) = names
    slopes = [differentiated(node, name, frozenset()) for node in (a, b)]
    if any(isinstance(node, Function) and node.name == "int" for slope in slopes for node in walk(slope)):
        return Undecided("An integral stands inside something else.")
    match equal(*slopes, euler=True):
        case Yes(conditions=conditions, proved=proved):
            return Yes("equal derivatives", conditions, proved)
        case No(counterexample=point):
            return No(point)
        case undecided:
            return undecided


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
        if _is_euler(ring, names):
            continue  # a power of e is never 0
        if len(names) == 1 and not names & ring.opaque and not names & ring.relations.keys():
            (letter,) = names
            plain = [part.get(0, 0) for part in coefficients_in(poly, letter)]
            try:
                name = polynomial_latex({1 << (20 * letter): 1}, ring.names)
                found |= {f"{name} \\ne {root.latex}" for root in real_roots(plain, budget)}
            except (TooLargeError, OutOfTimeError):
                continue
        elif names - ring.relations.keys() and not any(ring.names[letter].startswith("\0") for letter in names):
            monomials = [{1 << (20 * letter): 1} for letter in sorted(names)] if len(poly) == 1 else [poly]
            found |= {f"{polynomial_latex(part, ring.names)} \\ne 0" for part in monomials}
    return frozenset(found)


def _is_euler(ring: Ring, names: frozenset[int]) -> bool:
    return ring.euler and {ring.names[letter] for letter in names} == {"e"}


def _refuted_whole(ring: Ring, rest: Poly, left: Quotient, right: Quotient) -> No | None:
    """A point of small integers where quotients of polynomials in letters alone differ and both are defined."""
    below = [poly for poly in (*ring.denominators, left[1], right[1]) if poly is not ONE]
    for values in whole_points(len(ring.names)):
        if value_of(rest, values) and all(value_of(poly, values) for poly in below):
            point = {name: Fraction(value) for name, value in zip(ring.names, values, strict=True)}
            return No(point, *(_number_text(value_of(poly[0], values), value_of(poly[1], values))
                               for poly in (left, right)))
    return None


def _refuted(ring: Ring, rest: Poly, left: Quotient, right: Quotient) -> No | None:
    """A point of small integers where the exact difference is not zero and both are defined."""
    names = ring.free()
    for values in whole_points(len(names)):
        point = {name: Fraction(value) for name, value in zip(names, values, strict=True)}
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
        return _number_text(value.numerator, value.denominator)
    return ""


def _number_text(top: int, bottom: int) -> str:
    """The quotient in full, or nothing when it is long."""
    if max(top.bit_length(), bottom.bit_length()) > _LONGEST_BITS:
        return ""
    return str(top) if bottom == 1 else str(Fraction(top, bottom))


def _holds_dependent(top: Node) -> bool:
    """Does a letter that is no usual constant stand under a derivative or integral by another letter?"""
    for node in walk(top):
        if isinstance(node, Function) and node.name in ("int", "deriv") and len(node.arguments) > 1:
            body, letter = node.arguments[:2]
            if letters(body) - letters(letter) - _USUAL_CONSTANTS:
                return True
    return False


def _has_calculus(top: Node) -> bool:
    return any(isinstance(node, Function) and node.name in _CALCULUS for node in walk(top))


def _has_letter_index(top: Node) -> bool:
    return any(isinstance(node, Root) and node.index is not None and letters(node.index) for node in walk(top))


def _sampled(a: Node, b: Node, budget: Budget, *, euler: bool) -> Verdict:
    """Intervals at chosen points: No where they are apart, Yes by sampling where they agree everywhere."""
    if _has_calculus(a) or _has_calculus(b):
        a, b = worked_out_in(a), worked_out_in(b)
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


