"""What is known put into a statement: functions, derivatives, terms of sequences, sides."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as Rational

from checker.calculus.building import replaced
from checker.calculus.derivative import differentiated, repeatedly_differentiated
from checker.errors import ParseError
from checker.knowledge import NOTHING, Knowledge, Rule, names_function
from checker.polynomial import TooLargeError
from checker.ring import UnsupportedError
from checker.syntax import (
    Absolute,
    Alternatives,
    Bracket,
    Chain,
    Division,
    Expression,
    Fraction,
    Function,
    Negation,
    Node,
    Number,
    PlusMinus,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Sum,
    Symbol,
    System,
    letters,
    nodes_of,
    parse_expression,
    walk,
)

__all__ = ["implicit", "inverse_of", "is_subject", "line_of", "worked_out", "worked_out_in"]

_MOST_INDEX = 60  # of a sequence worked out term by term


def is_subject(node: Node) -> bool:
    """May a line say what it is: f(3), \\frac{dy}{dx}, y', u_4?"""
    match node:
        case Function(name="deriv"):
            return True
        case Function():
            return names_function(node)
        case Symbol(name=name):
            return name.endswith("'") or "_" in name or name in ("Lhs", "Rhs")
        case Product():
            return isinstance(_joined(node), Function)
        case _:
            return False


def line_of(node: Node, known: Knowledge) -> int | None:
    """The line that says what the subject is."""
    rule: Rule | None = None
    match node:
        case Function(name="deriv", arguments=(Symbol(name=name), *_)):
            rule = known.letters.get(name)
        case Function(name="deriv", arguments=(body, *_)):
            return line_of(body, known)
        case Function(name=name):
            rule = known.functions.get(name) or known.functions.get(name.rstrip("'"))
        case Symbol(name=name) if name.endswith("'"):
            rule = known.letters.get(name.rstrip("'"))
        case Symbol(name=name):
            stem = name.partition("_")[0]
            rule = known.terms.get(stem) or known.next_terms.get(stem)
        case Product():
            joined = _joined(node)
            return line_of(joined, known) if joined is not node else None
        case _:
            return None
    return None if rule is None else rule.index


def worked_out_in(statement: Statement, known: Knowledge) -> Statement:
    """The statement with what is known put in for functions, derivatives and terms of sequences."""
    if not any(_may_change(node) for top in nodes_of(statement) for node in walk(top)):
        return statement
    match statement:
        case Relation(left=left, right=right):
            inverse = inverse_of(left, right, known)
            if inverse is not None:
                return replace(statement, left=inverse[0], right=inverse[1])
            return replace(statement, left=worked_out(left, known), right=worked_out(right, known))
        case Chain(members=members):
            inverse = inverse_of(members[0], members[-1], known)
            if inverse is not None:
                return Relation(statement.span, inverse[0], "=", inverse[1], statement.span)
            return replace(statement, members=tuple(worked_out(member, known) for member in members))
        case Alternatives(branches=branches):
            return replace(statement, branches=tuple(worked_out_in(branch, known) for branch in branches))
        case System(parts=parts):
            return replace(statement, parts=tuple(worked_out_in(part, known) for part in parts))
        case Expression(body=body):
            return replace(statement, body=worked_out(body, known))
        case _:
            return statement


def _may_change(node: Node) -> bool:
    return (
        (isinstance(node, Function) and (node.name == "deriv" or names_function(node)))
        or (isinstance(node, Symbol) and is_subject(node))
        or (isinstance(node, Product) and any(isinstance(one, Symbol | Power) for one in node.factors))
    )


def inverse_of(left: Node, right: Node, known: Knowledge) -> tuple[Node, Node] | None:
    """f^{-1}(x) = E says that f(E) = x."""
    match left:
        case Product(factors=(Power(base=Symbol(name=name), exponent=Negation(body=Number(value=one))), argument)):
            rule = known.functions.get(name)
            if rule is not None and one == 1 and isinstance(argument, Bracket):
                return replaced(rule.body, rule.letter, Bracket(right.span, right, "(")), argument.body
    return None


def worked_out(node: Node, known: Knowledge, depth: int = 0) -> Node:
    """The node with what is known put in."""
    if depth > 12:
        return node

    def deeper(one: Node) -> Node:
        return worked_out(one, known, depth)

    match node:
        case Function(name="deriv"):
            return _derived(node, known, depth)
        case Function(name=name, arguments=(argument,), power=None) if names_function(node):
            rule = _rule_of(name, known)
            argument = deeper(argument)
            if rule is None:
                return replace(node, arguments=(argument,))
            return worked_out(Bracket(node.span, _put(rule, argument), "("), known, depth + 1)
        case Function(arguments=arguments):
            return replace(node, arguments=tuple(deeper(one) for one in arguments))
        case Symbol(name=name):
            return _symbol(node, known, depth)
        case Product(factors=factors):
            joined = _joined(node, known)
            if joined is not node:
                return worked_out(joined, known, depth + 1)
            return replace(node, factors=tuple(deeper(one) for one in factors))
        case Sum(terms=terms):
            return replace(node, terms=tuple(replace(term, body=deeper(term.body)) for term in terms))
        case Fraction(numerator=top, denominator=bottom):
            return replace(node, numerator=deeper(top), denominator=deeper(bottom))
        case Division(left=left, right=right):
            return replace(node, left=deeper(left), right=deeper(right))
        case Power(base=base, exponent=exponent):
            return replace(node, base=deeper(base), exponent=deeper(exponent))
        case Root(radicand=radicand):
            return replace(node, radicand=deeper(radicand))
        case Negation() | PlusMinus() | Absolute() | Bracket() | Postfix():
            return replace(node, body=deeper(node.body))
        case _:
            return node


