"""Where on the line does each token of a reading stand?

The decoder's attention says which cells of a coarse grid each token looked at. Ink is exact where attention is
vague, so pieces of ink (connected components, cut by cells where tokens touch) are shared out among the tokens, and a
token's box is that of its ink.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["Bounds", "Pieces", "Places", "bounds_in_shares", "cut_ink", "drawn", "places_from_attention"]

_INK_LEVEL: Final = 90  # of 255
_SHARED: Final = 0.3  # of the best claim: more than one token with such a claim means that they touch
_UNCLAIMED: Final = 1e-9  # ink that no token looked at: a blot, a stray of the next line
_UNSEEN: Final = 0.06  # of a token's attention: ink that none looked at more than so was left out of the reading
_TALL: Final = 16.0  # px: lower ink may be a bar, a dot or a part of a sign that attention passes over
_FAR: Final = 52.0  # px from the middle of each token's attention: ink there is read by none, though it touches a sign
_UNLOOKED: Final = 0.03  # of any token's attention in a cell of such ink
_MUCH: Final = 300.0  # px of such ink in one component, as tall as _HIGH: less may be the end of a bar or a flourish
_HIGH: Final = 24.0  # px
_BESIDE: Final = 12.0  # px between struck signs that are reported as one
_BESIDE_WORD: Final = 30.0  # px between letters of one word
_WORDS: Final = frozenset((r"\sin", r"\cos", r"\tan", r"\log", r"\ln", r"\lim", r"\text{or}", r"\text{and}"))
_NEAR: Final = 18.0  # px: how far the middle of attention may miss its sign
_UNDRAWN: Final = frozenset(("{", "}", "^", "_"))

Bounds = NDArray[np.float64]
"""Left, top, right, bottom of each token, shape (tokens, 4), in canonical pixels; right and bottom are outside."""


@dataclass(frozen=True, slots=True)
class Pieces:
    """Ink cut by component and by cell: each array has one entry a piece, `extent` one a component."""

    component: NDArray[np.intp]
    cell: NDArray[np.intp]
    area: NDArray[np.float64]
    bounds: Bounds
    extent: Bounds


def drawn(tokens: Sequence[str]) -> list[int]:
    """Numbers of the tokens with ink of their own: not braces, marks of scripts, or brackets round a root's index."""
    out = []
    in_index = False
    for number, token in enumerate(tokens):
        if token == "[" and number and tokens[number - 1] == r"\sqrt":
            in_index = True
        elif token == "]" and in_index:
            in_index = False
        elif token not in _UNDRAWN:
            out.append(number)
    return out


