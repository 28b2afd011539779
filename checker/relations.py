"""Does one condition follow from another? Their real solution sets are compared, letter by letter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from checker.accuracy import judged_decimal, rounded_latex
from checker.boundaries import has_wrong_boundary
from checker.budget import OutOfTimeError
from checker.complex_roots import compare_complex
from checker.numeric import Evaluator, UnsureError, Value, approximate, difference, sign_of
from checker.outcome import Known, Outcome, point_text, undecided
from checker.periodic import compare_periodic, is_periodic
from checker.polynomial import TooLargeError, is_constant, proportional
from checker.real_roots import RealNumber
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.rounding import decimal_places, places_when_rounded, rounding_of
from checker.solutions import SetComparison, Witness, compare_sets, critical_values, is_true, links, solution_set
from checker.substitution import solved_for
from checker.syntax import (
    Alternatives,
    Chain,
    Division,
    Node,
    Number,
    Relation,
    Statement,
    Symbol,
    System,
    letters,
    to_latex,
    unfolded,
    walk,
)
from checker.syntax import Fraction as Quotient

__all__ = [
    "by_accuracy", "compare_relations", "free_letters", "is_limit", "nearest_whole", "solved_letter",
    "unfolded_branches",
]

_PARAMETERS = (*map(Fraction, (2, 3, 5, -1, 7, -4, 11, -6, 13)), Fraction(1, 2), Fraction(7, 3))
_TUPLES = 6  # of values for the other letters
_ENOUGH = 3
_PLAINLY_ROUNDED = 100  # a whole number from here on is read as rounded
_ZERO = Number((0, 0), Fraction(0), "0")


def free_letters(statement: Statement, known: Known) -> frozenset[str]:
    """The letters that stand for unknown numbers."""
    constants = {"pi", "i", "infty"} | ({"e"} if known.euler else set())
    return frozenset(letters(statement) - constants)


def unfolded_branches(statement: Statement) -> tuple[Statement, ...]:
    whole = unfolded(statement)
    return whole.branches if isinstance(whole, Alternatives) else (whole,)


def solved_letter(statement: Statement) -> str | None:
    """The letter that every branch gives a value for, when there is one."""
    names = set()
    for branch in unfolded_branches(statement):
        solved = solved_for(branch)
        if solved is None:
            return None
        names.add(solved[0])
    return names.pop() if len(names) == 1 else None


def compare_relations(before: Statement, after: Statement, known: Known) -> Outcome:
    """Judge a step between two conditions in the same letters.

    Args:
        before, after: relations, chains, alternatives or systems.
        known: time, givens and the rest.
    Returns:
        follows, loses, adds, slip with a witness, or undecided with the reason.
    """
    first, second = unfolded(before), unfolded(after)
    try:
        same = _proportional(first, second, known)
        if same is not None:
            return same
        if known.complex_numbers:
            return compare_complex(first, second, known)
        return _by_sets(first, second, known)
    except TooLargeError:
        return undecided("The numbers or powers are too large to work out.")
    except UnsupportedError:
        return undecided("It holds a construct whose solutions are not worked out here.")
    except (UnsureError, OutOfTimeError):
        return undecided("The time for this step ran out.")


def _proportional(first: Statement, second: Statement, known: Known) -> Outcome | None:
    """Left minus right of one a number times that of the other: the same equation, or inequality by the sign."""
    links_a, links_b = links(first), links(second)
    if len(links_a) != 1 or len(links_b) != 1 or isinstance(first, Alternatives) or isinstance(second, Alternatives):
        return None
    (left_a, sign_a, right_a), (left_b, sign_b, right_b) = links_a[0], links_b[0]
    if sign_a != "=" or sign_b != "=":
        return None

    def work(ring: Ring) -> bool:
        a = ring.difference(ring.quotient(left_a), ring.quotient(right_a))
        b = ring.difference(ring.quotient(left_b), ring.quotient(right_b))
        return bool(a) and not is_constant(a) and proportional(a, b) and not ring.denominators

    try:
        return Outcome("follows") if in_ring(work, euler=known.euler) else None
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None


def _by_sets(first: Statement, second: Statement, known: Known) -> Outcome:
    names = sorted(free_letters(first, known) | free_letters(second, known))
    if not names:
        return _numbers_only(first, second, known)
    name = next((one for one in names if is_periodic(first, one)), None)
    if name is not None and set(names) - {name} <= letters(second) - letters(first):
        limits = [given for given in known.givens if is_limit(given) and letters(given) - {"pi"} == {name}]
        try:
            return compare_periodic(*_freed(first, second, name, limits), name, limits, known)
        except UndefinedError as exc:
            raise UnsupportedError from exc
    if len(names) == 1:
        comparison = compare_sets(
            _with_givens(first, known), _with_givens(second, known), names[0], {}, known.budget, euler=known.euler
        )
        return _outcome(first, second, comparison, names[0], {}, known)
    return _several_letters(first, second, names, known)


def _freed(
    first: Statement, second: Statement, name: str, limits: list[Statement]
) -> tuple[Statement, Statement]:
    """Bounds of the letter that stand on the lines themselves, side by side with an equation, moved to the others."""
    out = []
    for statement in (first, second):
        parts = statement.parts if isinstance(statement, System) else (statement,)
        bounds = [part for part in parts if is_limit(part) and letters(part) - {"pi"} == {name}]
        rest = [part for part in parts if part not in bounds]
        if rest and bounds and not is_periodic(System(statement.span, tuple(bounds)), name):
            limits += [bound for bound in bounds if bound not in limits]
            statement = rest[0] if len(rest) == 1 else System(statement.span, tuple(rest))
        out.append(statement)
    return out[0], out[1]


def _with_givens(statement: Statement, known: Known) -> Statement:
    """The statement together with givens such as x > 0, which then bound both sets alike."""
    limits = tuple(
        given for given in known.givens
        if is_limit(given) and letters(given) <= letters(statement)
    )
    return System(statement.span, (*limits, statement)) if limits else statement


def is_limit(given: Statement) -> bool:
    """A given such as x > 0, 0 <= x < 360 or "x is a whole number", which bounds every set alike."""
    signs = [sign for _, sign, _ in links(given)]
    return isinstance(given, Relation | Chain | System) and bool(signs) and all(
        sign in ("<", ">", "\\le", "\\ge", "\\ne", "\\in") for sign in signs
    )


def _numbers_only(first: Statement, second: Statement, known: Known) -> Outcome:
    evaluator = Evaluator({}, euler=known.euler, complex_numbers=known.complex_numbers)
    if is_true(second, evaluator):
        return Outcome("follows", "The numbers on both sides agree.")
    if not is_true(first, evaluator):
        return Outcome("follows", "Neither line holds: there is no solution.")
    return Outcome("slip", f"The two sides are different numbers: {_sides(second, evaluator)}.", {})


def _sides(statement: Statement, evaluator: Evaluator) -> str:
    for left, sign, right in links(statement):
        try:
            values = approximate(evaluator.value(left)), approximate(evaluator.value(right))
        except UndefinedError:
            return "one side has no value"
        if sign != "=" or values[0] != values[1]:
            return f"{values[0]} and {values[1]}"
    return "they do not agree"


def _text(witness: Witness) -> str:
    return witness.value.latex


def _json(name: str, witness: Witness, others: dict[str, Fraction]) -> dict[str, str]:
    exact = witness.value.exact
    point = {name: witness.value.latex if exact is None else str(exact)}
    return dict(sorted({**point, **{other: str(value) for other, value in others.items()}}.items()))


def _named(name: str, witness: Witness, others: dict[str, Fraction]) -> str:
    return point_text(_json(name, witness, others))


def _outcome(
    first: Statement, second: Statement, comparison: SetComparison, name: str, others: dict[str, Fraction],
    known: Known,
) -> Outcome:
    lost, gained = comparison.only_first, comparison.only_second
    if not lost and not gained:
        return Outcome("follows", _domain_note(first, second, name, others, known))
    if (lost or gained) and not comparison.proved and len(lost) + len(gained) > 12:
        return undecided("It has too many solutions to compare; say the interval that is meant.")
    rounded = _rounded(first, second, name, others, known)
    if rounded is not None:
        return rounded
    if not (lost and gained) and not others and has_wrong_boundary(first, second, name, euler=known.euler):
        found = min(lost or gained, key=_plainness)
        held, fails = ("the line before", "this line") if lost else ("this line", "the line before")
        told = f"The boundary is another: {_named(name, found, others)} satisfies {held} but not {fails}."
        return Outcome("slip", told, _json(name, found, others))
    if lost and gained:
        # the simplest numbers tell most
        gain, loss = min(gained, key=_plainness), min(lost, key=_plainness)
        return Outcome(
            "slip",
            f"{_named(name, loss, others)} satisfies the line before but not this line, "
            f"and {_named(name, gain, others)} satisfies this line but not the line before.",
            _json(name, loss, others),
        )
    if lost:
        loss = min(lost, key=_plainness)
        reason = f"{_named(name, loss, others)} satisfies the line before but not this line."
        if not comparison.common:
            return Outcome("slip", f"{reason} No value satisfies this line.", _json(name, loss, others))
        if any(witness.is_stretch for witness in lost):
            reason = f"Solutions are lost: {reason}"
        else:
            every = ", ".join(_text(witness) for witness in lost[:4])
            one = len(lost) == 1
            reason = f"The solution {name} = {every} is lost." if one else f"Solutions are lost: {name} = {every}."
            if others:
                reason = f"A solution is lost: {_named(name, loss, others)}."
        return Outcome("loses", reason, _json(name, loss, others))
    gain = min(gained, key=_plainness)
    if not comparison.common and not _is_honest(first, gained, name, others, known):
        return Outcome(
            "slip", f"No value satisfies the line before, but {_named(name, gain, others)} satisfies this line.",
            _json(name, gain, others),
        )
    return Outcome(
        "adds", f"{_named(name, gain, others)} satisfies this line but not the line before"
        + (": solutions are gained." if gain.is_stretch else ": check it and reject it."),
        _json(name, gain, others),
    )


def _plainness(witness: Witness) -> tuple[bool, bool, Fraction]:
    """A value inside a whole stretch tells more than its end point, then a fraction more than a surd."""
    value = witness.value
    return not witness.is_stretch, value.exact is None, abs(value.middle)


def _is_honest(
    first: Statement, gained: tuple[Witness, ...], name: str, others: dict[str, Fraction], known: Known
) -> bool:
    """Are the values gained ones at which the line before has lost its meaning or its sign has turned?"""
    values, _ = critical_values(first, name, others, known.budget, euler=known.euler)
    places = [number.middle for number in values]
    return all(
        any(abs(witness.value.middle - place) < Fraction(1, 10**30) for place in places)
        for witness in gained if not witness.is_stretch
    ) and any(not witness.is_stretch for witness in gained)


def _domain_note(
    first: Statement, second: Statement, name: str, others: dict[str, Fraction], known: Known
) -> str:
    """Values that make one of the lines meaningless and are no solutions: x ≠ 0."""
    if others:
        return ""
    found: set[str] = set()
    for statement in (first, second):
        for left, _, right in links(statement):
            for top in (left, right):
                found |= _excluded(top, name, known)
    return f"For {', '.join(sorted(found))}." if found else ""


def _excluded(top: Node, name: str, known: Known) -> set[str]:
    found = set()
    for node in walk(top):
        bottom = node.denominator if isinstance(node, Quotient) else node.right if isinstance(node, Division) else None
        if bottom is None or name not in letters(bottom):
            continue
        try:
            zero = Relation(node.span, bottom, "=", _ZERO, node.span)
            roots, stretches = solution_set(zero, name, known.budget, euler=known.euler)
        except (UnsupportedError, TooLargeError, UnsureError, UndefinedError):
            continue
        if not stretches:
            found |= {f"{name} \\ne {root.latex}" for root in roots}
    return found


def _rounded(
    first: Statement, second: Statement, name: str, others: dict[str, Fraction], known: Known
) -> Outcome | None:
    """Each decimal given as the letter's value against the nearest solution of the line before."""
    if others:
        return None
    decimals, nodes = [], []
    is_near = any(getattr(branch, "operator", "") == "\\approx" for branch in unfolded_branches(second))
    for branch in unfolded_branches(second):
        if not isinstance(branch, Relation) or branch.operator not in ("=", "\\approx"):
            return None
        if not isinstance(branch.left, Symbol) or branch.left.name != name:
            return None
        decimal = decimal_places(branch.right)
        if decimal is None:
            return None
        decimals.append((decimal[0], places_when_rounded(*decimal)))
        nodes.append(branch.right)
    if not decimals:
        return None
    solved = solved_for(first)
    try:
        if solved is not None and solved[0] == name and not letters(solved[1]) - {"pi", "e"}:
            value = Evaluator({}, euler=known.euler).value(solved[1])
            roots: tuple[RealNumber, ...] = (RealNumber(value, ""),)
            stretches = False
        else:
            roots, stretches = solution_set(first, name, known.budget, euler=known.euler)
    except (UnsupportedError, TooLargeError, UnsureError, UndefinedError):
        return _between_signs(first, decimals, name, known)
    if stretches or not roots or len(decimals) > len(roots):
        return None
    if known.accuracy is None and not is_near and any(decimal_places(node) == (number[0], 0) for node, number in zip(
        nodes, decimals, strict=True
    )):
        return _whole_instead(roots, decimals)
    kinds = set()
    for node, (written, places) in zip(nodes, decimals, strict=True):
        nearest = min(roots, key=lambda root: abs(root.middle - written))
        if known.accuracy is not None:
            told = _by_accuracy(nearest.value, node, known)
            if told is None or told.kind == "slip":
                return told
            continue
        kind = rounding_of(nearest.value, written, places)
        if kind is None or kind == "wrong":
            return None
        if not is_near and nearest.exact is not None and kind != "exact" and places < 2 and _terminates(nearest.exact):
            return None
        kinds.add(kind)
    if len(decimals) < len(roots):
        return Outcome("loses", "Not all solutions are given.")
    if "cut" in kinds:
        return Outcome("follows", "The decimal is cut off; rounding would change its last digit.")
    return Outcome("follows", "The value is rounded.")


