"""Documented slips with brackets and factors, drawn afresh."""

from __future__ import annotations

from checker.practice.documented.scene import Draws, Plantings, Scene, bad, first, signed

BRACKETS = Plantings()

SUM = ("beside", "front", "bracket", "fraction", "equation")
LINE = ("beside", "front", "equation")


@BRACKETS.of("expand-first-only", "multiply-each-term")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 5), d.nonzero(12)
    return Scene(f"{a}({first(c, x)}{signed(b)})", first(a * c, x) + bad(signed(b), signed(a * b)), settings=SUM)


@BRACKETS.of("expand-last-lost-coefficient", "multiply-each-term")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 5), d.nonzero(9)
    return Scene(
        f"{a}({first(c, x)}{signed(b)})",
        bad(first(c, x), first(a * c, x)) + signed(a * b),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("expand-minus-second", "sign-bracket")
def _(d: Draws) -> Scene:
    x, n, b, c = d.letter(), d.whole(2, 15), d.nonzero(12), d.whole(1, 4)
    head = d.choice([str(n), first(c + d.whole(1, 5), x), f"{x}^2"])
    return Scene(f"{head}-({first(c, x)}{signed(b)})", head + signed(-c, x) + bad(signed(b), signed(-b)), settings=LINE)


@BRACKETS.of("expand-minus-bracket-product", "sign-product")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 4), d.whole(1, 9)
    return Scene(
        f"-{a}({first(c, x)}-{b})",
        first(-a * c, x) + bad(signed(-a * b), signed(a * b)),
        settings=("beside", "equation", "fraction", "bracket"),
    )


@BRACKETS.of("expand-minus-only-first", "sign-product")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 4), d.whole(1, 9)
    return Scene(
        f"-{a}({first(c, x)}+{b})",
        first(-a * c, x) + bad(signed(a * b), signed(-a * b)),
        settings=("beside", "equation", "fraction", "bracket"),
    )


@BRACKETS.of("expand-subtract-product", "sign-product", "sign-bracket")
def _(d: Draws) -> Scene:
    x, n, a, c, b = d.letter(), d.whole(2, 15), d.whole(2, 8), d.whole(1, 4), d.nonzero(9)
    head = d.choice([str(n), first(a * c + n, x)])
    return Scene(
        f"{head}-{a}({first(c, x)}{signed(b)})",
        head + signed(-a * c, x) + bad(signed(a * b), signed(-a * b)),
        settings=LINE,
    )


@BRACKETS.of("expand-left-to-right", "operation-order")
def _(d: Draws) -> Scene:
    x, a, b = d.letter(), d.whole(2, 6), d.nonzero(9)
    n = d.whole(a + 2, 15)
    sign = d.choice([1, -1])
    inside = f"({x}{signed(b)})"
    before = f"{n}{signed(sign * a)}{inside}"
    return Scene(before, bad(f"{n + sign * a}{inside}", before), settings=("beside", "equation"))


@BRACKETS.of("square-sum-no-middle", "square-of-sum")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(1, 4), d.whole(2, 9)
    return Scene(
        f"({first(c, x)}+{b})^2",
        first(c * c, x + "^2") + signed(b * b) + bad("", signed(2 * b * c, x)),
        settings=("bracket", "fraction", "equation"),
    )


