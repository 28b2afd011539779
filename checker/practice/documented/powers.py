"""Documented slips with powers and surds, drawn afresh."""

from __future__ import annotations

from checker.practice.documented.scene import Draws, Plantings, Scene, bad, first, root, signed

POWERS = Plantings()

ADDED = ("beside", "equation")
BESIDE = ("beside",)


def raised(base: str, power: int) -> str:
    return base if power == 1 else f"{base}^{power}" if 0 <= power <= 9 else f"{base}^{{{power}}}"


@POWERS.of("index-product-multiplies", "power-law")
def _(d: Draws) -> Scene:
    x, m, n = d.letter(), d.whole(2, 6), d.whole(3, 6)
    a, b = d.choice([(1, 1), (2, 3), (4, 5)])
    before = f"{first(a, raised(x, m))}\\cdot {first(b, raised(x, n))}"
    return Scene(before, bad(first(a * b, raised(x, m * n)), first(a * b, raised(x, m + n))), settings=ADDED)


@POWERS.of("index-power-adds", "power-law")
def _(d: Draws) -> Scene:
    x, m, n = d.letter(), d.whole(2, 6), d.whole(3, 6)
    return Scene(f"({raised(x, m)})^{n}", bad(raised(x, m + n), raised(x, m * n)), settings=ADDED)


@POWERS.of("index-coefficient-missed", "power-law")
def _(d: Draws) -> Scene:
    x, k, m, n = d.letter(), d.whole(2, 5), d.whole(1, 5), d.whole(2, 3)
    body = raised(x, m * n)
    return Scene(f"({k}{raised(x, m)})^{n}", bad(f"{k}{body}", f"{k**n}{body}"), settings=ADDED)


@POWERS.of("index-coefficient-multiplied", "power-law")
def _(d: Draws) -> Scene:
    x, k, m, n = d.letter(), d.whole(3, 9), d.whole(1, 3), d.whole(2, 3)
    body = raised(x, m * n)
    return Scene(f"({k}{raised(x, m)})^{n}", bad(f"{k * n}{body}", f"{k**n}{body}"), settings=ADDED)


@POWERS.of("index-negative-as-negative", "power-law")
def _(d: Draws) -> Scene:
    x, n = d.letter(), d.whole(1, 5)
    return Scene(f"{x}^{{-{n}}}", bad(f"-{raised(x, n)}", f"\\frac{{1}}{{{raised(x, n)}}}"), settings=BESIDE)


@POWERS.of("index-negative-takes-coefficient", "power-law")
def _(d: Draws) -> Scene:
    x, k, n = d.letter(), d.whole(2, 9), d.whole(1, 5)
    body = raised(x, n)
    return Scene(f"{k}{x}^{{-{n}}}", bad(f"\\frac{{1}}{{{k}{body}}}", f"\\frac{{{k}}}{{{body}}}"), settings=BESIDE)


@POWERS.of("index-zero", "power-law")
def _(d: Draws) -> Scene:
    x, a = d.letter(), d.whole(2, 12)
    if d.random() < 0.5:
        y = d.letter(x)
        return Scene(f"{a}{y}+{x}^0", f"{a}{y}+{bad('0', '1')}")
    return Scene(f"{a}+{x}^0", bad(str(a), str(a + 1)))


@POWERS.of("index-minus-squared", "power-law", "sign-product")
def _(d: Draws) -> Scene:
    x, a, c = d.letter(), d.whole(2, 9), d.whole(1, 4)
    if d.random() < 0.5:
        return Scene(f"-{a}^2{signed(c, x)}", first(c, x) + bad(f"+{a * a}", f"-{a * a}"), settings=ADDED)
    return Scene(f"{first(c, x)}-{a}^2", first(c, x) + bad(f"+{a * a}", f"-{a * a}"), settings=ADDED)


@POWERS.of("index-quotient-divides", "power-law")
def _(d: Draws) -> Scene:
    x, n, k = d.letter(), d.whole(2, 4), d.whole(2, 4)
    m = n * k
    if m - n == k:
        m, k = 12, 12 // n
    return Scene(f"\\frac{{{raised(x, m)}}}{{{raised(x, n)}}}", bad(raised(x, k), raised(x, m - n)), settings=BESIDE)


