"""Solution sets over the complex numbers, once i has appeared: polynomial equations in one letter."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from mpmath.ctx_mp import MPContext
from mpmath.libmp import NoConvergence

from checker.outcome import Known, Outcome, undecided
from checker.polynomial import Poly, coefficients_in, exponents
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.solutions import links
from checker.syntax import Alternatives, Node, Statement, System, letters

__all__ = ["compare_complex"]

_MP = MPContext()
_MP.dps = 60
_SAME = _MP.mpf(10) ** -20  # roots closer than this are one


def compare_complex(first: Statement, second: Statement, known: Known) -> Outcome:
    """Compare two equations' sets of complex solutions.

    Raises:
        UnsupportedError: they are not polynomial equations in one letter.
    """
    constants = {"pi", "i"} | ({"e"} if known.euler else set())
    names = (letters(first) | letters(second)) - constants
    if not names:
        return undecided("Complex numbers are compared only as the two sides of one line.")
    if len(names) > 1:
        raise UnsupportedError
    (name,) = names
    roots_a, roots_b = (_roots(statement, name, known) for statement in (first, second))
    lost = [root for root in roots_a if not _holds(root, roots_b)]
    gained = [root for root in roots_b if not _holds(root, roots_a)]
    if not lost and not gained:
        return Outcome("follows")
    shown = {name: _text((lost or gained)[0])}
    if lost and (gained or not roots_b):
        return Outcome("slip", f"{name} = {shown[name]} satisfies the line before but not this line.", shown)
    if lost:
        return Outcome("loses", f"The solution {name} = {shown[name]} is lost.", shown)
    return Outcome("adds", f"{name} = {shown[name]} satisfies this line but not the line before.", shown)


def _holds(root: Any, roots: list[Any]) -> bool:
    return any(abs(root - other) < _SAME for other in roots)


def _text(root: Any) -> str:
    real, imaginary = _short(root.real), _short(root.imag)
    if imaginary == "0":
        return real
    part = f"{'' if imaginary in ('1', '-1') else imaginary}i".replace("-i", "-i")
    part = f"-{part}" if imaginary == "-1" else part
    return part if real == "0" else f"{real}{'' if part.startswith('-') else '+'}{part}"


def _short(value: Any) -> str:
    nearest = round(value * 12)
    if abs(value * 12 - nearest) < _SAME:
        return str(Fraction(int(nearest), 12))
    return str(_MP.nstr(value, 4))


def _roots(statement: Statement, name: str, known: Known) -> list[Any]:
    if isinstance(statement, Alternatives):
        found: list[Any] = []
        for branch in statement.branches:
            found += [root for root in _roots(branch, name, known) if not _holds(root, found)]
        return found
    if isinstance(statement, System):
        raise UnsupportedError
    parts = links(statement)
    if len(parts) != 1 or parts[0][1] != "=":
        raise UnsupportedError
    return _roots_of(parts[0][0], parts[0][2], name, known)


def _roots_of(left: Node, right: Node, name: str, known: Known) -> list[Any]:
    def work(ring: Ring) -> list[Any]:
        a, b = ring.quotient(left), ring.quotient(right)
        coefficients = _numbers(ring, ring.difference(a, b), name)
        if len(coefficients) > 20:
            raise UnsupportedError
        if len(coefficients) < 2:
            if not coefficients:
                raise UnsupportedError
            return []
        try:
            roots = _MP.polyroots(list(reversed(coefficients)), maxsteps=200, extraprec=300)
        except NoConvergence as exc:
            raise UnsupportedError from exc
        bottoms = [_numbers(ring, poly, name) for poly in ring.denominators]
        distinct: list[Any] = []
        for root in roots:
            if _holds(root, distinct):
                continue
            if all(abs(_MP.polyval(list(reversed(bottom)), root)) > _SAME for bottom in bottoms if bottom):
                distinct.append(_MP.mpc(root))
        return distinct

    try:
        return in_ring(work, euler=known.euler)
    except UndefinedError as exc:
        raise UnsupportedError from exc


def _numbers(ring: Ring, poly: Poly, name: str) -> list[Any]:
    if name not in ring.index:
        return [_number(ring, poly)] if poly else []
    out = [_number(ring, part) for part in coefficients_in(poly, ring.index[name])]
    while out and out[-1] == 0:
        out.pop()
    return out


def _number(ring: Ring, poly: Poly) -> Any:
    total = _MP.mpc(0)
    for key, coefficient in poly.items():
        term = _MP.mpc(coefficient)
        for letter, times in exponents(key):
            term *= _constant(ring, letter) ** times
        total += term
    return total


def _constant(ring: Ring, letter: int) -> Any:
    name = ring.names[letter]
    if name == "i":
        return _MP.mpc(0, 1)
    if name == "pi":
        return _MP.pi
    index, value = ring.relations.get(letter, (0, {}))
    if index and set(value) == {0} and value[0] > 0:
        return _MP.root(value[0], index)
    raise UnsupportedError
