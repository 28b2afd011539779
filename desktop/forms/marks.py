"""Why a mark of the teacher's scheme is suggested or not, and what is wrong with a scheme (checker/marking)."""

from __future__ import annotations

from desktop.language import tr_later

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    # A line that is right
    tr_later("Line {number} is the line of the scheme or its equivalent."),
    tr_later("Line {number} implies it."),
    tr_later("Line {number} gives a rounded value where the scheme's is exact; the teacher decides."),
    tr_later("Line {number} gives an exact value where the scheme wants a decimal (awrt); the teacher decides."),
    tr_later("Line {number} could not be compared with the scheme; the teacher decides."),
    tr_later("Line {number} is equivalent but written in another form than the scheme's; the teacher decides."),
    tr_later("Line {number} has the right value but is not written as in the scheme."),
    tr_later("Line {number} has the right value but is not written expanded."),
    tr_later("Line {number} has the right value but is not written factorised."),
    tr_later("Line {number} has the right value but is not written simplest."),
    tr_later("Line {number} has the right value but is not written awrt."),
    tr_later("Line {number} shows it among its terms."),
    tr_later("The scheme asks for part of a line, and line {number} has a slip in it; the teacher decides."),
    tr_later("Line {number} is the special case of the scheme."),
    tr_later("Yet the question was misread; the teacher decides."),
    tr_later("It is right, but comes from wrong working, which earns nothing by itself."),
    tr_later("It does not follow from the working; the teacher decides."),
    tr_later("It comes from a wrong line; the teacher decides."),
    tr_later("The solution is not free of errors (cso): see line {number}."),
    tr_later("Line {number} is right and implies it, as the scheme allows."),
    tr_later("Line {number} is right, but the scheme wants the working to be shown."),
    tr_later("Line {number} is right and follows from working shown, so it implies this."),
    tr_later("Line {number} is right and may imply it, but the working is not shown; the teacher decides."),
    # A line with other numbers
    tr_later("Line {number} has a slip."),
    tr_later(
        "Line {number} follows from the candidate's own wrong line by the step that the scheme asks for; a "
        "method is not lost by a slip."
    ),
    tr_later("Line {number} follows from the candidate's own wrong line, but this is correct answer only (cao)."),
    tr_later("Line {number} follows from the candidate's own wrong line, but this is not a follow-through mark."),
    tr_later("Line {number} follows from the candidate's own wrong line, but its value cannot be, by what is given."),
    tr_later("Line {number} follows from the candidate's own wrong line (ft)."),
    tr_later(
        "Line {number} is of the form asked, but it or a line before it could not be judged; the teacher decides."
    ),
    tr_later("Line {number} goes on from a misread question; the teacher decides."),
    tr_later("Line {number} follows from the question as misread."),
    tr_later("The method is not lost."),
    tr_later("This mark is for the correct answer only."),
    tr_later("Line {number} is of the form asked but has a slip; the teacher decides."),
    tr_later("Line {number} has more wrong than one term."),
    tr_later("Line {number} shows the method; only its term {a} is wrong."),
    tr_later("Line {number} shows the method; only its term (missing) is wrong."),
    tr_later("Line {number} has one wrong term, {a}, which may be a slip or a wrong method; the teacher decides."),
    tr_later(
        "Line {number} has one wrong term, (missing), which may be a slip or a wrong method; the teacher decides."
    ),
    tr_later("Line {number} has a further slip after an earlier one; the teacher decides."),
    tr_later(
        "Line {number} is the line of the scheme but for one term; the teacher decides whether the method is shown."
    ),
    tr_later(
        "Line {number} is beyond the line asked for and right but for one term; the teacher decides whether "
        "the method is shown."
    ),
    tr_later(
        "Line {number} follows from the candidate's own wrong line but has another form than the scheme's, "
        "so the rest may have become easier; the teacher decides."
    ),
    # Marks as a whole
    tr_later("Working is shown, so the marks for an answer alone do not apply."),
    tr_later("No working is shown: the N marks stand for the answer."),
    tr_later("The scheme itself gives as much."),
    tr_later("The marks left to the teacher may give as much; the teacher decides."),
    tr_later("It stands in place of the marks above."),
    tr_later("These marks are a suggestion; the teacher decides."),
    tr_later("The scheme describes this mark in words; the teacher decides."),
    tr_later("The time for marking ran out; the teacher decides."),
    tr_later("This mark could not be weighed; the teacher decides. See the log."),
    tr_later("No line shows it."),
    tr_later("The final answer is not that of the scheme."),
    tr_later("Line {number} gives another answer; the teacher decides which attempt counts."),
    tr_later("What follows it is ignored (isw)."),
    tr_later("The misread (MR) loses this mark."),
    tr_later("The teacher decides how much it loses."),
    tr_later("Line {number} could not be read; the teacher decides."),
    tr_later("The answer is right, so another valid method may be there; the teacher decides."),
    tr_later("It needs the {name} before it, which is not earned."),
    tr_later("It needs the {name} before it, on which the teacher decides."),
    # A scheme that cannot be read
    tr_later("Entry {number} of the scheme: {sentence}"),
    tr_later("Line {number} of the scheme: {sentence}"),
    tr_later(
        '"scheme" is not a list of 1 to {number} marks. Write it like [{"mark": "M1", "line": "2x=10"}, '
        '{"mark": "A1", "final": "x=5"}].'
    ),
    tr_later('it is not an object. Write it like {"mark": "M1", "line": "2x=10"}.'),
    tr_later('"{name}" is not known here. Use only: {other}.'),
    tr_later(
        '"mark" is missing or wrong. Write M, A or B and how many marks, such as "M1" or "A2"; dM1 for one '
        "that depends on the M before, N1 for an answer without working, SC B1 for a special case."
    ),
    tr_later("N is for an answer without working and is no special case. Write N1 or SC B1."),
    tr_later('"form" is not known. Use one of: {other}.'),
    tr_later('"for" is not a string. Say in words what the mark is for, or leave it out.'),
    tr_later('"ft" and "cao" or "cso" exclude each other. Keep one of them.'),
    tr_later('"implied" is not true, false or null. Choose one, or leave it out.'),
    tr_later('"{name}" is not true or false. Choose one, or leave it out.'),
    tr_later('it has both "line" and "final". Keep "final" for the final answer, "line" for any other line.'),
    tr_later('nothing says what earns it. Give "line", "final", or words in "for".'),
    tr_later('"form" needs a "line" or a "final" beside it. Add one, or leave "form" out.'),
    tr_later('"{name}" is not LaTeX. Give one line as a string, or a list of lines that will do.'),
    tr_later('"{name}" cannot be read. {sentence}'),
    tr_later('"{name}" is nested too deeply. Shorten it.'),
    tr_later('"{name}" holds only words. Give mathematics as LaTeX, and words in "for".'),
    tr_later("it depends on a method mark, but there is none before it. Write M1 for the first one."),
    tr_later(
        '"depends_on" names no entry before it. Give the mark, such as "M1" for the nearest M1 before, or '
        "its place in the list counted from 0, or null for none."
    ),
    tr_later(
        "Line {number} of the scheme begins with no mark. Write it like M1 2x=10 or A1 final x=5; a mark is "
        "M, A, B or N and a number, with d before it or SC."
    ),
    tr_later("Line {number} of the scheme says {total} marks, but those above add up to {count}. Correct one of them."),
    tr_later("Line {number} of the scheme: {name} names no mark. Write needs M1, or needs nothing."),
)
