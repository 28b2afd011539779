"""What each kind of slip is called where slips are counted. No Qt."""

from __future__ import annotations

from desktop.language import tr

__all__ = ["slip_words"]

_WORDS = {
    "arithmetic": "number worked out wrongly",
    "cancelled-term": "term cancelled that is no factor",
    "copied": "copied wrongly",
    "declared": "declared wrong by the teacher",
    "differentiation": "differentiation",
    "divide-each-term": "not every term divided",
    "dropped-term": "term left out",
    "extra-term": "term too many",
    "factor-pair": "pair of factors",
    "fraction-division": "division of fractions",
    "fraction-multiply-both": "fraction multiplied above and below",
    "fraction-product": "product of fractions",
    "fraction-sum": "sum of fractions",
    "fraction-top-not-scaled": "numerator not scaled",
    "function-of-product": "function of a product",
    "function-of-sum": "function of a sum",
    "inequality-direction": "direction of the inequality",
    "integration": "integration",
    "letter-lost": "letter lost",
    "like-terms": "collecting like terms",
    "log-law": "law of logarithms",
    "multiply-each-term": "not every term multiplied",
    "one-side-only": "done on one side only",
    "operation-order": "order of operations",
    "other": "other slip",
    "power-law": "law of powers",
    "product": "product worked out wrongly",
    "product-not-zero": "product that is not zero",
    "root-lost": "solution lost",
    "root-of-square": "root of a square",
    "root-of-sum": "root of a sum",
    "sign": "wrong sign",
    "sign-bracket": "sign before a bracket",
    "sign-moved": "sign of a moved term",
    "sign-product": "sign of a product",
    "square-of-sum": "square of a sum",
    "unlike-terms": "unlike terms collected",
    "wrong-operation": "wrong operation",
}


def slip_words(kind: str) -> str:
    """The kind of a slip in words; a kind that is not listed by its own name."""
    words = _WORDS.get(kind)
    return kind.replace("-", " ") if words is None else tr(words)
