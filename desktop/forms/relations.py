"""Why an equation or inequality should be another: roots, logarithms, systems, inequalities (checker/slips)."""

from __future__ import annotations

from desktop.language import tr_later

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    # Solutions and factors
    tr_later("{a} makes the line before true as well"),
    tr_later("{a} is 0 when {b} is {c}"),
    tr_later("{a} makes the line before true; {b} does not"),
    tr_later("{a} times {b} is {c}, but the first term is {d}"),
    tr_later("{a} times {b} is {c}, but the last term is {d}"),
    tr_later("{a} is {b}, but the middle term is {c}"),
    tr_later("{a} is {b}, but there is no middle term"),
    # Completing the square, the formula
    tr_later("{a} ends in {b}, so {c} is added on the right as well"),
    tr_later("half of {a} goes into the bracket: {b}"),
    tr_later("half of the number before {a} goes into the bracket: {b}"),
    tr_later("{a} is {b}, so {c} must be taken away again"),
    tr_later("{a} ends in {b}, which must be taken away again"),
    tr_later("the bottom of the formula is 2a, and a is {a}, so it is {b}"),
    tr_later("b is {a}, so minus b is {b}"),
    tr_later("minus b is {a}, and divided by {b} that is {c}"),
    # Logarithms, powers, roots undone
    tr_later("the logarithm undoes the power of e: the exponent is {a}"),
    tr_later("the logarithm undoes the power: the exponent is {a}"),
    tr_later("the power of {a} undoes the logarithm, so this is {b}"),
    tr_later("the fractions are added first and turned over as a whole, which gives {a}"),
    tr_later("what stands between the bars can also be {a}"),
    tr_later("{a} is {b}, so {c} is its square root"),
    tr_later("{a} is {b}, so {c} is its cube root"),
    tr_later("{a} is {b}, so {c} is its fourth root"),
    tr_later("this is {a}: the square root is still to be taken"),
    tr_later("this is {a}: the cube root is still to be taken"),
    tr_later("this is {a}: the fourth root is still to be taken"),
    tr_later("a square is never negative, so no real number makes {a} true"),
    tr_later("a square below a number lies between its two roots, {a}"),
    tr_later("a square above a number lies outside its two roots, {a}"),
    tr_later("the root of a square is never negative, so it is the absolute value"),
    # Inequalities
    tr_later("multiplying or dividing by a negative number turns the sign round, and nothing else does"),
    tr_later("no side was multiplied or divided, so the sign stays as it is"),
    tr_later("both sides changed their sign, which turns the sign of the inequality round"),
    tr_later("both sides were divided by {a}, a negative number, which turns the sign round"),
    tr_later("both sides were multiplied by {a}, a negative number, which turns the sign round"),
    tr_later("both sides were divided by {a}, a positive number, so the sign stays as it is"),
    tr_later("both sides were multiplied by {a}, a positive number, so the sign stays as it is"),
    # Two equations made into one
    tr_later("with {a} in place of {b}, {sentence}"),
    tr_later("the first equation plus the second: {sentence}"),
    tr_later("the first equation minus the second: {sentence}"),
    tr_later("the first equation plus {number} times the second: {sentence}"),
    tr_later("the first equation minus {number} times the second: {sentence}"),
    tr_later("{number} times the first equation plus the second: {sentence}"),
    tr_later("{number} times the first equation minus the second: {sentence}"),
    tr_later("{number} times the first equation plus {count} times the second: {sentence}"),
    tr_later("{number} times the first equation minus {count} times the second: {sentence}"),
    tr_later("the second equation minus the first: {sentence}"),
    tr_later("the second equation minus {number} times the first: {sentence}"),
    tr_later("{number} times the second equation minus the first: {sentence}"),
    tr_later("{number} times the second equation minus {count} times the first: {sentence}"),
)
