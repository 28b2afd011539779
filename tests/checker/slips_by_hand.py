"""Slips as pupils write them, set and worked by hand, of other shapes than those that any generator here draws.

Each entry: topic, lines, number of the wrong line, kinds that a fair teacher could give it, the wrong term, and what it
should be (several where teachers write it differently). The slips: common practice, no source; the lines our own.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["BY_HAND", "ByHand"]

MISSING = "(missing)"


@dataclass(frozen=True, slots=True)
class ByHand:
    """One working with its slip."""

    topic: str
    lines: tuple[str, ...]
    at: int
    kinds: tuple[str, ...]
    term: tuple[str, ...]
    should_be: tuple[str, ...]


def one(topic: str, before: str, written: str, kinds: str, term: str, should_be: str) -> ByHand:
    """Two lines; alternatives are set apart by " / "."""
    return ByHand(topic, (before, written), 1, tuple(kinds.split()), tuple(term.split(" / ")),
                  tuple(should_be.split(" / ")))


def whole(topic: str, lines: tuple[str, ...], at: int, kinds: str, term: str, should_be: str) -> ByHand:
    return ByHand(topic, lines, at, tuple(kinds.split()), tuple(term.split(" / ")), tuple(should_be.split(" / ")))


BY_HAND = (
    # negatives times negatives: -3 times -2a is 6a; -4 times -4 is 16
    one("negatives", "-3(4-2a)", "=-12-6a", "sign-product", "-6a", "+6a"),
    one("negatives", "7-(-3)m", "=7-3m", "sign-product sign-bracket copied", "-3m", "+3m"),
    one("negatives", r"(-4)(-4)+2k", "=-16+2k", "sign-product", "-16", "16"),
    one("negatives", r"-2\times -5p", "=-10p", "sign-product", "-10p", "10p"),
    one("negatives", "(-2n)^3", "=8n^3", "sign-product power-law", "8n^3", "-8n^3"),
    one("negatives", "(-a)(b-c)", "=-ab-ac", "sign-product", "-ac", "+ac"),
    one("negatives", "x(-x-6)", "=-x^2+6x", "sign-product", "+6x", "-6x"),
    one("negatives", r"\frac{-12y}{-4}", "=-3y", "sign-product", "-3y", "3y"),
    # squares of brackets
    one("squares", "(p-q)^2", "=p^2-q^2", "square-of-sum", "-q^2", "-2pq+q^2"),
    one("squares", "(2x-5)^2", "=4x^2-10x+25", "square-of-sum", "-10x", "-20x"),
    one("squares", "(3a+2b)^2", "=9a^2+4b^2", "square-of-sum", MISSING, "+12ab"),
    one("squares", "5-(y+3)^2", "=5-y^2+6y+9", "sign-bracket", "+6y+9 / +6y", "-6y-9 / -6y"),
    one("squares", "2(x+1)^2", "=(2x+2)^2", "operation-order power-law square-of-sum", "(2x+2)^2",
        "2(x+1)^2 / 2x^2+4x+2"),
    one("squares", r"(x+\frac{1}{2})^2", r"=x^2+\frac{1}{2}x+\frac{1}{4}", "square-of-sum", r"+\frac{1}{2}x", "+x"),
    one("squares", "(a+b+c)^2", "=a^2+b^2+c^2", "square-of-sum", MISSING, "+2ab+2ac+2bc"),
    one("squares", "(x^2+3)^2", "=x^4+9", "square-of-sum", MISSING, "+6x^2"),
    one("squares", "(x-3)^2-(x+2)^2", "=x^2-6x+9-x^2+4x+4", "sign-bracket", "+4x+4", "-4x-4"),
    # a minus before a bracket or a fraction
    one("minus before", "3x-(2x-5y+1)", "=3x-2x-5y+1", "sign-bracket", "-5y+1 / -5y", "+5y-1 / +5y"),
    one("minus before", "10-4(1-d)", "=10-4-4d", "sign-product sign-bracket", "-4d", "+4d"),
    one("minus before", "-(a-b)", "=-a-b", "sign-bracket", "-b", "+b"),
    one("minus before", r"1-\frac{x-3}{2}", r"=\frac{2-x-3}{2}", "sign-bracket sign-product", "-3", "+3"),
    one("minus before", r"\frac{3}{a}-\frac{a-2}{a}", r"=\frac{1-a}{a}", "sign-bracket sign-product", "1", "5"),
    one("minus before", r"2-\frac{t+1}{3}=t", "6-t+1=3t", "sign-bracket sign-product", "+1", "-1"),
    one("minus before", "6w-2(w-(3-w))", "=6w-2w-6+2w", "sign-product sign-bracket", "-6+2w / -6", "+6-2w / +6"),
    # terms cancelled that are no factors
    one("cancelling", r"\frac{3x+5}{3}", "=x+5", "divide-each-term", "+5", r"+\frac{5}{3}"),
    one("cancelling", r"\frac{a+b}{a+c}-2a", r"=\frac{b}{c}-2a", "cancelled-term", r"\frac{b}{c}", r"\frac{a+b}{a+c}"),
    one("cancelling", r"\frac{x^2+4}{x}", "=x+4", "divide-each-term cancelled-term", "+4", r"+\frac{4}{x}"),
    one("cancelling", r"\frac{2k+8}{2k}", "=8", "cancelled-term", "8", r"1+\frac{4}{k} / \frac{k+4}{k}"),
    one("cancelling", r"\frac{y^2-9}{y+3}", "=y+3", "sign-product", "+3 / y+3", "-3 / y-3"),
    one("cancelling", r"\frac{x(x-1)+5}{x-1}", "=x+5", "cancelled-term divide-each-term", "+5 / x+5",
        r"+\frac{5}{x-1} / x+\frac{5}{x-1}"),
    one("cancelling", r"\frac{6m-9}{12}", r"=\frac{2m-9}{4}", "divide-each-term", "-9", "-3"),
    # denominators
    one("fractions", r"\frac{1}{x}+\frac{1}{2}", r"=\frac{2}{x+2}", "fraction-sum", r"\frac{2}{x+2}",
        r"\frac{x+2}{2x}"),
    one("fractions", r"\frac{a}{3}+\frac{a}{4}", r"=\frac{2a}{7}", "fraction-sum", r"\frac{2a}{7}", r"\frac{7a}{12}"),
    one("fractions", r"\frac{5}{n}-\frac{2}{n+1}", r"=\frac{3}{n(n+1)}", "fraction-sum", r"3 / \frac{3}{n(n+1)}",
        r"3n+5 / \frac{3n+5}{n^2+n}"),
    one("fractions", r"\frac{x}{2}+\frac{x}{6}", r"=\frac{3x+2x}{6}", "fraction-sum product arithmetic copied other",
        "+2x", "+x"),
    one("fractions", r"\frac{3}{4}\times\frac{2x}{5}", r"=\frac{6x}{9}", "fraction-product product arithmetic",
        r"\frac{6x}{9} / 9", r"\frac{3x}{10} / \frac{6x}{20} / 20"),
    one("fractions", r"\frac{x}{4}\div 2", r"=\frac{x}{2}", "fraction-division arithmetic product",
        r"\frac{x}{2} / 2", r"\frac{x}{8} / 8"),
    one("fractions", r"\frac{2}{3}(x-6)", r"=\frac{2x}{3}-6", "multiply-each-term", "-6", "-4"),
    one("fractions", r"\frac{2}{3}x+\frac{1}{6}x", r"=\frac{3}{9}x", "fraction-sum like-terms", r"\frac{3}{9}x",
        r"\frac{5x}{6}"),
    one("fractions", r"x+\frac{3}{x}", r"=\frac{x+3}{x}", "fraction-sum", r"x / x+3 / \frac{x+3}{x}",
        r"x^2 / x^2+3 / \frac{x^2+3}{x}"),
    # laws of indices
    one("indices", r"x^5\cdot x", "=x^5", "power-law", "x^5", "x^6"),
    one("indices", r"3a^2\times 4a^3", "=7a^5", "product arithmetic", "7a^5", "12a^5"),
    one("indices", r"3a^2\times 4a^3", "=12a^6", "power-law", "12a^6", "12a^5"),
    one("indices", "(x^3y)^2", "=x^6y", "power-law", "x^6y", "x^6y^2"),
    one("indices", r"\frac{8x^6}{2x^2}", "=4x^3", "power-law", "4x^3", "4x^4"),
    one("indices", r"\frac{8x^6}{2x^2}", "=6x^4", "arithmetic", "6x^4", "4x^4"),
    one("indices", "(3x)^{-1}", r"=\frac{3}{x}", "power-law", r"\frac{3}{x}", r"\frac{1}{3x}"),
    one("indices", "5x^{-2}", r"=\frac{1}{5x^2}", "power-law", r"\frac{1}{5x^2}", r"\frac{5}{x^2}"),
    one("indices", r"16^{\frac{1}{2}}+m", "=8+m", "power-law arithmetic", "8", "4"),
    one("indices", r"27^{\frac{2}{3}}", "=18", "power-law arithmetic", "18", "9"),
    one("indices", r"8^{-\frac{1}{3}}", "=-2", "power-law", "-2", r"\frac{1}{2}"),
    one("indices", "2^a+2^a", "=4^a", "power-law like-terms unlike-terms", "4^a", r"2^a+2^a / 2^{a+1} / 2\cdot 2^a"),
    one("indices", "4^0+y", "=y", "power-law dropped-term", f"{MISSING} / y", "+1 / y+1"),
    # surds
    one("surds", r"\sqrt{18}+\sqrt{2}", r"=\sqrt{20}", "root-of-sum", r"\sqrt{20}", r"4\sqrt{2}"),
    one("surds", r"\sqrt{12}", r"=4\sqrt{3}", "power-law arithmetic", r"4\sqrt{3}", r"2\sqrt{3}"),
    one("surds", r"(2+\sqrt{5})^2", r"=4+5", "square-of-sum", MISSING, r"+4\sqrt{5}"),
    one("surds", r"3\sqrt{2}\times 2\sqrt{2}", r"=6\sqrt{2}", "power-law product arithmetic", r"6\sqrt{2}", "12"),
    one("surds", r"\sqrt{9+x^2}", "=3+x", "root-of-sum", "3+x", r"\sqrt{9+x^2}"),
    one("surds", r"(\sqrt{7}-2)(\sqrt{7}+2)", "=7+4", "sign-product", "+4", "-4"),
    one("surds", r"\frac{6}{\sqrt{3}}", r"=\frac{6\sqrt{3}}{9}", "power-law product arithmetic",
        r"\frac{6\sqrt{3}}{9} / 9", r"2\sqrt{3} / \frac{6\sqrt{3}}{3}"),
    # logarithms
    one("logs", r"\ln x+\ln 3", r"=\ln(x+3)", "log-law function-of-sum", r"\ln(x+3)", r"\ln x+\ln 3 / \ln(3x)"),
    one("logs", r"\ln a-\ln b", r"=\frac{\ln a}{\ln b}", "log-law", r"\frac{\ln a}{\ln b}",
        r"\ln a-\ln b / \ln(\frac{a}{b})"),
    one("logs", r"2\ln x+\ln y", r"=2\ln(xy)", "log-law", r"2\ln(xy)", r"2\ln x+\ln y / \ln(x^2y)"),
    one("logs", r"\ln(x^2-1)", r"=\ln(x^2)-\ln 1", "function-of-sum log-law", r"\ln(x^2)-\ln 1 / \ln(x^2)",
        r"\ln(x^2-1)"),
    # terms across the equals sign
    one("moving", "4x-7=2x+9", "6x=16", "sign-moved", "6x", "2x"),
    one("moving", "4x-7=2x+9", "2x=2", "sign-moved", "2", "16"),
    one("moving", "15=3-4y", "4y=18", "sign-moved sign-product like-terms arithmetic", "18", "-12"),
    one("moving", "a-b=c", "a=c-b", "sign-moved", "-b", "+b"),
    one("moving", "v^2=u^2+2as", "v^2+u^2=2as", "sign-moved", "+u^2", "-u^2"),
    one("moving", r"\frac{x}{3}+4=9", r"\frac{x}{3}=13", "sign-moved", "13", "5"),
    one("moving", "3=7-x", "x=-4", "sign-product like-terms sign-moved", "-4", "4"),
    one("moving", "2x+5=x-3", "x=2", "sign-moved", "2", "-8"),
    # one term only divided or multiplied
    one("one term", "6x+10=4", "3x+10=2", "divide-each-term", "+10", "+5"),
    one("one term", r"\frac{x}{2}-\frac{1}{3}=5", "3x-2=5", "one-side-only multiply-each-term", "5", "30"),
    one("one term", "0.5x+3=7", "x+3=14", "multiply-each-term", "+3", "+6"),
    one("one term", r"\frac{2x-1}{5}+x=3", "2x-1+x=15", "multiply-each-term", "+x", "+5x"),
    one("one term", "4(x+3)=20", "x+12=20", "multiply-each-term", "x", "4x"),
    one("one term", "5x=3x+8", "x=3x+8", "divide-each-term arithmetic one-side-only copied like-terms", "x / 3x",
        r"5x / \frac{3x}{5}"),
    # inequalities
    one("inequalities", "3-2x>7", "-2x>10", "sign-moved arithmetic", "10", "4"),
    one("inequalities", "-x\\ge 4", "x\\ge -4", "inequality-direction", "\\ge", "\\le"),
    one("inequalities", r"\frac{y}{-3}<2", "y<-6", "inequality-direction", "<", ">"),
    one("inequalities", "5x<-10", "x>-2", "inequality-direction", ">", "<"),
    # completing the square
    one("completing", "x^2+6x+2", "=(x+3)^2+2", "dropped-term square-of-sum arithmetic", "+2", "-7"),
    one("completing", "x^2-8x+3", "=(x-4)^2+3-8", "arithmetic product", "-8", "-16"),
    one("completing", "x^2-8x+3", "=(x-8)^2-61", "arithmetic product", "(x-8)^2 / -8", "(x-4)^2 / -4"),
    one("completing", "2x^2+8x+1", "=2(x+4)^2-31", "arithmetic divide-each-term", "4 / +4 / 2(x+4)^2",
        "2 / +2 / 2(x+2)^2"),
    one("completing", "x^2+10x=11", "(x+5)^2=11", "one-side-only", "11", "36"),
    one("completing", "x^2+10x=11", "(x+5)^2=11-25", "sign-product sign-moved copied", "-25", "+25"),
    # the quadratic formula with its numbers
    one("formula", "2x^2-3x-1=0", r"x=\frac{3\pm\sqrt{9-8}}{4}", "sign-product", "-8", "+8"),
    one("formula", "2x^2-3x-1=0", r"x=\frac{3\pm\sqrt{17}}{2}", "arithmetic product", "2", "4"),
    one("formula", "2x^2-3x-1=0", r"x=\frac{-3\pm\sqrt{17}}{4}", "sign-product", "-3", "3"),
    one("formula", "x^2+4x+1=0", r"x=-4\pm\frac{\sqrt{12}}{2}", "divide-each-term", "-4", "-2 / -\\frac{4}{2}"),
    # simultaneous equations: 3y minus -2y is 5y; 4x + 4x
    whole("simultaneous", ("x+3y=11", "x-2y=1", "y=10"), 2, "like-terms sign-product arithmetic", "10 / y", "2 / 5y"),
    whole("simultaneous", ("x+3y=11", "x-2y=1", "5y=12"), 2, "like-terms sign-product arithmetic", "12", "10"),
    whole("simultaneous", ("2x+y=7", "3x-y=8", "5x=1"), 2, "like-terms sign-product arithmetic", "1", "15"),
    whole("simultaneous", ("y=2x-1", "3x+y=9", "3x+2x+1=9"), 2, "sign-product copied sign", "+1", "-1"),
    whole("simultaneous", ("y=x+4", "3x-y=1", "3x-x+4=1"), 2, "sign-bracket", "+4", "-4"),
    # copying between lines
    whole("copying", ("7x+12=4x+33", "3x+12=38", "3x=26"), 1, "copied arithmetic like-terms", "38", "33"),
    one("copying", "17y-5=12", "11y-5=12", "copied", "11y", "17y"),
    one("copying", "=3x^2-4x+7", "=3x^2-4x+1", "copied", "+1", "+7"),
    one("copying", "2a+3b-4c", "=2a+3b+4c", "copied", "+4c", "-4c"),
    one("copying", "5x^3-2x^2", "=5x^2-2x^2", "copied power-law", "5x^2", "5x^3"),
    one("copying", "4xy+2y", "=4x+2y", "letter-lost copied power-law", "4x", "4xy"),
    one("copying", "(x+8)(x-3)=0", "(x+6)(x-3)=0", "copied arithmetic", "+6 / (x+6)(x-3) / 6", "+8 / (x+8)(x-3) / 8"),
    # lost letters and powers, like terms
    one("lost", "x(x+5)", "=x^2+5", "letter-lost multiply-each-term power-law", "+5", "+5x"),
    one("lost", "3y^2+2y^2", "=5y", "power-law like-terms", "5y", "5y^2"),
    one("lost", "6t+4=11t", "6+4=11t", "letter-lost copied", "6", "6t"),
    one("lost", "a(a^2-1)", "=a^2-a", "power-law", "a^2", "a^3"),
    one("like terms", r"\frac{1}{2}x+\frac{1}{3}x", r"=\frac{1}{5}x", "like-terms fraction-sum", r"\frac{1}{5}x",
        r"\frac{5x}{6} / \frac{5}{6}x"),
    one("like terms", "2x-5-3x+1", "=-x-6", "like-terms", "-6", "-4"),
    one("like terms", "5a+2b-3c", "=5a+2b-3c-a", "extra-term", "-a", "0"),
    one("like terms", "7-2x+3-x", "=10-x", "like-terms", "-x", "-3x"),
    one("like terms", "z^2+4z-4z-16", "=z^2+8z-16", "like-terms", "+8z", "0"),
    # factorising
    one("factorising", "6x^2-x-2", "=(3x+2)(2x-1)", "factor-pair", "(3x+2)(2x-1)", "(3x-2)(2x+1)"),
    one("factorising", "x^2-16", "=(x-4)^2", "factor-pair", "(x-4)^2", "(x-4)(x+4) / (x+4)(x-4)"),
    one("factorising", "12a^2b-8ab", "=4ab(3a-8)", "divide-each-term arithmetic", "-8", "-2"),
    one("factorising", "x^2+5x", "=x(x^2+5)", "power-law divide-each-term", "x^2", "x"),
    one("factorising", "2x^2+7x+3", "=(2x+3)(x+1)", "factor-pair", "(2x+3)(x+1)", "(2x+1)(x+3) / (x+3)(2x+1)"),
    one("factorising", "ax+ay+bx+by", "=a(x+y)+b(x-y)", "sign-product copied", "-y", "+y"),
    one("factorising", "x^2-x-12=0", "(x-4)(x-3)=0", "sign-product factor-pair", "-3", "+3"),
    # differentiation and integration
    one("calculus", r"\frac{d}{dx}(x^3-4x)", "=3x^2-4x", "differentiation", "-4x", "-4"),
    one("calculus", "y=5x^4+7", r"\frac{dy}{dx}=20x^3+7", "differentiation", "+7", "0"),
    one("calculus", "y=6x^{-2}", r"\frac{dy}{dx}=-12x^{-1}", "differentiation", "-12x^{-1}", r"-\frac{12}{x^3}"),
    one("calculus", "f(x)=x^2-9x", "f'(x)=2x-9x", "differentiation", "-9x", "-9"),
    one("calculus", r"y=\sin 3x", r"\frac{dy}{dx}=\cos 3x", "differentiation", r"\cos 3x", r"3\cos(3x)"),
    one("calculus", r"y=\cos x+x", r"\frac{dy}{dx}=\sin x+1", "differentiation", r"\sin x", r"-\sin x"),
    one("calculus", "y=(3x-1)^4", r"\frac{dy}{dx}=4(3x-1)^3", "differentiation", "4(3x-1)^3", "12(3x-1)^3"),
    one("calculus", "y=e^{5x}", r"\frac{dy}{dx}=5xe^{5x}", "differentiation", "5xe^{5x}", "5e^{5x}"),
    one("calculus", r"y=\sqrt{x}", r"\frac{dy}{dx}=\frac{1}{2}\sqrt{x}", "differentiation", r"\frac{1}{2}\sqrt{x}",
        r"\frac{1}{2\sqrt{x}}"),
    one("calculus", r"\int_1^3 4x^3\,dx", "=[4x^4]_1^3", "integration", "4x^4", "x^4"),
    one("calculus", r"\int_0^2 (6x-1)\,dx", "=[3x^2-1]_0^2", "integration", "-1", "-x"),
    # two slips in one step: both are told, the first is marked
    one("two at once", "3(2a-5)-2(a+4)", "=6a-5-2a+8", "multiply-each-term sign-product", "-5", "-15"),
    one("two at once", "(x+2)(x-7)", "=x^2-9x+14", "sign-product like-terms product", "-9x", "-5x"),
    one("two at once", "4x-9=2x+5", "6x=-4", "sign-moved", "6x", "2x"),
    # decimals, units of a garden plan, letters other than x
    one("decimals", "0.4(p-5)", "=0.4p-5", "multiply-each-term", "-5", "-2"),
    one("decimals", "1.5w+0.5w", "=1.55w", "like-terms", "1.55w", "2w"),
    one("decimals", "0.2t=6", "t=1.2", "arithmetic product", "1.2", "30"),
    one("garden", "(w+2)(w+3)-w(w+1)", "=w^2+5w+6-w^2+w", "sign-bracket sign-product", "+w", "-w"),
    one("garden", "2(3d+4)+2d", "=6d+4+2d", "multiply-each-term", "+4", "+8"),
    # angles
    one("angles", r"1-\sin^2 t", r"=\cos t", "power-law copied other sign", r"\cos t", r"\cos^2 t"),
    one("angles", r"\sin(a+b)-1", r"=\sin a+\sin b-1", "function-of-sum", r"\sin a+\sin b",
        r"\sin a\cos b+\cos a\sin b"),
    # powers, logarithms, squares and bars undone
    one("undoing", "2^x=8", "x=4", "power-law", "4", "3"),
    one("undoing", "e^{2x}=5", "2x=5", "log-law", "5", r"\ln 5"),
    one("undoing", r"\ln x=3", "x=3e", "log-law", "3e", "e^3"),
    one("undoing", "x^2=49", "x=49", "power-law", "49", r"\pm7"),
    one("undoing", "2x^3=54", "x=27", "power-law", "27", "3"),
    one("undoing", "x^2=-16", "x=-4", "power-law", "x=-4", "x^2=-16"),
    one("undoing", r"A=\pi r^2", r"r=\frac{A}{\pi}", "power-law", r"\frac{A}{\pi}", r"\pm\sqrt{\frac{A}{\pi}}"),
    one("undoing", r"\frac{1}{f}=\frac{1}{u}+\frac{1}{v}", "f=u+v", "fraction-sum", "u+v", r"\frac{uv}{u+v}"),
    one("undoing", r"\frac{5}{x}=10", "x=2", "arithmetic", "2", r"\frac{1}{2}"),
    # formulas solved for another letter
    one("formulas", "v=u+at", r"a=\frac{v+u}{t}", "sign-moved", "+u", "-u"),
    one("formulas", "P=2(l+w)", "P-2l=w", "multiply-each-term", "w", "2w"),
    one("formulas", r"s=ut+\frac{1}{2}at^2", "2s=ut+at^2", "multiply-each-term", "ut", "2ut"),
    one("formulas", "2x+3y=12", "3y=12+2x", "sign-moved", "+2x", "-2x"),
    one("formulas", "3y=12-2x", "y=4-2x", "divide-each-term", "-2x", r"-\frac{2x}{3}"),
    # order of operations, squares on one side
    one("order", r"12-3\times 2k", "=18k", "operation-order", "18k", r"12-3\times2k"),
    one("completing", "x^2+6x+5=0", "(x+3)^2=-5+3", "arithmetic", "+3", "+9"),
    one("factorising", "4x^2-12x+9", "=(2x+3)^2", "factor-pair", "(2x+3)^2", "(2x-3)^2"),
)
