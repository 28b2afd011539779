"""Which labels does our merged vocabulary make easier than the data set's own captions?

Captions of the competition tell apart a few spellings that we read as one token, since a line of school algebra never
needs the difference. Counted strictly, such a label cannot be read rightly in our vocabulary. Spellings of one sign
(`\\leq` and `\\le`, `\\lbrack` and `[`), which published systems merge as well, are no help to us and do not count.
"""

from __future__ import annotations

import re
from typing import Final

__all__ = ["merged_spellings"]

_MERGED: Final = (
    r"\cdots", r"\limits", r"\|", r"\parallel", r"\mid", r"\ast", r"\varphi", r"\vartheta", r"\lg", r"\tg",
    r"\longrightarrow", r"\Longrightarrow", r"\implies", r"\iff", r"\dotsc", r"\dotsb",
)  # fmt: skip
"""Commands with a look of their own that `reader/tokens.py` merges into another, or drops."""
_COMMAND: Final = re.compile(r"\\(?:[a-zA-Z]+|.)")


def merged_spellings(label: str) -> tuple[str, ...]:
    """The commands of a label, as annotated, that a reading in our vocabulary cannot spell; in order, once each.

    Source: the symbol lists of CROHME (Mouchère et al., ICFHR 2014), where `\\cdots` stands beside `\\ldots`;
    `\\limits` is a token of the captions that published systems are measured with (common practice, no source).
    """
    found = _COMMAND.findall(label)
    return tuple(dict.fromkeys(command for command in found if command in _MERGED))
