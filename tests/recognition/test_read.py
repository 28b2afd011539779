"""From a file to what its lines say."""

import json
from pathlib import Path

import cv2
import numpy as np
import pytest

from recognition import read_file
from recognition.__main__ import main
from recognition.errors import InputError
from recognition.ink import Ink, Stroke, render_page, write_inkml
from recognition.read import is_ink, line_from_picture, read_line_file
from recognition.reader import NeuralReader


@pytest.fixture(scope="module")
def reader():
    return NeuralReader.load(threads=2)


def _equation(x, y):
    """x = 1 in strokes of our own, 40 units high."""
    parts = [
        [[0, 0], [30, 40]], [[30, 0], [0, 40]], [[55, 14], [85, 14]], [[55, 27], [85, 27]],
        [[120, 0], [120, 20], [120, 40]],
    ]  # fmt: skip
    return [Stroke(np.array(part, float) + np.array([x, y])) for part in parts]


@pytest.fixture
def drawing(tmp_path):
    path = tmp_path / "drawing.inkml"
    write_inkml(Ink((*_equation(0, 0), *_equation(10, 110))), path)
    return path


def test_drawing_is_read_line_by_line_in_pixels_of_its_picture(drawing, reader):
    (page,) = read_file(drawing, reader=reader)
    assert (page.file, page.page) == (str(drawing), 0)
    assert len(page.lines) == 2
    first, second = page.lines
    # A typical stroke (40 units) is 40 px: one px a unit, a margin of 40 px.
    assert page.size == (130 + 80, 150 + 80)
    assert (first.box.x, first.box.y) == pytest.approx((40, 40), abs=8)
    assert second.box.y == pytest.approx(150, abs=8)
    equals = first.candidates[0].tokens[1]
    assert equals.text == "="
    assert (equals.box.x, equals.box.y) == pytest.approx((95, 54), abs=6)


def test_command_prints_the_contract(drawing, tmp_path, capsys):
    (tmp_path / "not a photo.jpg").write_text("hello")
    status = main(["read", str(drawing), str(tmp_path / "not a photo.jpg"), str(tmp_path / "none.png"), str(drawing)])
    out, err = capsys.readouterr()
    assert status == 2
    pages = [json.loads(line) for line in out.splitlines()]
    assert len(pages) == 2  # the good files are done all the same
    assert len(err.splitlines()) == 2
    assert "not a photo.jpg" in err and "none.png" in err
    page = pages[0]
    assert set(page) == {"file", "page", "size", "lines"}
    line = page["lines"][0]
    assert set(line) >= {"box", "struck_out", "candidates"}
    candidate = line["candidates"][0]
    assert set(candidate) == {"latex", "probability", "tokens"}
    assert set(candidate["tokens"][0]) == {"text", "probability", "box"}
    assert all(len(token["box"]) == 4 for token in candidate["tokens"])


def test_picture_of_one_line_is_read_whole(drawing, tmp_path, reader, capsys):
    picture = render_page(Ink(tuple(_equation(0, 0)))).image
    path = tmp_path / "line.png"
    cv2.imwrite(str(path), picture[..., ::-1])
    (page,) = read_line_file(path, reader=reader)
    (line,) = page.lines
    assert line.box == (0, 0, picture.shape[1], picture.shape[0])
    assert line.candidates[0].tokens[1].text == "="
    assert main(["read", "--line", str(path)]) == 0
    assert json.loads(capsys.readouterr().out)["lines"][0]["candidates"]


def test_light_on_dark_and_uneven_light_are_evened():
    picture = np.full((80, 200, 3), 255, np.uint8)
    cv2.line(picture, (30, 20), (60, 60), (0, 0, 0), 3)
    plain = line_from_picture(picture).image
    np.testing.assert_array_equal(line_from_picture(255 - picture).image, plain)
    shade = np.linspace(1.0, 0.55, 200)[None, :, None]
    shaded = line_from_picture((picture * shade).astype(np.uint8)).image
    assert shaded[:, 100:].min() > 230  # no paper taken for ink on the dark side
    assert shaded[:, :70].min() < 80


def test_blank_sheet_gets_a_sentence_and_status_two(tmp_path, capsys):
    path = tmp_path / "blank.png"
    cv2.imwrite(str(path), np.full((600, 800, 3), 250, np.uint8))
    assert main(["read", str(path)]) == 2
    out, err = capsys.readouterr()
    assert json.loads(out)["lines"] == []
    assert "No writing was found" in err


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b'<ink xmlns="http://www.w3.org/2003/InkML"><trace>1 2</ink>', "not well-formed"),
        (b'<ink xmlns="http://www.w3.org/2003/InkML"/>', "no pen strokes"),
        (b"", "not well-formed"),
    ],
)
def test_broken_drawing_gets_one_sentence(tmp_path, content, sentence, reader):
    path = tmp_path / "broken.inkml"
    path.write_bytes(content)
    with pytest.raises(InputError, match=sentence):
        list(read_file(path, reader=reader))


def test_ink_is_known_by_what_it_says_of_itself(tmp_path):
    named = tmp_path / "drawing.dat"
    named.write_text('<?xml version="1.0"?>\n<ink xmlns="http://www.w3.org/2003/InkML"><trace>1 2</trace></ink>')
    assert is_ink(named)
    (tmp_path / "page.html").write_text("<html>ink</html>")
    assert not is_ink(tmp_path / "page.html")
    assert not is_ink(Path(tmp_path / "missing.jpg"))