def _between_signs(
    first: Statement, decimals: Sequence[tuple[Fraction, int]], name: str, known: Known
) -> Outcome | None:
    """Where the solutions cannot be listed: do the sides change places within half a unit of each decimal?"""
    if not isinstance(first, Relation) or first.operator != "=":
        return None
    for written, places in decimals:
        signs = []
        for sign in (-1, 1):
            evaluator = Evaluator({name: written + sign * Fraction(10) ** -places / 2}, euler=known.euler)
            try:
                signs.append(sign_of(difference(evaluator.value(first.left), evaluator.value(first.right))))
            except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
                return None
        if signs[0] * signs[1] > 0:
            return None
    return Outcome("follows", "The value is rounded.")


def _whole_instead(roots: Sequence[RealNumber], decimals: Sequence[tuple[Fraction, int]]) -> Outcome | None:
    """N = 3695 where N is 3694.53."""
    if len(decimals) != 1 or len(roots) != 1:
        return None
    return _nearest_whole(roots[0].value, decimals[0][0])


def by_accuracy(value: Node, written: Node, known: Known) -> Outcome | None:
    """A value rounded as the line says: right, wrong in the last digit, or None when it cannot be told."""
    try:
        exact = Evaluator({}, euler=known.euler).value(value)
    except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
        return None
    return _by_accuracy(exact, written, known)


