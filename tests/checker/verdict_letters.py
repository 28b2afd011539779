"""A working's verdicts as one letter a line, for tables of cases.

0 start, f follows, S slip, t follows from the slip, b back, l loses, a adds, u undecided, X unreadable, n note;
? is not accused (0, f, u or n), F is right in some way (f, 0 or b), . is any.
"""

from checker.report import Working
from checker.working import judge

__all__ = ["check"]

_LETTERS = {
    "start": "0", "follows": "f", "slip": "S", "ft": "t", "back": "b", "loses": "l", "adds": "a", "undecided": "u",
    "unreadable": "X", "note": "n",
}
_WIDER = {"?": "0fun", "F": "f0b", ".": "0fStblauXn"}


def check(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    """Judge the lines; each verdict is as said, and the final answer too where that is said."""
    report = judge(Working(lines, **options), budget_s=20.0)  # type: ignore[arg-type]
    told = "".join(_LETTERS[line.verdict] for line in report.lines)
    fits = len(told) == len(verdicts) and all(
        letter in _WIDER.get(wanted, wanted) for letter, wanted in zip(told, verdicts, strict=True)
    )
    assert fits, f"{told} and not {verdicts}: {[line.reason for line in report.lines]}"
    if correct is not None:
        assert report.final.correct is correct
