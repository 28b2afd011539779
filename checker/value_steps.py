"""Is one value the other: as an identity, with what is known put in, rounded, or under a condition?"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from checker.equality import equal, points_for
from checker.numeric import Evaluator, UnsureError, approximate
from checker.outcome import Known, Outcome, point_text, undecided, unknowns_of, witness_json
from checker.polynomial import ONE, TooLargeError, coefficients_in, depends_on, is_constant
from checker.putting_in import is_subject
from checker.real_roots import real_roots
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.rounded_answers import by_accuracy, nearest_whole
from checker.rounding import decimal_places, places_when_rounded, rounding_of, terminates
from checker.solutions import is_true
from checker.substitution import known_values, solved_for, substituted
from checker.syntax import (
    Absolute,
    Function,
    Node,
    Relation,
    Root,
    Statement,
    System,
    has_plus_minus,
    letters,
    resolved,
    walk,
)
from checker.verdict import No, Undecided, Yes

__all__ = ["CONSTANTS", "PUT_IN", "compare_values", "judge_values", "letters_needed"]

CONSTANTS = frozenset({"pi", "i"})
PUT_IN = "A value seems to have been put in; it is not known which."


def compare_values(first: Node, second: Node, known: Known) -> Outcome:
    """Two values as a step from the first to the second."""
    return judge_values(first, second, known, "=")


def judge_values(first: Node, second: Node, known: Known, operator: str) -> Outcome:
    """Judge the step from one value to the next, joined by the sign given."""
    if has_plus_minus(first) or has_plus_minus(second):
        return _both_signs(first, second, known, operator)
    values = known_values(known.givens)
    for given in (False, True):
        if given:
            if not values:
                break
            first, second = substituted(first, values), substituted(second, values)
        verdict = equal(first, second, budget=known.budget, euler=known.euler)
        match verdict:
            case Yes(method=method, conditions=conditions, proved=proved):
                notes = [f"For {', '.join(conditions)}."] if conditions else []
                if not proved:
                    notes.append(f"Shown by {method}.")
                return Outcome("follows", " ".join(notes))
            case Undecided(why=why):
                return undecided(why)
            case No():
                continue
    assert isinstance(verdict, No)
    rounded = _rounded(first, second, known)
    if rounded is not None:
        return rounded
    if operator == "\\approx" and not (letters(first) | letters(second)) - CONSTANTS and _near(first, second, known):
        return Outcome("follows", "Near enough.")
    limited = _under_givens(first, second, verdict, known)
    if limited is not None:
        return limited
    if operator == "\\approx" and unknowns_of(first, known) | unknowns_of(second, known):
        return undecided("An approximation in letters is not judged.")
    put_in = _put_in(first, second, known)
    if put_in is not None:
        return put_in
    taken = _taken_for_all(first, second, verdict, known)
    return Outcome("slip", _apart(verdict) + taken, witness_json(verdict.counterexample))


def _taken_for_all(first: Node, second: Node, verdict: No, known: Known) -> str:
    """Where a root of a square is the letter for positive numbers only: how the line was taken."""
    names = sorted(unknowns_of(first, known) | unknowns_of(second, known))
    if not any(value < 0 for value in verdict.counterexample.values()) or not any(
        isinstance(node, Root | Absolute) for top in (first, second) for node in walk(top)
    ):
        return ""
    agreed = 0
    for shift in range(6):
        point = {name: Fraction(shift + 2 * at + 1, 1 + shift % 2) for at, name in enumerate(names)}
        try:
            if not is_true(Relation((0, 0), first, "=", second, (0, 0)), Evaluator(point, euler=known.euler)):
                return ""
            agreed += 1
        except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
            continue
    told = " and ".join(names)
    return f" Taken for every real value; for {told} not negative it holds, if that is given." if agreed > 3 else ""


def _both_signs(first: Node, second: Node, known: Known, operator: str) -> Outcome:
    """Two values against two: the upper signs and the lower ones, in either order."""
    old, new = ([resolved(node, choice) for choice in ("upper", "lower")] for node in (first, second))
    found = []
    for pairs in (((0, 0), (1, 1)), ((0, 1), (1, 0))):
        outcomes = [judge_values(old[i], new[j], known, operator) for i, j in pairs]
        if all(outcome.kind == "follows" for outcome in outcomes):
            return outcomes[0]
        found.append(next(outcome for outcome in outcomes if outcome.kind != "follows"))
    return found[0] if all(outcome.kind == "slip" for outcome in found) else undecided(
        "It could not be told whether both values are the same."
    )


def _apart(verdict: No) -> str:
    if not verdict.counterexample:
        if verdict.left and verdict.right:
            return f"The line before is {verdict.left}, this line is {verdict.right}."
        return "The two numbers are different."
    where = point_text(witness_json(verdict.counterexample))
    if verdict.left and verdict.right:
        return f"At {where} the line before is {verdict.left} and this line is {verdict.right}."
    return f"At {where} the two lines have different values."


def _rounded(first: Node, second: Node, known: Known) -> Outcome | None:
    """A decimal in place of a value that it rounds."""
    written = decimal_places(second)
    if known.accuracy is not None and written is not None and not unknowns_of(first, known):
        return by_accuracy(first, second, known)
    if written is not None and written[1] == 0 and not unknowns_of(first, known):
        return nearest_whole(first, written[0], known)
    if written is None or written[1] == 0 or letters(first) - CONSTANTS - ({"e"} if known.euler else set()):
        return None
    try:
        value = Evaluator({}, euler=known.euler).value(first)
        kind = rounding_of(value, *written)
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return None
    if kind in (None, "exact", "wrong"):
        return None
    if isinstance(value, Fraction) and terminates(value) and written[1] < 2:
        return None
    if kind == "cut":
        return Outcome("follows", "The decimal is cut off; rounding would change its last digit.")
    return Outcome("follows", "The value is rounded.")


def _near(first: Node, second: Node, known: Known) -> bool:
    """Within two in a hundred, or rounded to the digits written, noughts at the end of a whole number left out."""
    evaluator = Evaluator({}, euler=known.euler)
    written = decimal_places(second)
    try:
        if written is not None:
            kind = rounding_of(evaluator.value(first), written[0], places_when_rounded(*written))
            if kind in ("exact", "rounded"):
                return True
        a, b = _float(evaluator, first), _float(evaluator, second)
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError, OverflowError):
        return False
    return abs(a - b) <= 0.02 * max(abs(a), abs(b))


def _float(evaluator: Evaluator, node: Node) -> float:
    value = evaluator.value(node)
    return float(value) if isinstance(value, Fraction) else float(value.mid)


def _under_givens(first: Node, second: Node, verdict: No, known: Known) -> Outcome | None:
    """With conditions such as x > 5 given, only points that satisfy them count."""
    limits = [given for given in known.givens if letters(given) & (letters(first) | letters(second))]
    limits = _restricting(limits, letters(first) | letters(second))
    equations = [given for given in limits if isinstance(given, Relation) and given.operator == "="]
    if not limits:
        return None
    if equations:
        reduced = _by_equations(first, second, equations, known)
        if reduced is not None:
            return reduced
    names = sorted((letters(first) | letters(second)) - CONSTANTS - ({"e"} if known.euler else set()))
    agreed = 0
    for point in points_for(first, second, names, known.budget, euler=known.euler):
        known.budget.check()
        evaluator = Evaluator(point, euler=known.euler)
        try:
            if not all(is_true(given, evaluator) for given in limits if given not in equations):
                continue
            left, right = evaluator.value(first), evaluator.value(second)
            check = is_true(Relation((0, 0), first, "=", second, (0, 0)), evaluator)
        except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
            continue
        if not check:
            if equations:
                return undecided("What is given about the letters seems to have been used; it could not be followed.")
            return Outcome("slip", _apart(No(point, approximate(left), approximate(right))), witness_json(point))
        agreed += 1
    if agreed >= 4 and not equations:
        return Outcome("follows", f"Under the condition given, as sampled at {agreed} points.")
    return undecided("Too few points satisfy what is given.")


def _restricting(givens: Sequence[Statement], names: frozenset[str]) -> list[Statement]:
    """Without the givens that only say what a letter is which stands nowhere else, such as y = x^2 for a line in x."""
    kept = [part for given in givens for part in (given.parts if isinstance(given, System) else (given,))]
    kept = [given for given in kept if not (isinstance(given, Relation) and is_subject(given.left))]
    for given in list(kept):
        again = [other for other in kept if other is not given and _says_the_same(given, other)]
        if again:
            kept.remove(given)
    while True:
        spare = next((
            given for given in kept
            if (solved := solved_for(given)) is not None and solved[0] not in names
            and not any(solved[0] in letters(other) for other in kept if other is not given)
        ), None)
        if spare is None:
            return kept
        kept.remove(spare)


def _says_the_same(first: Statement, second: Statement) -> bool:
    """Do both give the same letter the same value?"""
    one, other = solved_for(first), solved_for(second)
    return one is not None and other is not None and one[0] == other[0] and isinstance(equal(one[1], other[1]), Yes)


def _by_equations(first: Node, second: Node, equations: Sequence[Relation], known: Known) -> Outcome | None:
    """The difference reduced by each given equation in turn: zero when they make the two sides equal."""

    def work(ring: Ring) -> bool:
        rest = ring.difference(ring.quotient(first), ring.quotient(second))
        for equation in equations:
            by = ring.difference(ring.quotient(equation.left), ring.quotient(equation.right))
            for name in sorted(ring.free()):
                rest = ring.remainder(rest, by, ring.index[name])
                if not rest:
                    return True
        return False

    try:
        return Outcome("follows", "By what is given.") if in_ring(work, euler=known.euler) else None
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None


def _is_indefinite(node: Node) -> bool:
    return any(isinstance(one, Function) and one.name == "int" and len(one.arguments) == 2 for one in walk(node))


def _put_in(first: Node, second: Node, known: Known) -> Outcome | None:
    """Has a value been put in place of a letter? Then nothing can be said without knowing it."""
    names_a, names_b = unknowns_of(first, known), unknowns_of(second, known)
    values = known_values(known.givens)
    if len(names_b - names_a) == 1 and _is_indefinite(first):
        return None  # the constant of integration
    if names_b - names_a:
        return undecided("A letter is new on this line; it is not known what it stands for.", is_soft=True)
    dropped = names_a - names_b
    if dropped:
        dropped &= letters_needed(first, known)
    if not dropped or dropped <= values.keys():
        return None
    if len(dropped) > 1 or names_b:
        return undecided(PUT_IN, is_soft=True)
    (name,) = dropped
    return undecided(PUT_IN, is_soft=True) if _plain_value(first, second, name, known) else None


def letters_needed(first: Node, known: Known, less: Node | None = None) -> frozenset[str]:
    """The letters that the value really depends on: those that are left when like terms are collected."""

    def work(ring: Ring) -> frozenset[str]:
        top, bottom = ring.quotient(first)
        if less is not None:
            top, bottom = ring.difference((top, bottom), ring.quotient(less)), ONE
        if any(name.startswith("\0") for name in ring.names):
            return letters(first) | (frozenset() if less is None else letters(less))
        return frozenset(name for name, number in ring.index.items() if depends_on(top, bottom, number))

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return letters(first) | (frozenset() if less is None else letters(less))


def _plain_value(first: Node, second: Node, name: str, known: Known) -> bool:
    """Is there a whole number or half, not zero, at which the first is the second?"""

    def work(ring: Ring) -> bool:
        rest = ring.difference(ring.quotient(first), ring.quotient(second))
        if name not in ring.index or not ring.is_exact(rest):
            return True
        parts = coefficients_in(rest, ring.index[name])
        if any(not is_constant(part) for part in parts):
            return True
        roots = real_roots([part.get(0, 0) for part in parts], known.budget)
        return any(
            all(ring.value_at(poly, {name: root.exact}) for poly in ring.denominators)
            for root in roots if root.exact is not None and root.exact and root.exact.denominator <= 2
        )

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return True
