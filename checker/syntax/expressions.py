"""A recursive-descent parser from tokens to one expression node."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction as Rational
from typing import Literal

from checker.errors import ParseError
from checker.syntax.applications import choice, function, is_choice, letter
from checker.syntax.calculus import between
from checker.syntax.cursor import MAX_DEPTH, Cursor
from checker.syntax.numerals import numeral
from checker.syntax.structures import STRUCTURES, structure
from checker.syntax.tokens import CLOSERS, FUNCTIONS, Token
from checker.syntax.tree import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    MixedNumber,
    Negation,
    Node,
    Number,
    PlusMinus,
    Postfix,
    Power,
    Sum,
    Symbol,
    Term,
    product_of,
)

__all__ = ["ExpressionParser"]

_PRIMARY = frozenset({"digit", "letter", "open", "bar", "{", "command", "vulgar", "."})
_PRIMARY_COMMANDS = FUNCTIONS | STRUCTURES


class ExpressionParser:
    """Reads one expression from a run of tokens of one line.

    Args:
        text: the line as given, for errors.
        tokens: tokens, the last of kind "end".
        readings: names of doubts to be read the other way, and what is known of letters before brackets.
    """

    def __init__(self, text: str, tokens: Sequence[Token], readings: frozenset[str] = frozenset()) -> None:
        self.cursor = Cursor(text, tokens, readings)
        self.bars = 0
        self.closing_bars: set[int] = set()

    def whole(self) -> Node:
        """The one expression that takes in every token.

        Raises:
            ParseError: with the place and what was expected there.
        """
        node = self.sum()
        if self.cursor.token.kind != "end":
            raise self.cursor.expected("an operator or the end of the line")
        return node

    def part(self, end: int, what: str) -> Node:
        """The one expression that the tokens up to a place are; the place is not passed."""
        cursor = self.cursor
        stop = cursor.tokens[end]
        inner = ExpressionParser(
            cursor.text, [*cursor.tokens[cursor.at:end], Token("end", "", stop.start, stop.start)], cursor.readings
        )
        inner.cursor.depth = cursor.depth
        node = inner.sum()
        if inner.cursor.token.kind != "end":
            raise inner.cursor.expected(what)
        cursor.doubts |= inner.cursor.doubts
        return node

    # sums and products

    def sum(self) -> Node:
        self.cursor.deeper()
        terms: list[Term] = []
        while True:
            token = self.cursor.token
            sign: Literal["+", "-", "±", "∓"] = "+"
            start = token.start
            if token.kind == "sign" and token.text in ("+", "-", "±", "∓"):
                sign = token.text  # type: ignore[assignment]
                self.cursor.advance()
            elif terms:
                break
            body = self.product()
            terms.append(Term((start, body.span[1]), sign, body))
        self.cursor.depth -= 1
        if len(terms) > 1:
            return Sum((terms[0].span[0], terms[-1].span[1]), tuple(terms))
        only = terms[0]
        match only.sign:
            case "+":
                return only.body
            case "-":
                return Negation(only.span, only.body)
            case sign:
                return PlusMinus(only.span, only.body, sign)

    def product(self) -> Node:
        factors = [self.signed_factor()]
        joins: list[str] = []
        divisions = 0
        while True:
            token = self.cursor.token
            if token.kind == "sign" and token.text in ("\\times", "\\cdot"):
                self.cursor.advance()
                factors.append(self.signed_factor())
                joins.append(token.text)
            elif token.kind == "sign" and token.text in ("/", "\\div"):
                divisions += 1
                if divisions > MAX_DEPTH:
                    raise self.cursor.expected(f"no more than {MAX_DEPTH} divisions in one term")
                self.cursor.advance()
                left = product_of(factors, joins)
                right = self._divisor(token.text)
                factors, joins = [Division((left.span[0], right.span[1]), left, right, token.text)], []
            elif self.starts_factor():
                factor = self.factor()
                mixed = self._mixed(factors[-1], joins, factor)
                if mixed is None:
                    factors.append(factor)
                    joins.append("")
                else:
                    factors[-1] = mixed
            else:
                return product_of(factors, joins)

    def signed_factor(self) -> Node:
        token = self.cursor.token
        if token.kind == "sign" and token.text in ("-", "+", "±", "∓"):
            self.cursor.deeper()
            self.cursor.advance()
            body = self.signed_factor()
            self.cursor.depth -= 1
            span = (token.start, body.span[1])
            if token.text == "-":
                return Negation(span, body)
            return body if token.text == "+" else PlusMinus(span, body, token.text)  # type: ignore[arg-type]
        if not self.starts_factor():
            raise self.cursor.expected("a number, a letter or a bracket")
        return self.factor()

    def _divisor(self, operator: str) -> Node:
        """What stands below: after ÷ all that is written close to it, after / one factor, unless read otherwise."""
        factors = [self.signed_factor()]
        if not self.starts_factor():
            return factors[0]
        self.cursor.doubts.add("slash")
        tight = (operator == "\\div") != ("slash" in self.cursor.readings)
        while tight and self.starts_factor():
            factors.append(self.factor())
        return product_of(factors, [""] * (len(factors) - 1))

    def _mixed(self, before: Node, joins: list[str], factor: Node) -> Node | None:
        if not isinstance(before, Number) or not before.text.isdigit() or (joins and joins[-1] == ""):
            return None
        if not isinstance(factor, Fraction):
            return None
        top, bottom = factor.numerator, factor.denominator
        if not (isinstance(top, Number) and isinstance(bottom, Number)):
            return None
        if not (top.text.isdigit() and bottom.text.isdigit()):
            return None
        if top.value >= bottom.value:
            return None
        self.cursor.doubts.add("mixed")
        if "mixed" in self.cursor.readings:
            return None
        return MixedNumber((before.span[0], factor.span[1]), before, factor)

    # factors

    def starts_factor(self) -> bool:
        token = self.cursor.token
        if token.kind not in _PRIMARY:
            return token.kind == "^" and is_choice(self.cursor)
        match token.kind:
            case "bar":
                return self.bars == 0 or self._after_operator()
            case "command":
                return token.text in _PRIMARY_COMMANDS
            case ".":
                following = self.cursor.tokens[self.cursor.at + 1:self.cursor.at + 2]
                return bool(following) and following[0].kind == "digit"
            case _:
                return True

    def _after_operator(self) -> bool:
        if self.cursor.at == 0:
            return True
        before = self.cursor.tokens[self.cursor.at - 1]
        if before.kind == "bar":
            return self.cursor.at - 1 not in self.closing_bars
        return before.kind in ("sign", "open", "{", "^") or (before.kind == "command" and before.text in FUNCTIONS)

    def factor(self) -> Node:
        node = self._primary()
        raised = 0
        while True:
            token = self.cursor.token
            match token.kind:
                case "^" if self.cursor.tokens[self.cursor.at + 1].kind == "degree":
                    self.cursor.advance()
                    node = Postfix((node.span[0], self.cursor.advance().end), node, "°")
                case "^" if self._braced_degree():
                    self.cursor.at += 4
                    node = Postfix((node.span[0], self.cursor.tokens[self.cursor.at - 1].end), node, "°")
                case "degree":
                    node = Postfix((node.span[0], self.cursor.advance().end), node, "°")
                case "^" | "superscript":
                    raised += 1
                    if raised > 1:
                        raise self.cursor.expected("braces around the first of two powers")
                    exponent = self.superscript()
                    node = Power((node.span[0], self.cursor.tokens[self.cursor.at - 1].end), node, exponent)
                case "!" | "percent":
                    raised += 1
                    if raised > 3:
                        raise self.cursor.expected("an operator")
                    self.cursor.advance()
                    node = Postfix((node.span[0], token.end), node, "!" if token.kind == "!" else "%")
                case _:
                    return node

    def _braced_degree(self) -> bool:
        kinds = [token.kind for token in self.cursor.tokens[self.cursor.at:self.cursor.at + 4]]
        return kinds == ["^", "{", "degree", "}"]

    def superscript(self) -> Node:
        token = self.cursor.advance()
        if token.kind == "superscript":
            span = (token.start, token.end)
            digits = token.text.removeprefix("-")
            if not digits.isdigit() and digits != "n":
                raise ParseError(self.cursor.text, token.start, "a power in digits")
            body: Node = Symbol(span, "n") if digits == "n" else Number(span, Rational(int(digits)), digits)
            return Negation(span, body) if token.text.startswith("-") else body
        return self.argument("a power", signed=True)

    def argument(self, what: str, *, signed: bool = False) -> Node:
        """What a command takes: a group in braces, or the one token that follows."""
        token = self.cursor.token
        match token.kind:
            case "{":
                self.cursor.advance()
                node = self.sum_until("}", "}", "a closing brace }")
                self.cursor.advance()
                return node
            case "digit":
                self.cursor.advance()
                return Number((token.start, token.end), Rational(int(token.text)), token.text)
            case "letter":
                self.cursor.advance()
                return Symbol((token.start, token.end), token.text)
            case "command" if token.text in ("frac", "sqrt", "binom"):
                return self._primary()
            case "sign" if signed and token.text == "-":
                self.cursor.deeper()
                self.cursor.advance()
                body = self.argument(what)
                self.cursor.depth -= 1
                return Negation((token.start, body.span[1]), body)
            case "open" | "vulgar" if signed:
                return self._primary()
            case _:
                raise self.cursor.expected(what)

    def sum_until(self, kind: str, text: str, what: str) -> Node:
        if self.cursor.token.kind == kind and self.cursor.token.text == text:
            raise self.cursor.expected("a number, a letter or a bracket")
        bars, self.bars = self.bars, 0
        node = self.sum()
        self.bars = bars
        if self.cursor.token.kind != kind or self.cursor.token.text != text:
            raise self.cursor.expected(what)
        return node

    def _primary(self) -> Node:
        token = self.cursor.token
        match token.kind:
            case "digit" | ".":
                return numeral(self.cursor)
            case "vulgar":
                self.cursor.advance()
                top, bottom = (int(part) for part in token.text.split("/"))
                span = (token.start, token.end)
                above, below = Number(span, Rational(top), str(top)), Number(span, Rational(bottom), str(bottom))
                return Fraction(span, above, below)
            case "letter":
                return letter(self)
            case "open":
                return self.bracket()
            case "bar":
                return self._bars()
            case "{":
                self.cursor.advance()
                if self.cursor.token.kind == "}":
                    self.cursor.advance()
                    return choice(self) if is_choice(self.cursor) else self._factor_needed()
                node = self.sum_until("}", "}", "a closing brace }")
                end = self.cursor.advance().end
                return Bracket((token.start, end), node, "") if isinstance(node, Sum | Negation | PlusMinus) else node
            case "^" if is_choice(self.cursor):
                return choice(self)
            case "command" if token.text in FUNCTIONS:
                return function(self)
            case "command" if token.text in _PRIMARY_COMMANDS:
                return structure(self)
            case _:
                raise self.cursor.expected("a number, a letter or a bracket")

    def _factor_needed(self) -> Node:
        if not self.starts_factor():
            raise self.cursor.expected("a number, a letter or a bracket")
        return self.factor()

    def bracket(self) -> Node:
        opening = self.cursor.advance()
        closer = CLOSERS[opening.text]
        name = {"|": "a closing bar |", "\\}": "a closing brace"}.get(closer, f"a closing bracket {closer}")
        body = self.sum_until("close", closer, name)
        span = (opening.start, self.cursor.advance().end)
        if closer == "|":
            return Absolute(span, body)
        if opening.text == "[" and self.cursor.token.kind == "_":
            return between(self, body, span)
        return Bracket(span, body, opening.text.removeprefix("\\"))

    def _bars(self) -> Node:
        opening = self.cursor.advance()
        self.bars += 1
        body = self.sum()
        self.bars -= 1
        if self.cursor.token.kind != "bar":
            raise self.cursor.expected("a closing bar |")
        self.closing_bars.add(self.cursor.at)
        return Absolute((opening.start, self.cursor.advance().end), body)
