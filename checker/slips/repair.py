"""The smallest change of one number, sign, power, letter or operation that makes a written line follow."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction as Rational

from checker.slips.factors import factor_repairs
from checker.slips.frames import Frame, at_span, at_term, enclosing, fitting, flip, flip_side
from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.slips.values import (
    BLANK,
    TooLarge,
    Value,
    add,
    as_constant,
    multiply,
    negate,
    power,
    subtract,
    symbol,
    term_value,
    total,
    value_of,
)
from checker.slips.writing import write_value
from checker.syntax.tree import (
    Bracket,
    Node,
    Number,
    Power,
    Product,
    Root,
    Sum,
    Symbol,
    walk,
)

__all__ = ["repairs", "whole_side"]

UGLY = 100  # denominator that no one writes by a single slip


def repairs(frame: Frame) -> Iterator[Proposal]:
    """All single changes that work out in value, then pairs of signs."""
    yield from _signs(frame)
    yield from _numbers(frame)
    yield from _powers(frame)
    yield from _letters(frame)
    yield from _operations(frame)
    yield from factor_repairs(frame)


def _sign_changes(frame: Frame) -> Iterator[tuple[Edit, Value, bool, bool]]:
    """Each sign that can be turned: the edit, the value after it, whether the term is in a factor and opens it."""
    for side in frame.sides:
        if not isinstance(side, Sum):
            edit = flip_side(frame.line, side)
            yield edit, frame.value({id(side): negate(value_of(side))}), False, True
        for node in walk(side):
            if not isinstance(node, Sum):
                continue
            for number, term in enumerate(node.terms):
                edit_of = flip(frame, term, number == 0)
                if edit_of is None:
                    continue
                whole = subtract(value_of(node), term_value(term))
                yield edit_of, frame.value({id(node): subtract(whole, term_value(term))}), node is not side, number == 0


def _signs(frame: Frame) -> Iterator[Proposal]:
    for edit, value, in_factor, opens in _sign_changes(frame):
        if frame.agrees(value):
            because = "with the other sign the line agrees with the line before"
            kind = "sign-product" if in_factor or frame.is_relation or frame.unknown else "copied"
            if frame.unknown:
                because = f"with this sign {frame.unknown} makes the line before true"
            whole = next(
                (side for side in frame.sides if side.span[0] == edit.span[0] and not isinstance(side, Sum)), None,
            )
            if whole is not None:
                yield at_span(frame, 1.75, kind, whole.span, [edit], because)
                continue
            if kind == "copied" and not in_factor:
                kind, because = _cancelled(frame, edit, kind, because)
            found = at_term(frame, 1.7 if opens else 1.6, kind, [edit], because)
            # of two equal terms the later one is the likelier to be wrong
            again = frame.line[slice(*found.span)] in frame.line[found.span[1]:]
            yield replace(found, cost=found.cost + 0.05) if again else found


def _cancelled(frame: Frame, edit: Edit, kind: str, because: str) -> tuple[str, str]:
    """Like terms that should have cancelled: "the line before has no term in w, so -8w and +8w must cancel"."""
    side = frame.sides[0]
    for term in side.terms if isinstance(side, Sum) else ():
        value = term_value(term)
        if term.span[0] == edit.span[0] and len(value) == 1 and not value.keys() & frame.target.keys():
            letters = write_value({key: Rational(1) for key in value}, frame.style)
            right = write_value(negate(value), frame.style)
            return "arithmetic", f"the line before has no term in {letters}, so this must be {right} for them to cancel"
    return kind, because


def _exponents(node: Node) -> set[int]:
    return {id(below) for raised in walk(node) if isinstance(raised, Power) for below in walk(raised.exponent)}


def _numbers(frame: Frame) -> Iterator[Proposal]:
    blank = symbol(BLANK)
    for side in frame.sides:
        raised = _exponents(side)
        plain = _plain_terms(side) if frame.unknown is None else frozenset()
        for node in walk(side):
            if not isinstance(node, Number) or id(node) in raised:
                continue
            if frame.unknown is not None:
                numbers = _tried(frame, node)
            else:
                numbers = fitting(frame, frame.value({id(node): blank}))
                below = frame.value({id(node): symbol(BLANK, -1)}) if not numbers else {}
                numbers = numbers or [1 / number for number in fitting(frame, below) if number]
            for number in numbers:
                if number == node.value:
                    continue
                text = write_value({(): number}, frame.style)
                if text is None or (number < 0 and not _opens(frame, node)):
                    continue
                because = f"with {text} in place of {node.text} the line agrees with the line before"
                # a plain term of a sum has been matched already: changing its number again says nothing new
                cost = 2.9 if id(node) in plain else 1.9
                if number.denominator > UGLY:
                    cost += 3.0
                elif number.denominator > 1 and not frame.style.decimals and "frac" not in frame.line:
                    cost += 1.5
                elif abs(number) > node.value:
                    cost += 0.04
                yield at_term(frame, cost, "arithmetic", [Edit(node.span, text)], because)


def _plain_terms(side: Node) -> frozenset[int]:
    """The nodes of a sum that stand in no bracket."""
    if not isinstance(side, Sum):
        return frozenset()
    inside = {id(below) for node in walk(side) if isinstance(node, Bracket) for below in walk(node)}
    return frozenset(id(node) for node in walk(side)) - inside


def _tried(frame: Frame, node: Number) -> list[Rational]:
    """Numbers near the written one, and those of the quadratic formula, that give a root."""
    a, b, c = (
        frame.target.get(key, Rational(0))
        for key in (((frame.unknown or "", Rational(2)),), ((frame.unknown or "", Rational(1)),), ())
    )
    near = {node.value + step for step in (-2, -1, 1, 2)} | {node.value * 2, node.value / 2}
    near |= {abs(number) for number in (2 * a, b, b * b, 4 * a * c, b * b - 4 * a * c)}
    return [number for number in sorted(near) if frame.agrees(frame.value({id(node): {(): number} if number else {}}))]


def _opens(frame: Frame, node: Node) -> bool:
    before = frame.line[:node.span[0]].rstrip()
    return not before or before[-1] in "=<>({"


def _powers(frame: Frame) -> Iterator[Proposal]:
    """An exponent changed, or lost, or one too many."""
    for side in frame.sides:
        for node in walk(side):
            if isinstance(node, Power):
                yield from _other_exponent(frame, node)
            elif isinstance(node, Symbol | Bracket):
                yield from _lost_exponent(frame, node)


def _other_exponent(frame: Frame, node: Power) -> Iterator[Proposal]:
    now = as_constant(value_of(node.exponent))
    if now is None:
        return
    wanted = {Rational(n) for n in range(2, 7)} | {now + 1, now - 1, -now, now * 2, now / 2, 1 / now if now else now}
    wanted |= {exponent for key in frame.target for _, exponent in key}
    wanted |= {as_constant(value_of(p.exponent)) or now for p in walk(node) if isinstance(p, Power)}
    for exponent in sorted(wanted - {now, Rational(0)}):
        if abs(exponent) > 200:
            continue
        try:
            value = frame.value({id(node): power(value_of(node.base), exponent)})
        except (TooLarge, ZeroDivisionError):
            continue
        if frame.agrees(value):
            text = write_value({(): exponent}, frame.style) or ""
            start = node.exponent.span[0]
            if len(text) > 1 and frame.line[start - 1:start] == "^":
                text = "{" + text + "}"
            because = f"the power is {text.strip('{}')}"
            yield at_term(frame, 1.7, "power-law", [Edit(node.exponent.span, text)], because)


def _lost_exponent(frame: Frame, node: Symbol | Bracket) -> Iterator[Proposal]:
    for exponent in (2, 3):
        try:
            value = frame.value({id(node): power(value_of(node), Rational(exponent))})
        except TooLarge:
            return
        if frame.agrees(value):
            edit = Edit((node.span[1], node.span[1]), f"^{exponent}")
            yield at_span(
                frame, 1.8, "power-law", enclosing(frame, node.span), [edit], f"the power {exponent} is missing",
            )


def _letters(frame: Frame) -> Iterator[Proposal]:
    names = {atom for key in frame.target for atom, _ in key if atom.isalpha()}
    for side in frame.sides:
        for node in walk(side):
            if isinstance(node, Symbol):
                for name in sorted(names - {node.name}):
                    if frame.agrees(frame.value({id(node): symbol(name)})):
                        because = f"the letter is {name}, not {node.name}"
                        yield at_term(frame, 1.8, "copied", [Edit(node.span, name)], because)
            elif isinstance(node, Number) and not _is_solution(frame, node):
                for name in sorted(names):
                    value: Value = {((name, Rational(1)),): node.value}
                    if frame.agrees(frame.value({id(node): value})):
                        edit = Edit((node.span[1], node.span[1]), name)
                        words = f"the letter {name} was lost"
                        yield at_span(frame, 1.6, "letter-lost", enclosing(frame, node.span), [edit], words)


def _is_solution(frame: Frame, node: Node) -> bool:
    """Whether the number is a whole side and the other side is a letter alone."""
    return frame.is_relation and any(
        side is node and isinstance(frame.sides[1 - place], Symbol) for place, side in enumerate(frame.sides)
    )


def _operations(frame: Frame) -> Iterator[Proposal]:
    """A times that should be a plus, a plus that should be a times, a root sign too many or too few."""
    for side in frame.sides:
        for node in walk(side):
            if isinstance(node, Product) and len(node.factors) == 2:
                if frame.agrees(frame.value({id(node): total(value_of(factor) for factor in node.factors)})):
                    start, end = node.factors[0].span[1], node.factors[1].span[0]
                    edit = Edit((start, end), "+")
                    yield at_span(frame, 1.9, "wrong-operation", (start, end), [edit], "here the two are added")
            elif isinstance(node, Sum) and len(node.terms) == 2 and node.terms[0].sign == "+":
                first, second = node.terms
                value = multiply(value_of(first.body), value_of(second.body))
                trivial = any(as_constant(value_of(term.body)) in (0, 1) for term in node.terms)
                if second.sign in "+-" and not trivial and frame.agrees(frame.value({id(node): value})):
                    edit = Edit((second.span[0], second.span[0] + 1), "\\cdot ")
                    yield at_span(
                        frame, 1.9, "wrong-operation", edit.span, [edit], "here the two are multiplied",
                    )
            elif isinstance(node, Root) and frame.agrees(frame.value({id(node): value_of(node.radicand)})):
                text = frame.line[node.radicand.span[0]:node.radicand.span[1]]
                yield at_span(frame, 1.9, "power-law", node.span, [Edit(node.span, text)], "no root is taken here")


def whole_side(frame: Frame, before: str) -> Iterator[Proposal]:
    """The last resort: the whole expression, or one whole side, written anew."""
    for place, side in enumerate(frame.sides):
        other = frame.sides[1 - place] if frame.is_relation else None
        if other is None:
            text = write_value(frame.target, frame.style) or before
            because = f"the line before is {text}"
            yield Proposal(4.0, "other", side.span, text, because, (Edit(side.span, text),))
            continue
        needed = subtract(value_of(other), frame.target) if place else add(value_of(other), frame.target)
        anew = write_value(needed, frame.style)
        if anew is not None:
            because = f"with the other side as it stands, this side is {anew}"
            yield Proposal(4.2 + 0.1 * (1 - place), "other", side.span, anew, because, (Edit(side.span, anew),))
