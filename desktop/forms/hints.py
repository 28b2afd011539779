"""Hints for a student, from where the slip is to what it should be (checker/slips/hints.py)."""

from __future__ import annotations

from desktop.language import tr_later

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    # Where
    tr_later("Go through this line term by term, beside the line before."),
    tr_later("Look at {a}."),
    # Of what kind
    tr_later("Work this number out again."),
    tr_later("Look at what was cancelled: is it a factor of the whole top and of the whole bottom?"),
    tr_later("Compare this with the line before: it should have been carried over as it was."),
    tr_later("Look again at the rule for the derivative of this term."),
    tr_later("Something was divided: was every term divided?"),
    tr_later("Count the terms: one is missing."),
    tr_later("Count the terms: there is one too many."),
    tr_later("Multiply the brackets out again and compare with the line before."),
    tr_later("Look again at how one divides by a fraction."),
    tr_later("Look again at what the factor does to the top and to the bottom."),
    tr_later("Look again at how fractions are added or split: what do they have in common?"),
    tr_later("Can a number be taken out of this function?"),
    tr_later("Does this function spread over a sum?"),
    tr_later("Look again at the rule for the integral of this term."),
    tr_later("Look at the direction of the sign: was a negative number multiplied or divided by?"),
    tr_later("Look for a letter that was lost."),
    tr_later("Look at how like terms were collected, with their signs."),
    tr_later("Look again at the law of logarithms that was used."),
    tr_later("Something was multiplied: was every term multiplied?"),
    tr_later("Was the same done to both sides?"),
    tr_later("Which operation comes first here?"),
    tr_later("Work this step out again."),
    tr_later("Look at the power: which law of indices is used here?"),
    tr_later("Multiply the two factors again."),
    tr_later("When does a product split into its factors?"),
    tr_later("Does another value make the line before true as well?"),
    tr_later("What is the root of a square for a negative value?"),
    tr_later("Does a root spread over a sum?"),
    tr_later("Look at the sign."),
    tr_later("Look at the sign in front of the bracket."),
    tr_later("A term changed sides: what happens to its sign?"),
    tr_later("Look at the signs of the two factors."),
    tr_later("A power of a sum: which terms does it have?"),
    tr_later("Are these like terms?"),
    tr_later("Look at the operation between the two."),
    # What it should be
    tr_later("{a} is missing: {sentence}"),
)
