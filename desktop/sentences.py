"""Sentences that come from the checker, the reader or another process, in the user's language. No Qt.

These rooms speak English and know nothing of languages, so their sentences are known here by their form: a template
with names in braces for what changes. A sentence of no known form stays in English.
"""

from __future__ import annotations

import re
from functools import cache

from desktop.language import tr, tr_later

__all__ = ["TEMPLATES", "in_language"]

TEMPLATES: tuple[str, ...] = (
    # Products, signs and terms: checker/slips/sentences.py
    tr_later("{a} times {b} is {c}"),
    tr_later("the square of {a} is {b}"),
    tr_later("twice {a} is {b}"),
    tr_later("{a} divided by {b} is {c}"),
    tr_later("divided by {a}, this is {b}"),
    tr_later("{a} to the power {b} is {c}"),
    tr_later("the derivative of {a} is {b}"),
    tr_later("the integral of {a} is {b}"),
    tr_later("the line before has {a}"),
    tr_later("the line before is {a}"),
    tr_later("the line before gives {a}"),
    tr_later("the minus before the bracket turns {a} into {b}"),
    tr_later("the minus in front turns {a} into {b}"),
    tr_later("both factors are negative, so the product is positive"),
    tr_later("one factor is negative, so the product is negative"),
    tr_later("no factor is negative, so the product is positive"),
    tr_later("both are negative, so the quotient is positive"),
    tr_later("one of the two is negative, so the quotient is negative"),
    tr_later("two minus signs make a plus"),
    tr_later("with the other sign the line follows"),
    tr_later("with the other sign the line agrees with the line before"),
    tr_later("with {a} in place of {b} the line follows"),
    tr_later("with {a} in place of {b} the line agrees with the line before"),
    tr_later("the letter {a} was lost"),
    tr_later("the letter is {a}, not {b}"),
    tr_later("the power is {a}"),
    tr_later("the power {a} is missing"),
    tr_later("here the two are added"),
    tr_later("here the two are multiplied"),
    tr_later("no root is taken here"),
    tr_later("{a} makes the line before true as well"),
    tr_later("the root of a square is never negative, so it is the absolute value"),
    tr_later("{a} was {b} on the left side only; the right side needs the same"),
    tr_later("{a} was {b} on the right side only; the left side needs the same"),
    # Rules: checker/slips/catalogue
    tr_later("each term in the bracket is multiplied by what stands before it"),
    tr_later("a minus before a bracket turns the sign of each term in it"),
    tr_later("the sign of a product comes from the signs of both factors"),
    tr_later("the square of a sum has a middle term, twice the product"),
    tr_later("the square of a difference has a middle term and ends in a plus"),
    tr_later("the square of a negative term is positive"),
    tr_later("a power does not spread over a sum"),
    tr_later("only terms with the same letters and powers are collected"),
    tr_later("adding like terms keeps the power"),
    tr_later("a sign belongs to the term that follows it"),
    tr_later("a term divided by itself leaves 1"),
    tr_later("the common factor is taken out of every term"),
    # Steps and solutions: checker/steps.py, relations.py, walk.py
    tr_later("At {a} the line before is {b} and this line is {c}."),
    tr_later("At {a} the two lines have different values."),
    tr_later("The line before is {a}, this line is {b}."),
    tr_later("The two numbers are different."),
    tr_later("{a} satisfies the line before but not this line."),
    tr_later("{a} satisfies this line but not the line before."),
    tr_later("{a} satisfies this line but not the line before: check it and reject it."),
    tr_later("{a} satisfies the line before but not this line, and {b} satisfies this line but not the line before."),
    tr_later("The solution {a} is lost."),
    tr_later("Not all solutions are given."),
    tr_later("No value satisfies this line."),
    tr_later("The value is rounded."),
    tr_later("The time for this step ran out."),
    tr_later("The time for this line ran out."),
    tr_later("The numbers or powers are too large to work out."),
    tr_later("It is not clear how this line comes from the expression before it."),
    tr_later("It is not clear where the equation comes from."),
    tr_later("There is no line before it to judge it from."),
    tr_later("A letter is new on this line; it is not known what it stands for."),
    tr_later("The equals signs run on; write it as two lines."),
    tr_later("It is true for all values."),
    tr_later("Taken as given for the lines after it."),
    tr_later("At character {a}: {b} expected. Edit the line there."),
    # The answer: checker/final.py
    tr_later("The answer is right."),
    tr_later("The answer is wrong."),
    tr_later("The answer follows from the slip on line {a} (ft)."),
    tr_later("The answer is right, but it comes from wrong working: see line {a}."),
    tr_later("The answer is right; the slip on line {a} was put right."),
    tr_later("It has not the form asked."),
    tr_later("It is still to be solved."),
    tr_later("{a} does not satisfy every equation."),
    tr_later("The solution {a} is missing."),
    # Claims: checker/identities.py, desktop/claims.py
    tr_later("True for all values"),
    tr_later("Not true for all values: at {a} the sides are {b}."),
    tr_later("This line is no equation, so it claims nothing for all values."),
    # Doubtful readings: desktop/pipeline.py
    tr_later("Check the reading first: with another reading of it the line follows."),
    tr_later("Check the reading first: with another reading of line {a} the line follows."),
    tr_later("Check the reading first: line {a} was hard to read."),
    tr_later("This line could not be read. Type what it says."),
    # Files: recognition/page/opening.py
    tr_later("There is no file {a}. Check the name and the folder, then open it again."),
    tr_later("{a} is an empty file. Copy it again from the camera or phone."),
    tr_later("{a} is a HEIC or AVIF photo, which is not supported. Export it as JPEG and open that."),
    tr_later("{a} is not a picture that can be opened. Choose a {b} file."),
    tr_later("{a} holds text, not a picture. Choose a {b} file."),
    tr_later("{a} is locked with a password. Save a copy without the password and open that."),
    tr_later("{a} may not be read. Ask for the right to read it, or choose another file."),
)  # fmt: skip

