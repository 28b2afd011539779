"""Trains the reader for a given time; a run that was cut resumes from OUT/last.pt.

`python -m recognition.training.train --pack train.npz --out OUT --minutes 25 [--init OLD] [--valid SET.npz ...]`
writes OUT/weights.pt (averaged weights, float16), OUT/last.pt (everything, to resume) and OUT/log.txt.
"""

from __future__ import annotations

import argparse
import copy
import itertools
import json
import math
import os
import time
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final, NamedTuple

import cv2
import torch
import torch.nn.functional as F
from torch import Tensor, nn
from torch.utils.data import DataLoader

from recognition.reader.canonical import CanonicalFrame
from recognition.reader.tokens import EOS, L2R, R2L
from recognition.training.model import CELL, NetConfig, ReaderNet, both_directions
from recognition.training.recover import recover
from recognition.training.samples import Mixture
from recognition.training.stream import Batch, TrainingLines, load_images
from recognition.training.validate import motion_planes, validate

__all__ = ["Settings", "train"]

_EMA_EVERY: Final = 4
_REWARM_S: Final = 40.0
_FIRST_WEIGHTS: Final = "features.1.0.weight"


@dataclass(frozen=True, slots=True)
class Settings:
    """A run: times in seconds, rates as AdamW takes them."""

    pack: Path
    out: Path
    seconds: float
    net: NetConfig
    init: Path | None = None
    valid: tuple[Path, ...] = ()
    valid_every_s: float = 240.0
    seed: int = 1
    workers: int = 14
    pixels: int = 16_000_000
    photo_share: float = 0.4
    rate: float = 6e-4
    weight_decay: float = 0.05
    warm_share: float = 0.03
    last_share: float = 0.005
    ema: float = 0.999
    smoothing: float = 0.1
    count_weight: float = 0.02
    align_weight: float = 0.1
    wrong_given: float = 0.0
    max_width: int = 1600
    flatness: float = 0.0
    mixture: Mixture = field(default_factory=Mixture)


class _Averages:
    """Exponential averages of the weights: what is kept and tested."""

    def __init__(self, net: nn.Module, decay: float) -> None:
        self._decay = decay
        self._names = [name for name, value in net.state_dict().items() if value.is_floating_point()]
        self.values = {name: value.detach().clone().float() for name, value in net.state_dict().items()}

    def update(self, net: nn.Module, step: int) -> None:
        state = net.state_dict()
        decay = min(self._decay**_EMA_EVERY, (1 + step) / (40 + step))
        mine = [self.values[name] for name in self._names]
        torch._foreach_lerp_(mine, [state[name].float() for name in self._names], 1 - decay)
        for name in self.values.keys() - set(self._names):
            self.values[name] = state[name].float()

    def network(self, net: ReaderNet) -> ReaderNet:
        averaged = copy.deepcopy(net)
        state = net.state_dict()
        averaged.load_state_dict({name: value.to(state[name].dtype) for name, value in self.values.items()})
        return averaged


