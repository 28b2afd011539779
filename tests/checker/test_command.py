"""`python -m checker`: one JSON working a line in, one JSON report a line out."""

import json
import random
import subprocess
import sys
import time
from pathlib import Path

import pytest

from checker.batch import reports
from checker.report import Report, Working
from checker.working import judge

GOOD = {"id": "a", "lines": ["(5-2t)(t+4)", "=5t+20-2t^2+8t"], "task": "expand"}


def run(text: str, *arguments: str) -> tuple[int, list[dict[str, object]]]:
    done = subprocess.run(
        [sys.executable, "-m", "checker", *arguments], input=text.encode(), capture_output=True, timeout=60, check=False
    )
    return done.returncode, [json.loads(row) for row in done.stdout.decode().splitlines()]


def test_one_report_a_working_in_order() -> None:
    status, told = run("\n".join(json.dumps({**GOOD, "id": str(number)}) for number in range(3)))
    assert status == 0
    assert [one["id"] for one in told] == ["0", "1", "2"]
    assert told[0]["first_slip"] == 1
    assert told[0]["lines"][1] == {  # type: ignore[index]
        "verdict": "slip",
        "from": 0,
        "reason": "At t = 1 the line before is 15 and this line is 31.",
        "witness": {"t": "1"},
        "slip": {
            "kind": "sign-product",
            "term": "+8t",
            "span": [11, 14],
            "should_be": "-8t",
            "because": told[0]["lines"][1]["slip"]["because"],  # type: ignore[index]
            "repaired": "=5t+20-2t^2-8t",
        },
    }
    assert told[0]["final"] == {"correct": False, "form_ok": False, "expected": "-2t^2-3t+20"}


def test_bad_rows_give_an_error_and_the_others_are_done() -> None:
    status, told = run("\n".join(["{bad", json.dumps({"id": 7}), '"text"', json.dumps(GOOD)]))
    assert status == 1
    assert "not JSON" in str(told[0]["error"])
    assert told[1]["id"] == "7"
    assert '"lines" is missing' in str(told[1]["error"])
    assert "error" in told[2]
    assert told[3]["first_slip"] == 1


def test_files_are_read_and_a_missing_one_is_said(tmp_path: Path) -> None:
    path = tmp_path / "workings.jsonl"
    path.write_text(json.dumps(GOOD) + "\n", encoding="utf-8")
    status, told = run("", str(path), str(tmp_path / "none.jsonl"))
    assert status == 1
    assert len(told) == 1


TOKENS = [
    r"x",
    r"y",
    r"t",
    r"1",
    r"2",
    r"0",
    r".",
    r",",
    r"(",
    r")",
    r"[",
    r"]",
    r"{",
    r"}",
    r"^",
    r"_",
    r"+",
    r"-",
    r"=",
    r"<",
    r"\le",
    r"\ne",
    r"\frac",
    r"\sqrt",
    r"\pm",
    r"\times",
    r"/",
    r"\div",
    r"|",
    r"\sin",
    r"\ln",
    r"\text{or}",
    r"or",
    r"and",
    r"let",
    r"\Rightarrow",
    r"!",
    r"\%",
    r"\pi",
    r"i",
    r"e",
    r"9^{9^{9}}",
    r"\frac{1}{0}",
    r"\quad",
    r"&",
    r"²",
    r"√",
    r"×",
    r"\lvert",
    r"\rvert",
    r"f(",
    r"(x+1)",
    r"^{2}",
    r"\overline",
    r"\dot",
    r"x=",
]


def test_random_lines_never_crash_or_hang() -> None:
    chance = random.Random(3)
    for _ in range(150):
        lines = tuple(
            "".join(chance.choice(TOKENS) + chance.choice(["", " "]) for _ in range(chance.randint(1, 14)))
            for _ in range(2)
        )
        start = time.monotonic()
        told = judge(Working(lines))
        assert len(told.lines) == 2
        assert time.monotonic() - start < 10, lines  # 2 s is the cap; a busy machine is allowed for


@pytest.mark.parametrize(
    "line",
    ["9^{9^{9}}", "(x+1)" * 400, "=1" * 2000, "1" * 900, r"\sqrt{1+" * 30 + "x" + "}" * 30, "(a+b+c+d+e+f)^{20}"],
)
def test_heavy_lines_end_in_time(line: str) -> None:
    start = time.monotonic()
    judge(Working((line, "=x+1", line)))
    assert time.monotonic() - start < 10


def test_two_processes_give_the_same_reports_in_the_same_order() -> None:
    rows = "\n".join(json.dumps({**GOOD, "id": str(number)}) for number in range(40))
    rows = f"{rows}\n{{bad\n"
    alone, together = run(rows), run(rows, "--jobs", "2")
    assert alone == together
    assert alone[0] == 1
    assert [one["id"] for one in together[1]] == [*map(str, range(40)), ""]


@pytest.mark.logs("ERROR")
def test_fault_of_ours_leaves_the_other_workings(monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(working: Working) -> Report:
        if working.id == "bad":
            raise ZeroDivisionError
        return judge(working)

    monkeypatch.setattr("checker.batch.judge", fails)
    rows = [b'{"id": "bad", "lines": ["x=1"]}', b'{"id": "good", "lines": ["x=1"]}']
    bad, good = reports(rows)
    assert bad["id"] == "bad" and "fault" in bad["error"]
    assert good["id"] == "good" and "error" not in good
