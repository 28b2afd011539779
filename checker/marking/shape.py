"""The form of a line: what two lines share when one has other numbers than the other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from checker.syntax import (
    Alternatives,
    Bracket,
    Chain,
    Definition,
    Division,
    Expression,
    Fraction,
    MixedNumber,
    Negation,
    Node,
    Number,
    PlusMinus,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Steps,
    Sum,
    Symbol,
    System,
    children,
    letters,
    nodes_of,
    to_latex,
    unfolded,
    walk,
)
from checker.syntax.shapes import bare, unsigned

__all__ = [
    "Shape", "holds_terms", "is_linear", "most_terms", "one_piece_differs", "pieces_shared", "shape", "size",
    "written_alike",
]

Shape = tuple[object, ...]

_CONSTANTS = frozenset({"pi"})
_TURNED = {">": "<", "\\ge": "\\le"}


def shape(part: Node | Statement) -> Shape:
    """The form: kinds of terms, powers of letters, number of brackets; never the numbers or the signs of terms."""
    match part:
        case Expression(body=body) | Definition(body=body):
            return shape(body)
        case Relation(left=left, operator=operator, right=right):
            sign = "order" if operator in ("<", ">", "\\le", "\\ge") else "=" if operator == "\\equiv" else operator
            return (sign, *_sorted((_side(left), _side(right))))
        case Chain(members=members, operators=operators):
            return ("chain", len(operators), *(_side(member) for member in members))
        case Alternatives() | System() | Steps():
            whole = unfolded(part) if isinstance(part, Alternatives) else part
            inner = whole.branches if isinstance(whole, Alternatives) else getattr(whole, "parts", ())
            return (type(part).__name__, *_sorted(shape(one) for one in inner))
        case _:
            return _node(part) if not isinstance(part, Statement) else ("note",)


def _side(node: Node) -> Shape:
    node = unsigned(node)
    return ("letter",) if isinstance(node, Symbol) else _node(node)


def _sorted(shapes: Iterator[Shape] | tuple[Shape, ...]) -> list[Shape]:
    return sorted(shapes, key=repr)


def _node(node: Node) -> Shape:
    node = unsigned(node)
    if not letters(node) - _CONSTANTS:
        return ("number",) if _is_worked_out(node) else _numeric(node)
    match node:
        case Symbol():
            return ("monomial", 1)
        case Sum(terms=terms):
            return ("sum", *_sorted(tuple(_term(term.body) for term in terms)))
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return ("fraction", _node(top), _node(bottom))
        case Power() | Product():
            return _product(node)
        case _:
            return (type(node).__name__, getattr(node, "name", ""), *(_node(child) for child in children(node)))


def _product(node: Power | Product) -> Shape:
    """Letters by their powers together, and each further factor that holds letters."""
    degree = 0
    others: list[Shape] = []
    for factor in _factors(node):
        if isinstance(factor, Symbol):
            degree += 1
        elif (
            isinstance(factor, Power) and isinstance(factor.base, Symbol) and isinstance(factor.exponent, Number)
            and factor.exponent.value.denominator == 1
        ):
            degree += int(factor.exponent.value)
        elif isinstance(factor, Power):
            others.append(("power", _node(factor.base), to_latex(factor.exponent)))
        elif letters(factor) - _CONSTANTS:
            others.append(_node(factor))
    if others:
        return ("product", degree, *_sorted(tuple(others)))
    return ("monomial", degree) if _is_multiplied_out(node) else ("monomial", degree, "to be multiplied out")


def _term(node: Node) -> Shape:
    """A term of a sum: it does not matter there whether the product is worked out."""
    found = _node(node)
    return found[:2] if found[0] == "monomial" else found


def _is_multiplied_out(node: Node) -> bool:
    """One number at most, each letter once."""
    numbers = 0
    names: list[str] = []
    for factor in node.factors if isinstance(node, Product) else (node,):
        inner = unsigned(factor)
        base = inner.base if isinstance(inner, Power) else inner
        if isinstance(base, Product):
            return False
        found = letters(base) - _CONSTANTS
        numbers += not found
        names += found
    return numbers <= 1 and len(names) == len(set(names))


def _factors(node: Node) -> Iterator[Node]:
    """The factors, a whole power written out."""
    node = unsigned(node)
    if isinstance(node, Product):
        for factor in node.factors:
            yield from _factors(factor)
    elif isinstance(node, Power) and isinstance(node.exponent, Number) and node.exponent.value in range(1, 13):
        for _ in range(int(node.exponent.value)):
            yield from _factors(node.base)
    else:
        yield node


def _numeric(node: Node) -> Shape:
    """Numbers still to be worked out, or with roots: the sum of two surds has another form than one surd."""
    terms = len(node.terms) if isinstance(node, Sum) else 1
    return ("numbers", type(node).__name__, terms, any(isinstance(part, Root) for part in walk(node)))


def _is_worked_out(node: Node) -> bool:
    """A whole number, decimal, fraction of two numbers or mixed number."""
    if isinstance(node, Fraction):
        return isinstance(unsigned(node.numerator), Number) and isinstance(unsigned(node.denominator), Number)
    return isinstance(node, Number | MixedNumber)


def size(part: Node | Statement) -> int:
    """How much is written: the nodes of the tree, brackets and signs left out."""
    nodes = (part,) if not isinstance(part, Statement) else tuple(nodes_of(part))
    return sum(1 for top in nodes for node in walk(top) if not isinstance(node, Bracket | Negation))


def is_linear(statement: Statement) -> bool:
    """Do letters stand only in sums and beside numbers, with no powers, roots or letters multiplied by letters?"""
    for top in nodes_of(statement):
        for node in walk(top):
            match node:
                case Number() | Symbol() | Sum() | Bracket() | Negation():
                    continue
                case Product(factors=factors) if sum(bool(letters(factor)) for factor in factors) <= 1:
                    continue
                case Fraction(denominator=bottom) | Division(right=bottom) if not letters(bottom):
                    continue
                case _ if not letters(node) - _CONSTANTS and not isinstance(node, PlusMinus):
                    continue
                case _:
                    return False
    return True


def written_alike(first: Node | Statement, second: Node | Statement) -> bool:
    """The same but for the order of terms, factors, branches and the sides of an equation."""
    return _key(first) == _key(second)


def _key(part: Node | Statement) -> Shape:
    match part:
        case Expression(body=body) | Bracket(body=body):
            return _key(body)
        case Relation(left=left, operator=operator, right=right):
            if operator in _TURNED:
                return (_TURNED[operator], _key(right), _key(left))
            sides = (_key(left), _key(right))
            return (operator, *(sides if operator in ("<", "\\le") else _sorted(sides)))
        case Chain(members=members, operators=operators):
            return (*operators, *(_key(member) for member in members))
        case Alternatives() | System():
            whole = unfolded(part)
            inner = whole.branches if isinstance(whole, Alternatives) else getattr(whole, "parts", (whole,))
            return (type(part).__name__, *_sorted(tuple(_key(one) for one in inner)))
        case Sum(terms=terms):
            return ("sum", *_sorted(tuple((term.sign, *_key(term.body)) for term in terms)))
        case Product(factors=factors):
            return ("product", *_sorted(tuple(_key(factor) for factor in factors)))
        case Number(value=value):
            return (str(value),)
        case Symbol(name=name):
            return (name,)
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return ("fraction", _key(top), _key(bottom))
        case Definition() | Steps():
            return (to_latex(part),)
        case _ if isinstance(part, Statement):
            return (to_latex(part),)
        case _:
            tags = tuple(str(getattr(part, tag, "")) for tag in ("name", "mark", "operator"))
            return (type(part).__name__, *tags, *(_key(child) for child in children(part)))


def holds_terms(statement: Statement, sought: Node) -> bool:
    """Are all terms of a sum among the terms of one written sum, or is a product one of its terms, as written?"""
    sought = bare(sought)
    if isinstance(sought, Sum):
        terms = Counter((term.sign, *_key(term.body)) for term in sought.terms)
    elif isinstance(sought, Product | Fraction) and size(sought) > 2:
        terms = Counter([("+", *_key(sought))])
    else:
        return False
    for top in nodes_of(statement):
        for node in walk(top):
            if isinstance(node, Sum) and not terms - Counter((term.sign, *_key(term.body)) for term in node.terms):
                return True
    return False


def most_terms(statement: Statement) -> int:
    """The terms of the longest sum that is written."""
    sums = [node for top in nodes_of(statement) for node in walk(top) if isinstance(node, Sum)]
    return max((len(node.terms) for node in sums), default=1)


def one_piece_differs(first: Node | Statement, second: Node | Statement) -> bool:
    """Are all terms and factors but one the same in both?"""
    pieces, others = _counted(first), _counted(second)
    return (pieces - others).total() <= 1 and (others - pieces).total() <= 1


def pieces_shared(first: Node | Statement, second: Node | Statement) -> int:
    """How many terms and factors are the same in both; a letter alone does not count."""
    return sum(count for piece, count in (_counted(first) & _counted(second)).items() if len(piece) != 2 or (
        not piece[1].isalpha()
    ))


def _counted(part: Node | Statement) -> Counter[tuple[str, ...]]:
    nodes = tuple(nodes_of(part)) if isinstance(part, Statement) else (part,)
    return Counter(tuple(map(str, piece)) for top in nodes for piece in _pieces(top, "+"))


def _pieces(node: Node, sign: str) -> Iterator[Shape]:
    """Signed terms; a product of brackets gives those of each bracket."""
    if isinstance(node, Negation):
        yield from _pieces(node.body, "-" if sign == "+" else "+")
    elif isinstance(node, Bracket):
        yield from _pieces(node.body, sign)
    elif isinstance(node, Sum):
        for term in node.terms:
            yield from _pieces(term.body, term.sign if sign == "+" else {"+": "-", "-": "+"}.get(term.sign, term.sign))
    elif isinstance(node, Product) and any(isinstance(unsigned(factor), Sum) for factor in node.factors):
        for factor in node.factors:
            yield from _pieces(factor, "+")
    else:
        yield (sign, *_key(node))
