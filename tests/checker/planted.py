"""One step with one changed term, drawn apart from the practice generator: shuffled, in one or two letters."""

from __future__ import annotations

import random
from dataclasses import dataclass

__all__ = ["PlantedStep", "planted_step"]

Monomial = tuple[int, tuple[int, ...]]


@dataclass(frozen=True, slots=True)
class PlantedStep:
    """The line before, the written line, and the term that was changed."""

    before: str
    written: str
    term: str
    should_be: str
    change: str


def _write(coefficient: int, powers: tuple[int, ...], letters: str, *, first: bool) -> str:
    body = "".join(
        letter if power == 1 else f"{letter}^{power}" for letter, power in zip(letters, powers, strict=True) if power
    )
    size = "" if body and abs(coefficient) == 1 else str(abs(coefficient))
    sign = "-" if coefficient < 0 else "" if first else "+"
    return f"{sign}{size}{body}"


def _sum(terms: list[Monomial], letters: str) -> str:
    return "".join(_write(c, p, letters, first=n == 0) for n, (c, p) in enumerate(terms))


def _times(first: Monomial, second: Monomial) -> Monomial:
    return first[0] * second[0], tuple(a + b for a, b in zip(first[1], second[1], strict=True))


def planted_step(seed: int) -> PlantedStep:
    """Some products of brackets, multiplied out in any order with one sign or number wrong."""
    draws = random.Random(seed)
    letters = "".join(draws.sample("abcdhkmnpqrstuvwxyz", draws.choice([1, 1, 2])))
    count = len(letters)

    def term(top: int) -> Monomial:
        powers = [0] * count
        if draws.random() < 0.6:
            powers[draws.randrange(count)] = draws.choice([1, 1, 1, 2])
        return draws.choice([-1, 1]) * draws.randint(1, top), tuple(powers)

    def bracket() -> list[Monomial]:
        found: dict[tuple[int, ...], int] = {}
        while len(found) < draws.choice([2, 2, 3]):
            number, powers = term(9)
            found.setdefault(powers, number)
        return [(number, powers) for powers, number in found.items()]

    text, parts = "", []
    for place in range(draws.choice([1, 1, 2])):
        inside = bracket()
        if draws.random() < 0.55:
            left = bracket()
            text += ("+" if place else "") + f"({_sum(left, letters)})({_sum(inside, letters)})"
            parts += [_times(a, b) for a in left for b in inside]
        else:
            outside = term(6)
            while abs(outside[0]) == 1 and not any(outside[1]):
                outside = term(6)
            text += _write(*outside, letters, first=not place) + f"({_sum(inside, letters)})"
            parts += [_times(outside, b) for b in inside]
    draws.shuffle(parts)
    index = draws.randrange(len(parts))
    number, powers = parts[index]
    change = draws.choice(["sign", "number"])
    wrong = -number if change == "sign" else number + draws.choice([-2, -1, 1, 2, 10])
    if wrong == 0:
        wrong, change = -number, "sign"
    written = [*parts[:index], (wrong, powers), *parts[index + 1:]]
    return PlantedStep(
        text, "=" + _sum(written, letters), _write(wrong, powers, letters, first=index == 0),
        _write(number, powers, letters, first=index == 0), change,
    )
