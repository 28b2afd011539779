"""What each kind of slip is called where slips are counted. No Qt."""

from __future__ import annotations

from desktop.language import tr, tr_later

__all__ = ["slip_words"]

_WORDS = {
    "arithmetic": tr_later("number worked out wrongly"),
    "cancelled-term": tr_later("term cancelled that is no factor"),
    "copied": tr_later("copied wrongly"),
    "declared": tr_later("declared wrong by the teacher"),
    "differentiation": tr_later("differentiation"),
    "divide-each-term": tr_later("not every term divided"),
    "dropped-term": tr_later("term left out"),
    "extra-term": tr_later("term too many"),
    "factor-pair": tr_later("pair of factors"),
    "fraction-division": tr_later("division of fractions"),
    "fraction-multiply-both": tr_later("fraction multiplied above and below"),
    "fraction-product": tr_later("product of fractions"),
    "fraction-sum": tr_later("sum of fractions"),
    "fraction-top-not-scaled": tr_later("numerator not scaled"),
    "function-of-product": tr_later("function of a product"),
    "function-of-sum": tr_later("function of a sum"),
    "inequality-direction": tr_later("direction of the inequality"),
    "integration": tr_later("integration"),
    "letter-lost": tr_later("letter lost"),
    "like-terms": tr_later("collecting like terms"),
    "log-law": tr_later("law of logarithms"),
    "multiply-each-term": tr_later("not every term multiplied"),
    "one-side-only": tr_later("done on one side only"),
    "operation-order": tr_later("order of operations"),
    "other": tr_later("other slip"),
    "power-law": tr_later("law of powers"),
    "product": tr_later("product worked out wrongly"),
    "product-not-zero": tr_later("product that is not zero"),
    "root-lost": tr_later("solution lost"),
    "root-of-square": tr_later("root of a square"),
    "root-of-sum": tr_later("root of a sum"),
    "sign": tr_later("wrong sign"),
    "sign-bracket": tr_later("sign before a bracket"),
    "sign-moved": tr_later("sign of a moved term"),
    "sign-product": tr_later("sign of a product"),
    "square-of-sum": tr_later("square of a sum"),
    "unlike-terms": tr_later("unlike terms collected"),
    "wrong-operation": tr_later("wrong operation"),
}


def slip_words(kind: str) -> str:
    """The kind of a slip in words; a kind that is not listed by its own name."""
    words = _WORDS.get(kind)
    return kind.replace("-", " ") if words is None else tr(words)
