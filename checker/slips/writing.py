"""Values and terms as LaTeX, in the way of the line they stand in."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction as Rational

from checker.slips.atoms import read_atom
from checker.slips.values import SIGN, Monomial, Value

__all__ = ["Style", "signed", "style_of", "unsigned", "write_value"]


@dataclass(frozen=True, slots=True)
class Style:
    """How terms are written: decimals or fractions, and the products of letters that stand in the lines, in order."""

    decimals: bool = False
    products: tuple[tuple[str, ...], ...] = ()

    def after(self, text: str) -> Style:
        """The same style with the letters ordered first as in a text."""
        found = tuple(_letters(text))
        return replace(self, products=(found, *self.products)) if len(found) > 1 else self

    def order(self, letters: frozenset[str]) -> tuple[str, ...]:
        """The order of some letters: as in the first product that has them all, else as in the alphabet."""
        return next((product for product in self.products if letters <= set(product)), ())


PLAIN = Style()


def style_of(before: str, written: str) -> Style:
    """The style of two lines; letters stand in the order of the first product of letters, the written line's first."""
    decimals = any(re.search(r"\.\d", text) for text in (before, written))
    texts = (_COMMAND.sub(" ", text) for text in (written, before))
    products = tuple(tuple(_letters(found)) for text in texts for found in _PRODUCT.findall(text))
    return Style(decimals, products)



_COMMAND = re.compile(r"\\[A-Za-z]+")
_PRODUCT = re.compile(r"[A-Za-z](?:(?:\^(?:\w|\{\w+\}))?[A-Za-z])+")


def _letters(text: str) -> dict[str, None]:
    return dict.fromkeys(re.findall(r"[A-Za-z]", _COMMAND.sub(" ", text)))


def write_value(value: Value, style: Style = PLAIN) -> str | None:
    """A sum as LaTeX, highest degree first; None when an atom has no plain text."""
    if not value:
        return "0"
    text = ""
    for key in sorted(value, key=_order):
        piece = _term(key, value[key], style)
        if piece is None:
            return None
        text += piece if piece.startswith("-") or not text else "+" + piece
    return text


def signed(text: str) -> str:
    """The term with its sign, plus or minus, for use after another term."""
    return text if text.startswith(("-", "+", "\\pm", "\\mp")) else "+" + text


def unsigned(text: str) -> str:
    """The term without a leading plus."""
    return text[1:] if text.startswith("+") else text


def _order(key: Monomial) -> tuple[Rational, tuple[tuple[str, Rational], ...]]:
    degree = sum((exponent for atom, exponent in key if not atom.isdigit()), Rational(0))
    return -degree, tuple((atom, -exponent) for atom, exponent in key)


def _number(value: Rational, style: Style) -> str:
    if value.denominator == 1:
        return str(value.numerator)
    if style.decimals:
        bottom = value.denominator
        for prime in (2, 5):
            while bottom % prime == 0:
                bottom //= prime
        if bottom == 1:
            digits = 0
            while (value * 10**digits).denominator != 1:
                digits += 1
            return f"{float(value):.{digits}f}" if digits < 12 else _fraction(value)
    return _fraction(value)


def _fraction(value: Rational) -> str:
    return f"\\frac{{{value.numerator}}}{{{value.denominator}}}"


def _power(exponent: Rational) -> str:
    if exponent == 1:
        return ""
    text = str(exponent.numerator) if exponent.denominator == 1 else _fraction(exponent)
    return f"^{text}" if len(text) == 1 else f"^{{{text}}}"


def _subscript(text: str | None) -> str:
    if not text:
        return ""
    return text if len(text) == 2 or text.startswith("_{") else f"_{{{text[1:]}}}"


def _place(atom: str, order: tuple[str, ...]) -> tuple[bool, int, str]:
    """Letters first, in the order of the line, then functions and roots."""
    return not atom[:1].isalpha() or "[" in atom, _index(atom, order), atom


