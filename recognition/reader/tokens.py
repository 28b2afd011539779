"""Which tokens make up a written line, and when do two LaTeX texts say the same writing?

The canonical form keeps what can be seen on paper and nothing else: scripts always in braces, subscript before
superscript, groups flattened, sizes and spaces dropped, look-alike commands merged.
"""

from __future__ import annotations

import re
import string
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

__all__ = [
    "EOS",
    "L2R",
    "LOWER_SCHOOL",
    "PAD",
    "R2L",
    "SCHOOL",
    "SPECIAL",
    "TOKEN_ID",
    "VOCABULARY",
    "Fraction",
    "Node",
    "NotCanonical",
    "Root",
    "Row",
    "Script",
    "Symbol",
    "is_lower_school",
    "is_school",
    "is_valid",
    "normalise",
    "parse",
    "serialise",
    "split_tokens",
]

PAD, EOS, L2R, R2L = range(4)
SPECIAL: Final = ("<pad>", "<eos>", "<l2r>", "<r2l>")

_OPERATORS: Final = (
    "+", "-", "=", "<", ">", r"\le", r"\ge", r"\ne", r"\times", r"\div", r"\cdot", r"\pm", r"\mp",
    "(", ")", "[", "]", r"\{", r"\}", "|", ",", ".", "!", "/", ":", "%",
)  # fmt: skip
_STRUCTURE: Final = ("^", "_", "{", "}", r"\frac", r"\sqrt")
_NAMES: Final = (r"\int", r"\sum", r"\lim", r"\sin", r"\cos", r"\tan", r"\log", r"\ln")
_GREEK: Final = (
    r"\alpha", r"\beta", r"\gamma", r"\Delta", r"\theta", r"\lambda", r"\mu", r"\pi", r"\sigma", r"\phi", r"\omega",
)  # fmt: skip
_SIGNS: Final = (
    r"\infty", r"\rightarrow", r"\Rightarrow", r"\ldots", r"\in", r"\forall", r"\exists", r"\prime", r"\approx",
    r"\equiv", r"\therefore",
)  # fmt: skip
_ADDED: Final = (r"\text{or}", r"\text{and}", r"\circ", r"\because", r"\Leftrightarrow")

VOCABULARY: Final[tuple[str, ...]] = (
    *SPECIAL, *string.digits, *string.ascii_lowercase, *string.ascii_uppercase,
    *_OPERATORS, *_STRUCTURE, *_NAMES, *_GREEK, *_SIGNS, *_ADDED,
)  # fmt: skip
"""In the order of the model's outputs; new tokens go to the end. At run time the model's own list counts."""

TOKEN_ID: Final[dict[str, int]] = {token: number for number, token in enumerate(VOCABULARY)}

SCHOOL: Final[frozenset[str]] = frozenset(
    (*string.digits, *string.ascii_lowercase, *"ABCPQRXYZ", "+", "-", "=", "<", ">", r"\le", r"\ge", r"\ne", r"\times",
     r"\div", r"\cdot", r"\pm", "(", ")", ",", ".", "/", "^", "{", "}", r"\frac", r"\sqrt", r"\pi")
)  # fmt: skip
"""School algebra: no calculus, sums, subscripts or set signs."""

LOWER_SCHOOL: Final[frozenset[str]] = frozenset(
    (*string.digits, *(letter for letter in string.ascii_lowercase if letter not in "ol"), "+", "-", "=", "<", ">",
     r"\le", r"\ge", r"\ne", r"\times", r"\div", r"\pm", "(", ")", ".", "^", "{", "}", r"\frac", r"\sqrt", "/")
)  # fmt: skip
"""School algebra without capitals, o, l and Greek: what a user may declare for a page."""

_MERGED: Final = {
    r"\leq": r"\le", r"\leqslant": r"\le", "≤": r"\le", r"\geq": r"\ge", r"\geqslant": r"\ge", "≥": r"\ge",
    r"\neq": r"\ne", "≠": r"\ne", r"\lt": "<", r"\gt": ">", "×": r"\times", r"\ast": r"\times", "*": r"\times",
    "÷": r"\div", "·": r"\cdot", "⋅": r"\cdot", "±": r"\pm", "∓": r"\mp", "−": "-", "–": "-",
    r"\lbrace": r"\{", r"\rbrace": r"\}", r"\lbrack": "[", r"\rbrack": "]", r"\lparen": "(", r"\rparen": ")",
    r"\vert": "|", r"\mid": "|", r"\lvert": "|", r"\rvert": "|", r"\|": "|", r"\parallel": "|",
    r"\dots": r"\ldots", r"\cdots": r"\ldots", r"\dotsc": r"\ldots", r"\dotsb": r"\ldots", "…": r"\ldots",
    r"\dfrac": r"\frac", r"\tfrac": r"\frac", r"\cfrac": r"\frac", r"\tg": r"\tan", r"\lg": r"\log",
    r"\varphi": r"\phi", r"\vartheta": r"\theta", r"\colon": ":", r"\%": "%", "π": r"\pi", "∞": r"\infty",
    r"\to": r"\rightarrow", r"\longrightarrow": r"\rightarrow", "→": r"\rightarrow",
    r"\implies": r"\Rightarrow", r"\Longrightarrow": r"\Rightarrow", "⇒": r"\Rightarrow",
    r"\iff": r"\Leftrightarrow", r"\Longleftrightarrow": r"\Leftrightarrow", "⇔": r"\Leftrightarrow",
    "⟺": r"\Leftrightarrow", "∴": r"\therefore", "∵": r"\because", "′": "'",
}  # fmt: skip

