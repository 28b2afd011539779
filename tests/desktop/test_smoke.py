"""The real window on a real X server: opened, read, corrected, checked, saved."""

import os
import shutil
import subprocess
import sys

import pytest

from tests.desktop.samples import ROOT, sample

STEPS = """
import sys, time
from pathlib import Path
from PySide6.QtTest import QTest
from PySide6.QtCore import Qt
from desktop.application import make_application
from desktop.desk import Desk
from desktop.window import Window

application = make_application()
assert application.platformName() == "xcb", application.platformName()
desk = Desk()
window = Window(desk)
window.show()
assert QTest.qWaitForWindowExposed(window, 10_000)
checked = []
desk.document_checked.connect(lambda document: checked.append(document.verdicts))
desk.warm_up()
window.open_files([Path(sys.argv[1])])

def wait(count):
    end = time.monotonic() + 60
    while len(checked) < count and time.monotonic() < end:
        QTest.qWait(20)
    assert len(checked) >= count, window.notice.text

wait(1)
assert checked[-1][0].report.first_slip == 1
window.list.choose(1)
window.editor.edit()
QTest.keyClicks(window.editor._field, "=7n+14-3n^2-6n")
QTest.mouseClick(window.editor._confirm, Qt.MouseButton.LeftButton)
wait(2)
assert checked[-1][0].report.first_slip == 2
window.save_picture(Path(sys.argv[2]) / "marked.png")
window.save_picture(Path(sys.argv[2]) / "marked.pdf")
while desk.busy:
    QTest.qWait(20)
assert window.grab().save(sys.argv[2] + "/window.png")
window.close()
print("done")
"""


@pytest.fixture
def display():
    """The name of a display on an X server of this test's own."""
    if shutil.which("Xvfb") is None:
        pytest.skip("Xvfb is not installed")
    read, write = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1280x800x24", "-nolisten", "tcp"],
        pass_fds=[write], stderr=subprocess.DEVNULL,
    )  # fmt: skip
    os.close(write)
    with os.fdopen(read) as numbers:
        number = numbers.readline().strip()
    if not number:
        server.wait(10)
        pytest.skip("Xvfb does not start here")
    yield f":{number}"
    server.terminate()
    server.wait(10)


def test_window_does_the_whole_job_on_an_x_server(display, tmp_path):
    environment = {**os.environ, "DISPLAY": display, "QT_QPA_PLATFORM": "xcb", "PYTHONPATH": str(ROOT)}
    script = tmp_path / "steps.py"
    script.write_text(f"if __name__ == '__main__':\n{''.join(f'    {line}' for line in STEPS.splitlines(True))}")
    command = [sys.executable, str(script), str(sample("candidate-4160.inkml")), str(tmp_path)]
    result = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=150, check=False)
    assert result.returncode == 0, result.stderr
    assert result.stdout == "done\n"
    for name in ("marked.png", "marked.pdf", "window.png"):
        assert (tmp_path / name).stat().st_size > 2000


def test_window_without_a_display_says_what_to_do():
    environment = {n: v for n, v in os.environ.items() if n not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
    if not sys.platform.startswith("linux"):
        pytest.skip("only Linux can be without a display")
    result = subprocess.run(
        [sys.executable, "-m", "desktop"], env={**environment, "PYTHONPATH": str(ROOT)}, capture_output=True,
        text=True, timeout=60, check=False,
    )  # fmt: skip
    assert result.returncode == 2
    assert result.stderr.startswith("There is no display here. Use `firstslip report")