def train(settings: Settings) -> None:
    """Train until the time is used up."""
    started = time.time()
    settings.out.mkdir(parents=True, exist_ok=True)
    device = torch.device("cuda" if torch.cuda.is_available() else "cpu")
    if device.type == "cuda":
        torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
        torch.backends.cuda.enable_cudnn_sdp(False)  # plans anew for every new length: seconds a step
    torch.manual_seed(settings.seed)
    net = ReaderNet(settings.net)
    runs: list[str] = []
    if settings.init is not None:
        runs = _begin_from(net, settings.init)
    layout = torch.channels_last if device.type == "cuda" else torch.contiguous_format
    net = net.to(device).to(memory_format=layout)
    optimiser = _optimiser(net, settings, device)
    averages = _Averages(net, settings.ema)
    used, step, seen = 0.0, 0, 0
    last = settings.out / "last.pt"
    if last.exists():
        saved = torch.load(last, map_location="cpu", weights_only=True)
        net.load_state_dict(saved["net"])
        optimiser.load_state_dict(saved["optimiser"])
        averages.values = {name: value.to(device) for name, value in saved["averages"].items()}
        used, step, seen, runs = saved["used"], saved["step"], saved["seen"], saved["runs"]
    sets = {path.stem: load_images(path, pixels=8_000_000) for path in settings.valid}
    lines = TrainingLines(
        settings.pack, seed=settings.seed + 7 * int(used), pixels=settings.pixels, mixture=settings.mixture,
        photo_share=settings.photo_share, frame=CanonicalFrame(max_width=settings.max_width),
    )  # fmt: skip
    loader = DataLoader(
        lines, batch_size=None, num_workers=settings.workers, prefetch_factor=4 if settings.workers else None,
        pin_memory=device.type == "cuda", worker_init_fn=_one_thread,
    )  # fmt: skip
    log = (settings.out / "log.txt").open("a", encoding="utf-8")

    def say(text: str) -> None:
        print(text, flush=True)
        log.write(text + "\n")
        log.flush()

    def check_and_save(elapsed: float) -> None:
        averaged = averages.network(net)
        for name, batches in sets.items():
            score = validate(averaged, batches, device)
            say(f"valid {name} t {elapsed:.0f} step {step} right {score.right:.4f} within 1 {score.within_one:.4f} "
                f"token errors {score.token_errors:.4f} of {score.lines}")  # fmt: skip
        note = f"seed {settings.seed}, {elapsed:.0f} s, {step} steps, {seen} lines"
        _save(settings.out / "weights.pt", {
            "config": settings.net.to_json(), "runs": [*runs, note],
            "weights": {name: value.half() for name, value in averages.values.items()},
        })  # fmt: skip
        _save(last, {
            "net": net.state_dict(), "optimiser": optimiser.state_dict(), "averages": averages.values, "used": elapsed,
            "step": step, "seen": seen, "runs": runs,
        })  # fmt: skip

    say(f"{sum(p.numel() for p in net.parameters()) / 1e6:.2f} M parameters on {device}, {settings}")
    next_check, waited, shown = time.time() + settings.valid_every_s, 0.0, time.time()
    sums, counted = torch.zeros(4, device=device), 0
    batches = iter(loader)
    net.train()
    while (elapsed := used + time.time() - started) < settings.seconds:
        rate = settings.rate * _schedule(elapsed / settings.seconds, settings)
        if used:
            rate *= min(1.0, (time.time() - started) / _REWARM_S + 0.01)
        for group in optimiser.param_groups:
            group["lr"] = rate
        asked = time.time()
        batch = next(batches)
        waited += time.time() - asked
        losses = _losses(net, batch, settings, device, layout)
        optimiser.zero_grad(set_to_none=True)
        losses[0].backward()
        if settings.flatness:
            uphill = _step_uphill(net, settings.flatness)
            optimiser.zero_grad(set_to_none=True)
            _losses(net, batch, settings, device, layout)[0].backward()
            uphill.undo()
        nn.utils.clip_grad_norm_(net.parameters(), 1.0)
        optimiser.step()
        step, seen = step + 1, seen + len(batch.tokens)
        if step % _EMA_EVERY == 0:
            averages.update(net, step)
        if step % 10 == 0:
            sums, counted = sums + torch.stack([loss.detach() for loss in losses]), counted + 1
        if step % 200 == 0:
            means = (sums / max(1, counted)).tolist()
            say(f"t {elapsed:.0f} step {step} lines {seen} loss {means[0]:.4f} tokens {means[1]:.4f} "
                f"counts {means[2]:.3f} places {means[3]:.3f} rate {rate:.2e} "
                f"waited {waited / (time.time() - shown):.2f} {200 / (time.time() - shown):.1f} steps/s")  # fmt: skip
            sums, counted, waited, shown = torch.zeros(4, device=device), 0, 0.0, time.time()
        if time.time() > next_check:
            check_and_save(elapsed)
            next_check = time.time() + settings.valid_every_s
    check_and_save(used + time.time() - started)
    (settings.out / "done").write_text("done\n")


class _Uphill(NamedTuple):
    """Weights that were moved, and by how much."""

    weights: list[Tensor]
    moves: list[Tensor]

    def undo(self) -> None:
        with torch.no_grad():
            torch._foreach_sub_(self.weights, self.moves)


def _step_uphill(net: nn.Module, radius: float) -> _Uphill:
    """Move the weights by `radius` along the gradient, to take the gradient where the loss is worst nearby.

    Source: sharpness-aware minimisation, Foret et al. 2021 (arXiv 2010.01412).
    """
    weights = [one for one in net.parameters() if one.grad is not None]
    gradients = [one.grad for one in weights if one.grad is not None]
    with torch.no_grad():
        length = torch.linalg.vector_norm(torch.stack(torch._foreach_norm(gradients)))
        moves = list(torch._foreach_mul(gradients, radius / (length + 1e-12)))
        torch._foreach_add_(weights, moves)
    return _Uphill(weights, moves)


