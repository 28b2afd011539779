"""What one line does for one mark."""

from __future__ import annotations

from dataclasses import dataclass

from checker.errors import ParseError
from checker.marking.candidate import Candidate, Written
from checker.marking.comparison import Likeness, Match, compared
from checker.marking.result import Awarded
from checker.marking.scheme import Mark
from checker.marking.shape import is_linear, most_terms, one_piece_differs, pieces_shared, shape
from checker.relations import solved_letter
from checker.syntax import Statement, letters, parse

__all__ = ["Evidence", "weighed"]

# slips in working out, not in the method; Source: common practice, no source
_OF_ARITHMETIC = frozenset({
    "arithmetic", "copied", "like-terms", "product", "sign", "sign-bracket", "sign-product", "signed",
})


@dataclass(frozen=True, slots=True)
class Evidence:
    """What a line says for or against a mark.

    Args:
        awarded: as in an award.
        reason: one plain sentence.
        is_from_misread: does the line rest on a misread question?
        is_settled: is it refused for what stands on the line, so that nothing unseen could earn it?
    """

    awarded: Awarded
    reason: str
    is_from_misread: bool = False
    is_settled: bool = False


def weighed(mark: Mark, line: Written, told: Candidate) -> Evidence | None:
    """Weigh a line for a mark; None when it has nothing to do with it."""
    if mark.part == "special case":
        return _special(mark, line, told)
    best: Evidence | None = None
    for target in mark.targets:
        for statement in (line.gathered, line.statement):
            if statement is None:
                continue
            match = compared(target, statement, mark.form, told.known, is_opening=line.is_opening)
            one = (
                _of_part(mark, target, match, line, told) if told.is_part(target)
                else _by_likeness(mark, target, match, line, told)
            )
            if one is not None and one.awarded is True:
                return one
            if one is not None and (best is None or (best.awarded is False and one.awarded == "teacher")):
                best = one
    return best


def _by_likeness(mark: Mark, target: Statement, match: Match, line: Written, told: Candidate) -> Evidence | None:
    number = line.index + 1
    match match.likeness:
        case Likeness.SAME:
            return _right(mark, line, told, f"Line {number} is the line of the scheme or its equivalent.")
        case Likeness.FURTHER:
            found = _right(mark, line, told, f"Line {number} implies it.")
            return _implied(mark, target, line, told) if found.awarded is True else found
        case Likeness.ROUNDED:
            return Evidence("teacher", f"Line {number} gives a rounded value where the scheme's is exact; the teacher "
                            "decides.")
        case Likeness.UNROUNDED:
            return Evidence("teacher", f"Line {number} gives an exact value where the scheme wants a decimal (awrt); "
                            "the teacher decides.")
        case Likeness.UNSURE:
            return Evidence("teacher", f"Line {number} could not be compared with the scheme; the teacher decides.")
        case Likeness.OTHER_FORM:
            if mark.form == "oe":
                if mark.is_final and not line.is_opening and line is told.written[-1]:
                    return Evidence("teacher", f"Line {number} is equivalent but written in another form than the "
                                    "scheme's; the teacher decides.")
                return None
            if line.is_opening or not mark.is_final:
                return None
            asked = "as in the scheme" if mark.form == "exact" else mark.form
            return Evidence(False, f"Line {number} has the right value but is not written {asked}.", is_settled=True)
        case Likeness.LIKE:
            return _like(mark, target, match.part, line, told)
        case Likeness.PART:
            return None
        case _:
            return _slipped_further(mark, target, line, told) or _easier(mark, line, told)


