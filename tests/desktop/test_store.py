"""The set's file: everything comes back, and what is wrong with a file is told in one sentence while it is kept."""

import os
import random
import resource
import sqlite3
import subprocess
import sys
from dataclasses import replace

import numpy as np
import pytest

from checker.report import Final, LineReport, Report, Slip
from desktop.codec import NotThatKind, pack, unpack
from desktop.desk_line import DeskLine, LineMark, Override, State
from desktop.document import Document, WorkingVerdict
from desktop.line_changes import ConfirmAll, InsertLine, RemoveLine, SetReading
from desktop.measure_kill import kill_once
from desktop.page_changes import AwardMarks, Overrule, SetCandidate, SetStrokes
from desktop.store import KeptPage, SetFile
from desktop.store_blobs import picture_blob, picture_of, stroke_blob, stroke_of
from desktop.store_faults import DamagedSet, FullDisk
from desktop.store_file import is_set
from desktop.store_schema import APPLICATION_ID, MIGRATIONS, VERSION
from recognition.errors import InputError
from recognition.ink import Stroke
from recognition.result import Box, Candidate, Token

TOKENS = (Token("=", 0.99, Box(1, 2, 3, 4)), Token("{", 1.0), Token("k", 0.5, Box(9, 2, 3, 4)))
LINE = DeskLine(
    Box(10, 20, 300, 40), (Candidate("= k", 0.5, TOKENS), Candidate("= x", 0.25)), "= k", State.DOUBTFUL,
    polygon=((10.0, 20.0), (310.5, 21.0), (310.0, 60.0)), starts_working=True,
)  # fmt: skip
SLIP = Slip("sign-product", "+8t", (11, 14), "-8t", "-2t times +4 is -8t", "=5t+20-2t^2-8t")
VERDICT = WorkingVerdict(
    (0,), Report("", 0, (LineReport("slip", 0, "why", {"t": "1"}, SLIP),), Final(False, None, "x")), "look", (0, "= x")
)


def page_with_all() -> Document:
    document = Document("photo.jpg", 1, (400, 300), picture=np.full((300, 400, 3), 200, np.uint8), lines=(LINE, LINE))
    document.do(SetReading(0, "= k + 1"))
    document.do(Overrule(0, Override(False, "the sign, as said in the lesson: ± „Klammer“")))
    document.do(AwardMarks(1, (LineMark("M"), LineMark("A", 2, given=1))))
    document.do(SetCandidate("4107"))
    strokes = (Stroke(np.array([[1.5, 2.25]])), Stroke(np.ones((3, 2)), np.arange(3.0), np.full(3, 0.5)))
    document.do(SetStrokes(strokes, document.lines))
    document.show((VERDICT,), revision=document.revision)
    return document


def kept(path, *documents):
    store = SetFile.create(path)
    store.keep([KeptPage(store.new_key(), place, document) for place, document in enumerate(documents)])
    return store


def reopened(path):
    store = SetFile.open(path)
    pages = [page.document for page in store.pages()]
    pictures = [store.picture(page.key) for page in store.pages()]
    store.close()
    return pages, pictures


def test_page_comes_back_with_lines_marks_overrides_strokes_verdicts_and_picture(tmp_path):
    before = page_with_all()
    kept(tmp_path / "set.firstslip", before).close()
    (after,), (picture,) = reopened(tmp_path / "set.firstslip")
    assert (after.file, after.page, after.size, after.candidate) == ("photo.jpg", 1, (400, 300), "4107")
    assert (after.lines, after.verdicts) == (before.lines, before.verdicts)
    assert [stroke_blob(s) for s in after.strokes] == [stroke_blob(s) for s in before.strokes]
    assert after.picture is None
    assert after.thumbnail is not None and max(after.thumbnail.shape) == 208
    assert np.abs(picture.astype(int) - 200).max() <= 2


def test_closed_set_is_one_file(tmp_path):
    kept(tmp_path / "set.firstslip", page_with_all()).close()
    assert [path.name for path in tmp_path.iterdir()] == ["set.firstslip"]


def test_pages_keep_their_order_and_a_removed_page_is_gone(tmp_path):
    store = SetFile.create(tmp_path / "set.firstslip")
    names = ["c.jpg", "a.jpg", "b.jpg"]
    keys = [store.new_key() for _ in names]
    store.keep([KeptPage(keys[place], place, Document(name)) for place, name in enumerate(names)])
    store.keep([], gone=[keys[1]])
    store.close()
    assert [page.file for page in reopened(tmp_path / "set.firstslip")[0]] == ["c.jpg", "b.jpg"]


def test_removed_page_leaves_no_trace_of_its_lines_in_the_file(tmp_path):
    store = SetFile.create(tmp_path / "set.firstslip")
    store.keep([KeptPage(1, 0, Document("page.jpg", lines=(replace(LINE, latex="9182736455"),)))])
    store.keep([], gone=[1])
    store.close()
    assert b"9182736455" not in (tmp_path / "set.firstslip").read_bytes()


