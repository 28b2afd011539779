"""A ring of letters and atoms: arithmetic that keeps to the relations that the atoms obey."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction as Rational
from math import lcm
from typing import Any, TypeVar

from checker.budget import Budget
from checker.calculus.derivative import DEPENDENT
from checker.polynomial import (
    BITS,
    MASK,
    MAX_TERMS,
    ONE,
    Poly,
    Quotient,
    TooLargeError,
    coefficients_in,
    constant_value,
    is_constant,
    letters_in,
    monomial,
    multiply,
    power,
    q_divide,
    scaled,
    subtract,
)
from checker.refusals import RegrowError, UndefinedError, UnsupportedError
from checker.ring.powers import exponential_index
from checker.ring.reading import HANDLERS
from checker.syntax import Node

__all__ = ["MAX_LETTERS", "Ring", "in_ring"]

MAX_LETTERS = 64  # letters and atoms together
SECONDS = 0.4  # for one tree or pair of trees
_MOST_INDEX = 60  # of a root
_T = TypeVar("_T")


def in_ring(work: Callable[[Ring], _T], *, euler: bool = False) -> _T:
    """Run work in a fresh ring, again with finer roots while it asks for them.

    Raises:
        TooLargeError, UndefinedError, UnsupportedError: as the work does.
    """
    fine: dict[Any, int] = {}
    for _ in range(8):
        try:
            return work(Ring(fine, euler=euler))
        except RegrowError:
            continue
    raise UnsupportedError


class Ring:
    """Letters and atoms of one comparison, and how an atom's powers reduce.

    Args:
        fine: index of the root of each base that is already known to be needed; grows.
        euler: is the letter e the base of natural logarithms?
    """

    __slots__ = (
        "atoms",
        "budget",
        "by_sizes",
        "denominators",
        "euler",
        "fine",
        "indefinite",
        "index",
        "names",
        "opaque",
        "relations",
        "runs",
    )

    def __init__(self, fine: dict[Any, int] | None = None, *, euler: bool = False) -> None:
        self.names: list[str] = []
        self.index: dict[str, int] = {}
        self.relations: dict[int, tuple[int, Poly]] = {}
        self.denominators: list[Poly] = []
        self.opaque: set[int] = set()  # atoms whose independence is not known
        self.euler = euler
        self.fine = {} if fine is None else fine
        self.budget: Budget | None = None
        self.atoms: list[tuple[str, Any, int]] = []
        self.by_sizes = False  # do only values count wherever both are defined, and no domains?
        self.runs = False  # has a derivative, integral, sum or limit been read?
        self.indefinite: list[str] = []  # letters by which something was integrated without bounds

    # letters and atoms

    def letter(self, name: str) -> int:
        """The number of a letter, new or known.

        Raises:
            TooLargeError: there are too many.
        """
        found = self.index.get(name)
        if found is None:
            if len(self.names) >= MAX_LETTERS:
                raise TooLargeError
            found = self.index[name] = len(self.names)
            self.names.append(name)
            if name == "i":
                self.relations[found] = (2, {0: -1})
            elif name == "pi" or (name == "e" and self.euler):
                self.opaque.add(found)
        return found

    def free(self) -> list[str]:
        """The names that stand for unknown numbers."""
        return [name for name in self.names if self.is_free(name)]

    def is_free(self, name: str) -> bool:
        number = self.index[name]
        return number not in self.relations and number not in self.opaque and not name.startswith("\0")

    def atom(self, kind: str, key: Any, relation: tuple[int, Poly] | None = None, *, opaque: bool = True) -> Quotient:
        """The value named by a kind and what it is taken of, the same atom for the same function."""
        for known, other, number in self.atoms:
            if known == kind and self._same_key(key, other):
                return monomial(number), ONE
        number = self.letter(f"\0{kind}{len(self.atoms)}")
        self.atoms.append((kind, key, number))
        if relation is not None:
            self.relations[number] = relation
        if opaque:
            self.opaque.add(number)
        return monomial(number), ONE

    def _same_key(self, key: Any, other: Any) -> bool:
        if len(key) != len(other):
            return False
        for a, b in zip(key, other, strict=True):
            if isinstance(a, tuple) and isinstance(b, tuple):
                if not self.equal(a, b):
                    return False
            elif a != b:
                return False
        return True

    def needed(self, key: Any, index: int) -> int:
        """The index of the finest root of a base that is in use, at least the one asked for.

        Raises:
            RegrowError: a finer one is needed from the start.
        """
        have = self.fine.get(key, 1)
        if have % index:
            self.fine[key] = lcm(have, index)
            if self.fine[key] > _MOST_INDEX:
                raise TooLargeError
            raise RegrowError
        return have

    def dependent(self) -> frozenset[str]:
        """The letters that are functions of the one that is differentiated by."""
        return DEPENDENT | {key[1] for key in self.fine if key[0] == "dependent"}

    def depends(self, name: str) -> None:
        """A letter's own derivative has been written: it is a function.

        Raises:
            RegrowError: that was not known when the reading began.
        """
        if name not in DEPENDENT and ("dependent", name) not in self.fine:
            self.fine["dependent", name] = 1
            raise RegrowError

    # arithmetic that keeps to the relations

    def check_time(self) -> None:
        """Raises:
        TooLargeError: the time for one comparison is spent.
        """
        if self.budget is None:
            self.budget = Budget(SECONDS)  # only now, as most comparisons are over before it is asked for
        elif self.budget.is_over():
            raise TooLargeError

    def reduce(self, poly: Poly) -> Poly:
        """Powers of atoms brought below their relation's index."""
        if not self.relations:
            return poly
        for _ in range(400):
            self.check_time()
            changed = False
            for letter in reversed(self.relations):
                index, value = self.relations[letter]
                shift = letter * BITS
                if all(((key >> shift) & MASK) < index for key in poly):
                    continue
                changed = True
                out: Poly = {}
                powers: dict[int, Poly] = {}
                for key, coefficient in poly.items():
                    times, rest = divmod((key >> shift) & MASK, index)
                    stem = (key & ~(MASK << shift)) | (rest << shift)
                    if times not in powers:
                        powers[times] = power(value, times)
                    for other, factor in powers[times].items():
                        total = out.get(stem + other, 0) + coefficient * factor
                        if total:
                            out[stem + other] = total
                        else:
                            out.pop(stem + other, None)
                if len(out) > MAX_TERMS:
                    raise TooLargeError
                poly = out
            if not changed:
                return poly
        raise TooLargeError

    def reduced(self, quotient: Quotient) -> Quotient:
        """Raises:
        UndefinedError: what stands below is zero.
        """
        if not self.relations:
            return quotient
        top, bottom = self.reduce(quotient[0]), quotient[1]
        if bottom is not ONE:
            bottom = self.reduce(bottom)
            if not bottom:
                raise UndefinedError
        return top, bottom

    def difference(self, a: Quotient, b: Quotient) -> Poly:
        """The numerator of a - b; empty when they are the same function."""
        top_a, bottom_a = a
        top_b, bottom_b = b
        if bottom_a is not bottom_b and bottom_a != bottom_b:
            if is_constant(bottom_a) and is_constant(bottom_b):
                top_a, top_b = scaled(top_a, bottom_b[0]), scaled(top_b, bottom_a[0])
            else:
                self.check_time()
                top_a, top_b = multiply(top_a, bottom_b), multiply(top_b, bottom_a)
        if top_a == top_b:
            return {}
        return self.reduce(subtract(top_a, top_b))

    def equal(self, a: Quotient, b: Quotient) -> bool:
        return not self.difference(a, b)

    def remainder(self, poly: Poly, by: Poly, letter: int) -> Poly:
        """A multiple of the remainder after division in one letter; the polynomial itself where it is not in."""
        divisor = coefficients_in(by, letter)
        size = len(divisor)
        if size < 2:
            return poly
        shift = letter * BITS
        for _ in range(60):
            parts = coefficients_in(poly, letter)
            if len(parts) < size or not poly:
                return poly
            lead = {key + ((len(parts) - size) << shift): value for key, value in parts[-1].items()}
            poly = self.reduce(subtract(multiply(poly, divisor[-1]), multiply(lead, by)))
        raise TooLargeError

    def is_exact(self, *polys: Poly) -> bool:
        """Does a nonzero polynomial in these atoms mean a nonzero function for certain?"""
        return not self.opaque or not any(letters_in(poly) & self.opaque for poly in polys)

    def divide(self, a: Quotient, b: Quotient) -> Quotient:
        """Raises:
        UndefinedError: b is zero.
        """
        if not b[0]:
            raise UndefinedError
        if not is_constant(b[0]):
            self.denominators.append(b[0])
        return self.reduced(q_divide(a, b))

    def quotient(self, node: Node) -> Quotient:
        """The node as a quotient of polynomials in letters and atoms.

        Raises:
            UndefinedError: it has no value anywhere.
            UnsupportedError: it has a construct that is no function of real letters.
            TooLargeError: it would be too large.
        """
        return HANDLERS[type(node)](self, node)

    # what is known of atoms

    def exponential_base(self, atom: int, letter: str) -> tuple[Rational | None, int] | None:
        """(b, n) where the atom is b^(letter/n); b is None for e; None when the exponent is not the letter alone."""
        for kind, key, number in self.atoms:
            if number == atom and kind == "exp":
                base, exponent = key
                if exponent[0] != monomial(self.index[letter]):
                    return None
                index = exponential_index(self, base, exponent)
                value = constant_value(base)
                if value is not None:
                    return value, index
                if self.euler and "e" in self.index and base[0] == monomial(self.index["e"]) and is_constant(base[1]):
                    return None, index
        return None

    def constant_of(self, number: int) -> tuple[str, Rational] | None:
        """(kind, argument) of an atom that is a function of a rational number, such as ln 2; None for others."""
        for kind, key, atom in self.atoms:
            if atom == number and kind in ("ln", "sin", "cos") and isinstance(key[0], tuple):
                value = constant_value(key[0])
                return None if value is None else (kind, value)
        return None

    def value_at(self, poly: Poly, point: dict[str, Rational]) -> dict[int, Rational]:
        """The polynomial with numbers for its free letters: what is left, by the monomial of the atoms."""
        places = [(self.index[name] * BITS, _plain(value)) for name, value in point.items() if name in self.index]
        out: dict[int, int | Rational] = {}
        for key, coefficient in poly.items():
            rest, term = key, coefficient
            for shift, value in places:
                exponent = (key >> shift) & MASK
                if exponent:
                    term *= value**exponent
                    rest -= exponent << shift
            out[rest] = out.get(rest, 0) + term
        return {key: Rational(value) for key, value in out.items() if value}


def _plain(value: Rational) -> Any:
    """A whole number as an int, which multiplies faster."""
    return value.numerator if value.denominator == 1 else value
