"""Topics that solve: linear equations and inequalities, quadratics three ways."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, isqrt

from checker.practice.book import Book, Degenerate, Draft, Planted, near
from checker.practice.expressions import LETTERS, linear, nonzero, opening_kind, plain
from checker.practice.terms import Term, coefficients, collect, number, write_sum

__all__ = ["EQUATION_TOPICS"]


@dataclass(frozen=True, slots=True)
class Sides:
    """A relation between two sums; `sign` is the LaTeX of the relation."""

    left: tuple[Term, ...]
    right: tuple[Term, ...]
    sign: str = "="

    def text(self) -> str:
        return f"{plain(self.left)}{self.sign}{plain(self.right)}"

    def spans(self) -> list[tuple[int, int]]:
        left, spans = write_sum(self.left)
        return [*spans, *write_sum(self.right, len(left + self.sign))[1]]

    def terms(self) -> tuple[Term, ...]:
        return (*self.left, *self.right)

    def replaced(self, index: int, term: Term) -> Sides:
        terms = [*self.terms()]
        terms[index] = term
        cut = len(self.left)
        return Sides(tuple(terms[:cut]), tuple(terms[cut:]), self.sign)

    def difference(self) -> dict[tuple[tuple[str, int], ...], Fraction]:
        return coefficients([*self.left, *(-term for term in self.right)])


def proportional(left: Sides, right: Sides) -> bool:
    """Do the two equations say the same, one being a multiple of the other?"""
    first, second = left.difference(), right.difference()
    if first.keys() != second.keys():
        return False
    return len({first[key] / second[key] for key in first}) <= 1


def wrong_term(kind: str, right: Sides, index: int, instead: Term) -> list[Draft[Sides]]:
    """The equation with one term written as another, unless it would still be right or lose its letter.

    Two inequalities in the same direction hold for one part of the line and its rest, so that a wrong number there
    reads as values lost or added; only the direction is turned in them.
    """
    if right.sign != "=":
        return []
    wrong = right.replaced(index, instead)
    if not instead.coefficient or proportional(right, wrong) or not any(key for key in wrong.difference()):
        return []
    start, end = wrong.spans()[index]
    text = wrong.text()
    first = index in (0, len(right.left))
    should_be = right.terms()[index].write() if first else right.terms()[index].signed()
    return [Draft(text, wrong, Planted(kind, text[start:end], (start, end), should_be))]


def write(book: Book, right: Sides, slips: Sequence[Draft[Sides]] = ()) -> Sides:
    return book.write(Draft(right.text(), right), slips)


def collected_sides(book: Book, now: Sides) -> Sides:
    right = Sides(tuple(collect(now.left)), tuple(collect(now.right)), now.sign)
    if right == now:
        return now
    slips: list[Draft[Sides]] = []
    for index, term in enumerate(right.terms()):
        side = now.left if index < len(right.left) else now.right
        likes = [part for part in side if part.powers == term.powers]
        if len(likes) > 1:
            slips += wrong_term("like-terms", right, index, term.with_coefficient(near(book.draws, term.coefficient)))
            part = book.draws.choice(likes)
            slips += wrong_term(
                "like-terms", right, index, term.with_coefficient(term.coefficient - 2 * part.coefficient)
            )
    return write(book, right, slips)


def moved(book: Book, now: Sides) -> Sides:
    """Letters to the left, numbers to the right, shown before collecting or at once."""
    stay_left = [term for term in now.left if term.powers]
    stay_right = [term for term in now.right if not term.powers]
    to_left = [-term for term in now.right if term.powers]
    to_right = [-term for term in now.left if not term.powers]
    if not to_left and not to_right:
        return now
    shown = Sides((*stay_left, *to_left), (*stay_right, *to_right), now.sign)
    if not shown.left or not shown.right:
        raise Degenerate
    carried = {*range(len(stay_left), len(shown.left))}
    carried |= {*range(len(shown.left) + len(stay_right), len(shown.terms()))}
    slips: list[Draft[Sides]] = []
    if book.draws.random() < 0.6:
        for index in carried:
            slips += wrong_term("sign-moved", shown, index, -shown.terms()[index])
        return collected_sides(book, write(book, shown, slips))
    right = Sides(tuple(collect(shown.left)), tuple(collect(shown.right)), now.sign)
    for index, term in enumerate(right.terms()):
        for part in carried:
            same_side = (part < len(shown.left)) == (index < len(right.left))
            if same_side and shown.terms()[part].powers == term.powers:
                wrong = term.with_coefficient(term.coefficient - 2 * shown.terms()[part].coefficient)
                slips += wrong_term("sign-moved", right, index, wrong)
    return write(book, right, slips)


def divided(book: Book, now: Sides) -> Sides:
    """ax = b to x = b/a."""
    if len(now.left) != 1 or len(now.right) != 1 or not now.left[0].powers or now.right[0].powers:
        raise Degenerate
    by = now.left[0].coefficient
    turned = {"<": ">", ">": "<"}.get(now.sign, now.sign) if by < 0 else now.sign
    right = Sides((now.left[0].with_coefficient(1),), (Term(now.right[0].coefficient / by),), turned)
    value = right.right[0].coefficient
    slips = wrong_term("arithmetic", right, 1, Term(near(book.draws, value)))
    slips += wrong_term("sign-product", right, 1, Term(-value))
    slips += wrong_term("arithmetic", right, 1, Term(now.right[0].coefficient - by)) if by > 1 else []
    if turned != now.sign:
        text = f"{plain(right.left)}{now.sign}{plain(right.right)}"
        place = len(plain(right.left))
        wrong = Sides(right.left, right.right, now.sign)
        slips.append(Draft(text, wrong, Planted("inequality-direction", now.sign, (place, place + 1), turned)))
    return write(book, right, slips)


def bracket(outside: int, inside: Sequence[Term], *, first: bool) -> str:
    sign = str(outside) if outside < 0 or first else f"+{outside}"
    return f"{sign[:-1] if abs(outside) == 1 else sign}({plain(inside)})"


def linear_brackets(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    a, c = nonzero(draws, 2, 7), nonzero(draws, -5, 5)
    first, second = linear(draws, letter), linear(draws, letter)
    extra = [Term.of(nonzero(draws, -9, 9))]
    if draws.random() < 0.5:
        left_text = bracket(a, first, first=True)
        right_text = extra[0].write() + bracket(c, second, first=False)
        left = [Term.of(a) * term for term in first]
        right = [*extra, *(Term.of(c) * term for term in second)]
        inner = [*range(2), *range(3, 5)]
    else:
        left_text = bracket(a, first, first=True) + bracket(c, second, first=False)
        right_text = extra[0].write()
        left = [Term.of(a) * term for term in first] + [Term.of(c) * term for term in second]
        right, inner = extra, [*range(4)]
    sign = draws.choice(["=", "=", "=", "<", ">"])
    book.start(left_text + sign + right_text)
    opened = Sides(tuple(left), tuple(right), sign)
    slips: list[Draft[Sides]] = []
    for index in inner:
        term = opened.terms()[index]
        outside = a if index < 2 else c
        slips += wrong_term(opening_kind(Term.of(outside)), opened, index, -term)
        if abs(outside) > 1 and abs(term.coefficient) > 1:
            slips += wrong_term("product", opened, index, term.with_coefficient(near(draws, term.coefficient)))
    now = collected_sides(book, write(book, opened, slips))
    divided(book, moved(book, now))


def linear_fractions(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    p, q = draws.sample([2, 3, 4, 5, 6], 2)
    common = p * q // gcd(p, q)
    first, second = linear(draws, letter, 3), linear(draws, letter, 3)
    sign = draws.choice([1, -1])
    value = nonzero(draws, -4, 6)
    mark = "+" if sign > 0 else "-"
    book.start(f"\\frac{{{plain(first)}}}{{{p}}}{mark}\\frac{{{plain(second)}}}{{{q}}}={value}")
    u, v = common // p, sign * common // q
    text = bracket(u, first, first=True) + bracket(v, second, first=False)
    right_text = str(common * value)
    whole = f"{text}={right_text}"
    wrong = f"{text}={value}"
    planted = Planted("one-side-only", str(value), (len(text) + 1, len(wrong)), right_text)
    total = book.write(Draft(whole, common * value), [Draft(wrong, value, planted)])
    left = [Term.of(u) * term for term in first] + [Term.of(v) * term for term in second]
    opened = Sides(tuple(left), (Term.of(total),))
    slips: list[Draft[Sides]] = []
    for index, outside in enumerate([u, u, v, v]):
        slips += wrong_term(opening_kind(Term.of(outside)), opened, index, -left[index])
        if abs(outside) > 1 and abs(left[index].coefficient) > 1:
            wrong_product = left[index].with_coefficient(near(draws, left[index].coefficient))
            slips += wrong_term("product", opened, index, wrong_product)
    now = collected_sides(book, write(book, opened, slips))
    divided(book, moved(book, now))


def linear_both_sides(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    a, b, c, d = (nonzero(draws, -9, 12) for _ in range(4))
    if a == c:
        raise Degenerate
    now = Sides(
        (Term.of(a, letter), Term.of(b)), (Term.of(c, letter), Term.of(d)), draws.choice(["=", "=", "<", ">"])
    )
    book.start(now.text())
    divided(book, moved(book, now))


def to_standard(book: Book, letter: str, p: int, q: int, lead: int = 1) -> list[Term]:
    """Set out lead x^2 + px + q = 0 from a form with terms on both sides; what was written on the left."""
    draws = book.draws
    standard = [Term.of(lead, letter, 2), Term.of(p, letter), Term.of(q)]
    standard = [term for term in standard if term.coefficient]
    over = [term for term in standard[1:] if draws.random() < 0.5]
    if not over:
        book.start(f"{plain(standard)}=0")
        return standard
    left = [term for term in standard if term not in over]
    book.start(f"{plain(left)}={plain([-term for term in over])}")
    right = Sides(tuple(standard), ())
    slips: list[Draft[Sides]] = []
    for index, term in enumerate(standard):
        if term in over:
            slips += wrong_term("sign-moved", right, index, -term)
    return [*write(book, right, slips).left]


def coefficients_of(standard: Sequence[Term], letter: str) -> tuple[Fraction, Fraction, Fraction]:
    found = coefficients(standard)
    zero = Fraction(0)
    return found.get(((letter, 2),), zero), found.get(((letter, 1),), zero), found.get((), zero)


def square_root(value: Fraction) -> Fraction | None:
    if value < 0:
        return None
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    return Fraction(top, bottom) if top * top == value.numerator and bottom * bottom == value.denominator else None


def roots_line(book: Book, letter: str, roots: Sequence[Fraction]) -> None:
    """x=a or x=b; slips give one root the other sign, or a number that is off."""
    first, second = roots

    def text(one: Fraction, two: Fraction) -> str:
        return f"{letter}={number(one)} \\text{{ or }} {letter}={number(two)}"

    right = text(first, second)
    slips: list[Draft[None]] = []
    for wrong, kind in ((-second, "sign-product"), (near(book.draws, second or Fraction(5)), "arithmetic")):
        if wrong in (first, second):
            continue
        line = text(first, wrong)
        start = len(line) - len(number(wrong))
        slips.append(Draft(line, None, Planted(kind, number(wrong), (start, len(line)), number(second))))
    book.write(Draft(right, None), slips)


def quadratic_factors(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    r, s = draws.sample([n for n in range(-9, 10) if n], 2)
    if r + s == 0:
        raise Degenerate
    standard = to_standard(book, letter, r + s, r * s)
    lead, p, q = coefficients_of(standard, letter)
    root = square_root(p * p - 4 * lead * q)
    if root is None or lead != 1 or not root or not q:
        raise Degenerate
    first, second = (p + root) / 2, (p - root) / 2
    one = Term.of(1, letter)
    tail = Sides((one, Term.of(second)), ())
    prefix = f"({plain([one, Term.of(first)])})("
    slips: list[Draft[Fraction]] = []
    for wrong in (-second, near(draws, second)):
        end = Term.of(wrong).signed()
        line = f"{prefix}{letter}{end})=0"
        start = len(prefix) + len(letter)
        kind = "sign-product" if wrong == -second else "arithmetic"
        if wrong:
            slips.append(Draft(line, wrong, Planted(kind, end, (start, start + len(end)), Term.of(second).signed())))
    second = book.write(Draft(f"{prefix}{plain(tail.left)})=0", second), slips)
    if first == second:
        raise Degenerate
    roots_line(book, letter, (-first, -second))


def complete_square(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    half, root = nonzero(draws, -7, 7), nonzero(draws, 1, 9)
    standard = to_standard(book, letter, 2 * half, half * half - root * root)
    lead, p, q = coefficients_of(standard, letter)
    if lead != 1 or not p or p.denominator != 1 or p.numerator % 2:
        raise Degenerate
    inside = f"({letter}{Term.of(p / 2).signed()})^2"
    square, rest = Term.of(p * p / 4), Term.of(q)
    shown = f"{inside}{(-square).signed()}{rest.signed() if q else ''}=0"
    bad = f"{inside}{square.signed()}{rest.signed() if q else ''}=0"
    span = (len(inside), len(inside) + len(square.signed()))
    planted = Planted("sign-product", square.signed(), span, (-square).signed())
    minus = book.write(Draft(shown, -square.coefficient), [Draft(bad, square.coefficient, planted)])
    value = -minus - q
    bad_value = near(draws, value) if value else Fraction(1)
    start = len(inside) + 1
    kind = "like-terms" if q else "arithmetic"
    planted = Planted(kind, number(bad_value), (start, start + len(number(bad_value))), number(value))
    value = book.write(
        Draft(f"{inside}={number(value)}", value), [Draft(f"{inside}={number(bad_value)}", bad_value, planted)]
    )
    top = square_root(value)
    if top is None or not top:
        return
    book.write(Draft(f"{letter}{Term.of(p / 2).signed()}=\\pm{number(top)}", None))
    roots_line(book, letter, (-p / 2 + top, -p / 2 - top))


def quadratic_formula(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    a, r, s = draws.choice([1, 2, 2, 3]), nonzero(draws, -6, 6), nonzero(draws, -6, 6)
    p, q = a * s + r, r * s
    if not p or (a * -s) == -r:
        raise Degenerate
    standard = to_standard(book, letter, p, q, a)
    lead, middle, last = coefficients_of(standard, letter)
    if not lead or not middle or not last:
        raise Degenerate
    squared, four = middle * middle, 4 * lead * last
    minus, bottom = number(-middle), number(2 * lead)
    inside = f"{number(squared)}{Term.of(-four).signed()}"
    line = f"{letter}=\\frac{{{minus}\\pm\\sqrt{{{inside}}}}}{{{bottom}}}"
    wrong_line = line.replace(inside, f"{number(squared)}{Term.of(four).signed()}")
    start = wrong_line.index("sqrt{") + 5 + len(number(squared))
    span = (start, start + len(Term.of(four).signed()))
    slips = [
        Draft(
            wrong_line, squared + four, Planted("sign-product", Term.of(four).signed(), span, Term.of(-four).signed())
        )
    ]
    value = book.write(Draft(line, squared - four), slips if squared + four > 0 else [])
    book.write(Draft(f"{letter}=\\frac{{{minus}\\pm\\sqrt{{{number(value)}}}}}{{{bottom}}}", None))
    root = square_root(value)
    if root:
        roots_line(book, letter, ((-middle + root) / (2 * lead), (-middle - root) / (2 * lead)))


def two_step(book: Book, draws: random.Random | None = None) -> None:
    """a(x+b)=c with the division by a first."""
    drawn = draws or book.draws
    letter = drawn.choice(LETTERS)
    a, inside = drawn.randint(2, 9), [Term.of(1, letter), Term.of(nonzero(drawn, -9, 9))]
    total = a * nonzero(drawn, -9, 9)
    book.start(f"{bracket(a, inside, first=True)}={total}")
    opened = Sides(tuple(Term.of(a) * term for term in inside), (Term.of(total),))
    slips = wrong_term("sign-product", opened, 1, -opened.left[1])
    slips += wrong_term("product", opened, 1, inside[1])
    now = write(book, opened, slips)
    if any(term.coefficient % a for term in now.terms()):
        raise Degenerate
    right = Sides(
        tuple(term.with_coefficient(term.coefficient / a) for term in now.left),
        tuple(term.with_coefficient(term.coefficient / a) for term in now.right),
    )
    slips = [draft for index in (1, 2) for draft in wrong_term("divide-each-term", right, index, now.terms()[index])]
    now = write(book, right, slips)
    moved(book, now)


EQUATION_TOPICS = {
    "linear-brackets": linear_brackets,
    "linear-both-sides": linear_both_sides,
    "linear-fractions": linear_fractions,
    "two-step": two_step,
    "quadratic-factors": quadratic_factors,
    "complete-square": complete_square,
    "quadratic-formula": quadratic_formula,
}
