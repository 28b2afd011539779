"""Typed workings and claimed identities."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from desktop.card import claim_card
from desktop.claims import claim_of, claims_identity
from desktop.pipeline import judge_lines
from desktop.typed_page import typed_document
from desktop.verdict_style import CLAIM_FALSE, CLAIM_TRUE, DECLARED_RIGHT

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._desk.busy, timeout=60_000)


def test_binomial_square_is_true_for_all_values():
    # Euclid, Elements, book II, proposition 4.
    claim = claim_of(r"(a+b)^2 \equiv a^2+2ab+b^2")
    assert claim.is_true is True
    assert claim_card(0, "", claim).style is CLAIM_TRUE


def test_freshmans_square_is_false_with_both_sides_multiplied_out_and_numbers():
    claim = claim_of(r"(a+b)^2 \equiv a^2+b^2")
    assert claim.is_true is False
    assert claim.only_left.replace(" ", "") == "2ab"
    card = claim_card(2, r"(a+b)^2 \equiv a^2+b^2", claim)
    labels = [row.label for row in card.rows]
    assert card.style is CLAIM_FALSE
    assert card.title == "Line 3: not true for all values"
    assert "Only on the left" in labels
    assert "Fails at" in labels


@pytest.mark.parametrize("latex", ["2x+3", r"2(x+", r"\text{so}", "x<3", ""])
def test_what_claims_nothing_is_not_decided(latex):
    assert claim_of(latex).is_true is None


def test_line_with_the_sign_of_identity_or_alone_in_a_typed_working_is_a_claim(qapp):
    one = typed_document(["(a+b)^2=a^2+b^2"])
    one.show(judge_lines(one.lines), revision=one.revision)
    assert claims_identity(one, 0)
    several = typed_document(["2x+3=7", "2x=4"])
    several.show(judge_lines(several.lines), revision=several.revision)
    assert not claims_identity(several, 0)


def test_typed_claim_gets_its_card(qtbot, window):
    window._desk.add_typed(["(x+2)^2=x^2+4"])
    settle(qtbot, window)
    qtbot.waitUntil(lambda: window.card.card is not None and window.card.card.style is CLAIM_FALSE, timeout=30_000)
    assert "not true for all values" in window.card._title.text()


@pytest.mark.parametrize(
    ("claim", "style"), [("(x+2)^2=x^2+4", CLAIM_FALSE), ("(x+2)^2=x^2+4x+4", CLAIM_TRUE)], ids=["false", "true"]
)
def test_row_of_a_claim_says_what_its_card_says(qtbot, window, claim, style):
    window._desk.add_typed([claim])
    row = window.list.model().row
    qtbot.waitUntil(lambda: row(0).style is style, timeout=60_000)
    assert style.word in window.list.model().index(0).data(Qt.ItemDataRole.AccessibleTextRole)
    settle(qtbot, window)
    assert window.card.card.style is style
    window.card.declare(True)  # the user's own word stands above the verdict on the claim, in row and card
    settle(qtbot, window)
    assert row(0).style is DECLARED_RIGHT
    assert window.card.card.style is DECLARED_RIGHT
    window.card.declare(None)
    settle(qtbot, window)
    assert row(0).style is style


def test_rows_of_claims_are_told_without_choosing_them(qtbot, window):
    window._desk.add_typed([r"(a+1)^2 \equiv a^2+1", "2(k+1)", "=2k+2"])
    settle(qtbot, window)
    window.list.choose(2)
    qtbot.waitUntil(lambda: window.list.model().row(0).style is CLAIM_FALSE, timeout=60_000)
    assert window.list.model().row(2).style not in (CLAIM_FALSE, CLAIM_TRUE)


def test_any_line_is_taken_as_a_claim_when_asked(qtbot, window):
    window._desk.add_typed(["2(k+1)", "=2k+2"])
    settle(qtbot, window)
    window._desk.add_typed(["x(x+1)=x^2+x", "x^2+x=6"])
    settle(qtbot, window)
    window.pages.setCurrentRow(1)
    window.list.choose(0)
    window.list.setFocus()
    QTest.keyClick(window.list, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    qtbot.waitUntil(lambda: window.card.card.style is CLAIM_TRUE, timeout=30_000)
    QTest.keyClick(window.list, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert window.card.card.style is not CLAIM_TRUE


def test_line_is_added_to_a_typed_working_edited_and_checked(qtbot, window):
    document = window._desk.add_typed(["2(k+1)", "=2k+2"])
    settle(qtbot, window)
    window.list.choose(1)
    window.list.setFocus()
    QTest.keyClick(window.list, Qt.Key.Key_Insert)
    assert window.focusWidget() is window.editor._field
    QTest.keyClicks(window.editor._field, "=2k+3")
    QTest.keyClick(window.editor._field, Qt.Key.Key_Return)
    settle(qtbot, window)
    assert [line.latex for line in document.lines] == ["2(k+1)", "=2k+2", "=2k+3"]
    assert [row.verdict for row in document.verdicts[0].report.lines] == ["start", "follows", "slip"]


def test_lines_of_a_typed_working_are_moved_and_removed(qtbot, window):
    document = window._desk.add_typed(["2(k+1)", "=2+2k", "=2k+2"])
    settle(qtbot, window)
    window.lines.move(1)
    assert [line.latex for line in document.lines] == ["=2+2k", "2(k+1)", "=2k+2"]
    window.lines.remove()
    settle(qtbot, window)
    assert len(document.lines) == 2


def test_pasted_latex_lines_fill_the_box_for_a_working(qtbot, window, monkeypatch):
    asked = []
    monkeypatch.setattr(window, "ask_for_working", asked.append)
    QGuiApplication.clipboard().setText("2(k+1)\n=2k+2\n")
    window.paste()
    assert asked == ["2(k+1)\n=2k+2\n"]
