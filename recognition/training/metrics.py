"""How symbols sit on a line of writing: heights, widths and kinds of tokens.

Units: a digit is 1 high; y grows downwards; the baseline of the line is y = 0.
"""

from __future__ import annotations

from typing import Final, NamedTuple

__all__ = ["ASCENDERS", "BINARY", "DESCENDERS", "METRICS", "X_HEIGHT", "Metric"]


class Metric(NamedTuple):
    """How a token sits on the line: "height" fits top to bottom, "width" a width at a height, "dot" a size at one."""

    fit: str
    first: float
    second: float


ASCENDERS: Final = frozenset(
    [*"bdfhklt0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ!%", r"\Delta", r"\theta", r"\lambda", r"\forall", r"\exists"]
)
X_HEIGHT: Final = frozenset([*"acemnorsuvwxz", r"\alpha", r"\pi", r"\sigma", r"\omega"])
DESCENDERS: Final = frozenset([*"gpqy", r"\mu", r"\gamma"])
BINARY: Final = frozenset(
    ["+", "-", "=", "<", ">", r"\le", r"\ge", r"\ne", r"\times", r"\div", r"\pm", r"\mp", r"\rightarrow",
     r"\Rightarrow", r"\Leftrightarrow", r"\in", r"\approx", r"\equiv", r"\text{or}", r"\text{and}"]
)  # fmt: skip

METRICS: Final[dict[str, Metric]] = {
    **{token: Metric("height", -1.0, 0.0) for token in ASCENDERS},
    **{token: Metric("height", -0.62, 0.0) for token in X_HEIGHT},
    **{token: Metric("height", -0.62, 0.4) for token in DESCENDERS},
    **{token: Metric("height", -1.12, 0.2) for token in ("(", ")", "[", "]", r"\{", r"\}")},
    **{token: Metric("height", -0.85, 0.0) for token in (r"\le", r"\ge", r"\ne", r"\pm", r"\mp")},
    **{token: Metric("width", 0.6, -0.42) for token in ("=", r"\approx", r"\equiv")},
    **{token: Metric("width", 0.9, -0.4) for token in (r"\rightarrow", r"\Rightarrow", r"\Leftrightarrow")},
    "i": Metric("height", -0.85, 0.0), "j": Metric("height", -0.85, 0.4), "t": Metric("height", -0.9, 0.0),
    "f": Metric("height", -1.0, 0.15), "z": Metric("height", -0.65, 0.02), r"\beta": Metric("height", -1.0, 0.25),
    r"\phi": Metric("height", -0.9, 0.25), "|": Metric("height", -1.15, 0.2), "/": Metric("height", -1.1, 0.15),
    "+": Metric("height", -0.75, -0.1), "-": Metric("width", 0.55, -0.42), "<": Metric("height", -0.75, -0.12),
    ">": Metric("height", -0.75, -0.12), r"\times": Metric("height", -0.68, -0.15),
    r"\div": Metric("height", -0.75, -0.1), r"\cdot": Metric("dot", 0.1, -0.4), ",": Metric("height", -0.1, 0.2),
    ".": Metric("dot", 0.1, -0.05), ":": Metric("height", -0.55, -0.08), r"\int": Metric("height", -1.5, 0.5),
    r"\sum": Metric("height", -1.15, 0.25), r"\infty": Metric("width", 0.85, -0.35),
    r"\ldots": Metric("width", 0.8, -0.06),
    r"\in": Metric("height", -0.7, 0.0), r"\prime": Metric("height", -0.4, 0.0),
    r"\therefore": Metric("height", -0.6, -0.05),
    r"\because": Metric("height", -0.6, -0.05), r"\circ": Metric("height", -0.35, 0.0),
    r"\sin": Metric("height", -0.85, 0.0), r"\cos": Metric("height", -0.65, 0.0), r"\tan": Metric("height", -0.9, 0.0),
    r"\log": Metric("height", -1.0, 0.35), r"\ln": Metric("height", -1.0, 0.0), r"\lim": Metric("height", -1.0, 0.0),
}  # fmt: skip
