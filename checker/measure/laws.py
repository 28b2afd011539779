"""Laws of school and A-level mathematics by class, in whose places random expressions are put."""

from __future__ import annotations

from random import Random

__all__ = ["LAWS", "filled"]

# <u>, <v> are random expressions in x and y, <p> one that is positive wherever it is used, <l> a linear one in x,
# <n>, <m> whole numbers from 2, <q> a small one from 1, <b> a base from 2. Common rules of the trade, no source.
LAWS: dict[str, tuple[tuple[str, str], ...]] = {
    "radicals": (
        ("\\sqrt{<u>}\\sqrt{<v>}", "\\sqrt{(<u>)(<v>)}"), ("\\sqrt{<n>^2<m>}", "<n>\\sqrt{<m>}"),
        ("\\frac{\\sqrt{<u>}}{\\sqrt{<v>}}", "\\sqrt{\\frac{<u>}{<v>}}"),
        ("\\frac{<n>}{\\sqrt{<m>}}", "\\frac{<n>\\sqrt{<m>}}{<m>}"),
        ("(\\sqrt{<u>}+<n>)^2", "<u>+<n>\\times 2\\sqrt{<u>}+<n>^2"), ("\\sqrt[3]{(<u>)^3}", "<u>"),
        ("\\frac{1}{\\sqrt{<u>}-\\sqrt{<v>}}", "\\frac{\\sqrt{<u>}+\\sqrt{<v>}}{<u>-(<v>)}"),
        ("\\sqrt{(<u>)^2}", "<u>"), ("(\\sqrt{<n>}+\\sqrt{<m>})(\\sqrt{<n>}-\\sqrt{<m>})", "<n>-<m>"),
        ("\\sqrt{<u>}^2", "<u>"),
    ),
    "rational exponents": (
        ("x^{\\frac{<n>}{<m>}}", "\\sqrt[<m>]{x^{<n>}}"),
        ("x^{\\frac1{<n>}}x^{\\frac1{<m>}}", "x^{\\frac{1}{<n>}+\\frac{1}{<m>}}"),
        ("(x^{\\frac1{<n>}})^{<m>}", "x^{\\frac{<m>}{<n>}}"), ("(<u>)^{-\\frac12}", "\\frac{1}{\\sqrt{<u>}}"),
        ("(<u>)^{\\frac32}", "(<u>)\\sqrt{<u>}"), ("(x^{<n>})^{\\frac12}", "x^{\\frac{<n>}{2}}"),
        ("(xy)^{\\frac1{<n>}}", "x^{\\frac1{<n>}}y^{\\frac1{<n>}}"),
        ("\\frac{x^{<n>}}{\\sqrt{x}}", "x^{<n>-\\frac12}"),
    ),
    "absolute values": (
        ("|(<u>)(<v>)|", "|<u>||<v>|"), ("|<u>|^2", "(<u>)^2"), ("|-(<u>)|", "|<u>|"), ("\\sqrt{(<u>)^2}", "|<u>|"),
        ("|<u>+<v>|", "|<u>|+|<v>|"), ("|<u>-(<v>)|", "|<v>-(<u>)|"),
        ("\\left|\\frac{<u>}{<n>}\\right|", "\\frac{|<u>|}{<n>}"), ("|x|", "x"), ("||<u>||", "|<u>|"),
    ),
    "logarithms": (
        ("\\ln((<u>)(<v>))", "\\ln(<u>)+\\ln(<v>)"), ("\\ln\\frac{<u>}{<v>}", "\\ln(<u>)-\\ln(<v>)"),
        ("\\log_{<b>}(<u>)^{<n>}", "<n>\\log_{<b>}(<u>)"), ("\\log_{<b>}(<b>^{<n>}x)", "<n>+\\log_{<b>}x"),
        ("\\log_{<b>}x", "\\frac{\\ln x}{\\ln <b>}"), ("\\ln\\sqrt{<u>}", "\\frac12\\ln(<u>)"),
        ("\\ln\\frac{1}{<u>}", "-\\ln(<u>)"), ("\\ln(<u>+<v>)", "\\ln(<u>)+\\ln(<v>)"),
        ("\\log(<b>x)", "\\log<b>+\\log x"), ("<n>\\ln x-<m>\\ln y", "\\ln\\frac{x^{<n>}}{y^{<m>}}"),
        ("e^{<n>\\ln x}", "x^{<n>}"), ("\\ln e^{<u>}", "<u>"), ("<b>^{\\log_{<b>}x}", "x"),
        ("\\log_x y", "\\frac{1}{\\log_y x}"),
    ),
    "exponentials": (
        ("e^{<u>}e^{<v>}", "e^{<u>+<v>}"), ("(e^{<u>})^{<n>}", "e^{<n>(<u>)}"),
        ("\\frac{e^{<u>}}{e^{<v>}}", "e^{<u>-(<v>)}"), ("<b>^{<n>x}", "(<b>^{<n>})^x"),
        ("<b>^{x+<n>}", "<b>^{<n>}\\times <b>^x"), ("<b>^{x}<m>^{x}", "(<b>\\times <m>)^{x}"),
        ("(e^x+e^{-x})^2", "e^{2x}+2+e^{-2x}"), ("e^{<u>+<v>}", "e^{<u>}+e^{<v>}"), ("a^{-<n>}", "\\frac{1}{a^{<n>}}"),
        ("\\frac{e^{2x}-1}{e^x-1}", "e^x+1"), ("4^x-<n>\\times 2^x", "2^x(2^x-<n>)"),
    ),
    "trigonometry": (
        ("\\sin(<u>+<v>)", "\\sin(<u>)\\cos(<v>)+\\cos(<u>)\\sin(<v>)"), ("\\sin^2(<u>)+\\cos^2(<u>)", "1"),
        ("\\cos(2(<u>))", "1-2\\sin^2(<u>)"), ("\\tan(<l>)", "\\frac{\\sin(<l>)}{\\cos(<l>)}"),
        ("\\sin <n>x", "<n>\\sin x"), ("1+\\tan^2(<u>)", "\\sec^2(<u>)"), ("1+\\cot^2 x", "\\cosec^2 x"),
        ("\\cos(<u>-(<v>))", "\\cos(<u>)\\cos(<v>)+\\sin(<u>)\\sin(<v>)"), ("\\frac{1-\\cos 2x}{\\sin 2x}", "\\tan x"),
        ("\\sin x+\\sin y", "2\\sin\\frac{x+y}{2}\\cos\\frac{x-y}{2}"),
        ("\\cos x-\\cos y", "-2\\sin\\frac{x+y}{2}\\sin\\frac{x-y}{2}"), ("\\sin 3x", "3\\sin x-4\\sin^3 x"),
        ("\\tan 2x", "\\frac{2\\tan x}{1-\\tan^2 x}"), ("\\cos(\\frac{\\pi}{2}-x)", "\\sin x"),
        ("\\sin(180^{\\circ}-x)", "\\sin x"), ("\\frac{\\sin x}{1+\\cos x}+\\frac{1+\\cos x}{\\sin x}", "2\\cosec x"),
        ("\\sec x-\\cos x", "\\sin x\\tan x"), ("\\cos^4 x-\\sin^4 x", "\\cos 2x"),
        ("\\sin <n>x\\cos <m>x", "\\frac12(\\sin(<n>x+<m>x)+\\sin(<n>x-<m>x))"),
        ("\\frac{1}{1-\\sin x}", "\\sec^2 x+\\sec x\\tan x"),
        ("<n>\\sin x+<n>\\cos x", "<n>\\sqrt2\\sin(x+\\frac{\\pi}{4})"),
    ),
    "inverse functions": (
        ("\\sin(\\arcsin x)", "x"), ("\\cos(\\arcsin x)", "\\sqrt{1-x^2}"),
        ("\\arcsin x+\\arccos x", "\\frac{\\pi}{2}"), ("\\tan(\\arctan <n>x)", "<n>x"),
        ("\\arctan(-x)", "-\\arctan x"), ("\\sin(\\arctan x)", "\\frac{x}{\\sqrt{1+x^2}}"), ("\\arcsin(\\sin x)", "x"),
        ("\\sin^{-1}\\frac12", "\\frac{\\pi}{6}"), ("\\arctan x+\\arctan\\frac1x", "\\frac{\\pi}{2}"),
        ("\\sinh^{-1}x", "\\ln(x+\\sqrt{x^2+1})"), ("\\operatorname{artanh}x", "\\frac12\\ln\\frac{1+x}{1-x}"),
    ),
    "hyperbolic functions": (
        ("\\cosh^2(<l>)-\\sinh^2(<l>)", "1"), ("\\sinh 2x", "2\\sinh x\\cosh x"),
        ("\\cosh x", "\\frac{e^x+e^{-x}}{2}"), ("\\tanh x", "\\frac{e^{2x}-1}{e^{2x}+1}"),
        ("\\cosh 2x", "2\\cosh^2 x-1"), ("1-\\tanh^2 x", "\\operatorname{sech}^2 x"),
        ("\\sinh(x+y)", "\\sinh x\\cosh y+\\cosh x\\sinh y"), ("\\coth x", "\\frac{\\cosh x}{\\sinh x}"),
        ("\\sinh(<l>)", "-\\sinh(-(<l>))"),
    ),
    "factorials and binomials": (
        ("(n+1)!", "(n+1)n!"), ("\\frac{n!}{(n-2)!}", "n(n-1)"), ("\\binom{n}{2}", "\\frac{n(n-1)}{2}"),
        ("\\binom{n}{r}", "\\frac{n!}{r!(n-r)!}"), ("\\binom{n}{r}+\\binom{n}{r-1}", "\\binom{n+1}{r}"),
        ("\\binom{n}{r}", "\\binom{n}{n-r}"), ("<n>!+(<n>+1)!", "(<n>+2)<n>!"), ("\\frac{(n+2)!}{n!}", "n^2+3n+2"),
        ("{}^{n}C_{3}", "\\frac{n(n-1)(n-2)}{6}"), ("(2n)!", "2n!"), ("n!(n+1)+n!", "n!(n+2)"),
    ),
    "derivatives": (
        ("\\frac{d}{dx}(x^{<n>}+<m>x)", "<n>x^{<n>-1}+<m>"), ("\\frac{d}{dx}\\sin(<l>)", "<d>\\cos(<l>)"),
        ("\\frac{d}{dx}e^{<l>}", "<d>e^{<l>}"), ("\\frac{d}{dx}(x^{<n>}\\ln x)", "<n>x^{<n>-1}\\ln x+x^{<n>-1}"),
        ("\\frac{d}{dx}(<l>)^{<n>}", "<n>\\times <d>(<l>)^{<n>-1}"),
        ("\\frac{d}{dx}\\left(\\frac{x}{x+<n>}\\right)", "\\frac{<n>}{(x+<n>)^2}"),
        ("\\frac{d}{dx}\\tan x", "1+\\tan^2 x"), ("\\frac{d^2}{dx^2}(x^{<n>})", "<n>(<n>-1)x^{<n>-2}"),
        ("\\frac{d}{dx}\\sqrt{<l>}", "\\frac{<d>}{2\\sqrt{<l>}}"),
        ("\\frac{d}{dx}\\arctan <n>x", "\\frac{<n>}{1+<n>^2x^2}"), ("\\frac{d}{dx}<b>^x", "<b>^x\\ln <b>"),
        ("\\frac{d}{dx}\\sin^{<n>}x", "<n>\\sin^{<n>-1}x\\cos x"), ("\\frac{d}{dx}(x\\cos x)", "\\cos x+x\\sin x"),
        ("\\frac{d}{dx}\\ln(x^2+<n>)", "\\frac{2x}{x^2+<n>}"), ("\\frac{d}{dx}\\sec x", "\\sec x\\tan x"),
    ),
    "integrals without bounds": (
        ("\\int x^{<n>}dx", "\\frac{x^{<n>+1}}{<n>+1}+c"), ("\\int(<l>)^{<n>}dx", "\\frac{(<l>)^{<n>+1}}{<d>(<n>+1)}"),
        ("\\int e^{<l>}dx", "\\frac{e^{<l>}}{<d>}+c"), ("\\int\\cos(<l>)dx", "\\frac{1}{<d>}\\sin(<l>)+c"),
        ("\\int\\sin(<l>)dx", "\\frac{1}{<d>}\\cos(<l>)+c"), ("\\int\\frac{<n>}{x}dx", "<n>\\ln|x|+c"),
        ("\\int x e^x dx", "xe^x-\\int e^x dx"), ("\\int\\frac{1}{<l>}dx", "\\frac{1}{<d>}\\ln|<l>|+c"),
        ("\\int\\ln x\\,dx", "x\\ln x-x"), ("\\int\\sec^2 x\\,dx", "\\tan x+c"),
        ("\\int\\frac{2x}{x^2+<n>}dx", "\\ln(x^2+<n>)+c"),
        ("\\int x\\sqrt{x^2+<n>}dx", "\\frac13(x^2+<n>)^{\\frac32}+c"),
        ("\\int(x+<n>)(x-<m>)dx", "\\int(x^2+(<n>-<m>)x-<n><m>)dx"), ("\\int\\frac{1}{x^2}dx", "-\\frac1x+c"),
        ("\\int\\sin^2x\\,dx", "\\frac{x}{2}-\\frac{\\sin 2x}{4}+c"),
    ),
    "integrals between bounds": (
        ("\\int_0^{<n>}x^2dx", "\\frac{<n>^3}{3}"),
        ("\\int_{<n>}^{<n>+1}(<l>)dx", "\\left[\\frac{(<l>)^2}{2\\times <d>}\\right]_{<n>}^{<n>+1}"),
        ("\\int_0^{\\pi}\\sin x\\,dx", "2"), ("\\int_1^{<n>}\\frac1x dx", "\\ln <n>"), ("\\int_0^1 xe^x dx", "1"),
        ("\\int_0^{\\frac{\\pi}{4}}\\tan x\\,dx", "\\frac12\\ln 2"),
        ("\\int_0^1\\frac{<n>}{1+x^2}dx", "\\frac{<n>\\pi}{4}"),
        ("\\int_0^{<n>}\\sqrt{x}dx", "\\frac{2<n>\\sqrt{<n>}}{3}"),
        ("\\int_0^a x^{<n>}dx", "\\frac{a^{<n>+1}}{<n>+1}"),
        ("\\int_0^1(x^2+<n>)^2dx", "\\frac15+\\frac{2<n>}{3}+<n>^2"),
        ("\\int_1^{<n>}\\ln x\\,dx", "<n>\\ln <n>-<n>+1"), ("\\int_0^{\\frac{\\pi}{2}}\\sin^3x\\,dx", "\\frac23"),
        ("\\int_0^{\\infty}e^{-<n>x}dx", "\\frac{1}{<n>}"), ("\\int_2^3\\frac{1}{x^2-1}dx", "\\frac12\\ln\\frac32"),
        ("\\int_0^1\\frac{x}{x+1}dx", "1-\\ln 2"),
    ),
    "sums": (
        ("\\sum_{r=1}^{n}r", "\\frac{n(n+1)}{2}"), ("\\sum_{r=1}^{n}(<n>r+<m>)", "\\frac{<n>n(n+1)}{2}+<m>n"),
        ("\\sum_{r=1}^{n}r^2", "\\frac16n(n+1)(2n+1)"), ("\\sum_{r=1}^{<n>}r^3", "\\frac{<n>^2(<n>+1)^2}{4}"),
        ("\\sum_{r=0}^{n}<b>^r", "\\frac{<b>^{n+1}-1}{<b>-1}"), ("\\sum_{k=1}^{<n>}k", "\\frac{<n>(<n>+1)}{2}"),
        ("\\sum_{r=0}^{\\infty}\\frac{1}{<b>^r}", "\\frac{<b>}{<b>-1}"),
        ("\\sum_{r=1}^{n}(r^2+r)", "\\frac{n(n+1)(n+2)}{3}"),
        ("\\sum_{r=<q>}^{<q>+2}x^r", "x^{<q>}+x^{<q>+1}+x^{<q>+2}"),
    ),
    "limits": (
        ("\\lim_{h\\to 0}\\frac{(x+h)^{<n>}-x^{<n>}}{h}", "<n>x^{<n>-1}"),
        ("\\lim_{x\\to <n>}\\frac{x^2-<n>^2}{x-<n>}", "2\\times <n>"),
        ("\\lim_{x\\to\\infty}\\frac{<n>x+1}{<m>x-3}", "\\frac{<n>}{<m>}"),
        ("\\lim_{x\\to 0}\\frac{\\sin <n>x}{x}", "<n>"), ("\\lim_{x\\to 0}\\frac{e^{<n>x}-1}{x}", "<n>"),
        ("\\lim_{x\\to <n>}(x^2+x)", "<n>^2+<n>"),
    ),
    "recurring decimals, degrees": (
        ("0.\\dot{<q>}", "\\frac{<q>}{9}"), ("0.\\dot{1}\\dot{<q>}", "\\frac{1<q>}{99}"),
        ("\\sin 30^{\\circ}", "\\frac12"), ("\\tan 60^{\\circ}", "\\sqrt3"),
        ("\\cos 45^{\\circ}", "\\frac{\\sqrt2}{2}"), ("180^{\\circ}", "\\pi"),
        ("\\sin 75^{\\circ}", "\\frac{\\sqrt6+\\sqrt2}{4}"), ("<n>0\\%", "\\frac{<n>}{10}"),
    ),
    "complex numbers": (
        ("(<n>+<m>i)(<n>-<m>i)", "<n>^2+<m>^2"), ("(<n>+i)^2", "<n>^2-1+2<n>i"),
        ("\\frac{1}{<n>+<m>i}", "\\frac{<n>-<m>i}{<n>^2+<m>^2}"), ("i^3", "-i"), ("e^{ix}", "\\cos x+i\\sin x"),
        ("(\\cos x+i\\sin x)^{<n>}", "\\cos <n>x+i\\sin <n>x"), ("\\sqrt{-<n>^2}", "<n>i"),
        ("|<n>+<m>i|", "\\sqrt{<n>^2+<m>^2}"), ("(x+<n>i)(x-<n>i)", "x^2+<n>^2"), ("e^{i\\pi}", "-1"),
    ),
}
_INNER = ("x", "y", "2x", "x+1", "x-2", "3-x", "x+y", "x-2y", "xy", "x^2+1", "x^2", "2x+3y", "\\frac{x}{2}",
          "4x^2", "5")


def filled(law: tuple[str, str], draws: Random) -> tuple[str, str]:
    """Both sides with the same random parts in the places of a law."""
    slope, ahead = draws.randint(2, 6), draws.randint(-5, 7)
    linear = f"{slope}x" + (f"{ahead:+d}" if ahead else "")
    parts = {
        "<u>": draws.choice(_INNER), "<v>": draws.choice(_INNER), "<l>": linear, "<d>": str(slope),
        "<n>": str(draws.randint(2, 6)), "<m>": str(draws.randint(2, 7)), "<q>": str(draws.randint(2, 8)),
        "<b>": draws.choice(("2", "3", "5", "10")),
    }
    sides = []
    for text in law:
        for mark, part in parts.items():
            text = text.replace(mark, part)
        sides.append(text)
    return sides[0], sides[1]
