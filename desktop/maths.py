"""LaTeX as a picture: typeset to SVG, for the window, the marked picture and the summary page. No Qt."""

from __future__ import annotations

import contextlib
import re
import warnings
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from desktop.language import with_comma

__all__ = [
    "DOUBT", "Maths", "MathsError", "compact", "laid_out_of", "load_typesetter", "plain", "take_laid_out", "tidy",
    "typeset",
]

_SPACED_DIGITS = re.compile(r"(?<=[\d.])\s+(?=[\d.])")
_SPACED_FACTOR = re.compile(r"(?<=\d)\s+(?=[a-z](?![^\W\d_]))")
_VIEW_BOX = re.compile(r'viewBox="([-\d.e]+) ([-\d.e]+) ([-\d.e]+) ([-\d.e]+)"')
_WORD = re.compile(r"\\text\s*\{\s*([^{}]*?)\s*\}")
_SIGN = re.compile(r"((?:[=<>(\[{,]|\\(?:leq?|geq?|neq?|times|cdot|div|equiv|approx|Rightarrow))\s*)([-+])(?!\s*\})")
"""A sign that belongs to what follows it and takes no room of an operation: = -2, (-3)."""
_LAID_SIZE = 40.0
_LAID_COLOUR = "#010203"
DOUBT = "#040506"
r"""Colour that stands in LaTeX (\textcolor) for that of doubtful symbols."""
_MOST_LAID = 4096
LONGEST = 600
"""Characters of LaTeX that are typeset; no written line is longer."""


class MathsError(Exception):
    """This LaTeX cannot be typeset as it stands."""


@dataclass(frozen=True, slots=True)
class Maths:
    """A typeset line: SVG text, its size and the height above the baseline, in pixels at the size asked for."""

    svg: str
    width: float
    height: float
    ascent: float


def compact(latex: str) -> str:
    """The same LaTeX without the blanks inside numbers and with blanks around words, so that it sets well."""
    text = _SPACED_DIGITS.sub("", latex)
    text = _WORD.sub(lambda m: rf"\text{{ {m.group(1)} }}", text)
    return text.strip()


def load_typesetter() -> None:
    """Load the typesetter and its font, which takes a while the first time."""
    typeset("x")


def tidy(latex: str) -> str:
    """The same LaTeX as one would type it: no blanks but those that end a command's name, no needless braces."""
    text = re.sub(r"\s+", " ", latex.strip())
    words: list[str] = []

    def keep(match: re.Match[str]) -> str:
        words.append(match.group(1))
        return f"\0{len(words) - 1}\0"

    text = _WORD.sub(keep, text)
    text = re.sub(r"(\\[a-zA-Z]+) (?=[a-zA-Z])", "\\1\1", text).replace(" ", "").replace("\1", " ")
    text = re.sub(r"([\^_])\{(\w)\}(?!\d)", r"\1\2", text)
    return re.sub("\0(\\d+)\0", lambda m: rf"\text{{ {words[int(m.group(1))]} }}", text)


def typeset(latex: str, *, size: float = 20.0, colour: str = "#000000", doubt: str = "") -> Maths:
    """Typeset a line.

    Args:
        latex: the line, with or without a leading relation sign.
        size: height of the type in pixels.
        colour: #rrggbb, or a colour's name in CSS.
        doubt: the colour of symbols marked as doubtful; that of the others when left out.
    Raises:
        MathsError: the LaTeX is incomplete or not known to the typesetter.
    """
    laid = _laid_out(_key(latex))
    scale = size / _LAID_SIZE
    width, height = laid.width * scale, laid.height * scale
    svg = laid.svg.replace(_LAID_COLOUR, colour).replace(DOUBT, doubt or colour)
    svg = svg.replace('fill="black"', f'fill="{colour}"')  # lines under symbols
    svg = re.sub(r'width="[^"]*" height="[^"]*"', f'width="{width:.2f}" height="{height:.2f}"', svg, count=1)
    return Maths(svg=svg, width=width, height=height, ascent=laid.ascent * scale)


def laid_out_of(readings: Iterable[str]) -> dict[str, Maths]:
    """Lay readings out, as they are and as one would type them; those that cannot be typeset are left out.

    What comes back goes to `take_laid_out` in the process that shows them.
    """
    laid: dict[str, Maths] = {}
    for latex in readings:
        for text in (_key(latex), _key(tidy(latex))):
            with contextlib.suppress(MathsError):
                laid[text] = _laid_out(text)
    return laid


