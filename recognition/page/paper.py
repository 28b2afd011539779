"""Where is the sheet of paper in the photo? Its four corners, or nothing when the photo is to be used as it is."""

from __future__ import annotations

import math

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["find_corners", "flattening", "single_hue_share"]

_SIDE = 480
"""Longer side in pixels of the picture on which the sheet is looked for."""
_LEAST_SHARE = 0.22
_MOST_SHARE = 0.985
_LEAST_STEP = 8.0
"""By how much paper and table must differ across an edge: per cent of brightness, or units of a or b of CIELAB."""
_SURE = 3.4
"""A score that needs four seen and sharp sides."""


def find_corners(image: NDArray[np.uint8]) -> NDArray[np.float64] | None:
    """Corners of the sheet in pixels of the image, shape (4, 2), clockwise from the top left.

    Args:
        image: RGB, shape (h, w, 3).
    Returns:
        None where no convincing sheet with a table around it is seen: edges must be sharp, which shadows are not.
    """
    height, width = image.shape[:2]
    scale = min(1.0, _SIDE / max(height, width))
    size = (max(1, round(width * scale)), max(1, round(height * scale)))
    if min(size) < 60:
        return None
    small = cv2.GaussianBlur(cv2.resize(image, size, interpolation=cv2.INTER_AREA), (0, 0), 1.2)
    lab = cv2.cvtColor(small, cv2.COLOR_RGB2LAB)
    light = lab[:, :, 0]
    look = lab.astype(np.float32)
    look[:, :, 0] = 100 * np.log(look[:, :, 0] + 12)  # equal steps are equal ratios, in light and in shadow
    chroma = np.hypot(lab[:, :, 1].astype(np.float32) - 128, lab[:, :, 2].astype(np.float32) - 128)
    whiteness = np.clip(light.astype(np.float32) - 1.5 * chroma + 60, 0, 255).astype(np.uint8)
    best: NDArray[np.float64] | None = None
    best_score = 0.0
    greyness = np.clip(255 - 900 * chroma / (light.astype(np.float32) + 30), 0, 255).astype(np.uint8)
    for channel in (light, whiteness, greyness):
        for mask in _masks(channel):
            corners = _quadrilateral(mask)
            if corners is None:
                continue
            score = _score(corners, look)
            if score > best_score:
                best, best_score = corners, score
    if best_score < _SURE:
        for corners in _from_edges(look):
            score = _score(corners, look)
            if score > best_score:
                best, best_score = corners, score
    return None if best is None else best / scale


def flattening(corners: NDArray[np.float64]) -> tuple[NDArray[np.float64], tuple[int, int]]:
    """Homography from the photo to the flat sheet, and the (width, height) of the flat sheet, scale kept."""
    top, right, bottom, left = (float(np.linalg.norm(corners[i] - corners[(i + 1) % 4])) for i in range(4))
    width, height = max(16, round(max(top, bottom))), max(16, round(max(left, right)))
    target = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32)
    matrix = cv2.getPerspectiveTransform(corners.astype(np.float32), target)
    return np.asarray(matrix, dtype=np.float64), (width, height)


def single_hue_share(image: NDArray[np.uint8], corners: NDArray[np.float64] | None) -> float:
    """Share of the sheet (of the photo where no sheet was found) that has the hue of most of it, whatever the light.

    Paper has one hue with little ink on it; a photo of anything else mostly has several.
    """
    height, width = image.shape[:2]
    scale = min(1.0, _SIDE / 2 / max(height, width))
    size = (max(1, round(width * scale)), max(1, round(height * scale)))
    small = cv2.resize(image, size, interpolation=cv2.INTER_AREA).astype(np.float32)
    inside = np.ones(small.shape[:2], np.uint8)
    if corners is not None:
        inside[:] = 0
        cv2.fillConvexPoly(inside, np.rint(corners * scale).astype(np.int32), 1)
    total = small.sum(axis=2) + 30  # dark pixels have no hue to speak of
    hue = np.stack([small[:, :, 0] / total, small[:, :, 2] / total], axis=2)[inside > 0]
    if hue.size == 0:
        return 0.0
    return float(np.mean(np.abs(hue - np.median(hue, axis=0)).max(axis=1) < 0.04))


def _masks(channel: NDArray[np.uint8]) -> list[NDArray[np.uint8]]:
    """The bright part after Otsu's threshold, and again after a second Otsu threshold within it."""
    first, mask = cv2.threshold(channel, 0, 255, cv2.THRESH_BINARY | cv2.THRESH_OTSU)
    bright = channel[channel > first]
    masks = [mask]
    for part in (bright, channel[channel <= first]):
        if part.size > 100:
            level, _ = cv2.threshold(part.reshape(-1, 1), 0, 255, cv2.THRESH_BINARY | cv2.THRESH_OTSU)
            masks.append(((channel > level) * 255).astype(np.uint8))
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (9, 9))
    return [np.asarray(cv2.morphologyEx(m, cv2.MORPH_CLOSE, kernel), dtype=np.uint8) for m in masks]


