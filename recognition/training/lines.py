"""Random lines of school algebra, right or wrong: what a pupil might write, so that the reader never leans on truth."""

from __future__ import annotations

import random
import string
from collections.abc import Mapping, Sequence
from typing import Final, TypeVar

from recognition.reader.tokens import Fraction, Node, Root, Row, Script, Symbol, parse

__all__ = ["ALIKE", "mutated", "other_like", "random_line"]

_LETTERS: Final = "x" * 10 + "y" * 5 + "aaabbbnnttww" + "pqzkmcurhvsd"
_RARE: Final = (*string.ascii_letters, r"\theta ", r"\pi ", r"\alpha ", r"\beta ", r"\lambda ")

T = TypeVar("T")

ALIKE: Final[dict[str, tuple[str, ...]]] = {
    token: group
    for group in (
        tuple(string.digits), tuple("acemnorsuvwxz"), tuple("bdhklt"), tuple("gpqy"), tuple("ABCDEFGHIKLMNPQRSTUVXYZ"),
        ("+", r"\times", r"\div", r"\pm"), ("=", r"\approx", "="), ("<", ">"), (r"\le", r"\ge"),
        (r"\sin", r"\cos", r"\tan", r"\log"),
        (r"\alpha", r"\beta", r"\gamma", r"\theta", r"\pi", r"\lambda", r"\mu", r"\sigma", r"\phi", r"\omega"),
    )
    for token in group
}  # fmt: skip
"""For each token those of like shape that may stand in its place without spoiling the layout."""


def random_line(rng: random.Random, *, long_share: float = 0.25) -> Row:
    """One line: an expression, an equation, an inequality, a chain, alternatives or an answer."""
    return parse(_Writer(rng).line(long=rng.random() < long_share))


def other_like(token: str, rng: random.Random, weights: Mapping[str, float] | None = None) -> str:
    """A token of like shape drawn by lot, evenly or by `weights`; the token itself where nothing is like it."""
    group = ALIKE.get(token)
    if group is None:
        return token
    if weights is None:
        return rng.choice(group)
    return rng.choices(group, [weights.get(one, 1.0) for one in group])[0]


def mutated(row: Row, share: float, rng: random.Random, weights: Mapping[str, float] | None = None) -> Row:
    """The same layout with some symbols replaced by others of like shape: breaks the meaning on purpose."""

    def changed(part: Row) -> Row:
        return mutated(part, share, rng, weights)

    out: list[Node] = []
    for node in row:
        match node:
            case Symbol(text):
                known = text in ALIKE and rng.random() < share
                out.append(Symbol(other_like(text, rng, weights)) if known else node)
            case Fraction(above, below):
                out.append(Fraction(changed(above), changed(below)))
            case Root(body, index):
                out.append(Root(changed(body), changed(index)))
            case Script(base, sub, sup):
                (new_base,) = changed((base,))
                out.append(Script(new_base, changed(sub), changed(sup)))
    return tuple(out)


