"""Does one statement follow from another? Each pair of kinds of line has its own rule."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from checker.angles import has_angle, with_degrees
from checker.budget import OutOfTimeError
from checker.equality import equal, points_for
from checker.knowledge import is_subject, worked_out_in
from checker.numeric import Evaluator, UnsureError, approximate
from checker.outcome import Known, Outcome, point_text, undecided, witness_json
from checker.periodic import is_periodic
from checker.polynomial import ONE, TooLargeError, coefficients_in, depends_on, is_constant
from checker.real_roots import real_roots
from checker.relations import by_accuracy, compare_relations, nearest_whole
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.rounding import decimal_places, places_when_rounded, rounding_of
from checker.solutions import is_true, links
from checker.substitution import known_values, solved_for, substituted, substituted_in
from checker.syntax import (
    Alternatives,
    Chain,
    Definition,
    Division,
    Expression,
    Function,
    Node,
    Number,
    Power,
    Product,
    Relation,
    Statement,
    Sum,
    System,
    has_plus_minus,
    letters,
    nodes_of,
    resolved,
    walk,
)
from checker.syntax import Fraction as Quotient
from checker.verdict import No, Undecided, Yes

__all__ = ["compare_values", "divides_by_zero", "false_number", "inner_link", "judge_step", "value_of_line"]

_CONSTANTS = frozenset({"pi", "i"})
_PUT_IN = "A value seems to have been put in; it is not known which."


def value_of_line(statement: Statement) -> Node | None:
    """The value that a line "= ..." after this one carries on: the expression, or the last right side."""
    match statement:
        case Expression(body=body):
            return body
        case Relation(right=right):
            return right
        case Chain(members=members):
            return members[-1]
        case Definition(body=body):
            return body
        case _:
            return None


def divides_by_zero(statement: Statement, known: Known) -> bool:
    """Does a division by zero, whatever the letters, stand somewhere on the line?"""
    for node in nodes_of(statement):
        if not any(isinstance(part, Quotient | Division | Power) for part in walk(node)):
            continue
        try:
            in_ring(lambda ring, node=node: ring.quotient(node), euler=known.euler)  # type: ignore[misc]
        except UndefinedError:
            return True
        except (TooLargeError, UnsupportedError):
            continue
    return False


def inner_link(statement: Statement, known: Known, *, from_first: bool = False) -> Outcome | None:
    """The first link inside a chain that is false, as an outcome; None when none is.

    Args:
        statement: a line; only chains have inner links.
        known: time and givens.
        from_first: is the first link to be true for all values too?
    """
    if not isinstance(statement, Chain):
        return None
    operators = statement.operators[1:] if statement.continues else statement.operators
    members = statement.members
    for at, operator in enumerate(operators):
        if operator not in ("=", "\\equiv", "\\approx") or (at == 0 and not from_first and not statement.continues):
            continue
        outcome = _values(members[at], members[at + 1], known, operator)
        if outcome.kind == "slip" and _runs_on(members, at, known):
            return undecided(
                "The equals signs run on: the last value is worked out from the one before, but the first is another "
                "number. Write it as two lines.", is_soft=True,
            )
        if outcome.kind != "follows":
            return outcome
    return None


def false_number(statement: Statement, known: Known) -> Outcome | None:
    """A link of a chain between two numbers that are not equal, whatever the lines before."""
    if not isinstance(statement, Chain) or (has_angle(statement) and not known.degrees):
        return None
    operators = statement.operators[1:] if statement.continues else statement.operators
    for at, operator in enumerate(operators):
        first, second = statement.members[at], statement.members[at + 1]
        if operator != "=" or _unknowns(first, known) or _unknowns(second, known):
            continue
        outcome = _values(first, second, known, operator)
        if outcome.kind == "slip":
            return None if _runs_on(statement.members, at, known) else outcome
    return None


def _runs_on(members: Sequence[Node], at: int, known: Known) -> bool:
    """7 \\times 3 = 21 + 4 = 25: the next member begins with the value of this one and goes on."""
    following = members[at + 1]
    first = (
        following.terms[0].body if isinstance(following, Sum) and following.terms[0].sign == "+"
        else following.factors[0] if isinstance(following, Product) else None
    )
    return first is not None and isinstance(equal(members[at], first, budget=known.budget, euler=known.euler), Yes)


def judge_step(before: Statement, after: Statement, known: Known) -> Outcome:
    """Judge a line against one earlier line.

    Args:
        before: the earlier line's statement.
        after: the line's own statement.
        known: time, task and givens.
    Returns:
        The verdict on this step alone, with its reason and witness.
    """
    try:
        first, second = worked_out_in(before, known.knowledge), worked_out_in(after, known.knowledge)
        if known.degrees is False or not (has_angle(first) or has_angle(second)):
            return _judge(first, second, known)
        in_degrees = replace(known, degrees=True, givens=tuple(with_degrees(given) for given in known.givens))
        if known.degrees:
            return _judge(with_degrees(first), with_degrees(second), in_degrees)
        outcome = _judge(first, second, known)
        if outcome.kind == "follows":
            return outcome
        again = _judge(with_degrees(first), with_degrees(second), in_degrees)
        if again.kind == "follows":
            return replace(again, reason=f"The angles are read as degrees. {again.reason}".strip())
        return again if outcome.kind == "slip" and again.kind != "slip" else outcome
    except OutOfTimeError:
        return undecided("The time for this step ran out.")


def _judge(before: Statement, after: Statement, known: Known) -> Outcome:
    match after:
        case Definition():
            return Outcome("follows", "A name for later lines.")
        case Expression(body=body, continues=continues, operator=operator):
            value = value_of_line(before)
            if value is None:
                return undecided("It is not clear which value this line carries on.")
            if continues and operator not in ("=", "\\approx", "\\equiv"):
                return undecided("A line that starts with an inequality sign is not judged from one line.")
            if not continues and not isinstance(before, Expression):
                outcome = _values(value, body, known, "=")
                return outcome if outcome.kind == "follows" else undecided("An expression after an equation.")
            return _values(value, body, known, operator)
        case Chain(continues=True, members=members):
            value = value_of_line(before)
            if value is None:
                return undecided("It is not clear which value this line carries on.")
            outcome = _values(value, members[0], known, after.operators[0])
            return outcome if outcome.kind != "follows" else inner_link(after, known) or outcome
        case _:
            if isinstance(before, Expression):
                return _set_equal(before, after, known)
            return _conditions(before, after, known)


# values


def compare_values(first: Node, second: Node, known: Known) -> Outcome:
    """Two values as a step from the first to the second."""
    return _values(first, second, known, "=")


def _values(first: Node, second: Node, known: Known, operator: str) -> Outcome:
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
    if operator == "\\approx" and not (letters(first) | letters(second)) - _CONSTANTS and _near(first, second, known):
        return Outcome("follows", "Near enough.")
    limited = _under_givens(first, second, verdict, known)
    if limited is not None:
        return limited
    if operator == "\\approx" and _unknowns(first, known) | _unknowns(second, known):
        return undecided("An approximation in letters is not judged.")
    put_in = _put_in(first, second, known)
    if put_in is not None:
        return put_in
    return Outcome("slip", _apart(verdict), witness_json(verdict.counterexample))


def _both_signs(first: Node, second: Node, known: Known, operator: str) -> Outcome:
    """Two values against two: the upper signs and the lower ones, in either order."""
    old, new = ([resolved(node, choice) for choice in ("upper", "lower")] for node in (first, second))
    found = []
    for pairs in (((0, 0), (1, 1)), ((0, 1), (1, 0))):
        outcomes = [_values(old[i], new[j], known, operator) for i, j in pairs]
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
    if known.accuracy is not None and written is not None and not _unknowns(first, known):
        return by_accuracy(first, second, known)
    if written is not None and written[1] == 0 and not _unknowns(first, known):
        return nearest_whole(first, written[0], known)
    if written is None or written[1] == 0 or letters(first) - _CONSTANTS - ({"e"} if known.euler else set()):
        return None
    try:
        value = Evaluator({}, euler=known.euler).value(first)
        kind = rounding_of(value, *written)
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return None
    if kind in (None, "exact", "wrong"):
        return None
    if isinstance(value, Fraction) and _is_short(value) and written[1] < 2:
        return None
    if kind == "cut":
        return Outcome("follows", "The decimal is cut off; rounding would change its last digit.")
    return Outcome("follows", "The value is rounded.")


def _is_short(value: Fraction) -> bool:
    bottom = value.denominator
    for prime in (2, 5):
        while bottom % prime == 0:
            bottom //= prime
    return bottom == 1


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
    names = sorted((letters(first) | letters(second)) - _CONSTANTS - ({"e"} if known.euler else set()))
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


def _unknowns(part: Node | Statement, known: Known) -> frozenset[str]:
    return letters(part) - _CONSTANTS - ({"e"} if known.euler else set())


def _is_indefinite(node: Node) -> bool:
    return any(isinstance(one, Function) and one.name == "int" and len(one.arguments) == 2 for one in walk(node))


def _put_in(first: Node, second: Node, known: Known) -> Outcome | None:
    """Has a value been put in place of a letter? Then nothing can be said without knowing it."""
    names_a, names_b = _unknowns(first, known), _unknowns(second, known)
    values = known_values(known.givens)
    if len(names_b - names_a) == 1 and _is_indefinite(first):
        return None  # the constant of integration
    if names_b - names_a:
        return undecided("A letter is new on this line; it is not known what it stands for.", is_soft=True)
    dropped = names_a - names_b
    if dropped:
        dropped &= _needed(first, known)
    if not dropped or dropped <= values.keys():
        return None
    if len(dropped) > 1 or names_b:
        return undecided(_PUT_IN, is_soft=True)
    (name,) = dropped
    return undecided(_PUT_IN, is_soft=True) if _plain_value(first, second, name, known) else None


def _needed(first: Node, known: Known, less: Node | None = None) -> frozenset[str]:
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


# conditions


def _set_equal(before: Expression, after: Statement, known: Known) -> Outcome:
    """An equation after an expression: a name for it, the same identity carried on, or where solving begins."""
    if not isinstance(after, Relation | Chain):
        return undecided("It is not clear how this line comes from the expression before it.")
    members = (after.left, after.right) if isinstance(after, Relation) else after.members
    operators = (after.operator,) if isinstance(after, Relation) else after.operators
    if any(operator not in ("=", "\\equiv", "\\approx") for operator in operators):
        return undecided("It is not clear where the inequality comes from.")
    starts_same = isinstance(equal(before.body, members[0], budget=known.budget, euler=known.euler), Yes)
    if not starts_same:
        if isinstance(equal(before.body, members[1], budget=known.budget, euler=known.euler), Yes):
            return inner_link(after, known) or Outcome("follows", "The expression is given a name.")
        return undecided("It is not clear where the equation comes from.", is_soft=True)
    outcome = _values(members[0], members[1], known, operators[0])
    if outcome.kind == "follows":
        return inner_link(after, known) or Outcome("follows", outcome.reason)
    right = members[1]
    if isinstance(right, Number) or not letters(right):
        if known.task == "solve":
            return Outcome("follows", "The expression is set equal to a value.")
        return undecided("The expression is set equal to a value that is not stated.", is_soft=True)
    return outcome


def _conditions(before: Statement, after: Statement, known: Known) -> Outcome:
    names_a, names_b = _unknowns(before, known), _unknowns(after, known)
    if isinstance(after, Chain) and set(after.operators) <= {"=", "\\approx"} and len(after.members) > 2:
        if not names_b:
            return inner_link(after, known, from_first=True) or Outcome("follows", "The numbers agree.")
        return _chain(before, after, known)
    if isinstance(after, System) and len(names_b) == 1 and len(after.parts) > 1:
        together = compare_relations(before, after, known)
        if together.kind != "follows":
            apart = compare_relations(before, Alternatives(after.span, after.parts), known)
            if apart.kind == "follows" or (together.kind == "slip" and apart.kind == "loses"):
                return Outcome(apart.kind, f"Read as alternatives, joined by or. {apart.reason}".strip(), apart.witness)
    if has_plus_minus(after) and any(sign in ("<", ">", "\\le", "\\ge") for _, sign, _ in links(after)):
        return undecided("An inequality with ± has no agreed meaning; write each part out.")
    if not names_a and names_b and isinstance(before, Relation) and not _holds(before, known):
        return compare_relations(before, after, known)
    if not names_b and len(names_a) > 1 and isinstance(after, Relation) and _holds(after, known):
        return Outcome("follows", "It is true for all values.")
    if not names_b and names_a:
        check = _is_check(before, after, known)
        if check is not None:
            return check
    if len(names_b - names_a) == 1 and len(names_a) == 1 and is_periodic(before, min(names_a)):
        general = compare_relations(before, after, known)
        if general.kind != "undecided":
            return general
    if names_b - names_a:
        outcome = _with_values(before, after, known)
        return outcome or _identity(after, known) or undecided(
            "A letter is new on this line; it is not known what it stands for.", is_soft=True
        )
    if names_b < names_a and names_b and not _only_cancelled(before, names_b, known):
        outcome = _with_values(before, after, known)
        if outcome is not None and outcome.kind == "follows":
            return outcome
        subject, value = solved_for(before), solved_for(after)
        if subject is not None and value is not None and subject[0] != value[0] and not letters(value[1]):
            return undecided(_PUT_IN, is_soft=True)
        if outcome is not None:
            return outcome
        direct = compare_relations(before, after, known)
        if direct.kind in ("follows", "loses", "adds"):
            return direct
        return undecided(_PUT_IN, is_soft=True)
    outcome = compare_relations(before, after, known)
    if outcome.kind in ("slip", "adds"):
        with_values = _with_values(before, after, known) if len(names_a | names_b) > 1 else None
        if with_values is not None and with_values.kind == "follows":
            return with_values
        if outcome.kind == "slip":
            return _identity(after, known) or outcome
    return outcome


def _only_cancelled(before: Statement, names: frozenset[str], known: Known) -> bool:
    """Are the letters of the relation that are not among these gone once like terms are collected?"""
    if not isinstance(before, Relation):
        return False
    return _needed(before.left, known, before.right) - _CONSTANTS <= names


def _holds(statement: Statement, known: Known) -> bool:
    try:
        return is_true(statement, Evaluator({}, euler=known.euler, complex_numbers=known.complex_numbers))
    except (UnsureError, UnsupportedError, TooLargeError):
        return True


def _identity(after: Statement, known: Known) -> Outcome | None:
    """A line that holds for all values may stand anywhere."""
    if not isinstance(after, Relation) or after.operator not in ("=", "\\equiv"):
        return None
    if not letters(after) - _CONSTANTS:
        return None
    if isinstance(equal(after.left, after.right, budget=known.budget, euler=known.euler), Yes):
        return Outcome("follows", "It is true for all values.")
    return None


def _chain(before: Statement, after: Chain, known: Known) -> Outcome:
    """a = b = c after a condition: the first link as a condition, the others as identities or conditions too."""
    first = Relation(after.span, after.members[0], after.operators[0], after.members[1], after.operator_spans[0])
    outcome = _conditions(before, first, known)
    if outcome.kind == "slip":
        ends = Relation(after.span, after.members[0], "=", after.members[-1], after.operator_spans[0])
        if _conditions(before, ends, known).kind == "follows":
            return undecided("The equals signs run on; write it as two lines.", is_soft=True)
        return outcome
    inner = inner_link(after, known)
    if inner is None or outcome.kind != "follows":
        return outcome
    whole = compare_relations(before, after, known)
    return whole if whole.kind in ("follows", "loses") else inner


def _with_values(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """The step again with known values put in; None when nothing is known of the letters in question."""
    values: Mapping[str, Node] = known_values(known.givens)
    solved = solved_for(after)
    if solved is not None:  # what the line says of the letter is not put in
        values = {name: value for name, value in values.items() if name != solved[0]}
    if not values.keys() & (letters(before) | letters(after)):
        return None
    first, second = substituted_in(before, values), substituted_in(after, values)
    if letters(second) - letters(first) - _CONSTANTS:
        return None
    outcome = compare_relations(first, second, known)
    if outcome.kind != "follows" and letters(second) < letters(first):
        return None
    if outcome.kind == "follows":
        return Outcome("follows", outcome.reason or "With the known value put in.")
    return outcome if outcome.kind in ("slip", "loses", "adds") else None


def _is_check(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """A line of numbers that puts a value into the line before."""
    if not isinstance(after, Relation) or not isinstance(before, Relation):
        return None
    values = known_values(known.givens)
    if letters(before) - _CONSTANTS <= values.keys():
        first = substituted_in(before, values)
        if isinstance(first, Relation) and all(
            isinstance(equal(a, b, budget=known.budget, euler=known.euler), Yes)
            for a, b in ((first.left, after.left), (first.right, after.right))
        ):
            try:
                holds = is_true(after, Evaluator({}, euler=known.euler))
            except (UnsureError, UnsupportedError, TooLargeError):
                return None
            return Outcome("follows", "The check holds." if holds else "The check fails: the value is no solution.")
    return None
