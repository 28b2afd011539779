"""The network that reads a line: convolutions, an encoder and a decoder that reads in both directions.

An image becomes a grid of cells, each 16 by 16 pixels; a transformer encoder lets the cells see each other; a
transformer decoder writes one token after another, from left to right or from right to left by its start token.

Source: attention after Vaswani et al. 2017 (arXiv 1706.03762); 2-D sine positions and both directions after Zhao et
al. 2021 (arXiv 2105.02412); coverage that corrects the attention after Zhao and Gao 2022 (arXiv 2207.04410).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any, NamedTuple

import torch
import torch.nn.functional as F
from torch import Tensor, nn

from recognition.reader.tokens import VOCABULARY

__all__ = ["CELL", "DecoderState", "NetConfig", "ReaderNet", "both_directions"]

CELL = 16
"""Pixels of the image to a cell of the grid, both ways."""


@dataclass(frozen=True, slots=True)
class NetConfig:
    """Sizes of the network; coverage_layers counts from the last decoder layer, aligned_heads in the last one.

    skipped: share of the residual branches that a line does without in training (Huang et al. 2016, arXiv 1603.09382).
    """

    vocabulary: int = len(VOCABULARY)
    width: int = 256
    heads: int = 8
    inner: int = 1024
    encoder_layers: int = 2
    decoder_layers: int = 4
    channels: tuple[int, ...] = (32, 64, 128, 256)
    blocks: tuple[int, ...] = (2, 3, 3)
    max_tokens: int = 200
    coverage_layers: int = 0
    coverage_width: int = 32
    aligned_heads: int = 0
    dropout: float = 0.15
    motion: bool = False
    skipped: float = 0.0

    @property
    def planes(self) -> int:
        """Ink alone, or with it cosine and sine of the pen's direction and the order of writing."""
        return 4 if self.motion else 1

    def to_json(self) -> dict[str, Any]:
        return asdict(self)

    @classmethod
    def from_json(cls, data: dict[str, Any]) -> NetConfig:
        fields = {key: tuple(value) if isinstance(value, list) else value for key, value in data.items()}
        return cls(**dict[str, Any](fields))


class DecoderState(NamedTuple):
    """What the decoder keeps between tokens: keys, values [L,B,h,P,d] and summed attention [C,B,h,N]."""

    keys: Tensor
    values: Tensor
    coverage: Tensor


def _convolution(inputs: int, outputs: int, stride: int = 1) -> nn.Sequential:
    return nn.Sequential(
        nn.Conv2d(inputs, outputs, 3, stride, 1, bias=False), nn.BatchNorm2d(outputs), nn.ReLU(inplace=True)
    )


class _Skipped(nn.Module):
    """A residual branch is left out for some lines of a batch, in training only; the others weigh more."""

    def __init__(self, share: float) -> None:
        super().__init__()
        self.share = share

    def forward(self, x: Tensor) -> Tensor:
        if not self.training or not self.share:
            return x
        kept = torch.rand((len(x), *[1] * (x.dim() - 1)), device=x.device) >= self.share
        return x * (kept / (1 - self.share)).to(x.dtype)


class _ResidualBlock(nn.Module):
    def __init__(self, inputs: int, outputs: int, stride: int, skipped: float) -> None:
        super().__init__()
        self.first = _convolution(inputs, outputs, stride)
        self.second = nn.Sequential(nn.Conv2d(outputs, outputs, 3, 1, 1, bias=False), nn.BatchNorm2d(outputs))
        self.shortcut: nn.Module = nn.Identity()
        if inputs != outputs or stride != 1:
            self.shortcut = nn.Sequential(nn.Conv2d(inputs, outputs, 1, stride, bias=False), nn.BatchNorm2d(outputs))
            skipped = 0.0
        self.skip = _Skipped(skipped)

    def forward(self, x: Tensor) -> Tensor:
        return F.relu(self.skip(self.second(self.first(x))) + self.shortcut(x), inplace=True)


