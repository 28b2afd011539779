"""Topics that rewrite an expression: brackets, squares, like terms, factors, fractions, indices."""

from __future__ import annotations

import random
from collections.abc import Sequence
from fractions import Fraction
from math import gcd

from checker.practice.book import Book, Degenerate, Draft, dropped, flipped, mistaken, near, sum_draft
from checker.practice.terms import Powers, Term, collect, write_sum

__all__ = ["EXPRESSION_TOPICS", "LETTERS", "linear", "nonzero", "opening_kind", "plain"]

LETTERS = "abcdghkmnpqrtuvwxyz"


def nonzero(draws: random.Random, low: int, high: int) -> int:
    """A whole number of the range that is not 0."""
    value = 0
    while not value:
        value = draws.randint(low, high)
    return value


def linear(draws: random.Random, letter: str, top: int = 5) -> list[Term]:
    """A bracket such as t+4 or 5-2t."""
    terms = [Term.of(nonzero(draws, -top, top), letter), Term.of(nonzero(draws, -9, 9))]
    if draws.random() < 0.5:
        terms[0] = Term.of(1, letter)
    if draws.random() < 0.3:
        terms.reverse()
    if terms[0].coefficient < 0 and draws.random() < 0.7:
        terms[0] = -terms[0]
    return terms


def plain(terms: Sequence[Term]) -> str:
    return write_sum(terms)[0]


def products(left: Sequence[Term], right: Sequence[Term]) -> list[Term]:
    return [first * second for first in left for second in right]


def product_slips(
    draws: random.Random, terms: Sequence[Term], prefix: str = "=", suffix: str = ""
) -> list[Draft[list[Term]]]:
    """Slips in a line of partial products: a sign, a number, a power, a product left out."""
    found: list[Draft[list[Term]]] = []
    for index, term in enumerate(terms):
        found += flipped("sign-product", terms, index, prefix, suffix)
        if abs(term.coefficient) > 1:
            found += mistaken(
                "product", terms, index, term.with_coefficient(near(draws, term.coefficient)), prefix, suffix
            )
        if term.degree > 1:
            lower = Term(term.coefficient, lowered(term.powers))
            found += mistaken("power-law", terms, index, lower, prefix, suffix)
    if len(terms) > 2:
        found += dropped("dropped-term", terms, [draws.randrange(len(terms))], prefix, suffix)
    return found


def lowered(powers: Powers) -> Powers:
    letter, power = max(powers, key=lambda pair: pair[1])
    rest = [pair for pair in powers if pair[0] != letter]
    return tuple(sorted([*rest, (letter, power - 1)] if power > 1 else rest))


def collecting_slips(
    draws: random.Random, parts: Sequence[Term], right: Sequence[Term], prefix: str = "=", suffix: str = ""
) -> list[Draft[list[Term]]]:
    """Slips in collecting `parts` to `right`: a number, the sign of a part taken wrongly, a term left out."""
    found: list[Draft[list[Term]]] = []
    for index, term in enumerate(right):
        likes = [part for part in parts if part.powers == term.powers]
        if len(likes) < 2:
            found += flipped("copied", right, index, prefix, suffix)
            continue
        wrong = term.with_coefficient(near(draws, term.coefficient))
        found += mistaken("like-terms", right, index, wrong, prefix, suffix)
        part = draws.choice(likes)
        wrong = term.with_coefficient(term.coefficient - 2 * part.coefficient)
        if wrong.coefficient:
            found += mistaken("like-terms", right, index, wrong, prefix, suffix)
    if len(right) > 2:
        found += dropped("dropped-term", right, [draws.randrange(len(right))], prefix, suffix)
    return found


def collect_line(book: Book, parts: Sequence[Term], prefix: str = "=", suffix: str = "") -> list[Term]:
    right = collect(parts)
    if not right:
        raise Degenerate
    slips = collecting_slips(book.draws, parts, right, prefix, suffix)
    return book.write(sum_draft(right, prefix, suffix), slips)


