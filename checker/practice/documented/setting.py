"""A documented slip set into a whole working: alone, beside other terms, in a bracket, a fraction, or an equation."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from checker.practice.book import MISSING, Planted
from checker.practice.documented.brackets import BRACKETS
from checker.practice.documented.collecting import COLLECTING
from checker.practice.documented.equations import EQUATIONS
from checker.practice.documented.fractions import FRACTIONS
from checker.practice.documented.functions import FUNCTIONS
from checker.practice.documented.powers import POWERS
from checker.practice.documented.quadratics import QUADRATICS
from checker.practice.documented.scene import BETWEEN, CLOSE, OPEN, Draws, Planting, Scene

__all__ = ["PLANTINGS", "DocumentedExercise", "documented_exercise", "documented_exercises"]

PLANTINGS: dict[str, Planting] = {
    **BRACKETS,
    **COLLECTING,
    **EQUATIONS,
    **QUADRATICS,
    **FRACTIONS,
    **POWERS,
    **FUNCTIONS,
}


@dataclass(frozen=True, slots=True)
class DocumentedExercise:
    """A working with a slip of the catalogue.

    Args:
        name: the name of the documented slip.
        setting: what it was set into.
        lines: the working with the slip.
        slip_line: 0-based index of the wrong line.
        slip: where it is and what it should be; the kind is the usual one.
        kinds: all kinds that a fair teacher could give it.
        verdict: slip, or loses or adds where only values are lost or added.
        right: the working up to that line with the slip put right.
    """

    name: str
    setting: str
    lines: tuple[str, ...]
    slip_line: int
    slip: Planted
    kinds: tuple[str, ...]
    verdict: str
    right: tuple[str, ...]


def documented_exercise(name: str, seed: int) -> DocumentedExercise:
    """One working with the named slip, the same for the same arguments.

    Raises:
        KeyError: no slip of the catalogue has this name.
    """
    made = PLANTINGS[name]
    draws = Draws(f"{name}:{seed}")
    scene = made.draw(draws)
    setting = draws.choice(["alone", *scene.settings, *scene.settings]) if scene.settings else "alone"
    earlier, before, written, after = _set(scene, setting, draws)
    wrong, right, span, should_be = _unmarked(written)
    term = wrong[slice(*span)] or MISSING
    return DocumentedExercise(
        name,
        setting,
        (*earlier, before, wrong, *after),
        len(earlier) + 1,
        Planted(made.kinds[0], term, span, should_be),
        made.kinds,
        scene.verdict,
        (*earlier, before, right),
    )


def documented_exercises(count: int, *, seed: int = 0) -> Iterator[DocumentedExercise]:
    """`count` workings over all documented slips in turn."""
    names = list(PLANTINGS)
    for number in range(count):
        yield documented_exercise(names[number % len(names)], seed * 1_000_003 + number)


def _unmarked(written: str) -> tuple[str, str, tuple[int, int], str]:
    """The wrong line, the right one, the span of the first wrong term, and what it should be."""
    wrong, right, found = "", "", None
    for piece in written.replace(OPEN, CLOSE).split(CLOSE):
        if BETWEEN not in piece:
            wrong, right = wrong + piece, right + piece
            continue
        bad, good = piece.split(BETWEEN)
        if found is None:
            found = (len(wrong), len(wrong) + len(bad)), good
        wrong, right = wrong + bad, right + good
    assert found is not None
    return wrong, right, *found


def _set(scene: Scene, setting: str, draws: Draws) -> tuple[list[str], str, str, list[str]]:
    """Earlier lines, the line before, the marked line, and what follows from it."""
    before, written = scene.before, scene.written
    plain = _unmarked(written)[0]
    if scene.relation:
        return [], before, written, list(scene.after)
    used = {character for character in before if character.isalpha()}
    letter = draws.letter(*used)
    number = draws.whole(5, 30)
    part = draws.whole(1, number - 1)
    split = f"{part}+{number - part}"
    earlier: list[str] = []
    match setting:
        case "beside":
            other = draws.choice([f"+{draws.whole(2, 9)}{letter}", f"-{letter}^2", f"-{draws.whole(2, 9)}{letter}"])
            twice = draws.random() < 0.4
            tail = f"{other}+{number}" if twice else other
            if twice:
                earlier = [f"{before}{other}+{split}"]
            after = [f"={plain}+{number}{other}"] if twice else []
            return earlier, f"{'=' if twice else ''}{before}{tail}", f"={written}{tail}", after
        case "front" if plain[0] not in "+-" and before[0] not in "+-" and written[0] != OPEN:
            head = f"{draws.whole(2, 9)}{letter}+"
            return [], head + before, f"={head}{written}", []
        case "bracket":
            outside = draws.whole(2, 6)
            return [], f"{outside}({before})", f"={outside}({written})", []
        case "fraction":
            bottom = draws.choice([7, 11, 13])
            return [], f"\\frac{{{before}}}{{{bottom}}}", f"=\\frac{{{written}}}{{{bottom}}}", []
        case "equation":
            if draws.random() < 0.4:
                earlier = [f"{before}={split}"]
            return earlier, f"{before}={number}", f"{written}={number}", [f"{plain}-{number}=0"]
        case _:
            return [], before, "=" + written, list(scene.after)
