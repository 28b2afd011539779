"""Handwriting fonts as outlines: one bank of glyphs, made once from the font files and kept in the package.

Made by `python -m recognition.training.fonts NODE_MODULES` from the npm packages `@fontsource/NAME`, whose licences
(SIL Open Font Licence 1.1 or Apache 2.0) are kept beside the bank.
"""

from __future__ import annotations

import argparse
import functools
import itertools
import shutil
import string
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["FONT_FOLDER", "Font", "Outline", "load_fonts", "page_fonts"]

FONT_FOLDER: Final = Path(__file__).parent / "font_bank"

_CHARACTERS: Final[Mapping[str, str]] = {
    **{sign: sign for sign in string.digits + string.ascii_letters + "+=<>()[]|,.!/:%"},
    "-": "\u2212-\u2013", r"\le": "\u2264", r"\ge": "\u2265", r"\ne": "\u2260", r"\times": "\u00d7",
    r"\div": "\u00f7", r"\cdot": "\u00b7", r"\pm": "\u00b1", r"\{": "{", r"\}": "}", r"\pi": "\u03c0",
    r"\infty": "\u221e", r"\ldots": "\u2026", r"\mu": "\u00b5", r"\sum": "\u2211", r"\int": "\u222b",
    r"\Delta": "\u2206", r"\approx": "\u2248",
}  # fmt: skip
"""For each token the characters that show it, the best first."""

_ON_PAGES: Final = frozenset((
    "annie-use-your-telescope", "architects-daughter", "caveat", "cedarville-cursive", "covered-by-your-grace",
    "delius", "gaegu", "gochi-hand", "handlee", "homemade-apple", "indie-flower", "itim", "kalam", "mansalva",
    "nanum-pen-script", "neucha", "patrick-hand", "reenie-beanie", "schoolbell", "shadows-into-light",
    "short-stack", "sue-ellen-francisco", "the-girl-next-door", "yomogi", "zen-kurenaido",
))  # fmt: skip
_CURVE_STEPS: Final = 5


@dataclass(frozen=True, slots=True)
class Outline:
    """A glyph as closed contours.

    points: float32 (N, 2), y downwards, baseline at 0, the digit 8 is 1 high; contours: offsets int64 (C + 1).
    """

    points: NDArray[np.float32]
    contours: NDArray[np.int64]
    advance: float


@dataclass(frozen=True, slots=True)
class Font:
    """One handwriting font: token to outline."""

    name: str
    glyphs: Mapping[str, Outline]


@functools.cache
def load_fonts(folder: Path = FONT_FOLDER) -> tuple[Font, ...]:
    """The shipped bank of fonts, in alphabetical order."""
    fonts: dict[str, dict[str, Outline]] = {}
    with np.load(folder / "outlines.npz") as bank:
        points, offsets, contours = bank["points"], bank["offsets"], bank["contours"]
        starts = np.searchsorted(contours, offsets)
        named = zip(bank["fonts"], bank["tokens"], bank["advances"], strict=True)
        for number, (name, token, advance) in enumerate(named):
            begin, end = int(offsets[number]), int(offsets[number + 1])
            inner = contours[starts[number] : starts[number + 1]] - begin
            glyph = Outline(
                points[begin:end].astype(np.float32) / np.float32(1000),
                np.append(inner, end - begin).astype(np.int64),
                float(advance) / 1000,
            )
            fonts.setdefault(str(name), {})[str(token)] = glyph
    return tuple(Font(name, glyphs) for name, glyphs in sorted(fonts.items()))


def page_fonts() -> tuple[Font, ...]:
    """Those that simulated pages are written in: a fixed part, so that new fonts leave the page of a seed as it is."""
    return tuple(font for font in load_fonts() if font.name in _ON_PAGES)


def _contours(recording: Iterable[tuple[str, tuple[Any, ...]]]) -> Iterator[list[tuple[float, float]]]:
    """Flatten the drawing commands of a glyph into closed polygons."""
    current: list[tuple[float, float]] = []
    for command, points in recording:
        if command == "moveTo":
            current = [points[0]]
        elif command == "lineTo":
            current.append(points[0])
        elif command == "curveTo":
            current += _bezier([current[-1], *points])
        elif command == "qCurveTo":
            current = _quadratic_spline(current, list(points))
        elif len(current) > 2:
            yield current


