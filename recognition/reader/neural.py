"""The neural reader: pictures or strokes of written lines to candidates, with a box for every token."""

from __future__ import annotations

import logging
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Protocol, runtime_checkable

import numpy as np
from numpy.typing import NDArray

from recognition.reader.beam import Reading, best_readings, greedy_reading, neighbours, score_reading
from recognition.reader.boxes import Bounds, Pieces, bounds_in_shares, cut_ink, drawn, places_from_attention
from recognition.reader.calibration import probabilities as shares
from recognition.reader.canonical import CanonicalImage, from_picture, from_strokes
from recognition.reader.grammar import Grammar
from recognition.reader.network import Memory, Network
from recognition.reader.same_hand import LineStudy
from recognition.reader.tokens import SPECIAL, NotCanonical, is_valid, normalise
from recognition.reader.weights import MODEL_FOLDER, ModelFacts, load_weights
from recognition.result import Box, Candidate, Tick, Token, no_tick

__all__ = ["LinePicture", "LineStrokes", "NeuralReader"]

log = logging.getLogger(__name__)

CANDIDATES: Final = 5
_BRACES: Final = frozenset("{}")
_NO_SIGNS: Final = frozenset((*SPECIAL, r"\frac", r"\sqrt"))
"""Tokens that bring a structure with them, so that no other can stand in their place."""


class LinePicture(Protocol):
    """A line cut from a page: evened grey, ink dark on light, and the map (3, 3) to pixels of the original."""

    @property
    def image(self) -> NDArray[np.uint8]: ...

    @property
    def to_original(self) -> NDArray[np.float64]: ...


@runtime_checkable
class LineStrokes(Protocol):
    """A line written with a pen: strokes of shape (n, 2), and the map (3, 3) to pixels of the page's picture."""

    @property
    def strokes(self) -> Sequence[NDArray[np.float64]]: ...

    @property
    def to_original(self) -> NDArray[np.float64]: ...


