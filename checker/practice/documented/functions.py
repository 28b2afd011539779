"""Documented slips with logarithms, angles and absolute values, drawn afresh."""

from __future__ import annotations

from checker.practice.documented.scene import Draws, Plantings, Scene, bad, first

FUNCTIONS = Plantings()

BESIDE = ("beside", "bracket")


def _name(d: Draws) -> str:
    return d.choice(["\\ln", "\\log"])


@FUNCTIONS.of("log-of-sum", "function-of-sum", "log-law")
def _(d: Draws) -> Scene:
    x, n, log = d.letter(), d.whole(2, 12), _name(d)
    before = f"{log}({x}+{n})"
    return Scene(before, bad(f"{log} {x}+{log} {n}", before))


@FUNCTIONS.of("log-product-as-product", "log-law")
def _(d: Draws) -> Scene:
    x, n, log = d.letter(), d.whole(2, 12), _name(d)
    return Scene(f"{log}({n}{x})", f"{log} {n} " + bad("\\cdot", "+") + f" {log} {x}")


@FUNCTIONS.of("log-quotient-as-quotient", "log-law")
def _(d: Draws) -> Scene:
    x, n, log = d.letter(), d.whole(2, 12), _name(d)
    wrong = f"\\frac{{{log} {x}}}{{{log} {n}}}"
    return Scene(f"{log}(\\frac{{{x}}}{{{n}}})", bad(wrong, f"{log} {x}-{log} {n}"), settings=("bracket",))


@FUNCTIONS.of("log-power-of-log", "log-law")
def _(d: Draws) -> Scene:
    x, n, log = d.letter(), d.whole(2, 5), _name(d)
    before = f"({log} {x})^{n}"
    return Scene(before, bad(f"{n}{log} {x}", before), settings=BESIDE)


@FUNCTIONS.of("log-cancel-name", "cancelled-term")
def _(d: Draws) -> Scene:
    b, n, log = d.whole(2, 9), d.whole(2, 9), _name(d)
    if b**n == b * n:
        n = 5
    before = f"\\frac{{{log} {b * n}}}{{{log} {b}}}"
    return Scene(before, bad(str(n), before))


@FUNCTIONS.of("log-constant-out", "log-law")
def _(d: Draws) -> Scene:
    x, n, log = d.letter(), d.whole(2, 12), _name(d)
    return Scene(f"{log}({n}{x})", bad(f"{n}{log} {x}", f"{log} {n}+{log} {x}"), settings=("bracket",))


@FUNCTIONS.of("trig-linear", "function-of-product")
def _(d: Draws) -> Scene:
    x = d.choice(["t", "x", "\\theta", "u"])
    right = f"2\\sin {x}\\cos {x}"
    return Scene(f"\\sin(2{x})", bad(f"2\\sin {x}", right), settings=BESIDE)


@FUNCTIONS.of("trig-sum", "function-of-sum")
def _(d: Draws) -> Scene:
    x = d.letter()
    y = d.letter(x)
    if d.random() < 0.5:
        right = f"\\cos {x}\\cos {y}-\\sin {x}\\sin {y}"
        return Scene(f"\\cos({x}+{y})", bad(f"\\cos {x}+\\cos {y}", right), settings=("bracket",))
    right = f"\\sin {x}\\cos {y}+\\cos {x}\\sin {y}"
    return Scene(f"\\sin({x}+{y})", bad(f"\\sin {x}+\\sin {y}", right), settings=("bracket",))


@FUNCTIONS.of("abs-sum", "function-of-sum")
def _(d: Draws) -> Scene:
    x, n, c = d.letter(), d.whole(1, 12), d.whole(1, 3)
    before = f"\\lvert {first(c, x)}-{n} \\rvert"
    head = "" if c == 1 else str(c)
    return Scene(before, bad(f"{head}\\lvert {x} \\rvert+{n}", before))