def _losses(
    net: ReaderNet, batch: Batch, settings: Settings, device: torch.device, layout: torch.memory_format
) -> tuple[Tensor, Tensor, Tensor, Tensor]:
    """Sum, and its parts: tokens of both directions, symbol counts, and where the aligned heads look."""
    size, tokens = batch.size.to(device, non_blocking=True), batch.tokens.to(device, non_blocking=True)
    given = batch.image.to(device, non_blocking=True)
    image = _photometric(given[:, 0], size)
    if settings.net.motion:
        image = torch.cat([image, motion_planes(given[:, 1:])], 1)
    image = image.contiguous(memory_format=layout)
    inputs, labels = both_directions(tokens, (L2R, R2L), EOS)
    inputs = _with_slips(inputs, settings.wrong_given)
    with torch.autocast(device.type, torch.bfloat16, enabled=device.type == "cuda"):
        memory, mask = net.encode(image, size)
        logits, weights = net.decode(inputs, torch.cat([memory, memory]), torch.cat([mask, mask]))
        counts = net.symbol_counts(memory, mask)
    token_loss = F.cross_entropy(
        logits.float().flatten(0, 1), labels.flatten(), ignore_index=-1, label_smoothing=settings.smoothing
    )
    wanted = torch.zeros_like(counts).scatter_add_(1, tokens.clamp(min=0), (tokens >= 0).float())
    count_loss = F.smooth_l1_loss(counts[:, 4:], wanted[:, 4:], reduction="sum") / len(tokens)
    place_loss = torch.zeros((), device=device)
    if settings.net.aligned_heads:
        boxes = batch.boxes.to(device, non_blocking=True)
        place_loss = _place_loss(weights[:, : settings.net.aligned_heads], boxes, tokens, mask)
    total = token_loss + settings.count_weight * count_loss + settings.align_weight * place_loss
    return total, token_loss, count_loss, place_loss


def _with_slips(inputs: Tensor, share: float) -> Tensor:
    """Some given tokens are exchanged for others of the batch: the next one is then read, not guessed from the last."""
    if not share:
        return inputs
    first = torch.arange(inputs.shape[1], device=inputs.device)[None] == 0
    flat = inputs.flatten()
    other = flat[torch.randint(len(flat), inputs.shape, device=inputs.device)]
    exchanged = (torch.rand(inputs.shape, device=inputs.device) < share) & ~first & (other > R2L)
    return torch.where(exchanged, other, inputs)


def _place_loss(weights: Tensor, boxes: Tensor, tokens: Tensor, mask: Tensor) -> Tensor:
    """Minus log of the attention that falls into the cells under each token's ink, both directions."""
    length = tokens.shape[1]
    rows, columns = mask.shape[1:]
    counts = (tokens >= 0).sum(1)
    place = torch.arange(length, device=tokens.device)[None]
    mirror = (counts[:, None] - 1 - place).clamp(min=0)[..., None].expand(-1, -1, 4)
    both = torch.cat([boxes, torch.gather(boxes, 1, mirror)])
    known = ~both[..., 0].isnan() & torch.cat([place < counts[:, None]] * 2)
    both = both.nan_to_num(-1e4) / CELL
    x, y = torch.arange(columns, device=tokens.device), torch.arange(rows, device=tokens.device)
    over_x = (x < both[..., 2:3]) & (x + 1 > both[..., 0:1])
    over_y = (y < both[..., 3:4]) & (y + 1 > both[..., 1:2])
    under = (over_y[..., :, None] & over_x[..., None, :]).flatten(2)
    share = (weights[:, :, :length].mean(1) * under).sum(-1)
    return -(share.clamp(min=1e-4).log() * known).sum() / known.sum().clamp(min=1)


