"""What the checker says of workings of every class, and of marks and claims, is German at a German desk.

The workings are our own; published and pupils' ones come from the shared folder (its SOURCES.md names them).
"""

import random
import re
from pathlib import Path

import pytest
from PySide6.QtCore import QTranslator

import checker.marking
from checker.marking.scheme import read_scheme
from checker.marking.suggestion import suggested_marks
from checker.report import Working
from checker.working import judge
from desktop.card import card_of
from desktop.claims import claim_of
from desktop.line_editor import parse_problem
from desktop.measure_sentences import changed, main, planted, sentences_of, written
from desktop.pipeline import judge_lines
from desktop.reason_strip import strip_items
from desktop.reveal import EVERYTHING, Reveal
from desktop.sentences import in_language
from desktop.typed_page import typed_document
from desktop.wording import line_reason

DATA = Path(__file__).parents[3] / "shared" / "data" / "checker"

WORKINGS = {
    "signs": ("(5-2t)(t+4)", "=5t+20-2t^2+8t", "=-2t^2+13t+20"),
    "three factors": ("-2x(x-3)(x+1)", "=-2x^3+4x^2-6x"),
    "bracket": ("7-(2x-3)", "=7-2x-3", "=4-2x"),
    "bar": (r"\frac{x+4}{2}-\frac{x-2}{2}", r"=\frac{x+4-x-2}{2}", "=1"),
    "like terms": ("3x^2+2x+5x^2-7x", "=8x^4-5x", "=3x"),
    "square": ("(a+3)^2", "=a^2+9"),
    "cube": ("(y-4)^3", "=y^3-64"),
    "factorising": ("x^2-x-12", "=(x-3)(x+4)"),
    "two squares": ("9m^2-16", "=(9m-16)(9m+16)"),
    "completing the square": ("x^2+6x+2=0", "(x+3)^2+2=0", "(x+3)^2=-2"),
    "fractions": (r"\frac{1}{3}+\frac{1}{4}", r"=\frac{2}{7}"),
    "cancelling": (r"\frac{x+6}{6}", "=x"),
    "powers": ("x^3x^4", "=x^{12}"),
    "negative power": ("4x^{-2}", r"=\frac{1}{4x^2}"),
    "roots": (r"\sqrt{50}+\sqrt{8}", r"=\sqrt{58}"),
    "surds": (r"(2+\sqrt{3})^2", "=4+3", "=7"),
    "root of a square": (r"\sqrt{x^2}", "=x"),
    "logarithms": (r"\ln(x+4)", r"=\ln x+\ln 4"),
    "exponential equation": ("3^x=20", "x=20-3"),
    "linear equation": ("5x-3=2x+9", "7x=12", r"x=\frac{12}{7}"),
    "one side only": ("2x+6=14", "2x=14", "x=7"),
    "fraction equation": (r"\frac{x}{4}+3=5", "x+3=20", "x=17"),
    "quadratic": ("x^2-5x+6=0", "(x-2)(x-3)=0", "x=-2", "x=-3"),
    "root lost": ("x^2=49", "x=7"),
    "divided by the letter": ("x^2=4x", "x=4"),
    "formula": ("2x^2-8x+3=0", r"x=\frac{-8\pm\sqrt{64-24}}{4}"),
    "false solution": (r"\sqrt{x+6}=x", "x+6=x^2", r"x=3\text{ or }x=-2"),
    "no solution": ("x^2=-16", "x=-4"),
    "inequality": ("-3x<12", "x<-4"),
    "quadratic inequality": ("x^2<9", "x<3"),
    "boundary": (r"2x\ge 8", "x>4"),
    "modulus": ("|x-2|=5", "x-2=5", "x=7"),
    "system": ("x+2y=8", "3x-2y=0", "4x=6", r"x=\frac{3}{2}"),
    "put in": ("y=2x-1", "3x+y=9", "3x+2x+1=9", "x=1.6"),
    "trigonometry": (r"\sin x=\frac{1}{2}, 0^\circ\le x\le 360^\circ", r"x=30^\circ"),
    "trigonometric product": (r"\sin 2x", r"=2\sin x"),
    "degrees without interval": (r"\cos\theta=0.4", r"\theta=66.4^\circ"),
    "derivative": ("y=3x^4-5x+2", r"\frac{dy}{dx}=12x^3-5x"),
    "integral": (r"\int (6x^2-4)\,dx", "=3x^3-4x+c"),
    "definite integral": (r"\int_0^2 3x^2\,dx", "=[x^3]_0^2", "=6"),
    "limit": (r"\lim_{x\to 2}\frac{x^2-4}{x-2}", "=2"),
    "sum": (r"\sum_{k=1}^{4} k^2", "=1+4+9+15", "=29"),
    "function": ("f(x)=x^2+1", "f(3)=9"),
    "inverse": ("f(x)=2x+3", r"f^{-1}(x)=\frac{x+3}{2}"),
    "sequence": ("a_n=3n-1", "a_5=15"),
    "value put in": ("A=x(x+5)", "x=4", "A=30"),
    "rounding": (r"x=\sqrt{7}", "x=2.64"),
    "running equals": ("3+4=7-2=5"),
    "new letter": ("3x+2=8", "k=4"),
    "division by zero": (r"\frac{4}{0}", "=4"),
    "vectors": (r"\vec{a}+\vec{b}=\vec{c}", r"\vec{a}=\vec{c}+\vec{b}"),
    "complex": ("z^2+4=0", "z=2"),
    "unreadable": ("2x+(3=5", "x=1"),
    "identity of coefficients": (r"A(x-1)+B(x+2)\equiv 5x+1", "A+B=5", "-A+2B=1", "B=2", "A=3"),
    "large": ("9^{9^{9}}", "=1"),
    "notes": (r"\text{let } x \text{ be the width}", "x(x+5)=84", "x^2+5x-84=0", "(x+12)(x-7)=0", "x=7"),
    "alternatives": ("(2x-1)(x+4)=0", r"2x-1=0\text{ or }x+4=0", r"x=2\text{ or }x=-4"),
    "parameter": ("ax+b=c", "ax=c+b", r"x=\frac{c+b}{a}"),
    "plus minus": ("(x-1)^2=9", r"x-1=\pm 3", r"x=\pm 4"),
}  # fmt: skip
ASKED = (
    {"task": "expand", "lines": ["2(x+3)^2", "=2(x^2+6x+9)"]},
    {"task": "factorise", "lines": ["6x^2+9x", "=3(2x^2+3x)"]},
    {"task": "simplify", "lines": [r"\frac{6}{\sqrt{3}}", r"=\frac{6\sqrt{3}}{3}"]},
    {"task": "simplify", "lines": [r"\sqrt{12}+\sqrt{27}", r"=2\sqrt{3}+3\sqrt{3}"]},
    {"task": "solve", "lines": ["3x-4=11", "3x=15"]},
    {"task": "solve", "question": "3x-4=11", "lines": ["3x+4=11", r"x=\frac{7}{3}"]},
    {"question": r"\text{Solve to 2 decimal places } x^2=7", "lines": ["x^2=7", "x=2.65"]},
    {"task": "identity", "lines": ["(x+2)^2=x^2+4"]},
    {"task": "identity", "lines": [r"\frac{x^2-1}{x-1}=x+1"]},
    {"task": "identity", "lines": [r"\sin^2 x+\cos^2 x=1"]},
    {"lines": [r"\sqrt{a^2}", "=a"], "givens": ["a>0"]},
    {"lines": ["x^2=9", "x=3"], "givens": ["x>0", "x=="]},
)
CLAIMS = (
    "(x+1)^2=x^2+2x+1", "(x+1)^2=x^2+1", r"\sqrt{x^2}=x", r"\frac{1}{x}+\frac{1}{y}=\frac{2}{x+y}", "3=4", "2+2=4",
    r"\sin 2x=2\sin x", r"\ln(ab)=\ln a+\ln b", r"|x|=x", r"\frac{x}{x}=1", "x=(", r"\cos(a+b)=\cos a+\cos b",
)  # fmt: skip
BROKEN = (
    "2x+(3", "2x+", r"\frac{1}", r"\frac{}{2}", r"\sqrt{", "x^", "3)", "|x", "[2,", r"\foo{2}", "x=", "=", "2..5", "a_",
    r"\int_0", r"\int x^2", r"\sum_{k}", r"\lim_{x}", r"\log_", r"\sin", r"\left(2", "x^{2", "5!!^", "1" * 900, "{2,3",
    r"x\in", r"\binom{3}", "(" * 80 + "1", r"\frac{d}{dx}", "2^3^4", "#", "x & y", r"0.\dot{", r"\mathrm{", "\\",
)  # fmt: skip
ENGLISH = re.compile(
    r"(?<![\\\w])(?:the|this|that|which|is|line|lines|times|and|or|with|before|bracket|term|side|value)(?!\w)"
)
ROW = re.compile(r"\| `(?P<scheme>.+?)` \| [^|]+ \| `(?P<working>.+?)` \| [^|]+ \|$")


