"""Work that is done off the window's thread before the window asks for it, so that it need not wait."""

from __future__ import annotations

import contextlib
from collections.abc import Sequence

from desktop.document import WorkingVerdict
from desktop.maths import MathsError, tidy, typeset
from desktop.sentences import latex_in_language
from recognition.result import Candidate

__all__ = ["load_parser", "typeset_readings", "typeset_slips"]


def load_parser() -> None:
    """Load the parser and the hints, which the window asks for, before it asks."""
    import checker.slips.hints  # noqa: F401
    from checker.syntax import parse_line

    parse_line("x=1")


def typeset_readings(candidates: Sequence[tuple[Candidate, ...]]) -> None:
    """Typeset the readings while still off the window's thread; the window then finds them done."""
    for of_line in candidates:
        for candidate in of_line:
            _typeset_one(candidate.latex)
            _typeset_one(tidy(candidate.latex))


def typeset_slips(verdicts: Sequence[WorkingVerdict]) -> None:
    """Typeset what the cards of slips show."""
    for verdict in verdicts:
        if verdict.slip is not None:
            for latex in (verdict.slip.term, verdict.slip.should_be, verdict.slip.repaired):
                _typeset_one(latex_in_language(latex))


def _typeset_one(latex: str) -> None:
    with contextlib.suppress(MathsError):
        typeset(latex)