def take_laid_out(laid: Mapping[str, Maths]) -> None:
    """Know how lines are laid out that another process has laid out."""
    for text, maths in laid.items():
        _remember(text, maths)


def _key(latex: str) -> str:
    return _SIGN.sub(r"\1{\2}", with_comma(compact(latex), "{,}"))


_LAID: dict[str, Maths] = {}
"""Lines that were laid out, by their text: a memory like that of `lru_cache`, which another process can fill."""


def _remember(text: str, maths: Maths) -> None:
    while len(_LAID) >= _MOST_LAID:
        _LAID.pop(next(iter(_LAID)), None)
    _LAID[text] = maths


def _laid_out(text: str) -> Maths:
    """Lay a line out once; sizes and colours come from this."""
    maths = _LAID.get(text)
    if maths is None:
        maths = _lay_out(text)
        _remember(text, maths)
    return maths


def _lay_out(text: str) -> Maths:
    if not text:
        raise MathsError("There is nothing to show yet.")
    if len(text) > LONGEST:
        raise MathsError("This line is too long to show. Split it into lines.")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the typesetter finds its font by a call that Python has deprecated
        import ziamath

    ziamath.config.svg2 = False
    try:
        svg = ziamath.Latex(text, size=_LAID_SIZE, color=_LAID_COLOUR).svg()
    except RecursionError as exc:
        raise MathsError("This line is nested too deeply to show.") from exc
    except Exception as exc:  # the typesetter raises many kinds for LaTeX that is still being typed
        raise MathsError("This LaTeX is not complete yet.") from exc
    view = _VIEW_BOX.search(svg)
    if view is None:
        raise MathsError("This LaTeX is not complete yet.")
    _, top, width, height = (float(v) for v in view.groups())
    if width <= 0 or height <= 0:
        raise MathsError("There is nothing to show yet.")
    return Maths(svg=svg, width=width, height=height, ascent=-top)


_SUPERSCRIPTS = str.maketrans("0123456789n", "⁰¹²³⁴⁵⁶⁷⁸⁹ⁿ")
_PLAIN = (
    (re.compile(r"\\text\s*\{\s*([^{}]*?)\s*\}"), r" \1 "),
    (re.compile(r"\\(?:left|right|,|;|!|:)(?![a-zA-Z])"), ""),
    (re.compile(r"\\sqrt\s*\{([^{}]*)\}"), r"√(\1)"),
    (re.compile(r"√\((\w+)\)"), r"√\1"),
    (re.compile(r"\\[dt]?frac\s*\{([^{}]*)\}\s*\{([^{}]*)\}"), r"(\1)/(\2)"),
    (re.compile(r"\\[dt]?frac\s*(\w)\s*(\w)"), r"\1/\2"),
    (re.compile(r"\(([\w.]+)\)/"), r"\1/"),
    (re.compile(r"/\(([\w.])\)"), r"/\1"),
    (re.compile(r"\^\s*\{\s*([0-9n])\s*\}"), r"^\1"),
    (re.compile(r"\^\s*([0-9n])"), lambda m: m.group(1).translate(_SUPERSCRIPTS)),
    (re.compile(r"(?<![\w)])-(?=[\s\w(\\√])|(?<=[\w)]) - (?=[\w(\\√])|(?<=[\w)⁰¹²³⁴-⁹])-(?=\d|\w\b|[(\\√])"),
     lambda m: m.group(0).replace("-", "−")),
)  # fmt: skip
_SIGNS = {
    "times": "×", "cdot": "·", "div": "÷", "pm": "±", "mp": "∓", "le": "≤", "leq": "≤", "ge": "≥", "geq": "≥",
    "ne": "≠", "neq": "≠", "approx": "≈", "equiv": "≡", "infty": "∞", "therefore": "∴", "because": "∵", "pi": "π",
    "theta": "θ", "alpha": "α", "beta": "β", "lambda": "λ", "mu": "μ", "Delta": "Δ", "Rightarrow": "⇒",
    "rightarrow": "→", "sin": "sin ", "cos": "cos ", "tan": "tan ", "log": "log ", "ln": "ln ",
}  # fmt: skip
_COMMAND = re.compile(r"\\([a-zA-Z]+)")


def plain(sentence: str) -> str:
    """A sentence with the LaTeX in it written in ordinary signs: powers raised, minus signs for hyphens."""
    text = _SPACED_FACTOR.sub("", _SPACED_DIGITS.sub("", sentence))
    for pattern, instead in _PLAIN:
        text = pattern.sub(instead, text)
    return with_comma(_COMMAND.sub(lambda m: _SIGNS.get(m.group(1), m.group(0)), text))