def _index(atom: str, order: tuple[str, ...]) -> int:
    return order.index(atom) if atom in order else len(order)


def _term(key: Monomial, coefficient: Rational, style: Style) -> str | None:
    sign = "-" if coefficient < 0 else ""
    size = abs(coefficient)
    top, bottom, plus_minus, radicand = "", "", False, 1
    order = style.order(frozenset(atom for atom, _ in key if len(atom) == 1 and atom.isalpha()))
    for atom, exponent in sorted(key, key=lambda pair: _place(pair[0], order)):
        if atom == SIGN:
            plus_minus = True
            continue
        if atom.isdigit():
            if exponent != Rational(1, 2):
                return None
            radicand *= int(atom)
            continue
        name = re.fullmatch(r"([A-Za-z]+)('*)(_.*)?", atom)
        if name is None:
            named = _named(atom, exponent, style)
            if named is None:
                return None
            above, below = named
            top, bottom = (top + above).removesuffix(" "), bottom + below
            continue
        word, tail = name[1], name[2] + _subscript(name[3])
        piece = word + tail if len(word) == 1 else f"\\{word}{tail or ' '}"
        if exponent == Rational(1, 2):
            top += f"\\sqrt{{{piece.strip()}}}"
        elif exponent == -Rational(1, 2):
            bottom += f"\\sqrt{{{piece.strip()}}}"
        elif exponent > 0:
            top += piece + _power(exponent)
        else:
            bottom += piece + _power(-exponent)
    if radicand > 1:
        top += f"\\sqrt{{{radicand}}}"
    top, bottom = top.strip(), bottom.strip()
    if plus_minus:
        sign = "\\mp" if sign else "\\pm"
        if (top or bottom)[:1].isalpha() and size == 1:
            sign += " "
    if top[:1].isdigit() and size != 1:
        top = "\\cdot " + top
    if re.fullmatch(r"\([^()]*\)", bottom) and size.denominator == 1:
        bottom = bottom[1:-1]
    if bottom:
        above = (str(size.numerator) if size.numerator != 1 or not top else "") + top
        below = (str(size.denominator) if size.denominator != 1 else "") + bottom
        return f"{sign}\\frac{{{above}}}{{{below}}}"
    if not top:
        return sign + _number(size, style)
    if size.denominator != 1 and not style.decimals:
        above = (str(size.numerator) if size.numerator != 1 else "") + top
        return f"{sign}\\frac{{{above}}}{{{size.denominator}}}"
    return sign + ("" if size == 1 else _number(size, style)) + top


_FUNCTIONS = frozenset({"sin", "cos", "tan", "sec", "csc", "cot", "ln", "log", "exp", "arcsin", "arccos", "arctan"})


def _named(atom: str, exponent: Rational, style: Style) -> tuple[str, str] | None:
    """A root, a function or a raised number as what it adds to the top and to the bottom of a term."""
    named = read_atom(atom)
    inside = None if named is None else write_value(named.inside, style)
    if named is None or inside is None:
        return None
    size = abs(exponent)
    match named.kind:
        case "function" if named.name in _FUNCTIONS and size.denominator == 1:
            raised = "" if size == 1 else _power(size)
            argument = f" {inside}" if len(inside) == 1 or inside.isdigit() else f"({inside})"
            text = f"\\{named.name}{raised}{argument}"
        case "bars" if size.denominator == 1:
            text = f"\\lvert {inside} \\rvert{_power(size)}"
        case "sum" if size == Rational(1, 2):
            text = f"\\sqrt{{{inside}}}"
        case "sum" if size.denominator == 1:
            text = f"({inside}){_power(size)}"
        case "raised" if named.exponent is not None and exponent.denominator == 1:
            letters = write_value({key: number * exponent for key, number in named.exponent.items()}, style)
            if letters is None or not (inside.isdigit() or len(inside) == 1):
                return None
            return f"{inside}^{letters if len(letters) == 1 else '{' + letters + '}'}", ""
        case _:
            return None
    return (text, "") if exponent > 0 else ("", text)
