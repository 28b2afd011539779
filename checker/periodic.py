"""Equations with sines and the like: their solutions within bounds, or over a whole period."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction as Rational
from math import gcd, lcm

from checker.angles import WAVES
from checker.calculus.building import number
from checker.half_angle import DENOMINATOR, MOST_TURNS, angle_places, angles_of, middle_of, pi_value
from checker.numeric import Evaluator, Value, as_interval, difference, is_near_zero
from checker.outcome import Known, Outcome, undecided
from checker.real_roots import RealNumber, rational_number
from checker.ring import UnsupportedError
from checker.rounding import decimal_places, rounding_of
from checker.solutions import critical_values, is_true, links, places_of
from checker.substitution import substituted_in
from checker.syntax import (
    Alternatives,
    Bracket,
    Chain,
    Function,
    Node,
    Number,
    Relation,
    Statement,
    Symbol,
    letters,
    unfolded,
    walk,
)

__all__ = ["compare_periodic", "is_periodic"]

_COUNTERS = frozenset({"n", "k", "m", "N", "K"})


def is_periodic(statement: Statement, name: str) -> bool:
    """Is a sine or the like taken of the letter?"""
    return any(
        isinstance(node, Function) and node.name in WAVES and name in letters(node)
        for left, _, right in links(statement) for side in (left, right) for node in walk(side)
    )


def compare_periodic(
    first: Statement, second: Statement, name: str, limits: Sequence[Statement], known: Known
) -> Outcome:
    """Compare two statements' solutions in one letter where the first has sines and the like of it.

    Args:
        first, second: the statements; the second may hold a whole number n.
        limits: what bounds the letter, such as 0 <= x < 360.
        known: time, and whether the angles are in degrees.
    Raises:
        UnsupportedError, UndefinedError, UnsureError, TooLargeError: it cannot be told.
    """
    turn = Rational(360) if known.degrees else as_interval(Rational(2)) * pi_value()
    second = unfolded(second)
    counters = letters(second) & _COUNTERS - letters(first)
    if len(counters) == 1:
        return _general(first, second, name, min(counters), turn, known)
    window = _window(limits, name, known)
    is_list = not is_periodic(second, name)
    if window is None and is_list and not _lasts(second):
        return _without_bounds(first, second, name, turn, known)
    if window is None:
        period = _common_period([first, second], name, turn, known)
        window = (Rational(0), period)
        limits = ()
    told = _compared(first, second, name, limits, window, turn, known)
    if told.kind in ("slip", "adds") and is_list and limits:
        return _by_rounding(first, second, name, limits, window, turn, known) or told
    if told.kind == "follows" or not is_list or not limits:
        return told
    return told


# bounds


def _window(limits: Sequence[Statement], name: str, known: Known) -> tuple[Rational, Rational] | None:
    """The least and greatest value that the bounds allow."""
    low: Rational | None = None
    high: Rational | None = None
    for limit in limits:
        for left, sign, right in links(limit):
            if sign not in ("<", ">", "\\le", "\\ge"):
                continue
            up = sign in ("<", "\\le")
            for node, other, is_low in ((left, right, up), (right, left, not up)):
                if isinstance(other, Symbol) and other.name == name and not letters(node) - {"pi"}:
                    value = middle_of(Evaluator({}).value(node))
                    if is_low:
                        low = value if low is None else max(low, value)
                    else:
                        high = value if high is None else min(high, value)
    return None if low is None or high is None or high <= low else (low, high)


def _lasts(statement: Statement) -> bool:
    """Does it hold for stretches or for nothing, so that there are no single values to look at?"""
    return not links(statement) or any(sign not in ("=", "\\approx") for _, sign, _ in links(statement))


def _common_period(statements: Sequence[Statement], name: str, turn: Value, known: Known) -> Rational | Value:
    rates = [
        angle.rate for statement in statements for left, _, right in links(statement)
        for angle in angles_of((left, right), name, turn, known)
    ]
    if not rates:
        raise UnsupportedError
    bottom = gcd(*(rate.numerator for rate in rates))
    top = lcm(*(rate.denominator for rate in rates))
    share = Rational(top, bottom)
    return turn * share if isinstance(turn, Rational) else turn * share.numerator / share.denominator


# comparing


def _compared(
    first: Statement, second: Statement, name: str, limits: Sequence[Statement],
    window: tuple[Value, Value], turn: Value, known: Known,
) -> Outcome:
    places = [
        *_candidates(first, name, window, turn, known), *_candidates(second, name, window, turn, known),
        *(RealNumber(end, "") for end in window),
    ]
    low, high = middle_of(window[0]), middle_of(window[1])
    lost: list[RealNumber] = []
    gained: list[RealNumber] = []
    common = stretch = False
    for place, is_stretch in places_of(places):
        known.budget.check()
        if not limits and not low <= place.middle < high:
            continue
        evaluator = Evaluator({name: place.value}, euler=known.euler)
        if not all(is_true(limit, evaluator) for limit in limits):
            continue
        pair = is_true(first, evaluator), is_true(second, evaluator)
        common = common or pair == (True, True)
        if pair == (True, False):
            lost.append(place)
            stretch = stretch or is_stretch
        elif pair == (False, True):
            gained.append(place)
            stretch = stretch or is_stretch
    if lost and gained and common and _waves(first) != _waves(second) and is_periodic(second, name):
        return undecided("Both hold for some of the angles only; say in which quadrant the angle is.", is_soft=True)
    return _told(lost, gained, common, name, known)


def _waves(statement: Statement) -> frozenset[str]:
    return frozenset(
        node.name for left, _, right in links(statement) for side in (left, right) for node in walk(side)
        if isinstance(node, Function) and node.name in WAVES
    )


def _told(
    lost: Sequence[RealNumber], gained: Sequence[RealNumber], common: bool, name: str, known: Known
) -> Outcome:
    if not lost and not gained:
        return Outcome("follows")
    shown = {name: _written((lost or gained)[0], known)}
    where = f"{name} = {shown[name]}"
    if lost and gained:
        other = _written(gained[0], known)
        told = f"{where} satisfies the line before but not this line, and {name} = {other} this line only."
        return Outcome("slip", told, shown)
    if lost and not common:
        return Outcome("slip", f"{where} satisfies the line before but not this line.", shown)
    if lost:
        every = ", ".join(_written(one, known) for one in lost[:4])
        return Outcome("loses", f"Not all solutions are there: {name} = {every} is missing.", shown)
    return Outcome("adds", f"{where} satisfies this line but not the line before.", shown)


def _written(place: RealNumber, known: Known) -> str:
    if known.degrees:
        return f"{_short(place.middle)}^{{\\circ}}"
    share = _snapped(difference(place.value, Rational(0)), pi_value()) if place.exact is None else None
    if share is not None and share:
        top = {1: "", -1: "-"}.get(share.numerator, str(share.numerator)) + "\\pi"
        return top if share.denominator == 1 else f"\\frac{{{top}}}{{{share.denominator}}}"
    return _short(place.middle)


def _short(value: Rational) -> str:
    return str(value) if value.denominator == 1 else f"{float(value):.4g}"


def _snapped(value: Value, unit: Value) -> Rational | None:
    """The value as a simple share of the unit, when it is one."""
    near = (middle_of(value) / middle_of(unit)).limit_denominator(DENOMINATOR)
    gap = difference(value, as_interval(unit) * near.numerator / near.denominator)
    return near if is_near_zero(gap) else None


def _without_bounds(
    first: Statement, second: Statement, name: str, turn: Value, known: Known
) -> Outcome:
    """Values listed where no interval is stated: each is put in."""
    values = _listed(second, name, known)
    if values is None:
        raise UnsupportedError
    fits = [_fits(first, name, value, places, turn, known) for value, places in values]
    if not all(fits):
        wrong = values[fits.index(False)][0]
        shown = _written(RealNumber(wrong, ""), known)
        return Outcome("slip", f"{name} = {shown} does not satisfy the line before.", {name: shown})
    if len(values) > 1:
        whole = middle_of(turn)
        for low in (Rational(0), -whole / 2):
            window = (low, low + whole)
            inside = [
                one for one in _solutions(first, name, window, turn, known) if low <= one.middle < low + whole
            ]
            if len(inside) == len(values):
                return Outcome("follows", "All the solutions of one turn; no interval is stated.")
    return undecided(
        "It fits, but other angles do too; state the interval that is meant.", is_soft=True
    )


def _listed(second: Statement, name: str, known: Known) -> list[tuple[Value, int | None]] | None:
    """The values given for the letter, with the decimals of those that are in decimals."""
    found: list[tuple[Value, int | None]] = []
    branches = second.branches if isinstance(second, Alternatives) else (second,)
    for branch in branches:
        match branch:
            case Relation(left=Symbol(name=left), operator="=" | "\\approx", right=right) if left == name:
                node = right
            case Chain(members=(Symbol(name=left), *_, right), operators=signs) if left == name and set(signs) <= {
                "=", "\\approx",
            }:
                node = right
            case Relation(operator="="):
                roots, _ = critical_values(branch, name, {}, known.budget, euler=known.euler)
                found += [(root.value, None) for root in roots]
                continue
            case _:
                return None
        value = Evaluator({}, euler=known.euler).value(node)
        found.append((value, _places_in(node)))
    return found


def _places_in(node: Node) -> int | None:
    """The decimals of a number, or of the decimals that it is worked out from."""
    decimal = decimal_places(node)
    if decimal is not None:
        return decimal[1]
    inside = [len(one.text.partition(".")[2]) for one in walk(node) if isinstance(one, Number) and "." in one.text]
    return max(inside) if inside else None


def _fits(first: Statement, name: str, value: Value, places: int | None, turn: Value, known: Known) -> bool:
    if is_true(first, Evaluator({name: value}, euler=known.euler)):
        return True
    if places is None or (places == 0 and not known.degrees):
        return False
    middle, whole = middle_of(value), middle_of(turn)
    window = (middle - whole, middle + whole)
    near = min(
        _solutions(first, name, window, turn, known), key=lambda one: abs(one.middle - middle_of(value)), default=None
    )
    return near is not None and rounding_of(near.value, middle_of(value), places) in ("rounded", "cut", "exact")


def _solutions(
    first: Statement, name: str, window: tuple[Value, Value], turn: Value, known: Known
) -> list[RealNumber]:
    return [
        place for place, is_stretch in places_of(_candidates(first, name, window, turn, known))
        if not is_stretch and is_true(first, Evaluator({name: place.value}, euler=known.euler))
    ]


def _by_rounding(
    first: Statement, second: Statement, name: str, limits: Sequence[Statement],
    window: tuple[Value, Value], turn: Value, known: Known,
) -> Outcome | None:
    """Rounded values, and values outside the bounds that fit the equation."""
    values = _listed(second, name, known)
    if not values:
        return None
    if not all(_fits(first, name, value, places, turn, known) for value, places in values):
        return None
    inside = []
    for place in _solutions(first, name, window, turn, known):
        if all(is_true(limit, Evaluator({name: place.value}, euler=known.euler)) for limit in limits):
            inside.append(place)
    gap = Rational(1)
    found = [
        one for one in inside
        if any(abs(one.middle - middle_of(value)) < (gap if known.degrees else gap / 20) for value, _ in values)
    ]
    if len(found) == len(inside):
        return Outcome("follows", "Rounded." if len(values) == len(inside) else "")
    if not found:
        return undecided("It fits the equation but lies outside the interval.", is_soft=True)
    missing = [one for one in inside if one not in found]
    every = ", ".join(_written(one, known) for one in missing[:4])
    return Outcome(
        "loses", f"Not all solutions are there: {name} = {every} is missing.", {name: _written(missing[0], known)}
    )


def _general(
    first: Statement, second: Statement, name: str, counter: str, turn: Value, known: Known
) -> Outcome:
    """x = 30 + 360 n: every whole number put in that falls within a window of some turns."""
    steps = []
    for left, sign, right in links(second):
        if sign != "=" or counter not in letters(left) | letters(right):
            raise UnsupportedError
        rate = _rate(second_link := (left, right), name, known)
        moves = _rate(second_link, counter, known)
        steps.append(abs(moves / rate))
    if not steps:
        raise UnsupportedError
    period = middle_of(_common_period([first], name, turn, known))
    shares = [(step / middle_of(turn)).limit_denominator(DENOMINATOR) for step in (*steps, period)]
    if any(not share for share in shares):
        raise UnsupportedError
    whole = Rational(lcm(*(share.numerator for share in shares)), gcd(*(share.denominator for share in shares)))
    if whole > MOST_TURNS:
        raise UnsupportedError
    least = min(shares)
    reach = int(whole / least) * 2 + 4
    length = turn * whole if isinstance(turn, Rational) else turn * whole.numerator / whole.denominator
    branches = []
    parts = second.branches if isinstance(second, Alternatives) else (second,)
    for part in parts:
        for value in range(-reach, reach + 1):
            put = substituted_in(part, {counter: Bracket((0, 0), number(value), "(")})
            branches.append(put)
    window = (Rational(0), length)
    return _compared(first, Alternatives(second.span, tuple(branches)), name, (), window, turn, known)


def _rate(sides: tuple[Node, Node], name: str, known: Known) -> Rational:
    """By how much left less right grows when the letter grows by one, other letters nought."""
    values = []
    for at in (0, 1):
        point = {one: Rational(0) for side in sides for one in letters(side) - {"pi", "e"}}
        point[name] = Rational(at)
        evaluator = Evaluator(point, euler=known.euler)
        values.append(difference(evaluator.value(sides[0]), evaluator.value(sides[1])))
    grown = middle_of(difference(values[1], values[0]))
    if not grown:
        raise UnsupportedError
    return grown


# places


def _candidates(
    statement: Statement, name: str, window: tuple[Value, Value], turn: Value, known: Known
) -> list[RealNumber]:
    """Every value within the window at which the statement's truth can change."""
    found: list[RealNumber] = []
    for left, sign, right in links(statement):
        known.budget.check()
        if name not in letters(left) | letters(right):
            continue
        angles = list(angles_of((left, right), name, turn, known))
        if not angles:
            found += _plain_places(left, sign, right, name, known)
            continue
        found += angle_places(left, right, angles, name, window, turn, known)
    return found


def _plain_places(left: Node, sign: str, right: Node, name: str, known: Known) -> list[RealNumber]:
    if isinstance(left, Symbol) and name not in letters(right):
        value = Evaluator({}, euler=known.euler).value(right)
        return [rational_number(value) if isinstance(value, Rational) else RealNumber(value, "")]
    link = Relation((0, 0), left, sign, right, (0, 0))
    values, _ = critical_values(link, name, {}, known.budget, euler=known.euler, search=False)
    return values