@pytest.mark.parametrize("seed", range(8))
def test_any_run_of_edits_leaves_the_file_as_the_page(tmp_path, seed):
    """Rows are written only where lines differ, so every way of inserting, removing and changing is tried."""
    chance = random.Random(seed)
    store = SetFile.create(tmp_path / "set.firstslip")
    document, key = Document("page.jpg", lines=(LINE,)), store.new_key()
    for number in range(60):
        index = chance.randrange(len(document.lines) + 1)
        line = replace(LINE, latex=f"= {number}")
        change = InsertLine(index, line)
        if index < len(document.lines):
            change = chance.choice([change, RemoveLine(index), SetReading(index, f"x={number}"), ConfirmAll((index,))])
        document.do(change)
        if chance.random() < 0.2:
            document.undo()
        if chance.random() < 0.5:
            store.keep([KeptPage(key, 0, document.snapshot())])
    store.keep([KeptPage(key, 0, document.snapshot())])
    store.close()
    (after,), _ = reopened(tmp_path / "set.firstslip")
    assert after.lines == document.lines


def test_copy_is_a_whole_set_and_the_first_goes_on(tmp_path):
    store = kept(tmp_path / "one.firstslip", page_with_all())
    store.copy_to(tmp_path / "two.firstslip")
    assert len(reopened(tmp_path / "two.firstslip")[0]) == 1
    store.keep([], gone=[1])
    store.close()
    assert len(reopened(tmp_path / "one.firstslip")[0]) == 0


def test_photo_is_kept_close_and_drawing_exactly():
    noise = np.random.default_rng(0).integers(90, 160, (64, 64, 3), np.uint8)
    drawn = np.full((64, 64, 3), 255, np.uint8)
    drawn[10:12, 5:50] = (20, 30, 200)
    assert picture_blob(noise).startswith(b"\xff\xd8")
    assert np.array_equal(picture_of(picture_blob(drawn)), drawn)


def test_stroke_that_is_cut_off_is_refused():
    blob = stroke_blob(Stroke(np.ones((3, 2)), np.arange(3.0)))
    with pytest.raises(ValueError, match="cut off"):
        stroke_of(blob[:-8])


# What may be wrong with a file ------------------------------------------------------------------------------------


def damage(content, kind):
    if kind == "cut off":
        return content[: len(content) // 2]
    if kind == "zeros in the middle":
        return content[:4096] + bytes(8192) + content[12288:]
    if kind == "head gone":
        return bytes(100) + content[100:]
    if kind == "one letter of a line":
        assert content.count(b"= k + 1") >= 1
        return content.replace(b"= k + 1", b"= k - 1")
    return b"" if kind == "empty" else b"not a set" * 30


KINDS = ["cut off", "zeros in the middle", "head gone", "one letter of a line", "empty", "text"]


@pytest.mark.parametrize("kind", KINDS)
def test_damaged_file_is_told_and_left_as_it_is(tmp_path, kind):
    path = tmp_path / "set.firstslip"
    kept(path, page_with_all(), page_with_all()).close()
    content = damage(path.read_bytes(), kind)
    path.write_bytes(content)
    with pytest.raises(DamagedSet, match=r"set\.firstslip is damaged .* left as it is"):
        reopened(path)
    assert path.read_bytes() == content
    assert [p.name for p in tmp_path.iterdir()] == ["set.firstslip"]


def test_random_damage_is_told_or_harmless(tmp_path):
    """A flipped byte gives the sentence, or lies where nothing is kept; it never ends in any other error."""
    path = tmp_path / "set.firstslip"
    before = page_with_all()
    kept(path, before).close()
    whole, chance = path.read_bytes(), random.Random(3)
    for _ in range(60):
        content = bytearray(whole)
        content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)
        path.write_bytes(content)
        try:
            (after,), _ = reopened(path)
        except InputError as exc:
            assert "set.firstslip" in str(exc)
        else:
            assert after.lines == before.lines


def test_newer_file_is_told_and_left_as_it_is(tmp_path):
    path = tmp_path / "set.firstslip"
    kept(path, page_with_all()).close()
    connection = sqlite3.connect(path)
    connection.execute(f"PRAGMA user_version = {VERSION + 1}")
    connection.close()
    content = path.read_bytes()
    with pytest.raises(InputError, match=r"made by a newer Firstslip.*install the newer version"):
        SetFile.open(path)
    assert path.read_bytes() == content


def test_file_of_the_first_version_is_brought_up_to_date(tmp_path):
    path = tmp_path / "old.firstslip"
    connection = sqlite3.connect(path)
    for statement in MIGRATIONS[0]:
        connection.execute(statement)
    connection.execute("INSERT INTO page (id, place, file, page, width, height) VALUES (7, 0, 'old.jpg', 2, 40, 30)")
    connection.execute("PRAGMA user_version = 1")
    connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    connection.commit()
    connection.close()
    store = SetFile.open(path)
    (page,) = store.pages()
    assert (page.key, page.document.file, page.document.candidate) == (7, "old.jpg", "")
    page.document.do(SetCandidate("4112"))
    store.keep([page])
    store.close()
    assert reopened(path)[0][0].candidate == "4112"