def nearest_whole(value: Node, written: Fraction, known: Known) -> Outcome | None:
    """A whole number in place of a value that no decimal gives exactly; None where it is not the nearest."""
    try:
        exact = Evaluator({}, euler=known.euler).value(value)
    except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
        return None
    return _nearest_whole(exact, written)


def _nearest_whole(exact: Value, written: Fraction) -> Outcome | None:
    if isinstance(exact, Fraction) and _terminates(exact):
        return None
    if rounding_of(exact, written, 0) != "rounded":
        return None
    if abs(written) >= _PLAINLY_ROUNDED:
        return Outcome("follows", "The value is rounded to a whole number.")
    return undecided("It is the nearest whole number; the accuracy that is meant is not said.", is_soft=True)


def _by_accuracy(exact: Value, written: Node, known: Known) -> Outcome | None:
    assert known.accuracy is not None
    told = rounded_latex(exact, known.accuracy)
    number = decimal_places(written)
    if not told or number is None:
        return None
    if Fraction(told) == number[0]:
        return Outcome("follows", f"Rounded to {known.accuracy.words}.")
    right, _ = judged_decimal(exact, written, None)
    if right:
        return Outcome("follows", f"The value is rounded; to {known.accuracy.words} it is {told}.")
    return Outcome("slip", f"To {known.accuracy.words} the value is {told}.", {})


