"""A tree written back as tight LaTeX."""

from __future__ import annotations

import re
from collections.abc import Callable

from checker.syntax.tokens import GREEK
from checker.syntax.tree import (
    Absolute,
    Alternatives,
    Bracket,
    Chain,
    Definition,
    Division,
    Expression,
    Fraction,
    Function,
    MixedNumber,
    Negation,
    Node,
    Note,
    Number,
    PlusMinus,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Steps,
    Sum,
    Symbol,
    System,
    Term,
)

__all__ = ["term_latex", "tight", "to_latex"]

_PIECE = re.compile(r"\\text\s*\{[^{}]*\}|\\[A-Za-z]+|\\.|[A-Za-z]{2,}|\s+|.", re.DOTALL)
_SIGN = {"+": "+", "-": "-", "±": "\\pm ", "∓": "\\mp "}


def tight(text: str) -> str:
    """LaTeX as written, without the blanks that say nothing: "- 1 2 t" is -12t, "\\pm 2" stays."""
    out = before = ""
    blank = False
    for match in _PIECE.finditer(text):
        piece = match.group()
        if piece.isspace():
            blank = True
            continue
        is_command = len(before) > 1 and before[0] == "\\" and before[-1].isalpha()
        is_word = (len(before) > 1 and before.isalpha()) or (len(piece) > 1 and piece.isalpha())
        if blank and out and ((is_command and piece[0].isalnum()) or is_word):
            out += " "
        out += piece
        before, blank = piece, False
    return out


def to_latex(part: Node | Statement) -> str:
    """The part as tight LaTeX that parses to the same structure."""
    match part:
        case Expression(body=body, continues=continues, operator=operator):
            return f"{_spaced(operator) if continues else ''}{_node(body)}"
        case Relation(left=left, operator="\\in"):
            return f"{_node(left)}\\in \\mathbb{{Z}}"
        case Relation(left=left, operator=operator, right=right):
            return f"{_node(left)}{_spaced(operator)}{_node(right)}"
        case Chain(members=members, operators=operators, continues=continues):
            signs = [_spaced(operator) for operator in operators]
            if not continues:
                signs.insert(0, "")
            return "".join(sign + _node(member) for sign, member in zip(signs, members, strict=True))
        case Alternatives(branches=()):
            return "\\text{no solution}"
        case System(parts=()):
            return "\\text{all real values}"
        case Alternatives(branches=branches):
            return " \\text{ or } ".join(to_latex(branch) for branch in branches)
        case System(parts=parts):
            return ", ".join(to_latex(one) for one in parts)
        case Steps(parts=parts):
            return " \\Rightarrow ".join(to_latex(one) for one in parts)
        case Definition(name=name, body=body):
            return f"\\text{{let }} {_node(name)}={_node(body)}"
        case Note(words=words):
            return f"\\text{{{words}}}"
        case _:
            return _node(part)


def term_latex(term: Term) -> str:
    """A term with its sign, plus signs written too: +8t."""
    return _SIGN[term.sign] + _node(term.body)


def _spaced(operator: str) -> str:
    return f"{operator} " if operator.startswith("\\") else operator


def _joined(left: str, right: str) -> str:
    """Side by side, with a blank where a command's name would run into a letter."""
    if right[:1].isalpha() and left[-1:].isalpha() and "\\" in left:
        tail = left[left.rfind("\\") + 1:]
        if tail.isalpha():
            return f"{left} {right}"
    return left + right