def test_database_of_another_program_is_told_apart(tmp_path):
    path = tmp_path / "other.firstslip"
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE a (b)")
    connection.close()
    with pytest.raises(InputError, match="not a set of Firstslip"):
        SetFile.open(path)


def test_set_that_is_open_elsewhere_is_told_and_not_replaced(tmp_path):
    path = tmp_path / "set.firstslip"
    store = kept(path, page_with_all())
    code = f"from pathlib import Path; from desktop.store import SetFile; SetFile.{{}}(Path({str(path)!r}))"
    for what in ("open", "create"):
        run = subprocess.run([sys.executable, "-c", code.format(what)], capture_output=True, text=True, check=False)
        assert "set.firstslip is open in another window" in run.stderr
    store.close()
    assert len(reopened(path)[0]) == 1


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() != 0, reason="drops root's rights, so needs them")
def test_read_only_set_is_told(tmp_path):
    path = tmp_path / "set.firstslip"
    kept(path, page_with_all()).close()
    path.chmod(0o444)
    for folder in (tmp_path, *tmp_path.parents):
        if folder.stat().st_mode & 0o077 == 0:
            folder.chmod(0o755)
    code = (
        "import os, sys; from pathlib import Path; from desktop.store import SetFile; os.setuid(65534);"
        f"SetFile.open(Path({str(path)!r}))"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert "set.firstslip may not be changed" in run.stderr


def test_missing_file_and_folder_are_told(tmp_path):
    with pytest.raises(InputError, match=r"There is no file gone\.firstslip"):
        SetFile.open(tmp_path / "gone.firstslip")
    with pytest.raises(InputError, match="is a folder"):
        SetFile.open(tmp_path)
    with pytest.raises(InputError, match="cannot be opened or made there"):
        SetFile.create(tmp_path / "no such folder" / "set.firstslip")


def test_full_disk_is_told_and_the_file_holds_what_it_held(tmp_path):
    path = tmp_path / "set.firstslip"
    store = kept(path, page_with_all())
    (count,) = store._connection.execute("PRAGMA page_count").fetchone()
    store._connection.execute(f"PRAGMA max_page_count = {count}")
    large = np.random.default_rng(0).integers(0, 255, (600, 600, 3), np.uint8)
    with pytest.raises(FullDisk, match="the disk is full"):
        store.keep([KeptPage(store.new_key(), 1, Document("more.jpg", size=(600, 600), picture=large))])
    store.close()
    assert [page.file for page in reopened(path)[0]] == ["photo.jpg"]


def test_limit_on_file_size_is_told_like_a_full_disk(tmp_path):
    """The operating system refuses the write itself here (RLIMIT_FSIZE)."""
    path = tmp_path / "set.firstslip"
    code = f"""
import resource, signal, numpy as np
from pathlib import Path
from desktop.document import Document
from desktop.store import KeptPage, SetFile
store = SetFile.create(Path({str(path)!r}))
store.keep([KeptPage(store.new_key(), 0, Document("first.jpg"))])
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (200_000, 200_000))
large = np.random.default_rng(0).integers(0, 255, (600, 600, 3), np.uint8)
store.keep([KeptPage(store.new_key(), 1, Document("more.jpg", size=(600, 600), picture=large))])
"""
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert "set.firstslip could not be" in run.stderr.splitlines()[-1]
    assert [page.file for page in reopened(path)[0]] == ["first.jpg"]
    assert resource.getrlimit(resource.RLIMIT_FSIZE)[0] != 200_000


@pytest.mark.slow
def test_killed_ten_times_the_set_opens_and_lacks_at_most_a_second(tmp_path):
    chance = random.Random(10)
    for number in range(10):
        loss = kill_once(tmp_path / f"{number}.firstslip", number, after_s=chance.uniform(0, 1.2))
        assert loss.opened == ""
        assert loss.lost_ms <= 1000
        assert loss.edits > 0


# The codec --------------------------------------------------------------------------------------------------------


def test_every_field_of_a_line_and_a_verdict_survives_the_codec():
    for value in (replace(LINE, override=Override(True), marks=(LineMark("B", 3, 0),)), VERDICT):
        assert unpack(type(value), pack(value)) == value


def test_defaults_are_left_out_and_unknown_fields_passed_over():
    assert pack(Override(True)) == {"is_right": True}
    assert unpack(Override, {"is_right": True, "colour": "red"}) == Override(True)


@pytest.mark.parametrize("data", [{}, [], None, {"is_right": 1}, {"is_right": True, "note": 5}])
def test_data_of_another_kind_are_refused(data):
    with pytest.raises(NotThatKind):
        unpack(Override, data)


def test_mark_that_cannot_be_is_refused():
    with pytest.raises(NotThatKind):
        unpack(LineMark, {"kind": "Z"})


def test_set_is_known_by_its_ending(tmp_path):
    assert is_set(tmp_path / "A.FirstSlip") and not is_set(tmp_path / "a.pdf")
