"""A sentence known by its form: the literal parts of a template, and what may stand in the holes between them. No Qt.

A hole with one letter as its name holds a formula, or several joined by words, and `point` the values of letters;
`name` and `other` hold whatever a file or a mark is called; `number`, `count` and `total` hold digits; every other hole
holds a sentence or a noun that is known by a form of its own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

__all__ = ["HOLE", "NAMES", "Form", "formula", "indexed"]

HOLE = re.compile(r"\{([a-z]+)\}")
"""A hole of a template."""

_WORD = re.compile(r"(?<![\w\\])[A-Za-z][A-Za-z'’-]+")
_LETTERS = re.compile(r"[(\[\"]*([A-Za-z]+(?:['’][A-Za-z]+)*)[)\]\",;:.!?]*")
_COMMAND = re.compile(r"\\(?:text|mathrm|mbox|operatorname)\s*\{[^{}]*\}|\\[A-Za-z]+")
_LONG_RUN = re.compile(r"[A-Za-z]{4,}")
_SIGN = re.compile(r"[\d^_={}\\+*/]")
_OPERATOR = re.compile(r"[^A-Za-z0-9]+")
_WRITTEN = """
    sin cos tan sec csc cosec cot arcsin arccos arctan sinh cosh tanh sech cosech coth arsinh arcosh artanh log ln lg
    exp max min lim det mod gcd lcm hcf alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi rho
    sigma tau upsilon phi chi psi omega Delta Gamma Theta Lambda Sigma Phi Psi Omega pi Pi infty
