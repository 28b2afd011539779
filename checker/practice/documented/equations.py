"""Documented slips in solving linear equations and inequalities, and in copying, drawn afresh."""

from __future__ import annotations

from fractions import Fraction

from checker.practice.documented.scene import Draws, Plantings, Scene, bad, first, ratio, signed

EQUATIONS = Plantings()


def solved(x: str, a: int, value: int | Fraction) -> tuple[str, ...]:
    """The line x = value / a."""
    return (f"{x}={ratio(Fraction(value) / a)}",) if a != 1 else ()


def relation(before: str, written: str, *after: str, verdict: str = "slip") -> Scene:
    return Scene(before, written, after, relation=True, verdict=verdict)


@EQUATIONS.of("linear-transpose-sign", "sign-moved")
def _(d: Draws) -> Scene:
    x, a, b, c = d.letter(), d.whole(2, 9), d.nonzero(12), d.nonzero(40)
    while c in (b, -b):
        c += 1
    if d.random() < 0.4:
        return relation(
            f"{a}{x}{signed(b)}={c}", f"{a}{x}={c}{bad(signed(b), signed(-b))}", f"{a}{x}={c + b}", *solved(x, a, c + b)
        )
    return relation(f"{a}{x}{signed(b)}={c}", f"{a}{x}={bad(str(c + b), str(c - b))}", *solved(x, a, c + b))


@EQUATIONS.of("linear-transpose-sign-variable", "sign-moved")
def _(d: Draws) -> Scene:
    x, a, c = d.letter(), d.whole(3, 12), d.nonzero(40)
    b = d.whole(1, 9, a, a - 1)
    return relation(
        f"{a}{x}={first(b, x)}{signed(c)}", f"{bad(first(a + b, x), first(a - b, x))}={c}", *solved(x, a + b, c)
    )


@EQUATIONS.of("linear-redistribution", "sign-moved")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(2, 20)
    c = d.whole(2, 40, b)
    return relation(f"{x}-{b}={c}", f"{x}={bad(str(c - b), str(c + b))}")


@EQUATIONS.of("linear-switch-addends", "sign-moved")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 99)
    b = d.whole(100, 300)
    before = d.choice([f"{x}+{a}={b}", f"{a}+{x}={b}"])
    return relation(before, f"{x}={bad(str(a + b), str(b - a))}")


@EQUATIONS.of("linear-divide-by-subtracting", "arithmetic")
def _(d: Draws) -> Scene:
    x, a, n = d.letter(), d.whole(2, 9), d.whole(2, 12)
    if a * n - a == n:
        n += 1
    return relation(f"{a}{x}={a * n}", f"{x}={bad(str(a * n - a), str(n))}")


@EQUATIONS.of("linear-divide-upside-down", "arithmetic")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 12)
    b = d.whole(2, 12, a)
    return relation(f"{a}{x}={b}", f"{x}={bad(ratio(Fraction(a, b)), ratio(Fraction(b, a)))}")


@EQUATIONS.of("linear-divide-sign-lost", "sign-product")
def _(d: Draws) -> Scene:
    x, a, n = d.letter(), d.whole(2, 9), d.nonzero(12)
    return relation(f"-{a}{x}={a * n}", f"{x}={bad(str(n), str(-n))}")


@EQUATIONS.of("linear-minus-x", "sign-product")
def _(d: Draws) -> Scene:
    x, n = d.letter(), d.nonzero(30)
    return relation(f"-{x}={n}", f"{x}={bad(str(n), str(-n))}")


@EQUATIONS.of("linear-divide-one-term", "divide-each-term")
def _(d: Draws) -> Scene:
    x, a, b, c = d.letter(), d.whole(2, 9), d.nonzero(9), d.nonzero(12)
    return relation(f"{a}{x}{signed(a * b)}={a * c}", f"{x}{bad(signed(a * b), signed(b))}={c}", f"{x}={c - a * b}")


@EQUATIONS.of("linear-multiply-one-term", "multiply-each-term")
def _(d: Draws) -> Scene:
    x, a, b, c = d.letter(), d.whole(2, 9), d.nonzero(9), d.nonzero(12)
    return relation(
        f"\\frac{{{x}}}{{{a}}}{signed(b)}={c}", f"{x}{bad(signed(b), signed(a * b))}={a * c}", f"{x}={a * c - b}"
    )


@EQUATIONS.of("linear-divide-for-multiply", "product", "arithmetic")
def _(d: Draws) -> Scene:
    x, a, n = d.letter(), d.whole(2, 9), d.whole(2, 12)
    return relation(f"\\frac{{{x}}}{{{a}}}={a * n}", f"{x}={bad(str(n), str(a * a * n))}")


@EQUATIONS.of("linear-letter-dropped", "letter-lost")
def _(d: Draws) -> Scene:
    x, a, b = d.letter(), d.whole(2, 9), d.whole(2, 9)
    c = d.whole(a + 1, 40)
    return relation(f"{a}{x}-{b}+{b}={c}", f"{bad(str(a), f'{a}{x}')}={c}")


