"""Manners: names for screen readers, keys for everything, contrast of text and focus, room at 200 % text."""

import collections

import pytest
from PySide6.QtCore import QSettings, Qt, QTranslator
from PySide6.QtGui import QAccessible, QAction, QColor, QKeySequence, QPalette
from PySide6.QtWidgets import QAbstractButton, QAbstractScrollArea, QApplication, QLabel, QMenu, QScrollBar, QWidget

from desktop.class_view import ClassView
from desktop.desk import Desk
from desktop.desk_line import State
from desktop.dialogs import AboutBox, KeysBox, TypedWorkingBox
from desktop.elided_label import ElidedLabel
from desktop.options_menu import OptionsMenu
from desktop.scheme_box import SchemeBox
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings
from desktop.theme import LEAST_TARGET, ground, ink, mix, quiet, state_colour, verdict_colour
from desktop.translation import install
from desktop.verdict_card import CardArea
from desktop.verdict_style import CARRIED_ON, CHECK_READING, STYLES, contrast
from desktop.window import Window

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support propagateSizeHints", extend=True)
NO_KEY = {"about"}
"""Actions without a key of their own: in the menu they are reached by Alt and the underlined letter."""


@pytest.fixture
def window(qtbot, tmp_path):
    desk = Desk()
    window = Window(desk)
    qtbot.addWidget(window)
    settings = Settings(QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat))
    window.sets = Sets(desk, tmp_path / "sets")
    window.set_actions = SetActions(window, window.sets, settings)
    window.options = OptionsMenu(window, settings, tmp_path / "log")
    desk.add_typed(["2(k+1)", "=2k+1", "=k"])
    window.show()
    qtbot.waitUntil(lambda: not desk.busy, timeout=60_000)
    yield window
    window.close()
    window.sets.close()


def boxes(window):
    return [window, ClassView(window.desk, window), AboutBox(window), TypedWorkingBox(window), SchemeBox("", window),
            KeysBox(window.menus.menus, window)]  # fmt: skip


def controls(top):
    """Every widget that takes the focus, but for the parts that Qt itself puts into its own widgets."""
    for widget in top.findChildren(QWidget):
        is_part = widget.objectName().startswith(("qt_", "ScrollLeft", "ScrollRight"))
        takes = widget.focusPolicy() != Qt.FocusPolicy.NoFocus
        area = widget.parent()
        is_part = is_part or (isinstance(area, QAbstractScrollArea) and area.viewport() is widget)
        if takes and not is_part and not isinstance(widget, QScrollBar | QMenu) and widget.isVisibleTo(top):
            yield widget


def test_every_control_has_a_name_for_screen_readers(window):
    nameless = []
    for top in boxes(window):
        for widget in controls(top):
            told = QAccessible.queryAccessibleInterface(widget)
            name = "" if told is None else told.text(QAccessible.Text.Name) or told.text(QAccessible.Text.Value)
            is_frame = isinstance(widget, QAbstractScrollArea) and widget.focusPolicy() == Qt.FocusPolicy.NoFocus
            if not name.strip() and not is_frame:
                nameless.append(f"{type(top).__name__}: {type(widget).__name__} {widget.objectName()}")
    assert nameless == []


def actions(window):
    options = {"comma": window.options.comma, "log": window.options.log}
    return {**window.menus.actions, **window.set_actions.actions, **options}


def test_every_action_has_a_key_and_no_key_has_two_actions(window):
    keyless = {name for name, action in actions(window).items() if not action.shortcuts()}
    assert keyless <= NO_KEY
    used = collections.Counter(
        key.toString() for action in window.findChildren(QAction) for key in action.shortcuts() if key.toString()
    )
    assert {key: count for key, count in used.items() if count > 1} == {}


def test_every_action_stands_in_a_menu_so_that_alt_reaches_it(window):
    in_menus = {action for menu in window.menuBar().findChildren(QMenu) for action in menu.actions()}
    in_menus |= {action for menu in window.menus.menus for action in menu.actions()}
    assert {name for name, action in actions(window).items() if action not in in_menus} == set()
    assert all("&" in menu.title() for menu in window.menus.menus)


def test_sheet_of_keys_names_every_action_with_its_key(window, qtbot):
    sheet = KeysBox(window.menus.menus, window)
    qtbot.addWidget(sheet)
    text = sheet.findChild(QAbstractScrollArea).toPlainText()
    native = QKeySequence.SequenceFormat.NativeText
    for name, action in actions(window).items():
        assert action.text().replace("&", "") in text, name
        assert all(key.toString(native) in text for key in action.shortcuts()), name


def test_tab_goes_through_every_part_of_the_window(window, qtbot):
    window.activateWindow()
    window.list.setFocus()
    seen = set()
    for _ in range(60):
        seen.add(QApplication.focusWidget())
        window.focusNextChild()
    for part in (window.list, window.page):
        assert part in seen or any(part.isAncestorOf(widget) for widget in seen if widget is not None)


