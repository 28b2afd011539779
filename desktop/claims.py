"""Is a line, taken as a claim for all values, true? Asked of the checker off the window's thread, and remembered."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal, Slot

from checker.errors import InputError
from desktop.checker_process import CheckerProcess
from desktop.document import Document
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.typed_page import is_typed
from desktop.workings import split_number
from recognition.result import Tick

__all__ = ["Claim", "Claims", "claim_of", "claims_identity"]

_BUDGET_S = 1.5
_LONGEST_S = 10.0


@dataclass(frozen=True, slots=True)
class Claim:
    """What is known of one line as a claim for all values; texts as in `checker.identities.Identity`.

    is_true: None when it is not decided, or when the line claims nothing of the kind.
    """

    is_true: bool | None
    reason: str
    counterexample: str = ""
    left: str = ""
    right: str = ""
    only_left: str = ""
    only_right: str = ""


def claim_of(latex: str) -> Claim:
    """Judge a line as a claim for all values; called in the checker's process."""
    from checker.budget import Budget  # here, in the checker's process: all this would hold up the window's start
    from checker.equality import uses_euler
    from checker.identities import claimed
    from checker.outcome import Known, point_text, witness_json
    from checker.syntax import nodes_of, parse_line

    try:
        statement = parse_line(split_number(latex)[1]).statement
    except InputError as exc:
        return Claim(None, str(exc))
    found = claimed(statement, Known(Budget(_BUDGET_S), task="identity", euler=uses_euler(*nodes_of(statement))))
    if found is None:
        return Claim(None, tr("This line is no equation, so it claims nothing for all values."))
    point = "" if not found.counterexample else point_text(witness_json(found.counterexample))
    return Claim(found.is_true, found.reason, point, found.left, found.right, found.only_left, found.only_right)


def claims_identity(document: Document, index: int) -> bool:
    """Whether a line is meant for all values: it says so with its sign, or it is all that was typed."""
    latex = document.lines[index].latex
    if r"\equiv" in latex:
        return True
    found = document.verdict_of(index)
    return is_typed(document) and "=" in latex and found is not None and len(found[0].lines) == 1


class Claims(QObject):
    """Asks and remembers."""

    known = Signal(str)
    problem = Signal(str)

    def __init__(self, checker: CheckerProcess, jobs: Jobs, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._checker = checker
        self._jobs = jobs
        self._claims: dict[str, Claim] = {}
        self._asked: set[str] = set()
        self._failed: set[str] = set()

    def of(self, latex: str) -> Claim | None:
        """What is known; None while it is being asked, after which `known` tells, and where asking failed."""
        if latex not in self._claims and latex not in self._asked | self._failed:
            self._asked.add(latex)

            def work(tick: Tick, give: Give) -> object:
                return latex, self._checker.call(claim_of, latex, longest_s=_LONGEST_S, tick=tick)

            job = Job(tr("Checking the claim"), work)
            job.succeeded.connect(self._take)
            job.failed.connect(self.problem)
            job.failed.connect(lambda sentence: self._failed.add(latex))
            job.ended.connect(self._let_ask_again)
            self._jobs.start(job)
        return self._claims.get(latex)

    @Slot(object)
    def _take(self, answer: tuple[str, Claim]) -> None:
        latex, claim = answer
        self._claims[latex] = claim
        self.known.emit(latex)

    @Slot(object)
    def _let_ask_again(self, job: Job) -> None:
        self._asked.clear()