class _Attention(nn.Module):
    def __init__(self, width: int, heads: int) -> None:
        super().__init__()
        self.heads = heads
        self.query = nn.Linear(width, width)
        self.key_value = nn.Linear(width, 2 * width)
        self.output = nn.Linear(width, width)

    def _split(self, x: Tensor) -> Tensor:
        batch, length, width = x.shape
        return x.view(batch, length, self.heads, width // self.heads).transpose(1, 2)

    def keys_values(self, x: Tensor) -> tuple[Tensor, Tensor]:
        keys, values = self.key_value(x).chunk(2, -1)
        return self._split(keys), self._split(values)

    def forward(
        self, x: Tensor, keys: Tensor, values: Tensor, mask: Tensor | None = None, causal: bool = False
    ) -> Tensor:
        query = self._split(self.query(x))
        y = F.scaled_dot_product_attention(query, keys, values, attn_mask=mask, is_causal=causal)
        return self.output(y.transpose(1, 2).flatten(2))


class _CoveredAttention(_Attention):
    """Cross-attention whose weights are shown, and corrected by where earlier tokens looked when `coverage` > 0."""

    def __init__(self, width: int, heads: int, coverage: int) -> None:
        super().__init__(width, heads)
        self.correction: nn.Sequential | None = None
        if coverage:
            last = nn.Conv2d(coverage, heads, 1)
            nn.init.zeros_(last.weight)
            nn.init.zeros_(last.bias)
            self.correction = nn.Sequential(nn.Conv2d(heads, coverage, 5, 1, 2), nn.ReLU(inplace=True), last)

    def weights(self, x: Tensor, keys: Tensor, mask: Tensor, past: Tensor | None) -> tuple[Tensor, Tensor | None]:
        """Weights [B,h,T,N] and the summed attention after the last token [B,h,N]; mask bool [B,rows,columns]."""
        query = self._split(self.query(x))
        scores = query @ keys.transpose(-1, -2) * (query.shape[-1] ** -0.5)
        scores = scores.float().masked_fill(~mask.flatten(1)[:, None, None], -1e9)
        if self.correction is None or past is None:
            return scores.softmax(-1), None
        plain = scores.softmax(-1)
        running = past[:, :, None] + plain.cumsum(2)
        before = (running - plain).transpose(1, 2).to(x.dtype)
        batch, length = before.shape[:2]
        grid = before.reshape(batch * length, self.heads, mask.shape[1], mask.shape[2])
        correction = self.correction(grid).reshape(batch, length, self.heads, -1).transpose(1, 2)
        return (scores - correction.float()).softmax(-1), running[:, :, -1]

    def apply_weights(self, weights: Tensor, values: Tensor) -> Tensor:
        return self.output((weights.to(values.dtype) @ values).transpose(1, 2).flatten(2))


class _FeedForward(nn.Sequential):
    def __init__(self, width: int, inner: int, dropout: float) -> None:
        super().__init__(nn.Linear(width, inner), nn.GELU(), nn.Dropout(dropout), nn.Linear(inner, width))


class _EncoderLayer(nn.Module):
    def __init__(self, config: NetConfig) -> None:
        super().__init__()
        self.norm_attention, self.norm_inner = nn.LayerNorm(config.width), nn.LayerNorm(config.width)
        self.attention = _Attention(config.width, config.heads)
        self.inner = _FeedForward(config.width, config.inner, config.dropout)
        self.dropout = nn.Sequential(nn.Dropout(config.dropout), _Skipped(config.skipped))

    def forward(self, x: Tensor, mask: Tensor) -> Tensor:
        y = self.norm_attention(x)
        x = x + self.dropout(self.attention(y, *self.attention.keys_values(y), mask))
        return x + self.dropout(self.inner(self.norm_inner(x)))


class _DecoderLayer(nn.Module):
    def __init__(self, config: NetConfig, coverage: int, shows_weights: bool) -> None:
        super().__init__()
        self.norm_self, self.norm_cross = nn.LayerNorm(config.width), nn.LayerNorm(config.width)
        self.norm_inner = nn.LayerNorm(config.width)
        self.self_attention = _Attention(config.width, config.heads)
        self.cross_attention = _CoveredAttention(config.width, config.heads, coverage)
        self.inner = _FeedForward(config.width, config.inner, config.dropout)
        self.dropout = nn.Sequential(nn.Dropout(config.dropout), _Skipped(config.skipped))
        self.explicit = bool(coverage) or shows_weights

    def cross(
        self, x: Tensor, keys: Tensor, values: Tensor, mask: Tensor, past: Tensor | None
    ) -> tuple[Tensor, Tensor | None, Tensor | None]:
        """The layer from its cross-attention on: output, weights [B,h,T,N] where they are shown, new coverage."""
        y = self.norm_cross(x)
        weights, coverage = None, None
        if self.explicit:
            weights, coverage = self.cross_attention.weights(y, keys, mask, past)
            z = self.cross_attention.apply_weights(weights, values)
        else:
            z = self.cross_attention(y, keys, values, mask.flatten(1)[:, None, None])
        x = x + self.dropout(z)
        return x + self.dropout(self.inner(self.norm_inner(x))), weights, coverage


class ReaderNet(nn.Module):
    """Image of a line -> tokens. Images are float [B,planes,H,W], ink 1 on paper 0, H and W multiples of 32.

    With `motion` three planes follow, as canonical.motion_values makes them; all 0 where only a picture is known.
    """

    def __init__(self, config: NetConfig) -> None:
        super().__init__()
        self.config = config
        stages: list[nn.Module] = [nn.PixelUnshuffle(2), _convolution(4 * config.planes, config.channels[0])]
        inputs = config.channels[0]
        for outputs, count in zip(config.channels[1:], config.blocks, strict=True):
            for number in range(count):
                stages.append(_ResidualBlock(inputs, outputs, 2 if number == 0 else 1, config.skipped))
                inputs = outputs
        self.features = nn.Sequential(*stages)
        self.projection = nn.Linear(inputs, config.width)
        self.dropout = nn.Dropout(config.dropout)
        self.encoder = nn.ModuleList(_EncoderLayer(config) for _ in range(config.encoder_layers))
        self.encoder_norm = nn.LayerNorm(config.width)
        self.count = nn.Linear(config.width, config.vocabulary)
        self.embedding = nn.Embedding(config.vocabulary, config.width)
        self.places = nn.Parameter(torch.zeros(config.max_tokens, config.width))
        nn.init.normal_(self.embedding.weight, std=config.width**-0.5)
        nn.init.normal_(self.places, std=0.02)
        first_covered = config.decoder_layers - config.coverage_layers
        self.decoder = nn.ModuleList(
            _DecoderLayer(
                config,
                config.coverage_width if number >= first_covered else 0,
                shows_weights=number == config.decoder_layers - 1,
            )
            for number in range(config.decoder_layers)
        )
        self.decoder_norm = nn.LayerNorm(config.width)
        self.output = nn.Linear(config.width, config.vocabulary)

    def encode(self, image: Tensor, size: Tensor) -> tuple[Tensor, Tensor]:
        """Memory [B,N,width] and mask bool [B,rows,columns]; size int [B,2] is the true width and height in pixels."""
        features = self.features(image).permute(0, 2, 3, 1)
        rows, columns = features.shape[1], features.shape[2]
        x = self.dropout(self.projection(features))
        x = (x + _grid_places(rows, columns, self.config.width, x)).flatten(1, 2)
        inside_x = torch.arange(columns, device=image.device)[None] * CELL < size[:, :1]
        inside_y = torch.arange(rows, device=image.device)[None] * CELL < size[:, 1:]
        mask = inside_y[:, :, None] & inside_x[:, None, :]
        for layer in self.encoder:
            x = layer(x, mask.flatten(1)[:, None, None])
        return self.encoder_norm(x), mask

    def symbol_counts(self, memory: Tensor, mask: Tensor) -> Tensor:
        """How often each token seems to stand on the image [B,vocabulary]: a side task of training."""
        cells = torch.sigmoid(self.count(memory).float() - 7)
        return (cells * mask.flatten(1)[..., None]).sum(1)

    def memory_keys(self, memory: Tensor) -> tuple[Tensor, Tensor]:
        """Keys and values [L,B,h,N,d] of every decoder layer."""
        pairs = [layer.cross_attention.keys_values(memory) for layer in self.decoder]
        return torch.stack([keys for keys, _ in pairs]), torch.stack([values for _, values in pairs])

    def decode(self, tokens: Tensor, memory: Tensor, mask: Tensor) -> tuple[Tensor, Tensor]:
        """Teacher forcing: tokens [B,T], the start token first -> logits [B,T,V], weights of the last layer."""
        x = self.embedding(tokens) * math.sqrt(self.config.width) + self.places[: tokens.shape[1]]
        x = F.dropout(x, 0.1, self.training)
        blank = torch.zeros(len(tokens), self.config.heads, mask[0].numel(), device=x.device)
        weights = None
        for layer in self.decoder:
            y = layer.norm_self(x)
            x = x + layer.dropout(layer.self_attention(y, *layer.self_attention.keys_values(y), causal=True))
            keys, values = layer.cross_attention.keys_values(memory)
            x, weights, _ = layer.cross(x, keys, values, mask, blank)
        assert weights is not None
        return self.output(self.decoder_norm(x)), weights

    def step(
        self, tokens: Tensor, state: DecoderState, keys: Tensor, values: Tensor, mask: Tensor
    ) -> tuple[Tensor, DecoderState, Tensor]:
        """Read on: tokens [B,T] after P earlier ones -> log-probabilities [B,T,V], new state, attention [B,T,N]."""
        length, past = tokens.shape[1], state.keys.shape[3]
        x = self.embedding(tokens) * math.sqrt(self.config.width) + self.places[past : past + length]
        query_place = torch.arange(past, past + length, device=tokens.device)[:, None]
        key_place = torch.arange(0, past + length, device=tokens.device)[None]
        causal = (key_place <= query_place)[None, None]
        first_covered = self.config.decoder_layers - self.config.coverage_layers
        all_keys, all_values, all_coverage = [], [], []
        weights = None
        for number, layer in enumerate(self.decoder):
            y = layer.norm_self(x)
            new_keys, new_values = layer.self_attention.keys_values(y)
            new_keys = torch.cat([state.keys[number], new_keys], 2)
            new_values = torch.cat([state.values[number], new_values], 2)
            x = x + layer.self_attention(y, new_keys, new_values, causal)
            covered = state.coverage[number - first_covered] if number >= first_covered else None
            x, weights, coverage = layer.cross(x, keys[number], values[number], mask, covered)
            all_keys.append(new_keys)
            all_values.append(new_values)
            if coverage is not None:
                all_coverage.append(coverage)
        assert weights is not None
        aligned = self.config.aligned_heads or self.config.heads
        kept = torch.stack(all_coverage) if all_coverage else state.coverage
        log_probs = F.log_softmax(self.output(self.decoder_norm(x)).float(), -1)
        new_state = DecoderState(torch.stack(all_keys), torch.stack(all_values), kept)
        return log_probs, new_state, weights[:, :aligned].mean(1)

    def start(self, batch: int, cells: int, like: Tensor) -> DecoderState:
        """The state before the first token."""
        config = self.config
        shape = (config.decoder_layers, batch, config.heads, 0, config.width // config.heads)
        coverage = torch.zeros(config.coverage_layers, batch, config.heads, cells, device=like.device)
        return DecoderState(like.new_zeros(shape), like.new_zeros(shape), coverage)


def _grid_places(rows: int, columns: int, width: int, like: Tensor) -> Tensor:
    """Sine positions of the cells [rows,columns,width]: the first half tells the row, the second the column."""
    quarter = width // 4
    step = torch.arange(quarter, device=like.device, dtype=torch.float32) * (-math.log(1000.0) / quarter)

    def waves(count: int) -> Tensor:
        angle = torch.arange(count, device=like.device, dtype=torch.float32)[:, None] * step.exp()
        return torch.cat([angle.sin(), angle.cos()], 1)

    y = waves(rows)[:, None].expand(rows, columns, 2 * quarter)
    x = waves(columns)[None].expand(rows, columns, 2 * quarter)
    return torch.cat([y, x], 2).to(like.dtype)


def both_directions(tokens: Tensor, starts: Sequence[int], end: int) -> tuple[Tensor, Tensor]:
    """Tokens [B,T] padded with -1 -> inputs and labels [2B,T+1] of both reading directions, labels padded with -1."""
    batch, length = tokens.shape
    counts = (tokens >= 0).sum(1)
    place = torch.arange(length, device=tokens.device)[None]
    mirrored = torch.gather(tokens, 1, (counts[:, None] - 1 - place).clamp(min=0))
    mirrored = mirrored.masked_fill(place >= counts[:, None], -1)
    both = torch.cat([tokens, mirrored])
    first = torch.cat([torch.full((batch, 1), start, device=tokens.device) for start in starts])
    inputs = torch.cat([first, both.clamp(min=0)], 1)
    labels = torch.cat([both, torch.full((2 * batch, 1), -1, device=tokens.device)], 1)
    labels.scatter_(1, torch.cat([counts, counts])[:, None], end)
    return inputs, labels
