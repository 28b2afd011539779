"""Teach which way up writing is: `python -m recognition.training.turns DATA/crohme/train.jsonl.xz`.

Lines of real ink (CROHME's training part) and lines and words in the shipped fonts are drawn, their connected pieces
turned by quarter turns, and a network of two layers learns the turn. Written to recognition/page/turns.npz; printed:
how often a single piece, and the pieces of one held-out line together, are told right.
"""

from __future__ import annotations

import argparse
import json
import lzma
import random
import string
from collections.abc import Iterator, Sequence
from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import Pieces, find_pieces
from recognition.page.turning import SIDE, TurnNet, piece_features
from recognition.reader.tokens import NotCanonical, parse
from recognition.training.bank import SymbolBank
from recognition.training.fonts import load_fonts
from recognition.training.layout import draw_line
from recognition.training.lines import random_line
from recognition.training.sheets import jittered
from recognition.training.style import Style

__all__ = ["main"]

_HIDDEN, _STEPS, _BATCH, _RATE = 96, 6000, 512, 2e-3
_DIGIT = 40.0
_HELD_OUT = 0.05

Pixels = NDArray[np.float32]


def main(arguments: Sequence[str] | None = None) -> int:
    """Train, save and print the shares that were told right."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("ink", type=Path, help="labelled ink, JSON lines (xz)")
    parser.add_argument("--out", type=Path, default=Path(__file__).parents[1] / "page" / "turns.npz")
    parser.add_argument("--font-lines", type=int, default=5000)
    parser.add_argument("--seed", type=int, default=7)
    options = parser.parse_args(arguments)
    rng = random.Random(options.seed)
    lines = [*_ink_lines(options.ink, rng), *_font_lines(options.font_lines, rng)]
    rng.shuffle(lines)
    held = int(_HELD_OUT * len(lines))
    net = _trained(np.concatenate(lines[held:]), np.random.default_rng(options.seed))
    with options.out.open("wb") as file:
        np.savez_compressed(file, **{name: getattr(net, name).astype(np.float16) for name in ("w1", "b1", "w2", "b2")})
    print(json.dumps({"lines": len(lines), "pieces": sum(map(len, lines)), **_checked(net, lines[:held])}, indent=1))
    return 0


def _ink_lines(path: Path, rng: random.Random) -> Iterator[Pixels]:
    with lzma.open(path, "rt", encoding="utf-8") as file:
        for text in file:
            row = json.loads(text)
            strokes = [np.array(stroke, np.float32)[:, :2] for stroke in row["strokes"]]
            high = np.array([np.ptp(stroke[:, 1]) for stroke in strokes])
            unit = float(np.percentile(high, 70))
            if unit > 0:
                yield _features([stroke * (_DIGIT / unit) for stroke in strokes], False, rng)


def _font_lines(count: int, rng: random.Random) -> Iterator[Pixels]:
    """Random algebra and random words, in one font each."""
    fonts = load_fonts()
    for number in range(count):
        font = rng.choice(fonts)
        if number % 4 == 0:
            letters = [c for c in string.ascii_letters if c in font.glyphs]
            row = parse(" ".join(rng.choice(letters) for _ in range(rng.randint(5, 14))))
        else:
            row = random_line(rng, long_share=0.4)
        try:
            drawing = draw_line(row, SymbolBank(fonts=(font,)), Style(font=font, gap=rng.uniform(0.02, 0.2)), rng)
        except NotCanonical:  # the font lacks a sign
            continue
        points = jittered(drawing, rng, 1.0) * _DIGIT
        points[:, 0] -= points[:, 1] * rng.gauss(0, 0.1)
        parts = [points[a:b] for a, b in zip(drawing.offsets, drawing.offsets[1:], strict=False)]
        yield _features(parts, bool(drawing.filled.any()), rng)


def _features(parts: list[NDArray[np.float32]], filled: bool, rng: random.Random) -> Pixels:
    """Draw one line and take its pieces."""
    low = np.min([part.min(axis=0) for part in parts], axis=0)
    high = np.max([part.max(axis=0) for part in parts], axis=0)
    if (high - low).max() > 4000:
        return np.zeros((0, SIDE * SIDE + 2), np.float32)
    angle = rng.gauss(0, 0.03)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]], np.float32)
    moved = [((part - low) @ turn.T) for part in parts]
    corner = np.min([part.min(axis=0) for part in moved], axis=0)
    moved = [np.rint((part - corner + 20) * 16).astype(np.int32).reshape(-1, 1, 2) for part in moved]
    width, height = (int(v) // 16 + 40 for v in np.max([part.reshape(-1, 2).max(axis=0) for part in moved], axis=0))
    ink = np.zeros((height, width), np.uint8)
    pen = max(1, round(rng.uniform(2, 5)))
    if filled:
        cv2.fillPoly(ink, moved, 255, cv2.LINE_8, 4)
    else:
        cv2.polylines(ink, moved, False, 255, pen, cv2.LINE_8, 4)
    pieces: Pieces = find_pieces(ink, np.asarray(255 - ink, np.uint8))
    return piece_features(pieces)


def _turned(features: Pixels, turns: NDArray[np.int_]) -> Pixels:
    """Each piece turned anticlockwise by its own number of quarter turns."""
    out = features.copy()
    frames = features[:, : SIDE * SIDE].reshape(-1, SIDE, SIDE)
    for turn in (1, 2, 3):
        chosen = turns == turn
        out[chosen, : SIDE * SIDE] = np.rot90(frames[chosen], turn, axes=(1, 2)).reshape(-1, SIDE * SIDE)
        if turn != 2:
            out[chosen, -2:] = features[chosen][:, [-1, -2]]
    return out


def _trained(pieces: Pixels, rng: np.random.Generator) -> TurnNet:
    """Adam on the cross entropy, the rate falling to nothing."""
    inputs = pieces.shape[1]
    weights = [
        rng.normal(0, np.sqrt(2 / inputs), (inputs, _HIDDEN)).astype(np.float32), np.zeros(_HIDDEN, np.float32),
        rng.normal(0, np.sqrt(1 / _HIDDEN), (_HIDDEN, 4)).astype(np.float32), np.zeros(4, np.float32),
    ]
    first = [np.zeros_like(w) for w in weights]
    second = [np.zeros_like(w) for w in weights]
    for step in range(1, _STEPS + 1):
        turns = rng.integers(0, 4, _BATCH)
        x = _turned(pieces[rng.integers(0, len(pieces), _BATCH)], turns)
        hidden = np.maximum(x @ weights[0] + weights[1], 0)
        scores = hidden @ weights[2] + weights[3]
        share = np.exp(scores - scores.max(axis=1, keepdims=True))
        share /= share.sum(axis=1, keepdims=True)
        share[np.arange(_BATCH), turns] -= 1
        share /= _BATCH
        back = (share @ weights[2].T) * (hidden > 0)
        slopes = [x.T @ back, back.sum(axis=0), hidden.T @ share, share.sum(axis=0)]
        rate = _RATE * (1 - step / (_STEPS + 1))
        for w, m, v, slope in zip(weights, first, second, slopes, strict=True):
            m += 0.1 * (slope - m)
            v += 0.001 * (slope**2 - v)
            w -= rate * ((m / (1 - 0.9**step)) / (np.sqrt(v / (1 - 0.999**step)) + 1e-8) + 1e-4 * w)
    return TurnNet(*weights)


def _checked(net: TurnNet, lines: Sequence[Pixels]) -> dict[str, float]:
    right = total = lines_right = lines_total = 0
    for line in lines:
        for turn in range(4) if len(line) >= 6 else ():
            votes = net.log_probabilities(_turned(line, np.full(len(line), turn)))
            right += int((votes.argmax(axis=1) == turn).sum())
            total += len(line)
            lines_right += int(np.maximum(votes, -3).sum(axis=0).argmax() == turn)
            lines_total += 1
    return {"pieces_right": round(right / max(1, total), 4), "lines_right": round(lines_right / max(1, lines_total), 4)}


if __name__ == "__main__":
    raise SystemExit(main())
