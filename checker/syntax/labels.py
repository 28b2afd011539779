"""Numbers and letters that label a line: (3), 3., a), (iv)."""

from __future__ import annotations

from collections.abc import Sequence

from checker.syntax.tokens import Token

__all__ = ["after_label", "is_label"]

_LONGEST_LABEL = 5  # tokens before the closing bracket of a label


def is_label(tokens: Sequence[Token]) -> bool:
    """a) or 3) or 1. before something else."""
    if len(tokens) < 3:
        return False
    first, mark, following = tokens[:3]
    if first.kind in ("digit", "letter") and mark.kind == "close" and mark.text == ")":
        return True
    if first.kind != "digit" or mark.kind != ".":
        return False
    return following.kind not in ("digit", "command") or (following.blank and not mark.blank)


def after_label(tokens: Sequence[Token]) -> tuple[int, bool] | None:
    """Does (2), (a) or (iv) open the line and something else follow that may be a factor?

    Returns:
        How many tokens may be the label, and whether a label is likelier than a factor; None when there is no doubt.
    """
    size = 2
    while size < len(tokens) and tokens[size].kind in ("digit", "letter") and size < _LONGEST_LABEL:
        size += 1
    if size + 1 >= len(tokens) or [tokens[0].text, tokens[size].text] != ["(", ")"] or tokens[size].kind != "close":
        return None
    inside, following = tokens[1:size], tokens[size + 1]
    names = "".join(token.text for token in inside)
    if names.isdigit():
        fits = len(names) <= 2
    else:
        fits = len(names) == 1 or set(names) <= set("ivx")
        fits = fits and not any(token.kind == "letter" and token.text in names for token in tokens[size:])
    if not fits or following.kind not in ("digit", "letter", "command"):
        return None
    spaced = tokens[1].blank or (len(inside) > 1 and inside[1].blank)
    if following.kind == "digit" or names.isalpha():
        return size + 1, True
    return size + 1, following.blank and not spaced
