r"""LaTeX of one written line to a tree that keeps structure, order and character spans, and back.

    parse_line(text) -> Line            statement, label, link, conditions, notes, accuracy, doubts
    parse(text) -> Statement            the statement alone
    parse_expression(text) -> Node      for text that is one expression
    to_latex(node_or_statement) -> str  tight LaTeX that parses to the same structure
    term_latex(term) -> str             a term with its sign: +8t
    tight(text) -> str                  LaTeX as written, without the blanks that say nothing
    function_readings(statements)       which letters before brackets are factors in a working, and which functions
    unfolded(statement)                 each \pm written out as Alternatives
    resolved(node, "upper" | "lower")   a node with \pm read one way
    walk(node), children(node), nodes_of(statement), letters(node_or_statement)

All raise ParseError(text, position, expected) for what they cannot read. Every node, term and statement has `span`,
half-open in the line as given, so `text[node.span[0]:node.span[1]]` is how it was written.

Statements: Expression(body, continues, operator), Relation(left, operator, right, operator_span),
Chain(members, operators, operator_spans, continues), Alternatives(branches), System(parts),
Definition(name, body), Steps(parts), Note(words).
Operators: = < > \le \ge \ne \approx \equiv.

Nodes: Number(value, text), Symbol(name), Sum(terms of Term(sign, body)), Product(factors, joins),
Fraction(numerator, denominator), Division(left, right, operator), Power(base, exponent), Root(radicand, index),
Negation(body), PlusMinus(body, operator), Absolute(body), Function(name, arguments, power, base),
MixedNumber(whole, fraction), Bracket(body, style), Postfix(body, mark).

Derivatives, integrals, sums and limits are Functions whose second argument is the letter: deriv(body, letter, order),
int(body, letter), int(body, letter, low, high), between(body, letter, low, high), sum and prod the same way,
lim(body, letter, place), limabove, limbelow. `letters` leaves out the ones that only run between bounds.

Nothing is simplified: (5-2t)(t+4) is a Product of two Brackets of Sums, -3x^2 alone is Negation(Product(3, Power)),
and as a term of a Sum it is Term("-", Product). The Bracket stays in the tree; look through it with `.body`.
Names: Greek letters without the backslash ("theta"), subscripts after "_" ("x_1").
"""

from checker.errors import ParseError
from checker.syntax.functions import function_readings
from checker.syntax.latex import term_latex, tight, to_latex
from checker.syntax.signs import has_plus_minus, resolved, unfolded
from checker.syntax.statements import parse, parse_expression, parse_line
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
    Line,
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
    Sign,
    Span,
    Statement,
    Steps,
    Sum,
    Symbol,
    System,
    Term,
    children,
    letters,
    nodes_of,
    walk,
)

__all__ = [
    "Absolute", "Alternatives", "Bracket", "Chain", "Definition", "Division", "Expression", "Fraction", "Function",
    "Line", "MixedNumber", "Negation", "Node", "Note", "Number", "ParseError", "PlusMinus", "Postfix", "Power",
    "Product", "Relation", "Root", "Sign", "Span", "Statement", "Steps", "Sum", "Symbol", "System", "Term", "children",
    "function_readings", "has_plus_minus", "letters", "nodes_of", "parse", "parse_expression", "parse_line",
    "resolved", "term_latex", "tight", "to_latex", "unfolded", "walk",
]
