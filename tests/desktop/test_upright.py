"""Pages whose writing lies on its side or head: upright on the desk, told as opened in the report."""

import json

import cv2
import numpy as np
import pytest

from desktop.confirmed import load_confirmed
from desktop.desk_line import DeskLine
from desktop.document import Document
from desktop.read_parts import FoundAgain
from desktop.reading import PageReader
from desktop.report import report
from desktop.upright import as_opened, turned_box, turned_picture
from recognition.result import Box
from tests.desktop.samples import sample, truth

PAGE = "candidate-4107.jpg"


@pytest.mark.parametrize("turns", [0, 1, 2, 3])
def test_box_turns_with_the_picture_and_back(turns):
    picture = np.zeros((40, 70, 3), np.uint8)
    box = Box(10, 5, 20, 8)
    picture[box.y : box.y + box.h, box.x : box.x + box.w] = 255
    upright = turned_picture(picture, turns)
    turned = turned_box(box, turns, (70, 40))
    rows, columns = np.nonzero(upright[:, :, 0])
    assert (columns.min(), rows.min(), np.ptp(columns) + 1, np.ptp(rows) + 1) == turned
    assert as_opened(turned, turns, (upright.shape[1], upright.shape[0])) == box


@pytest.fixture(scope="module")
def sideways(tmp_path_factory):
    """The sample page as a camera held on its side takes it."""
    picture = cv2.imread(str(sample(PAGE)))
    path = tmp_path_factory.mktemp("turned") / "sideways.jpg"
    cv2.imwrite(str(path), cv2.rotate(picture, cv2.ROTATE_90_COUNTERCLOCKWISE), [cv2.IMWRITE_JPEG_QUALITY, 95])
    return path


@pytest.fixture(scope="module")
def reported(sideways, tmp_path_factory, qapp):
    out = tmp_path_factory.mktemp("out")
    assert report([sideways], out, complain=pytest.fail) == 0
    return out


def test_sideways_photo_is_upright_on_the_desk(sideways):
    reader = PageReader()
    (found,) = reader.find(sideways)
    (upright,) = reader.find(sample(PAGE))
    assert found.document.turns == 1
    assert upright.document.turns == 0
    assert found.document.size == upright.document.size
    assert found.document.picture.shape == upright.document.picture.shape
    difference = np.abs(found.document.picture.astype(int) - upright.document.picture).mean()
    assert difference < 8  # grey levels: the same page but for the JPEG
    boxes = [np.array(line.box) for line in found.document.lines]
    expected = [np.array(line.box) for line in upright.document.lines]
    assert len(boxes) == len(expected)
    usual = np.median([box[3] for box in expected])
    assert max(np.abs(a - b).max() for a, b in zip(boxes, expected, strict=True)) < 0.4 * usual
    tokens = [token.box for line in reader.read(found) for token in line[0].tokens if token.box is not None]
    width, height = found.document.size
    assert all(0 <= box.x <= width and 0 <= box.y <= height for box in tokens)
    assert np.median([box.h for box in tokens]) < usual


def test_report_of_a_sideways_photo_tells_boxes_as_on_the_photo(sideways, reported):
    (working,) = json.loads((reported / "sideways.json").read_text())["workings"]
    assert working["first_slip"] == truth(PAGE)["planted"]["line"]
    height, width = cv2.imread(str(sideways)).shape[:2]
    for line in working["lines"]:
        x, y, w, h = line["box"]
        assert h > w  # the line runs up the photo
        assert min(x, y) >= 0 and x + w <= width and y + h <= height


def test_confirmed_lines_of_a_sideways_photo_find_their_places(sideways, reported, tmp_path):
    confirmed = reported / "sideways.json"
    assert load_confirmed(confirmed)
    assert report([sideways], tmp_path, confirmed=[confirmed], complain=pytest.fail) == 0
    before, after = (json.loads((folder / "sideways.json").read_text()) for folder in (reported, tmp_path))
    assert [[line["box"] for line in one["lines"]] for one in after["workings"]] == [
        [line["box"] for line in one["lines"]] for one in before["workings"]
    ]
    assert after["workings"][0]["slip"] == before["workings"][0]["slip"]
    assert {line["state"] for line in after["workings"][0]["lines"]} == {"confirmed"}


def test_page_that_was_kept_sideways_and_unread_is_turned_when_it_is_read(sideways, qapp):
    picture = cv2.cvtColor(cv2.imread(str(sideways)), cv2.COLOR_BGR2RGB)
    reader = PageReader()
    kept = Document("sideways.jpg", size=(picture.shape[1], picture.shape[0]), picture=picture,
                    lines=(DeskLine(Box(5, 5, 20, 20)),))  # fmt: skip
    found = reader.find_in_picture(picture, "sideways.jpg")
    FoundAgain(kept, found.document).take()
    kept.take_readings(reader.read(found))
    assert kept.turns == 1
    assert kept.size == (picture.shape[0], picture.shape[1])
    assert kept.picture.shape[:2] == kept.size[::-1]
    assert all(line.latex for line in kept.lines)
