"""The three answers to "are they equal?": each carries its evidence, and none is a truth value."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import NoReturn

__all__ = ["No", "Undecided", "Verdict", "Yes"]


class _NotBool:
    __slots__ = ()

    def __bool__(self) -> NoReturn:
        raise TypeError("A verdict has three values: use match, not its truth.")


@dataclass(frozen=True, slots=True)
class Yes(_NotBool):
    """Equal wherever both are defined.

    Args:
        method: how that is known.
        conditions: where only one of the two is defined, as LaTeX such as "x \\ne 2".
        proved: False when it rests on sampling.
    """

    method: str
    conditions: tuple[str, ...] = ()
    proved: bool = True


@dataclass(frozen=True, slots=True)
class No(_NotBool):
    """Different, as the values at one point show.

    Args:
        counterexample: values of the letters; empty for numbers.
        left, right: the two values there, exact or in a few digits.
    """

    counterexample: Mapping[str, Fraction]
    left: str = ""
    right: str = ""


@dataclass(frozen=True, slots=True)
class Undecided(_NotBool):
    """Not decided, with the reason as a sentence."""

    why: str


Verdict = Yes | No | Undecided
