"""Sums that hold roots, logarithms, powers or angles, as a pupil would write them, in LaTeX."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import gcd, lcm
from typing import Any

from checker.polynomial import (
    BITS,
    ONE,
    Poly,
    Quotient,
    constant_value,
    exponents,
    is_constant,
    letters_in,
    multiply,
)
from checker.ring import Ring
from checker.written import MAX_BITS, fraction_latex, polynomial_latex

__all__ = ["surd_latex"]

_WAVES = ("sin", "cos")
_LONGEST_SURD = 10**9


class _UnwritableError(Exception):
    """There is no plain way to write it."""


def surd_latex(ring: Ring, top: Poly, bottom: Poly = ONE) -> str | None:
    """A polynomial in letters and atoms of the ring over a number; None when it cannot be written plainly."""
    if not is_constant(bottom):
        top, bottom = _rationalised(ring, top, bottom)
    if not is_constant(bottom):
        return None
    if not top:
        return "0"
    whole = bottom[0]
    share = gcd(whole, *top.values()) * (-1 if whole < 0 else 1)
    below = whole // share
    if below.bit_length() > MAX_BITS:
        return None
    rows = []
    is_open = any(kind != "surd" for kind, _, number in ring.atoms if number in letters_in(top))
    try:
        for key, value in top.items():
            degree, has_atoms, text = _monomial(ring, key)
            rows.append(((has_atoms and degree == 0, -degree, has_atoms, text), text, value // share))
    except _UnwritableError:
        return None
    rows.sort(key=lambda row: (not row[1] and is_open, row))
    out = ""
    for _, text, number in rows:
        sign = "-" if number < 0 else "+" if out else ""
        if number.bit_length() > MAX_BITS:
            return None
        size = str(abs(number))
        join = " \\times " if text[:1].isdigit() and size != "1" else ""
        out += sign + ("" if text and size == "1" else size) + join + text
    if below == 1:
        return out
    return f"-\\frac{{{out[1:]}}}{{{below}}}" if len(rows) == 1 and out[0] == "-" else f"\\frac{{{out}}}{{{below}}}"


def _rationalised(ring: Ring, top: Poly, bottom: Poly) -> Quotient:
    """The quotient with the root of one number taken out of the denominator: k root n, or a + b root n."""
    surds = {number for kind, _, number in ring.atoms if kind == "surd"}
    used = letters_in(bottom)
    if len(used) != 1 or not used <= surds:
        return top, bottom
    (letter,) = used
    index = ring.relations[letter][0]
    if len(bottom) == 1:
        ((key, _),) = bottom.items()
        factor: Poly = {((index << (BITS * letter)) - key): 1}
    elif index == 2:
        factor = {key: -value if key else value for key, value in bottom.items()}
    else:
        return top, bottom
    return ring.reduce(multiply(top, factor)), ring.reduce(multiply(bottom, factor))


def _monomial(ring: Ring, key: int) -> tuple[int, bool, str]:
    """The degree in letters, whether atoms are there, and the text: surds of numbers, letters, then the rest."""
    plain = imaginary = 0
    surds: dict[int, int] = {}
    powers: dict[str, list[tuple[int, Fraction]]] = {}
    rest: list[str] = []
    atoms = {number: (kind, made_of) for kind, made_of, number in ring.atoms}
    for letter, times in exponents(key):
        if ring.names[letter] == "i":
            imaginary = times
            continue
        if letter not in atoms:
            plain += times << (BITS * letter)
            continue
        kind, made_of = atoms[letter]
        if kind == "surd":
            share = Fraction(times, ring.relations[letter][0])
            surds[share.denominator] = surds.get(share.denominator, 1) * made_of[0] ** share.numerator
        elif kind == "exp":
            base, inner = _exponential(ring, made_of)
            powers.setdefault(base, []).append((inner, Fraction(times, _fineness(ring, made_of))))
        else:
            rest.append(_atom(ring, kind, made_of, times))
    if any(value > _LONGEST_SURD for value in surds.values()):
        raise _UnwritableError
    front = "".join(
        f"\\sqrt{{{value}}}" if index == 2 else f"\\sqrt[{index}]{{{value}}}" for index, value in sorted(surds.items())
    )
    front += "i" if imaginary else ""
    letters = polynomial_latex({plain: 1}, ring.names) if plain else ""
    degree = sum(times for _, times in exponents(plain))
    written = "".join(f"{base}^{{{_exponent(ring, parts)}}}" for base, parts in sorted(powers.items()))
    waves = sorted(rest, key=lambda text: (text.startswith("\\"), text.startswith("\\cos"), text))
    return degree, bool(surds or powers or rest or imaginary), front + letters + written + "".join(waves)


def _exponential(ring: Ring, made_of: Any) -> tuple[str, int]:
    base, (inner, _) = made_of
    number = constant_value(base)
    if number is not None:
        text = fraction_latex(number)
    elif len(base[0]) == 1 and base[1] == ONE:
        text = _poly(ring, base[0])
    else:
        text = f"({_inner(ring, base)})"
    return text if len(text) == 1 or text.isdigit() or text[0] == "(" else f"({text})", next(iter(inner))


def _fineness(ring: Ring, made_of: Any) -> int:
    base, (inner, _) = made_of
    number = constant_value(base)
    name: object = str(sorted(base[0].items())) + str(sorted(base[1].items()))
    if number is not None:
        name = int(number)
    return ring.fine.get(("exp", name, next(iter(inner))), 1)


def _exponent(ring: Ring, parts: list[tuple[int, Fraction]]) -> str:
    below = lcm(*(share.denominator for _, share in parts))
    return _poly(ring, {key: int(share * below) for key, share in parts}, below)


def _poly(ring: Ring, poly: Mapping[int, int], below: int = 1) -> str:
    text = surd_latex(ring, dict(poly), {0: below})
    if text is None:
        raise _UnwritableError
    return text


def _inner(ring: Ring, value: Quotient) -> str:
    top, bottom = value
    if is_constant(bottom):
        return _poly(ring, top, bottom[0])
    return f"\\frac{{{_poly(ring, top)}}}{{{_poly(ring, bottom)}}}"


def _atom(ring: Ring, kind: str, made_of: Any, times: int) -> str:
    power = "" if times == 1 else f"^{{{times}}}"
    if kind == "root":
        index, inside = made_of
        text = _inner(ring, inside)
        return (f"\\sqrt{{{text}}}" if index == 2 else f"\\sqrt[{index}]{{{text}}}") + power
    if kind == "bars":
        return f"|{_inner(ring, made_of[0])}|{power}"
    if len(made_of) != 1:
        raise _UnwritableError
    text = _inner(ring, made_of[0])
    is_short = len(text) == 1 or text.isdigit() or (text[0] == "\\" and text[1:].isalpha())
    argument = f" {text}" if is_short else f"({text})"
    if kind in _WAVES:
        return f"\\{kind}{power}{argument}"
    if kind == "ln":
        return f"\\ln{argument}" if times == 1 else f"(\\ln{argument}){power}"
    if kind == "factorial":
        inside = text if is_short else f"({text})"
        return f"{inside}!" if times == 1 else f"({inside}!){power}"
    raise _UnwritableError
