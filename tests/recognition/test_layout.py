"""Lines set by the layout: every sign has ink, scripts stand above, bars between."""

import random

import numpy as np
import pytest

from recognition.reader.tokens import NotCanonical, parse, serialise
from recognition.training.augment import token_boxes
from recognition.training.bank import SymbolBank
from recognition.training.fonts import load_fonts
from recognition.training.layout import draw_line
from recognition.training.lines import mutated, random_line
from recognition.training.style import Style

_STRUCTURE = {"{", "}", "^", "_", "[", "]"}


def _boxes(latex: str, seed: int = 1):
    rng, row = random.Random(seed), parse(latex)
    bank = SymbolBank({}, load_fonts())
    drawing = draw_line(row, bank, Style(font=bank.fonts[4]), rng)
    tokens = serialise(row)
    return tokens, token_boxes(drawing.points, drawing, len(tokens))


def test_every_sign_has_ink_and_structure_has_none():
    tokens, boxes = _boxes(r"\frac{x^2-9}{x-3}=\sqrt{2a+1}")
    for token, box in zip(tokens, boxes, strict=True):
        assert np.isnan(box).all() == (token in _STRUCTURE), token


def test_power_stands_right_of_and_above_its_base():
    tokens, boxes = _boxes("x^2")
    base, power = boxes[tokens.index("x")], boxes[tokens.index("2")]
    assert power[0] > (base[0] + base[2]) / 2
    assert (power[1] + power[3]) / 2 < (base[1] + base[3]) / 2


def test_bar_stands_between_numerator_and_denominator():
    tokens, boxes = _boxes(r"\frac{a}{b}")
    bar, above, below = (boxes[tokens.index(sign)] for sign in (r"\frac", "a", "b"))
    assert above[3] < bar[1] + 0.1 < below[1] + 0.2


def test_root_sign_covers_its_radicand():
    tokens, boxes = _boxes(r"\sqrt{n+4}")
    sign, first, last = (boxes[tokens.index(token)] for token in (r"\sqrt", "n", "4"))
    assert sign[0] < first[0] and sign[1] < min(first[1], last[1]) and sign[2] > last[0]


def test_no_two_letters_are_alike():
    tokens, boxes = _boxes("aaaa")
    widths = {round(float(box[2] - box[0]), 4) for box in boxes}
    assert len(widths) == len(tokens)


@pytest.mark.parametrize("seed", range(40))
def test_random_lines_are_canonical_and_can_be_set(seed: int):
    rng = random.Random(seed)
    row = random_line(rng)
    assert serialise(parse(" ".join(serialise(row)))) == serialise(row)
    assert len(serialise(mutated(row, 0.5, rng))) == len(serialise(row))
    bank = SymbolBank({}, load_fonts())
    drawing = draw_line(row, bank, Style.random(bank, rng), rng)
    assert np.isfinite(drawing.points).all()


def test_sign_that_no_bank_has_is_refused():
    with pytest.raises(NotCanonical, match="no shape"):
        draw_line(parse(r"\forall x"), SymbolBank({}, load_fonts()), Style(), random.Random(1))


def test_fonts_keep_their_licences():
    from recognition.training.fonts import FONT_FOLDER

    for font in load_fonts():
        text = (FONT_FOLDER / "licences" / f"{font.name}.txt").read_text(encoding="utf-8")
        assert "SIL Open Font License" in text or "Apache License" in text
