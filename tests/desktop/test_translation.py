"""The German translation: complete, with the same names and keys, and shown everywhere."""

import re
import xml.etree.ElementTree as ET

import pytest
from PySide6.QtCore import QCoreApplication, QSettings, QTranslator
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QAbstractButton, QLabel, QLineEdit, QMenu, QPlainTextEdit, QTabWidget

from desktop.class_view import ClassView
from desktop.desk import Desk
from desktop.dialogs import AboutBox, TypedWorkingBox
from desktop.document import Document
from desktop.language import CONTEXT, has_decimal_comma, tr, with_comma, with_points
from desktop.maths import plain, typeset
from desktop.options_menu import OptionsMenu
from desktop.scheme_box import SchemeBox
from desktop.sentences import in_language
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings
from desktop.translation import FOLDER, choose_locale, install
from desktop.translations.catalogue import texts_of, texts_of_desktop
from desktop.window import Window

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support propagateSizeHints", extend=True)
NAMES = {"English", "Deutsch"}
SAME = {"InkML", "PNG", "PDF", "CSV", "LaTeX", "Firstslip", "Index", "Pi", "Theta", "Alpha", "Beta", "Lambda"}


def messages():
    for message in ET.parse(FOLDER / "firstslip_de.ts").iter("message"):
        translation = message.find("translation")
        yield message.findtext("source"), translation.text, translation.get("type")


def test_every_text_of_the_code_is_translated_and_no_other():
    known = {source for source, _, _ in messages()}
    assert known == set(texts_of_desktop()), "run: python -m desktop.translations"
    assert [source for source, text, kind in messages() if not text or kind == "unfinished"] == []


def test_names_in_braces_and_keys_of_menus_are_kept():
    for source, text, _ in messages():
        names = re.findall(r"\{\w*\}", source)
        assert sorted(names) == sorted(re.findall(r"\{\w*\}", text)), source
        assert len(re.findall(r"&(?!&)", source)) >= len(re.findall(r"&(?!&)", text)) or "&" not in source, source
        assert source.startswith(" ") == text.startswith(" ") and source.endswith(" ") == text.endswith(" ")


def test_qm_file_holds_what_the_ts_file_says(german):
    for source, text, _ in messages():
        assert QCoreApplication.translate(CONTEXT, source) == text, "run: python -m desktop.translations"


def test_text_is_gathered_from_every_kind_of_call():
    code = 'tr("a"); tr_later("b"); Entry("c", [], f, "d"); VerdictStyle("e", "f", 1); tr("g" if x else "h"); tr(i)'
    assert sorted(texts_of(code)) == list("abcdefgh")


def build(qtbot, tmp_path):
    desk = Desk()
    window = Window(desk)
    qtbot.addWidget(window)
    settings = Settings(QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat))
    sets = Sets(desk, tmp_path / "sets")
    SetActions(window, sets, settings)
    OptionsMenu(window, settings, tmp_path / "log")
    boxes = [ClassView(desk, window), AboutBox(window), TypedWorkingBox(window), SchemeBox("", window)]
    words = []
    for top in (window, *boxes):
        words.append(top.windowTitle())
        for kind in (QLabel, QAbstractButton):
            words += [widget.text() for widget in top.findChildren(kind)]
        for field in (QLineEdit, QPlainTextEdit):
            words += [widget.placeholderText() for widget in top.findChildren(field)]
        words += [tabs.tabText(at) for tabs in top.findChildren(QTabWidget) for at in range(tabs.count())]
        words += [widget.accessibleName() for widget in top.findChildren(QAbstractButton)]
    words += [menu.title() for menu in window.findChildren(QMenu)]
    words += [part for action in window.findChildren(QAction) for part in (action.text(), action.iconText())]
    desk.close()
    return words


def test_no_word_of_the_window_and_its_boxes_stays_english(qtbot, tmp_path, qapp):
    english = build(qtbot, tmp_path)
    translator_before = set(qapp.findChildren(QTranslator))
    assert install(qapp, "de")
    try:
        german = build(qtbot, tmp_path)
    finally:
        for translator in set(qapp.findChildren(QTranslator)) - translator_before:
            qapp.removeTranslator(translator)
    assert len(english) == len(german) > 150
    stayed = {
        one for one, other in zip(english, german, strict=True)
        if one == other and re.search(r"[A-Za-z]{3}", one) and one.strip("&… .") not in SAME
    }  # fmt: skip
    assert {word for word in stayed if not word.startswith(("M1", "(3k")) and word.strip("&") not in NAMES} == set()


@pytest.mark.parametrize(("english", "expected"), [
    ("-3 times -4 is 12: both factors are negative, so the product is positive",
     "-3 mal -4 ist 12: beide Faktoren sind negativ, also ist das Produkt positiv"),
    ("At x = 1 the line before is 7 and this line is -17.", "Für x = 1 ergibt die Zeile davor 7 und diese Zeile -17."),
    ("The square of a sum has a middle term, twice the product.",
     "Das Quadrat einer Summe hat ein Mittelglied, das doppelte Produkt."),
    ("x = -2 satisfies this line but not the line before. Not all solutions are given.",
     "x = -2 erfüllt diese Zeile, aber nicht die Zeile davor. Es sind nicht alle Lösungen angegeben."),
    ("A sentence of no known form.", "A sentence of no known form."),
    ("", ""),
])  # fmt: skip
def test_sentence_of_the_checker_is_known_by_its_form(german, english, expected):
    assert in_language(english) == expected


def test_sentences_stay_without_a_translation(qapp):
    assert in_language("-3 times -4 is 12") == "-3 times -4 is 12"


def test_unknown_language_leaves_english(qapp):
    assert not install(qapp, "en")
    assert tr("Close") == "Close"


def test_decimal_comma_is_shown_and_taken(comma):
    assert has_decimal_comma()
    assert plain("At x = 0.5 this line is 2.25.") == "At x = 0,5 this line is 2,25."
    assert typeset("x=2.5").svg == typeset("x=2{,}5").svg
    assert with_points("x=2,5") == "x=2.5" and with_points("x=2{,}5, y=1") == "x=2.5, y=1"


def test_decimal_point_stays_where_it_is_the_users(qapp):
    assert with_comma("2.5") == "2.5" and with_points("(2,5)") == "(2,5)"


@pytest.mark.parametrize(("language", "decimal_comma", "point"), [
    ("de", True, ","), ("de", False, "."), ("en", True, ","), ("en", False, "."),
])  # fmt: skip
def test_locale_has_the_chosen_decimal_sign(language, decimal_comma, point):
    assert choose_locale(language, decimal_comma=decimal_comma).decimalPoint() == point


def test_page_of_a_set_is_named_in_german(german):
    from desktop.page_list import page_name

    assert page_name(Document("/x/candidate-4107.jpg", 1)) == "candidate-4107, Seite 2"
    assert page_name(Document("Typed working 2")) == "Getippte Rechnung 2"
    assert page_name(Document("Pen page")) == "Stiftseite"


def test_decimal_comma_typed_into_a_working_is_a_decimal(qtbot, comma):
    box = TypedWorkingBox()
    qtbot.addWidget(box)
    box.set_text("2x=5\nx=2,5")
    assert box.lines == ["2x=5", "x=2.5"]
