"""What the card of a line says: the step, the factors, what is written and what it should be."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from checker.report import Slip
from desktop.answer_words import answer_words
from desktop.claims import Claim
from desktop.desk_line import Override
from desktop.document import Document
from desktop.language import tr
from desktop.overruled import counted_style
from desktop.reveal import GRADES, Reveal
from desktop.sentences import in_language, latex_in_language
from desktop.statements import whole_latex
from desktop.verdict_style import CLAIM_FALSE, CLAIM_TRUE, STYLES, VerdictStyle
from desktop.wording import Row, is_missing, line_reason, sentence

__all__ = ["Card", "card_of", "claim_card", "claim_style"]

_FACTORS = re.compile(r"(?P<one>\S.*?) times (?P<other>\S.*?) is (?P<product>[^:;,]+)")


@dataclass(frozen=True, slots=True)
class Card:
    """The card of one line.

    rows: what is told now. counterexample: a sentence that is shown on demand; empty when there is none.
    next_hint: grade of the hint that may be asked for; 0 when there is none left.
    other_reading: index of a line and another reading of it, with which this line follows.
    answer: what is said of the final answer of the line's working; empty when nothing is.
    """

    index: int
    style: VerdictStyle
    title: str
    rows: tuple[Row, ...] = ()
    counterexample: str = ""
    next_hint: int = 0
    slip: Slip | None = None
    other_reading: tuple[int, str] | None = None
    override: Override | None = None
    answer: str = ""


def claim_style(claim: Claim) -> VerdictStyle:
    """How the verdict on a claim looks."""
    return STYLES["undecided"] if claim.is_true is None else CLAIM_TRUE if claim.is_true else CLAIM_FALSE


def claim_card(index: int, latex: str, claim: Claim) -> Card:
    """The card of a line that claims to hold for all values."""
    style = claim_style(claim)
    rows = [Row(tr("Claimed for all values"), latex=latex)]
    if claim.left and claim.right:
        rows += [Row(tr("Left, multiplied out"), latex=claim.left), Row(tr("Right, multiplied out"), latex=claim.right)]
    rows += [
        Row(label, latex=text)
        for label, text in ((tr("Only on the left"), claim.only_left), (tr("Only on the right"), claim.only_right))
        if text
    ]
    if claim.counterexample:
        rows.append(Row(tr("Fails at"), text=in_language(claim.counterexample)))
    rows.append(Row(tr("Why"), text=sentence(claim.reason)))
    return Card(index, style, tr("Line {number}: {word}", number=index + 1, word=style.word), tuple(rows))


def card_of(document: Document, index: int, reveal: Reveal) -> Card | None:
    """The card of a line; None before the page is checked."""
    card = _line_card(document, index, reveal)
    found = None if card is None else document.verdict_of(index)
    if card is None or found is None:
        return card
    return replace(card, answer=answer_words(document, found[0], reveal))


def _line_card(document: Document, index: int, reveal: Reveal) -> Card | None:
    if not 0 <= index < len(document.lines):
        return None
    line, style = document.lines[index], counted_style(document, index)
    found = document.verdict_of(index)
    if style is None or found is None:
        return None
    verdict, place = found
    row = verdict.report.lines[place]
    title = tr("Line {number}: {word}", number=index + 1, word=style.word)
    reason = sentence(row.reason)
    if row.verdict != "slip":
        said = line_reason(document, index)
        rows = (Row(tr("Why"), text=said),) if said and line.override is None else ()
        return Card(index, style, title, rows, override=line.override)
    if line.override is not None and line.override.is_right:
        said = row.slip.because if row.slip is not None else row.reason
        return Card(index, style, title, (Row(tr("The checker said"), text=sentence(said)),), override=line.override)
    rows_before: tuple[Row, ...] = ()
    if row.source is not None:
        label = tr("From line {number}", number=verdict.lines[row.source] + 1)
        rows_before = (Row(label, latex=whole_latex(document.lines, verdict.lines, row.source)),)
    written = whole_latex(document.lines, verdict.lines, place)
    if verdict.check_reading_first and line.override is None:
        told = [*rows_before, Row(tr("Line as read"), latex=written)]
        other = verdict.other_reading if place == verdict.report.first_slip else None
        if other is not None:
            told.append(Row(tr("Or line {number} says", number=other[0] + 1), latex=other[1]))
        told.append(Row(tr("Why"), text=line_reason(document, index)))
        return Card(index, style, title, tuple(told), reason, other_reading=other)
    told = [*rows_before, Row(tr("Line as written"), latex=written)]
    slip = row.slip
    witness = reason if row.witness is not None else ""
    if slip is None:
        if reason and row.witness is None:
            told.append(Row(tr("Why"), text=reason))
        return Card(index, style, title, tuple(told), witness, override=line.override)
    grade = reveal.grade(slip)
    if reveal.is_student:
        told += [
            Row(tr("Hint {number}", number=number), text=text)
            for number, text in enumerate(reveal.hints(slip), start=1)
        ]
    if grade == GRADES:
        told += _slip_rows(slip, says_why=not reveal.is_student)
    next_hint = grade + 1 if grade < GRADES else 0
    return Card(index, style, title, tuple(told), witness, next_hint, slip, override=line.override)


def _slip_rows(slip: Slip, *, says_why: bool) -> list[Row]:
    rows: list[Row] = []
    factors = _FACTORS.match(slip.because)
    if factors is not None:
        rows.append(Row(tr("Factors"), latex=rf"{{{factors['one']}}} \text{{ {tr('and')} }} {{{factors['other']}}}"))
    if slip.term and not is_missing(slip):
        rows.append(Row(tr("Written"), latex=slip.term))
    if slip.should_be:
        label = tr("Missing") if is_missing(slip) else tr("Should be")
        rows.append(Row(label, latex=latex_in_language(slip.should_be)))
    if slip.because and says_why:
        rows.append(Row(tr("Why"), text=sentence(slip.because)))
    if slip.repaired:
        rows.append(Row(tr("Line put right"), latex=latex_in_language(slip.repaired)))
    return rows
