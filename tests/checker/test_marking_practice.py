"""Laws of suggested marks over generated workings, right ones and ones with a planted slip."""

from typing import Any

import pytest

from checker.marking.result import Marks
from checker.marking.suggestion import suggested_marks
from checker.practice import exercise
from checker.report import Working
from checker.working import judge

SEEDS = range(1000, 1040)


def marks(lines: tuple[str, ...], scheme: list[dict[str, Any]]) -> Marks:
    working = Working.from_json({"lines": list(lines), "scheme": scheme})
    return suggested_marks(working, judge(working))


@pytest.mark.parametrize("seed", SEEDS)
def test_right_working_earns_every_mark_of_a_scheme_made_from_it(seed: int) -> None:
    # Common practice, no source.
    lines = exercise(seed, slipped=False).lines
    scheme = [{"mark": "M1", "line": line} for line in lines[1:-1]] + [{"mark": "A1", "final": lines[-1]}]
    told = marks(lines, scheme)
    assert told.total == told.out_of, [award.reason for award in told.each]


@pytest.mark.parametrize("seed", SEEDS)
def test_accuracy_of_the_line_with_the_slip_is_never_surely_earned(seed: int) -> None:
    # After a wrong value the A mark for it is lost, the marks before it are kept. Source: HKEA Additional Mathematics
    # 1996 Paper 2, instruction 2; OCR instructions (marks once gained are not lost; second-hand copy).
    working = exercise(seed)
    slip, at = working.slip, working.slip_line
    assert slip is not None and at is not None
    written = working.lines[at]
    mended = written[: slip.span[0]] + slip.should_be + written[slip.span[1]:]
    before = [{"mark": "M1", "line": line} for line in working.lines[1:at]]
    told = marks(working.lines, [*before, {"mark": "A1", "line": mended, "depends_on": None}])
    assert [award.awarded for award in told.each[:-1]] == [True] * len(before)
    assert told.each[-1].awarded is not True