def english(sentences):
    """Those that stay in English, or of which a word does."""
    told = {sentence: in_language(sentence) for sentence in sentences if sentence}
    return [sentence for sentence, german in told.items() if german == sentence or ENGLISH.search(german)]


@pytest.mark.parametrize("lines", WORKINGS.values(), ids=WORKINGS.keys())
def test_working_of_every_class(german, lines):
    lines = (lines,) if isinstance(lines, str) else lines
    assert english(sentences_of(Working(lines=lines))) == []


@pytest.mark.parametrize("asked", ASKED)
def test_working_with_a_question(german, asked):
    assert english(sentences_of(Working.from_json(asked))) == []


def test_workings_of_every_class_with_one_sign_changed(german):
    draws = random.Random(5)
    for lines in WORKINGS.values():
        lines = (lines,) if isinstance(lines, str) else lines
        at = draws.randrange(len(lines))
        assert english(sentences_of(Working(lines=(*lines[:at], changed(lines[at], draws), *lines[at + 1 :])))) == []


def test_planted_slips_and_practice_workings(german):
    said = [sentence for lines in planted(240, seed=11) for sentence in sentences_of(Working(lines=lines))]
    assert len(set(said)) > 400
    assert english(said) == []


@pytest.mark.skipif(not DATA.is_dir(), reason="published workings are not on this machine")
def test_published_and_pupils_workings(german):
    said = [sentence for lines in written(DATA, 60, seed=13) for sentence in sentences_of(Working(lines=lines))]
    assert english(said) == []


