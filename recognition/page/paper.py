"""Where is the sheet of paper in the photo? Its four corners, or nothing when the photo is to be used as it is."""

from __future__ import annotations

import math
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["find_corners", "flattening"]

_SIDE = 480
"""Longer side in pixels of the picture on which the sheet is looked for."""
_LEAST_SHARE = 0.22
_MOST_SHARE = 0.985
_LEAST_STEP = 14.0
"""Grey levels by which paper and table must differ across an edge of the sheet."""


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
            score = _score(corners, lab)
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


def _score(corners: NDArray[np.float64], lab: NDArray[Any]) -> float:
    """How sharp the edges are, and how large the sheet; 0 where a shape or edge is not that of a sheet on a table."""
    height, width = lab.shape[:2]
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
        step = np.abs(lab[yi, xi].astype(np.float32) - lab[yo, xo].astype(np.float32)).max(axis=1)
        sharp.append(float(np.mean(step > _LEAST_STEP)))
    if visible < 2 or min(sharp) < 0.6 or float(np.mean(sharp)) < (0.75 if visible > 2 else 0.92):
        return 0.0
    # Sides that are seen and sharp count most: a quadrilateral that leans on the border of the photo proves little.
    return sum(sharp) + 0.5 * area / float(width * height)
