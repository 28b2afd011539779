"""Sentences that come from the checker, the reader or another process, in the user's language. No Qt.

These rooms speak English and know nothing of languages, so their sentences are known here by their form: a template
with names in braces for what changes (`desktop/forms`). A sentence of which a part has no known form stays in English
as a whole.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, lru_cache

from desktop.forms import TEMPLATES
from desktop.forms.matching import HOLE, NAMES, Form, formula, indexed
from desktop.language import has_decimal_comma, tr

__all__ = ["TEMPLATES", "in_language", "latex_in_language", "with_capital"]

LONGEST = 4000
"""Characters of a sentence that is translated; none of ours is longer."""
_MOST_STEPS = 4000
"""Forms tried for one sentence; an ordinary one needs some dozens."""
_JOINT = re.compile(r"(?<=[.!?])\s+|;\s+|:\s+")
_IN_MATHS = re.compile(r"\\text\s*\{\s*([^{}]*?)\s*\}")
_FREE = frozenset({"name", "other"})
_COUNTS = frozenset({"number", "count", "total"})
_DECIMAL = re.compile(r"\d\.\d")
_POINT = re.compile(r"\S+ = \S+(?: and \S+ = \S+)*")
_UNWRITABLE = "the right term"
"""Stands for a term that the checker cannot write."""
_DIGITS = re.compile(r"\d+")


def in_language(sentence: str) -> str:
    """The sentence in the user's language, if its form is known and there is a translation; else as it is."""
    token = tr(TEMPLATES[0])
    if not sentence or token == TEMPLATES[0] or len(sentence) > LONGEST:
        return sentence
    return _remembered(sentence, (token, has_decimal_comma()))


def latex_in_language(latex: str) -> str:
    """LaTeX with the words in it, such as those between two solutions, in the user's language."""
    return _IN_MATHS.sub(lambda found: rf"\text{{ {in_language(found[1])} }}", latex)


def with_capital(text: str) -> str:
    """A sentence with a capital at its beginning, unless a formula stands there: "sin x is 1", "ab times 2 is 2ab"."""
    first = re.match(r"[^\W\d_]{2,}(?=[\s,:;]|$)", text)
    if first is None or first[0] in NAMES:
        return text
    is_word = len(first[0]) > 3 or first[0].lower() in _first_words(tr(TEMPLATES[0]))
    return text[:1].upper() + text[1:] if is_word else text


@lru_cache(maxsize=4096)
def _remembered(sentence: str, language: tuple[str, bool]) -> str:
    bare = sentence.strip()
    told = _Telling().told(bare)
    return sentence if told is None else sentence.replace(bare, told, 1)


class _TooManyStepsError(Exception):
    """This text is built so that the search for its form would take too long."""


class _Telling:
    """One sentence on its way into the user's language: what its parts have become so far."""

    def __init__(self) -> None:
        self._known: dict[str, str | None] = {}
        self._steps = 0

    def told(self, sentence: str) -> str | None:
        """The whole sentence; None where a part of it is of no known form."""
        try:
            return self._told(sentence)
        except (_TooManyStepsError, RecursionError):
            return None

    def _told(self, sentence: str) -> str | None:
        if sentence not in self._known:
            self._known[sentence] = None  # so that no form is its own part
            whole = self._whole(sentence)
            self._known[sentence] = self._joined(sentence) if whole is None else whole
        return self._known[sentence]

    def _joined(self, sentence: str) -> str | None:
        """Parts that a colon or semicolon joins, and sentences one after the other, each by itself."""
        for joint in _JOINT.finditer(sentence):
            first = self._whole(sentence[: joint.start()])
            rest = None if first is None else self._told(sentence[joint.end() :])
            if first is not None and rest is not None:
                return first + joint[0] + (with_capital(rest) if joint[0].isspace() else rest)
        return None

    def _whole(self, sentence: str) -> str | None:
        has_stop = sentence.endswith(".")
        for bare in (sentence.removesuffix("."), sentence) if has_stop else (sentence,):
            for form in _candidates()(bare):
                self._steps += 1
                if self._steps > _MOST_STEPS:
                    raise _TooManyStepsError
                filled = form.fillings(bare, self._filling)
                if filled is None:
                    continue
                told = _filled(tr(form.template), filled)
                if bare[:1].isupper() and form.template[:1].islower():
                    told = with_capital(told)
                told = told.removesuffix(".")
                return f"{told}." if has_stop and told[-1:] not in ".!?" else told
        return None

    def _with_words(self, latex: str) -> str:
        """LaTeX with those of the words in it that are known translated."""
        return _IN_MATHS.sub(lambda found: rf"\text{{ {self._told(found[1]) or found[1]} }}", latex)

    def _filling(self, hole: str, text: str) -> str | None:
        if hole in _FREE:
            return text if text == text.strip() and "\n" not in text else None
        if hole in _COUNTS:
            return text if _DIGITS.fullmatch(text) else None
        if hole == "point" and _POINT.fullmatch(text) is None:
            return None
        if len(hole) == 1 or hole == "point":
            told = tr(text) if text == _UNWRITABLE else formula(text, _lexicon(), tr)
            return told if told is None else self._with_words(_listed(told))
        told = None if text != text.strip() else self._told(text)
        return told.removesuffix(".") if told is not None and hole == "what" else told


def _filled(template: str, values: dict[str, str]) -> str:
    return HOLE.sub(lambda hole: values.get(hole[1], hole[0]), template)


def _listed(formulas: str) -> str:
    """Formulas one after the other, parted by semicolons where a comma would be taken for a decimal one."""
    return formulas.replace(", ", "; ") if has_decimal_comma() and _DECIMAL.search(formulas) else formulas


@cache
def _forms() -> tuple[Form, ...]:
    return tuple(map(Form.of, TEMPLATES))


@cache
def _candidates() -> Callable[[str], list[Form]]:
    return indexed(_forms())


@lru_cache(maxsize=4)
def _first_words(token: str) -> frozenset[str]:
    return frozenset(text.split()[0].lower() for form in _forms() for text in (form.template, tr(form.template)))


@cache
def _lexicon() -> frozenset[str]:
    return frozenset(word for form in _forms() for word in form.words()) - {"and", "or", "times"}
