"""What the sample pages say: a sixth-form worksheet on the areas of garden beds and paths, answered by candidates.

Every working was checked by hand: after a planted slip each line follows from the line before it.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["DRAWINGS", "PAGES", "Answer", "Planted"]


@dataclass(frozen=True, slots=True)
class Planted:
    """The slip: line (from 0), kind, the wrong term as written or "(missing)", what it should be."""

    line: int
    kind: str
    term: str
    should_be: str


@dataclass(frozen=True, slots=True)
class Answer:
    """One page. candidate: number; lines: LaTeX; planted: None where all is right; smudged: lines hard to read."""

    candidate: int
    question: str
    lines: tuple[str, ...]
    planted: Planted | None = None
    smudged: tuple[int, ...] = ()


PAGES = (
    # -3 times -4 is +12. Then 2x^2 - x^2 = x^2, -8x - 3x + 5x = -6x.
    Answer(
        4107, "Area of the bed (2x-3) by (x-4) less a pond x by (x-5).",
        ("(2x-3)(x-4)-x(x-5)", "=2x^2-8x-3x-12-x^2+5x", "=2x^2-x^2-11x+5x-12", "=x^2-6x-12"),
        Planted(1, "sign-product", "-12", "+12"),
    ),
    # -(x^2 + 4x + 4) loses its -4. Then 10x - 4x = 6x, and 6x + 24 = 6(x + 4).
    Answer(
        4112, "Area of the path: a bed (x+6) by (x+4) around a square of side x+2.",
        ("(x+6)(x+4)-(x+2)^2", "=x^2+10x+24-(x^2+4x+4)", "=x^2+10x+24-x^2-4x", "=6x+24", "=6(x+4)"),
        Planted(2, "dropped-term", "(missing)", "-4"),
    ),
    # 12w - 3w = 9w. Then 62 - 26 = 36 and 36/15 = 12/5.
    Answer(
        4118, "The width w of a path whose edging needs 62 slabs.",
        ("4(3w+5)-3(w-2)=62", "12w+20-3w+6=62", "15w+26=62", "15w=36", r"w=\frac{36}{15}", r"w=\frac{12}{5}"),
        Planted(2, "like-terms", "15w", "9w"),
    ),
    # -(x^2 + 7x + 12) has -7x. Then 17x + 7x = 24x, 35 - 12 = 23.
    Answer(
        4123, "How much larger is a bed (2x+7) by (x+5) than one (x+4) by (x+3)?",
        ("(2x+7)(x+5)-(x+4)(x+3)", "=2x^2+10x+7x+35-(x^2+3x+4x+12)", "=2x^2+17x+35-(x^2+7x+12)",
         "=2x^2+17x+35-x^2+7x-12", "=x^2+24x+23"),
        Planted(3, "sign-bracket", "+7x", "-7x"),
    ),
    # 4 times 7 is 28. Then 21t + 8t = 29t, 29t - 2t = 27t, 27t + 24 = 3(9t + 8).
    Answer(
        4130, "Area of a bed (3t+4) by (2t+7) less a path 2t by (3t+1).",
        ("(3t+4)(2t+7)-2t(3t+1)", "=6t^2+21t+8t+24-6t^2-2t", "=29t-2t+24", "=27t+24", "=3(9t+8)"),
        Planted(1, "product", "+24", "+28"),
    ),
    # (x + 1)(x - 2) = x^2 - 2x + x - 2; x^2 + 3x = x^2 - x + 20 gives 4x = 20.
    Answer(
        4136, "Two beds x by (x+3) and (x+1) by (x-2) differ by 22 square metres. Find x.",
        ("x(x+3)=(x+1)(x-2)+22", "x^2+3x=x^2-2x+x-2+22", "x^2+3x=x^2-x+20", "3x=-x+20", "4x=20", "x=5"),
    ),
    # (x + 4)(x + 2) = x^2 + 6x + 8; half of 6x + 8 is 3x + 4.
    Answer(
        4141, "Half of a bed (x+4) by (x+2) without half of a square of side x.",
        (r"\frac{(x+4)(x+2)}{2}-\frac{x^2}{2}", r"=\frac{x^2+2x+4x+8-x^2}{2}", r"=\frac{6x+8}{2}", "=3x+4"),
    ),
    # 4w^2 + 8w + 12w + 24 - 24 = 4w^2 + 20w; divided by 4 and 24 taken over; -8 times 3 is -24, 8 - 3 = 5.
    Answer(
        4152, "A path of width w around a pond covers 96 square metres.",
        ("(2w+6)(2w+4)-24=96", "4w^2+8w+12w+24-24=96", "4w^2+20w=96", "w^2+5w-24=0", "(w+8)(w-3)=0"),
        None, (1, 2),
    ),
)

DRAWINGS = (
    # -3n times +2 is -6n. Then 7n + 6n = 13n.
    Answer(
        4160, "Area of a bed (7-3n) by (n+2).",
        ("(7-3n)(n+2)", "=7n+14-3n^2+6n", "=14+13n-3n^2"), Planted(1, "sign-product", "+6n", "-6n"),
    ),
    # 10y - 3y = 7y, 6 + 15 = 21.
    Answer(4165, "Length y of a bed.", ("5(2y-3)=3y+6", "10y-15=3y+6", "7y=21", "y=3")),
)
