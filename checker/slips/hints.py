"""Three grades of hint for one slip: where it is, what kind it is, what the term should be."""

from __future__ import annotations

from checker.report import Slip
from checker.slips.proposals import MISSING

__all__ = ["KINDS", "hint"]

KINDS = {
    "arithmetic": "Work this number out again.",
    "cancelled-term": "Look at what was cancelled: is it a factor of the whole top and of the whole bottom?",
    "copied": "Compare this with the line before: it should have been carried over as it was.",
    "differentiation": "Look again at the rule for the derivative of this term.",
    "divide-each-term": "Something was divided: was every term divided?",
    "dropped-term": "Count the terms: one is missing.",
    "extra-term": "Count the terms: there is one too many.",
    "factor-pair": "Multiply the brackets out again and compare with the line before.",
    "fraction-division": "Look again at how one divides by a fraction.",
    "fraction-product": "Look again at what the factor does to the top and to the bottom.",
    "fraction-sum": "Look again at how fractions are added or split: what do they have in common?",
    "function-of-product": "Can a number be taken out of this function?",
    "function-of-sum": "Does this function spread over a sum?",
    "integration": "Look again at the rule for the integral of this term.",
    "inequality-direction": "Look at the direction of the sign: was a negative number multiplied or divided by?",
    "letter-lost": "Look for a letter that was lost.",
    "like-terms": "Look at how like terms were collected, with their signs.",
    "log-law": "Look again at the law of logarithms that was used.",
    "multiply-each-term": "Something was multiplied: was every term multiplied?",
    "one-side-only": "Was the same done to both sides?",
    "operation-order": "Which operation comes first here?",
    "other": "Work this step out again.",
    "power-law": "Look at the power: which law of indices is used here?",
    "product": "Multiply the two factors again.",
    "product-not-zero": "When does a product split into its factors?",
    "root-lost": "Does another value make the line before true as well?",
    "root-of-square": "What is the root of a square for a negative value?",
    "root-of-sum": "Does a root spread over a sum?",
    "sign": "Look at the sign.",
    "sign-bracket": "Look at the sign in front of the bracket.",
    "sign-moved": "A term changed sides: what happens to its sign?",
    "sign-product": "Look at the signs of the two factors.",
    "square-of-sum": "A power of a sum: which terms does it have?",
    "unlike-terms": "Are these like terms?",
    "wrong-operation": "Look at the operation between the two.",
}


def hint(slip: Slip, grade: int) -> str:
    """A hint of one grade, as a sentence.

    Args:
        slip: the slip to be hinted at.
        grade: 1 says where, 2 what kind, 3 what it should be and why.
    Raises:
        ValueError: the grade is not 1, 2 or 3.
    """
    match grade:
        case 1:
            if slip.term == MISSING:
                return "Go through this line term by term, beside the line before."
            return f"Look at {slip.term}."
        case 2:
            return KINDS.get(slip.kind, KINDS["other"])
        case 3:
            if slip.term == MISSING:
                return f"{slip.should_be} is missing: {slip.because}."
            return f"{slip.term} should be {slip.should_be}: {slip.because}."
        case _:
            raise ValueError(f"There are hints of grade 1, 2 and 3, not {grade}.")