class _Writer:
    """Writes LaTeX by lot; each line keeps to a few letters, as a real one does."""

    def __init__(self, rng: random.Random) -> None:
        self._rng = rng
        self._letters = [rng.choice(_LETTERS) for _ in range(self._pick((1, 2, 3), (62, 30, 8)))]
        if rng.random() < 0.08:
            self._letters[0] = rng.choice(_RARE)

    def _pick(self, choices: Sequence[T], weights: Sequence[float]) -> T:
        return self._rng.choices(choices, weights)[0]

    def _chance(self, share: float) -> bool:
        return self._rng.random() < share

    def _letter(self) -> str:
        return self._rng.choice(self._letters)

    def number(self, digits: int = 2) -> str:
        count = min(digits, self._pick((1, 2, 3, 4), (64, 26, 7, 3)))
        text = self._rng.choice("123456789") + "".join(self._rng.choice(string.digits) for _ in range(count - 1))
        if self._chance(0.05):
            text += "." + "".join(self._rng.choice(string.digits) for _ in range(self._pick((1, 2), (70, 30))))
        return text

    def signed(self) -> str:
        value = self.number() if self._chance(0.8) else self.fraction(0)
        return ("-" if self._chance(0.35) else "") + value

    def power(self, base: str) -> str:
        kind = self._pick(("2", "3", "digit", "minus", "letter", "number", "fraction"), (55, 20, 12, 4, 4, 2, 3))
        exponent = {
            "digit": self._rng.choice("456789"), "minus": "-" + self.number(1), "number": self.number(2),
            "letter": self._letter() + (self._rng.choice("+-") + self.number(1) if self._chance(0.4) else ""),
            "fraction": rf"\frac{{{self.number(1)}}}{{{self.number(1)}}}",
        }.get(kind, kind)  # fmt: skip
        return f"{base}^{{{exponent}}}"

    def monomial(self) -> str:
        if self._chance(0.25):
            return self.number(3)
        out = self.number(2) if self._chance(0.65) else ""
        for _ in range(self._pick((1, 2, 3), (74, 21, 5))):
            letter = self._letter()
            if self._chance(0.04):
                letter = f"{letter}_{{{self._rng.choice('0123n')}}}"
            out += self.power(letter) if self._chance(0.38) else letter + " "
        return out

    def polynomial(self, depth: int, terms: int | None = None) -> str:
        terms = terms or self._pick((1, 2, 3, 4, 5), (12, 36, 29, 16, 7))
        out = "-" if self._chance(0.14) else ""
        for number in range(terms):
            if number:
                out += self._pick(("+", "-", r"\pm "), (49, 49, 2))
            out += self.term(depth)
        return out

    def bracket(self, depth: int) -> str:
        opening, closing = self._pick((("(", ")"), ("[", "]"), (r"\{", r"\}")), (94, 4, 2))
        inner = depth - 1 if self._chance(0.25) else 0
        return opening + self.polynomial(inner, self._pick((1, 2, 3), (8, 72, 20))) + closing

    def term(self, depth: int) -> str:
        if depth <= 0 or self._chance(0.6):
            return self.monomial()
        kind = self._pick(("product", "fraction", "root", "numbers", "function", "bars"), (60, 20, 8, 6, 4, 2))
        if kind == "product":
            return self.product(depth)
        if kind == "fraction":
            return self.fraction(depth)
        if kind == "root":
            return (self.number(1) if self._chance(0.4) else "") + self.root(depth)
        if kind == "numbers":
            sign = self._rng.choice((r"\times ", r"\times ", r"\div ", r"\cdot ", "/"))
            return self.number(2) + sign + ("(-" + self.number(1) + ")" if self._chance(0.15) else self.number(2))
        if kind == "bars":
            return "|" + self.polynomial(0, self._pick((1, 2), (30, 70))) + "|"
        return self._rng.choice((r"\sin ", r"\cos ", r"\tan ", r"\log ", r"\ln ")) + self._letter()

    def product(self, depth: int) -> str:
        out = ""
        if self._chance(0.38):
            out = self.number(2) if self._chance(0.6) else self.monomial()
        for number in range(self._pick((1, 2, 3), (44, 46, 10))):
            if number and self._chance(0.05):
                out += self._rng.choice((r"\times ", r"\cdot "))
            bracket = self.bracket(depth)
            out += self.power(bracket) if self._chance(0.25) else bracket
        return out

    def fraction(self, depth: int) -> str:
        kind = self._pick(("numbers", "terms", "sums"), (45, 25, 30))
        if kind == "numbers" or depth <= 0:
            return rf"\frac{{{self.number(2)}}}{{{self.number(2)}}}"
        if kind == "terms":
            return rf"\frac{{{self.monomial()}}}{{{self.monomial()}}}"
        above, below = self._pick((1, 2, 3), (25, 50, 25)), self._pick((1, 2), (55, 45))
        return rf"\frac{{{self.polynomial(depth - 1, above)}}}{{{self.polynomial(depth - 1, below)}}}"

    def root(self, depth: int) -> str:
        index = f"[{self.number(1)}]" if self._chance(0.1) else ""
        return rf"\sqrt{index}{{{self.polynomial(depth - 1, self._pick((1, 2, 3), (50, 30, 20)))}}}"

    def side(self, long: bool) -> str:
        if long:
            return self.polynomial(self._pick((0, 1, 2), (40, 45, 15)), self._pick((3, 4, 5, 6), (35, 30, 20, 15)))
        return self.polynomial(self._pick((0, 1, 2), (45, 42, 13)))

    def line(self, *, long: bool) -> str:
        letter = self._letter()
        kind = self._pick(
            ("expression", "equation", "continued", "answer", "inequality", "double", "formula", "list", "or", "chain",
             "arrow", "numbers", "plus-minus"),
            (14, 27, 17, 7, 7, 3, 4, 3, 6, 4, 3, 3, 2),
        )  # fmt: skip
        relation = self._rng.choice(("<", ">", r"\le ", r"\ge ", r"\ne "))
        match kind:
            case "expression":
                return self.side(long)
            case "equation":
                return self.side(long) + "=" + (self.side(long) if self._chance(0.6) else self.signed())
            case "continued":
                return "=" + self.side(long)
            case "answer":
                return f"{letter} =" + (self.signed() if self._chance(0.5) else self.side(False))
            case "inequality":
                return self.side(False) + relation + self.side(False)
            case "double":
                less = self._rng.choice(("<", r"\le "))
                return f"{self.signed()} {less} {letter} {less} {self.signed()}"
            case "formula":
                above = f"-{self.signed()}" + r"\pm " + self.root(1)
                return f"{letter} =" + rf"\frac{{{above}}}{{{self.number(1)}}}"
            case "list":
                return f"{letter} ={self.signed()}, {letter} ={self.signed()}"
            case "or":
                word = self._pick((r"\text{or}", r"\text{and}", ","), (80, 12, 8))
                second = f"{letter} ={self.signed()}" if self._chance(0.8) else self.signed()
                if self._chance(0.3):
                    return f"{self.polynomial(0, 2)}=0 {word} {self.polynomial(0, 2)}=0"
                return f"{letter} ={self.signed()} {word} {second}"
            case "chain":
                return "=".join(self.polynomial(1) for _ in range(3))
            case "arrow":
                arrows = (r"\Rightarrow ", r"\therefore ", r"\rightarrow ", r"\Leftrightarrow ", r"\because ")
                arrow = self._pick(arrows, (35, 35, 12, 10, 8))
                return arrow + self.polynomial(1) + "=" + self.polynomial(0)
            case "plus-minus":
                return f"{letter} =" + r"\pm " + (self.number(2) if self._chance(0.6) else self.root(1))
            case _:
                sign = self._rng.choice(("+", "-", r"\times ", r"\div "))
                degrees = r"^{\circ}" if self._chance(0.15) else ""
                return f"{self.number(3)}{degrees}{sign}{self.number(2)}{degrees}={self.number(3)}{degrees}"
