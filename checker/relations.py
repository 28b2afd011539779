"""Does one condition follow from another? Their real solution sets are compared, letter by letter."""

from __future__ import annotations

from fractions import Fraction

from checker.boundaries import has_wrong_boundary
from checker.bounds import is_limit
from checker.budget import OutOfTimeError
from checker.complex_roots import compare_complex
from checker.numeric import Evaluator, UnsureError, approximate
from checker.outcome import Known, Outcome, point_text, undecided
from checker.periodic import compare_periodic, is_periodic
from checker.polynomial import TooLargeError, is_constant, proportional
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.rounded_answers import rounded_solutions, unfolded_branches
from checker.several_letters import TUPLES, parameter_note, points_for_letters, within_domain
from checker.solutions import SetComparison, Witness, compare_sets, critical_values, is_true, links, solution_set
from checker.substitution import solved_for
from checker.syntax import (
    Alternatives,
    Division,
    Node,
    Number,
    Relation,
    Statement,
    System,
    letters,
    unfolded,
    walk,
)
from checker.syntax import Fraction as Quotient

__all__ = ["compare_relations", "free_letters", "solved_letter", "unfolded_branches"]

_ENOUGH = 3
_ZERO = Number((0, 0), Fraction(0), "0")


def free_letters(statement: Statement, known: Known) -> frozenset[str]:
    """The letters that stand for unknown numbers."""
    constants = {"pi", "i", "infty"} | ({"e"} if known.euler else set())
    return frozenset(letters(statement) - constants)


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


def _satisfies(name: str, witness: Witness, others: dict[str, Fraction]) -> str:
    """x = 2 satisfies; x = 2 and y = 3 satisfy."""
    return f"{point_text(_json(name, witness, others))} {'satisfy' if others else 'satisfies'}"


def _outcome(
    first: Statement, second: Statement, comparison: SetComparison, name: str, others: dict[str, Fraction],
    known: Known,
) -> Outcome:
    lost, gained = comparison.only_first, comparison.only_second
    if not lost and not gained:
        return Outcome("follows", _domain_note(first, second, name, others, known))
    if (lost or gained) and not comparison.proved and len(lost) + len(gained) > 12:
        return undecided("It has too many solutions to compare; say the interval that is meant.")
    rounded = rounded_solutions(first, second, name, others, known)
    if rounded is not None:
        return rounded
    if not (lost and gained) and not others and has_wrong_boundary(first, second, name, euler=known.euler):
        found = min(lost or gained, key=_plainness)
        held, fails = ("the line before", "this line") if lost else ("this line", "the line before")
        told = f"The boundary is another: {_satisfies(name, found, others)} {held} but not {fails}."
        return Outcome("slip", told, _json(name, found, others))
    if lost and gained:
        # the simplest numbers tell most
        gain, loss = min(gained, key=_plainness), min(lost, key=_plainness)
        return Outcome(
            "slip",
            f"{_satisfies(name, loss, others)} the line before but not this line, "
            f"and {_satisfies(name, gain, others)} this line but not the line before.",
            _json(name, loss, others),
        )
    if lost:
        loss = min(lost, key=_plainness)
        reason = f"{_satisfies(name, loss, others)} the line before but not this line."
        if not comparison.common:
            return Outcome("slip", f"{reason} No value satisfies this line.", _json(name, loss, others))
        if any(witness.is_stretch for witness in lost):
            reason = f"Solutions are lost: {reason}"
        else:
            every = ", ".join(_text(witness) for witness in lost[:4])
            one = len(lost) == 1
            reason = f"The solution {name} = {every} is lost." if one else f"Solutions are lost: {name} = {every}."
            if others:
                reason = f"A solution is lost: {point_text(_json(name, loss, others))}."
        return Outcome("loses", reason, _json(name, loss, others))
    gain = min(gained, key=_plainness)
    if not comparison.common and not _is_honest(first, gained, name, others, known):
        return Outcome(
            "slip", f"No value satisfies the line before, but {_satisfies(name, gain, others)} this line.",
            _json(name, gain, others),
        )
    told = f"{_satisfies(name, gain, others)} this line but not the line before"
    told += ": solutions are gained." if gain.is_stretch else ": check it and reject it."
    if gain.is_stretch and _was_multiplied(first, second, name):
        told += f" Both sides were multiplied by {name} or the like, whose sign is not known."
    return Outcome("adds", told, _json(name, gain, others))


def _was_multiplied(first: Statement, second: Statement, name: str) -> bool:
    """Is the letter below a bar in the first inequality and in the second no more?"""
    return all(sign != "=" for _, sign, _ in links(first)) and _is_below(first, name) and not _is_below(second, name)


def _is_below(statement: Statement, name: str) -> bool:
    return any(
        name in letters(node.denominator if isinstance(node, Quotient) else node.right)
        for left, _, right in links(statement) for side in (left, right) for node in walk(side)
        if isinstance(node, Quotient | Division)
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
        for point in points_for_letters(others, known):
            known.budget.check()
            try:
                comparison = compare_sets(first, second, unknown, point, known.budget, euler=known.euler)
            except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
                continue
            done += 1
            comparison = within_domain(first, comparison, unknown, point, known)
            if comparison.common:
                told += 1
            if comparison.only_first and comparison.only_second:
                return _outcome(first, second, comparison, unknown, point, known)
            if comparison.only_first:
                lost = lost or _soft(first, second, comparison, unknown, point, known)
            if comparison.only_second:
                gained = gained or _soft(first, second, comparison, unknown, point, known)
            if done >= TUPLES and (told >= _ENOUGH or lost is not None or gained is not None):
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
    return Outcome("follows", parameter_note(first, second, unknowns, known))


def _soft(
    first: Statement, second: Statement, comparison: SetComparison, unknown: str, point: dict[str, Fraction],
    known: Known,
) -> Outcome:
    if comparison.only_first:
        loss = min(comparison.only_first, key=_plainness)
        witness = _json(unknown, loss, point)
        return Outcome("loses", f"{point_text(witness)} satisfy the line before but not this line.", witness)
    gain = min(comparison.only_second, key=_plainness)
    witness = _json(unknown, gain, point)
    return Outcome("adds", f"{point_text(witness)} satisfy this line but not the line before.", witness)