def cut_ink(pixels: NDArray[np.uint8], *, columns: int, cell: int) -> Pieces:
    """Cut the ink of a canonical image; cell (r, c) of the attention's grid is number r * columns + c."""
    dark = (pixels > _INK_LEVEL).astype(np.uint8)
    count, labels = cv2.connectedComponents(dark, connectivity=8)
    ys, xs = np.nonzero(dark)
    component = labels[ys, xs].astype(np.intp) - 1
    place = (ys // cell) * columns + xs // cell
    keys, piece = np.unique(component * (columns * (pixels.shape[0] // cell + 1)) + place, return_inverse=True)
    first = np.zeros(len(keys), np.intp)
    first[piece] = np.arange(len(piece))
    area = np.bincount(piece, minlength=len(keys)).astype(np.float64)
    bounds, extent = _bounds_of(piece, len(keys), xs, ys), _bounds_of(component, count - 1, xs, ys)
    return Pieces(component[first], place[first], area, bounds, extent)


def _bounds_of(part: NDArray[np.intp], count: int, xs: NDArray[np.intp], ys: NDArray[np.intp]) -> Bounds:
    """Bounds of the pixels of each part; shape (count, 4)."""
    bounds = np.tile((np.inf, np.inf, -np.inf, -np.inf), (count, 1))
    for column, values in ((0, xs), (1, ys)):
        np.minimum.at(bounds[:, column], part, values)
        np.maximum.at(bounds[:, column + 2], part, values + 1)
    return bounds


@dataclass(frozen=True, slots=True)
class Places:
    """bounds: of each token; left_out: of ink that no token explains, from left to right, neighbours joined, (n, 4).

    What is left out was struck out, or the reading missed it.
    """

    bounds: Bounds
    left_out: Bounds


def places_from_attention(pieces: Pieces, tokens: Sequence[str], attention: NDArray[np.float32]) -> Places:
    """Where each token of a reading stands, and what stands beside them, from where the decoder looked.

    Args:
        pieces: the ink of the line, not empty.
        tokens: canonical tokens of the reading.
        attention: shape (tokens, cells), cells numbered as in `pieces`.
    """
    own_ink = drawn(tokens)
    looked = attention[own_ink]
    shares = _shares(pieces, [tokens[number] for number in own_ink], looked)
    bounds = np.full((len(tokens), 4), np.nan)
    for place, number in enumerate(own_ink):
        own = np.flatnonzero(shares.owner == place)
        if not len(own):  # its ink went to others; point at the piece that it looked at most
            own = shares.claims[place].argmax(keepdims=True)
        bounds[number] = _union(pieces.bounds[own])
    boxes = np.concatenate([pieces.extent[shares.left_out], _far_from_all(pieces, looked, shares.looked_at)])
    return Places(_with_groups(bounds, tokens), _neighbours_joined(boxes))


def _neighbours_joined(boxes: Bounds) -> Bounds:
    joined: list[NDArray[np.float64]] = []
    for box in boxes[np.argsort(boxes[:, 0], kind="stable")]:
        if joined and box[0] - joined[-1][2] < _BESIDE:
            joined[-1] = np.concatenate([np.minimum(joined[-1][:2], box[:2]), np.maximum(joined[-1][2:], box[2:])])
        else:
            joined.append(box)
    return np.array(joined).reshape(-1, 4)


@dataclass(frozen=True, slots=True)
class _Shares:
    """How the ink is shared out among the drawn tokens.

    claims: (tokens, pieces); owner: of each piece its token, or -1; left_out: components that no token explains;
    looked_at: components that some token looked at.
    """

    claims: NDArray[np.float64]
    owner: NDArray[np.intp]
    left_out: NDArray[np.bool_]
    looked_at: NDArray[np.bool_]


def _shares(pieces: Pieces, signs: Sequence[str], attention: NDArray[np.float32]) -> _Shares:
    """Ink that was hardly looked at goes to a sign without ink, or to the word beside it; the rest is left out.

    The decoder may look past a sign, at the next one or at a corner, and takes a word as a whole.
    """
    claims = _claims(pieces, attention)
    whole = np.zeros((len(signs), len(pieces.extent)))  # how strongly each claims each component
    np.add.at(whole.T, pieces.component, (claims * pieces.area).T)
    owner = _owners(pieces, claims, whole)
    unseen = _is_unseen(pieces, attention)
    owner[unseen[pieces.component]] = -1
    left_out = unseen.copy()

    def give(component: int, place: int) -> None:
        left_out[component] = False
        owner[pieces.component == component] = place

    for place in sorted(set(range(len(signs))) - set(owner.tolist())):
        wanted = int(np.where(left_out, whole[place], 0.0).argmax())
        if left_out[wanted] and whole[place, wanted] > 0:
            give(wanted, place)
    for component in np.flatnonzero(left_out):
        place = int(whole[:, component].argmax())
        own = np.flatnonzero(owner == place)
        if signs[place] in _WORDS and len(own) and whole[place, component] > 0:
            box, letter = _union(pieces.bounds[own]), pieces.extent[component]
            if max(letter[0] - box[2], box[0] - letter[2]) <= _BESIDE_WORD:
                give(int(component), place)
    return _Shares(claims, owner, left_out, ~unseen)


def _is_unseen(pieces: Pieces, attention: NDArray[np.float32]) -> NDArray[np.bool_]:
    """Of each component: it is as tall as a sign, and no token spent more than a little of its attention on it.

    A cell's attention is shared out among the ink in it by area.
    """
    ink = np.bincount(pieces.cell, pieces.area, minlength=attention.shape[1])
    spent = attention[:, pieces.cell].astype(np.float64) * (pieces.area / ink[pieces.cell])
    most = np.zeros((len(pieces.extent), len(attention)))
    np.add.at(most, pieces.component, spent.T)
    tall = pieces.extent[:, 3] - pieces.extent[:, 1] >= _TALL
    return np.asarray(tall & (most.max(axis=1, initial=0.0) < _UNSEEN), np.bool_)


def _far_from_all(pieces: Pieces, attention: NDArray[np.float32], among: NDArray[np.bool_]) -> Bounds:
    """Bounds of much ink far from where any token looked, in each component of `among`.

    It is a struck sign whose strike touches one that is read.
    """
    if not len(attention):
        return np.zeros((0, 4))
    looked = attention[:, pieces.cell].astype(np.float64)
    distance = np.linalg.norm(_centres(pieces)[:, None] - _middles(pieces, looked), axis=2).min(axis=1)
    far = (distance > _FAR) & (looked.max(axis=0) < _UNLOOKED) & among[pieces.component]
    out = []
    for component in np.unique(pieces.component[far]):
        own = far & (pieces.component == component)
        box = _union(pieces.bounds[own])
        if pieces.area[own].sum() >= _MUCH and box[3] - box[1] >= _HIGH:
            out.append(box)
    return np.array(out).reshape(-1, 4)


def bounds_in_shares(pixels: NDArray[np.uint8], tokens: Sequence[str]) -> Bounds:
    """Bounds when there is no attention: equal shares of the ink's width, in reading order."""
    ys, xs = np.nonzero(pixels > _INK_LEVEL)
    left, top, right, bottom = (xs.min(), ys.min(), xs.max() + 1, ys.max() + 1) if len(xs) else (0, 0, 1, 1)
    own_ink = drawn(tokens)
    edges = np.linspace(left, right, len(own_ink) + 1)
    out = np.full((len(tokens), 4), np.nan)
    for place, number in enumerate(own_ink):
        out[number] = edges[place], top, edges[place + 1], bottom
    return _with_groups(out, tokens)


def _claims(pieces: Pieces, attention: NDArray[np.float32]) -> NDArray[np.float64]:
    """How strongly each token claims each piece.

    Its attention there, as a share of what all tokens spent there, less the farther the piece's component lies from
    the middle of the token's attention.
    """
    looked: NDArray[np.float64] = attention[:, pieces.cell].astype(np.float64)
    share: NDArray[np.float64] = looked / np.maximum(looked.sum(axis=0), 1e-9) * np.sqrt(looked)
    middle = _middles(pieces, looked)
    around = pieces.extent[pieces.component]
    beyond = np.maximum(np.maximum(around[:, :2] - middle[:, None], middle[:, None] - around[:, 2:]), 0)
    near: NDArray[np.float64] = np.exp(-0.5 * (beyond**2).sum(axis=2) / _NEAR**2)
    return np.asarray(share * near, np.float64)


def _middles(pieces: Pieces, looked: NDArray[np.float64]) -> NDArray[np.float64]:
    """The middle of each token's attention, which is given as what it spent on each piece; shape (tokens, 2)."""
    weight = looked**2 * np.sqrt(pieces.area)
    weight /= np.maximum(weight.sum(axis=1, keepdims=True), 1e-12)
    return np.asarray(weight @ _centres(pieces), np.float64)


def _centres(pieces: Pieces) -> NDArray[np.float64]:
    return (pieces.bounds[:, :2] + pieces.bounds[:, 2:]) / 2


def _owners(pieces: Pieces, claims: NDArray[np.float64], whole: NDArray[np.float64]) -> NDArray[np.intp]:
    """The token that gets each piece: that of its whole component, or its own where several share one; -1 for none."""
    rivals = whole >= _SHARED * whole.max(axis=0)
    alone = rivals.sum(axis=0) == 1
    allowed = np.where(rivals[:, pieces.component], claims, -1.0)
    owner = np.where(alone[pieces.component], whole.argmax(axis=0)[pieces.component], allowed.argmax(axis=0))
    owner[allowed.max(axis=0) <= _UNCLAIMED] = -1
    return np.asarray(owner, np.intp)


def _with_groups(bounds: Bounds, tokens: Sequence[str]) -> Bounds:
    """Give braces and script marks the union of what they enclose."""
    open_at: list[int] = []
    for number, token in enumerate(tokens):
        if token in ("{", "[") and np.isnan(bounds[number, 0]):
            open_at.append(number)
        elif token in ("}", "]") and np.isnan(bounds[number, 0]) and open_at:
            start = open_at.pop()
            inside = _union(bounds[start + 1 : number])
            bounds[[start, number]] = inside
            if start and tokens[start - 1] in ("^", "_"):
                bounds[start - 1] = inside
    return bounds


def _union(bounds: Bounds) -> Bounds:
    known = bounds[~np.isnan(bounds).any(axis=1)]
    if not len(known):
        return np.full(4, np.nan)
    return np.concatenate([known[:, :2].min(axis=0), known[:, 2:].max(axis=0)])
