"""The walk over a working: each line judged from the lines before it that still stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from checker.accuracy import stated_accuracy
from checker.bounds import is_limit
from checker.budget import OutOfTimeError
from checker.claims import introduces, judged_claim, restricts_nothing, set_to_nought
from checker.common_solutions import judged_by_solutions
from checker.errors import ParseError
from checker.further import Place, equations_of, place_of
from checker.identical import judged_by_coefficients
from checker.kinder import is_put_in, is_taken, names_something, read_kindly
from checker.knowledge import learned, solved_by_number
from checker.line_kinds import (
    CONSTANTS,
    are_values,
    bounds_values,
    is_domain,
    is_exchanged,
    is_value,
    is_value_given,
    parts_of_line,
    valued_letter,
)
from checker.outcome import Known, Outcome, undecided
from checker.relations import compare_relations
from checker.report import Verdict
from checker.standing import Entry, Family, Step, resting_on
from checker.steps import VALUE_PUT_IN, divides_by_zero, false_number, judge_step
from checker.substitution import solved_for
from checker.syntax import (
    Alternatives,
    Chain,
    Definition,
    Expression,
    Line,
    Note,
    Relation,
    Statement,
    Symbol,
    System,
    letters,
    parse_line,
)
from checker.syntax.shapes import is_equation, is_literal
from checker.systems import follows_together

__all__ = ["Entry", "Step", "Walk", "parts_of_line"]

_FARTHEST = 12  # earlier lines that a line is tried against
_SECONDS_A_LINE = 0.8
_TAKEN = "A value put in; it is taken as given."
_ORDER = {"follows": 0, "loses": 1, "adds": 2, "undecided": 3, "slip": 4}
_READINGS = {
    "mixed": "The whole number and the fraction are read as a product.",
    "slash": "The division is read as taking in all that stands after it.",
    "function": "The letter before the bracket is read as a factor.",
    "label": "What stands in brackets before the line is read the other way, as a factor or as a label.",
    "unit": "The letters after the number are read as factors.",
    "list": "The commas are read as parting numbers.",
    "power of a function": "The power is read as belonging to the bracket.",
}

@dataclass(slots=True)
class Walk:
    """Lines judged one after another.

    Args:
        lines: the readable lines by number; None for those that could not be read.
        known: time, task and givens.
        has_vectors: do vectors stand in the working? They are not judged.
        completed: lines with one branch of the solutions, each with the line that gives the last of the others.
    """

    lines: Sequence[Line | None]
    known: Known
    entries: list[Entry] = field(default_factory=list)
    steps: dict[int, Step] = field(default_factory=dict)
    first_slip: int | None = None
    completed: dict[int, int] = field(default_factory=dict)
    has_vectors: bool = False
    _branches: dict[int, list[tuple[int, Statement]]] = field(default_factory=dict)

    def start(self, statement: Statement, index: int) -> None:
        """Take a statement as given."""
        for part in parts_of_line(statement):
            self.entries.append(Entry(index, part, "sound", is_start=True))

    def open_with(self, index: int) -> Step | None:
        """Take the first statement of a line as given; what goes on from it on the same line is judged."""
        line = self.lines[index]
        assert line is not None
        parts = parts_of_line(line.statement)
        self.start(parts[0], index)
        return self.take(index, from_part=1) if len(parts) > 1 else None

    def take(self, index: int, *, from_part: int = 0) -> Step:
        """Judge a line from those before it and let it stand for those after."""
        line = self.lines[index]
        assert line is not None
        parts = parts_of_line(line.statement)[from_part:]
        step: Step | None = None
        for at, part in enumerate(parts):
            one = self._judged(index, part, line)
            if at == 0 and len(parts) > 1 and solved_by_number(part) and is_put_in(one, self.entries):
                definition = Definition(part.span, part.left, part.right)  # type: ignore[union-attr, arg-type]
                one = Step("start", None, Outcome("follows", _TAKEN), definition)
            if step is None or _ORDER[step.outcome.kind] < _ORDER[one.outcome.kind]:
                step = one
            is_start = one.verdict == "start" and one.outcome.reason != _TAKEN
            self.entries.append(Entry(index, one.part, self._family(one), is_start))
        for condition in line.conditions:
            solved = solved_for(condition)
            if solved is not None:
                definition = Definition(condition.span, Symbol(condition.span, solved[0]), solved[1])
                self.entries.append(Entry(index, definition, "sound"))
        assert step is not None
        if step.verdict == "slip" and self.first_slip is None:
            self.first_slip = index
            self.entries = [
                replace(entry, family="slip") if entry.index == index else entry for entry in self.entries
            ]
        self.steps[index] = step
        return step

    def sources(self, index: int) -> list[Entry]:
        """The entries before a line, the nearest first."""
        return [entry for entry in reversed(self.entries) if entry.index != index]

    def _family(self, step: Step) -> Family:
        if step.verdict == "slip" or step.verdict == "ft":
            return "slip"
        if step.verdict in ("loses", "adds", "undecided", "follows") and step.source is not None:
            return next((entry.family for entry in reversed(self.entries) if entry.index == step.source), "sound")
        return "sound"

    # one statement

    def _judged(self, index: int, part: Statement, line: Line) -> Step:
        if isinstance(part, Definition):
            return Step("follows", None, Outcome("follows", "A name for later lines."), part)
        if isinstance(part, Relation) and part.operator == "\\in":
            return Step("start", None, Outcome("follows", "Taken as a condition on the letter."), part)
        if divides_by_zero(part, self.known):
            outcome = undecided("A division by zero stands on this line; it has no value.")
            return Step("undecided", None, outcome, part)
        outcome, source = self._best(index, part, line)
        if outcome.kind in ("slip", "undecided"):
            again = self._read_again(index, line)
            if again is not None:
                outcome, source = again
        if outcome.kind == "slip" or (outcome.kind in ("adds", "loses") and is_equation(part)):
            place = self._further(index, part, line)
            if place is Place.FURTHER:
                return Step("start", None, Outcome("follows", "Taken as a further equation of the system."), part)
            if place is Place.UNCLEAR and outcome.kind == "slip":
                told = "It does not follow from the line before; it may be a further equation. Say which is meant."
                outcome = undecided(told, is_soft=True)
        if outcome.kind == "undecided" and outcome.is_soft and is_taken(part, line, self.entries):
            return Step("start", None, Outcome("follows", _TAKEN), part)
        if outcome.kind == "slip" and self.has_vectors:
            return Step("undecided", None, undecided("Vectors are not judged."), part)
        softer = read_kindly(part, line, outcome, source, self.entries, self.known)
        if softer is not None:
            number = None if softer.source is None else softer.source.index
            told = self._verdict(softer.outcome, softer.source)
            return Step(told, number, softer.outcome, softer.part, tuple(self.entries))
        if outcome.kind == "slip" and source is not None and bounds_values(source.statement, part):
            return Step("start", None, Outcome("follows", "A condition on the letter, taken as given."), part)
        if outcome.kind in ("undecided", "slip") and names_something(part, self.lines[index + 1:], self.entries):
            definition = Definition(part.span, part.left, part.right)  # type: ignore[union-attr, arg-type]
            return Step("follows", None, Outcome("follows", "A name for later lines."), definition)
        if outcome.kind == "slip" and any(is_exchanged(entry.statement, part) for entry in self.entries):
            return Step("start", None, Outcome("follows", "The two letters are exchanged, as for an inverse."), part)
        index_of_source = None if source is None else source.index
        return Step(self._verdict(outcome, source), index_of_source, outcome, part, tuple(self.entries))

    def _verdict(self, outcome: Outcome, source: Entry | None) -> Verdict:
        if outcome.kind != "follows":
            return outcome.kind
        if outcome.is_soft:
            return "start"
        if self.first_slip is None or source is None:
            return "follows"
        if source.family == "slip":
            return "ft"
        return "back" if source.index < self.first_slip else "follows"

    def _best(self, index: int, part: Statement, line: Line) -> tuple[Outcome, Entry | None]:
        """The kindest fair verdict over the earlier lines: any line may follow from any other."""
        known = self._known_for(line)
        false = false_number(part, known)
        if false is not None and self.entries:
            return false, self.entries[-1]
        claim = self._claim(part, known) or self._with_value_first(part, line, known)
        if claim is not None:
            return claim
        nearest: tuple[Outcome, Entry | None] | None = None
        soft: tuple[Outcome, Entry | None] | None = None
        computed = not solved_by_number(part) or not isinstance(part, Relation) or not is_literal(part.right)
        sources = list(reversed(self.entries))[:_FARTHEST]
        if isinstance(part, Expression | Chain) and part.continues:
            sources = sorted(sources, key=lambda entry: isinstance(entry.statement, Definition))
        for entry in sources:
            if isinstance(entry.statement, Definition):
                continue
            if entry.is_start and divides_by_zero(entry.statement, self.known):
                nearest = nearest or (undecided("The line before holds a division by zero; it has no value."), entry)
                continue
            try:
                step_known = self._without(known, entry)
                outcome = judge_step(entry.statement, part, step_known)
                if outcome.kind != "follows":
                    outcome = judged_by_coefficients(entry.statement, part, step_known) or outcome
                if outcome.kind not in ("follows", "slip"):
                    outcome = set_to_nought(entry.statement, part, step_known) or outcome
                if outcome.kind == "slip" and not entry.is_start and are_values(entry.statement, part):
                    continue  # another value of the same letter, put in or of another branch
                if outcome.kind != "follows" and restricts_nothing(entry.statement, known):
                    outcome = undecided("It is not clear how this line comes from the rule before it.", is_soft=True)
            except OutOfTimeError:
                return undecided("The time for this line ran out."), nearest[1] if nearest else entry
            if outcome.kind == "loses":
                outcome = self._completed(entry, part, index, outcome)
            if outcome.kind == "follows":
                return outcome, resting_on(entry, part, self.entries) if outcome.reason == VALUE_PUT_IN else entry
            if nearest is None and not (outcome.kind == "undecided" and computed and is_value_given(entry.statement)):
                nearest = (outcome, entry)
            if outcome.kind == "loses" or (outcome.kind == "adds" and entry.is_start and soft is None):
                soft = soft or (outcome, entry)
        if nearest is None:
            return undecided("There is no line before it to judge it from."), None
        if (
            nearest[0].kind in ("slip", "undecided", "adds") or self._system_size() > 1
        ) and not isinstance(part, Expression):
            together = self._together(part, known)
            if together is not None:
                return together
            if nearest[0].kind != "adds" or self._system_size() > 1:
                whole = self._by_solutions(part, known)
                if whole is not None:
                    return whole
        if nearest[0].kind == "slip" and soft is not None and (soft[0].kind == "loses" or _is_known_value(soft[1])):
            return soft
        return nearest

    def _system_size(self) -> int:
        return sum(1 for _ in equations_of([entry.statement for entry in self.entries if entry.is_start]))

    def _by_solutions(self, part: Statement, known: Known) -> tuple[Outcome, Entry | None] | None:
        """The line against the solutions that the equations taken as given have in common."""
        starts = [entry for entry in self.entries if entry.is_start]
        equations = list(equations_of([entry.statement for entry in starts]))
        if len(equations) < 2:
            return None
        try:
            outcome = judged_by_solutions(equations, part, known)
        except OutOfTimeError:
            return None
        if outcome is None or (outcome.kind != "follows" and self.first_slip is not None):
            return None
        named = " and ".join(dict.fromkeys(str(entry.index + 1) for entry in starts if entry.index >= 0))
        if outcome.kind == "follows" and named:
            outcome = replace(outcome, reason=f"From lines {named} together.")
        return outcome, starts[-1]

    def _claim(self, part: Statement, known: Known) -> tuple[Outcome, Entry | None] | None:
        """What the line says of a function, a derivative or a sequence that earlier lines tell of."""
        earlier = [(entry.index, entry.statement) for entry in self.entries]
        try:
            found = judged_claim(part, earlier, known)
        except OutOfTimeError:
            return None
        if found is None:
            if introduces(part, known) and self.entries:
                return Outcome("follows", "Taken as given for the lines after it.", is_soft=True), None
            return None
        outcome, index = found
        source = next((entry for entry in reversed(self.entries) if entry.index == index), None)
        return outcome, source

    def _with_value_first(
        self, part: Statement, line: Line, known: Known
    ) -> tuple[Outcome, Entry | None] | None:
        """x = 1, y = 1 - 6 + 9 = 4 after y = x^3 - 6x^2 + 9x: the first value put in gives the second."""
        value = next((one for one in line.conditions if solved_by_number(one)), None)
        rest = part
        if isinstance(part, System) and len(part.parts) == 2 and solved_by_number(part.parts[0]):
            value, rest = part.parts
        if value is None:
            return None
        solved, given = solved_for(rest), solved_for(value)
        if solved is None or given is None or solved[0] == given[0] or letters(solved[1]):
            return None
        for entry in reversed(self.entries):
            told = solved_for(entry.statement)
            if told is None or told[0] != solved[0] or letters(told[1]) - CONSTANTS != {given[0]}:
                continue
            outcome = judge_step(entry.statement, rest, replace(known, givens=(*known.givens, value)))
            return (outcome, entry) if outcome.kind in ("follows", "slip") else None
        return None

    def _together(self, part: Statement, known: Known) -> tuple[Outcome, Entry | None] | None:
        latest = {told: entry for entry in self.entries if (told := valued_letter(entry.statement)) is not None}
        earlier = [
            (entry.index, entry.statement) for entry in self.entries
            if (told := valued_letter(entry.statement)) is None or latest[told] is entry
        ]
        try:
            outcome = follows_together(earlier, part, known)
        except OutOfTimeError:
            return None
        if outcome is None:
            return None
        used = [entry for entry in self.entries if entry.index in outcome.used]
        source = next((entry for entry in reversed(used) if entry.family == "slip"), used[-1] if used else None)
        named = " and ".join(str(number + 1) for number in sorted(set(outcome.used)))
        return replace(outcome, reason=f"From lines {named} together."), source

    def _completed(self, entry: Entry, part: Statement, index: int, outcome: Outcome) -> Outcome:
        """A branch on a line of its own: with the branches before it, does it give all the solutions?"""
        branches = self._branches.setdefault(id(entry.statement), [])
        branches[:] = [branch for branch in branches if branch[0] != index]
        others = [statement for _, statement in branches]
        branches.append((index, part))
        if not others:
            return outcome
        whole = Alternatives(part.span, (*others, part))
        if compare_relations(entry.statement, whole, self.known).kind == "follows":
            self.completed.update({number: index for number, _ in branches[:-1]})
            return Outcome("follows", "With the branches on the lines before it, all solutions are there.")
        return outcome

    def _known_for(self, line: Line) -> Known:
        values = [
            entry.statement for entry in self.entries
            if isinstance(entry.statement, Definition) or is_value(entry.statement) or is_domain(entry.statement)
            or (entry.is_start and entry.index > 0 and is_limit(entry.statement))
        ]
        budget = self.known.budget.part(_SECONDS_A_LINE)
        told = (*((-1, given) for given in self.known.givens), *((one.index, one.statement) for one in self.entries))
        return replace(
            self.known, budget=budget, accuracy=stated_accuracy(line.text) if line.accuracy else None,
            givens=(*self.known.givens, *line.conditions, *values), knowledge=learned(told),
        )

    def _without(self, known: Known, entry: Entry) -> Known:
        """What is known besides the line that is judged from."""
        return replace(known, givens=tuple(given for given in known.givens if given is not entry.statement))

    def _read_again(self, index: int, line: Line) -> tuple[Outcome, Entry | None] | None:
        """The other fair readings of this line and of the one before it: does it follow in one of them?"""
        for doubt in sorted(line.doubts):
            try:
                other = parse_line(line.text, line.readings | {doubt})
            except ParseError:
                continue
            if len(parts_of_line(other.statement)) != 1:
                continue
            outcome, source = self._best(index, other.statement, other)
            if outcome.kind == "follows":
                return replace(outcome, reason=_READINGS.get(doubt, "")), source
        for entry in self.sources(index)[:3]:
            before = self.lines[entry.index] if entry.index >= 0 else None
            for doubt in sorted(before.doubts if before is not None else ()):
                assert before is not None
                try:
                    other = parse_line(before.text, before.readings | {doubt})
                except ParseError:
                    continue
                last, first = parts_of_line(other.statement)[-1], parts_of_line(line.statement)[0]
                outcome = judge_step(last, first, self._known_for(line))
                if outcome.kind == "follows":
                    return replace(outcome, reason=f"On line {entry.index + 1}: {_READINGS.get(doubt, '')}"), entry
        return None

    def _further(self, index: int, part: Statement, line: Line) -> Place:
        """Is it a further equation, set beside those taken as given: labelled, or needed by later lines?"""
        starts = [entry.statement for entry in self.entries if entry.is_start]
        if not starts or self.first_slip is not None or not any(isinstance(one, Relation | System) for one in starts):
            return Place.SLIP
        if line.label is not None and isinstance(part, Relation) and len(letters(part) - CONSTANTS) > 1:
            return Place.FURTHER
        later = [
            statement for one in self.lines[index + 1:] if one is not None
            for statement in parts_of_line(one.statement) if not isinstance(statement, Expression | Note)
        ]
        return place_of(part, starts, later, self.known)


def _is_known_value(entry: Entry | None) -> bool:
    """x = 3 + sqrt 2: what holds for it is implied, whatever else would satisfy it too."""
    solved = None if entry is None else solved_for(entry.statement)
    return solved is not None and not letters(solved[1]) - CONSTANTS
