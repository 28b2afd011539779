"""A scheme as text: every row of the table in the package is read and marked; clear errors; the same as the entries."""

import re
from pathlib import Path

import pytest

import checker.marking
from checker.errors import InputError
from checker.marking.scheme import read_scheme
from checker.marking.suggestion import suggested_marks
from checker.marking.text import entries_of
from checker.report import Working
from checker.working import judge

TABLE = Path(checker.marking.__file__).with_name("SCHEMES.md")
_ROW = re.compile(r"\| `(?P<scheme>.+?)` \| (?P<meaning>[^|]+) \| `(?P<working>.+?)` \| (?P<marks>[^|]+) \|$")


def table() -> list[tuple[str, str, str, str]]:
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    return [found.group("scheme", "working", "marks", "meaning") for line in lines if (found := _ROW.match(line))]


def test_every_row_of_the_table_is_tested() -> None:
    written = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if line.startswith("| ")]
    heads = [line for line in written if line.startswith(("| scheme", "| ---"))]
    assert len(table()) == len(written) - len(heads) >= 30


@pytest.mark.parametrize(("scheme", "working", "marks", "meaning"), table())
def test_scheme_is_marked_as_the_table_says(scheme: str, working: str, marks: str, meaning: str) -> None:
    lines = tuple(working.split(" / "))
    asked = Working(lines, scheme=read_scheme(scheme.replace(" // ", "\n")))
    told = suggested_marks(asked, judge(asked))
    shown = [
        f"{award.code} {'?' if award.awarded == 'teacher' else award.worth * award.awarded}" for award in told.each
    ]
    assert ", ".join(shown) == marks.strip(), (meaning, [award.reason for award in told.each])


def test_text_and_entries_are_the_same_scheme() -> None:
    text = "M1 2x=10 for one term on each side\n\nA1ft final x=5\nB1 awrt 2.65; needs nothing\n\nTotal 3"
    entries = [
        {"mark": "M1", "line": ["2x=10"], "for": "one term on each side"}, {"mark": "A1ft", "final": ["x=5"]},
        {"mark": "B1", "line": ["2.65"], "form": "awrt", "depends_on": None},
    ]
    assert entries_of(text) == entries
    assert read_scheme(text) == read_scheme(text.splitlines()) == read_scheme(entries)


def test_marks_in_print() -> None:
    marks = read_scheme("M1 a=1\nM1 b=1\nddM1 c=1\nA1* d=1\nA1cao e=1\nSC1 f=1\nN2 g=1")
    assert [mark.code for mark in marks] == ["M1", "M1", "ddM1", "A1*", "A1cao", "SC 1", "N2"]
    assert [mark.needs for mark in marks] == [(), (), (0, 1), (2,), (2,), (), ()]
    assert [mark.part for mark in marks] == ["main"] * 5 + ["special case", "no working"]
    assert (marks[3].cso, marks[4].cao) == (True, True)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("2x=10", "Line 1 of the scheme begins with no mark. Write it like M1 2x=10 or A1 final x=5"),
        ("M1 2x=10\nthen x=5", "Line 2 of the scheme begins with no mark"),
        ("M1 2x=10\nA1 x=5\nTotal 3", "Line 3 of the scheme says 3 marks, but those above add up to 2. Correct one"),
        ("M1 2x=10\n(3 marks)", "says 3 marks, but those above add up to 1"),
        ("dM1 2x=10", "depends on a method mark, but there is none before it. Write M1 for the first one."),
        ("M1 2x=\\frac{", 'Entry 1 of the scheme: "line" cannot be read. At character'),
        ("M1", "nothing says what earns it"),
        ("M1 2x=10; needs that", "'needs that' names no mark. Write needs M1, or needs nothing."),
        ("A1ft x=5 cao", '"ft" and "cao" or "cso" exclude each other'),
        ("C1 x=5", "begins with no mark"),
        ("", "is not a list of 1 to 60 marks"),
        ("M1 x=1\n" * 61, "is not a list of 1 to 60 marks"),
    ],
)
def test_text_that_is_not_understood_is_refused_with_its_line(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as told:
        read_scheme(text)
    assert sentence in str(told.value)
