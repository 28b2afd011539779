"""The final answer, its form, and claims for all values (checker/final.py, forms.py, surds.py, identities.py)."""

from __future__ import annotations

from desktop.language import tr_later

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    # Right or wrong
    tr_later("The answer is right."),
    tr_later("The answer is wrong."),
    tr_later("The answer follows from the slip on line {number} (ft)."),
    tr_later("The answer is right, but it comes from wrong working: see line {number}."),
    tr_later("The answer is right; the slip on line {number} was put right."),
    tr_later("It has not the form asked."),
    tr_later("It is still to be solved."),
    tr_later("A value is not rounded rightly."),
    tr_later("It is to be given exactly."),
    tr_later("It is to be given to {what}."),
    tr_later("{a} does not satisfy every equation."),
    tr_later("The solution {a} is missing."),
    # Its form
    tr_later("A bracket is still to be multiplied out."),
    tr_later("A bracket is still to be collected."),
    tr_later("Like terms are still to be collected."),
    tr_later("It is not multiplied out."),
    tr_later("A term is still to be worked out."),
    tr_later("A common factor is left in a bracket."),
    tr_later("The factors are to be with whole numbers."),
    tr_later("It can be factorised further."),
    tr_later("The numbers in front are still to be worked out."),
    tr_later("The numbers in front are still to be multiplied."),
    tr_later("A fraction is not in its lowest terms."),
    tr_later("The fractions are to be put over one denominator."),
    tr_later("There is a fraction within the fraction."),
    tr_later("The fraction can be cancelled further."),
    tr_later("The number is still to be worked out."),
    tr_later("A root still holds a square or higher power."),
    tr_later("The denominator holds a root."),
    tr_later("Two roots are still to be multiplied."),
    # Claims for all values
    tr_later("True for all values"),
    tr_later("True for all values with {a}."),
    tr_later("True for all values at which both sides are defined."),
    tr_later("True: both sides have the same value."),
    tr_later("Not true: the sides are {a}."),
    tr_later("Not true: the sides are different."),
    tr_later("Not true for all values: at {a} the sides are {b}."),
    tr_later("Not true for all values: at {a} the sides are different."),
    tr_later("Multiplied out, the left is {a} and the right is {b}."),
    tr_later("Over the denominator {a}, the numerator of the left is {b} and the right is {c}."),
    tr_later("Only the left has {a} and only the right has {b}."),
    tr_later("Only the left has {a}."),
    tr_later("Only the right has {a}."),
    tr_later("It holds for {a}, as sampled."),
    tr_later("It holds for {a}, as sampled at {number} points."),
    tr_later("This line is no equation, so it claims nothing for all values."),
    # Words within mathematics
    tr_later("and"),
    tr_later("or"),
    tr_later("times"),
    tr_later("no solution"),
    tr_later("all real values"),
    tr_later("every value of {a}"),
    tr_later("every"),
    tr_later("({name} d.p.)"),
    tr_later("({name} s.f.)"),
    tr_later("let"),
)
