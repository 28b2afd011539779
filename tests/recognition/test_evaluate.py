"""Measuring a reader on lines whose truth is known."""

import json
import lzma

import cv2
import numpy as np
import pytest

from recognition.__main__ import main
from recognition.captions import merged_spellings
from recognition.errors import InputError
from recognition.evaluate import Sample, edit_distance, evaluate, load_samples, structure
from recognition.reader import LineStrokes
from recognition.result import Candidate
from tests.recognition.test_tokens import DATA

STROKES = [[[0, 0], [30, 40]], [[30, 0], [0, 40]]]


class _Fixed:
    """Reads each line as it is told to; the protocol of a reader, no network."""

    def __init__(self, readings):
        self._readings = iter(readings)

    def read(self, crops, *, beam=5, allowed=None, tick=None):
        return [tuple(Candidate(latex, p) for latex, p in next(self._readings)) for _ in crops]


def _sample(latex):
    return Sample("", tuple(latex.split()) if latex else None, None)


def test_rates_by_hand():
    samples = [_sample("x ^ { 2 }"), _sample(r"\frac { 1 } { 2 }"), _sample("1 + 1"), _sample(None), _sample("a")]
    readings = [
        [("x ^ { 2 }", 0.9)],  # right
        [(r"\frac { 1 } { z }", 0.6), (r"\frac { 1 } { 2 }", 0.3)],  # one wrong, right one second
        [("1 - 7", 0.8)],  # two wrong
        [("y", 0.5)],  # truth out of the vocabulary: wrong
        [],  # nothing read: one missing
    ]
    report, candidates = evaluate(samples, _Fixed(readings))
    # 5 lines: 1 right; within 1: first, second, last; within 2: the third too; tokens 5 + 7 + 3 + 1 = 16, edits 4.
    assert (report["lines"], report["out_of_vocabulary"]) == (5, 1)
    assert (report["ExpRate"], report["within_1"], report["within_2"], report["top_5"]) == (20, 60, 80, 40)
    assert report["cer"] == 25
    assert report["structure"]["scripts"]["ExpRate"] == 100
    assert report["structure"]["fractions"] | {"calibration_error": 0} == {
        "lines": 1, "ExpRate": 0, "within_1": 100, "within_2": 100, "top_5": 100, "cer": 14.29,
        "calibration_error": 0, "wrong_among_15_percent_least_sure": 0,
    }  # fmt: skip
    assert report["structure"]["roots"] == {"lines": 0}
    assert report["length"]["1-9"]["lines"] == 4
    assert report["school"]["lines"] == 4
    assert report["ms_per_line_p50"] >= 0
    assert len(candidates) == 5


def test_edit_distance_by_hand():
    # kitten -> sitting: two replaced, one added. Source: the usual example of Levenshtein's distance (from memory).
    assert edit_distance("kitten", "sitting") == 3
    assert edit_distance([], ["x"]) == edit_distance(["x"], []) == 1
    assert edit_distance(["x"], ["x"]) == 0


def test_structure_is_the_hardest_one():
    assert structure(["x", "+", "1"]) == "one row"
    assert structure(["x", "^", "{", "2", "}"]) == "scripts"
    assert structure([r"\frac", r"{", r"x", r"^", r"{", r"2", r"}", r"}", r"{", r"2", r"}"]) == "fractions"
    assert structure([r"\frac", r"{", r"\sqrt", r"{", r"2", r"}", r"}", r"{", r"2", r"}"]) == "roots"


def test_labels_that_merging_makes_easier_are_counted():
    # CROHME tells \\cdots from \\ldots and writes \\limits; we read both dots alike and never say \\limits.
    assert merged_spellings(r"$\sum\limits_{i=1}^n a_1 + \cdots + \cdots$") == (r"\limits", r"\cdots")
    assert merged_spellings(r"a \leq b \ldots \lbrack 1 \rbrack \lim \log") == ()
    easy = Sample("", (r"\ldots",), None, merged=(r"\cdots",))
    report, _ = evaluate([easy, easy, _sample("x")], _Fixed([[(r"\ldots", 0.9)], [("x", 0.9)], [("x", 0.9)]]))
    assert report["ExpRate"] == pytest.approx(66.67)  # the first and the last
    assert report["official_tokens"] == {"ExpRate": 33.33, "labels_touched": 2, "of_them_right_when_merged": 1}


def test_worst_decile_of_writers():
    # 11 writers of 5 lines: writer 0 has 1 of 5 right, the others 4 of 5; a twelfth has too few lines to count.
    samples, readings = [], []
    for writer in range(12):
        for line in range(5 if writer < 11 else 4):
            samples.append(Sample("", ("x",), None, str(writer)))
            wrong = line < (4 if writer == 0 else 1)
            readings.append([("y" if wrong else "x", 0.9)])
    report, _ = evaluate(samples, _Fixed(readings))
    assert report["writers"] == {
        "writers": 11, "least_lines": 5, "median_ExpRate": 80, "worst_decile_ExpRate": 20,
        "worst": [{"writer": "0", "lines": 5, "ExpRate": 20}],
    }  # fmt: skip
    assert evaluate([_sample("x")], _Fixed([[("x", 0.9)]]))[0]["writers"] == {"writers": 0}


def test_writer_and_raw_label_come_from_the_file(tmp_path):
    row = {"latex": "x", "latex_raw": r"$x\limits$", "writer": 7, "strokes": STROKES}
    (sample,) = load_samples(_write(tmp_path / "lines.jsonl", [row]))
    assert (sample.writer, sample.merged) == ("7", (r"\limits",))