def _node(node: Node) -> str:
    match node:
        case Number(text=text):
            return _digits(text)
        case Symbol(name=name):
            return _name(name)
        case Sum(terms=terms):
            first = terms[0]
            start = _node(first.body) if first.sign == "+" else term_latex(first)
            return start + "".join(term_latex(term) for term in terms[1:])
        case Product(factors=factors, joins=joins):
            out = _node(factors[0])
            for join, factor in zip(joins, factors[1:], strict=True):
                out = _joined(out + (f"{join} " if join else ""), _node(factor))
            return out
        case Fraction(numerator=top, denominator=bottom):
            return f"\\frac{{{_node(top)}}}{{{_node(bottom)}}}"
        case Division(left=left, right=right, operator=operator):
            return f"{_node(left)}{_spaced(operator)}{_node(right)}"
        case Power(base=base, exponent=exponent):
            power = _node(exponent)
            return f"{_node(base)}^{power}" if len(power) == 1 else f"{_node(base)}^{{{power}}}"
        case Root(radicand=radicand, index=index):
            return f"\\sqrt{'' if index is None else f'[{_node(index)}]'}{{{_node(radicand)}}}"
        case Negation(body=body):
            return f"-{_node(body)}"
        case PlusMinus(body=body, operator=operator):
            return _SIGN[operator] + _node(body)
        case Absolute(body=body):
            return f"\\left|{_node(body)}\\right|"
        case Function():
            return _function(node)
        case MixedNumber(whole=whole, fraction=fraction):
            return _node(whole) + _node(fraction)
        case Bracket(body=body, style=style):
            if style == "":
                return f"{{{_node(body)}}}"
            opening, closing = {"(": ("(", ")"), "[": ("[", "]"), "{": ("\\{", "\\}")}[style]
            return opening + _node(body) + closing
        case Postfix(body=body, mark=mark):
            return _node(body) + {"!": "!", "%": "\\%", "°": "^{\\circ}"}[mark]


def _function(node: Function) -> str:
    if node.name == "binom":
        return f"\\binom{{{_node(node.arguments[0])}}}{{{_node(node.arguments[1])}}}"
    if len(node.arguments) > 1 and node.name in _RUNNING:
        return _RUNNING[node.name](*(_node(argument) for argument in node.arguments))
    inside = ",".join(_node(argument) for argument in node.arguments)
    name = node.name if len(node.name) == 1 else f"\\{node.name}"
    base = "" if node.base is None else f"_{{{_node(node.base)}}}"
    power = "" if node.power is None else f"^{{{_node(node.power)}}}"
    return f"{name}{base}{power}({inside})"


def _derivative(body: str, letter: str, order: str) -> str:
    raised = "" if order == "1" else f"^{order}"
    if body.strip("\\").isalpha() and (len(body) == 1 or body[0] == "\\"):
        return f"\\frac{{d{raised}{body}}}{{d{letter}{raised}}}"
    return f"\\frac{{d{raised}}}{{d{letter}{raised}}}{_enclosed(body)}"


def _integral(body: str, letter: str, low: str | None = None, high: str | None = None) -> str:
    sign = "\\int" if low is None else f"\\int_{{{low}}}^{{{high}}}"
    return f"{_joined(sign, body)}\\,d{letter}"


def _series(command: str) -> Callable[..., str]:
    return lambda body, letter, low, high: _joined(f"{command}_{{{letter}={low}}}^{{{high}}}", _single(body))


def _limit(side: str) -> Callable[..., str]:
    return lambda body, letter, place: _joined(f"\\lim_{{{letter}\\to {place}{side}}}", _single(body))


def _between(body: str, letter: str, low: str, high: str) -> str:
    return f"[{body}]_{{{letter}={low}}}^{{{letter}={high}}}"


def _single(text: str) -> str:
    """In brackets where it has a plus or minus outside every bracket."""
    depth = 0
    for mark in text:
        depth += (mark in "({[") - (mark in ")}]")
        if depth == 0 and mark in "+-":
            return f"({text})"
    return text


def _enclosed(text: str) -> str:
    return text if text.startswith("(") and text.endswith(")") else f"({text})"


_RUNNING: dict[str, Callable[..., str]] = {
    "deriv": _derivative, "int": _integral, "sum": _series("\\sum"), "prod": _series("\\prod"), "lim": _limit(""),
    "limabove": _limit("^+"), "limbelow": _limit("^-"), "between": _between,
}


def _digits(text: str) -> str:
    if "(" not in text:
        return text
    plain, repeated = text.rstrip(")").split("(")
    return f"{plain}\\overline{{{repeated}}}"


def _name(name: str) -> str:
    stem, _, index = name.partition("_")
    primes = ""
    if index.endswith("'") or stem.endswith("'"):
        whole = name.rstrip("'")
        primes = name[len(whole):]
        stem, _, index = whole.partition("_")
    head = f"\\{stem}" if stem in GREEK else stem
    if len(stem) > 1 and stem not in GREEK and not (stem[0].isupper() and stem.isalpha() and len(stem) > 2):
        head = f"\\operatorname{{{stem}}}"
    return head + (f"_{{{index}}}" if index else "") + primes