def _terminates(value: Fraction) -> bool:
    bottom = value.denominator
    for prime in (2, 5):
        while bottom % prime == 0:
            bottom //= prime
    return bottom == 1


def _tuples(names: list[str], known: Known) -> Iterator[dict[str, Fraction]]:
    for shift in range(_TUPLES * 4):
        point = {
            name: _PARAMETERS[(shift * (at + 1) + 3 * at) % len(_PARAMETERS)] for at, name in enumerate(names)
        }
        evaluator = Evaluator(point, euler=known.euler)
        try:
            if all(
                is_true(given, evaluator) for given in known.givens
                if letters(given) <= set(names) and is_limit(given)
            ):
                yield point
        except (UnsupportedError, UnsureError, TooLargeError):
            yield point


def _several_letters(first: Statement, second: Statement, names: list[str], known: Known) -> Outcome:
    """Each letter in turn taken as the unknown, with numbers for the others."""
    solved = solved_letter(second) or solved_letter(first)
    if known.unknown in names and known.unknown in letters(first) and known.unknown in letters(second):
        unknowns = [known.unknown]
    elif solved in names and solved in letters(first) and solved in letters(second):
        unknowns = [solved]
    else:
        unknowns = [name for name in names if name in letters(first) and name in letters(second)] or names
    lost: Outcome | None = None
    gained: Outcome | None = None
    told = 0
    for unknown in unknowns[:5]:
        others = [name for name in names if name != unknown]
        done = 0
        for point in _tuples(others, known):
            known.budget.check()
            try:
                comparison = compare_sets(first, second, unknown, point, known.budget, euler=known.euler)
            except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
                continue
            done += 1
            comparison = _within_domain(first, comparison, unknown, point, known)
            if comparison.common:
                told += 1
            if comparison.only_first and comparison.only_second:
                return _outcome(first, second, comparison, unknown, point, known)
            if comparison.only_first:
                lost = lost or _soft(first, second, comparison, unknown, point, known)
            if comparison.only_second:
                gained = gained or _soft(first, second, comparison, unknown, point, known)
            if done >= _TUPLES and (told >= _ENOUGH or lost is not None or gained is not None):
                break
    if lost is not None and gained is not None:
        return Outcome("slip", f"{lost.reason} {gained.reason}", lost.witness)
    if lost is not None:
        if not told:
            return Outcome("slip", lost.reason, lost.witness)
        return lost
    if gained is not None:
        return gained
    if told < _ENOUGH:
        return undecided("No values were found that satisfy the line before, so nothing could be compared.")
    return Outcome("follows", _parameter_note(first, second, unknowns, known))


