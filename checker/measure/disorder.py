"""Lines that no pupil writes: random tokens, deep nesting, towers of powers, unbalanced and mutated lines."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from random import Random

__all__ = ["disordered_lines"]

_TOKENS = (
    *"0123456789abcxyznkfgeiπ+-=<>()[]{}^_|!,.;:/*'%&~", "\\frac", "\\sqrt", "\\times", "\\div", "\\cdot", "\\pm",
    "\\mp", "\\left(", "\\right)", "\\left|", "\\right|", "\\sin", "\\cos", "\\tan", "\\ln", "\\log_", "\\exp", "\\pi",
    "\\theta", "\\le", "\\ge", "\\ne", "\\approx", "\\equiv", "\\Rightarrow", "\\therefore", "\\binom", "\\text{or}",
    "\\text{", "\\int", "\\int_", "\\sum", "\\sum_{", "\\lim", "\\lim_{x\\to", "\\frac{d}{dx}", "dx", "\\dot",
    "\\overline", "^{\\circ}", "\\infty", "\\quad", "\\\\", "\\", "\\operatorname{", "{,}", "½", "²", "√", "≤",
    "\\mathrm{", "\\sinh",
    "\\arctan", "^{-1}", "\\max(", "\\gcd(", "\\tag{", "\\boxed{", " or ", " and ", "let ", "(2 d.p.)",
    "\\begin{cases}", "\\end{cases}", "\\cosec", "\\sqrt[3]", "\\left[", "\\right]", "|x|", "2\\frac12", "x^2",
    "-3x", "=0", "\\alpha_1",
)
_HUGE = (
    "9^{9^{9}}", "9^{9^{9^{9^{9}}}}", "10^{100000}", "2^{2^{100}}", "1000000!", "99999!!", "0.1^{99999}",
    "\\binom{1000000}{500000}", "\\sqrt[99999]{2}", "e^{e^{e^{9}}}", "x^{99999}", "(x+y+z+w)^{500}", "(1+x)^{1999}",
    "\\log_{2}(2^{99999})", "\\sin(10^{50})", "\\tan(10^{1000})", "1.000001^{1000000}", "99999999999999999999^{60}",
    "\\frac{1}{0}", "0^0", "\\frac{x}{x-x}", "\\ln 0", "\\sqrt{-1}", "\\frac{1}{\\frac{0}{1}}", "(-1)^{\\frac12}",
    "\\int_0^{1000000}x^{900}dx", "\\sum_{k=1}^{10^{9}}k^{20}", "\\sum_{n=1}^{\\infty}\\frac{1}{n^2}", "x^{-2000}",
    "\\frac{d}{dx}x^{x^{x^{x}}}", "\\lim_{x\\to 0}\\frac{\\sin(x^{99})}{x^{98}}", "x^{\\frac{997}{991}}",
    "(a+b+c)^{40}", "(x^2+y)^{99}(x-y)^{99}", "\\frac{1}{(x+1)^{90}}+\\frac{1}{(x+2)^{90}}",
    "\\sqrt[7]{x^5+\\sqrt[5]{y}}",
)
_CHARACTERS = "\x00\x01\x1b\x7f\u200b\u202e\ufeff\ud7ff漢字🙂éßÅ∑∫√π½²₃′″‖⟨⟩\n\r\t\"'`$#@&"
_GROUPS = (("(", ")"), ("{", "}"), ("\\frac{", "}{2}"), ("\\sqrt{", "}"), ("\\left|", "\\right|"), ("\\sin(", ")"),
           ("x^{", "}"), ("-(", ")"), ("\\ln(", ")"), ("\\frac{1}{1+", "}"), ("2(", ")^2"), ("[", "]"), ("e^{", "}"),
           ("\\sqrt[3]{", "}"), ("\\int ", "dx"), ("\\frac{d}{dx}(", ")"))
_LEAVES = ("x", "y", "1", "2", "0", "3x", "x^2", "x+1", "a-b", "\\pi", "i", "e", "0.5", "x=1", "")
_PIECES = (
    "(", "x+", "3x^2-", "\\frac{1}{x+", "\\sqrt{", "2^{", "a_{", "-", "((x+1)", "(x+1)(x-2)", "\\sin x+", "|x-1|+",
    "x=1 or ", "+\\frac{1}{x}", "+\\sqrt{x}", "\\times 99^{64}", "+x^2y", "+y_1z_2",
)
_LONGEST = 10_000


def disordered_lines(count: int, draws: Random, real: Sequence[str]) -> Iterator[str]:
    """So many lines of every kind of disorder in turn.

    Args:
        count: how many.
        draws: where the chance comes from.
        real: lines of real workings that are mutated; may be empty.
    """
    for at in range(count):
        makers: tuple[Callable[[Random], str], ...] = (
            _soup, _nested, lambda chance: _mutated(chance, real), _large, _soup, _characters,
            lambda chance: _mutated(chance, real), _expression,
        )
        yield _long(draws) if at % 100 == 99 else makers[at % len(makers)](draws)


def _soup(draws: Random) -> str:
    return draws.choice(("", " ")).join(draws.choices(_TOKENS, k=draws.randint(1, 60)))


def _nested(draws: Random) -> str:
    text = draws.choice(_LEAVES)
    for _ in range(draws.choice((3, 10, 30, 60, 400))):
        opening, closing = draws.choice(_GROUPS)
        text = opening + text + (closing if draws.random() < 0.99 else "")
        if len(text) > _LONGEST:
            break
    return text


def _expression(draws: Random) -> str:
    """A long expression in good order, with an equals sign or two."""
    parts = []
    for _ in range(draws.randint(1, 12)):
        opening, closing = draws.choice(_GROUPS)
        inner = draws.choice(_LEAVES) or "z"
        if draws.random() < 0.4:
            second, last = draws.choice(_GROUPS)
            inner = second + inner + last
        parts.append(draws.choice(("+", "-", "", "\\times ", "=", "/")) + opening + inner + closing)
    return "".join(parts).lstrip("+/")


def _large(draws: Random) -> str:
    text = draws.choice(_HUGE)
    for _ in range(draws.randint(0, 3)):
        text += draws.choice(("+", "-", "\\times ", "/", "=", "^", "", "<", " or ")) + draws.choice((*_HUGE, *_LEAVES))
    return text


def _characters(draws: Random) -> str:
    pool = _CHARACTERS + "".join(one for one in _TOKENS if len(one) == 1)
    return "".join(draws.choices(pool, k=draws.randint(1, 80)))


def _long(draws: Random) -> str:
    """About ten thousand characters of one piece, or of several."""
    pieces = draws.choices((*_TOKENS, *_LEAVES, *_PIECES), k=draws.randint(1, 3))
    text = "".join(pieces) or "x"
    return (text * (_LONGEST // len(text) + 1))[:_LONGEST]


def _mutated(draws: Random, real: Sequence[str]) -> str:
    text = draws.choice(real) if real else "3(2x-1)^2=\\frac{x}{4}+7"
    for _ in range(draws.randint(1, 4)):
        place, end = sorted((draws.randint(0, len(text)), draws.randint(0, len(text))))
        match draws.randrange(6):
            case 0:
                text = text[:place] + text[min(end, place + 3):]
            case 1:
                text = text[:place] + draws.choice(_TOKENS) + text[place:]
            case 2:
                text = text[:place] + text[place:end] * 2 + text[end:]
            case 3:
                text = text[:place] + draws.choice(_HUGE) + text[end:]
            case 4:
                text = text[:place] + text[place:end][::-1] + text[end:]
            case _:
                text = text[:place] + str(draws.randint(0, 10**draws.randint(1, 30))) + text[place:]
    return text[:_LONGEST]