"""
NAMES = frozenset(_WRITTEN.split())
"""Names of functions and letters that may stand without a backslash."""
_JOINERS = frozenset({"and", "or", "times"})
_AS_PRODUCT = frozenset({"as", "at", "in", "is", "an", "be", "by", "to", "on"})
"""English words that a product of two letters may look like: v = u + at."""


@dataclass(frozen=True, slots=True)
class Form:
    """A template in its parts.

    Args:
        template: the English sentence with names in braces.
        literals: what stands before, between and after the holes: one more than holes.
        holes: their names, in order.
    """

    template: str
    literals: tuple[str, ...]
    holes: tuple[str, ...]

    @classmethod
    def of(cls, template: str) -> Form:
        """Take a template apart; its full stop is left aside."""
        parts = HOLE.split(template.removesuffix("."))
        return cls(template, tuple(parts[::2]), tuple(parts[1::2]))

    @property
    def weight(self) -> int:
        """How much the form says by itself: of two that fit, the weightier counts."""
        return sum(map(len, self.literals))

    def words(self) -> set[str]:
        """The English words of it."""
        return {word.lower() for literal in self.literals for word in _WORD.findall(literal)}

    def fillings(self, sentence: str, fill: Callable[[str, str], str | None]) -> dict[str, str] | None:
        """What stands in the holes of a sentence, each as `fill` of the hole's name and its text gives it.

        Args:
            sentence: without its full stop.
            fill: None where this cannot stand in the hole.
        Returns:
            The first way in which the whole sentence fits; None when there is none.
        """
        first, *others = self.literals
        if not _begins(sentence, first):
            return None
        if not self.holes:
            return {} if len(sentence) == len(first) else None
        if not sentence.endswith(self.literals[-1]):
            return None
        at = len(first)
        for literal in others:
            found = sentence.find(literal, at + 1)
            if found < 0:
                return None
            at = found + len(literal)
        return self._filled(sentence, len(first), 0, fill)

    def _filled(
        self, sentence: str, at: int, hole: int, fill: Callable[[str, str], str | None]
    ) -> dict[str, str] | None:
        literal, is_last = self.literals[hole + 1], hole + 1 == len(self.holes)
        for end in self._ends(sentence, at, literal, is_last):
            value = fill(self.holes[hole], sentence[at:end])
            if value is None:
                continue
            if is_last:
                return {self.holes[hole]: value}
            rest = self._filled(sentence, end + len(literal), hole + 1, fill)
            if rest is not None:
                return {self.holes[hole]: value, **rest}
        return None

    @staticmethod
    def _ends(sentence: str, at: int, literal: str, is_last: bool) -> Iterator[int]:
        if is_last:
            end = len(sentence) - len(literal)
            if end > at:
                yield end
            return
        end = sentence.find(literal, at + 1)
        while end >= 0:
            yield end
            end = sentence.find(literal, end + 1)


def _begins(sentence: str, literal: str) -> bool:
    if sentence.startswith(literal):
        return True
    return literal[:1].islower() and sentence[:1] == literal[:1].upper() and sentence[1:].startswith(literal[1:])


def indexed(forms: Sequence[Form]) -> Callable[[str], list[Form]]:
    """A way to look up the forms that may fit a sentence, the weightiest first: all share their rarest word with it."""
    counts: dict[str, int] = {}
    for form in forms:
        for word in form.words():
            counts[word] = counts.get(word, 0) + 1
    by_word: dict[str, list[Form]] = {}
    for form in forms:
        rarest = min(form.words(), key=lambda word: (counts[word], -len(word), word), default="")
        by_word.setdefault(rarest, []).append(form)

    def candidates(sentence: str) -> list[Form]:
        words = {word.lower() for word in _WORD.findall(sentence)}
        found = [form for word in words for form in by_word.get(word, ())] + by_word.get("", [])
        return sorted(found, key=lambda form: (-form.weight, form.template))

    return candidates


def formula(text: str, lexicon: frozenset[str], word: Callable[[str], str]) -> str | None:
    """A formula, or several joined by "and", "or" or "times", with these words as `word` gives them.

    Args:
        text: what stands in a hole.
        lexicon: words of our sentences, which are no products of letters.
        word: a joining word in the user's language.
    Returns:
        None where it holds other words, so that it would be half translated.
    """
    if text != text.strip() or not text:
        return None
    bare = _COMMAND.sub(lambda found: "\\" * len(found[0]), text)
    if not re.search(r"[A-Za-z]{2}", bare):
        return text
    pieces = re.split(r"(\s+)", text)
    looks = [bare[start : start + len(piece)] for start, piece in _placed(pieces)]
    words = looks[::2]
    told: dict[int, str] = {}
    around = ["=", *words, "="]
    for at, look in enumerate(words):
        if look in _JOINERS and 0 < at < len(words) - 1:
            told[2 * at] = word(look)
        elif not _is_maths(look, around[at], around[at + 2], lexicon):
            return None
    for at in [2 * at for at, look in enumerate(words) if look == "and"][:-1]:
        told[at - 1], told[at] = ",", ""  # x = 1, y = 2 and z = 3
    return "".join(told.get(at, piece) for at, piece in enumerate(pieces))


def _placed(pieces: Sequence[str]) -> Iterator[tuple[int, str]]:
    at = 0
    for piece in pieces:
        yield at, piece
        at += len(piece)


def _is_maths(piece: str, before: str, after: str, lexicon: frozenset[str]) -> bool:
    """Whether this piece, between its neighbours, belongs to a formula and is no English word."""
    found = _LETTERS.fullmatch(piece)
    if found is None:
        runs = [run for run in _LONG_RUN.findall(piece) if run not in NAMES]
        return not runs or (_SIGN.search(piece) is not None and not any(run.lower() in lexicon for run in runs))
    letters = found[1]
    if len(letters) < 2 or letters in NAMES:
        return True
    is_between = all(_OPERATOR.fullmatch(beside) or beside in _JOINERS for beside in (before, after))
    if letters.lower() in lexicon:
        return is_between and letters in _AS_PRODUCT
    if len(letters) > 3:
        return is_between and (letters[0].isupper() or _is_in_order(letters, lexicon))
    return all(_LETTERS.fullmatch(beside) is None or beside in _JOINERS for beside in (before, after))


def _is_in_order(letters: str, lexicon: frozenset[str]) -> bool:
    """Whether these are the letters of a product, as one writes them: abcd."""
    ordered = all(one < other for one, other in pairwise(letters))
    return ordered and len(letters) < 7 and letters not in lexicon
