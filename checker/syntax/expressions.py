"""A recursive-descent parser from tokens to one expression node."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction as Rational
from typing import Literal

from checker.errors import ParseError
from checker.syntax.tokens import FUNCTIONS, Token
from checker.syntax.tree import (
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
    Span,
    Sum,
    Symbol,
    Term,
)

__all__ = ["MAX_DEPTH", "MAX_DIGITS", "USER_FUNCTIONS", "ExpressionParser"]

MAX_DEPTH = 40  # brackets, fractions, roots, powers inside one another
USER_FUNCTIONS = frozenset({"f", "g"})
MAX_DIGITS = 1_000  # of one number
_CLOSERS = {"(": ")", "[": "]", "\\{": "\\}", "|": "|"}
_INVERSE = {"sin": "arcsin", "cos": "arccos", "tan": "arctan"}
_PRIMARY = frozenset({"digit", "letter", "open", "bar", "{", "command", "vulgar", "."})
_PRIMARY_COMMANDS = FUNCTIONS | {"frac", "sqrt", "binom", "overline", "dot"}


class ExpressionParser:
    """Reads one expression from a run of tokens of one line.

    Args:
        text: the line as given, for errors.
        tokens: tokens, the last of kind "end".
        readings: names of doubts to be read the other way: "mixed", "slash", "function"; and "factor f" or "function h"
            where it is known what a letter before a bracket is.
    """

    def __init__(self, text: str, tokens: Sequence[Token], readings: frozenset[str] = frozenset()) -> None:
        self.text = text
        self.tokens = [token for token in tokens if token.kind != "gap"]
        self.at = 0
        self.depth = 0
        self.bars = 0
        self.closing_bars: set[int] = set()
        self.readings = readings
        self.doubts: set[str] = set()

    def whole(self) -> Node:
        """The one expression that takes in every token.

        Raises:
            ParseError: with the place and what was expected there.
        """
        node = self._sum()
        if self._token.kind != "end":
            raise self._expected("an operator or the end of the line")
        return node

    @property
    def _token(self) -> Token:
        return self.tokens[self.at]

    def _expected(self, what: str) -> ParseError:
        return ParseError(self.text, self._token.start, what)

    def _advance(self) -> Token:
        token = self.tokens[self.at]
        if token.kind != "end":
            self.at += 1
        return token

    def _take(self, kind: str, text: str, what: str) -> Token:
        if self._token.kind != kind or self._token.text != text:
            raise self._expected(what)
        return self._advance()

    def _deeper(self) -> None:
        self.depth += 1
        if self.depth > MAX_DEPTH:
            raise self._expected(f"no more than {MAX_DEPTH} brackets, fractions and powers inside one another")

    # sums and products

    def _sum(self) -> Node:
        self._deeper()
        terms: list[Term] = []
        while True:
            token = self._token
            sign: Literal["+", "-", "±", "∓"] = "+"
            start = token.start
            if token.kind == "sign" and token.text in ("+", "-", "±", "∓"):
                sign = token.text  # type: ignore[assignment]
                self._advance()
            elif terms:
                break
            body = self._product()
            terms.append(Term((start, body.span[1]), sign, body))
        self.depth -= 1
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

    def _product(self) -> Node:
        factors = [self._signed_factor()]
        joins: list[str] = []
        divisions = 0
        while True:
            token = self._token
            if token.kind == "sign" and token.text in ("\\times", "\\cdot"):
                self._advance()
                factors.append(self._signed_factor())
                joins.append(token.text)
            elif token.kind == "sign" and token.text in ("/", "\\div"):
                divisions += 1
                if divisions > MAX_DEPTH:
                    raise self._expected(f"no more than {MAX_DEPTH} divisions in one term")
                self._advance()
                left = _product_of(factors, joins)
                right = self._divisor(token.text)
                factors, joins = [Division((left.span[0], right.span[1]), left, right, token.text)], []
            elif self._starts_factor():
                factor = self._factor()
                mixed = self._mixed(factors[-1], joins, factor)
                if mixed is None:
                    factors.append(factor)
                    joins.append("")
                else:
                    factors[-1] = mixed
            else:
                return _product_of(factors, joins)

    def _signed_factor(self) -> Node:
        token = self._token
        if token.kind == "sign" and token.text in ("-", "+", "±", "∓"):
            self._deeper()
            self._advance()
            body = self._signed_factor()
            self.depth -= 1
            span = (token.start, body.span[1])
            if token.text == "-":
                return Negation(span, body)
            return body if token.text == "+" else PlusMinus(span, body, token.text)  # type: ignore[arg-type]
        if not self._starts_factor():
            raise self._expected("a number, a letter or a bracket")
        return self._factor()

    def _divisor(self, operator: str) -> Node:
        """What stands below: after ÷ all that is written close to it, after / one factor, unless read otherwise."""
        factors = [self._signed_factor()]
        if not self._starts_factor():
            return factors[0]
        self.doubts.add("slash")
        tight = (operator == "\\div") != ("slash" in self.readings)
        while tight and self._starts_factor():
            factors.append(self._factor())
        return _product_of(factors, [""] * (len(factors) - 1))

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
        self.doubts.add("mixed")
        if "mixed" in self.readings:
            return None
        return MixedNumber((before.span[0], factor.span[1]), before, factor)

    # factors

    def _starts_factor(self) -> bool:
        token = self._token
        if token.kind not in _PRIMARY:
            return False
        match token.kind:
            case "bar":
                return self.bars == 0 or self._after_operator()
            case "command":
                return token.text in _PRIMARY_COMMANDS
            case ".":
                return self.at + 1 < len(self.tokens) and self.tokens[self.at + 1].kind == "digit"
            case _:
                return True

    def _after_operator(self) -> bool:
        if self.at == 0:
            return True
        before = self.tokens[self.at - 1]
        if before.kind == "bar":
            return self.at - 1 not in self.closing_bars
        return before.kind in ("sign", "open", "{", "^") or (before.kind == "command" and before.text in FUNCTIONS)

    def _factor(self) -> Node:
        node = self._primary()
        raised = 0
        while True:
            token = self._token
            match token.kind:
                case "^" if self.tokens[self.at + 1].kind == "degree":
                    self._advance()
                    node = Postfix((node.span[0], self._advance().end), node, "°")
                case "^" if self._braced_degree():
                    self.at += 4
                    node = Postfix((node.span[0], self.tokens[self.at - 1].end), node, "°")
                case "degree":
                    node = Postfix((node.span[0], self._advance().end), node, "°")
                case "^" | "superscript":
                    raised += 1
                    if raised > 1:
                        raise self._expected("braces around the first of two powers")
                    exponent = self._superscript()
                    node = Power((node.span[0], self.tokens[self.at - 1].end), node, exponent)
                case "!" | "percent":
                    raised += 1
                    if raised > 3:
                        raise self._expected("an operator")
                    self._advance()
                    node = Postfix((node.span[0], token.end), node, "!" if token.kind == "!" else "%")
                case _:
                    return node

    def _braced_degree(self) -> bool:
        kinds = [token.kind for token in self.tokens[self.at:self.at + 4]]
        return kinds == ["^", "{", "degree", "}"]

    def _superscript(self) -> Node:
        token = self._advance()
        if token.kind == "superscript":
            span = (token.start, token.end)
            digits = token.text.removeprefix("-")
            if not digits.isdigit() and digits != "n":
                raise ParseError(self.text, token.start, "a power in digits")
            body: Node = Symbol(span, "n") if digits == "n" else Number(span, Rational(int(digits)), digits)
            return Negation(span, body) if token.text.startswith("-") else body
        return self._argument("a power", signed=True)

    def _argument(self, what: str, *, signed: bool = False) -> Node:
        """What a command takes: a group in braces, or the one token that follows."""
        token = self._token
        match token.kind:
            case "{":
                self._advance()
                node = self._sum_until("}", "}", "a closing brace }")
                self._advance()
                return node
            case "digit":
                self._advance()
                return Number((token.start, token.end), Rational(int(token.text)), token.text)
            case "letter":
                self._advance()
                return Symbol((token.start, token.end), token.text)
            case "command" if token.text in ("frac", "sqrt", "binom"):
                return self._primary()
            case "sign" if signed and token.text == "-":
                self._deeper()
                self._advance()
                body = self._argument(what)
                self.depth -= 1
                return Negation((token.start, body.span[1]), body)
            case "open" | "vulgar" if signed:
                return self._primary()
            case _:
                raise self._expected(what)

    def _sum_until(self, kind: str, text: str, what: str) -> Node:
        if self._token.kind == kind and self._token.text == text:
            raise self._expected("a number, a letter or a bracket")
        bars, self.bars = self.bars, 0
        node = self._sum()
        self.bars = bars
        if self._token.kind != kind or self._token.text != text:
            raise self._expected(what)
        return node

    def _primary(self) -> Node:
        token = self._token
        match token.kind:
            case "digit" | ".":
                return self._number()
            case "vulgar":
                self._advance()
                top, bottom = (int(part) for part in token.text.split("/"))
                span = (token.start, token.end)
                above, below = Number(span, Rational(top), str(top)), Number(span, Rational(bottom), str(bottom))
                return Fraction(span, above, below)
            case "letter":
                return self._letter()
            case "open":
                return self._bracket()
            case "bar":
                return self._bars()
            case "{":
                self._advance()
                if self._token.kind == "}":
                    self._advance()
                    return self._factor_needed()
                node = self._sum_until("}", "}", "a closing brace }")
                end = self._advance().end
                return Bracket((token.start, end), node, "") if isinstance(node, Sum | Negation | PlusMinus) else node
            case "command" if token.text in FUNCTIONS:
                return self._function()
            case "command" if token.text in _PRIMARY_COMMANDS:
                return self._structure()
            case _:
                raise self._expected("a number, a letter or a bracket")

    def _factor_needed(self) -> Node:
        if not self._starts_factor():
            raise self._expected("a number, a letter or a bracket")
        return self._factor()

    def _number(self) -> Node:
        start = self._token.start
        digits: list[str] = []
        end = start
        while True:
            token = self._token
            following = self.tokens[min(self.at + 1, len(self.tokens) - 1)]
            if token.kind == "digit":
                digits.append(token.text)
            elif token.kind == "." and "." not in digits and following.kind == "digit":
                digits.append(".")
            elif token.kind != "thousands" or not digits:
                break
            end = token.end
            self._advance()
        if self._token.kind == "." and "." not in digits and self.tokens[self.at + 1].text in ("dot", "overline"):
            digits.append(".")
            end = self._advance().end
        text = "".join(digits)
        if len(text) > MAX_DIGITS:
            raise ParseError(self.text, start, f"a number of at most {MAX_DIGITS} digits")
        if self._token.kind == "command" and self._token.text in ("dot", "overline") and "." in text:
            return self._recurring(start, text)
        value = Rational(text) if text[-1] != "." else Rational(text[:-1])
        return Number((start, end), value, text)

    def _recurring(self, start: int, text: str) -> Node:
        """0.1\\dot{6}, 0.\\dot{1}2\\dot{3}, 0.\\overline{12}: digits that repeat for ever."""
        plain = text.split(".")[1]
        repeated = ""
        end = start
        dots = 0
        while self._token.kind in ("command", "digit") and dots < 2:
            token = self._token
            if token.kind == "digit":
                if not dots:
                    break
                repeated += self._advance().text
                end = token.end
                continue
            if token.text not in ("dot", "overline"):
                break
            self._advance()
            opening = self._token
            if opening.kind == "{":
                self._advance()
            while self._token.kind == "digit":
                repeated += self._advance().text
                if opening.kind != "{":
                    break
            end = self.tokens[self.at - 1].end
            if opening.kind == "{":
                end = self._take("}", "}", "a closing brace }").end
            dots += 2 if token.text == "overline" or not self._second_dot() else 1
        if not repeated:
            raise self._expected("the digits that recur")
        scale = 10 ** len(plain)
        value = Rational(text.rstrip(".")) + Rational(int(repeated), (10 ** len(repeated) - 1) * scale)
        return Number((start, end), value, f"{text}({repeated})")

    def _second_dot(self) -> bool:
        at = self.at
        while self.tokens[at].kind == "digit":
            at += 1
        return self.tokens[at].kind == "command" and self.tokens[at].text == "dot"

    def _letter(self) -> Node:
        token = self._advance()
        name, end = token.text, token.end
        if self._token.kind == "subscript":
            mark = self._advance()
            name, end = f"{name}_{mark.text}", mark.end
        elif self._token.kind == "_":
            self._advance()
            index = self._subscript()
            name, end = f"{name}_{index}" if index else name, self.tokens[self.at - 1].end
        while self._token.kind == "prime":
            end = self._advance().end
            name += "'"
        span = (token.start, end)
        if self._token.kind == "open" and self._token.text == "(" and self._may_be_function(name):
            if f"function {name}" not in self.readings:
                self.doubts.add("function")
            if "function" not in self.readings:
                bracket = self._bracket()
                body = bracket.body if isinstance(bracket, Bracket) else bracket
                return Function((span[0], bracket.span[1]), name, (body,))
        return Symbol(span, name)

    def _may_be_function(self, name: str) -> bool:
        if f"function {name}" in self.readings:
            return True
        return name in USER_FUNCTIONS and f"factor {name}" not in self.readings

    def _subscript(self) -> str:
        if self._token.kind in ("digit", "letter"):
            return self._advance().text
        self._take("{", "{", "a subscript")
        parts = []
        while self._token.kind not in ("}", "end"):
            parts.append(self._advance().text)
        self._take("}", "}", "a closing brace }")
        return "".join(parts)

    def _bracket(self) -> Node:
        opening = self._advance()
        closer = _CLOSERS[opening.text]
        name = {"|": "a closing bar |", "\\}": "a closing brace"}.get(closer, f"a closing bracket {closer}")
        body = self._sum_until("close", closer, name)
        span = (opening.start, self._advance().end)
        if closer == "|":
            return Absolute(span, body)
        return Bracket(span, body, opening.text.removeprefix("\\"))

    def _bars(self) -> Node:
        opening = self._advance()
        self.bars += 1
        body = self._sum()
        self.bars -= 1
        if self._token.kind != "bar":
            raise self._expected("a closing bar |")
        self.closing_bars.add(self.at)
        return Absolute((opening.start, self._advance().end), body)

    def _structure(self) -> Node:
        token = self._advance()
        self._deeper()
        node: Node
        match token.text:
            case "frac":
                top = self._argument("the top of the fraction")
                bottom = self._argument("the bottom of the fraction")
                node = Fraction(self._from(token), top, bottom)
            case "binom":
                top = self._argument("the upper number")
                bottom = self._argument("the lower number")
                node = Function(self._from(token), "binom", (top, bottom))
            case "sqrt":
                index = None
                if self._token.kind == "open" and self._token.text == "[":
                    self._advance()
                    index = self._sum_until("close", "]", "a closing bracket ]")
                    self._advance()
                node = Root(self._from(token), self._argument("what stands under the root", signed=True), index)
                node = replace(node, span=self._from(token))
            case _:
                raise ParseError(self.text, token.start, "a number before the recurring digits")
        self.depth -= 1
        return node

    def _from(self, token: Token) -> Span:
        return token.start, self.tokens[self.at - 1].end

    # functions

    def _function(self) -> Node:
        token = self._advance()
        self._deeper()
        name = "csc" if token.text == "cosec" else token.text
        power: Node | None = None
        base: Node | None = None
        for _ in range(2):
            if self._token.kind in ("^", "superscript") and power is None:
                power = self._superscript()
            elif self._token.kind == "_" and base is None and name == "log":
                self._advance()
                base = self._argument("the base of the logarithm")
            elif self._token.kind == "subscript" and base is None and name == "log":
                mark = self._advance()
                base = Number((mark.start, mark.end), Rational(int(mark.text)), mark.text)
        if name in _INVERSE and isinstance(power, Negation) and _is_one(power.body):
            name, power = _INVERSE[name], None
        if name == "lg":
            name = "log"
        arguments = self._arguments(name)
        self.depth -= 1
        return Function(self._from(token), name, arguments, power, base)

    def _arguments(self, name: str) -> tuple[Node, ...]:
        token = self._token
        if token.kind == "open" and token.text in ("(", "["):
            if name in ("max", "min", "gcd", "lcm"):
                return self._list(token)
            bracket = self._bracket()
            if self._token.kind in ("^", "superscript"):
                self.doubts.add("power of a function")
                if "power of a function" in self.readings:
                    exponent = self._superscript()
                    return (Power((bracket.span[0], self.tokens[self.at - 1].end), bracket, exponent),)
            return (bracket.body if isinstance(bracket, Bracket) else bracket,)
        if token.kind == "sign" and token.text == "-":
            return (self._signed_factor(),)
        if not self._starts_factor():
            raise self._expected(f"what \\{name} is taken of")
        factors = [self._factor()]
        while self._starts_factor():
            following = self._token
            numeric = all(isinstance(factor, Number) for factor in factors)
            if following.kind == "letter" or (numeric and following.kind in ("open", "{", "command")):
                if following.kind == "command" and following.text in FUNCTIONS:
                    break
                factors.append(self._factor())
            else:
                break
        argument = _product_of(factors, [""] * (len(factors) - 1))
        if self._token.kind == "sign" and self._token.text == "/":
            self.doubts.add("slash")
            if "slash" in self.readings:
                self._advance()
                right = self._signed_factor()
                argument = Division((argument.span[0], right.span[1]), argument, right, "/")
        return (argument,)

    def _list(self, opening: Token) -> tuple[Node, ...]:
        self._advance()
        found = [self._sum()]
        while self._token.kind == "separator":
            self._advance()
            found.append(self._sum())
        self._take("close", _CLOSERS[opening.text], "a closing bracket")
        return tuple(found)


def _product_of(factors: list[Node], joins: list[str]) -> Node:
    if len(factors) == 1:
        return factors[0]
    return Product((factors[0].span[0], factors[-1].span[1]), tuple(factors), tuple(joins))


def _is_one(node: Node) -> bool:
    return isinstance(node, Number) and node.value == 1