def schemes():
    light, dark = QPalette(), QPalette()
    for role, one, other in (
        (QPalette.ColorRole.Base, "#ffffff", "#1d2023"), (QPalette.ColorRole.Text, "#101010", "#eceff3"),
        (QPalette.ColorRole.Window, "#efefef", "#2b2e33"), (QPalette.ColorRole.WindowText, "#101010", "#eceff3"),
    ):  # fmt: skip
        light.setColor(role, QColor(one))
        dark.setColor(role, QColor(other))
    return {"light": light, "dark": dark}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_text_has_contrast_in_both_schemes(qapp, scheme):
    """WCAG 2.2, 1.4.3: 4.5 to 1 for text on lists and fields, on the window, and on a tinted row or notice."""
    palette = schemes()[scheme]
    window = palette.color(QPalette.ColorRole.Window).name()
    grounds = [ground(palette).name(), window]
    texts = [ink(palette), quiet(palette), *(state_colour(state, palette) for state in State)]
    texts += [verdict_colour(style, palette) for style in (*STYLES.values(), CHECK_READING, CARRIED_ON)]
    for text in texts:
        for behind in grounds:
            assert contrast(text.name(), behind) >= 4.5, (text.name(), behind)
    notice = mix(ground(palette), verdict_colour(CHECK_READING, palette), 0.18)
    assert contrast(ink(palette).name(), notice.name()) >= 4.5


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_signs_that_are_no_text_have_contrast(qapp, scheme):
    """WCAG 2.2, 1.4.11: 3 to 1 for the shapes of verdicts on the list's ground and on the window's."""
    palette = schemes()[scheme]
    for style in (*STYLES.values(), CHECK_READING, CARRIED_ON):
        for role in (QPalette.ColorRole.Base, QPalette.ColorRole.Window):
            assert contrast(verdict_colour(style, palette).name(), palette.color(role).name()) >= 3


def test_targets_are_at_least_24_pixels(window):
    """WCAG 2.2, 2.5.8."""
    for top in boxes(window):
        for button in top.findChildren(QAbstractButton):
            if button.isVisibleTo(top) and not button.objectName().startswith("qt_"):
                least = button.sizeHint().expandedTo(button.minimumSize())
                assert min(least.width(), least.height()) >= LEAST_TARGET, (type(top).__name__, button.text())


def test_who_decides_is_readable_at_200_percent(window, qtbot, qapp, tmp_path):
    before = qapp.font()
    large = qapp.font()
    large.setPointSizeF(before.pointSizeF() * 2)
    qapp.setFont(large)
    try:
        window.resize(1280, 800)
        window.set_actions._show_kept("Set: a name that is long enough to need all the room there is", tmp_path)
        qtbot.wait(50)
        decides = next(label for label in window.statusBar().findChildren(QLabel) if "decides" in label.text())
        assert decides.width() >= decides.fontMetrics().horizontalAdvance(decides.text())
        assert isinstance(window.set_actions._kept, ElidedLabel)
    finally:
        qapp.setFont(before)


@pytest.mark.parametrize("language", ["en", "de"])
def test_card_is_wrapped_and_scrolls_only_up_and_down_at_200_percent(qtbot, qapp, language):
    """WCAG 2.2, 1.4.4 and 1.4.10: larger text takes no scrolling to the side, and nothing is cut off."""
    before, translators = qapp.font(), set(qapp.findChildren(QTranslator))
    large = qapp.font()
    large.setPointSizeF(before.pointSizeF() * 2)
    qapp.setFont(large)
    install(qapp, language)
    try:
        window = Window(Desk())
        qtbot.addWidget(window)
        window.resize(1280, 800)
        window.show()
        window.desk.add_typed(["2(k+1)", "=2k+1", "=k"])
        window.desk.take_scheme_text("M1 =2k+2")
        qtbot.waitUntil(lambda: not window.desk.busy, timeout=60_000)
        window.go_to_slip()
        window.verdicts.set_student(True)
        window.card.declare(False)
        qtbot.wait(80)
        card, area = window.card, window.findChild(CardArea)
        assert card.width() <= area.viewport().width()
        for part in (*card.findChildren(QAbstractButton), *card.findChildren(QLabel)):
            if part.isVisibleTo(card):
                place = part.mapTo(card, part.rect().topRight())
                assert place.x() < card.width(), part.text()
                if isinstance(part, QAbstractButton):
                    assert part.width() >= part.sizeHint().width(), part.text()
        assert card.height() >= card.layout().totalHeightForWidth(card.width())
        window.close()
    finally:
        qapp.setFont(before)
        for translator in set(qapp.findChildren(QTranslator)) - translators:
            qapp.removeTranslator(translator)
            translator.deleteLater()
