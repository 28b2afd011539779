"""Documented slips in solving quadratics and equations with bars, roots and fractions, drawn afresh."""

from __future__ import annotations

from fractions import Fraction

from checker.practice.documented.equations import relation
from checker.practice.documented.scene import Draws, Plantings, Scene, bad, ratio, root, signed

QUADRATICS = Plantings()

OR = " \\text{ or } "


@QUADRATICS.of("quad-root-one-lost", "root-lost")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 15)
    if d.random() < 0.3:
        b = d.nonzero(9)
        return relation(
            f"({x}{signed(b)})^2={a * a}", f"{x}{signed(b)}={a}{bad('', f'{OR}{x}{signed(b)}=-{a}')}", verdict="loses"
        )
    return relation(f"{x}^2={a * a}", f"{x}={a}{bad('', f'{OR}{x}=-{a}')}", verdict="loses")


@QUADRATICS.of("quad-divide-by-x", "root-lost")
def _(d: Draws) -> Scene:
    x, a, c = d.letter(), d.whole(2, 15), d.whole(1, 4)
    head = "" if c == 1 else str(c)
    return relation(f"{head}{x}^2={a * c}{x}", f"{x}={a}{bad('', f'{OR}{x}=0')}", verdict="loses")


@QUADRATICS.of("quad-roots-sign", "sign-product")
def _(d: Draws) -> Scene:
    x, p = d.letter(), d.nonzero(12)
    q = d.nonzero(12, p, -p)
    return relation(f"({x}{signed(p)})({x}{signed(q)})=0", bad(f"{x}={p}{OR}{x}={q}", f"{x}={-p}{OR}{x}={-q}"))


@QUADRATICS.of("quad-product-not-zero", "product-not-zero")
def _(d: Draws) -> Scene:
    x, p, c = d.letter(), d.nonzero(9), d.whole(2, 12)
    q = d.nonzero(9, p, -p)
    wrong = f"{x}{signed(p)}={c}{OR}{x}{signed(q)}={c}"
    right = f"{x}^2{signed(p + q, x)}{signed(p * q)}={c}" if p + q else f"{x}^2{signed(p * q)}={c}"
    return relation(f"({x}{signed(p)})({x}{signed(q)})={c}", bad(wrong, right))


@QUADRATICS.of("quad-half-the-square", "arithmetic")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 9) * 2
    if a == 4:
        a = 6
    right = f"{a}{OR}{x}=-{a}"
    return relation(f"{x}^2={a * a}", f"{x}={bad(str(a * a // 2), right)}")


def _quadratic(d: Draws, negative_last: bool) -> tuple[str, int, int]:
    """b and c of x^2+bx+c with two different whole roots, neither zero, and b not zero."""
    p = d.whole(1, 9)
    q = d.whole(1, 9, p)
    if negative_last:
        return d.letter(), d.choice([-1, 1]) * (p - q), -p * q
    return d.letter(), d.choice([-1, 1]) * (p + q), p * q


@QUADRATICS.of("quad-formula-sign-b", "sign-product")
def _(d: Draws) -> Scene:
    x, b, c = _quadratic(d, d.random() < 0.5)
    inside = root(b * b - 4 * c)
    one, two = (f"{x}=\\frac{{{bad(str(b), str(-b))}{sign}{inside}}}{{2}}" for sign in "+-")
    return relation(f"{x}^2{signed(b, x)}{signed(c)}=0", f"{one}{OR}{two}")


@QUADRATICS.of("quad-formula-disc-sign", "sign-product")
def _(d: Draws) -> Scene:
    x, b, c = _quadratic(d, True)
    while b * b + 4 * c < 0 and d.random() < 0.7:
        x, b, c = _quadratic(d, True)
    inside = root(f"{b * b}{bad(signed(4 * c), signed(-4 * c))}")
    one, two = (f"{x}=\\frac{{{-b}{sign}{inside}}}{{2}}" for sign in "+-")
    return relation(f"{x}^2{signed(b, x)}{signed(c)}=0", f"{one}{OR}{two}")


@QUADRATICS.of("quad-formula-denominator-partial", "divide-each-term")
def _(d: Draws) -> Scene:
    x, b, c = _quadratic(d, d.random() < 0.5)
    inside = root(b * b - 4 * c)
    sign = "-" if b > 0 else ""
    right = f"{sign}\\frac{{{abs(b)}}}{{2}}"
    one, two = (f"{x}={bad(str(-b), right)}{mark}\\frac{{{inside}}}{{2}}" for mark in "+-")
    return relation(f"{x}^2{signed(b, x)}{signed(c)}=0", f"{one}{OR}{two}")


@QUADRATICS.of("complete-square-not-balanced", "one-side-only")
def _(d: Draws) -> Scene:
    x, h, c = d.letter(), d.nonzero(9), d.whole(1, 20)
    before = f"{x}^2{signed(2 * h, x)}={c}"
    wrong = bad(str(c), str(c + h * h))
    if d.random() < 0.5:
        return relation(before, f"({x}{signed(h)})^2={wrong}")
    return relation(before, f"{x}^2{signed(2 * h, x)}+{h * h}={wrong}", f"({x}{signed(h)})^2={c}")


@QUADRATICS.of("fraction-invert-each-term", "fraction-sum")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 9)
    b = d.whole(2, 9, a)
    right = ratio(1 / (Fraction(1, a) + Fraction(1, b)))
    wrong = d.choice([f"{a}+{b}", str(a + b)])
    return relation(f"\\frac{{1}}{{{x}}}=\\frac{{1}}{{{a}}}+\\frac{{1}}{{{b}}}", f"{x}={bad(wrong, right)}")


@QUADRATICS.of("surd-square-both-sides-termwise", "square-of-sum")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(1, 9)
    c = b + d.whole(1, 9)
    whole = signed(2 * b, f"\\sqrt{{{x}}}")
    return relation(f"\\sqrt{{{x}}}+{b}={c}", bad(f"{x}+{b * b}", f"{x}{whole}+{b * b}") + f"={c * c}")


@QUADRATICS.of("abs-one-case", "root-lost")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(1, 15)
    return relation(f"\\lvert {x} \\rvert={a}", f"{x}={a}{bad('', f'{OR}{x}=-{a}')}", verdict="loses")