def _photometric(image: Tensor, size: Tensor) -> Tensor:
    """Blur, gamma, faint ink, uneven light and grain on the graphics card: uint8 [B,H,W] -> float [B,1,H,W]."""
    x = image.float().div_(255).unsqueeze(1)
    batch, _, height, width = x.shape

    def lot() -> Tensor:
        return torch.rand(batch, 1, 1, 1, device=x.device)

    for spread, share in ((0.6, 0.3), (1.1, 0.12)):
        kernel = torch.exp(-(torch.arange(-2, 3, device=x.device).float() ** 2) / (2 * spread * spread))
        kernel = kernel / kernel.sum()
        blurred = F.conv2d(x, kernel.view(1, 1, 1, 5), padding=(0, 2))
        blurred = F.conv2d(blurred, kernel.view(1, 1, 5, 1), padding=(2, 0))
        x = torch.where(lot() < share, blurred, x)
    x = x.pow(0.6 + 0.9 * lot())
    x = x * torch.where(lot() < 0.5, 0.45 + 0.55 * lot(), torch.ones_like(lot()))
    coarse = torch.randn(batch, 1, max(2, height // 24), max(2, width // 24), device=x.device)
    coarse = F.interpolate(coarse, (height, width), mode="bilinear", align_corners=False)
    uneven = (lot() < 0.3).float()
    x = x * (1 + 0.25 * coarse.clamp(-1.5, 1.5) * uneven)
    x = (x + uneven * (0.06 * lot() * torch.randn_like(x) + 0.05 * lot() * coarse)).clamp(0, 1)
    inside_x = torch.arange(width, device=x.device)[None, None] < size[:, 0, None, None]
    inside_y = torch.arange(height, device=x.device)[None, :, None] < size[:, 1, None, None]
    return x * (inside_x & inside_y).unsqueeze(1)


def _schedule(share: float, settings: Settings) -> float:
    """Linear warm-up, then a cosine down to `last_share`."""
    if share < settings.warm_share:
        return share / settings.warm_share + 1e-3
    rest = (share - settings.warm_share) / (1 - settings.warm_share)
    return settings.last_share + (1 - settings.last_share) * 0.5 * (1 + math.cos(math.pi * min(1.0, rest)))


def _optimiser(net: ReaderNet, settings: Settings, device: torch.device) -> torch.optim.AdamW:
    matrices, others = list[Tensor](), list[Tensor]()
    for name, parameter in net.named_parameters():
        plain = parameter.ndim < 2 or name in ("places", "embedding.weight")
        (others if plain else matrices).append(parameter)
    groups = [{"params": matrices, "weight_decay": settings.weight_decay}, {"params": others, "weight_decay": 0.0}]
    return torch.optim.AdamW(groups, lr=settings.rate, betas=(0.9, 0.98), fused=device.type == "cuda")


def _begin_from(net: ReaderNet, path: Path) -> list[str]:
    """Take over what fits of older weights, a checkpoint or a folder of shipped graphs.

    New tokens and layers start so that they change little at first.
    """
    saved = recover(path) if path.is_dir() else torch.load(path, map_location="cpu", weights_only=True)
    state = net.state_dict()
    with torch.no_grad():
        for name, value in saved["weights"].items():
            if value.shape == state[name].shape:
                state[name].copy_(value)
            elif name == _FIRST_WEIGHTS:  # planes of motion that the old network did not see
                state[name].zero_()[:, : value.shape[1]] = value
            else:  # more tokens than before
                state[name][: len(value)] = value
                state[name][len(value) :] = value.float().mean(0)
    old_layers = saved["config"]["encoder_layers"]
    for layer in itertools.islice(net.encoder, old_layers, None):
        for linear in (layer.attention.output, layer.inner[3]):
            nn.init.zeros_(linear.weight)
            nn.init.zeros_(linear.bias)
    return list(saved.get("runs", []))


def _save(path: Path, data: dict[str, Any]) -> None:
    torch.save(data, path.with_suffix(".tmp"))
    os.replace(path.with_suffix(".tmp"), path)


def _one_thread(_: int) -> None:
    cv2.setNumThreads(0)
    torch.set_num_threads(1)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--pack", type=Path, required=True)
    parser.add_argument("--out", type=Path, required=True)
    parser.add_argument("--minutes", type=float, required=True)
    parser.add_argument("--init", type=Path, help="a checkpoint, or the folder of the shipped weights")
    parser.add_argument("--valid", type=Path, nargs="*", default=[])
    parser.add_argument("--valid-every", type=float, default=240.0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=14)
    parser.add_argument("--pixels", type=int, default=16_000_000)
    parser.add_argument("--photo-share", type=float, default=0.4)
    parser.add_argument("--rate", type=float, default=6e-4)
    parser.add_argument("--max-width", type=int, default=1600, help="of a line in px; the export must state the same")
    parser.add_argument("--align-weight", type=float, default=0.1)
    parser.add_argument("--wrong-given", type=float, default=0.0, help="share of the given tokens that are exchanged")
    parser.add_argument("--smoothing", type=float, default=0.1, help="share of the wanted token given to all others")
    parser.add_argument("--flatness", type=float, default=0.0, help="radius in which the loss is to stay low")
    parser.add_argument("--net", default="{}", help="JSON with fields of NetConfig that differ from their defaults")
    parser.add_argument("--mixture", default="{}", help="JSON with fields of Mixture that differ from their defaults")
    given = parser.parse_args()
    train(Settings(
        pack=given.pack, out=given.out, seconds=given.minutes * 60, net=NetConfig.from_json(json.loads(given.net)),
        init=given.init, valid=tuple(given.valid), valid_every_s=given.valid_every, seed=given.seed,
        workers=given.workers, pixels=given.pixels, photo_share=given.photo_share, rate=given.rate,
        align_weight=given.align_weight, wrong_given=given.wrong_given, max_width=given.max_width,
        smoothing=given.smoothing, flatness=given.flatness, mixture=Mixture(**json.loads(given.mixture)),
    ))  # fmt: skip


if __name__ == "__main__":
    main()
