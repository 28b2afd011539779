"""The log: written where the user can open it, and a crash is noticed at the next start."""

import logging
import os
import subprocess
import sys

import pytest

from desktop.fault_log import FaultLog

CRASH = """
import ctypes, logging, sys
from pathlib import Path
from desktop.fault_log import FaultLog
log = FaultLog(Path(sys.argv[1]))
print(log.start(), flush=True)
{what}
"""


def run(path, what):
    return subprocess.run(
        [sys.executable, "-c", CRASH.format(what=what), str(path)], capture_output=True, text=True, check=False
    )


@pytest.mark.logs("ERROR")
def test_fault_is_in_the_log_with_its_trace(tmp_path):
    log = FaultLog(tmp_path / "deep" / "firstslip.log")
    assert not log.start()
    try:
        raise RuntimeError("a fault of ours")
    except RuntimeError:
        logging.getLogger("desktop.test").exception("reading failed")
    log.stop()
    text = log.path.read_text()
    assert "ERROR desktop.test: reading failed" in text and "RuntimeError: a fault of ours" in text
    assert os.listdir(tmp_path / "deep") == ["firstslip.log"]


def test_crash_is_noticed_once_and_its_place_is_in_the_log(tmp_path):
    path = tmp_path / "firstslip.log"
    assert run(path, "ctypes.string_at(0)").returncode < 0  # reads at address 0: the process is ended
    assert run(path, "log.stop()").stdout == "True\n"
    assert "Segmentation fault" in path.read_text() and "string_at" in path.read_text()
    assert run(path, "log.stop()").stdout == "False\n"


def test_second_window_is_no_crash(tmp_path):
    log = FaultLog(tmp_path / "firstslip.log")
    log.start()
    assert run(tmp_path / "firstslip.log", "log.stop()").stdout == "False\n"
    log.stop()


def test_folder_out_of_reach_is_let_be(tmp_path):
    (tmp_path / "file").write_text("")
    log = FaultLog(tmp_path / "file" / "firstslip.log")
    assert not log.start()
    log.stop()
