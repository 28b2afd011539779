"""A working as it comes in, and the report that goes out: the contract of `python -m checker`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from checker.errors import InputError
from checker.marking.scheme import Mark, read_scheme

__all__ = ["VERDICTS", "Final", "LineReport", "Report", "Slip", "Task", "Verdict", "Working"]

Task = Literal["expand", "factorise", "simplify", "solve", "identity"]
Verdict = Literal["start", "follows", "slip", "ft", "back", "loses", "adds", "undecided", "unreadable", "note"]

TASKS: tuple[str, ...] = ("expand", "factorise", "simplify", "solve", "identity")
VERDICTS: tuple[str, ...] = (
    "start", "follows", "slip", "ft", "back", "loses", "adds", "undecided", "unreadable", "note",
)


@dataclass(frozen=True, slots=True)
class Working:
    """The lines of one answer, with what is known of the question."""

    lines: tuple[str, ...]
    id: str = ""
    task: Task | None = None
    question: str | None = None
    givens: tuple[str, ...] = ()
    scheme: tuple[Mark, ...] = ()

    @classmethod
    def from_json(cls, data: object) -> Working:
        """Read one object of the contract.

        Raises:
            InputError: a field is missing or of the wrong kind; the sentence names it.
        """
        if not isinstance(data, dict):
            raise InputError('A working is a JSON object such as {"id": "1", "lines": ["2(x+1)", "=2x+2"]}.')
        lines = data.get("lines")
        if not isinstance(lines, list) or not all(isinstance(line, str) for line in lines):
            raise InputError('"lines" is missing or is not a list of strings. Give each written line as LaTeX.')
        task = data.get("task")
        if task is not None and task not in TASKS:
            raise InputError(f'"task" is {task!r}; use null or one of: {", ".join(TASKS)}.')
        question = data.get("question")
        if question is not None and not isinstance(question, str):
            raise InputError('"question" is not a string. Give it as LaTeX, or leave it out.')
        givens = data.get("givens") or []
        if not isinstance(givens, list) or not all(isinstance(given, str) for given in givens):
            raise InputError('"givens" is not a list of strings. Give each as LaTeX, such as "x>0".')
        return cls(
            lines=tuple(lines), id=str(data.get("id", "")), task=task, question=question, givens=tuple(givens),
            scheme=read_scheme(data.get("scheme")),
        )


@dataclass(frozen=True, slots=True)
class Slip:
    """The term that is wrong and what explains it; span is half-open, in characters of the line as given."""

    kind: str
    term: str
    span: tuple[int, int]
    should_be: str
    because: str
    repaired: str

    def to_json(self) -> dict[str, Any]:
        return {
            "kind": self.kind, "term": self.term, "span": list(self.span), "should_be": self.should_be,
            "because": self.because, "repaired": self.repaired,
        }


@dataclass(frozen=True, slots=True)
class LineReport:
    """The verdict on one line; `source` is the index of the line that it was judged from."""

    verdict: Verdict
    source: int | None = None
    reason: str = ""
    witness: Mapping[str, str] | None = None
    slip: Slip | None = None

    def to_json(self) -> dict[str, Any]:
        return {
            "verdict": self.verdict, "from": self.source, "reason": self.reason,
            "witness": None if self.witness is None else dict(self.witness),
            "slip": None if self.slip is None else self.slip.to_json(),
        }


@dataclass(frozen=True, slots=True)
class Final:
    """The final answer: right or not, of the form asked or not, what was expected, and why in a sentence."""

    correct: bool | None = None
    form_ok: bool | None = None
    expected: str = ""
    reason: str = ""

    def to_json(self) -> dict[str, Any]:
        return {"correct": self.correct, "form_ok": self.form_ok, "expected": self.expected}


@dataclass(frozen=True, slots=True)
class Report:
    """What the checker says of one working; line indices are 0-based; `answer` sums up the final answer in words."""

    id: str
    first_slip: int | None
    lines: tuple[LineReport, ...]
    final: Final = Final()
    answer: str = ""

    def to_json(self) -> dict[str, Any]:
        return {
            "id": self.id, "first_slip": self.first_slip, "lines": [line.to_json() for line in self.lines],
            "final": self.final.to_json(), "answer": self.answer,
        }
