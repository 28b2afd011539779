"""A flat page as a phone would photograph it: turned, lit unevenly, blurred, noisy, packed as JPEG.

Each spoiling is a function of its own, so that training may use them one by one. All draw from the generator given.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = [
    "Bend", "Finger", "Photo", "PhotoStyle", "blurred", "cast", "mapped", "noisy", "packed", "photograph", "shaded",
    "table",
]

Picture = NDArray[np.uint8]


@dataclass(frozen=True, slots=True)
class PhotoStyle:
    """How a photo is taken.

    margin: share of the photo around the sheet; tilt: how far corners stray, as a share of it; turn_deg: rotation.
    shadow: darkest factor of light, 1 is none; blur: standard deviation in pixels; noise: in grey levels; warmth: gain
    of red over blue; quality: of the JPEG. no_table: the sheet fills the photo.
    """

    margin: float = 0.04
    tilt: float = 0.02
    turn_deg: float = 0.0
    shadow: float = 0.7
    blur: float = 0.7
    noise: float = 3.0
    warmth: float = 1.04
    quality: int = 85
    no_table: bool = False

    @classmethod
    def random(cls, rng: np.random.Generator, *, hard: bool = False) -> PhotoStyle:
        """A style drawn by lot; hard ones are darker, more turned and less sharp."""
        k = 1.8 if hard else 1.0
        return cls(
            margin=float(rng.uniform(0.01, 0.07)),
            tilt=float(rng.uniform(0.0, 0.025)) * k,
            turn_deg=float(rng.normal(0, 1.4)) * k,
            shadow=float(rng.uniform(0.55, 0.95)) / (1.25 if hard else 1.0),
            blur=float(rng.uniform(0.4, 1.0)) * k,
            noise=float(rng.uniform(1.0, 5.0)) * k,
            warmth=float(rng.uniform(0.94, 1.12)),
            quality=int(rng.integers(60 if hard else 75, 93)),
            no_table=bool(rng.random() < 0.2),
        )


@dataclass(frozen=True, slots=True)
class Bend:
    """How a sheet that does not lie flat is seen: points move down by a wave along the sheet, and one corner is up.

    size: (width, height) of the page; sag: of the wave in pixels; waves, phase: in half turns over the width;
    lift: of the lower right corner in pixels.
    """

    size: tuple[int, int]
    sag: float
    waves: float
    phase: float
    lift: float = 0.0

    def down(self, x: NDArray[Any], y: NDArray[Any]) -> NDArray[Any]:
        """How far points of the flat page move down."""
        u, v = x / self.size[0], y / self.size[1]
        wave = self.sag * np.sin(np.pi * (self.waves * u + self.phase)) * (0.7 + 0.3 * v)
        corner = np.clip((u - 0.55) / 0.45, 0, None) ** 2 * np.clip((v - 0.5) / 0.5, 0, None) ** 2
        moved: NDArray[Any] = wave - self.lift * corner
        return moved

    def moved(self, points: NDArray[np.float64]) -> NDArray[np.float64]:
        """Points, shape (n, 2), of the flat page where they are seen."""
        return np.column_stack([points[:, 0], points[:, 1] + self.down(points[:, 0], points[:, 1])])

    def picture(self, page: Picture, *, pad: int, border: int) -> Picture:
        """A picture of the flat page, bent, with `pad` more pixels above and below, filled with one grey."""
        height, width = page.shape[:2]
        x, y = np.meshgrid(np.arange(width, dtype=np.float32), np.arange(-pad, height + pad, dtype=np.float32))
        source = y.copy()
        for _ in range(4):
            source = (y - self.down(x, source)).astype(np.float32)
        fill = (border,) * (3 if page.ndim == 3 else 1)
        bent = cv2.remap(page, x, source, cv2.INTER_LINEAR, borderMode=cv2.BORDER_CONSTANT, borderValue=fill)
        return np.asarray(bent, dtype=np.uint8)


@dataclass(frozen=True, slots=True)
class Finger:
    """A finger that holds the sheet: tip in shares of the photo, width in pixels, colour RGB; it comes from outside."""

    tip: tuple[float, float]
    width: float
    colour: tuple[int, int, int] = (205, 158, 132)

    def outline(self, size: tuple[int, int]) -> NDArray[np.float64]:
        """Its outline, shape (n, 2), in pixels of the photo."""
        tip = np.array(self.tip) * size
        away = tip - np.array(size) / 2
        along = away / np.linalg.norm(away)
        across = np.array([-along[1], along[0]])
        angles = np.linspace(-np.pi / 2, np.pi / 2, 15)
        centre = tip + along * self.width / 2
        end = [centre - self.width / 2 * (along * np.cos(a) + across * np.sin(a)) for a in angles]
        far = along * max(size)
        return np.array([*end, end[-1] + far, end[0] + far])


@dataclass(frozen=True, slots=True)
class Photo:
    """image: RGB, shape (h, w, 3); homography: shape (3, 3), from page pixels (bent, where it bends) to the photo."""

    image: Picture
    homography: NDArray[np.float64]
    bend: Bend | None = None

    def placed(self, points: NDArray[np.float64]) -> NDArray[np.float64]:
        """Points of the flat page on the photo, shape (n, 2)."""
        return mapped(points if self.bend is None else self.bend.moved(points), self.homography)


def photograph(
    page: Picture, style: PhotoStyle, size: tuple[int, int], rng: np.random.Generator, *, bend: Bend | None = None,
    finger: Finger | None = None,
) -> Photo:
    """Take a photo of a page.

    Args:
        page: RGB, shape (h, w, 3), seen straight from above.
        size: (width, height) of the photo.
        bend: how the sheet bends; None where it lies flat.
        finger: what holds the sheet, if anything.
    """
    homography = _view(page.shape, style, size, rng)
    flags = cv2.INTER_LINEAR
    cover = np.full(page.shape[:2], 255, np.uint8)
    view = homography
    if bend is not None:
        pad = int(abs(bend.sag) + abs(bend.lift)) + 8
        edge = int(page[0, 0].mean())
        page, cover = bend.picture(page, pad=pad, border=edge), bend.picture(cover, pad=pad, border=0)
        view = homography @ np.array([[1, 0, 0], [0, 1, -pad], [0, 0, 1.0]])
        page = _lit_by_slope(page, bend, pad)
    sheet = _shrunk(page, view, size, flags)
    if style.no_table:
        image = sheet
    else:
        fallen = cv2.warpPerspective(cover, np.array([[1, 0, 9], [0, 1, 12], [0, 0, 1]]) @ view, size)
        cover = cv2.warpPerspective(cover, view, size, flags=flags)
        share = (cv2.GaussianBlur(cover, (0, 0), 0.8).astype(np.float32) / 255)[:, :, None]
        desk = table(size, rng).astype(np.float32)
        desk *= (1 - 0.4 * cv2.GaussianBlur(fallen, (0, 0), 9).astype(np.float32) / 255)[:, :, None]
        image = (sheet * share + desk * (1 - share)).astype(np.uint8)
    if finger is not None:
        image = _held(image, finger)
    image = shaded(image, style.shadow, rng)
    image = cast(image, style.warmth)
    image = blurred(image, style.blur)
    image = noisy(image, style.noise, rng)
    return Photo(packed(image, style.quality), homography, bend)


def _lit_by_slope(page: Picture, bend: Bend, pad: int) -> Picture:
    """Light falls more on one flank of a wave than on the other."""
    height, width = page.shape[:2]
    x = np.linspace(0, width, 97)
    heights = bend.down(x, np.full_like(x, height / 2 - pad))
    slope = np.gradient(heights, x)
    gain = np.interp(np.arange(width), x, 1 - 1.2 * np.clip(slope, -0.2, 0.2)) / 1.1
    return np.asarray(np.clip(page * gain[None, :, None], 0, 255), dtype=np.uint8)


def _held(image: Picture, finger: Finger) -> Picture:
    """A finger over the picture: round in its light, with a soft shadow beside it."""
    height, width = image.shape[:2]
    shape = np.zeros((height, width), np.uint8)
    cv2.fillPoly(shape, [np.rint(finger.outline((width, height))).astype(np.int32)], 255)
    if not shape.any():
        return image
    shadow = cv2.GaussianBlur(shape, (0, 0), finger.width / 6).astype(np.float32) / 255
    depth = cv2.distanceTransform(shape, cv2.DIST_L2, 5) / (finger.width / 2)
    skin = np.array(finger.colour, np.float32) * (0.72 + 0.3 * np.clip(depth, 0, 1))[:, :, None]
    cover = (cv2.GaussianBlur(shape, (0, 0), 1.2).astype(np.float32) / 255)[:, :, None]
    shaded_sheet = image * (1 - 0.35 * shadow)[:, :, None]
    return np.asarray(np.clip(shaded_sheet * (1 - cover) + skin * cover, 0, 255), dtype=np.uint8)


def mapped(points: NDArray[np.float64], homography: NDArray[np.float64]) -> NDArray[np.float64]:
    """Points, shape (n, 2), after a homography."""
    lifted = np.column_stack([points, np.ones(len(points))]) @ homography.T
    flat: NDArray[np.float64] = lifted[:, :2] / lifted[:, 2:]
    return flat


def table(size: tuple[int, int], rng: np.random.Generator) -> Picture:
    """A table top: one colour with a grain along one direction."""
    width, height = size
    colours = ((150, 105, 66), (92, 64, 46), (120, 118, 116), (58, 66, 78), (176, 150, 118), (70, 92, 74))
    base = np.array(colours[int(rng.integers(len(colours)))], np.float32) * float(rng.uniform(0.85, 1.1))
    grain = rng.normal(0, 1, (max(2, height // 3), max(2, width // 160))).astype(np.float32)
    grain = cv2.resize(grain, (width, height), interpolation=cv2.INTER_CUBIC)
    if rng.random() < 0.5:
        fine = rng.normal(0, 1, (max(2, height // 160), max(2, width // 3))).astype(np.float32)
        grain = cv2.resize(fine, (width, height), interpolation=cv2.INTER_CUBIC)
    strength = float(rng.uniform(2, 9))
    return np.asarray(np.clip(base[None, None, :] + strength * grain[:, :, None], 0, 255), dtype=np.uint8)


def shaded(image: Picture, darkest: float, rng: np.random.Generator) -> Picture:
    """Uneven light: a slow gradient, and the soft edge of a shadow down to `darkest` times the light."""
    height, width = image.shape[:2]
    small = (96, 128)
    y, x = np.mgrid[0: small[0], 0: small[1]].astype(np.float32)
    x, y = x / small[1], y / small[0]
    angle = float(rng.uniform(0, 2 * np.pi))
    along = (x - 0.5) * np.cos(angle) + (y - 0.5) * np.sin(angle)
    light = 1 + along * float(rng.uniform(0, 0.25))
    edge_angle = float(rng.uniform(0, 2 * np.pi))
    edge = (x - 0.5) * np.cos(edge_angle) + (y - 0.5) * np.sin(edge_angle) + float(rng.uniform(-0.1, 0.35))
    edge = edge + 0.05 * np.sin(2 * np.pi * (x * float(rng.uniform(0, 2)) + y * float(rng.uniform(0, 2))))
    softness = float(rng.uniform(0.03, 0.15))
    light = light * (1 - (1 - darkest) / (1 + np.exp(edge / softness)))
    field = cv2.resize((light / light.max()).astype(np.float32), (width, height), interpolation=cv2.INTER_CUBIC)
    lit = image.astype(np.float32) * (field[:, :, None] if image.ndim == 3 else field)
    return np.asarray(np.clip(lit, 0, 255), dtype=np.uint8)


def cast(image: Picture, warmth: float) -> Picture:
    """Colour cast of the light: more than 1 is warm, less is cold."""
    gains = np.array([warmth, 1.0, 1 / warmth], np.float32)
    return np.asarray(np.clip(image.astype(np.float32) * gains / gains.max(), 0, 255), dtype=np.uint8)


def blurred(image: Picture, sigma: float) -> Picture:
    """Out of focus."""
    return np.asarray(cv2.GaussianBlur(image, (0, 0), sigma), dtype=np.uint8) if sigma > 0.05 else image


def noisy(image: Picture, sigma: float, rng: np.random.Generator) -> Picture:
    """Noise of the sensor, a little smoothed as cameras do."""
    grain = rng.normal(0, 1, image.shape[:2]).astype(np.float32)
    grain = cv2.GaussianBlur(grain, (0, 0), 0.6) * (2.0 * sigma)
    spoiled = image.astype(np.float32) + (grain[:, :, None] if image.ndim == 3 else grain)
    return np.asarray(np.clip(spoiled, 0, 255), dtype=np.uint8)


def packed(image: Picture, quality: int) -> Picture:
    """Through JPEG and back."""
    colour_order = image[:, :, ::-1] if image.ndim == 3 else image
    good, data = cv2.imencode(".jpg", colour_order, [cv2.IMWRITE_JPEG_QUALITY, quality])
    assert good
    back: Any = cv2.imdecode(data, cv2.IMREAD_COLOR if image.ndim == 3 else cv2.IMREAD_GRAYSCALE)
    return np.ascontiguousarray(back[:, :, ::-1] if image.ndim == 3 else back, dtype=np.uint8)


def _view(
    shape: tuple[int, ...], style: PhotoStyle, size: tuple[int, int], rng: np.random.Generator
) -> NDArray[np.float64]:
    """Homography from the page to the photo."""
    (height, width), (out_w, out_h) = shape[:2], size
    margin = -0.02 if style.no_table else style.margin
    room_w, room_h = out_w * (1 - 2 * margin), out_h * (1 - 2 * margin)
    scale = max(room_w / width, room_h / height) if style.no_table else min(room_w / width, room_h / height)
    half_w, half_h = width * scale / 2, height * scale / 2
    corners = np.array([[-half_w, -half_h], [half_w, -half_h], [half_w, half_h], [-half_w, half_h]])
    angle = np.radians(style.turn_deg)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    stray = style.tilt * min(size)
    target = corners @ turn.T + np.array([out_w / 2, out_h / 2]) + rng.uniform(-stray, stray, (4, 2))
    source = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32)
    matrix = cv2.getPerspectiveTransform(source, target.astype(np.float32))
    return np.asarray(matrix, dtype=np.float64)


def _shrunk(page: Picture, homography: NDArray[np.float64], size: tuple[int, int], flags: int) -> Picture:
    """Warp, after an area-average reduction where the photo is much smaller, so that thin lines stay whole."""
    scale = float(np.sqrt(abs(np.linalg.det(homography[:2, :2]))))
    source, matrix = page, homography
    if scale < 0.75:
        height, width = page.shape[:2]
        new = (max(1, round(width * scale)), max(1, round(height * scale)))
        source = np.asarray(cv2.resize(page, new, interpolation=cv2.INTER_AREA), dtype=np.uint8)
        sx, sy = width / new[0], height / new[1]
        matrix = homography @ np.array([[sx, 0, 0.5 * sx - 0.5], [0, sy, 0.5 * sy - 0.5], [0, 0, 1]])
    return np.asarray(
        cv2.warpPerspective(source, matrix, size, flags=flags, borderMode=cv2.BORDER_REPLICATE), dtype=np.uint8
    )
