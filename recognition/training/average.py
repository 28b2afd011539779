"""The mean of several networks' weights, which reads better than each of them.

`python -m recognition.training.average OUT.pt 2:recognition/models 1:run/weights.pt ...` writes a checkpoint. Before
each path (a checkpoint of train.py or a folder of shipped graphs) stands how much it weighs. All have one ancestor.

Source: Wortsman et al. 2022, "Model soups" (arXiv 2203.05482).
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import torch
from torch import Tensor

from recognition.training.recover import recover

__all__ = ["average"]


def average(parts: Sequence[tuple[float, dict[str, Any]]]) -> dict[str, Any]:
    """The weighted mean of checkpoints, as a checkpoint; a weight that some lack is the mean of those that have it.

    Args:
        parts: how much each weighs, above 0, and its `config`, `weights` and `runs`.
    Raises:
        ValueError: there is none, or they are networks of different sizes.
    """
    if not parts:
        raise ValueError("Name at least one network.")
    sums: dict[str, tuple[float, Tensor]] = {}
    for weight, part in parts:
        for name, value in part["weights"].items():
            if not value.is_floating_point():
                continue
            total, so_far = sums.get(name, (0.0, torch.zeros_like(value, dtype=torch.float32)))
            if so_far.shape != value.shape:
                raise ValueError(f"{name} has another size in one network: they have no common ancestor.")
            sums[name] = total + weight, so_far + weight * value.float()
    runs = [run for _, part in parts for run in part.get("runs", [])]
    return {
        "config": parts[-1][1]["config"], "runs": list(dict.fromkeys(runs)),
        "weights": {name: (value / total).half() for name, (total, value) in sums.items()},
    }  # fmt: skip


def _part(text: str) -> tuple[float, dict[str, Any]]:
    weight, _, name = text.partition(":")
    path = Path(name)
    return float(weight), recover(path) if path.is_dir() else torch.load(path, map_location="cpu", weights_only=True)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out", type=Path)
    parser.add_argument("parts", nargs="+", help="WEIGHT:CHECKPOINT or WEIGHT:FOLDER")
    given = parser.parse_args()
    torch.save(average([_part(text) for text in given.parts]), given.out)