def _of_part(mark: Mark, target: Statement, match: Match, line: Written, told: Candidate) -> Evidence | None:
    """A scheme may ask for some terms of a line only."""
    number = line.index + 1
    if match.likeness in (Likeness.SAME, Likeness.PART) and not mark.is_final:
        sentence = f"Line {number} shows it among its terms."
        return Evidence(True, sentence) if line.verdict == "slip" else _right(mark, line, told, sentence)
    if line.verdict == "slip" and mark.kind == "M" and most_terms(line.statement) > most_terms(target):
        return Evidence("teacher", f"The scheme asks for part of a line, and line {number} has a slip in it; the "
                        "teacher decides.")
    return None


def _special(mark: Mark, line: Written, told: Candidate) -> Evidence | None:
    """A special case is what the scheme says it is, however it came about."""
    for target in mark.targets:
        for statement in (line.gathered, line.statement):
            if statement is None or line.is_opening:
                continue
            if compared(target, statement, mark.form, told.known).likeness is Likeness.SAME:
                return Evidence(True, f"Line {line.index + 1} is the special case of the scheme.")
    return None


# a line that is right


def _right(mark: Mark, line: Written, told: Candidate, sentence: str) -> Evidence:
    if told.is_misread:
        return Evidence("teacher", f"{sentence} Yet the question was misread; the teacher decides.")
    is_method = mark.kind == "M"
    wrong = "It is right, but comes from wrong working, which earns nothing by itself."
    if line.verdict == "slip":
        if is_method:
            return Evidence("teacher", f"{sentence} It does not follow from the working; the teacher decides.")
        return Evidence(False, f"{sentence} {wrong}", is_settled=True)
    if line.is_own:
        if is_method:
            return Evidence("teacher", f"{sentence} It comes from a wrong line; the teacher decides.")
        if not mark.ft:
            return Evidence(False, f"{sentence} {wrong}", is_settled=True)
    first = told.report.first_slip
    if mark.cso and first is not None and first < line.index:
        return Evidence(False, f"{sentence} The solution is not free of errors (cso): see line {first + 1}.",
                        is_settled=True)
    if not is_method and line.verdict == "back" and not _goes_on(line, told):
        return Evidence(False, f"{sentence} {wrong}", is_settled=True)
    return Evidence(True, sentence)


def _goes_on(line: Written, told: Candidate) -> bool:
    """Was the working taken up again here: does a later line follow from this one?"""
    return any(one.source == line.index and one.verdict == "follows" for one in told.written)


def _implied(mark: Mark, target: Statement, line: Written, told: Candidate) -> Evidence:
    """The line asked for was left out, but a later one that is right may come from it only."""
    number = line.index + 1
    if mark.implied is True:
        return Evidence(True, f"Line {number} is right and implies it, as the scheme allows.")
    if mark.implied is False:
        return Evidence(False, f"Line {number} is right, but the scheme wants the working to be shown.")
    source = told.at(line.source)
    is_sound = line.verdict == "follows" and not line.is_own
    if is_sound and source is not None and not source.is_opening and is_linear(target) and is_linear(line.statement):
        return Evidence(True, f"Line {number} is right and follows from working shown, so it implies this.")
    return Evidence("teacher", f"Line {number} is right and may imply it, but the working is not shown; the teacher "
                    "decides.")


# a line with other numbers than the scheme's