@pytest.mark.parametrize("latex", CLAIMS)
def test_claim_for_all_values(german, latex):
    assert english([claim_of(latex).reason]) == []


@pytest.mark.parametrize("latex", BROKEN)
def test_line_that_cannot_be_read(german, latex):
    problem = parse_problem(latex)
    assert problem is None or problem[0].startswith("Bei Zeichen ")


def test_most_broken_lines_are_refused():
    assert sum(parse_problem(latex) is not None for latex in BROKEN) > 25


def test_reasons_of_marks(german):
    text = Path(checker.marking.__file__).with_name("SCHEMES.md").read_text(encoding="utf-8")
    rows = [found for line in text.splitlines() if (found := ROW.match(line))]
    assert len(rows) > 25
    said = []
    for row in rows:
        asked = Working(tuple(row["working"].split(" / ")), scheme=read_scheme(row["scheme"].replace(" // ", "\n")))
        said += [award.reason for award in suggested_marks(asked, judge(asked)).each]
    assert len(set(said)) > 15
    assert english(said) == []


def test_measure_says_how_many_stay_english(qapp, capsys):
    before = set(qapp.findChildren(QTranslator))
    assert main(["--count", "6", "--seed", "3"]) == 0
    for translator in set(qapp.findChildren(QTranslator)) - before:
        qapp.removeTranslator(translator)
    assert '"english": 0,' in capsys.readouterr().out


def shown_texts(lines):
    """What card, hints, strip and list say of a working, its formulas left aside."""
    document = typed_document(list(lines))
    document.show(judge_lines(document.lines), revision=document.revision)
    slips = {row.slip: 3 for verdict in document.verdicts for row in verdict.report.lines if row.slip is not None}
    for reveal in (EVERYTHING, Reveal(is_student=True, grades=slips)):
        for index in range(len(document.lines)):
            yield line_reason(document, index)
            card = card_of(document, index, reveal)
            if card is not None:
                yield from (card.title, card.counterexample, card.answer)
                yield from (text for row in card.rows for text in (row.label, row.text))
        yield from (text for item in strip_items(document, reveal) for text in (item.label, item.text))


@pytest.mark.parametrize("lines", WORKINGS.values(), ids=WORKINGS.keys())
def test_no_english_word_stands_in_card_hints_and_strip(german, lines):
    texts = list(shown_texts((lines,) if isinstance(lines, str) else lines))
    assert any(texts)
    assert [text for text in texts if ENGLISH.search(text)] == []