@BRACKETS.of("square-difference-as-two-squares", "square-of-sum")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(1, 4), d.whole(2, 9)
    return Scene(
        f"({first(c, x)}-{b})^2",
        first(c * c, x + "^2") + bad(signed(-b * b), signed(-2 * b * c, x) + signed(b * b)),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("square-sign-of-last", "sign-product")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(1, 4), d.whole(2, 9)
    return Scene(
        f"({first(c, x)}-{b})^2",
        first(c * c, x + "^2") + signed(-2 * b * c, x) + bad(signed(-b * b), signed(b * b)),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("square-middle-not-doubled", "square-of-sum")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(1, 4), d.nonzero(9, 1, -1)
    return Scene(
        f"({first(c, x)}{signed(b)})^2",
        first(c * c, x + "^2") + bad(signed(b * c, x), signed(2 * b * c, x)) + signed(b * b),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("square-coefficient-not-squared", "power-law")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(2, 6), d.nonzero(9)
    return Scene(
        f"({first(c, x)}{signed(b)})^2",
        bad(first(c, x + "^2"), first(c * c, x + "^2")) + signed(2 * b * c, x) + signed(b * b),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("two-brackets-ends-only", "dropped-term")
def _(d: Draws) -> Scene:
    x, c, p = d.letter(), d.whole(1, 3), d.nonzero(9)
    q = d.nonzero(9, *[n for n in (-p * c,) if n])
    if c * p + q == 0:
        q += 1 if q != -1 else 2
    if c * q + p == 0:
        p += 1 if p != -1 else 2
    middle = c * q + p
    if middle == 0:
        return Scene(f"({x}+2)({x}+9)", f"{x}^2+18" + bad("", f"+11{x}"))
    return Scene(
        f"({first(c, x)}{signed(p)})({x}{signed(q)})",
        first(c, x + "^2") + signed(p * q) + bad("", signed(middle, x)),
        settings=("bracket", "fraction", "equation"),
    )


@BRACKETS.of("two-brackets-sign-of-product", "sign-product")
def _(d: Draws) -> Scene:
    x, c, p, q = d.letter(), d.whole(1, 4), d.nonzero(9), d.nonzero(9)
    if c * q + p == 0 or d.random() < 0.5:
        return Scene(
            f"({first(c, x)}{signed(p)})({x}{signed(q)})",
            first(c, x + "^2") + signed(c * q, x) + signed(p, x) + bad(signed(-p * q), signed(p * q)),
            after=("=" + first(c, x + "^2") + (signed(c * q + p, x) if c * q + p else "") + signed(-p * q),),
        )
    return Scene(
        f"({first(c, x)}{signed(p)})({x}{signed(q)})",
        first(c, x + "^2") + signed(c * q + p, x) + bad(signed(-p * q), signed(p * q)),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("two-brackets-middle-added-wrong", "like-terms", "sign-product")
def _(d: Draws) -> Scene:
    x, p = d.letter(), d.whole(2, 9)
    q = d.choice([n for n in range(1, 10) if n not in (p, 2 * p) and 2 * n != p])
    p, q = d.choice([(-p, q), (p, -q)])
    return Scene(
        f"({x}{signed(p)})({x}{signed(q)})",
        f"{x}^2" + bad(signed(-(p + q), x), signed(p + q, x)) + signed(p * q),
        settings=("beside", "bracket", "fraction", "equation"),
    )


@BRACKETS.of("three-terms-one-missed", "multiply-each-term")
def _(d: Draws) -> Scene:
    x, a, b, c = d.letter(), d.whole(2, 6), d.nonzero(6), d.nonzero(9)
    return Scene(
        f"{a}{x}({x}^2{signed(b, x)}{signed(c)})",
        f"{a}{x}^3{signed(a * b, x + '^2')}" + bad(signed(c), signed(a * c, x)),
        settings=LINE,
    )


@BRACKETS.of("power-dropped-in-product", "power-law")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 6), d.whole(1, 3), d.nonzero(9)
    return Scene(
        f"{a}{x}({first(c, x)}{signed(b)})",
        bad(first(a * c, x), first(a * c, x + "^2")) + signed(a * b, x),
        settings=("fraction", "equation", "bracket"),
    )


@BRACKETS.of("cube-sum", "square-of-sum")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.nonzero(5)
    return Scene(
        f"({x}{signed(b)})^3",
        f"{x}^3{signed(b**3)}" + bad("", signed(3 * b, x + "^2") + signed(3 * b * b, x)),
        settings=("bracket", "fraction", "equation"),
    )


def _pair(d: Draws) -> tuple[str, int, int, str]:
    x, p = d.letter(), d.nonzero(9)
    q = d.nonzero(9, -p, p)
    return x, p, q, f"{x}^2{signed(p + q, x)}{signed(p * q)}"


@BRACKETS.of("factor-sign-of-pair", "factor-pair")
def _(d: Draws) -> Scene:
    x, p, q, before = _pair(d)
    wrong = f"({x}{signed(-p)})({x}{signed(-q)})"
    return Scene(before, bad(wrong, f"({x}{signed(p)})({x}{signed(q)})"), settings=("fraction",))


@BRACKETS.of("factor-sum-only", "factor-pair")
def _(d: Draws) -> Scene:
    x, p, q, before = _pair(d)
    shift = d.choice([n for n in (1, -1, 2, -2, 3) if p + n and q - n and {p + n, q - n} != {p, q}])
    wrong = f"({x}{signed(p + shift)})({x}{signed(q - shift)})"
    return Scene(before, bad(wrong, f"({x}{signed(p)})({x}{signed(q)})"), settings=("fraction",))


@BRACKETS.of("factor-product-only", "factor-pair")
def _(d: Draws) -> Scene:
    x, p, q, before = _pair(d)
    product = abs(p * q)
    sign = 1 if p * q > 0 else -1
    other = [
        (m, sign * product // m)
        for m in range(1, product + 1)
        if product % m == 0 and {m, sign * product // m} not in ({p, q}, {-p, -q})
    ]
    m, n = d.choice(other or [(1, sign * product)])
    if p + q < 0 and (-m, -n) != (p, q):
        m, n = -m, -n
    if {m, n} == {p, q}:
        m, n = -m, -n
    wrong = f"({x}{signed(m)})({x}{signed(n)})"
    return Scene(before, bad(wrong, f"({x}{signed(p)})({x}{signed(q)})"), settings=("fraction",))


@BRACKETS.of("factor-common-left-one", "dropped-term")
def _(d: Draws) -> Scene:
    x, a, c = d.letter(), d.whole(2, 9), d.whole(1, 4)
    return Scene(
        f"{first(a * c, x + '^2')}+{a}{x}", f"{a}{x}({bad(first(c, x), first(c, x) + '+1')})", settings=("fraction",)
    )


@BRACKETS.of("factor-common-only-one-term", "divide-each-term")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 5), d.nonzero(9)
    return Scene(
        f"{a * c}{x}{signed(a * b)}",
        f"{a}({first(c, x)}{bad(signed(a * b), signed(b))})",
        settings=("beside", "fraction", "equation"),
    )


@BRACKETS.of("factor-negative-out", "sign-product")
def _(d: Draws) -> Scene:
    x, a, c, b = d.letter(), d.whole(2, 9), d.whole(1, 5), d.nonzero(9)
    return Scene(
        f"{first(-a * c, x)}{signed(a * b)}",
        f"-{a}({first(c, x)}{bad(signed(b), signed(-b))})",
        settings=("beside", "fraction", "equation"),
    )


@BRACKETS.of("sum-of-squares-factored", "factor-pair")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(1, 9)
    before = f"{x}^2+{b * b}"
    wrong = d.choice([f"({x}+{b})({x}+{b})", f"({x}+{b})({x}-{b})", f"({x}-{b})({x}+{b})"])
    return Scene(before, bad(wrong, before), settings=("fraction",))


@BRACKETS.of("two-squares-root-missing", "factor-pair")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(2, 9)
    sign = d.choice("-+")
    other = "+" if sign == "-" else "-"
    return Scene(
        f"{x}^2-{b * b}",
        f"({x}{sign}{bad(str(b * b), str(b))})({x}{other}{bad(str(b * b), str(b))})",
        settings=("fraction",),
    )


@BRACKETS.of("two-squares-coefficient", "factor-pair")
def _(d: Draws) -> Scene:
    x, c, b = d.letter(), d.whole(2, 6), d.whole(1, 9)
    wrong, right = first(c * c, x), first(c, x)
    return Scene(f"{c * c}{x}^2-{b * b}", f"({bad(wrong, right)}-{b})({bad(wrong, right)}+{b})", settings=("fraction",))
