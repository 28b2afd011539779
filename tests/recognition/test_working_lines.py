"""Lines of working in one hand on simulated pages, and the sheet of misread lines."""

import json
import random

import cv2
import numpy as np
import pytest

from recognition.reader.tokens import normalise
from recognition.training.contact_sheet import Entry, contact_sheet
from recognition.training.contact_sheet import main as make_sheet
from recognition.training.hands import one_hand, writer_hands
from recognition.training.own_hand import own_bank
from recognition.training.working_lines import (
    PageOfWorking,
    WrittenLine,
    cut_out,
    page_of_working,
    pages_of_working,
    school_lines,
)


def _row(writer, labels):
    """Ink in which every symbol is one stroke, a corner whose reach tells the writers apart."""
    reach = 10 * (1 + int(writer))
    strokes = [[[20 * n, 0], [20 * n + reach, 10], [20 * n, 20]] for n in range(len(labels))]
    symbols = [[label, [n]] for n, label in enumerate(labels)]
    return {"writer": writer, "strokes": strokes, "symbols": symbols, "symbols_agree": True}


def test_a_hand_holds_its_writers_symbols_and_borrows_the_rest_from_one_other():
    rows = [
        _row("0", ["1", "x", "1"]),
        _row("1", ["1", "2"]),
        _row("2", ["2", "2"]),
        {**_row("3", ["7"]), "writer": None},
    ]
    hands = writer_hands(rows)
    assert [(hand.name, hand.symbols) for hand in hands] == [("0", 3), ("1", 2), ("2", 2)]
    bank = one_hand(hands[0], hands, random.Random(0))
    assert sorted(bank.ink) == ["1", "2", "x"]
    assert [np.ptp(shape.points[:, 0]) for shape in bank.ink["1"]] == [10, 10]
    assert len({np.ptp(shape.points[:, 0]) for shape in bank.ink["2"]}) == 1  # both from the same other writer


def test_lines_are_canonical_school_algebra_of_the_asked_lengths():
    source = school_lines(random.Random(3), ["x ^ { 2 } + 5 x + 6 = 0 , x = 2"])
    lines = [next(source) for _ in range(40)]
    assert {form for _, form in lines} == {"text", "random"}
    for tokens, _ in lines:
        assert 8 <= len(tokens) <= 60
        assert tuple(normalise(" ".join(tokens))) == tokens


def _own_hand():
    """A writer made of the project's own pen strokes: one instance of each symbol."""
    bank = own_bank()
    rows = [{
        "writer": "0", "symbols_agree": True,
        "strokes": [np.round(part * 1000).tolist()
                    for shapes in bank.ink.values() for shape in shapes
                    for part in np.split(shape.points, shape.offsets[1:-1])],
        "symbols": [],
    }]  # fmt: skip
    at = 0
    for token, shapes in bank.ink.items():
        count = sum(len(shape.offsets) - 1 for shape in shapes)
        rows[0]["symbols"].append([token, list(range(at, at + count))])
        at += count
    return writer_hands(rows)[0]


def test_every_line_gets_the_crop_that_covers_it():
    hand = _own_hand()
    latex = ["3 x ^ { 2 } + 5 x - 2 = 0", "( 3 x - 1 ) ( x + 2 ) = 0", "x = 7 x - 2 1"]
    lines = [(tuple(line.split()), "text") for line in latex]
    page = page_of_working(hand, hand.bank, lines, random.Random(5))
    assert [line.tokens for line in page.lines] == [tokens for tokens, _ in lines]
    assert page.own_share == 1
    cut = cut_out(page)
    assert all(crop is not None and overlap > 0.75 for crop, overlap in cut)
    tops = [crop.box.y for crop, _ in cut]
    assert tops == sorted(tops)


def test_a_line_without_ink_of_its_own_is_lost():
    page = PageOfWorking(
        np.full((300, 400, 3), 250, np.uint8), (WrittenLine(("x",), "text", (10, 10, 60, 60)),), "0", 1.0
    )
    assert cut_out(page) == [(None, 0.0)]


def test_the_same_seed_gives_the_same_pages(monkeypatch):
    hand = _own_hand()
    monkeypatch.setattr("recognition.training.working_lines._LEAST_SYMBOLS", 1)
    one, two = (list(pages_of_working([hand], ["x + 2 = 7 - y + 1 2"], 5, 9)) for _ in range(2))
    assert sum(len(page.lines) for page in one) >= 5
    for a, b in zip(one, two, strict=True):
        assert a.lines == b.lines
        np.testing.assert_array_equal(a.image, b.image)


def test_sheet_shows_every_entry_and_its_captions():
    picture = np.full((60, 200), 255, np.uint8)
    cv2.line(picture, (10, 10), (150, 50), 0, 3)
    blank = contact_sheet([Entry(np.full((60, 200), 255, np.uint8), ())] * 4, columns=2)
    sheet = contact_sheet([Entry(picture, ("truth", "read"))] * 4, columns=2)
    assert sheet.shape[0] > blank.shape[0]  # room for the captions
    halves = [sheet[:, :640], sheet[:, 640:]]
    assert all((half < 100).sum() > 500 for half in halves)


def test_sheet_takes_the_surest_wrong_readings_first(tmp_path, capsys):
    strokes = [[[0, 0], [30, 40]], [[30, 0], [0, 40]]]
    rows = [{"id": name, "latex": "x", "strokes": strokes} for name in "abc"]
    data, details = tmp_path / "lines.jsonl", tmp_path / "details.jsonl"
    data.write_text("".join(json.dumps(row) + "\n" for row in rows))
    read = [[["x", 0.9]], [["y", 0.8], ["x", 0.1]], []]
    details.write_text("".join(
        json.dumps({"id": row["id"], "truth": "x", "candidates": found}) + "\n"
        for row, found in zip(rows, read, strict=True)
    ))  # fmt: skip
    assert make_sheet([str(data), str(details), str(tmp_path / "sheet.png")]) == 0
    assert capsys.readouterr().out == "2 lines\n"  # b and c were misread
    assert cv2.imread(str(tmp_path / "sheet.png"), cv2.IMREAD_GRAYSCALE) is not None


@pytest.mark.parametrize("name", ["test2013.jsonl.xz", "test2014.jsonl.xz"])
def test_public_ink_has_hands_enough(name):
    # Source: CROHME 2013 and 2014 tests; Mouchere et al., ICFHR 2014.
    import lzma

    from tests.recognition.test_tokens import DATA

    path = DATA / "crohme" / name
    if not path.exists():
        pytest.skip(f"{name} is not in the data folder")
    with lzma.open(path, "rt", encoding="utf-8") as file:
        hands = writer_hands(map(json.loads, file))
    assert sum(hand.symbols >= 150 for hand in hands) >= 15