@EQUATIONS.of("linear-both-sides-same-op-once", "one-side-only")
def _(d: Draws) -> Scene:
    x, a, b, k = d.letter(), d.whole(3, 12), d.nonzero(12), d.nonzero(20)
    c = d.whole(1, a - 1)
    if a == c + 1 or b == k:
        a, k = a + 1, k + 1 or 3
    if d.random() < 0.5:
        wrong = f"{first(a - c, x)}{signed(b)}={bad(first(c, x), '0')}{signed(k)}"
        return relation(f"{a}{x}{signed(b)}={first(c, x)}{signed(k)}", wrong)
    return relation(f"{a}{x}{signed(b)}={k}", f"{a}{x}={bad(str(k), str(k - b))}", *solved(x, a, k))


@EQUATIONS.of("linear-collect-coefficients-to-one", "arithmetic")
def _(d: Draws) -> Scene:
    x, a, b, n = d.letter(), d.whole(2, 5), d.whole(2, 9), d.whole(2, 12)
    c = a * n + b
    if c - a - b == n:
        return relation("2x+5=13", f"x={bad('6', '4')}")
    return relation(f"{a}{x}+{b}={c}", f"{x}={bad(str(c - a - b), str(n))}")


@EQUATIONS.of("linear-bracket-divided-wrong", "arithmetic")
def _(d: Draws) -> Scene:
    x, a, b, n = d.letter(), d.whole(2, 9), d.nonzero(9), d.whole(2, 12)
    if a * n - a == n:
        n += 1
    return relation(
        f"{a}({x}{signed(b)})={a * n}", f"{x}{signed(b)}={bad(str(a * n - a), str(n))}", f"{x}={a * n - a - b}"
    )


def _turn(sign: str) -> str:
    return {"<": ">", ">": "<", "\\le ": "\\ge ", "\\ge ": "\\le "}[sign]


@EQUATIONS.of("ineq-negative-no-turn", "inequality-direction")
def _(d: Draws) -> Scene:
    x, a, n, sign = d.letter(), d.whole(2, 9), d.nonzero(12), d.choice(["<", ">", "\\le ", "\\ge "])
    wrong = bad(sign.strip(), _turn(sign).strip()) + sign[len(sign.strip()) :]
    return relation(f"-{a}{x}{sign}{-a * n}", f"{x}{wrong}{n}")


@EQUATIONS.of("ineq-turned-for-negative-answer", "inequality-direction")
def _(d: Draws) -> Scene:
    x, a, n, sign = d.letter(), d.whole(2, 9), d.whole(1, 12), d.choice(["<", ">", "\\le ", "\\ge "])
    turned = _turn(sign)
    return relation(f"{a}{x}{sign}-{a * n}", f"{x}{bad(turned.strip(), sign.strip())}{sign[len(sign.strip()) :]}-{n}")


@EQUATIONS.of("ineq-minus-x", "inequality-direction")
def _(d: Draws) -> Scene:
    x, a, b, sign = d.letter(), d.whole(2, 20), d.whole(1, 20), d.choice(["<", ">"])
    return relation(f"{a}-{x}{sign}{b}", f"{x}{bad(sign, _turn(sign))}{a - b}")


@EQUATIONS.of("ineq-square", "root-lost", "inequality-direction")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 12)
    return relation(f"{x}^2<{a * a}", f"{x}<{a}" + bad("", f" \\text{{ and }} {x}>-{a}"), verdict="adds")


@EQUATIONS.of("ineq-multiply-by-letter", "inequality-direction")
def _(d: Draws) -> Scene:
    x, b, n = d.letter(), d.whole(2, 9), d.whole(1, 9)
    a = b * n
    right = f"{x}<0 \\text{{ or }} {x}>{n}"
    return relation(f"\\frac{{{a}}}{{{x}}}<{b}", bad(f"{a}<{b}{x}", right), verdict="loses")


@EQUATIONS.of("copy-number-changed", "copied", "arithmetic")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 9)
    b, c = d.whole(11, 40), d.whole(41, 99)
    shift = d.choice([-3, 3, 6, 10, -1])
    return relation(f"{a}{x}+{b}={c}", f"{a}{x}={c}{bad(signed(-b - shift), signed(-b))}", f"{a}{x}={c - b - shift}")


@EQUATIONS.of("copy-sign-changed", "copied", "sign-product")
def _(d: Draws) -> Scene:
    x, b, c, k = d.letter(), d.nonzero(9), -d.whole(1, 20), d.choice([0, 0, 3, 5])
    return relation(f"{x}^2{signed(b, x)}{signed(c)}={k}", f"{x}^2{bad(signed(-b, x), signed(b, x))}{signed(c)}={k}")


@EQUATIONS.of("copy-power-dropped", "copied", "power-law")
def _(d: Draws) -> Scene:
    x, a, b, k, m = d.letter(), d.whole(2, 9), d.whole(1, 9), d.nonzero(20), d.choice([3, 4])
    right = f"{a}{x}^{m}"
    if d.random() < 0.5:
        return relation(f"{right}{signed(b, x)}={k}", f"{first(b, x)}+{bad(f'{a}{x}^{m - 1}', right)}={k}")
    return relation(f"{right}{signed(b, x)}={k}", f"{bad(f'{a}{x}^{m - 1}', right)}{signed(b, x)}={k}")
