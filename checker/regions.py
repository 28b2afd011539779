"""Where a claim in one letter holds: the stretches between places where a value begins to exist or turns."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction as Rational

from checker.budget import OutOfTimeError
from checker.numeric import Evaluator, UnsureError, difference, is_near_zero
from checker.outcome import Known
from checker.polynomial import TooLargeError
from checker.real_roots import RealNumber
from checker.ring import UndefinedError, UnsupportedError
from checker.solutions import critical_values, places_of
from checker.syntax import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    Function,
    Negation,
    Node,
    Number,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    letters,
    to_latex,
    walk,
)
from checker.written import letter_latex

__all__ = ["needed_for", "region_text", "where_equal"]

_SHARES = tuple(Rational(*pair) for pair in ((1, 2), (1, 3), (3, 4), (2, 7), (9, 11), (1, 19), (24, 25)))
_SIZES = (1, 2, 3, 5, 9, 1, 40)
_MOST_PLACES = 12
_AT_MOST = {True: " \\le ", False: "<"}
_AT_LEAST = {True: " \\ge ", False: ">"}
_ZERO = Number((0, 0), Rational(0), "0")


def where_equal(left: Node, right: Node, name: str, known: Known) -> str | None:
    """The values of a letter for which two sides are equal on whole stretches, as sampled.

    Returns:
        LaTeX such as "x \\ge 1" or "x \\ne 2"; empty when it is every value; None when it is no stretch or not known.
    """
    breaks: list[RealNumber] = []
    try:
        for inner in _turning(left, right, known.euler):
            found, proved = critical_values(
                Relation((0, 0), inner, "=", _ZERO, (0, 0)), name, {}, known.budget, euler=known.euler
            )
            if not proved:
                return None
            breaks += found
        places = places_of(breaks)
        if len(places) > 2 * _MOST_PLACES:
            return None
        holds = _holding(left, right, name, places, known)
    except (UnsupportedError, UndefinedError, TooLargeError, UnsureError, OutOfTimeError):
        return None
    if not any(held for held, (_, is_stretch) in zip(holds, places, strict=True) if is_stretch):
        return None
    missing = [place for held, (place, _) in zip(holds, places, strict=True) if not held]
    if all(held for held, (_, is_stretch) in zip(holds, places, strict=True) if is_stretch):
        return ", ".join(f"{letter_latex(name)} \\ne {place.latex}" for place in missing)
    told = iter(holds)
    return region_text(name, places, lambda place: next(told))


def _turning(left: Node, right: Node, euler: bool) -> Iterator[Node]:
    """Denominators, what stands under roots and broken powers, between bars and in logarithms.

    Raises:
        UnsupportedError: a function begins or turns at places that are not listed.
    """
    constants = {"pi", "i"} | ({"e"} if euler else set())
    for top in (left, right):
        for node in walk(top):
            match node:
                case Fraction(denominator=inner) | Division(right=inner) | Root(radicand=inner) | Absolute(body=inner):
                    pass
                case Power(base=inner, exponent=exponent) if not letters(exponent):
                    pass
                case Function(name="ln" | "log", arguments=(inner,), base=None):
                    pass
                case Function(name="sin" | "cos" | "exp"):
                    continue
                case Function() if letters(node) - constants:
                    raise UnsupportedError
                case _:
                    continue
            if letters(inner) - constants:
                if any(isinstance(part, Function) and part.name in ("sin", "cos") for part in walk(inner)):
                    raise UnsupportedError  # it comes to nought again and again
                yield inner


def needed_for(side: Node, names: frozenset[str]) -> Iterator[str]:
    """What must hold for a side to have a value, as LaTeX such as "a \\ne 0"; an empty text where that is not known."""
    for node in walk(side):
        if not letters(node) & names:
            continue
        match node:
            case Fraction(denominator=bottom) | Division(right=bottom):
                yield from (f"{to_latex(factor)} \\ne 0" for factor in _factors(bottom) if letters(factor) & names)
            case Root(radicand=radicand, index=index):
                odd = isinstance(index, Number) and index.value % 2 == 1
                even_power = isinstance(radicand, Power) and _is_even(radicand.exponent)
                if not odd and not even_power:
                    yield f"{to_latex(radicand)} \\ge 0"
            case Function(name="ln" | "log", arguments=(inner,), base=None):
                yield f"{to_latex(inner)}>0"
            case Function(name="tan" | "sec", arguments=arguments):
                yield f"{to_latex(Function(node.span, 'cos', arguments))} \\ne 0"
            case Function(name="cot" | "csc", arguments=arguments):
                yield f"{to_latex(Function(node.span, 'sin', arguments))} \\ne 0"
            case Power(base=base, exponent=exponent) if letters(base) & names:
                whole = isinstance(exponent, Number) and exponent.value.denominator == 1 and exponent.value > 0
                if not whole:
                    yield f"{to_latex(base)} \\ne 0" if isinstance(exponent, Negation) else ""
            case Postfix() | Function(name="sin" | "cos" | "exp"):
                if isinstance(node, Postfix):
                    yield ""
            case Function():
                yield ""
            case _:
                continue


def _factors(node: Node) -> Iterator[Node]:
    match node:
        case Bracket(body=body):
            yield from _factors(body)
        case Product(factors=factors):
            for factor in factors:
                yield from _factors(factor)
        case Power(base=base, exponent=Number()):
            yield from _factors(base)
        case _:
            yield node


def _is_even(exponent: Node) -> bool:
    return isinstance(exponent, Number) and exponent.value % 2 == 0


def _holding(
    left: Node, right: Node, name: str, places: Sequence[tuple[RealNumber, bool]], known: Known
) -> list[bool]:
    held = []
    for at, (place, is_stretch) in enumerate(places):
        known.budget.check()
        if is_stretch:
            held.append(all(_agree(left, right, name, value, known) for value in _samples(places, at)))
        else:
            held.append(_agree(left, right, name, place.value, known))
    return held


def _samples(places: Sequence[tuple[RealNumber, bool]], at: int) -> list[Rational]:
    """Some points of a stretch, of which one lies far out when it has no end."""
    low = places[at - 1][0].middle if at else None
    high = places[at + 1][0].middle if at + 1 < len(places) else None
    if low is not None and high is not None:
        return [low + share * (high - low) for share in _SHARES]
    distances = [share * size for share, size in zip(_SHARES, _SIZES, strict=True)]
    if low is not None:
        return [low + distance for distance in distances]
    if high is not None:
        return [high - distance for distance in distances]
    return [*distances, *(-distance for distance in distances)]


def _agree(left: Node, right: Node, name: str, value: object, known: Known) -> bool:
    evaluator = Evaluator({name: value}, euler=known.euler)  # type: ignore[dict-item]
    try:
        return is_near_zero(difference(evaluator.value(left), evaluator.value(right)))
    except UndefinedError:
        return False


def region_text(
    name: str, places: Sequence[tuple[RealNumber, bool]], is_inside: Callable[[RealNumber], bool]
) -> str:
    """Intervals of a letter as a teacher writes them.

    Args:
        name: the letter.
        places: single values and, between and beyond them, one value marked as standing for the stretch.
        is_inside: asked once for each place, in order.
    """
    runs: list[tuple[RealNumber | None, bool, RealNumber | None, bool]] = []
    start: tuple[RealNumber | None, bool] | None = None
    last_point: RealNumber | None = None
    for place, is_stretch in places:
        inside = is_inside(place)
        if inside and start is None:
            start = (last_point, False) if is_stretch else (place, True)
        elif not inside and start is not None:
            runs.append((*start, place if not is_stretch else last_point, is_stretch))
            start = None
        if not is_stretch:
            last_point = place
    if start is not None:
        runs.append((*start, None, False))
    return " \\text{ or } ".join(_run_text(letter_latex(name), *run) for run in runs)


def _run_text(name: str, low: RealNumber | None, with_low: bool, high: RealNumber | None, with_high: bool) -> str:
    if low is None and high is None:
        return f"\\text{{every value of {name}}}" if len(name) == 1 else f"\\text{{every }}{name}"
    if low is None:
        assert high is not None
        return f"{name}{_AT_MOST[with_high]}{high.latex}"
    if high is None:
        return f"{name}{_AT_LEAST[with_low]}{low.latex}"
    if low.latex == high.latex:
        return f"{name}={low.latex}"
    return f"{low.latex}{_AT_MOST[with_low]}{name}{_AT_MOST[with_high]}{high.latex}"