def _quadrilateral(mask: NDArray[np.uint8]) -> NDArray[np.float64] | None:
    opened = cv2.morphologyEx(mask, cv2.MORPH_OPEN, np.ones((7, 7), np.uint8))
    contours, _ = cv2.findContours(opened, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    if not contours:
        return None
    contour = max(contours, key=cv2.contourArea)
    area = mask.shape[0] * mask.shape[1]
    if cv2.contourArea(contour) < _LEAST_SHARE * area:
        return None
    hull = cv2.convexHull(contour)
    rim = cv2.arcLength(hull, True)
    for tolerance in (0.015, 0.02, 0.03, 0.045, 0.06, 0.08):
        rough = cv2.approxPolyDP(hull, tolerance * rim, True)
        if len(rough) == 4:
            corners = _ordered(rough.reshape(4, 2).astype(np.float64))
            refined = _refined(corners, contour.reshape(-1, 2).astype(np.float64))
            share = float(cv2.contourArea(refined.astype(np.float32)))
            filled = cv2.contourArea(hull) / max(share, 1.0)
            if 0.9 < filled < 1.1 and _LEAST_SHARE * area < share < _MOST_SHARE * area:
                return refined
            return None
    return None


def _ordered(corners: NDArray[np.float64]) -> NDArray[np.float64]:
    """Clockwise (in picture coordinates) from the corner nearest to the top left."""
    centre = corners.mean(axis=0)
    angles = np.arctan2(corners[:, 1] - centre[1], corners[:, 0] - centre[0])
    corners = corners[np.argsort(angles)]
    return np.asarray(np.roll(corners, -int(np.argmin(corners.sum(axis=1))), axis=0), dtype=np.float64)


def _refined(corners: NDArray[np.float64], contour: NDArray[np.float64]) -> NDArray[np.float64]:
    """Fit a straight line to the middle of each side of the contour and cut the lines with each other."""
    lines = []
    for i in range(4):
        start, end = corners[i], corners[(i + 1) % 4]
        along = end - start
        length = max(float(np.linalg.norm(along)), 1.0)
        unit = along / length
        offset = contour - start
        position = offset @ unit
        distance = np.abs(offset @ np.array([-unit[1], unit[0]]))
        near = contour[(position > 0.08 * length) & (position < 0.92 * length) & (distance < 0.03 * length + 2)]
        if len(near) < 10:
            lines.append((start, unit))
            continue
        vx, vy, x, y = (float(v) for v in cv2.fitLine(near.astype(np.float32), cv2.DIST_HUBER, 0, 0.01, 0.01).ravel())
        lines.append((np.array([x, y]), np.array([vx, vy])))
    fitted = []
    for i in range(4):
        (p, u), (q, v) = lines[i - 1], lines[i]
        cross = u[0] * v[1] - u[1] * v[0]
        if abs(cross) < 0.2:
            return corners
        delta = q - p
        fitted.append(p + u * ((delta[0] * v[1] - delta[1] * v[0]) / cross))
    result = np.array(fitted)
    return result if float(np.abs(result - corners).max()) < 30 else corners


def _from_edges(look: NDArray[np.float32]) -> list[NDArray[np.float64]]:
    """Quadrilaterals of long straight edges across which the picture changes; serves where light is too uneven."""
    height, width = look.shape[:2]
    edges = cv2.Canny(np.clip((look[:, :, 0] - 248) * 0.8, 0, 255).astype(np.uint8), 14, 40)
    found = cv2.HoughLines(edges, 1, np.pi / 180, int(0.22 * min(height, width)))
    if found is None:
        return []
    level: list[tuple[float, NDArray[np.float64]]] = []
    upright: list[tuple[float, NDArray[np.float64]]] = []
    for rho, theta in found.reshape(-1, 2)[:120]:
        normal = np.array([np.cos(theta), np.sin(theta)])
        near = level if abs(normal[1]) > 0.8 else upright if abs(normal[0]) > 0.8 else None
        if near is None:
            continue
        strength = _edge_strength(float(rho), normal, look)
        if strength > 0.25:
            near.append((strength, np.array([*normal, rho])))
    sides = [_distinct(lines, (height + width) / 2) for lines in (level, upright)]
    quadrilaterals = []
    for i, top in enumerate(sides[0]):
        for bottom in sides[0][i + 1:]:
            for j, left in enumerate(sides[1]):
                for right in sides[1][j + 1:]:
                    corners = [_crossing(a, b) for a in (top, bottom) for b in (left, right)]
                    if any(c is None for c in corners):
                        continue
                    ordered = _ordered(np.array(corners))
                    share = float(cv2.contourArea(ordered.astype(np.float32))) / (height * width)
                    within = ((ordered > -0.12 * width) & (ordered < 1.12 * np.array([width, height]))).all()
                    if within and _LEAST_SHARE < share < _MOST_SHARE:
                        quadrilaterals.append(ordered)
    return quadrilaterals


def _edge_strength(rho: float, normal: NDArray[np.float64], look: NDArray[np.float32]) -> float:
    """Share of a straight line, as long as the picture is, along which the two sides differ in the same sense."""
    height, width = look.shape[:2]
    along = np.array([-normal[1], normal[0]])
    points = rho * normal + np.linspace(-1, 1, 240)[:, None] * along * max(height, width)
    sides = []
    for sign in (-1, 1):
        values = np.zeros((len(points), 3), np.float32)
        for offset in (3, 5):
            x, y = np.rint(points + sign * offset * normal).astype(int).T
            values += look[np.clip(y, 0, height - 1), np.clip(x, 0, width - 1)] / 2
        sides.append(values)
    x, y = points.T
    seen = (x >= 6) & (x < width - 6) & (y >= 6) & (y < height - 6)
    if seen.sum() < 30:
        return 0.0
    step = (sides[1] - sides[0])[seen]
    return _one_sense(step)


def _across(
    look: NDArray[np.float32], points: NDArray[np.float64], offset: NDArray[np.float64]
) -> NDArray[np.float32]:
    """Difference between the places an offset inside and an offset outside of points."""
    limit = np.array([look.shape[1] - 1, look.shape[0] - 1])
    xi, yi = np.rint(np.clip(points - offset, 0, limit)).astype(int).T
    xo, yo = np.rint(np.clip(points + offset, 0, limit)).astype(int).T
    return np.asarray(look[yi, xi] - look[yo, xo], dtype=np.float32)


def _one_sense(step: NDArray[np.float32]) -> float:
    """Share of places along a side where the picture changes in one and the same sense; a line of writing has two."""
    return float(max((sense * step > _LEAST_STEP).mean(axis=0).max() for sense in (-1, 1)))


def _distinct(lines: list[tuple[float, NDArray[np.float64]]], size: float) -> list[NDArray[np.float64]]:
    """The six strongest lines that are not nearly the same as a stronger one."""
    kept: list[NDArray[np.float64]] = []
    for _, line in sorted(lines, key=lambda item: -item[0]):
        sense = [np.sign(line[:2] @ other[:2]) for other in kept]
        if all(
            abs(line[2] - s * other[2]) > 0.02 * size or np.abs(line[:2] - s * other[:2]).max() > 0.05
            for s, other in zip(sense, kept, strict=True)
        ):
            kept.append(line)
        if len(kept) == 6:
            break
    return kept


def _crossing(a: NDArray[np.float64], b: NDArray[np.float64]) -> NDArray[np.float64] | None:
    cross = a[0] * b[1] - a[1] * b[0]
    if abs(cross) < 0.3:
        return None
    return np.array([(a[2] * b[1] - a[1] * b[2]) / cross, (a[0] * b[2] - a[2] * b[0]) / cross])


def _score(corners: NDArray[np.float64], look: NDArray[np.float32]) -> float:
    """How sharp the edges are, and how large the sheet; 0 where a shape or edge is not that of a sheet on a table."""
    height, width = look.shape[:2]
    area = float(cv2.contourArea(corners.astype(np.float32)))
    visible = 0
    sharp = []
    for i in range(4):
        start, end, following = corners[i], corners[(i + 1) % 4], corners[(i + 2) % 4]
        a, b = start - end, following - end
        cosine = float(a @ b) / max(float(np.linalg.norm(a) * np.linalg.norm(b)), 1e-6)
        if abs(cosine) > math.cos(math.radians(60)):
            return 0.0
        along = end - start
        normal = np.array([along[1], -along[0]]) / max(float(np.linalg.norm(along)), 1e-6)  # points outwards
        points = start + np.linspace(0.06, 0.94, 40)[:, None] * along
        outer, inner = points + 4 * normal, points - 4 * normal
        limit = np.array([width - 1, height - 1])
        seen = ((outer >= 0) & (outer <= limit)).all(axis=1) & ((inner >= 0) & (inner <= limit)).all(axis=1)
        if seen.sum() < 20:
            continue  # this side lies on the border of the photo
        visible += 1
        xo, yo = np.rint(outer[seen]).astype(int).T
        xi, yi = np.rint(inner[seen]).astype(int).T
        near = look[yi, xi] - look[yo, xo]
        far = _across(look, points[seen], 11 * normal)
        # The change across an edge of paper is all there within a few pixels; that across a shadow goes on.
        near[np.abs(near) < 0.55 * np.abs(far)] = 0
        # And it lasts: across a row of writing or a printed line there is paper again.
        near[np.abs(far) < 0.3 * np.abs(near)] = 0
        sharp.append(_one_sense(near))
    if visible < 2 or min(sharp) < 0.6 or float(np.mean(sharp)) < (0.75 if visible > 2 else 0.92):
        return 0.0
    # Sides that are seen and sharp count most: a quadrilateral that leans on the border of the photo proves little.
    return sum(sharp) + 0.5 * area / float(width * height)
