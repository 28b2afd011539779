"""Documented slips with fractions, drawn afresh."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm

from checker.practice.documented.scene import Draws, Plantings, Scene, bad, first, ratio, signed

FRACTIONS = Plantings()

BESIDE = ("beside",)
ADDED = ("beside", "equation")


def over(top: str, bottom: str | int) -> str:
    return f"\\frac{{{top}}}{{{bottom}}}"


@FRACTIONS.of("fraction-cancel-term", "cancelled-term")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(2, 12)
    if d.random() < 0.3:
        y = d.letter(x)
        return Scene(over(f"{x}+{y}", x), bad(y, "1+" + over(y, x)), settings=BESIDE)
    return Scene(over(f"{x}+{b}", x), bad(str(b), "1+" + over(str(b), x)), settings=("fraction",))


@FRACTIONS.of("fraction-cancel-terms-both", "cancelled-term")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 12)
    b = d.whole(2, 12, a)
    before = over(f"{x}+{a}", f"{x}+{b}")
    return Scene(before, bad(ratio(Fraction(a, b)) if d.random() < 0.5 else over(str(a), b), before))


@FRACTIONS.of("fraction-divide-one-term", "divide-each-term")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 5), d.nonzero(9)
    return Scene(
        over(f"{a * c}{x}{signed(a * b)}", a), first(c, x) + bad(signed(a * b), signed(b)), settings=(*ADDED, "bracket")
    )


@FRACTIONS.of("fraction-add-tops-bottoms", "fraction-sum")
def _(d: Draws) -> Scene:
    x, a, b = d.letter(), d.whole(1, 9), d.whole(1, 9)
    y = d.letter(x)
    if d.random() < 0.4:
        p = d.whole(2, 9)
        q = d.whole(2, 9, p)
        before = f"{over(x, p)}+{over(y, q)}"
        m = lcm(p, q)
        right = over(f"{first(m // p, x)}{signed(m // q, y)}", m)
        return Scene(before, bad(over(f"{x}+{y}", p + q), right), settings=BESIDE)
    right = over(f"{first(a, y)}+{first(b, x)}", x + y)
    return Scene(f"{over(str(a), x)}+{over(str(b), y)}", bad(over(str(a + b), f"{x}+{y}"), right), settings=BESIDE)


@FRACTIONS.of("fraction-top-not-scaled", "fraction-sum")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(1, 9)
    p = d.whole(2, 9)
    q = d.choice([n for n in range(2, 10) if n % p and p % n])
    m = lcm(p, q)
    return Scene(
        f"{over(str(a), p)}+{over(x, q)}",
        over(bad(f"{a}+{x}", f"{a * m // p}{signed(m // q, x)}"), m),
        settings=(*ADDED, "bracket"),
    )


@FRACTIONS.of("fraction-split-bottom", "fraction-sum")
def _(d: Draws) -> Scene:
    x, b, n = d.letter(), d.whole(2, 9), d.whole(2, 5)
    before = over(str(b * n), f"{x}+{b}")
    wrong = d.choice([over(str(b * n), x) + f"+{n}", over(str(b * n), x) + "+" + over(str(b * n), b)])
    return Scene(before, bad(wrong, before), settings=("bracket",))


@FRACTIONS.of("fraction-minus-spread", "sign-bracket", "sign-product")
def _(d: Draws) -> Scene:
    x, p, a, c, b = d.letter(), d.whole(2, 9), d.whole(3, 9), d.whole(1, 2), d.nonzero(9)
    before = f"{over(f'{a}{x}', p)}-{over(first(c, x) + signed(b), p)}"
    if d.random() < 0.5:
        wrong = over(f"{a}{x}{signed(-c, x)}{bad(signed(b), signed(-b))}", p)
        return Scene(before, wrong, ("=" + over(f"{first(a - c, x)}{signed(b)}", p),))
    return Scene(before, over(f"{first(a - c, x)}{bad(signed(b), signed(-b))}", p), settings=(*ADDED, "bracket"))


def _nested(d: Draws) -> tuple[str, int, int, int, str]:
    x, b = d.letter(), d.whole(2, 9)
    c = d.whole(2, 9)
    e = d.choice([n for n in range(2, 10) if gcd(n, c) == 1 and n != c])
    return x, b, c, e, f"\\frac{{\\frac{{{x}}}{{{b}}}}}{{\\frac{{{c}}}{{{e}}}}}"


@FRACTIONS.of("fraction-divide-no-flip", "fraction-division")
def _(d: Draws) -> Scene:
    x, b, c, e, before = _nested(d)
    return Scene(before, bad(over(f"{c}{x}", b * e), over(first(Fraction(e), x), b * c)), settings=BESIDE)


@FRACTIONS.of("fraction-flip-the-first", "fraction-division")
def _(d: Draws) -> Scene:
    x, b, c, e, before = _nested(d)
    return Scene(before, bad(over(str(b * c), f"{e}{x}"), over(f"{e}{x}", b * c)), settings=BESIDE)


@FRACTIONS.of("fraction-multiply-both", "fraction-product")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 9)
    b = d.whole(2, 9, a)
    dot = d.choice(["\\cdot ", "\\times "])
    return Scene(f"{a}{dot}{over(x, b)}", over(f"{a}{x}", bad(str(a * b), str(b))), settings=ADDED)


@FRACTIONS.of("fraction-reciprocal-of-sum", "fraction-sum")
def _(d: Draws) -> Scene:
    x = d.letter()
    y = d.letter(x)
    if d.random() < 0.4:
        n = d.whole(2, 9)
        before = over("1", f"{over('1', x)}+{over('1', n)}")
        return Scene(before, bad(f"{x}+{n}", over(f"{n}{x}", f"{x}+{n}")), settings=("bracket",))
    return Scene(
        over("1", f"{over('1', x)}+{over('1', y)}"), bad(f"{x}+{y}", over(x + y, f"{x}+{y}")), settings=("bracket",)
    )


@FRACTIONS.of("fraction-opposites-cancel", "sign-product")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(2, 12)
    c = d.whole(1, 4)
    before = over(f"{first(c, x)}-{b}", f"{b}-{first(c, x)}")
    return Scene(before, bad("1", "-1"))