class NeuralReader:
    """Reads lines with the network; knows syntax, never whether the mathematics is true."""

    def __init__(self, network: Network) -> None:
        self._network = network
        self._signs: Final = np.array([bool(drawn([t])) and t not in _NO_SIGNS for t in network.facts.vocabulary])

    @classmethod
    def load(cls, folder: Path = MODEL_FOLDER, *, threads: int = 2) -> NeuralReader:
        """Load the weights of a folder; the shipped ones when none is named.

        Raises:
            ModelError: the weights are missing, damaged, or do not fit their vocabulary.
        """
        return cls(Network(load_weights(folder), threads=threads))

    @property
    def facts(self) -> ModelFacts:
        return self._network.facts

    def read(
        self,
        crops: Sequence[LinePicture | LineStrokes],
        *,
        beam: int = 5,
        allowed: Collection[str] | None = None,
        tick: Tick = no_tick,
    ) -> list[tuple[Candidate, ...]]:
        """Read lines.

        Args:
            beam: readings kept in each direction; 1 reads once from left to right, the quickest way.
            allowed: tokens that occur on this page, as the user says; None for all.
            tick: called before each line, and at the end.
        Returns:
            For each line up to five candidates, best first; none where there is no ink or no reading parses.
            Probabilities of a line sum to at most 1. Boxes are in pixels of the original.
        """
        if beam < 1:
            raise ValueError("A beam keeps at least one reading.")
        vocabulary = self.facts.vocabulary
        kept = None if allowed is None else frozenset(allowed) | _BRACES
        grammars = [Grammar(vocabulary, backwards=backwards, allowed=kept) for backwards in (False, True)]
        out: list[tuple[Candidate, ...]] = []
        for number, crop in enumerate(crops):
            tick(number, len(crops))
            out.append(self._read_line(crop, beam, grammars))
        tick(len(crops), len(crops))
        return out

    def study(self, crop: LinePicture | LineStrokes, latex: str) -> LineStudy | None:
        """What is seen of a line when it says what is given: for `reweighed`, of confirmed lines and of others.

        Args:
            latex: the confirmed reading, or the first candidate of a line that is not confirmed.
        Returns:
            None where there is no ink, no attention in these weights, or the LaTeX is not in our vocabulary.
        """
        image = self._canonical(crop)
        ids = {token: number for number, token in enumerate(self.facts.vocabulary)}
        try:
            tokens = normalise(latex)
        except NotCanonical:
            return None
        if not tokens or not image.pixels.any() or not all(token in ids for token in tokens):
            return None
        memory = self._look(image)
        reading = score_reading(self._network, memory, tuple(ids[token] for token in tokens))
        attention = reading.attention
        if attention is None:
            return None
        looks = np.einsum("tn,hnd->thd", attention, memory.last_values).reshape(len(tokens), -1).astype(np.float32)
        own = set(drawn(tokens))
        is_sign = np.array([n in own and token not in _NO_SIGNS for n, token in enumerate(tokens)])
        return LineStudy(tuple(tokens), is_sign, reading.spread, looks, self.facts.vocabulary)

    def joint_scores(self, crop: LinePicture | LineStrokes, *, beam: int = 5) -> list[tuple[str, float]]:
        """Readings of a line with their joint log-scores, best first: what the temperature is fitted on."""
        vocabulary = self.facts.vocabulary
        image = self._canonical(crop)
        if not image.pixels.any():
            return []
        grammars = [Grammar(vocabulary, backwards=backwards) for backwards in (False, True)]
        return [(" ".join(self._texts(one)), one.score) for one in self._search(self._look(image), beam, grammars)]

    def _read_line(
        self, crop: LinePicture | LineStrokes, beam: int, grammars: Sequence[Grammar]
    ) -> tuple[Candidate, ...]:
        image = self._canonical(crop)
        if not image.pixels.any():
            return ()
        memory = self._look(image)
        readings = self._search(memory, beam, grammars)
        if beam == 1:  # nothing to compare with: the tokens' own probabilities must do
            said = np.array([self._sure(reading).prod() for reading in readings])
        else:
            said = shares([one.score for one in readings], self.facts.temperature, self.facts.rest)
        to_original = crop.to_original @ image.to_input
        pieces = cut_ink(image.pixels, columns=memory.grid[1], cell=self.facts.cell)
        known: dict[tuple[int, tuple[int, ...]], _Places] = {}
        out = []
        for reading, probability in zip(readings[:CANDIDATES], said, strict=False):
            texts = self._texts(reading)
            alike = (id(reading.forwards.attention), tuple(drawn(texts)))  # neighbours share their attention
            if alike not in known:
                known[alike] = _places(reading, texts, image, pieces, to_original)
            out.append(self._candidate(reading, texts, float(probability), known[alike]))
        return tuple(out)

    def _canonical(self, crop: LinePicture | LineStrokes) -> CanonicalImage:
        if isinstance(crop, LineStrokes):
            return from_strokes(crop.strokes, self.facts.frame)
        return from_picture(crop.image, self.facts.frame)

    def _look(self, image: CanonicalImage) -> Memory:
        return self._network.look(image)

    def _search(self, memory: Memory, beam: int, grammars: Sequence[Grammar]) -> list[Reading]:
        """Readings that parse, best first."""
        forwards, backwards = grammars
        if beam == 1:
            reading = greedy_reading(self._network, memory, forwards)
            found = [] if reading is None else [reading]
        else:
            found = best_readings(self._network, memory, forwards, backwards, width=beam)
        parsing = [reading for reading in found if is_valid(self._texts(reading))]
        log.debug("%d readings found, %d parse", len(found), len(parsing))
        if beam > 1 and 0 < len(parsing) < CANDIDATES:
            parsing = self._with_neighbours(parsing, forwards)
        return parsing

    def _with_neighbours(self, readings: list[Reading], forwards: Grammar) -> list[Reading]:
        """Fill up to five with readings that differ from the best in one sign."""
        out, known = list(readings), {reading.tokens for reading in readings}
        for neighbour in neighbours(readings[0], forwards, self._signs):
            if neighbour.tokens not in known and is_valid(self._texts(neighbour)):
                out.append(neighbour)
            if len(out) == CANDIDATES:
                break
        return sorted(out, key=lambda reading: -reading.score)

    def _texts(self, reading: Reading) -> list[str]:
        return [self.facts.vocabulary[number] for number in reading.tokens]

    def _sure(self, reading: Reading) -> NDArray[np.float64]:
        """Probability of each token."""
        return np.minimum(np.exp(reading.log_probs.astype(np.float64)) / self.facts.token_ceiling, 1.0)

    def _candidate(self, reading: Reading, texts: list[str], probability: float, places: _Places) -> Candidate:
        sure = self._sure(reading)
        tokens = tuple(Token(text, float(p), box) for text, p, box in zip(texts, sure, places.boxes, strict=True))
        return Candidate(" ".join(texts), probability, tokens, places.struck)


@dataclass(frozen=True, slots=True)
class _Places:
    """Where the tokens of a reading stand, and what it leaves out, in pixels of the original."""

    boxes: tuple[Box, ...]
    struck: tuple[Box, ...] = ()


def _places(
    reading: Reading, texts: list[str], image: CanonicalImage, pieces: Pieces, to_original: NDArray[np.float64]
) -> _Places:
    attention = reading.attention
    if attention is None or not len(pieces.area):
        return _Places(tuple(_boxes(bounds_in_shares(image.pixels, texts), to_original)))
    places = places_from_attention(pieces, texts, attention)
    return _Places(tuple(_boxes(places.bounds, to_original)), tuple(_boxes(places.left_out, to_original)))


def _boxes(bounds: Bounds, to_original: NDArray[np.float64]) -> list[Box]:
    left, top, right, bottom = bounds.T
    corners = np.stack([left, top, right, top, right, bottom, left, bottom], axis=1).reshape(-1, 4, 2) - 0.5
    mapped = np.concatenate([corners, np.ones((*corners.shape[:2], 1))], axis=2) @ to_original.T
    points = mapped[..., :2] / mapped[..., 2:] + 0.5
    low = np.maximum(np.floor(points.min(axis=1) + 0.25), 0).astype(int)
    high = np.ceil(points.max(axis=1) - 0.25).astype(int)
    return [
        Box(int(x0), int(y0), max(1, int(x1 - x0)), max(1, int(y1 - y0)))
        for (x0, y0), (x1, y1) in zip(low, high, strict=True)
    ]
