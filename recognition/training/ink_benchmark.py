"""How well is ink told from paper? `python -m recognition.training.ink_benchmark --pages 30`.

On simulated pages whose ink is known: F-measure of our mask beside Otsu's (1979) and Sauvola's (2000) thresholds as
scikit-image has them, over the pixels of the sheet; the best of four window sizes is taken for Sauvola on each kind of
page. Needs scikit-image, which the program itself does not.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.prepared import Clock, prepare
from recognition.training.page_measure import f_measure
from recognition.training.scenes import KINDS, SHEET, Scene, make_scene

__all__ = ["main"]

REPORT_SEED = 200_000
_WINDOWS = (25, 51, 101, 201)
_INK = 128
"""A pixel covered by ink to this share of 255 is ink."""

Mask = NDArray[np.bool_]


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object a kind of page."""
    from skimage.filters import threshold_otsu, threshold_sauvola

    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--pages", type=int, default=30, help="pages in all, a third of each kind")
    parser.add_argument("--seed", type=int, default=REPORT_SEED)
    options = parser.parse_args(arguments)
    for kind in KINDS:
        counts: dict[str, NDArray[np.int64]] = {}
        start = options.seed + 10_000 * KINDS.index(kind)
        for seed in range(start, start + max(1, options.pages // len(KINDS))):
            scene = make_scene(seed, kind)
            grey = np.asarray(cv2.cvtColor(scene.photo.image, cv2.COLOR_RGB2GRAY), np.uint8)
            sheet = _sheet(scene)
            masks: dict[str, Mask] = {"ours": _ours(scene), "Otsu": grey < threshold_otsu(grey[sheet])}
            for window in _WINDOWS:
                masks[f"Sauvola {window}"] = grey < threshold_sauvola(grey, window_size=window)
            true = (scene.ink > _INK) & sheet
            for name, mask in masks.items():
                found = mask & sheet
                row = np.array([np.count_nonzero(found & true), np.count_nonzero(found), np.count_nonzero(true)])
                counts[name] = counts.get(name, np.zeros(3, np.int64)) + row
        scores = {name: round(100 * f_measure(*(int(v) for v in row)), 2) for name, row in counts.items()}
        best = max((name for name in scores if name.startswith("Sauvola")), key=lambda name: scores[name])
        print(json.dumps({kind: {"ours": scores["ours"], "Otsu": scores["Otsu"], best: scores[best]}}), flush=True)
    return 0


def _sheet(scene: Scene) -> Mask:
    """Where the photo shows the sheet, but for print, arrows and what a finger hides."""
    height, width = scene.photo.image.shape[:2]
    w, h = SHEET
    along, zero = np.linspace(0, 1, 40), np.zeros(40)
    sides = ((along, zero), (zero + 1, along), (1 - along, zero + 1), (zero, 1 - along))
    rim = np.concatenate([np.column_stack(side) for side in sides]) * (w, h)
    seen = np.zeros((height, width), np.uint8)
    cv2.fillPoly(seen, [np.rint(scene.photo.placed(rim)).astype(np.int32)], 1)
    seen = cv2.erode(seen, np.ones((15, 15), np.uint8))
    for x0, y0, x1, y1 in scene.aside:
        cv2.rectangle(seen, (int(x0) - 4, int(y0) - 4), (int(x1) + 4, int(y1) + 4), 0, -1)
    return np.asarray(seen > 0)


def _ours(scene: Scene) -> Mask:
    """Our mask of ink, brought from working size back to the photo."""
    height, width = scene.photo.image.shape[:2]
    page = prepare(scene.photo.image, Clock())
    if page is None:
        return np.zeros((height, width), bool)
    soft = cv2.warpPerspective(page.ink.mask, page.flat.to_flat, (width, height),
                               flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)
    return np.asarray(soft > 127)


if __name__ == "__main__":
    raise SystemExit(main())
