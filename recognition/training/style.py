"""How one hand writes: whose symbols, how large, how near each other. Sizes are relative to the digit height."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.training.bank import Shape, SymbolBank
from recognition.training.fonts import Font
from recognition.training.metrics import BINARY

__all__ = ["Style", "varied_style"]

_ONE_HAND_SHARE: Final = 0.6
_BETWEEN_SHARE: Final = 0.5


@dataclass(slots=True)
class Style:
    """How one hand writes: sizes relative to the digit height.

    hand: the symbols that one writer left; a token that is not among them is taken from one other hand throughout.
    towards, share: another writer's symbols, and how far this hand stands between the two. mixing: share of the
    symbols of no one's hand that stand between two. paper: place in the symbols from paper, or None to use none.
    bend: how far each token's shapes are bent, the same way in the whole line. x_height: letters without ascenders,
    relative to their usual height.
    """

    font: Font | None = None
    hand: Mapping[str, Sequence[Shape]] = field(default_factory=dict)
    towards: Mapping[str, Sequence[Shape]] = field(default_factory=dict)
    share: float = 0.0
    mixing: float = 0.0
    paper: float | None = None
    bend: float = 0.0
    x_height: float = 1.0
    ink_only: frozenset[str] = frozenset()
    repeats: float = 0.0
    gap: float = 0.14
    operator_gap: float = 0.2
    size_spread: float = 0.06
    aspect_spread: float = 0.06
    baseline_spread: float = 0.03
    script_size: float = 0.62
    script_raise: float = 0.0
    brackets_grow: bool = True
    fraction_gap: float = 0.16
    fraction_overhang: float = 0.15
    fraction_size: float = 0.88
    limits_beside: bool = False
    bow: float = 0.01
    operator_size: float = 1.0
    drift: float = 0.0
    seen: dict[str, Shape] = field(default_factory=dict)
    bends: dict[str, NDArray[np.float32]] = field(default_factory=dict)

    @classmethod
    def random(cls, bank: SymbolBank, rng: random.Random, *, font_share: float = 0.25) -> Style:
        """A hand drawn by lot; the share of lines set from a font is kept when the bank has ink too."""
        gauss = rng.gauss
        font = rng.choice(bank.fonts) if bank.fonts and (not bank.ink or rng.random() < font_share) else None
        mixed = font is not None and bank.ink and rng.random() < 0.5
        return cls(
            font=font,
            ink_only=frozenset(rng.sample(sorted(BINARY | {"x", "(", ")", "1", "7"}), 8)) if mixed else frozenset(),
            repeats=rng.choice((0.0, 0.4, 0.8)),
            gap=max(0.02, gauss(0.14, 0.07)),
            operator_gap=max(0.02, gauss(0.2, 0.12)),
            size_spread=abs(gauss(0.06, 0.04)),
            aspect_spread=abs(gauss(0.06, 0.05)),
            baseline_spread=abs(gauss(0.03, 0.03)),
            script_size=min(0.85, max(0.42, gauss(0.62, 0.09))),
            script_raise=gauss(0.0, 0.12),
            brackets_grow=rng.random() < 0.85,
            fraction_gap=max(0.04, gauss(0.16, 0.07)),
            fraction_overhang=gauss(0.15, 0.12),
            fraction_size=min(1.0, max(0.6, gauss(0.88, 0.1))),
            limits_beside=rng.random() < 0.2,
            bow=abs(gauss(0.0, 0.015)),
            operator_size=min(1.25, max(0.7, gauss(1.0, 0.13))),
            drift=gauss(0.0, 0.015),
        )


def varied_style(
    bank: SymbolBank, rng: random.Random, *, font_share: float = 0.25, paper_share: float = 0.0
) -> Style:
    """A hand drawn by lot; often that of one writer, with letters of another height, and bent to a new hand."""
    style = Style.random(bank, rng, font_share=font_share)
    if bank.hands and style.font is None and rng.random() < _ONE_HAND_SHARE:
        style.hand = rng.choice(bank.hands)
        if rng.random() < _BETWEEN_SHARE:
            style.towards, style.share = rng.choice(bank.hands), rng.uniform(0.15, 0.85)
    elif rng.random() < _BETWEEN_SHARE:
        style.mixing = 0.5
    if bank.paper and style.font is None and rng.random() < paper_share:
        style.paper = rng.random()
    style.bend = abs(rng.gauss(0.0, 0.05)) if rng.random() < 0.6 else 0.0
    style.x_height = min(1.4, max(0.8, rng.gauss(1.03, 0.1)))
    return style