def _within_domain(
    first: Statement, comparison: SetComparison, unknown: str, point: dict[str, Fraction], known: Known
) -> SetComparison:
    """Without the values gained only because a denominator of the line before is zero there: a condition, no gain."""
    gained = tuple(
        witness for witness in comparison.only_second
        if _has_value(first, Evaluator({**point, unknown: witness.value.value}, euler=known.euler))
    )
    return replace(comparison, only_second=gained)


def _has_value(statement: Statement, evaluator: Evaluator) -> bool:
    try:
        for left, _, right in links(statement):
            evaluator.value(left)
            evaluator.value(right)
    except UndefinedError:
        return False
    return True


def _soft(
    first: Statement, second: Statement, comparison: SetComparison, unknown: str, point: dict[str, Fraction],
    known: Known,
) -> Outcome:
    if comparison.only_first:
        loss = min(comparison.only_first, key=_plainness)
        witness = _json(unknown, loss, point)
        return Outcome("loses", f"{point_text(witness)} satisfies the line before but not this line.", witness)
    gain = min(comparison.only_second, key=_plainness)
    witness = _json(unknown, gain, point)
    return Outcome("adds", f"{point_text(witness)} satisfies this line but not the line before.", witness)


def _parameter_note(first: Statement, second: Statement, unknowns: list[str], known: Known) -> str:
    """Letters divided by in the second line and not in the first: a ≠ 0."""
    bottoms: list[set[str]] = [set(), set()]
    for at, statement in enumerate((first, second)):
        for left, _, right in links(statement):
            for node in (*walk(left), *walk(right)):
                if isinstance(node, Quotient | Division):
                    bottom = node.denominator if isinstance(node, Quotient) else node.right
                    if letters(bottom):
                        bottoms[at].add(to_latex(bottom))
    new = sorted(bottoms[1] - bottoms[0])
    return "For " + ", ".join(bottom + " \\ne 0" for bottom in new) + "." if new else ""