def _put(rule: Rule, argument: Node) -> Node:
    return replaced(rule.body, rule.letter, Bracket(argument.span, argument, "("))


def _rule_of(name: str, known: Knowledge) -> Rule | None:
    """The rule of f, or of f' by the rule of f."""
    if name in known.functions:
        return known.functions[name]
    stem = name.rstrip("'")
    order = len(name) - len(stem)
    for less in range(1, order + 1):
        rule = known.functions.get(stem + "'" * (order - less))
        if rule is not None:
            try:
                return Rule(rule.letter, repeatedly_differentiated(rule.body, rule.letter, less), rule.index)
            except (UnsupportedError, TooLargeError):
                return None
    return None


def _joined(node: Product, known: Knowledge | None = None) -> Node:
    """fg(x) as f of g(x), f^2(x) as f of f(x): where f is a function of that name."""
    factors = node.factors
    if len(factors) != 2 or any(node.joins):
        return node
    first, second = factors
    inner: Node | None = second if names_function(second) else None
    times = 1
    match first:
        case Symbol(name=name):
            pass
        case Power(base=Symbol(name=name), exponent=Number(value=value)) if isinstance(second, Bracket):
            if value.denominator != 1 or not 1 < value < 6:
                return node
            times, inner = int(value), second.body
        case _:
            return node
    if inner is None or (known is not None and name not in known.functions) or not name.isalpha():
        return node
    for _ in range(times):
        inner = Function(node.span, name, (inner,))
    return inner


def _symbol(node: Symbol, known: Knowledge, depth: int) -> Node:
    name = node.name
    stem, _, place = name.partition("_")
    if name in known.sides:
        return known.sides[name]
    if name.endswith("'"):
        return _primed(node, known)
    if not place:
        return node
    if place == "" or stem not in known.terms.keys() | known.next_terms.keys():
        return node
    try:
        at = parse_expression(place)
    except ParseError:
        return node
    rule = known.terms.get(stem)
    if rule is not None:
        return Bracket(node.span, replaced(rule.body, rule.letter, Bracket(node.span, at, "(")), "(")
    step = known.next_terms.get(stem)
    if step is None or not place.isdigit() or not 1 < int(place) < _MOST_INDEX or depth > 10:
        return node
    before = int(place) - 1
    body = replaced(step.body, f"{stem}_{step.letter}", Symbol(node.span, f"{stem}_{before}"))
    body = replaced(body, step.letter, Number(node.span, Rational(before), str(before)))
    if f"{stem}_{before}" not in known.values:
        body = worked_out(body, known, depth + 1)
    return Bracket(node.span, body, "(")


def _primed(node: Symbol, known: Knowledge) -> Node:
    """y' where y is given by one other letter."""
    name = node.name.rstrip("'")
    rule = known.letters.get(name)
    inside = sorted(letters(rule.body) - {"e", "pi", "i"}) if rule is not None else []
    letter = "x" if "x" in inside else inside[0] if len(inside) == 1 else None
    if rule is None or letter is None:
        return node
    try:
        return Bracket(node.span, repeatedly_differentiated(rule.body, letter, len(node.name) - len(name)), "(")
    except (UnsupportedError, TooLargeError):
        return node


def _derived(node: Function, known: Knowledge, depth: int) -> Node:
    """A derivative worked out, or a letter in its place where what is differentiated is not known."""
    body, letter, order = node.arguments
    if not isinstance(letter, Symbol) or not isinstance(order, Number):
        return node
    if isinstance(body, Symbol):
        rule = known.letters.get(body.name)
        by = known.letters.get(letter.name)
        if rule is not None and by is not None and int(order.value) == 1:
            shared = sorted((letters(rule.body) & letters(by.body)) - {"pi", "e"})
            if len(shared) == 1 and letter.name not in letters(rule.body):
                return _by_parameter(rule.body, by.body, shared[0]) or node
        if rule is not None:
            rule = replace(rule, body=_down_to(rule.body, letter.name, known))
        if rule is None or letter.name not in letters(rule.body):
            return _named(body.name, letter.name, int(order.value), node)
        body = rule.body
    inner = worked_out(body, known, depth + 1)
    try:
        out = repeatedly_differentiated(inner, letter.name, int(order.value))
    except (UnsupportedError, TooLargeError):
        return node
    return Bracket(node.span, _with_names(out), "(")


def _by_parameter(above: Node, below: Node, name: str) -> Node | None:
    """dy/dx where both are given by t."""
    try:
        return Fraction((0, 0), differentiated(above, name), differentiated(below, name))
    except (UnsupportedError, TooLargeError):
        return None


def _down_to(body: Node, name: str, known: Knowledge) -> Node:
    """u^5 by x where u is given by x."""
    for _ in range(3):
        if name in letters(body):
            break
        for one in letters(body) & known.letters.keys():
            body = replaced(body, one, Bracket(body.span, known.letters[one].body, "("))
    return body


def _named(name: str, by: str, order: int, node: Node) -> Symbol:
    power = "" if order == 1 else f"^{order}"
    return Symbol(node.span, f"d{power}{name}/d{by}{power}")


def _with_names(node: Node) -> Node:
    """Each derivative of a letter as a letter of its own."""
    return worked_out(node, NOTHING)


def implicit(statement: Relation, by: str, dependent: str) -> Relation | None:
    """Both sides differentiated, one letter a function of the other; None where a rule is missing."""
    try:
        sides = [
            _with_names(differentiated(side, by, frozenset({dependent}))) for side in (statement.left, statement.right)
        ]
    except (UnsupportedError, TooLargeError):
        return None
    return replace(statement, left=sides[0], right=sides[1])
