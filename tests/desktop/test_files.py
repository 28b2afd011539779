"""Names of the report's files, and files that are whole or not there."""

import json
import os
import stat
from pathlib import Path

import pytest

from desktop.page_names import PageNames
from desktop.whole_file import write_whole
from tests.desktop.samples import SAMPLES


def test_first_page_bears_the_files_name_and_the_second_a_number():
    names = PageNames([Path("a/set.pdf")])
    assert [names.of(0, page) for page in range(3)] == ["set", "set-2", "set-3"]


def test_files_of_one_name_do_not_share_a_report():
    names = PageNames([Path("a/page.jpg"), Path("b/page.jpg"), Path("Page.png")])
    given = [names.of(number, 0) for number in range(3)]
    assert given[0] == "page"
    assert len({name.casefold() for name in given}) == 3


def test_second_page_leaves_a_name_to_the_file_that_bears_it():
    names = PageNames([Path("page.pdf"), Path("page-2.jpg")])
    assert names.of(0, 0) == "page"
    second_of_pdf = names.of(0, 1)
    assert names.of(1, 0) == "page-2"
    assert second_of_pdf not in ("page", "page-2")


def test_many_files_of_one_name_all_get_a_name():
    names = PageNames([Path(f"{n}/page.jpg") for n in range(200)])
    assert len({names.of(n, 0) for n in range(200)}) == 200


def test_file_is_replaced_whole(tmp_path):
    path = tmp_path / "page.json"
    write_whole(path, b"old")
    write_whole(path, b"new")
    assert path.read_bytes() == b"new"
    assert os.listdir(tmp_path) == ["page.json"]


def test_failed_writing_leaves_the_old_file_and_no_part(tmp_path):
    path = tmp_path / "page.json"
    path.mkdir()
    with pytest.raises(OSError):
        write_whole(path, b"new")
    assert os.listdir(tmp_path) == ["page.json"]


@pytest.mark.skipif(os.name != "posix", reason="file modes are a matter of POSIX systems")
def test_file_can_be_read_by_others_as_the_umask_says(tmp_path):
    path = tmp_path / "page.json"
    write_whole(path, b"x")
    plain = tmp_path / "plain"
    plain.write_bytes(b"x")
    assert stat.S_IMODE(path.stat().st_mode) == stat.S_IMODE(plain.stat().st_mode)


def test_samples_and_truth_files_go_together():
    if not SAMPLES.is_dir() or not list(SAMPLES.glob("*.jpg")):
        pytest.skip("sample_images is not there")
    for page in [*SAMPLES.glob("*.jpg"), *SAMPLES.glob("*.inkml")]:
        assert json.loads(page.with_suffix(".json").read_text())["lines"]