_NAME = re.compile(r"\\{([a-z])\\}")
_FILLING = r"(?:(?![:;.]\s).)+?"
"""What may stand in place of a name: never the end of one part and the beginning of the next."""


def in_language(sentence: str) -> str:
    """The sentence in the user's language, if its form is known and there is a translation; else as it is.

    Parts that a colon or semicolon joins, and sentences one after the other, are looked at each by itself when the
    whole is of no known form.
    """
    if not sentence or tr(TEMPLATES[0]) == TEMPLATES[0]:
        return sentence
    whole = _translated(sentence)
    if whole is not None:
        return whole
    parts = re.split(r"((?<=[.!?])\s+|;\s+|:\s+)", sentence)
    return "".join(part if at % 2 else _translated(part) or part for at, part in enumerate(parts))


def _translated(sentence: str) -> str | None:
    bare = sentence.strip()
    for template, form in _forms():
        found = form.fullmatch(bare)
        if found is None:
            continue
        instead = tr(template, **found.groupdict()) if found.groupdict() else tr(template)
        if bare[:1].isupper() and template[:1].islower():
            instead = instead[:1].upper() + instead[1:]
        return instead if instead.endswith(".") or not bare.endswith(".") else f"{instead}."
    return None


@cache
def _forms() -> tuple[tuple[str, re.Pattern[str]], ...]:
    forms = []
    for template in TEMPLATES:
        pattern = _NAME.sub(lambda name: f"(?P<{name[1]}>{_FILLING})", re.escape(template.removesuffix(".")))
        first = pattern[0]
        if first.isalpha() and first.islower():
            pattern = f"[{first}{first.upper()}]{pattern[1:]}"
        forms.append((template, re.compile(rf"{pattern}\.?", re.DOTALL)))
    return tuple(forms)
