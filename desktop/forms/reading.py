"""Where a line cannot be read as mathematics, and what would fit there (checker/errors.py, syntax)."""

from __future__ import annotations

from desktop.language import tr_later

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    # The sentence
    tr_later("At character {number}: {what} expected. Edit the line there."),
    # Brackets and braces
    tr_later("a closing bracket"),
    tr_later("a closing bracket {name}"),
    tr_later("a closing brace"),
    tr_later("a closing brace }"),
    tr_later("a closing bar |"),
    tr_later("a bracket after {name}"),
    tr_later("braces around the first of two powers"),
    tr_later("no more than {number} brackets, fractions and powers inside one another"),
    tr_later("no more than {number} divisions in one term"),
    # Numbers, letters and signs
    tr_later("a number, a letter or a bracket"),
    tr_later("a number, a letter or a sign of mathematics"),
    tr_later("a number of at most {number} digits"),
    tr_later("a line of at most {number} characters"),
    tr_later("a number before the recurring digits"),
    tr_later("the digits that recur"),
    tr_later("the upper number"),
    tr_later("the lower number"),
    tr_later("the number chosen"),
    tr_later("the number chosen from"),
    tr_later("a letter"),
    tr_later("a letter after let"),
    tr_later("a subscript"),
    tr_later("a power"),
    tr_later("a power in digits"),
    tr_later("an operator"),
    tr_later("an operator or the end of the line"),
    tr_later("an equals sign"),
    tr_later("an arrow"),
    tr_later("a command's name after the backslash"),
    tr_later("the end of the line"),
    tr_later("an expression alone"),
    tr_later("an expression or an equation"),
    # Parts of fractions, roots, logarithms and sets
    tr_later("the top of the fraction"),
    tr_later("the bottom of the fraction"),
    tr_later("what stands under the root"),
    tr_later("the base of the logarithm"),
    tr_later("what {name} is taken of"),
    tr_later("a set"),
    tr_later("an interval, a list in braces or another set"),
    tr_later("the real numbers or the integers"),
    tr_later("a list in braces"),
    # Sums, limits, derivatives and integrals
    tr_later("the letter and its first value under {name}"),
    tr_later("the letter and its first value in braces under {name}"),
    tr_later("the last value above {name}"),
    tr_later("the last value"),
    tr_later("the letter and where it goes under {name}"),
    tr_later("the letter and where it goes in braces under {name}"),
    tr_later("the lower limit"),
    tr_later("the upper limit"),
    tr_later("both limits of the integral"),
    tr_later("the end of what is integrated"),
    tr_later("what is integrated and then a differential such as dx"),
    tr_later("the end of what is differentiated"),
    tr_later("a bound"),
    tr_later("both bounds after the square bracket"),
)
