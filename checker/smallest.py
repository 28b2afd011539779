"""When no documented slip explains a line: say what differs, and what the whole line should be."""

from __future__ import annotations

from checker.answer_text import written_out
from checker.outcome import Known, Outcome
from checker.polynomial import TooLargeError, is_constant
from checker.report import Slip
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.steps import value_of_line
from checker.syntax import Chain, Expression, Line, Node, Span, Statement, tight, to_latex
from checker.written import polynomial_latex

__all__ = ["difference_slip", "value_slip"]


def difference_slip(before: Statement | None, line: Line, outcome: Outcome, known: Known) -> Slip:
    """A slip of kind "other" whose repaired line follows from the line before.

    Args:
        before: what the line was to follow from; None for a chain that is false in itself.
        line: the line as written.
        outcome: the verdict on it.
        known: task and givens.
    """
    statement = line.statement
    match statement:
        case Expression(body=body):
            source = None if before is None else value_of_line(before)
            if source is not None:
                return _value_slip(source, body, line, known)
        case Chain(members=members):
            source = None if before is None else value_of_line(before)
            first = source if statement.continues and source is not None else members[0]
            rest = members if first is source else members[1:]
            return _value_slip(first, rest[-1], line, known, start=rest[0].span[0])
        case _:
            pass
    should_be = to_latex(before) if before is not None else line.text
    span = _whole(line)
    return _slip(line, span, should_be, outcome.reason)


def value_slip(source: Node, written: Node, line: Line, known: Known, reason: str) -> Slip | None:
    """A value that was claimed wrongly put right; None when it cannot be written plainly."""
    should_be = written_out(source, known)
    if should_be is None:
        return None
    end = line.statement.span[1] if isinstance(line.statement, Chain) else written.span[1]
    return _slip(line, (written.span[0], end), should_be, reason.rstrip("."))


def _value_slip(source: Node, written: Node, line: Line, known: Known, *, start: int | None = None) -> Slip:
    span = (written.span[0] if start is None else start, written.span[1])
    should_be = written_out(source, known) or to_latex(source)
    gap = _gap(source, written, known)
    because = f"the two lines differ by {gap}" if gap else "the two lines have different values"
    return _slip(line, span, should_be, because)


def _gap(source: Node, written: Node, known: Known) -> str | None:
    """Written minus right, when that is a polynomial."""

    def work(ring: Ring) -> str | None:
        right, wrong = ring.quotient(source), ring.quotient(written)
        if any(name.startswith("\0") for name in ring.names):
            return None
        if not is_constant(right[1]) or not is_constant(wrong[1]):
            return None
        rest = ring.difference(wrong, right)
        if len(rest) > 6:
            return None
        bottom = right[1][0] if right[1] == wrong[1] else right[1][0] * wrong[1][0]
        return polynomial_latex(rest, ring.names, bottom)

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None


def _whole(line: Line) -> Span:
    return line.statement.span


def _slip(line: Line, span: Span, should_be: str, because: str) -> Slip:
    start, end = span
    repaired = line.text[:start] + should_be + line.text[end:]
    return Slip("other", tight(line.text[start:end]), span, should_be, because, repaired)
