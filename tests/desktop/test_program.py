"""The program as it is started: what it keeps outlives a kill, and the next start tells of it."""

import os
import signal
import subprocess
import sys
import time

import pytest

from desktop.store import SetFile
from recognition.errors import InputError
from tests.desktop.samples import ROOT, sample

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="uses the folders of Linux")
LONGEST_S = 90


@pytest.fixture
def home(tmp_path):
    environment = {name: value for name, value in os.environ.items() if not name.startswith("XDG_")}
    return {**environment, "HOME": str(tmp_path), "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT), "LANG": "C"}


def start(home, *files):
    return subprocess.Popen(
        [sys.executable, "-m", "desktop", *map(str, files)], env=home, stderr=subprocess.PIPE, text=True
    )


def wait_for(condition, what):
    end = time.monotonic() + LONGEST_S
    while time.monotonic() < end:
        if condition():
            return
        time.sleep(0.1)
    pytest.fail(f"waited {LONGEST_S} s for {what}")


@pytest.mark.slow
def test_page_that_was_read_is_there_after_a_kill_and_a_restart(home, tmp_path):
    sets = tmp_path / "Documents" / "Firstslip"
    process = start(home, sample("candidate-4160.inkml"))
    try:
        wait_for(lambda: any(b"+ 1 3 n - 3 n" in f.read_bytes() for f in sets.glob("*")), "the reading in the file")
        process.send_signal(signal.SIGKILL)
    finally:
        process.kill()
        process.communicate()
    (path,) = sets.glob("*.firstslip")
    store = SetFile.open(path)
    (page,) = store.pages()
    assert len(page.document.lines) == 3
    assert store.picture(page.key) is not None
    store.close()
    assert not list(tmp_path.rglob("deviceid")), "ONNX Runtime keeps an identity for the usage data it sends"

    def is_held():
        try:
            SetFile.open(path).close()
        except InputError:
            return True
        return False

    again = start(home)
    try:
        wait_for(is_held, "the last set to be opened again")
        log = tmp_path / ".local" / "share" / "firstslip" / "firstslip.log"
        wait_for(log.is_file, "the log")
        assert "The program ended badly." in log.read_text()
    finally:
        again.send_signal(signal.SIGKILL)
        again.communicate()
