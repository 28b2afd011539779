"""Trees to quotients of polynomials: letters, and atoms (roots, bars, logs, sines) with the relations they obey."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction as Rational
from math import comb, factorial, gcd, lcm
from time import monotonic
from typing import Any, TypeVar

from checker.polynomial import (
    BITS,
    MASK,
    MAX_DIGIT_BITS,
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
    q_add,
    q_divide,
    q_multiply,
    q_negated,
    q_number,
    q_power,
    scaled,
    subtract,
    used,
)
from checker.syntax import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    Function,
    MixedNumber,
    Negation,
    Node,
    Number,
    PlusMinus,
    Postfix,
    Power,
    Product,
    Root,
    Sum,
    Symbol,
)

__all__ = ["Ring", "UndefinedError", "UnsupportedError", "in_ring"]

_TRIAL_DIVISORS = 10_000
MAX_LETTERS = 64  # letters and atoms together
_SECONDS = 0.4  # for one tree or pair of trees
_HALF = Rational(1, 2)
_T = TypeVar("_T")


class UndefinedError(Exception):
    """The expression has no value, such as 1/0."""


class UnsupportedError(Exception):
    """A construct that exact algebra here does not take."""


class _RegrowError(Exception):
    """A root of higher index than planned is needed: begin again with it."""


def in_ring(work: Callable[[Ring], _T], *, euler: bool = False) -> _T:
    """Run work in a fresh ring, again with finer roots while it asks for them.

    Raises:
        TooLargeError, UndefinedError, UnsupportedError: as the work does.
    """
    fine: dict[Any, int] = {}
    for _ in range(8):
        try:
            return work(Ring(fine, euler=euler))
        except _RegrowError:
            continue
    raise UnsupportedError


class Ring:
    """Letters and atoms of one comparison, and how an atom's powers reduce.

    Args:
        fine: index of the root of each base that is already known to be needed; grows.
        euler: is the letter e the base of natural logarithms?
    """

    __slots__ = ("_atoms", "_deadline", "_fine", "denominators", "euler", "index", "names", "opaque", "relations")

    def __init__(self, fine: dict[Any, int] | None = None, *, euler: bool = False) -> None:
        self.names: list[str] = []
        self.index: dict[str, int] = {}
        self.relations: dict[int, tuple[int, Poly]] = {}
        self.denominators: list[Poly] = []
        self.opaque: set[int] = set()  # atoms whose independence is not known
        self.euler = euler
        self._fine = {} if fine is None else fine
        self._deadline = monotonic() + _SECONDS
        self._atoms: list[tuple[str, Any, int]] = []

    # letters and atoms

    def letter(self, name: str) -> int:
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

    def _atom(self, kind: str, key: Any, relation: tuple[int, Poly] | None = None, *, opaque: bool = True) -> Quotient:
        for known, other, number in self._atoms:
            if known == kind and self._same_key(key, other):
                return monomial(number), ONE
        number = self.letter(f"\0{kind}{len(self._atoms)}")
        self._atoms.append((kind, key, number))
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

    # arithmetic that keeps to the relations

    def reduce(self, poly: Poly) -> Poly:
        """Powers of atoms brought below their relation's index."""
        if not self.relations:
            return poly
        for _ in range(400):
            if monotonic() > self._deadline:
                raise TooLargeError
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

    def _reduced(self, quotient: Quotient) -> Quotient:
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
        if a[1] == b[1]:
            return self.reduce(subtract(a[0], b[0]))
        return self.reduce(subtract(multiply(a[0], b[1]), multiply(b[0], a[1])))

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
        return not any(letters_in(poly) & self.opaque for poly in polys)

    def divide(self, a: Quotient, b: Quotient) -> Quotient:
        """Raises:
        UndefinedError: b is zero.
        """
        if not b[0]:
            raise UndefinedError
        if not is_constant(b[0]):
            self.denominators.append(b[0])
        return self._reduced(q_divide(a, b))

    # trees

    def quotient(self, node: Node) -> Quotient:
        """The node as a quotient of polynomials in letters and atoms.

        Raises:
            UndefinedError: it has no value anywhere.
            UnsupportedError: it has a construct that is no function of real letters.
            TooLargeError: it would be too large.
        """
        if monotonic() > self._deadline:
            raise TooLargeError
        return _HANDLERS[type(node)](self, node)

    def _number(self, node: Number) -> Quotient:
        return q_number(node.value)

    def _symbol(self, node: Symbol) -> Quotient:
        return {1 << (self.letter(node.name) * BITS): 1}, ONE

    def _sum(self, node: Sum) -> Quotient:
        total: Quotient | None = None
        for term in node.terms:
            value = self.quotient(term.body)
            if term.sign == "-":
                value = q_negated(value)
            elif term.sign != "+":
                raise UnsupportedError
            total = value if total is None else q_add(total, value)
        assert total is not None
        return self._reduced(total)

    def _product(self, node: Product) -> Quotient:
        value = self.quotient(node.factors[0])
        for factor in node.factors[1:]:
            value = q_multiply(value, self.quotient(factor))
        return self._reduced(value)

    def _fraction(self, node: Fraction) -> Quotient:
        return self.divide(self.quotient(node.numerator), self.quotient(node.denominator))

    def _division(self, node: Division) -> Quotient:
        return self.divide(self.quotient(node.left), self.quotient(node.right))

    def _bracket(self, node: Bracket) -> Quotient:
        return self.quotient(node.body)

    def _negation(self, node: Negation) -> Quotient:
        return q_negated(self.quotient(node.body))

    def _plus_minus(self, node: PlusMinus) -> Quotient:
        raise UnsupportedError

    def _mixed(self, node: MixedNumber) -> Quotient:
        return q_add(self.quotient(node.whole), self.quotient(node.fraction))

    def _postfix(self, node: Postfix) -> Quotient:
        value = self.quotient(node.body)
        if node.mark == "%":
            return q_multiply(value, ({0: 1}, {0: 100}))
        if node.mark == "°":
            self.letter("pi")
            return q_multiply(value, ({1 << (self.index["pi"] * BITS): 1}, {0: 180}))
        number = constant_value(value)
        if number is None:
            return self._atom("factorial", (value,))
        if number.denominator != 1 or number < 0:
            raise UndefinedError
        if number > 500:
            raise TooLargeError
        return {0: factorial(int(number))}, ONE

    def _power(self, node: Power) -> Quotient:
        exponent = node.exponent
        base = self.quotient(node.base)
        if type(exponent) is Number and exponent.value.denominator == 1:
            return self.raised(base, exponent.value)
        return self._raised_to(base, self.quotient(exponent))

    def _raised_to(self, base: Quotient, exponent: Quotient) -> Quotient:
        number = constant_value(exponent)
        if number is not None:
            return self.raised(base, number)
        if not is_constant(exponent[1]):
            return self._atom("power", (base, exponent))
        value: Quotient = (ONE, ONE)
        for key, coefficient in exponent[0].items():
            share = Rational(coefficient, exponent[1][0])
            part = self.raised(base, share) if key == 0 else self._exponential(base, key, share)
            value = q_multiply(value, part)
        return self._reduced(value)

    def _exponential(self, base: Quotient, key: int, share: Rational) -> Quotient:
        """base^(share * monomial): a power of the atom base^(monomial / n)."""
        number = constant_value(base)
        if number is not None:
            if number <= 0:
                return self._atom("power", (base, ({key: 1}, ONE), share))
            value: Quotient = (ONE, ONE)
            for prime, count in _factors(number):
                value = q_multiply(value, self._exponential_atom(prime, ({0: prime}, ONE), key, share * count))
            return value
        return self._exponential_atom(str(sorted(base[0].items())) + str(sorted(base[1].items())), base, key, share)

    def _exponential_atom(self, name: object, base: Quotient, key: int, share: Rational) -> Quotient:
        # letters keep their numbers between attempts, as the trees are read in the same order
        index = self._needed(("exp", name, key), share.denominator)
        atom = self._atom("exp", (base, ({key: 1}, ONE)))
        return q_power(atom, int(share * index))

    def _needed(self, key: Any, index: int) -> int:
        have = self._fine.get(key, 1)
        if have % index:
            self._fine[key] = lcm(have, index)
            if self._fine[key] > 60:
                raise TooLargeError
            raise _RegrowError
        return have

    def raised(self, base: Quotient, exponent: Rational) -> Quotient:
        """base to a rational power; the principal value, for a base that is not negative where the power is broken."""
        if exponent.denominator == 1:
            whole = exponent.numerator
            if whole < 0:
                if not base[0]:
                    raise UndefinedError
                if not is_constant(base[0]):
                    self.denominators.append(base[0])
            if whole == 0 and not base[0]:
                raise UndefinedError
            return self._reduced(q_power(base, whole))
        if abs(exponent.numerator) > 10_000 or exponent.denominator > 60:
            raise TooLargeError
        if not base[0]:
            if exponent < 0:
                raise UndefinedError
            return {}, ONE
        root = self._root_of(base, exponent.denominator)
        return self._reduced(q_power(root, exponent.numerator))

    def _root(self, node: Root) -> Quotient:
        index = 2
        if node.index is not None:
            number = constant_value(self.quotient(node.index))
            if number is None:
                radicand = self.quotient(node.radicand)
                return self._raised_to(radicand, self.divide((ONE, ONE), self.quotient(node.index)))
            if number.denominator != 1 or not 2 <= number <= 60:
                raise UnsupportedError
            index = int(number)
        return self._root_of(self.quotient(node.radicand), index, real=True)

    def _root_of(self, radicand: Quotient, index: int, *, real: bool = False) -> Quotient:
        number = constant_value(radicand)
        if number is not None:
            return self._root_of_number(number, index, real=real)
        top, bottom = radicand
        if not is_constant(bottom):
            self.denominators.append(bottom)
        # v = bottom * root, so that v^index is a polynomial
        inside = self.reduce(multiply(top, power(bottom, index - 1)))
        content = 0
        for value in inside.values():
            content = gcd(content, value)
        inside = {key: value // content for key, value in inside.items()}
        outside = self._root_of_number(Rational(content), index)
        atom = self._atom("root", (index, (inside, ONE)), (index, inside))
        return self._reduced(q_divide(q_multiply(outside, atom), (bottom, ONE)))

    def _root_of_number(self, number: Rational, index: int, *, real: bool = False) -> Quotient:
        if number == 0:
            return {}, ONE
        value: Quotient = (ONE, ONE)
        if number < 0:
            if index == 2:
                value = self._symbol(Symbol((0, 0), "i"))
            elif index % 2 and real:
                value = ({0: -1}, ONE)
            else:
                raise UnsupportedError
        for prime, count in _factors(abs(number)):
            whole, rest = divmod(count, index)
            value = q_multiply(value, q_power(({0: prime}, ONE), whole))
            if rest:
                share = Rational(rest, index)
                have = self._needed(("root", prime), share.denominator)
                atom = self._atom("surd", (prime,), (have, {0: prime}), opaque=prime > _TRIAL_DIVISORS**2)
                value = q_multiply(value, q_power(atom, int(share * have)))
        return self._reduced(value)

    def _absolute(self, node: Absolute) -> Quotient:
        return self.absolute(self.quotient(node.body))

    def absolute(self, value: Quotient) -> Quotient:
        """The absolute value, as an atom whose square is the value's square."""
        number = constant_value(value)
        if number is not None:
            return q_number(abs(number))
        if "i" in self.index and self.index["i"] in used(value):
            return self._atom("modulus", (value,))
        top, outside = self._without_content(value[0])
        result = self._atom("bars", ((top, ONE),), (2, self.reduce(multiply(top, top))))
        result = scaled(result[0], abs(outside)), result[1]
        if is_constant(value[1]):
            return q_divide(result, ({0: abs(value[1][0])}, ONE))
        return self._reduced(q_divide(result, self.absolute((value[1], ONE))))

    def _without_content(self, poly: Poly) -> tuple[Poly, int]:
        """The polynomial with its sign and content taken out: the rest and what was taken."""
        content = 0
        for value in poly.values():
            content = gcd(content, value)
        if poly[max(poly)] < 0:
            content = -content
        return {key: value // content for key, value in poly.items()}, content

    # functions

    def _function(self, node: Function) -> Quotient:
        arguments = tuple(self.quotient(argument) for argument in node.arguments)
        value = self._value_of(node, arguments)
        if node.power is None:
            return value
        return self._raised_to(value, self.quotient(node.power))

    def _value_of(self, node: Function, arguments: tuple[Quotient, ...]) -> Quotient:
        name = node.name
        first = arguments[0]
        match name:
            case "sin" | "cos":
                return self._wave(name, first)
            case "tan":
                return self.divide(self._wave("sin", first), self._wave("cos", first))
            case "cot":
                return self.divide(self._wave("cos", first), self._wave("sin", first))
            case "sec":
                return self.divide((ONE, ONE), self._wave("cos", first))
            case "csc":
                return self.divide((ONE, ONE), self._wave("sin", first))
            case "exp":
                self.euler = True
                return self._raised_to(self._symbol(Symbol((0, 0), "e")), first)
            case "ln":
                return self._logarithm(first)
            case "log":
                base = ({0: 10}, ONE) if node.base is None else self.quotient(node.base)
                return self.divide(self._logarithm(first), self._logarithm(base))
            case "binom" | "max" | "min" | "gcd" | "lcm":
                return self._of_numbers(name, arguments)
            case _:
                return self._atom(name, arguments)

    def _of_numbers(self, name: str, arguments: tuple[Quotient, ...]) -> Quotient:
        numbers = [constant_value(argument) for argument in arguments]
        found = [number for number in numbers if number is not None]
        if len(found) < len(numbers):
            return self._atom(name, arguments)
        if name in ("max", "min"):
            return q_number(max(found) if name == "max" else min(found))
        if any(number.denominator != 1 for number in found):
            raise UndefinedError
        whole = [int(number) for number in found]
        if name == "binom":
            if not 0 <= whole[1] <= whole[0]:
                return {}, ONE
            if whole[0] > 2_000:
                raise TooLargeError
            return {0: comb(whole[0], whole[1])}, ONE
        return {0: gcd(*whole) if name == "gcd" else lcm(*whole)}, ONE

    def _wave(self, name: str, angle: Quotient) -> Quotient:
        turns = self._turns(angle)
        if turns is not None:
            known = self._known_wave(turns if name == "sin" else turns + _HALF)
            if known is not None:
                return known
        sign = 1
        if angle[0] and angle[0][max(angle[0])] * angle[1][max(angle[1])] < 0:
            angle = q_negated(angle)
            sign = 1 if name == "cos" else -1
        cosine = self._atom("cos", (angle,))
        if name == "cos":
            return cosine
        square = subtract(ONE, multiply(cosine[0], cosine[0]))
        sine = self._atom("sin", (angle,), (2, square))
        return sine if sign > 0 else q_negated(sine)

    def _turns(self, angle: Quotient) -> Rational | None:
        """The angle over pi when that is a rational number."""
        if not angle[0]:
            return Rational(0)
        if "pi" not in self.index or len(angle[0]) > 1 or not is_constant(angle[1]):
            return None
        key = 1 << (self.index["pi"] * BITS)
        return Rational(angle[0][key], angle[1][0]) if key in angle[0] else None

    def _known_wave(self, turns: Rational) -> Quotient | None:
        """sin(turns * pi) for multiples of pi/4 and pi/6."""
        turns %= 2
        sign = 1
        if turns > 1:
            turns, sign = turns - 1, -1
        if turns > _HALF:
            turns = 1 - turns
        surds = {Rational(0): (0, 1), Rational(1, 6): (1, 1), Rational(1, 4): (1, 2), Rational(1, 3): (1, 3),
                 _HALF: (2, 1)}
        if turns not in surds:
            return None
        factor, inside = surds[turns]
        if factor == 0:
            return {}, ONE
        root = self._root_of_number(Rational(inside), 2)
        return q_multiply(root, q_number(Rational(sign * factor, 2)))

    def _logarithm(self, value: Quotient) -> Quotient:
        number = constant_value(value)
        if number is not None:
            if number <= 0:
                raise UndefinedError
            total: Quotient = ({}, ONE)
            for prime, count in _factors(number):
                total = q_add(total, q_multiply(self._atom("ln", (({0: prime}, ONE),)), q_number(Rational(count))))
            return total
        natural = self._exponent_of_e(value)
        if natural is not None:
            return natural
        content = 0
        for coefficient in value[0].values():
            content = gcd(content, coefficient)
        if content > 1 and is_constant(value[1]):
            rest = ({key: coefficient // content for key, coefficient in value[0].items()}, ONE)
            return q_add(self._logarithm(q_number(Rational(content, value[1][0]))), self._logarithm(rest))
        return self._atom("ln", (value,))

    def _exponent_of_e(self, value: Quotient) -> Quotient | None:
        """k where the value is e^k."""
        if not self.euler or "e" not in self.index or len(value[0]) > 1 or len(value[1]) > 1:
            return None
        total: Quotient = ({}, ONE)
        for poly, sign in ((value[0], 1), (value[1], -1)):
            ((key, coefficient),) = poly.items()
            if coefficient != 1:
                return None
            for letter in letters_in({key: 1}):
                times = (key >> (letter * BITS)) & MASK
                if letter == self.index["e"]:
                    total = q_add(total, q_number(Rational(sign * times)))
                    continue
                atom = next((one for one in self._atoms if one[2] == letter and one[0] == "exp"), None)
                e_alone = ({1 << (self.index["e"] * BITS): 1}, ONE)
                if atom is None or not self.equal(atom[1][0], e_alone):
                    return None
                name = str(sorted(e_alone[0].items())) + str(sorted(e_alone[1].items()))
                ((inner, _),) = atom[1][1][0].items()
                index = self._fine.get(("exp", name, inner), 1)
                total = q_add(total, ({inner: sign * times}, {0: index}))
        return total

    def exponential_base(self, atom: int, letter: str) -> tuple[Rational | None, int] | None:
        """(b, n) where the atom is b^(letter/n); b is None for e; None when the exponent is not the letter alone."""
        for kind, key, number in self._atoms:
            if number == atom and kind == "exp":
                base, exponent = key
                if exponent[0] != monomial(self.index[letter]):
                    return None
                value = constant_value(base)
                (inner,) = exponent[0]
                if value is not None:
                    return value, self._fine.get(("exp", int(value), inner), 1)
                if self.euler and "e" in self.index and base[0] == monomial(self.index["e"]) and is_constant(base[1]):
                    name = str(sorted(base[0].items())) + str(sorted(base[1].items()))
                    return None, self._fine.get(("exp", name, inner), 1)
        return None

    def constant_of(self, number: int) -> tuple[str, Rational] | None:
        """(kind, argument) of an atom that is a function of a rational number, such as ln 2; None for others."""
        for kind, key, atom in self._atoms:
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


_HANDLERS: dict[type[Any], Callable[[Ring, Any], Quotient]] = {
    Number: Ring._number, Symbol: Ring._symbol, Sum: Ring._sum, Product: Ring._product, Fraction: Ring._fraction,
    Division: Ring._division, Power: Ring._power, Root: Ring._root, Negation: Ring._negation,
    PlusMinus: Ring._plus_minus, Absolute: Ring._absolute, Function: Ring._function, MixedNumber: Ring._mixed,
    Bracket: Ring._bracket, Postfix: Ring._postfix,
}


def _factors(number: Rational) -> list[tuple[int, int]]:
    """The positive number's primes with their counts; what has no small divisor is taken whole."""
    if max(number.numerator.bit_length(), number.denominator.bit_length()) > MAX_DIGIT_BITS // 10:
        raise TooLargeError
    found: dict[int, int] = {}
    for part, sign in ((number.numerator, 1), (number.denominator, -1)):
        divisor = 2
        while part > 1 and divisor * divisor <= part and divisor < _TRIAL_DIVISORS:
            while part % divisor == 0:
                found[divisor] = found.get(divisor, 0) + sign
                part //= divisor
            divisor += 1 if divisor == 2 else 2
        if part > 1:
            found[part] = found.get(part, 0) + sign
    return sorted((prime, count) for prime, count in found.items() if count)
