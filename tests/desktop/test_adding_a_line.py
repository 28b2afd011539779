"""Where the box for a new line stands at first: on free paper, where it shows what is to be done."""

import numpy as np
import pytest
from PySide6.QtCore import QRectF

from desktop.desk import Desk
from desktop.desk_line import DeskLine
from desktop.document import Document
from desktop.window import Window
from recognition.result import Box

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)


@pytest.mark.parametrize(
    ("tops", "chosen", "expected"),
    [
        ((20, 200), 0, QRectF(20, 72, 200, 40)),  # the paper under the chosen line is free
        ((20, 70, 120), 0, QRectF(20, 172, 200, 40)),  # other lines stand there: under the lowest
        ((20, 70, 350), 0, QRectF(20, 360, 200, 40)),  # and never beyond the page
        ((20, 70, 120), 2, QRectF(20, 172, 200, 40)),
    ],
)
def test_box_for_a_new_line_stands_on_free_paper(qtbot, checker, tops, chosen, expected):
    lines = tuple(DeskLine(Box(20, top, 200, 40), latex="k = 4") for top in tops)
    page = Document("page.jpg", size=(300, 400), picture=np.full((400, 300, 3), 255, np.uint8), lines=lines)
    window = Window(Desk(checker=checker))
    qtbot.addWidget(window)
    window.show()
    window.desk.lay(page)
    window.list.choose(chosen)
    window.lines.add()
    assert QRectF(*window.page._tool.box) == expected
    qtbot.waitUntil(lambda: not window.desk.busy, timeout=30_000)
    window.close()
