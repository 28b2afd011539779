"""The hands of single writers: what one person's symbols look like, as far as a data set shows them."""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from recognition.training.bank import Shape, SymbolBank
from recognition.training.unseen_lines import bank_of

__all__ = ["WriterHand", "one_hand", "writer_hands"]


@dataclass(frozen=True, slots=True)
class WriterHand:
    """name: as in the data set; bank: this writer's own symbols."""

    name: str
    bank: SymbolBank

    @property
    def symbols(self) -> int:
        return sum(len(shapes) for shapes in self.bank.ink.values())


def writer_hands(rows: Iterable[dict[str, Any]]) -> list[WriterHand]:
    """Everyone who wrote single symbols that are known, in the order of their names.

    Args:
        rows: labelled ink, objects with `writer`, `strokes` and `symbols` as in the data set.
    """
    own: dict[str, list[dict[str, Any]]] = {}
    for row in rows:
        if row.get("writer") is not None:
            own.setdefault(str(row["writer"]), []).append(row)
    hands = [WriterHand(name, bank_of(own[name])) for name in sorted(own)]
    return [hand for hand in hands if hand.symbols]


def one_hand(hand: WriterHand, others: Sequence[WriterHand], rng: random.Random) -> SymbolBank:
    """A bank in one hand: the writer's own symbols, and for each token the writer never wrote, one other writer's."""
    ink: dict[str, Sequence[Shape]] = dict(hand.bank.ink)
    for token in sorted({token for other in others for token in other.bank.ink} - set(ink)):
        ink[token] = rng.choice([other for other in others if token in other.bank.ink]).bank.ink[token]
    return SymbolBank(ink)
