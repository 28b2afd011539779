"""The diagnosis: which term, which kind, what it should be, and why; each case worked by hand."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.practice import exercises
from checker.report import Slip, Working
from checker.slips import diagnose, hint
from checker.slips.catalogue import EXPRESSION_SLIPS, RELATION_SLIPS
from checker.slips.catalogue.sources import SOURCES
from checker.slips.hints import KINDS
from checker.slips.measure import measure_planted
from checker.syntax import parse_line
from checker.working import judge
from tests.checker.planted import planted_step

CATALOGUE = Path(__file__).parents[3] / "shared" / "data" / "checker" / "slips.json"
PUPILS = CATALOGUE.with_name("pupil-slips.jsonl")


def found(before: str, written: str) -> Slip:
    slip = diagnose([parse_line(before)], parse_line(written))
    assert slip is not None
    return slip


def test_the_reason_names_the_two_factors() -> None:
    # (5-2t)(t+4) = 5t + 20 - 2t^2 - 8t: the last product has the wrong sign
    assert found("(5-2t)(t+4)", "=5t+20-2t^2+8t") == Slip(
        kind="sign-product", term="+8t", span=(11, 14), should_be="-8t",
        because="-2t times +4 is -8t: one factor is negative, so the product is negative",
        repaired="=5t+20-2t^2-8t",
    )


def test_two_negative_factors_are_said_to_be_both_negative() -> None:
    # -5 times -3 is +15
    because = "-5 times -3 is 15: both factors are negative, so the product is positive"
    assert found("-5(p-3)", "=-5p-15").because == because


def test_collected_terms_are_named() -> None:
    # 20t - 8t is 12t
    slip = found("=20t-8t+3", "=28t+3")
    assert (slip.kind, slip.term, slip.should_be) == ("like-terms", "28t", "12t")
    assert slip.because == "20t - 8t is 12t"


def test_product_and_collecting_in_one_step() -> None:
    # 5t - 8t is -3t; written 5t + 8t
    slip = found("(5-2t)(t+4)", "=20+13t-2t^2")
    assert (slip.kind, slip.term, slip.should_be) == ("sign-product", "+13t", "-3t")
    assert slip.because == "-2t times +4 is -8t, so 5t - 8t is -3t"


def test_missing_term_has_an_empty_span() -> None:
    # twice y times 6 is 12y
    slip = found("(y+6)^2", "=y^2+36")
    assert (slip.term, slip.span[0], slip.should_be) == ("(missing)", slip.span[1], "+12y")
    assert slip.repaired == "=y^2+36+12y"


def test_moved_term_is_followed_to_the_other_side() -> None:
    # 23 - 8 is 15
    slip = found("5x+8=23", "5x=31")
    assert (slip.kind, slip.term, slip.should_be) == ("sign-moved", "31", "15")
    assert slip.because == "8 on the left becomes -8 on the right, and 23 - 8 is 15"


def test_one_side_only() -> None:
    # 16 is added on both sides: 9 + 16 is 25
    slip = found("x^2+8x=9", "x^2+8x+16=9")
    assert (slip.kind, slip.term, slip.should_be) == ("one-side-only", "9", "25")
    assert slip.because == "16 was added on the left only; the right needs the same"


def test_direction_of_an_inequality() -> None:
    slip = found("-4x<20", "x<-5")
    assert (slip.kind, slip.term, slip.should_be, slip.span) == ("inequality-direction", "<", ">", (1, 2))


def test_slip_inside_the_top_of_a_fraction() -> None:
    # 3 times -1 is -3, over 6
    slip = found(r"\frac{2(x+4)+3(x-1)}{6}", r"=\frac{2x+8+3x-1}{6}")
    assert (slip.kind, slip.term, slip.should_be) == ("multiply-each-term", "-1", "-3")


def test_slip_inside_a_power() -> None:
    # 2x + 3x is 5x, the rest of the line stays
    slip = found("(2x+3x-1)^2+7", "=(6x-1)^2+7")
    assert (slip.kind, slip.term, slip.should_be, slip.repaired) == ("like-terms", "6x", "5x", "=(5x-1)^2+7")


def test_two_slips_in_one_step_are_both_told() -> None:
    # 2 times 3 is 6 and -4 times -1 is 4
    slip = found("2(x+3)-4(x-1)", "=2x+5-4x-4")
    assert slip.repaired == "=2x+6-4x+4"
    assert "also" in slip.because


def test_factors_with_both_signs_wrong() -> None:
    # -5 and 3 add to -2 and multiply to -15
    slip = found("x^2-2x-15", "=(x+5)(x-3)")
    assert (slip.kind, slip.repaired) == ("factor-pair", "=(x-5)(x+3)")


def test_wrong_root_is_told_by_its_factor() -> None:
    # m - 7 is 0 when m is 7
    slip = found("(m+4)(m-7)=0", r"m=-4 \text{ or } m=-7")
    assert (slip.kind, slip.term, slip.should_be) == ("sign-product", "-7", "7")
    assert slip.because == "m-7 is 0 when m is 7"


def test_slip_inside_a_chain_mends_what_is_carried_on() -> None:
    # -2t times +4 is -8t, and 5t - 8t is -3t in the link after it
    slip = found("(5-2t)(t+4)", "=5t+20-2t^2+8t=20+13t-2t^2")
    assert (slip.term, slip.should_be, slip.repaired) == ("+8t", "-8t", "=5t+20-2t^2-8t=-2t^2-3t+20")


def test_both_sides_are_multiplied_by_the_sum_below_the_bar() -> None:
    # 2 times (x+1) is 2x + 2
    slip = found(r"\frac{3}{x+1}=2", "3=2x+1")
    assert (slip.kind, slip.term, slip.should_be) == ("multiply-each-term", "+1", "+2")


def test_letters_keep_the_order_in_which_they_were_written() -> None:
    assert found("k(t+8)", "=-tk+8k").should_be == "tk"


def test_right_line_has_no_slip_to_explain() -> None:
    # every repair must differ from the written line
    slip = diagnose([parse_line("2(x+1)")], parse_line("=2x+2"), follows=lambda line: False)
    assert slip is None


def test_no_kind_blames_the_person() -> None:
    words = " ".join([*KINDS.values(), *(slip.because for slip in (*EXPRESSION_SLIPS, *RELATION_SLIPS))]).lower()
    assert not any(f" {word} " in f" {words} " for word in ("you", "your", "careless", "silly", "forgot", "mistake"))


def test_hints_come_in_three_grades() -> None:
    slip = found("(5-2t)(t+4)", "=5t+20-2t^2+8t")
    assert hint(slip, 1) == "Look at +8t."
    assert hint(slip, 2) == "Look at the signs of the two factors."
    assert hint(slip, 3) == f"+8t should be -8t: {slip.because}."
    with pytest.raises(ValueError, match="grade 1, 2 and 3, not 4"):
        hint(slip, 4)


def test_every_catalogue_slip_names_its_sources() -> None:
    entries = (*EXPRESSION_SLIPS, *RELATION_SLIPS)
    assert len({entry.id for entry in entries}) == len(entries) == 117
    assert all(entry.documented() and entry.kind in KINDS for entry in entries)
    assert all(source.cite and source.status for source in SOURCES.values())


@pytest.mark.skipif(not CATALOGUE.exists(), reason="the data folder with the documented slips is not here")
def test_catalogue_rules_bear_the_names_of_the_documented_slips() -> None:
    documented = {entry["id"] for entry in json.loads(CATALOGUE.read_text(encoding="utf-8"))}
    assert documented == {entry.id for entry in (*EXPRESSION_SLIPS, *RELATION_SLIPS)}


def documented_slips() -> list[dict[str, str]]:
    if not CATALOGUE.exists():
        return []
    entries: list[dict[str, str]] = json.loads(CATALOGUE.read_text(encoding="utf-8"))
    return entries


@pytest.mark.skipif(not CATALOGUE.exists(), reason="the data folder with the documented slips is not here")
@pytest.mark.parametrize("entry", documented_slips(), ids=lambda entry: str(entry["id"]))
def test_documented_slip_is_explained_and_its_repair_follows(entry: dict[str, str]) -> None:
    # source: the works named in each entry of slips.json
    is_value = entry["kind_of_line"] == "expression"
    wrong = "=" + entry["wrong"] if is_value else entry["wrong"]
    slip = found(entry["line"], wrong)
    assert slip.kind != "other"
    assert slip.repaired != wrong
    mended = judge(Working((entry["line"], slip.repaired)))
    assert mended.lines[1].verdict == "follows"


@pytest.mark.skipif(not CATALOGUE.exists(), reason="the data folder with the documented slips is not here")
def test_terms_of_the_documented_slips() -> None:
    """The term agrees with the catalogue, or is the whole term of which the catalogue names the number or power."""
    right = 0
    entries = documented_slips()
    for entry in entries:
        is_value = entry["kind_of_line"] == "expression"
        slip = found(entry["line"], "=" + entry["wrong"] if is_value else entry["wrong"])
        named = entry["wrong_term"].lstrip("+")
        right += named in slip.term and slip.term.count("=") <= named.count("=")
    assert right >= 0.92 * len(entries)


@pytest.mark.skipif(not PUPILS.exists(), reason="the data folder with the pupils' steps is not here")
def test_pupils_wrong_steps_are_explained() -> None:
    # source: the steps published with arXiv 2305.06163, CC BY 4.0
    steps = [json.loads(line)["lines"] for line in PUPILS.read_text(encoding="utf-8").splitlines()[::13]]
    slips = [judge(Working(tuple(lines))).lines[1].slip for lines in steps]
    explained = [slip for slip in slips if slip is not None and slip.kind != "other"]
    assert len(explained) >= 0.9 * len(steps)
    follows = [
        judge(Working((lines[0], slip.repaired))).first_slip is None
        for lines, slip in zip(steps, slips, strict=True) if slip is not None
    ]
    assert all(follows)


def test_planted_slips_are_found_with_kind_and_term() -> None:
    counts = measure_planted(exercises(72, seed=4))
    assert counts["line"] >= 71
    assert counts["term"] >= 0.97 * 72
    assert counts["kind"] >= 0.95 * 72
    assert counts["repair_follows"] == counts["line"]


@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.integers(0, 10**9))
def test_planted_change_of_one_coefficient_is_caught_with_its_term(seed: int) -> None:
    step = planted_step(seed)
    report = judge(Working((step.before, step.written)))
    assert report.first_slip == 1
    slip = report.lines[1].slip
    assert slip is not None
    # the same term written twice in a line cannot be told apart, so its sign in front may differ
    assert slip.term.lstrip("+") == step.term.lstrip("+")
    assert slip.should_be.lstrip("+") == step.should_be.lstrip("+")
    assert judge(Working((step.before, slip.repaired))).first_slip is None


def test_minus_before_a_bracket_that_turned_only_the_first_term():
    # -(x^2 - 8x + 16) is -x^2 + 8x - 16; the line has -8x + 16. At x = 1: 25 - 9 = 16 and 25 - 1 - 8 + 16 = 32.
    told = judge(Working(("(x+4)^2-(x-4)^2", "=x^2+8x+16-x^2-8x+16")))
    slip = told.lines[1].slip
    assert slip is not None
    assert (slip.kind, slip.term, slip.span, slip.should_be) == ("sign-bracket", "-8x+16", (14, 20), "+8x-16")
    assert slip.repaired == "=x^2+8x+16-x^2+8x-16"


def test_product_after_a_minus_collected_with_its_signs_not_turned():
    # -(x + 2)(x + 3) is -x^2 - 5x - 6; the line has +5x + 6 after -x^2.
    told = judge(Working(("x(x+5)-(x+2)(x+3)", "=x^2+5x-x^2+5x+6")))
    slip = told.lines[1].slip
    assert slip is not None
    assert (slip.kind, slip.term, slip.should_be) == ("sign-bracket", "+5x+6", "-5x-6")


def test_two_products_with_one_wrong_factor_sign_are_both_named():
    # 3x times -5 is -15x and 1 times -5 is -5; the line has +15x and +5, which do not stand together.
    told = judge(Working(("(3x+1)(2x-5)", "=6x^2+15x+2x+5")))
    slip = told.lines[1].slip
    assert slip is not None
    assert (slip.kind, slip.term, slip.should_be) == ("sign-product", "+15x", "-15x")
    assert slip.repaired == "=6x^2-15x+2x-5"
    assert "likewise +5 should be -5" in slip.because
