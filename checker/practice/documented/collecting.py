"""Documented slips in collecting, in arithmetic and in putting values in, drawn afresh."""

from __future__ import annotations

from checker.practice.documented.scene import Draws, Plantings, Scene, bad, first, signed

COLLECTING = Plantings()

ADDED = ("beside", "equation")
INNER = ("bracket", "fraction")


@COLLECTING.of("collect-unlike", "unlike-terms")
def _(d: Draws) -> Scene:
    x, a, b = d.letter(), d.whole(2, 9), d.whole(2, 9)
    before = f"{a}{x}+{b}"
    return Scene(before, bad(f"{a + b}{x}", before), settings=INNER)


@COLLECTING.of("collect-unlike-letters", "unlike-terms")
def _(d: Draws) -> Scene:
    x, a, b = d.letter(), d.whole(2, 9), d.whole(2, 9)
    y = d.letter(x)
    before = f"{a}{x}+{b}{y}"
    return Scene(before, bad(f"{a + b}{x}{y}", before), settings=(*INNER, "beside"))


@COLLECTING.of("collect-powers", "unlike-terms")
def _(d: Draws) -> Scene:
    x, a, b, m = d.letter(), d.whole(2, 9), d.whole(2, 9), d.whole(2, 4)
    before = f"{a}{x}^{m}+{b}{x}"
    return Scene(before, bad(f"{a + b}{x}^{m + 1}", before), settings=(*INNER, "beside"))


@COLLECTING.of("collect-like-adds-powers", "like-terms")
def _(d: Draws) -> Scene:
    x, a, b, m = d.letter(), d.whole(2, 9), d.whole(2, 9), d.whole(1, 4)
    p = "" if m == 1 else f"^{m}"
    return Scene(f"{a}{x}{p}+{b}{x}{p}", bad(f"{a + b}{x}^{2 * m}", f"{a + b}{x}{p}"), settings=(*ADDED, *INNER))


@COLLECTING.of("collect-letter-subtracts-away", "like-terms")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(3, 12)
    return Scene(f"{a}{x}-{x}", bad(str(a), f"{a - 1}{x}"), settings=("beside", *INNER))


@COLLECTING.of("collect-one-ignored", "like-terms")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 9)
    before = d.choice([f"{x}+{a}{x}", f"{a}{x}+{x}"])
    return Scene(before, bad(f"{a}{x}", f"{a + 1}{x}"), settings=(*ADDED, *INNER))


@COLLECTING.of("collect-sign-with-wrong-term", "like-terms")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(2, 6), d.whole(1, 9)
    a = d.whole(c + 2, 15)
    return Scene(f"{a}{x}-{b}+{c}{x}", bad(first(a - c, x), first(a + c, x)) + f"-{b}", settings=(*ADDED, *INNER))


@COLLECTING.of("collect-negative-sum", "like-terms")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(1, 9)
    b = d.whole(2, 9, a)
    wrong = d.choice([a - b, b - a])
    return Scene(f"{first(-a, x)}-{b}{x}", bad(first(wrong, x), first(-a - b, x)), settings=(*ADDED, *INNER))


@COLLECTING.of("collect-minus-detached", "like-terms")
def _(d: Draws) -> Scene:
    x, n, a, c = d.letter(), d.whole(3, 30), d.whole(2, 9), d.whole(2, 9)
    if a == c:
        c += 1
    return Scene(f"{n}-{a}{x}+{c}{x}", f"{n}" + bad(signed(-a - c, x), signed(c - a, x)), settings=(*ADDED, *INNER))


@COLLECTING.of("collect-two-negatives-plus", "like-terms")
def _(d: Draws) -> Scene:
    x, a, b, c = d.letter(), d.whole(2, 12), d.whole(2, 12), d.whole(1, 4)
    return Scene(f"-{a}-{b}{signed(c, x)}", first(c, x) + bad(signed(a + b), signed(-a - b)), settings=(*ADDED, *INNER))


@COLLECTING.of("subst-no-bracket", "sign-product")
def _(d: Draws) -> Scene:
    a, k = d.whole(2, 6), d.whole(2, 6)
    tail = d.choice(["", f"+{d.whole(1, 9)}", f"-{d.whole(1, 9)}"])
    wrong = bad(f"-{a * k * k}", str(a * k * k)) + tail
    return Scene(f"{a}(-{k})^2{tail}", wrong, settings=("beside",) if tail else ())


@COLLECTING.of("subst-juxtaposed", "product")
def _(d: Draws) -> Scene:
    a, k = d.whole(2, 9), d.whole(2, 9)
    dot = d.choice(["\\cdot ", "\\times "])
    return Scene(f"{a}{dot}{k}", bad(f"{a}{k}", f"{a * k}"), settings=("beside",))


@COLLECTING.of("order-add-first", "operation-order")
def _(d: Draws) -> Scene:
    x, a, b = d.letter(), d.whole(2, 9), d.whole(2, 9)
    return Scene(f"{a}+{b}\\cdot {x}", bad(f"{a + b}{x}", f"{a}+{b}{x}"), settings=INNER)


@COLLECTING.of("order-reversed-subtraction", "like-terms", "arithmetic")
def _(d: Draws) -> Scene:
    x, c = d.letter(), d.whole(1, 4)
    a = d.whole(1, 9)
    b = d.whole(a + 1, 20)
    return Scene(f"{a}-{b}{signed(c, x)}", first(c, x) + bad(f"+{b - a}", f"-{b - a}"), settings=(*ADDED, *INNER))


@COLLECTING.of("arith-sign-of-quotient", "sign-product")
def _(d: Draws) -> Scene:
    x, a, n, c = d.letter(), d.whole(2, 9), d.whole(2, 9), d.whole(1, 5)
    if d.random() < 0.5:
        return Scene(f"\\frac{{-{a * n}}}{{-{a}}}{signed(c, x)}", first(c, x) + bad(f"-{n}", f"+{n}"), settings=ADDED)
    return Scene(f"{first(c, x)}+\\frac{{-{a * n}}}{{-{a}}}", first(c, x) + bad(f"-{n}", f"+{n}"), settings=ADDED)
