"""Values and terms as LaTeX, in the way of the line they stand in."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction as Rational

from checker.slips.values import SIGN, Monomial, Value

__all__ = ["Style", "signed", "style_of", "unsigned", "write_value"]


@dataclass(frozen=True, slots=True)
class Style:
    """How terms are written: decimals or fractions, and the letters in the order in which they came before."""

    decimals: bool = False
    order: tuple[str, ...] = ()

    def after(self, text: str) -> Style:
        """The same style with the letters ordered as in a text."""
        found = _letters(text)
        return replace(self, order=tuple(found)) if len(found) > 1 else self


PLAIN = Style()


def style_of(before: str, written: str) -> Style:
    """The style of two lines; letters stand in the order of the first product of letters, the written line's first."""
    decimals = any(re.search(r"\.\d", text) for text in (before, written))
    products = (_PRODUCT.search(_COMMAND.sub(" ", text)) for text in (written, before))
    order = next((tuple(_letters(found[0])) for found in products if found is not None), ())
    return Style(decimals, order)


_COMMAND = re.compile(r"\\[A-Za-z]+")
_PRODUCT = re.compile(r"[A-Za-z](?:\^(?:\w|\{\w+\}))?[A-Za-z]")


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


def _place(atom: str, style: Style) -> tuple[int, str]:
    return (style.order.index(atom) if atom in style.order else len(style.order)), atom


def _term(key: Monomial, coefficient: Rational, style: Style) -> str | None:
    sign = "-" if coefficient < 0 else ""
    size = abs(coefficient)
    top, bottom, plus_minus, radicand = "", "", False, 1
    for atom, exponent in sorted(key, key=lambda pair: _place(pair[0], style)):
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
            return None
        word, tail = name[1], name[2] + _subscript(name[3])
        piece = word + tail if len(word) == 1 else f"\\{word}{tail or ' '}"
        if exponent == Rational(1, 2):
            top += f"\\sqrt{{{piece.strip()}}}"
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