def two_brackets(book: Book) -> None:
    draws = book.draws
    letter, other = draws.sample(LETTERS, 2)
    left, right = linear(draws, letter), linear(draws, letter)
    if draws.random() < 0.3:
        left = [Term.of(nonzero(draws, 1, 5), letter), Term.of(nonzero(draws, -5, 5), other)]
        right = [Term.of(nonzero(draws, 1, 5), letter), Term.of(nonzero(draws, -5, 5), other)]
    outside = draws.choice([0, 0, nonzero(draws, -9, 9)])
    tail = [Term.of(outside, letter)] if outside else []
    book.start(f"({plain(left)})({plain(right)})" + "".join(term.signed() for term in tail))
    parts = products(left, right)
    slips = [
        draft
        for draft in product_slips(draws, [*parts, *tail])
        if draft.slip is not None and (not tail or draft.slip.span[1] != len(draft.text))
    ]
    written = book.write(sum_draft([*parts, *tail]), slips)
    collect_line(book, written)


def three_brackets(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    first, second, third = (linear(draws, letter, 3) for _ in range(3))
    last = f")({plain(third)})"
    book.start(f"({plain(first)})({plain(second)}" + last)
    parts = products(first, second)
    parts = book.write(sum_draft(parts, "=(", last), product_slips(draws, parts, "=(", last))
    parts = collect_line(book, parts, "=(", last)
    parts = products(parts, third)
    parts = book.write(sum_draft(parts), product_slips(draws, parts))
    collect_line(book, parts)


def opening_kind(outside: Term) -> str:
    """The kind of slip that a wrong sign is when a bracket with this before it is opened."""
    if outside == Term.of(-1):
        return "sign-bracket"
    return "copied" if outside == Term.of(1) else "sign-product"


def several_brackets(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    text, parts, outsides = "", [], []
    for place in range(draws.randint(2, 3)):
        outside = Term.of(nonzero(draws, -6, 6), draws.choice(["", "", letter]))
        if place and draws.random() < 0.3:
            outside = Term.of(-1)
        if not place and abs(outside.coefficient) == 1 and not outside.powers:
            outside = Term.of(3)
        inside = linear(draws, letter)
        sign = outside.signed() if text else outside.write()
        text += (sign[:-1] if not outside.powers and abs(outside.coefficient) == 1 else sign) + f"({plain(inside)})"
        new = [outside * term for term in inside]
        outsides += [outside] * len(new)
        parts += new
    book.start(text)
    slips: list[Draft[list[Term]]] = []
    for index, outside in enumerate(outsides):
        slips += flipped(opening_kind(outside), parts, index)
        if opening_kind(outside) == "sign-product" and abs(parts[index].coefficient) > 1:
            wrong = parts[index].with_coefficient(near(draws, parts[index].coefficient))
            slips += mistaken("product", parts, index, wrong)
    slips += dropped("dropped-term", parts, [draws.randrange(len(parts))])
    parts = book.write(sum_draft(parts), slips)
    collect_line(book, parts)


def difference_of_products(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    one, two, three, four = (linear(draws, letter, 3) for _ in range(4))
    book.start(f"({plain(one)})({plain(two)})-({plain(three)})({plain(four)})")
    left, right = products(one, two), products(three, four)
    suffix = f"-({plain(right)})"
    left = book.write(sum_draft(left, "=", suffix), product_slips(draws, left, "=", suffix))
    opened = [*left, *(-term for term in right)]
    slips: list[Draft[list[Term]]] = []
    for index in range(len(left) + 1, len(opened)):
        slips += flipped("sign-bracket", opened, index)
    opened = book.write(sum_draft(opened), slips)
    collect_line(book, opened)


def squares(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    first, second = linear(draws, letter), linear(draws, letter)
    sign = draws.choice([1, -1])
    book.start(f"({plain(first)})^2{'+' if sign > 0 else '-'}({plain(second)})^2")
    opened = square(first)
    suffix = f"{'+' if sign > 0 else '-'}({plain(square(second))})"
    slips = [
        *dropped("square-of-sum", opened, [1], "=", suffix),
        *flipped("sign-product", opened, 1, "=", suffix),
        *flipped("sign-product", opened, 2, "=", suffix),
        *mistaken("square-of-sum", opened, 1, opened[1].with_coefficient(opened[1].coefficient / 2), "=", suffix),
    ]
    opened = book.write(sum_draft(opened, "=", suffix), slips)
    rest = [term.with_coefficient(sign * term.coefficient) for term in square(second)]
    both = [*opened, *rest]
    slips = []
    if sign < 0:
        for index in range(len(opened) + 1, len(both)):
            slips += flipped("sign-bracket", both, index)
    both = book.write(sum_draft(both), slips)
    collect_line(book, both)


def square(terms: Sequence[Term]) -> list[Term]:
    first, second = terms
    return [first * first, Term.of(2) * first * second, second * second]


def like_terms(book: Book) -> None:
    draws = book.draws
    letter, other = draws.sample(LETTERS, 2)
    kinds: list[Powers] = [((letter, 1),), ((other, 1),), (), ((letter, 2),)]
    terms = [Term(Fraction(nonzero(draws, -9, 9)), draws.choice(kinds[: draws.randint(2, 4)])) for _ in range(6)]
    book.start(plain(terms))
    order: list[Powers] = list(dict.fromkeys(term.powers for term in terms))
    grouped = sorted(terms, key=lambda term: order.index(term.powers))
    slips: list[Draft[list[Term]]] = []
    for index in range(len(grouped)):
        slips += flipped("copied", grouped, index)
    slips += dropped("dropped-term", grouped, [draws.randrange(len(grouped))])
    grouped = book.write(sum_draft(grouped), slips)
    collect_line(book, grouped)


def factorise_quadratic(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    p, q = nonzero(draws, -9, 9), nonzero(draws, -9, 9)
    one = Term.of(1, letter)
    book.start(plain(collect(products([one, Term.of(p)], [one, Term.of(q)]))))
    split = [Term.of(1, letter, 2), Term.of(p, letter), Term.of(q, letter), Term.of(p * q)]
    slips = [*flipped("arithmetic", split, 1), *flipped("arithmetic", split, 2), *flipped("copied", split, 3)]
    split = book.write(sum_draft(split), slips)
    a, b, c = (term.coefficient for term in split[1:])
    if (c / b).denominator != 1:
        return
    bracket, rest = f"({plain([one, Term.of(a)])})", [one, Term.of(c / b)]
    outside = "+" if b == 1 else "-" if b == -1 else Term.of(b).signed()
    prefix = f"={letter}{bracket}{outside}("
    rest = book.write(sum_draft(rest, prefix, ")"), flipped("sign-product", rest, 1, prefix, ")"))
    if rest[1].coefficient != a:
        return
    prefix, tail = f"={bracket}(", [one, Term.of(b)]
    book.write(sum_draft(tail, prefix, ")"), flipped("sign-product", tail, 1, prefix, ")"))


def common_factor(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    outside = [Term.of(nonzero(draws, 2, 6), letter), Term.of(nonzero(draws, -6, 6), letter)]
    inside = [linear(draws, letter), linear(draws, letter)]
    book.start(f"{outside[0].write()}({plain(inside[0])}){outside[1].signed()}({plain(inside[1])})")
    parts = [out * term for out, terms in zip(outside, inside, strict=True) for term in terms]
    parts = book.write(sum_draft(parts), product_slips(draws, parts))
    total = collect_line(book, parts)
    if len(total) != 2 or any(term.coefficient.denominator != 1 or not term.powers for term in total):
        return
    factor = gcd(*(int(term.coefficient) for term in total))
    power = min(term.degree for term in total)
    if len({letter for term in total for letter, _ in term.powers}) != 1:
        return
    taken = Term.of(factor, letter, power)
    left = [Term.of(int(term.coefficient) // factor, letter, term.degree - power) for term in total]
    prefix = f"={taken.write()}("
    slips = [*flipped("sign-product", left, 1, prefix, ")")]
    if factor > 1:
        whole = left[1].with_coefficient(left[1].coefficient * factor)
        slips += mistaken("divide-each-term", left, 1, whole, prefix, ")")
    book.write(sum_draft(left, prefix, ")"), slips)


def fractions(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    p, q = draws.sample([2, 3, 4, 5, 6, 8], 2)
    common = p * q // gcd(p, q)
    first, second = linear(draws, letter), linear(draws, letter)
    sign = draws.choice([1, -1])
    mark = "+" if sign > 0 else "-"
    book.start(f"\\frac{{{plain(first)}}}{{{p}}}{mark}\\frac{{{plain(second)}}}{{{q}}}")
    ups = common // p, common // q
    tops = [f"{up if up > 1 else ''}({plain(terms)})" for up, terms in zip(ups, (first, second), strict=True)]
    book.write(Draft(f"=\\frac{{{tops[0]}{mark}{tops[1]}}}{{{common}}}", None))
    parts = [Term.of(ups[0]) * term for term in first] + [Term.of(sign * ups[1]) * term for term in second]
    prefix, suffix = "=\\frac{", f"}}{{{common}}}"
    slips: list[Draft[list[Term]]] = []
    for index, part in enumerate(parts):
        outside = Term.of(sign * ups[1] if index > 1 else ups[0])
        slips += flipped(opening_kind(outside), parts, index, prefix, suffix)
        if abs(part.coefficient) > 1 and ups[index // 2] > 1:
            slips += mistaken(
                "product", parts, index, part.with_coefficient(near(draws, part.coefficient)), prefix, suffix
            )
    parts = book.write(sum_draft(parts, prefix, suffix), slips)
    collect_line(book, parts, prefix, suffix)


def divide_a_sum(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    by = draws.choice([2, 3, 4, 5])
    outside = Term.of(by * draws.choice([1, 2, 3]))
    inside = linear(draws, letter)
    extra = Term.of(by * nonzero(draws, -5, 5), letter)
    book.start(f"\\frac{{{outside.write()}({plain(inside)}){extra.signed()}}}{{{by}}}")
    prefix, suffix = "=\\frac{", f"}}{{{by}}}"
    parts = [*(outside * term for term in inside), extra]
    slips = [draft for index in range(2) for draft in flipped("sign-product", parts, index, prefix, suffix)]
    parts = book.write(sum_draft(parts, prefix, suffix), slips)
    parts = collect_line(book, parts, prefix, suffix)
    done = [term.with_coefficient(term.coefficient / by) for term in parts]
    slips = []
    for index, term in enumerate(parts):
        if len(parts) > 1:
            slips += mistaken("divide-each-term", done, index, term)
        wrong = done[index].with_coefficient(near(draws, done[index].coefficient))
        slips += mistaken("arithmetic", done, index, wrong)
    book.write(sum_draft(done), slips)


def indices(book: Book) -> None:
    draws = book.draws
    letter = draws.choice(LETTERS)
    k, m, n = draws.randint(2, 4), draws.randint(2, 5), draws.choice([2, 2, 3])
    c, r = draws.randint(2, 6), draws.randint(2, 6)
    base, other = Term.of(k, letter, m), Term.of(c, letter, r)
    lower = Term.of(draws.choice([1, 2, c]), letter, draws.randint(1, r))
    book.start(f"\\frac{{({base.write()})^{n}\\cdot {other.write()}}}{{{lower.write()}}}")
    raised = Term.of(k**n, letter, m * n)
    tail = f"\\cdot {other.write()}}}{{{lower.write()}}}"
    prefix = "=\\frac{"
    slips = [
        *mistaken("power-law", [raised], 0, Term.of(k**n, letter, m + n), prefix, tail),
        *mistaken("power-law", [raised], 0, Term.of(k, letter, m * n), prefix, tail),
        *mistaken("power-law", [raised], 0, Term.of(k * n, letter, m * n), prefix, tail),
    ]
    [top] = book.write(sum_draft([raised], prefix, tail), slips)
    right = top * other
    bottom = f"}}{{{lower.write()}}}"
    slips = [
        *mistaken(
            "power-law", [right], 0, Term(right.coefficient, ((letter, top.degree * other.degree),)), prefix, bottom
        ),
        *mistaken("product", [right], 0, right.with_coefficient(near(draws, right.coefficient)), prefix, bottom),
    ]
    [top] = book.write(sum_draft([right], prefix, bottom), slips)
    result = Term.of(top.coefficient / lower.coefficient, letter, top.degree - lower.degree)
    wrong = Term(result.coefficient, ((letter, top.degree + lower.degree),))
    book.write(sum_draft([result]), mistaken("power-law", [result], 0, wrong))


EXPRESSION_TOPICS = {
    "two-brackets": two_brackets,
    "three-brackets": three_brackets,
    "several-brackets": several_brackets,
    "difference-of-products": difference_of_products,
    "squares": squares,
    "like-terms": like_terms,
    "factorise-quadratic": factorise_quadratic,
    "common-factor": common_factor,
    "fractions": fractions,
    "divide-a-sum": divide_a_sum,
    "indices": indices,
}
