"""Roots: a wrong one, a lost one, all with the wrong sign."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction as Rational
from math import isqrt

from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.slips.values import SIGN, Value, as_constant, multiply, scale, subtract, value_of
from checker.slips.writing import Style, write_value
from checker.syntax.latex import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Alternatives, Line, Node, Product, Relation, Statement, letters

__all__ = ["alternative_proposals", "roots_of", "with_sign"]


def roots_of(statement: Statement) -> tuple[str, list[Value]] | None:
    """The letter and its real roots, where they can be written with at most square roots."""
    match statement:
        case Alternatives(branches=branches):
            found = [roots_of(branch) for branch in branches]
            names = {pair[0] for pair in found if pair is not None}
            if None in found or len(names) != 1:
                return None
            return names.pop(), _distinct([root for pair in found if pair is not None for root in pair[1]])
        case Relation(left=left, right=right, operator="="):
            whole = subtract(value_of(left), value_of(right))
            return _roots_of_value(whole, bare(left) if not value_of(right) else None)
        case _:
            return None


def _distinct(values: Sequence[Value]) -> list[Value]:
    found: list[Value] = []
    for value in values:
        if value not in found:
            found.append(value)
    return found


def with_sign(value: Value, sign: int) -> Value:
    """The value with its plus-or-minus taken as one of the two."""
    return {
        tuple(pair for pair in key if pair[0] != SIGN): number * (sign if any(a == SIGN for a, _ in key) else 1)
        for key, number in value.items()
    } if len({tuple(pair for pair in key if pair[0] != SIGN) for key in value}) == len(value) else _merged(value, sign)


def _merged(value: Value, sign: int) -> Value:
    found: dict[tuple[tuple[str, Rational], ...], Rational] = {}
    for key, number in value.items():
        rest = tuple(pair for pair in key if pair[0] != SIGN)
        found[rest] = found.get(rest, Rational(0)) + number * (sign if rest != key else 1)
    return {key: number for key, number in found.items() if number}


def _roots_of_value(whole: Value, factored: Node | None) -> tuple[str, list[Value]] | None:
    if any(atom == SIGN for key in whole for atom, _ in key):
        both = [_roots_of_value(with_sign(whole, sign), None) for sign in (1, -1)]
        if both[0] is None or both[1] is None or both[0][0] != both[1][0]:
            return None
        return both[0][0], _distinct([*both[0][1], *both[1][1]])
    letters = {atom for key in whole for atom, _ in key if not atom.isdigit()}
    if len(letters) != 1:
        return None
    letter, = letters
    if not letter.replace("\\", "").isalpha():
        return _of_absolute(whole, letter)
    if factored is not None and isinstance(factored, Product):
        found: list[Value] = []
        for factor in factored.factors:
            below = _roots_of_value(value_of(factor), None) if value_of(factor).keys() - {()} else None
            if below is not None:
                found += below[1]
        if found:
            return letter, _distinct(found)
    return _polynomial_roots(whole, letter)


def _of_absolute(whole: Value, atom: str) -> tuple[str, list[Value]] | None:
    """|x| = a for a letter x."""
    inner = atom.removeprefix("|1*").removesuffix("^1|")
    if not (atom.startswith("|1*") and inner.isalpha()) or any(e != 1 for key in whole for _, e in key):
        return None
    number = whole.get(((atom, Rational(1)),))
    rest = {key: n for key, n in whole.items() if key != ((atom, Rational(1)),)}
    size = as_constant(rest)
    if not number or size is None or -size / number < 0:
        return None
    value = -size / number
    return inner, _distinct([{(): value}, {(): -value}] if value else [{}])


def _polynomial_roots(whole: Value, letter: str) -> tuple[str, list[Value]] | None:
    rows: dict[Rational, Value] = {}
    for key, number in whole.items():
        exponent = next((e for atom, e in key if atom == letter), Rational(0))
        rest = tuple(pair for pair in key if pair[0] != letter)
        rows.setdefault(exponent, {})
        rows[exponent] = {**rows[exponent], rest: number}
    if rows.keys() == {Rational(-1), Rational(0)}:
        below = as_constant(rows[Rational(0)])
        return (letter, [scale(rows[Rational(-1)], -1 / below)]) if below else None
    if not rows.keys() <= {Rational(0), Rational(1), Rational(2)}:
        return None
    a, b, c = (rows.get(Rational(n), {}) for n in (2, 1, 0))
    lead, middle, last = as_constant(a), as_constant(b), as_constant(c)
    if not a:
        if middle:
            return letter, [scale(c, -1 / middle)]
        return None
    if lead is None or middle is None or last is None:
        return None
    inside = middle * middle - 4 * lead * last
    if inside < 0:
        return letter, []
    root = _root(inside)
    centre: Value = {(): -middle / (2 * lead)} if middle else {}
    found = [subtract(centre, scale(root, sign / (2 * lead))) for sign in (-1, 1)]
    return letter, _distinct(found)


def _root(number: Rational) -> Value:
    inside = number.numerator * number.denominator
    outside, divisor = 1, 2
    while divisor * divisor <= inside and divisor < 1000:
        while inside % (divisor * divisor) == 0:
            inside //= divisor * divisor
            outside *= divisor
        divisor += 1
    whole = isqrt(inside)
    if whole * whole == inside:
        outside, inside = outside * whole, 1
    size = Rational(outside, number.denominator)
    if not number:
        return {}
    return {(): size} if inside == 1 else {((str(inside), Rational(1, 2)),): size}


def alternative_proposals(before: Line, written: Line, style: Style) -> Iterator[Proposal]:
    """Changes of single roots, a root put in, or all roots written anew."""
    known = roots_of(before.statement)
    if known is None:
        return
    letter, roots = known
    branches = written.statement.branches if isinstance(written.statement, Alternatives) else (written.statement,)
    found = [(branch, roots_of(branch)) for branch in branches]
    wrong = [
        (branch, own[1]) for branch, own in found
        if own is not None and own[0] == letter and any(root not in roots for root in own[1])
    ]
    given = [root for _, own in found if own is not None for root in own[1]]
    lost = [root for root in roots if root not in given]
    texts = [write_value(root, style) for root in lost]
    if len(wrong) == 1 and lost and all(texts):
        for proposal in _one_wrong(wrong[0], lost, letter, style, len(roots), len(branches)):
            factor = _factor_of(before, lost, letter)
            yield replace(proposal, because=factor) if factor and len(lost) == 1 else proposal
    if len(wrong) > 1 and len(lost) == len(wrong) and all(texts):
        yield from _all_wrong(written, roots, letter, style)
    if not wrong and lost and given and all(texts):
        end = written.statement.span[1]
        text = "".join(f" \\text{{ or }} {letter}={text}" for text in texts)
        shown = " or ".join(f"{letter} = {text}" for text in texts)
        because = f"{shown} makes the line before true as well"
        should_be = text.removeprefix(" \\text{ or } ")
        yield Proposal(1.2, "root-lost", (end, end), should_be, because, (Edit((end, end), text),))


def _factor_of(before: Line, lost: Sequence[Value], letter: str) -> str | None:
    """Which factor of the line before is zero at the root: "x-3 is 0 when x is 3"."""
    statement = before.statement
    if not isinstance(statement, Relation) or value_of(statement.right):
        return None
    product = bare(statement.left)
    for factor in product.factors if isinstance(product, Product) else ():
        inner = bare(factor)
        found = _roots_of_value(value_of(inner), None) if letter in letters(inner) else None
        if found is not None and found[1] == list(lost):
            return f"{tight(before.text[slice(*inner.span)])} is 0 when {letter} is {write_value(lost[0])}"
    return None


def _one_wrong(
    branch: tuple[Statement, list[Value]], lost: Sequence[Value], letter: str, style: Style, roots: int, branches: int,
) -> Iterator[Proposal]:
    statement, own = branch
    if not isinstance(statement, Relation) or statement.operator != "=" or len(own) != 1:
        return
    left, right = value_of(statement.left), value_of(statement.right)
    plain = left == {((letter, Rational(1)),): Rational(1)}
    for root in lost if branches > 1 or roots == 1 else lost[:1]:
        kind = "sign-product" if root == scale(own[0], Rational(-1)) else "arithmetic"
        needed = right if plain else _in_place(left, letter, root)
        text = write_value(root if plain else needed, style)
        if text is None:
            continue
        shown = write_value(root, style)
        because = f"{letter} = {shown} makes the line before true; {letter} = {write_value(own[0], style)} does not"
        if branches == 1 and roots > 1:
            if not plain:
                continue
            rest = " \\text{ or } ".join(f"{letter}={write_value(other, style)}" for other in lost[1:])
            text = f"{text} \\text{{ or }} {rest}"
            yield Proposal(1.8, kind, statement.right.span, text, because, (Edit(statement.right.span, text),))
            return
        if not plain and roots < 2:
            continue
        cost = (1.0 if kind == "sign-product" else 1.3) + (0.8 if branches == 1 else 0.0)
        yield Proposal(cost, kind, statement.right.span, text, because, (Edit(statement.right.span, text),))


def _in_place(left: Value, letter: str, root: Value) -> Value:
    """The value of a linear left side at the root."""
    found: Value = {}
    for key, number in left.items():
        rest = tuple(pair for pair in key if pair[0] != letter)
        factor: Value = root if rest != key else {(): Rational(1)}
        found = subtract(found, scale(multiply({rest: number}, factor), Rational(-1)))
    return found


def _all_wrong(written: Line, roots: Sequence[Value], letter: str, style: Style) -> Iterator[Proposal]:
    texts = [f"{letter}={write_value(root, style)}" for root in roots]
    text = " \\text{ or } ".join(texts)
    span = written.statement.span
    because = "each factor is set to zero, which turns the sign of its number"
    cost = 2.6 if "frac" in written.text or "sqrt" in written.text else 1.6
    yield Proposal(cost, "sign-product", span, text, because, (Edit(span, text),))
