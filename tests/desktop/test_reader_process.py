"""The reader in its process: the same answers, stopped when asked, and mended when it dies."""

import multiprocessing

import numpy as np
import pytest

from desktop.maths import _LAID, MathsError, _key, laid_out_of, take_laid_out, typeset
from desktop.reader_process import ReaderProcess
from desktop.reading import PageReader
from recognition.errors import Cancelled, InputError
from tests.desktop.samples import sample

INK_PAGE = "candidate-4160.inkml"
PHOTO = "candidate-4107.jpg"


@pytest.fixture(scope="module")
def process():
    reader = ReaderProcess(threads=1)
    yield reader
    reader.close()
    assert not [child for child in multiprocessing.active_children() if child.name == "reader"]


def test_drawing_is_read_as_in_this_process(process):
    here = PageReader(threads=1)
    (mine,), (theirs,) = list(here.find(sample(INK_PAGE))), list(process.find(sample(INK_PAGE)))
    assert np.array_equal(theirs.document.picture, mine.document.picture)
    assert theirs.document.lines == mine.document.lines
    assert len(theirs.document.strokes) == len(mine.document.strokes) > 0
    there = process.read(theirs)
    first = [[candidate.latex for candidate in of_line] for of_line in here.read(mine)]
    assert [[candidate.latex for candidate in of_line] for of_line in there] == first
    assert all(token.box is None or token.box.w > 0 for token in there[0][0].tokens)


def test_photo_comes_whole_with_its_halvings_and_readings_come_typeset(process):
    (found,) = list(process.find(sample(PHOTO)))
    document = found.document
    assert document.picture.shape[:2][::-1] == document.size
    assert document.halvings[0].shape[0] == document.size[1] // 2
    document.take_readings(process.read(found))
    assert _key(document.lines[0].latex) in _LAID


def test_picture_in_memory_is_not_copied_back(process):
    picture = np.full((300, 400, 3), 255, np.uint8)
    picture[100:104, 50:300] = 0
    found = process.find_in_picture(picture, "Pasted picture")
    assert found.document.picture is picture
    assert found.document.size == (400, 300)


def test_file_that_cannot_be_used_is_told_and_the_next_one_is_read(process, tmp_path):
    (tmp_path / "notes.txt").write_text("x=2")
    with pytest.raises(InputError, match=r"notes\.txt"):
        list(process.find(tmp_path / "notes.txt"))
    assert len(list(process.find(sample(INK_PAGE)))) == 1


def test_pages_of_two_files_are_gone_through_side_by_side(process):
    one, other = process.find(sample(INK_PAGE)), process.find(sample(PHOTO))
    assert next(one).document.file.endswith("inkml")
    assert next(other).document.file.endswith("jpg")
    assert next(one, None) is None
    other.close()


def test_reading_is_stopped_and_goes_on_with_the_next_page(process):
    (found,) = list(process.find(sample(INK_PAGE)))
    before = process._process

    def stop(done, total):
        raise Cancelled

    with pytest.raises(Cancelled):
        process.read(found, tick=stop)
    assert process._process is before or process._process is None
    assert len(process.read(found)) == 3


def test_process_that_dies_is_told_and_started_again(process):
    (found,) = list(process.find(sample(INK_PAGE)))
    with pytest.raises(InputError, match="Reading broke off"):
        process.read(found, tick=lambda done, total: process._process.kill())
    assert len(process.read(found)) == 3


@pytest.mark.logs("ERROR")
def test_fault_in_the_process_is_a_fault_here(process):
    with pytest.raises(RuntimeError, match="failed in its process"):
        process.load().read(["no line"])


def test_what_cannot_be_typeset_is_left_out_and_typeset_on_demand():
    laid = laid_out_of(["2 k + 1", r"\frac{", ""])
    assert len(laid) == 2  # as it is and as one would type it
    take_laid_out(laid)
    assert typeset("2 k + 1").width > 10
    with pytest.raises(MathsError):
        typeset(r"\frac{")