def _bezier(control: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Points of a Bezier curve of any degree by de Casteljau's scheme, without its start."""
    out = []
    for step in range(1, _CURVE_STEPS + 1):
        t = step / _CURVE_STEPS
        level = control
        while len(level) > 1:
            level = [((1 - t) * a[0] + t * b[0], (1 - t) * a[1] + t * b[1]) for a, b in itertools.pairwise(level)]
        out.append(level[0])
    return out


def _quadratic_spline(
    current: list[tuple[float, float]], points: list[tuple[float, float] | None]
) -> list[tuple[float, float]]:
    """TrueType splines: points on the curve lie midway between two control points."""
    control = [point for point in points if point is not None]
    if len(control) < len(points):  # closed, with no point on the curve
        first = _midpoint(control[-1], control[0])
        current, control = [first], [*control, first]
    for number, middle in enumerate(control[:-1]):
        last = number == len(control) - 2
        end = control[-1] if last else _midpoint(middle, control[number + 1])
        current = current + _bezier([current[-1], middle, end])
    return current


def _midpoint(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2


def _glyphs(font_file: Path) -> dict[str, Outline]:
    from fontTools.pens.recordingPen import DecomposingRecordingPen
    from fontTools.ttLib import TTFont

    font = TTFont(font_file)
    names, glyph_set = font.getBestCmap(), font.getGlyphSet()

    def outline(character: str) -> Outline | None:
        if ord(character) not in names:
            return None
        pen = DecomposingRecordingPen(glyph_set)
        glyph = glyph_set[names[ord(character)]]
        glyph.draw(pen)
        contours = list(_contours(pen.value))
        if not contours:
            return None
        points = np.concatenate([np.asarray(contour, np.float32) for contour in contours])
        return Outline(points, np.cumsum([0, *map(len, contours)]), float(glyph.width))

    eight = outline("8")
    if eight is None:
        return {}
    scale = np.float32(1 / np.ptp(eight.points[:, 1]))
    out = {}
    for token, characters in _CHARACTERS.items():
        for character in characters:
            glyph = outline(character)
            if glyph is None:
                continue
            points = glyph.points * np.array((scale, -scale), np.float32)
            if token == "-" and not -0.8 < points[:, 1].mean() < -0.15:
                continue  # a dash that lies on the baseline or too high to serve as a minus sign
            out[token] = Outline(points, glyph.contours, glyph.advance * float(scale))
            break
    return out


def build(packages: Path, folder: Path) -> None:
    """Write the bank and the licences from a folder of `@fontsource` packages."""
    points: list[NDArray[np.float32]] = []
    offsets, contours, fonts, tokens, advances = [0], [], [], [], []
    (folder / "licences").mkdir(parents=True, exist_ok=True)
    for package in sorted((packages / "@fontsource").iterdir()):
        files = sorted(package.glob("files/*-latin-400-normal.woff2"))
        if not files:
            continue
        for token, glyph in _glyphs(files[0]).items():
            contours += [int(start) + offsets[-1] for start in glyph.contours[:-1]]
            points.append(glyph.points)
            offsets.append(offsets[-1] + len(glyph.points))
            fonts.append(package.name)
            tokens.append(token)
            advances.append(glyph.advance * 1000)
        shutil.copy(package / "LICENSE", folder / "licences" / f"{package.name}.txt")
        print(package.name, fonts.count(package.name), "glyphs")
    np.savez_compressed(
        folder / "outlines.npz",
        points=np.round(np.concatenate(points) * 1000).clip(-32000, 32000).astype(np.int16),
        offsets=np.array(offsets, np.int64),
        contours=np.array(contours, np.int64),
        fonts=np.array(fonts),
        tokens=np.array(tokens),
        advances=np.array(advances, np.float32),
    )


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("node_modules", type=Path, help="the folder of `npm install @fontsource/NAME ...`")
    build(parser.parse_args().node_modules, FONT_FOLDER)