@POWERS.of("index-bases-multiplied", "power-law")
def _(d: Draws) -> Scene:
    a, m, n = d.whole(2, 5), d.whole(2, 6), d.letter()
    return Scene(f"{a}^{m}\\cdot {a}^{n}", bad(f"{a * a}^{{{n}+{m}}}", f"{a}^{{{n}+{m}}}"))


@POWERS.of("index-half-as-half", "power-law")
def _(d: Draws) -> Scene:
    x = d.letter()
    n = d.choice([2, 2, 3])
    right = root(x) if n == 2 else f"\\sqrt[3]{{{x}}}"
    return Scene(f"{x}^{{\\frac{{1}}{{{n}}}}}", bad(f"\\frac{{{x}}}{{{n}}}", right), settings=BESIDE)


@POWERS.of("index-sum-of-powers", "unlike-terms")
def _(d: Draws) -> Scene:
    x, m = d.letter(), d.whole(1, 5)
    n = d.whole(2, 6, m)
    before = f"{raised(x, m)}+{raised(x, n)}"
    return Scene(before, bad(raised(x, m + n), before), settings=BESIDE)


@POWERS.of("surd-sum-split", "root-of-sum")
def _(d: Draws) -> Scene:
    x, b = d.letter(), d.whole(2, 9)
    if d.random() < 0.4:
        y = d.letter(x)
        before = root(f"{x}^2+{y}^2")
        return Scene(before, bad(f"{x}+{y}", before), settings=("bracket", "fraction"))
    before = root(f"{x}^2+{b * b}")
    return Scene(before, bad(f"{x}+{b}", before), settings=("bracket", "fraction"))


@POWERS.of("surd-sum-joined", "root-of-sum")
def _(d: Draws) -> Scene:
    n, k = d.square_free(), d.whole(2, 4)
    if d.random() < 0.4:
        m = d.square_free(n)
        before = f"{root(n)}+{root(m)}"
        return Scene(before, bad(root(n + m), before))
    total = n + k * k * n
    return Scene(f"{root(n)}+{root(k * k * n)}", bad(root(total), f"{k + 1}{root(n)}"), settings=BESIDE)


@POWERS.of("surd-factor-not-rooted", "power-law")
def _(d: Draws) -> Scene:
    n, k = d.square_free(), d.whole(2, 7)
    return Scene(root(k * k * n), bad(f"{k * k}{root(n)}", f"{k}{root(n)}"), settings=("beside", "bracket"))


@POWERS.of("surd-square-of-product", "power-law")
def _(d: Draws) -> Scene:
    n, k = d.square_free(), d.whole(2, 7)
    return Scene(f"({k}{root(n)})^2", bad(str(k * n), str(k * k * n)), settings=BESIDE)


@POWERS.of("surd-square-of-sum", "square-of-sum")
def _(d: Draws) -> Scene:
    n, a = d.square_free(), d.whole(2, 9)
    return Scene(f"({a}+{root(n)})^2", f"{a * a + n}{bad('', f'+{2 * a}{root(n)}')}", settings=("bracket", "fraction"))


@POWERS.of("surd-conjugate-sign", "sign-product")
def _(d: Draws) -> Scene:
    n, a = d.square_free(), d.whole(2, 9)
    one, two = d.choice([("+", "-"), ("-", "+")])
    before = f"({a}{one}{root(n)})({a}{two}{root(n)})"
    if d.random() < 0.5:
        return Scene(before, f"{a * a}{bad(f'+{n}', f'-{n}')}", (f"={a * a + n}",))
    return Scene(before, bad(str(a * a + n), str(a * a - n)))


@POWERS.of("surd-root-of-square", "root-of-square")
def _(d: Draws) -> Scene:
    x = d.letter()
    if d.random() < 0.4:
        k = d.whole(2, 9)
        return Scene(root(f"{k * k}{x}^2"), bad(f"{k}{x}", f"{k}\\lvert {x} \\rvert"))
    return Scene(root(f"{x}^2"), bad(x, f"\\lvert {x} \\rvert"), settings=BESIDE)
