"""A scheme as a teacher writes it: read, refused with a sentence, and through the command."""

import io
import json
import subprocess
import sys
from typing import Any

import pytest

from checker.__main__ import main
from checker.errors import InputError
from checker.marking.scheme import read_scheme


@pytest.mark.parametrize(
    ("scheme", "sentence"),
    [
        ([], "is not a list of 1 to 60 marks"),
        ({"mark": "M1"}, "is not a list of 1 to 60 marks"),
        ("M1", "nothing says what earns it"),
        ("2x=10", "Line 1 of the scheme begins with no mark. Write it like M1 2x=10"),
        ([{"mark": "M1", "line": "2x=10"}] * 61, "is not a list of 1 to 60 marks"),
        ([3], "Entry 1 of the scheme: it is not an object"),
        ([{"mark": "M1", "line": "2x=10"}, {"mark": "C1", "line": "x"}], 'Entry 2 of the scheme: "mark"'),
        ([{"mark": "M0", "line": "x=1"}], '"mark" is missing or wrong'),
        ([{"mark": "M10", "line": "x=1"}], '"mark" is missing or wrong'),
        ([{"line": "x=1"}], '"mark" is missing or wrong'),
        ([{"mark": ["M1"], "line": "x=1"}], '"mark" is missing or wrong'),
        ([{"mark": "M1"}], "nothing says what earns it"),
        ([{"mark": "M1", "line": "x=1", "final": "x=1"}], 'both "line" and "final"'),
        ([{"mark": "M1", "line": "2x="}], '"line" cannot be read. At character'),
        ([{"mark": "A1", "final": ""}], '"final" is not LaTeX'),
        ([{"mark": "A1", "final": []}], '"final" is not LaTeX'),
        ([{"mark": "A1", "final": ["x=1", 2]}], '"final" is not LaTeX'),
        ([{"mark": "A1", "final": "\\text{by hand}"}], "holds only words"),
        ([{"mark": "A1", "final": "x=1", "form": "tidy"}], '"form" is not known. Use one of'),
        ([{"mark": "A1", "final": "x=1", "form": {}}], '"form" is not known. Use one of'),
        ([{"mark": "A1", "for": "a sketch", "form": "exact"}], '"form" needs'),
        ([{"mark": "A1", "final": "x=1", "for": 3}], '"for" is not a string'),
        ([{"mark": "A1", "final": "x=1", "ft": "yes"}], '"ft" is not true or false'),
        ([{"mark": "A1", "final": "x=1", "ft": True, "cao": True}], "exclude each other"),
        ([{"mark": "A1", "final": "x=1", "implied": 1}], '"implied" is not true, false or null'),
        ([{"mark": "A1", "final": "x=1", "depends_on": "M1"}], "names no entry before it"),
        ([{"mark": "A1", "final": "x=1", "depends_on": 0}], "names no entry before it"),
        ([{"mark": "A1", "final": "x=1", "depends_on": {"a": 1}}], "names no entry before it"),
        ([{"mark": "A1", "final": "x=1", "points": 2}], '"points" is not known here. Use only'),
        ([{"mark": "A1", "final": "(" * 5000 + "x"}], "Entry 1 of the scheme"),
    ],
)
def test_scheme_that_is_not_understood_is_refused_with_its_entry(scheme: Any, sentence: str) -> None:
    with pytest.raises(InputError) as told:
        read_scheme(scheme)
    assert sentence in str(told.value)


def test_accuracy_depends_on_the_nearest_method_unless_told_otherwise() -> None:
    # A follows on from a method. Source: AQA GCSE Mathematics 8300/2H, glossary; MARS key.
    marks = read_scheme([
        {"mark": "A1", "line": "a=1"}, {"mark": "M1", "line": "b=1"}, {"mark": "M2", "line": "c=1"},
        {"mark": "A1", "line": "d=1"}, {"mark": "A1", "line": "e=1", "depends_on": ["M1", 2]},
        {"mark": "A1", "line": "f=1", "depends_on": None}, {"mark": "B1", "line": "g=1"},
    ])
    assert [mark.needs for mark in marks] == [(), (), (), (2,), (1, 2), (), ()]
    assert [mark.worth for mark in marks] == [1, 1, 2, 1, 1, 1, 1]


def reports(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], *rows: object) -> list[Any]:
    text = "\n".join(json.dumps(row) for row in rows).encode()
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(text)))
    main([])
    return [json.loads(row) for row in capsys.readouterr().out.splitlines()]


def test_command_gives_marks_only_when_a_scheme_was_given(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = ["2x+3=13", "2x=10", "x=5"]
    scheme = [{"mark": "M1", "line": "2x=10"}, {"mark": "A1", "final": "x=5", "for": "the value"}]
    plain, marked, null, bad = reports(
        monkeypatch, capsys, {"id": "a", "lines": lines}, {"id": "b", "lines": lines, "scheme": scheme},
        {"id": "c", "lines": lines, "scheme": None}, {"id": "d", "lines": lines, "scheme": [{"mark": "M1"}]},
    )
    assert "marks" not in plain and "marks" not in null
    assert plain["lines"] == marked["lines"]
    assert marked["marks"]["sum"] == marked["marks"]["out_of"] == 2
    assert marked["marks"]["each"][1]["for"] == "the value"
    assert bad["id"] == "d" and "Entry 1 of the scheme" in bad["error"]


def test_example_of_the_documentation_comes_out_as_it_says() -> None:
    working = {
        "lines": ["2x+3=13", "2x=11", "x=5.5"], "task": "solve", "scheme": [
            {"mark": "M1", "line": "2x=10", "for": "one term on each side"}, {"mark": "A1", "final": "x=5", "ft": True},
        ],
    }
    done = subprocess.run(
        [sys.executable, "-m", "checker"], input=json.dumps(working), capture_output=True, text=True, check=True
    )
    told = json.loads(done.stdout)["marks"]
    assert [(one["awarded"], one["line"]) for one in told["each"]] == [(True, 1), (True, 2)]
    assert (told["sum"], told["highest"], told["out_of"]) == (2, 2, 2)


@pytest.mark.parametrize("lines", [[], ["\\text{none}"], ["\\frac{"], ["1/0=x", "x=1"], ["9^{9^{9}}=x"], ["(" * 300]])
def test_any_working_can_be_marked(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], lines: list[str]
) -> None:
    scheme = [{"mark": "M1", "line": "2x=10"}, {"mark": "A1", "final": "x=5", "ft": True}]
    (told,) = reports(monkeypatch, capsys, {"lines": lines, "scheme": scheme, "question": "2x=10"})
    assert told["marks"]["sum"] == 0
