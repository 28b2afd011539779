"""Schemes and workings of our own, marked by hand by the rules of published marking guides.

AQA: GCSE Mathematics 8300/2H mark scheme, glossary. Edexcel: AS/A level pure mathematics, general notes. IB:
Mathematics markschemes, instructions to examiners. HKEA: Additional Mathematics 1996 Paper 2, instructions to markers.
MARS: key to markscheme codes. OCR: instructions in a second-hand copy. All were read in public copies; only the rules
are used. "teacher" is a mark on which the rules leave the marker a choice. Common practice, no source, where none is
named.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import pytest

from checker.marking.result import NOTE, Marks
from checker.marking.suggestion import suggested_marks
from checker.report import Working
from checker.working import judge

ASK = "teacher"


@dataclass(frozen=True)
class Case:
    rule: str
    scheme: str
    lines: str  # parted by " / "
    marks: list[object]
    total: int
    task: str | None = "solve"
    more: dict[str, Any] = field(default_factory=dict)


BY_FACTORS = "M1 x^2-2x-8=0\ndM1 (x-4)(x+2)=0\nA1 x=4 or x=-2"
LINEAR = "M1 2x=10\nA1 x=5"
TO_2DP = "M1 x^2=7\nA1 awrt x=2.65 or x=-2.65"
SPECIAL = f"{LINEAR}\nSC B1 x=8 for adding 3"
ALONE = f"{LINEAR}\nN2 x=5"
BRACKETS = "M1 6x+8-3x+3\nA1 6x+8-3x+3\nA1ft final 3x+11"
FRACTIONS = "M1 \\frac{3(x+1)+2x}{x(x+1)}\nA1 \\frac{5x+3}{x(x+1)}"
FACTORS = "M1 3(4x^2-9)\nA1 final factorised 3(2x+3)(2x-3)"
SURDS = "M1 5\\sqrt2+2\\sqrt2\nA1 7\\sqrt2"
LOGS = "M1 x\\ln2=\\ln5\nA1 awrt x=2.32"
FORMULA = "M1 x=\\frac{-6\\pm\\sqrt{36-8}}{2}\nA1 x=-3\\pm\\sqrt7"
SQUARE = "M1 (x+3)^2-9+2\nA1 exact (x+3)^2-7"
PARTS = "M1 3x+6\nM1 -2x+8\nA1 final x+14"
PAIR = "M1 5x=15\nA1 x=3\nA1 y=2"
PRODUCT = "M1 x^2+3x+2x+6\nA1 final x^2+5x+6"

CASES = [
    # M, A, dM
    Case("all earned", BY_FACTORS, r"x^2=2x+8 / x^2-2x-8=0 / (x-4)(x+2)=0 / x=4 \text{ or } x=-2", [True] * 3, 3),
    Case("dM needs its M (AQA M dep; MARS)", BY_FACTORS, r"x^2=2x+8 / x(x-2)=8 / x=8 \text{ or } x-2=8",
         [False, False, False], 0),
    # x^2 - 2x - 9: one number wrong; 1 + 9 = 10 under the root by the formula, so that no factors are shown.
    Case("a slip in a number keeps the M (HKEA 2)", BY_FACTORS, r"x^2=2x+8 / x^2-2x-9=0 / x=1\pm\sqrt{10}",
         [True, False, False], 1),
    Case("M dep in other print", "M1 2x+2=12\nM1dep 2x=10\nA1 x=5", "2(x+1)=12 / 2x+2=12 / 2x=10 / x=5", [True] * 3, 3),
    Case("no method, no marks", "M1 2x+2=12\nM1dep 2x=10\nA1 x=5", "2(x+1)=12 / x=7", [False] * 3, 0),
    Case("M0 A1 is not possible (IB 2; Edexcel 2)", "M1 2x=10; working needed\nA1 x=5", "2x+3=13 / x=5",
         [False, False], 0),
    Case("A that depends on nothing", "M1 2x=10; working needed\nA1 x=5; needs nothing", "2x+3=13 / x=5",
         [False, True], 1),
    Case("the method may be implied (AQA)", "M1 2x=10; implied\nA1 x=5", "2x+3=13 / x=5", [True, True], 2),
    # ft, cao, cso
    # -3 times -1 is +3, not -3; 8 - 3 = 5 follows.
    Case("ft after a sign slip (AQA ft; IB 5)", BRACKETS, "2(3x+4)-3(x-1) / =6x+8-3x-3 / =3x+5",
         [True, False, True], 2, "expand"),
    Case("no ft for a second slip (IB 5)", BRACKETS, "2(3x+4)-3(x-1) / =6x+8-3x-3 / =3x+6",
         [True, False, False], 1, "expand"),
    Case("all right", BRACKETS, "2(3x+4)-3(x-1) / =6x+8-3x+3 / =3x+11", [True] * 3, 3, "expand"),
    Case("cao is not followed through (Edexcel 3)", "M1 2x=10\nA1 x=5 cao", "2x+3=13 / 2x=11 / x=5.5",
         [True, False], 1),
    Case("cso wants a solution without errors (Edexcel 3)", "M1 2x=10\nA1 x=5 cso", "2x+3=13 / 2x=16 / 2x=10 / x=5",
         [True, False], 1),
    Case("a right answer from wrong working earns nothing (IB 2; OCR)", LINEAR, "2x+3=13 / 2x=16 / x=5",
         [ASK, False], 0),
    Case("ft stops at a value that cannot be (IB 5)", "M1 2w=10\nA1ft w=5", "2w+3=13 / 2w=-10 / w=-5",
         [True, False], 1, more={"givens": ["w>0"]}),
    # awrt, oe, isw, exact
    Case("answers which round to (Edexcel 3)", TO_2DP, r"2x^2=14 / x^2=7 / x=\pm2.6458", [True, True], 2),
    Case("too few figures do not round to it", TO_2DP, r"2x^2=14 / x^2=7 / x=\pm2.6", [True, False], 1),
    Case("an exact value for a decimal is the marker's choice", TO_2DP, r"2x^2=14 / x^2=7 / x=\pm\sqrt7",
         [True, ASK], 1),
    Case("both values are wanted", TO_2DP, "2x^2=14 / x^2=7 / x=2.65", [True, False], 1),
    # ln 5 / ln 2 = 2.3219...
    Case("awrt of a logarithm", LOGS, r"2^x=5 / x\ln2=\ln5 / x=2.3219", [True, True], 2),
    Case("wrong in the last figure", LOGS, r"2^x=5 / x\ln2=\ln5 / x=2.33", [True, False], 1),
    Case("oe (AQA): other steps will do when listed", "M1 4x+2=10 or 2x+1=5\nA1 x=2", "2(2x+1)=10 / 2x+1=5 / x=2",
         [True, True], 2),
    Case("isw (IB 2; Edexcel 6)", PRODUCT, "(x+2)(x+3) / =x^2+3x+2x+6 / =x^2+5x+6 / =x(x+11)", [True, True], 2,
         "expand"),
    Case("the form asked is exact", SQUARE, "x^2+6x+2 / =(x+3)^2-9+2 / =(x+3)^2-7", [True, True], 2, None),
    Case("the form asked is not reached", SQUARE, "x^2+6x+2 / =(x+3)^2-9+2", [True, False], 1, None),
    # some terms of a line
    Case("each bracket has its mark", PARTS, "3(x+2)-2(x-4) / =3x+6-2x+8 / =x+14", [True] * 3, 3, "expand"),
    Case("a slip in the second bracket", PARTS, "3(x+2)-2(x-4) / =3x+6-2x-8 / =x-2", [True, ASK, False], 1, "expand"),
    Case("neither bracket is seen", PARTS, "3(x+2)-2(x-4) / =x+2", [False, False, False], 0, "expand"),
    # SC, N
    Case("SC in place of nothing (AQA SC)", SPECIAL, "2x+3=13 / x=8", [False, False, True], 1),
    Case("SC beside an open M is the marker's", SPECIAL, "2x+3=13 / 2x=16 / x=8", [ASK, False, ASK], 0),
    Case("no SC where the scheme gives as much", SPECIAL, "2x+3=13 / 2x=10 / x=5", [True, True, False], 2),
    Case("N marks without working (IB 3)", ALONE, "2x+3=13 / x=5", [False, False, True], 2),
    Case("no N marks where working is shown (IB 3)", ALONE, "2x+3=13 / 2x=10 / x=5", [True, True, False], 2),
    Case("no N marks for a wrong answer", ALONE, "2x+3=13 / x=6", [False, False, False], 0),
    # B, worth, words
    Case("B is independent (AQA; MARS)", "B1 x^7", r"x^3\times x^4 / =x^7", [True], 1, "simplify"),
    Case("powers multiplied", "B1 x^7", r"x^3\times x^4 / =x^{12}", [False], 0, "simplify"),
    Case("marks are not subdivided (Edexcel 2; HKEA 3)", "A2 x=2 or x=3", "x^2-5x+6=0 / x=2", [False], 0),
    Case("words are the marker's", 'B1 "a labelled sketch"\nB1 x=5', "2x=10 / x=5", [ASK, True], 1),
    # other topics
    Case("inequality", "M1 3x>12\nA1 x>4", "3x-2>10 / 3x>12 / x>4", [True, True], 2),
    Case("an equation is no answer to an inequality", "M1 3x>12\nA1 x>4", "3x-2>10 / 3x>12 / x=4", [True, False], 1),
    # adding: 5x = 15; 9 + 2y = 13
    Case("elimination", PAIR, r"3x+2y=13 \quad (1) / 2x-2y=2 \quad (2) / 5x=15 / x=3 / y=2", [True] * 3, 3),
    # 13 + 2 is not 20; with x = 4 the second gives 2y = 6.
    Case("ft with a value of one's own put in (AQA ft)", "M1 5x=15\nA1 x=3\nA1ft y=2",
         r"3x+2y=13 \quad (1) / 2x-2y=2 \quad (2) / 5x=20 / x=4 / y=3", [True, False, True], 2),
    Case("surds", SURDS, r"\sqrt{50}+\sqrt8 / =5\sqrt2+2\sqrt2 / =7\sqrt2", [True, True], 2, "simplify"),
    Case("roots added under one root", SURDS, r"\sqrt{50}+\sqrt8 / =\sqrt{58}", [False, False], 0, "simplify"),
    Case("algebraic fractions", FRACTIONS, r"\frac3x+\frac2{x+1} / =\frac{3(x+1)+2x}{x(x+1)} / =\frac{5x+3}{x(x+1)}",
         [True, True], 2, "simplify"),
    Case("tops and bottoms added", FRACTIONS, r"\frac3x+\frac2{x+1} / =\frac{5}{2x+1}", [False, False], 0, "simplify"),
    Case("factorised in part", FACTORS, "12x^2-27 / =3(4x^2-9)", [True, False], 1, "factorise"),
    Case("factorised fully", FACTORS, "12x^2-27 / =3(4x^2-9) / =3(2x-3)(2x+3)", [True, True], 2, "factorise"),
    Case("change of subject", "M1 y-3=2x\nA1 x=\\frac{y-3}{2}", r"y=2x+3 / y-3=2x / x=\frac{y-3}{2}", [True, True], 2),
    Case("the formula", FORMULA, r"x^2+6x+2=0 / x=\frac{-6\pm\sqrt{36-8}}{2} / x=-3\pm\sqrt7", [True, True], 2),
    # MR, attempts
    Case("a misread loses the A, not the M (Edexcel 4; IB 6)", PRODUCT, "(x+2)(x-3) / =x^2-3x+2x-6 / =x^2-x-6",
         [True, False], 1, "expand", {"question": "(x+2)(x+3)"}),
    Case("the last attempt counts (Edexcel 5)", LINEAR, "2x+3=13 / 2x=16 / 2x=10 / x=5", [True, True], 2),
    Case("another question altogether", LINEAR, "y^2=4 / y=2", [False, False], 0, None),
]


def marked(case: Case) -> Marks:
    asked = Working.from_json({"lines": case.lines.split(" / "), "scheme": case.scheme, "task": case.task, **case.more})
    return suggested_marks(asked, judge(asked))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_marks_are_those_that_a_marker_gives(case: Case) -> None:
    told = marked(case)
    assert [award.awarded for award in told.each] == case.marks, [award.reason for award in told.each]
    assert told.total == case.total
    assert all(award.reason for award in told.each)


def test_there_are_schemes_of_every_kind() -> None:
    assert len({case.scheme for case in CASES}) >= 25
    codes = {award.code for case in CASES for award in marked(case).each}
    assert codes >= {"M1", "A1", "B1", "dM1", "M1dep", "A1ft", "A2", "N2", "SC B1"}


def test_sum_of_a_scheme_with_alternatives_counts_one_of_them() -> None:
    # Two marks by the scheme, or two N marks, or one by the special case: never together.
    told = marked(Case("", f"{ALONE}\nSC B1 x=8", "2x+3=13 / x=5", [], 0)).to_json()
    assert (told["sum"], told["out_of"]) == (2, 2)
    assert told["note"] == NOTE