def _like(mark: Mark, target: Statement, part: Statement, line: Written, told: Candidate) -> Evidence | None:
    number = line.index + 1
    is_method = mark.kind == "M"
    if line.verdict == "slip":
        if not is_method:
            return Evidence(False, f"Line {number} has a slip.", is_settled=True)
        return _with_slip(mark, target, part, line, told)
    source = told.at(line.source)
    if source is not None and shape(source.statement) == shape(part) and letters(source.statement) == letters(part):
        return None  # the same kind of line again: it is not the step of the scheme
    if line.is_own and line.verdict == "ft":
        sentence = f"Line {number} follows from the candidate's own wrong line"
        if is_method:
            return Evidence(True, f"{sentence} by the step that the scheme asks for; a method is not lost by a slip.")
        if not mark.ft:
            code = "correct answer only (cao)" if mark.cao else "not a follow-through mark"
            return Evidence(False, f"{sentence}, but this is {code}.", is_settled=True)
        if told.breaks_given(part):
            return Evidence(False, f"{sentence}, but its value cannot be, by what is given.", is_settled=True)
        return Evidence(True, f"{sentence} (ft).")
    if line.is_open and (is_method or mark.ft):
        return Evidence("teacher", f"Line {number} is of the form asked, but it or a line before it could not be "
                        "judged; the teacher decides.")
    if told.is_misread and line.verdict in ("follows", "loses", "adds") and not line.is_own:
        if line.verdict != "follows":
            return Evidence("teacher", f"Line {number} goes on from a misread question; the teacher decides.")
        sentence = f"Line {number} follows from the question as misread."
        if is_method:
            return Evidence(True, f"{sentence} The method is not lost.", is_from_misread=True)
        if mark.cao or mark.cso:
            return Evidence(False, f"{sentence} This mark is for the correct answer only.", is_settled=True)
        return Evidence("teacher", sentence, is_from_misread=True)
    return None


def _repaired(line: Written, told: Candidate) -> Statement | None:
    slip = told.report.lines[line.index].slip
    if slip is None:
        return None
    try:
        return parse(slip.repaired)
    except (ParseError, RecursionError):
        return None


def _with_slip(mark: Mark, target: Statement, part: Statement, line: Written, told: Candidate) -> Evidence | None:
    """A line of the scheme's form with a slip: the method is there when only the slip's own term is wrong."""
    number = line.index + 1
    slip, mended = told.report.lines[line.index].slip, _repaired(line, told)
    if slip is None or mended is None:
        return Evidence("teacher", f"Line {number} is of the form asked but has a slip; the teacher decides.")
    if not one_piece_differs(line.statement, mended):
        return Evidence(False, f"Line {number} has more wrong than one term.")
    again = compared(target, mended, mark.form, told.known).likeness
    if again is Likeness.SAME:
        if slip.kind in _OF_ARITHMETIC and pieces_shared(line.statement, mended):
            return Evidence(True, f"Line {number} shows the method; only its term {slip.term} is wrong.")
        return Evidence("teacher", f"Line {number} has one wrong term, {slip.term}, which may be a slip or a wrong "
                        "method; the teacher decides.")
    if again is Likeness.LIKE:
        return Evidence("teacher", f"Line {number} has a further slip after an earlier one; the teacher decides.")
    return None


def _slipped_further(mark: Mark, target: Statement, line: Written, told: Candidate) -> Evidence | None:
    """A line beyond the one asked for, right but for one term."""
    if mark.kind != "M" or line.verdict != "slip" or mark.implied is False:
        return None
    mended = _repaired(line, told)
    if mended is None or not one_piece_differs(line.statement, mended):
        return None
    again = compared(target, mended, mark.form, told.known).likeness
    if again is Likeness.SAME:
        return Evidence("teacher", f"Line {line.index + 1} is the line of the scheme but for one term; the teacher "
                        "decides whether the method is shown.")
    if shape(mended) != shape(line.statement) or pieces_shared(line.statement, mended) < 2:
        return None  # a lone wrong answer shows nothing
    if again is not Likeness.FURTHER or solved_letter(line.statement) is not None:
        return None
    return Evidence("teacher", f"Line {line.index + 1} is beyond the line asked for and right but for one term; the "
                    "teacher decides whether the method is shown.")


def _easier(mark: Mark, line: Written, told: Candidate) -> Evidence | None:
    """A final answer by follow-through that has another form than the scheme's: the rest may have become easier."""
    if not (mark.ft and mark.is_final and line.verdict == "ft" and line is told.written[-1]):
        return None
    return Evidence("teacher", f"Line {line.index + 1} follows from the candidate's own wrong line but has another "
                    "form than the scheme's, so the rest may have become easier; the teacher decides.")
