"""Single changes tried blindly, for lines whose values cannot be matched term by term: signs, numbers, powers."""

from __future__ import annotations

import re
from collections.abc import Iterator

from checker.slips.frames import Frame, at_term, flip, flip_side
from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.syntax.tree import Number, Sum, walk

__all__ = ["trials"]

MOST_SIGNS = 10
MOST_NUMBERS = 6


def trials(frame: Frame, before: str) -> Iterator[Proposal]:
    """Each sign turned, then each number replaced by one of the line before or by a near one.

    Args:
        frame: the written line.
        before: the text of the line before.
    """
    count = 0
    for side in frame.sides:
        if not isinstance(side, Sum):
            edit = flip_side(frame.line, side)
            yield Proposal(3.4, "sign", side.span, _turned(frame, side.span), _SIGN, (edit,))
        for node in walk(side):
            for place, term in enumerate(node.terms if isinstance(node, Sum) else ()):
                turned = flip(frame, term, place == 0)
                if turned is not None and count < MOST_SIGNS:
                    count += 1
                    yield at_term(frame, 3.3, "sign", [turned], _SIGN)
    yield from _numbers(frame, before)


_SIGN = "with the other sign the line follows"


def _turned(frame: Frame, span: tuple[int, int]) -> str:
    text = frame.line[slice(*span)].strip()
    return text[1:] if text.startswith("-") else "-" + text


def _numbers(frame: Frame, before: str) -> Iterator[Proposal]:
    known = list(dict.fromkeys(re.findall(r"\d+", before)))[:8]
    count = 0
    for side in frame.sides:
        for node in walk(side):
            if not isinstance(node, Number) or node.value.denominator != 1 or not node.text.isdigit():
                continue
            count += 1
            if count > MOST_NUMBERS:
                return
            near = [str(node.value + step) for step in (-1, 1) if node.value + step > 0]
            for cost, texts in ((3.5, known), (3.6, near)):
                for text in texts:
                    if text != node.text:
                        because = f"with {text} in place of {node.text} the line follows"
                        yield at_term(frame, cost, "arithmetic", [Edit(node.span, text)], because)
