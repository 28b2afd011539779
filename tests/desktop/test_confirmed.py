"""Confirmed lines from JSON, and their place on the page."""

import json
from pathlib import Path

import pytest

from desktop.confirmed import ConfirmedLine, confirmed_file, load_confirmed, merge_confirmed
from desktop.desk_line import DeskLine, State
from recognition.errors import InputError
from recognition.result import Box, Candidate


def written(folder: Path, content: str) -> Path:
    path = folder / "page.json"
    path.write_text(content, encoding="utf-8")
    return path


def found(latex: str, y: int) -> DeskLine:
    return DeskLine(Box(10, y, 200, 40), (Candidate(latex, 0.8),), latex, State.READ)


def test_list_of_lines_is_read(tmp_path):
    content = {"lines": [{"latex": "k+1", "box": [1, 2, 30, 4]}, {"latex": "x", "struck_out": True}, "=1+k"]}
    assert load_confirmed(written(tmp_path, json.dumps(content))) == (
        ConfirmedLine("k+1", Box(1, 2, 30, 4)), ConfirmedLine("=1+k"),
    )  # fmt: skip


def test_report_of_ours_is_read_with_its_workings(tmp_path):
    content = {"workings": [{"lines": [{"latex": "k"}, {"latex": "=k"}]}, {"lines": [{"latex": "m"}]}]}
    starts = [line.starts_working for line in load_confirmed(written(tmp_path, json.dumps(content)))]
    assert starts == [True, False, True]


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        ("not json", "is not JSON"), ("[1]", 'neither "workings" nor "lines"'),
        ('{"lines": 3}', '"lines" is not a list'),
        ('{"lines": [{"box": [1, 2, 3, 4]}]}', 'line 1 has no "latex"'), ('{"lines": []}', "holds no lines"),
        ('{"lines": [{"latex": "k", "box": [1, 2]}]}', r"the box of line 1 is not \[x, y, width, height\]"),
        ('{"workings": [3]}', 'each of "workings" is an object'), ("[" * 100_000, "is not JSON|nested too deeply"),
    ],
)  # fmt: skip
def test_bad_file_is_told_in_a_sentence(tmp_path, content, sentence):
    with pytest.raises(InputError, match=sentence):
        load_confirmed(written(tmp_path, content))


def test_lines_with_boxes_take_the_candidates_found_there():
    lines = merge_confirmed(
        [ConfirmedLine("k+7", Box(12, 61, 190, 36)), ConfirmedLine("=7+k", Box(12, 500, 190, 36))],
        [found("h + 1", 0), found("k + 1", 60)],
    )
    assert lines[0].candidates[0].latex == "k + 1"
    assert lines[1].candidates == ()
    assert [line.box for line in lines] == [Box(12, 61, 190, 36), Box(12, 500, 190, 36)]
    assert {line.state for line in lines} == {State.CONFIRMED}


def test_lines_without_boxes_take_the_places_of_the_likest_lines_in_order():
    lines = merge_confirmed(
        [ConfirmedLine("2k+7=11"), ConfirmedLine("2k=4"), ConfirmedLine("k=2")],
        [found("2 k + 1 = 1 1", 0), found("w w w", 60), found("2 k = 4", 120), found("k = 2", 180)],
    )
    assert [line.box.y for line in lines] == [0, 120, 180]


def test_line_that_was_not_found_is_put_under_the_one_before():
    lines = merge_confirmed([ConfirmedLine("2k=4"), ConfirmedLine("k=2")], [found("2 k = 4", 0)])
    assert lines[1].box == Box(10, 40, 200, 1)


def test_confirmed_file_is_found_by_name_in_a_folder(tmp_path):
    page = written(tmp_path, "{}")
    assert confirmed_file([tmp_path], "page", only_one=False) == page
    assert confirmed_file([tmp_path], "page-2", only_one=False) is None
    assert confirmed_file([page], "photo", only_one=True) == page
    assert confirmed_file([page], "photo", only_one=False) is None
