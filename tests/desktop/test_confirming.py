"""Confirming a reading: doubtful symbols, what else they may be, brackets, completion, keypad."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from desktop.brackets import lonely, partners
from desktop.desk_line import DeskLine, State
from desktop.document import Document
from desktop.doubts import doubts_of, marked_latex, others_of, range_of, symbol_at, with_other
from desktop.keypad import KEYS
from desktop.latex_field import PLACE, LatexField
from desktop.maths import MathsError, typeset
from desktop.symbol_menu import SymbolMenu
from recognition.result import Box, Candidate, Line, Page, Token

pytestmark = [
    pytest.mark.qt_log_ignore("This plugin does not support", extend=True),
]


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._desk.busy, timeout=60_000)


def read(texts, chances, probability):
    """A reading of which each symbol is 30 pixels wide, the first at x = 100."""
    tokens, x = [], 100
    for text, chance in zip(texts, chances, strict=True):
        box = None if text in "^{}" else Box(x, 200, 28, 40)
        tokens.append(Token(text, chance, box))
        x += 0 if box is None else 30
    return Candidate(" ".join(texts), probability, tuple(tokens))


# x^2 + 5 in which the 5 is unsure: another reading has s.
UNSURE = (
    read(["x", "^", "{", "2", "}", "+", "5"], [0.99, 1, 1, 0.95, 1, 0.99, 0.6], 0.55),
    read(["x", "^", "{", "2", "}", "+", "s"], [0.99, 1, 1, 0.95, 1, 0.99, 0.3], 0.25),
)


def unsure_line(state=State.DOUBTFUL):
    return DeskLine(Box(100, 200, 120, 40), UNSURE, UNSURE[0].latex, state)


def test_symbols_below_nine_in_ten_are_doubtful_until_the_line_is_confirmed():
    assert [(d.text, d.place) for d in doubts_of(unsure_line())] == [("5", 6)]
    assert doubts_of(unsure_line(State.CONFIRMED)) == ()


def test_other_readings_come_before_look_alikes():
    (first, weight), *others = others_of(unsure_line(), 6)
    assert (first, weight) == ("s", pytest.approx(0.25))
    assert ("S", 0.0) in others  # a hand's 5 looks like an s
    assert all(text != "5" for text, _ in others)


def test_another_symbol_is_put_in_its_place():
    assert with_other(unsure_line(), 6, "s") == "x^2+s"
    assert with_other(unsure_line(), 3, "3") == "x^3+5"


def test_range_of_a_symbol_is_counted_in_what_one_would_type():
    assert range_of(unsure_line(), 6) == (4, 5)  # x^2+5
    assert range_of(unsure_line(), 3) == (2, 3)


def test_doubtful_symbol_is_underlined_in_maths_that_still_sets():
    marked = marked_latex(unsure_line())
    assert r"\underline{5}" in marked
    assert typeset(marked).width > 0


@pytest.mark.parametrize("place", range(5))
def test_every_kind_of_symbol_can_be_marked_and_set(place):
    texts = ["-", "x", "=", "(", r"\pi"]
    chances = [0.99] * 5
    chances[place] = 0.4
    line = DeskLine(Box(0, 0, 10, 10), (read(texts, chances, 0.5),), " ".join(texts), State.DOUBTFUL)
    typeset(marked_latex(line))


def test_click_finds_the_nearest_symbol_within_reach():
    line = unsure_line()
    assert symbol_at(line, 205, 220, reach=10).text == "5"  # fourth box with ink: from x = 190 to 218
    assert symbol_at(line, 205, 246, reach=10).text == "5"
    assert symbol_at(line, 205, 300, reach=10) is None


def test_brackets_find_their_partners():
    text = r"\frac{a}{(b]}"
    assert partners(text)[5] == 7
    assert lonely("2(k+1") == (1,)
    assert lonely("2k+1)") == (4,)
    assert lonely(r"\left\{ x \right\}") == ()  # written braces are none of LaTeX's


def test_command_is_completed_with_its_template(qtbot):
    field = LatexField()
    qtbot.addWidget(field)
    field.show()
    field.setFocus()
    QTest.keyClicks(field, r"x=\fr")
    qtbot.waitUntil(lambda: field._popup.isVisible())
    QTest.keyClick(field, Qt.Key.Key_Tab)
    assert field.text() == r"x=\frac{}{}"
    QTest.keyClicks(field, "1")
    QTest.keyClick(field, Qt.Key.Key_Tab)
    QTest.keyClicks(field, "2")
    assert field.text() == r"x=\frac{1}{2}"


def test_field_takes_one_line_from_the_clipboard(qtbot):
    field = LatexField()
    qtbot.addWidget(field)
    QApplication.clipboard().setText("2k\n+ 4\n")
    field.paste()
    assert field.text() == "2k + 4"


@pytest.mark.parametrize("key", KEYS, ids=lambda key: key.name)
def test_every_key_of_the_pad_types_what_sets_when_filled(qtbot, key):
    field = LatexField()
    qtbot.addWidget(field)
    field.setText("a")
    if PLACE in key.types and not key.types.startswith(("^", "_")):
        field.selectAll()
    field.fill_in(key.types)
    text = field.text().replace("{}", "{n}").replace("[]", "[3]")
    try:
        typeset(text + "x")
    except MathsError as exc:
        pytest.fail(f"{text}: {exc}")


def test_pad_puts_what_is_selected_over_the_bar(qtbot):
    field = LatexField()
    qtbot.addWidget(field)
    field.setText("x+1")
    field.selectAll()
    field.fill_in(KEYS[0].types)
    QTest.keyClicks(field, "2")
    assert field.text() == r"\frac{x+1}{2}"


def open_unsure(qtbot, window):
    lines = (
        Line(Box(100, 100, 120, 40), (read(["x", "+", "x"], [0.99] * 3, 0.97),)),
        Line(Box(100, 200, 120, 40), UNSURE),
    )
    document = Document.of_page(Page("page.jpg", 0, (600, 400), lines), None)
    window._desk.add(document)
    settle(qtbot, window)
    return document


def test_editing_begins_on_the_doubtful_symbol_and_three_keys_mend_it(qtbot, window):
    document = open_unsure(qtbot, window)
    assert window.list.chosen == 1
    window.list.setFocus()
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_F2)
    assert window.editor._field.textCursor().selectedText() == "5"
    QTest.keyClicks(window.editor._field, "8")
    QTest.keyClick(window.editor._field, Qt.Key.Key_Return)
    assert (document.lines[1].latex, document.lines[1].state) == ("x^2+8", State.CONFIRMED)
    settle(qtbot, window)


def test_tab_goes_to_the_next_doubtful_symbol_also_after_typing(qtbot, window):
    twice = read(["x", "-", "5", "=", "y", "+", "2"], [0.99, 0.99, 0.5, 0.99, 0.99, 0.99, 0.6], 0.4)
    document = Document.of_page(Page("p", 0, (600, 400), (Line(Box(100, 200, 220, 40), (twice,)),)), None)
    window._desk.add(document)
    settle(qtbot, window)
    window.editor.edit()
    field = window.editor._field
    QTest.keyClicks(field, "12")
    QTest.keyClick(field, Qt.Key.Key_Tab)
    assert field.textCursor().selectedText() == "2"
    QTest.keyClicks(field, "z")
    assert field.text() == "x-12=y+z"


def test_arrows_in_the_field_bring_the_other_readings_to_be_changed(qtbot, window):
    open_unsure(qtbot, window)
    window.editor.edit()
    field = window.editor._field
    QTest.keyClick(field, Qt.Key.Key_Down)
    assert field.text() == "x^2+s"
    assert field.textCursor().selectedText() == "s"
    QTest.keyClick(field, Qt.Key.Key_Up)
    assert field.text() == "x^2+5"


def test_asking_what_else_a_symbol_may_be_offers_numbered_signs_and_enter_confirms(qtbot, window):
    document = open_unsure(qtbot, window)
    window.list.setFocus()
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_S)
    (menu,) = [w for w in QApplication.topLevelWidgets() if isinstance(w, SymbolMenu) and w.isVisible()]
    QTest.keyClick(menu, Qt.Key.Key_1)
    assert window.editor.text == "x^2+s"
    assert document.lines[1].state is State.DOUBTFUL  # nothing is confirmed yet
    QTest.keyClick(window.list, Qt.Key.Key_Return)
    assert (document.lines[1].latex, document.lines[1].state) == ("x ^ { 2 } + s", State.CONFIRMED)
    settle(qtbot, window)


def test_page_is_checked_again_after_each_line_that_is_confirmed(qtbot, window):
    open_unsure(qtbot, window)
    seen = []
    window._desk.document_checked.connect(lambda document: seen.append(document.revision))
    window.list.choose(0)
    window.list.setFocus()
    QTest.keyClick(window.list, Qt.Key.Key_Return)
    settle(qtbot, window)
    QTest.keyClick(window.list, Qt.Key.Key_Return)
    settle(qtbot, window)
    assert len(seen) == 2