_UNSEEN: Final = frozenset((
    r"\left", r"\right", r"\big", r"\Big", r"\bigg", r"\Bigg", r"\bigl", r"\bigr", r"\Bigl", r"\Bigr", r"\,", r"\;",
    r"\!", r"\:", r"\ ", r"\quad", r"\qquad", r"\displaystyle", r"\textstyle", r"\limits", r"\nolimits", r"\mathrm",
    r"\mathit", r"\mathbf", r"\mathnormal", r"\text", r"\textrm", r"\mbox", r"\operatorname", r"\rm", "$", "~",
    r"\space", r"\strut",
))  # fmt: skip
"""Commands that leave no ink of their own."""

_WORD = re.compile(r"\\(?:text|textrm|mathrm|mbox|operatorname)\s*\{\s*(o\s*r|a\s*n\s*d)\s*\}")
_TOKEN = re.compile(r"\\text\{(?:or|and)\}|\\[a-zA-Z]+|\\.|\S", re.DOTALL)
_REWRITTEN: Final = (
    (re.compile(r"\\(?:left|right)\s*\.(?!\d)"), " "),  # an invisible bracket
    (re.compile(r"\\not\s*="), r"\\ne "),
    (re.compile(r"\\degree(?![a-zA-Z])|°"), r"^{\\circ}"),
)
_MAX_DEPTH: Final = 40  # no hand nests deeper; stops hostile text before Python's own limit


