"""How many lines of a test set does the network read right, greedily? For choosing between runs, not for the card."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import torch
from torch import Tensor

from recognition.reader.edits import edit_distance
from recognition.reader.tokens import EOS, L2R, PAD, R2L
from recognition.training.model import ReaderNet
from recognition.training.stream import Batch

__all__ = ["Score", "greedy", "motion_planes", "validate"]


@dataclass(frozen=True, slots=True)
class Score:
    """Shares of lines read right and within one edit, and edits per token."""

    lines: int
    right: float
    within_one: float
    token_errors: float


def motion_planes(motion: Tensor) -> Tensor:
    """As canonical.motion_values, for a batch: uint8 [B,2,H,W] -> float [B,3,H,W]."""
    known = (motion[:, :1] > 0).float()
    angle = (motion[:, 0].float() - 1) * (2 * math.pi / 254)
    order = (motion[:, 1].float() - 1) * (2 / 254) - 1
    return torch.stack([angle.cos(), angle.sin(), order], 1) * known


def greedy(net: ReaderNet, image: Tensor, size: Tensor, *, most: int = 120) -> list[list[int]]:
    """Read from left to right, the likeliest token each time."""
    memory, mask = net.encode(image, size)
    keys, values = net.memory_keys(memory)
    state = net.start(len(image), memory.shape[1], keys)
    token = torch.full((len(image), 1), L2R, device=image.device)
    ended = torch.zeros(len(image), dtype=torch.bool, device=image.device)
    out = []
    for number in range(most):
        scores, state, _ = net.step(token, state, keys, values, mask)
        scores = scores[:, -1]
        scores[:, [PAD, L2R, R2L]] = -1e9
        token = scores.argmax(-1, keepdim=True)
        out.append(token.masked_fill(ended[:, None], EOS))
        ended |= token[:, 0] == EOS
        if number % 8 == 7 and bool(ended.all()):
            break
    read = torch.cat(out, 1).tolist()
    return [line[: line.index(EOS)] if EOS in line else line for line in read]


def validate(net: ReaderNet, batches: Sequence[Batch], device: torch.device) -> Score:
    """Read every batch; the network is put back into training afterwards."""
    net.eval()
    lines = right = near = edits = total = 0
    for batch in batches:
        given = batch.image.to(device)
        image = given[:, :1].float().div_(255)
        if net.config.motion:
            image = torch.cat([image, motion_planes(given[:, 1:])], 1)
        with torch.no_grad(), torch.autocast(device.type, torch.bfloat16, enabled=device.type == "cuda"):
            read = greedy(net, image, batch.size.to(device))
        for found, wanted in zip(read, batch.tokens.tolist(), strict=True):
            wanted = [token for token in wanted if token >= 0]
            distance = edit_distance(found, wanted)
            lines, right, near = lines + 1, right + (distance == 0), near + (distance <= 1)
            edits, total = edits + distance, total + len(wanted)
    net.train()
    return Score(lines, right / lines, near / lines, edits / total)