def _write(path, rows):
    text = "".join(json.dumps(row) + "\n" for row in rows)
    path.write_bytes(lzma.compress(text.encode()) if path.suffix == ".xz" else text.encode())
    return path


@pytest.mark.parametrize("name", ["lines.jsonl", "lines.jsonl.xz"])
def test_strokes_go_by_the_route_that_is_asked_for(tmp_path, name):
    path = _write(tmp_path / name, [{"latex": "x", "strokes": STROKES}, {"latex": None, "strokes": STROKES}])
    (ink,) = load_samples(path, route="ink")
    (given,) = load_samples(path)
    (drawn,) = load_samples(path, route="images")
    assert isinstance(ink.crop, LineStrokes) and isinstance(given.crop, LineStrokes)
    assert drawn.crop.image.dtype == np.uint8 and drawn.crop.image.min() < 60
    (again,) = load_samples(path, route="images")
    np.testing.assert_array_equal(drawn.crop.image, again.crop.image)


def test_image_beside_the_file_is_taken(tmp_path):
    picture = np.zeros((60, 90), np.uint8)  # light on dark, as some data sets have it
    cv2.line(picture, (20, 10), (60, 50), 255, 3)
    (tmp_path / "pictures").mkdir()
    cv2.imwrite(str(tmp_path / "pictures" / "a.png"), picture)
    path = _write(tmp_path / "lines.jsonl", [{"latex": "x", "image": "pictures/a.png"}])
    (sample,) = load_samples(path)
    assert sample.crop.image.shape == (60, 90)
    assert np.median(sample.crop.image) == 255 and sample.crop.image.min() == 0
    with pytest.raises(InputError, match="Line 1 of"):
        list(load_samples(path, route="ink"))


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"{", "Line 1 of bad.jsonl is not a JSON object"),
        (b"[1]\n", "Line 1 of bad.jsonl is not a JSON object"),
        (b"\xff\xfe\n", "not a JSON object"),
        (b'{"latex": "x"}\n', "neither good strokes nor an image"),
        (b'{"latex": "x", "strokes": [[["a", 1]]]}\n', "neither good strokes nor an image"),
        (b'{"latex": "x", "strokes": [[1, 2]]}\n', "neither good strokes nor an image"),
        (b'{"latex": "x", "strokes": [[[NaN, 1]]]}\n', "neither good strokes nor an image"),
    ],
)
def test_bad_data_gets_one_sentence(tmp_path, content, sentence, capsys):
    path = tmp_path / "bad.jsonl"
    path.write_bytes(content)
    with pytest.raises(InputError, match=sentence):
        list(load_samples(path))
    assert main(["evaluate", str(path)]) == 2
    assert sentence in capsys.readouterr().err


def test_missing_data_gets_one_sentence(tmp_path, capsys):
    assert main(["evaluate", str(tmp_path / "none.jsonl")]) == 2
    assert "cannot be read" in capsys.readouterr().err
    (tmp_path / "empty.jsonl").touch()
    assert main(["evaluate", str(tmp_path / "empty.jsonl")]) == 2
    assert "no line to read" in capsys.readouterr().err


def _ink(name):
    path = DATA / "crohme" / name
    if not path.exists():
        pytest.skip(f"{name} is not in the data folder")
    with lzma.open(path, "rt", encoding="utf-8") as file:
        for line in file:
            strokes = json.loads(line)["strokes"]
            moved = [tuple((x - s[0][0], y - s[0][1]) for x, y in s) for s in strokes if s]
            yield hash(tuple(moved)), {hash(stroke) for stroke in moved if len(stroke) >= 8}


@pytest.mark.slow
def test_no_test_ink_is_among_the_training_ink():
    # Source: CROHME as published; the shape of a stroke is its points from the first on, compared exactly.
    whole, long_strokes = set(), set()
    for expression, strokes in _ink("train.jsonl.xz"):
        whole.add(expression)
        long_strokes |= strokes
    assert len(whole) > 9000
    for name in ("test2013.jsonl.xz", "test2014.jsonl.xz"):
        for expression, strokes in _ink(name):
            assert expression not in whole
            assert not strokes & long_strokes


def test_command_prints_one_report(tmp_path, capsys):
    # Source of the ink: CROHME 2014 test, Mouchere et al., ICFHR 2014.
    path = DATA / "crohme" / "test2014.jsonl.xz"
    if not path.exists():
        pytest.skip("CROHME 2014 is not in the data folder")
    details = tmp_path / "details.jsonl"
    assert main(["evaluate", str(path), "--limit", "6", "--greedy", "--ink", "--details", str(details)]) == 0
    report = json.loads(capsys.readouterr().out)
    for key in (
        "ExpRate", "within_1", "within_2", "top_5", "cer", "calibration_error", "ms_per_line_p50", "ms_per_line_p95",
    ):  # fmt: skip
        assert isinstance(report[key], float | int)
    assert report["lines"] == 6
    assert 0 < report["ms_per_line_p50"] <= report["ms_per_line_p95"]
    rows = [json.loads(line) for line in details.read_text("utf-8").splitlines()]
    right = sum(row["candidates"][0][0] == row["truth"] for row in rows)
    assert report["ExpRate"] == pytest.approx(100 * right / 6, abs=0.01)