class NotCanonical(ValueError):
    """The LaTeX has no canonical form: a token out of the vocabulary, or a structure that does not close."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """A sign with ink of its own."""

    text: str


@dataclass(frozen=True, slots=True)
class Fraction:
    """One row above another, with a bar between them."""

    numerator: Row
    denominator: Row


@dataclass(frozen=True, slots=True)
class Root:
    """A row under a root sign; index is empty for the square root."""

    radicand: Row
    index: Row = ()


@dataclass(frozen=True, slots=True)
class Script:
    """A base with what is written below and above its right shoulder; at least one of the two is not empty."""

    base: Node
    sub: Row = ()
    sup: Row = ()


Node = Symbol | Fraction | Root | Script
Row = tuple[Node, ...]

_PRIME: Final = Symbol(r"\prime")


def split_tokens(latex: str) -> list[str]:
    """Cut LaTeX into vocabulary tokens, merging look-alike commands and dropping what leaves no ink."""
    latex = _WORD.sub(lambda match: r" \text{" + "".join(match[1].split()) + "} ", latex)
    for pattern, replacement in _REWRITTEN:
        latex = pattern.sub(replacement, latex)
    return [_MERGED.get(token, token) for token in _TOKEN.findall(latex) if token not in _UNSEEN]


def parse(latex: str) -> Row:
    """Read LaTeX as a tree of what is written where.

    Raises:
        NotCanonical: a token is out of the vocabulary, or the structure does not close.
    """
    return _Parser(split_tokens(latex)).whole()


def serialise(row: Iterable[Node]) -> list[str]:
    """The canonical tokens of a tree."""
    out: list[str] = []
    for node in row:
        match node:
            case Symbol(text):
                out.append(text)
            case Fraction(numerator, denominator):
                out += [r"\frac", "{", *serialise(numerator), "}", "{", *serialise(denominator), "}"]
            case Root(radicand, index):
                out.append(r"\sqrt")
                if index:
                    out += ["[", *serialise(index), "]"]
                out += ["{", *serialise(radicand), "}"]
            case Script(base, sub, sup):
                out += serialise((base,))
                if sub:
                    out += ["_", "{", *serialise(sub), "}"]
                if sup:
                    out += ["^", "{", *serialise(sup), "}"]
    return out


def normalise(latex: str) -> list[str]:
    """The canonical tokens of LaTeX text; a second pass changes nothing.

    Raises:
        NotCanonical: a token is out of the vocabulary, or the structure does not close.
    """
    return serialise(parse(latex))


def is_valid(tokens: Sequence[str]) -> bool:
    """The tokens are well formed and canonical. Syntax only, never mathematics."""
    try:
        return bool(tokens) and serialise(_Parser(list(tokens)).whole()) == list(tokens)
    except NotCanonical:
        return False


def is_school(tokens: Iterable[str]) -> bool:
    """All the tokens are school algebra."""
    return all(token in SCHOOL for token in tokens)


def is_lower_school(tokens: Iterable[str]) -> bool:
    """All the tokens are school algebra in lower case, without o, l and Greek."""
    return all(token in LOWER_SCHOOL for token in tokens)


class _Parser:
    """Reads a token list from left to right, once."""

    def __init__(self, tokens: list[str]) -> None:
        self._tokens = tokens
        self._at = 0
        self._depth = 0

    def whole(self) -> Row:
        row = self._row("")
        if self._at != len(self._tokens):
            raise NotCanonical(f"Nothing opens the {self._peek()} at token {self._at + 1}.")
        return row

    def _peek(self) -> str:
        return self._tokens[self._at] if self._at < len(self._tokens) else ""

    def _row(self, stop: str) -> Row:
        self._depth += 1
        if self._depth > _MAX_DEPTH:
            raise NotCanonical("The groups are nested too deep.")
        row: list[Node] = []
        while (token := self._peek()) and token not in ("}", stop):
            if token in ("^", "_", "'"):
                self._scripts(row)
            else:
                for node in self._atom():
                    _append(row, node)
        self._depth -= 1
        return tuple(row)

    def _scripts(self, row: list[Node]) -> None:
        if not row and self._peek() == "^":  # a prime or degree sign annotated without its base
            self._at += 1
            for node in self._argument():
                _append(row, node)
            return
        if not row:
            raise NotCanonical("A script stands without a base.")
        script = _as_script(row.pop())
        while (mark := self._peek()) in ("^", "_", "'"):
            self._at += 1
            if mark == "'":
                script = _merged(script, (), (_PRIME,))
            elif mark == "^":
                script = _merged(script, (), self._argument())
            else:
                script = _merged(script, self._argument(), ())
        row.append(script if script.sub or script.sup else script.base)

    def _argument(self) -> Row:
        if self._peek() != "{":
            return self._atom()
        self._at += 1
        row = self._row("}")
        if self._peek() != "}":
            raise NotCanonical("A brace is not closed.")
        self._at += 1
        return row

    def _atom(self) -> Row:
        token = self._peek()
        if token == "{":
            group = self._argument()
            if not group and self._peek() in ("^", "_", "'"):
                raise NotCanonical("A script stands on an empty group.")
            return group
        self._at += 1
        if token == r"\frac":
            return (Fraction(self._filled("fraction"), self._filled("fraction")),)
        if token == r"\sqrt":
            index = self._index()
            return (Root(self._filled("root"), index),)
        if token not in TOKEN_ID or token in SPECIAL or token in ("^", "_", "}"):
            raise NotCanonical(f"{token or 'The end'} cannot stand here.")
        return (Symbol(token),)

    def _filled(self, what: str) -> Row:
        row = self._argument()
        if not row:
            raise NotCanonical(f"A {what} is empty.")
        return row

    def _index(self) -> Row:
        if self._peek() != "[":
            return ()
        self._at += 1
        index = self._row("]")
        if self._peek() != "]":
            raise NotCanonical("The index of a root is not closed.")
        self._at += 1
        if any(_head(node) == Symbol("]") for node in index):  # hidden in a group; unreadable once flattened
            raise NotCanonical("The index of a root holds a square bracket.")
        return index


def _head(node: Node) -> Node:
    return node.base if isinstance(node, Script) else node


def _as_script(node: Node) -> Script:
    return node if isinstance(node, Script) else Script(node)


def _append(row: list[Node], node: Node) -> None:
    """Add a node; a prime after something becomes its superscript, as it is written."""
    if _head(node) == _PRIME and row and row[-1] != _PRIME:
        tail = _as_script(node)
        row.append(_merged(_merged(_as_script(row.pop()), (), (_PRIME,)), tail.sub, tail.sup))
    else:
        row.append(node)


def _merged(script: Script, sub: Row, sup: Row) -> Script:
    if script.sub and sub:
        raise NotCanonical("A base has two subscripts.")
    raised: list[Node] = []
    both = (*script.sup, *sup)
    for node in (*(n for n in both if n == _PRIME), *(n for n in both if n != _PRIME)):
        _append(raised, node)
    return Script(script.base, script.sub or sub, tuple(raised))
