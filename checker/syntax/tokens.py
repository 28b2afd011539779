"""LaTeX text cut into tokens that know where they stood in the line as given."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from checker.errors import ParseError

__all__ = ["CLOSERS", "FUNCTIONS", "MAX_LENGTH", "Token", "ends_of", "tokenize"]

MAX_LENGTH = 20_000  # characters in a line
CLOSERS = {"(": ")", "[": "]", "\\{": "\\}", "|": "|"}

FUNCTIONS = frozenset({
    "sin", "cos", "tan", "cot", "sec", "csc", "cosec", "arcsin", "arccos", "arctan", "sinh", "cosh", "tanh",
    "sech", "csch", "cosech", "coth", "arcsec", "arccsc", "arccot", "arcsinh", "arccosh", "arctanh", "arsinh", "arcosh",
    "artanh", "ln", "log", "lg", "exp", "max", "min", "gcd", "lcm",
})
GREEK = frozenset({
    "alpha", "beta", "gamma", "delta", "epsilon", "varepsilon", "zeta", "eta", "theta", "vartheta", "iota", "kappa",
    "lambda", "mu", "nu", "xi", "pi", "rho", "sigma", "tau", "upsilon", "phi", "varphi", "chi", "psi", "omega",
    "Gamma", "Delta", "Theta", "Lambda", "Xi", "Pi", "Sigma", "Phi", "Psi", "Omega", "ell", "infty",
})
_SIGNS = {
    "times": "\\times", "cdot": "\\cdot", "ast": "\\times", "div": "\\div", "pm": "±", "mp": "∓", "bullet": "\\cdot",
}
_RELATIONS = {
    "le": "\\le", "leq": "\\le", "leqslant": "\\le", "ge": "\\ge", "geq": "\\ge", "geqslant": "\\ge", "lt": "<",
    "gt": ">", "ne": "\\ne", "neq": "\\ne", "approx": "\\approx", "simeq": "\\approx", "equiv": "\\equiv",
}
_LINKS = frozenset({
    "Rightarrow", "implies", "iff", "Leftrightarrow", "therefore", "because", "rightarrow", "to", "Longrightarrow",
    "Longleftrightarrow", "longrightarrow",
})
_SKIPPED = frozenset({
    "displaystyle", "textstyle", "scriptstyle", "limits", "nolimits", "big", "Big", "bigg", "Bigg", "bigl", "bigr",
    "Bigl", "Bigr", "biggl", "biggr", "Biggl", "Biggr", "boldsymbol", "strut", "thinspace", "medspace", "hfill",
    "nonumber", "notag", "phantomsection", "ensuremath", "mathrm", "mathit", "mathbf", "mathsf", "rm", "bf", "it",
    "mathord", "mathbin", "mathrel", "middle", "nobreak", "allowbreak", "hspace", "enspace",
})
_TEXTS = frozenset({"text", "textrm", "textit", "textbf", "mbox", "hbox", "textnormal", "textsf", "mathstrut"})
_UNICODE = {
    "−": ("sign", "-"), "–": ("sign", "-"), "—": ("sign", "-"), "×": ("sign", "\\times"), "·": ("sign", "\\cdot"),
    "⋅": ("sign", "\\cdot"), "∙": ("sign", "\\cdot"), "÷": ("sign", "\\div"), "±": ("sign", "±"),
    "∓": ("sign", "∓"), "∗": ("sign", "\\times"), "≤": ("relation", "\\le"), "⩽": ("relation", "\\le"),
    "≥": ("relation", "\\ge"), "⩾": ("relation", "\\ge"), "≠": ("relation", "\\ne"), "≈": ("relation", "\\approx"),
    "≡": ("relation", "\\equiv"), "⇒": ("link", "\\Rightarrow"), "→": ("link", "\\rightarrow"),
    "⟹": ("link", "\\implies"), "⇔": ("link", "\\iff"), "⟺": ("link", "\\iff"), "∴": ("link", "\\therefore"),
    "∵": ("link", "\\because"), "√": ("command", "sqrt"), "°": ("degree", "°"), "′": ("prime", "'"),
    "∞": ("letter", "infty"), "∣": ("bar", "|"), "∈": ("command", "in"), "∫": ("command", "int"),
    "∑": ("command", "sum"), "∏": ("command", "prod"),
}
_GREEK_UNICODE = dict(zip("αβγδεζηθικλμνξπρστυφχψω", (
    "alpha", "beta", "gamma", "delta", "epsilon", "zeta", "eta", "theta", "iota", "kappa", "lambda", "mu", "nu", "xi",
    "pi", "rho", "sigma", "tau", "upsilon", "phi", "chi", "psi", "omega"), strict=True)) | {"Δ": "Delta", "Ω": "Omega"}
_SUPERSCRIPTS = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹⁻ⁿ", "0123456789-n", strict=True))
_SUBSCRIPTS = dict(zip("₀₁₂₃₄₅₆₇₈₉", "0123456789", strict=True))
_VULGAR = {"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
           "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_SIMPLE = {
    "+": ("sign", "+"), "-": ("sign", "-"), "*": ("sign", "\\times"), "/": ("sign", "/"), "=": ("relation", "="),
    "<": ("relation", "<"), ">": ("relation", ">"), "(": ("open", "("), ")": ("close", ")"), "[": ("open", "["),
    "]": ("close", "]"), "{": ("{", "{"), "}": ("}", "}"), "^": ("^", "^"), "_": ("_", "_"), "|": ("bar", "|"),
    ",": ("separator", ","), ";": ("separator", ";"), ":": (":", ":"), ".": (".", "."), "!": ("!", "!"),
    "%": ("percent", "%"), "'": ("prime", "'"),
}
_WORDS = frozenset({
    "or", "and", "so", "let", "hence", "thus", "then", "therefore", "since", "because", "when", "where", "given",
    "put", "check", "giving", "gives", "using", "answer", "solution", "solutions", "for", "with", "real", "both",
    "sides", "either", "finally", "subtract", "multiply", "divide", "factorise", "expand", "simplify",
    "solve", "substitute", "units", "unit", "reject", "rejected", "metres", "meters", "square", "from", "which", "that",
    "the", "this", "into", "equation", "equations",
})
_WORD = re.compile(r"[A-Za-z]{2,}")
_NAME = re.compile(r"[A-Z][a-z]{2,}")
_COMMAND = re.compile(r"\\([A-Za-z]+\*?|.)", re.DOTALL)
_THOUSANDS = re.compile(
    r"(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?![\d,])"
    r"|(?<![\d.,] )\b[1-9](?: \d){0,2}(?: , \d \d \d)+(?! [\d,])"
)


@dataclass(frozen=True, slots=True)
class Token:
    """One token; `text` is its normalised form, `blank` says that a blank stood before it."""

    kind: str
    text: str
    start: int
    end: int
    blank: bool = False


def tokenize(text: str) -> list[Token]:
    """Cut a line into tokens.

    Args:
        text: LaTeX, tight or with blanks between tokens.
    Returns:
        The tokens without blanks, then one of kind "end".
    Raises:
        ParseError: the line is too long, or holds a character that is no mathematics.
    """
    if len(text) > MAX_LENGTH:
        raise ParseError(text, MAX_LENGTH, f"a line of at most {MAX_LENGTH} characters")
    commas = {at for match in _THOUSANDS.finditer(text) for at in range(*match.span()) if text[at] == ","}
    tokens: list[Token] = []
    at = 0
    blank = False
    while at < len(text):
        char = text[at]
        if char.isspace() or char in "~&$\u200b\u2062\u2061":
            at += 1
            blank = True
            continue
        if char == "\\":
            at = _command(text, at, tokens, blank)
        elif at in commas:
            tokens.append(Token("thousands", ",", at, at + 1, blank))
            at += 1
        elif char.isascii() and char.isdigit():
            tokens.append(Token("digit", char, at, at + 1, blank))
            at += 1
        elif char.isascii() and char.isalpha():
            at = _letters(text, at, tokens, blank)
        elif text.startswith("{,}", at):
            tokens.append(Token("thousands", ",", at, at + 3, blank))
            at += 3
        else:
            at = _symbol(text, at, tokens, blank)
        blank = False
    tokens.append(Token("end", "", len(text), len(text), blank))
    return _spelled_words(tokens)


def _symbol(text: str, at: int, tokens: list[Token], blank: bool) -> int:
    char = text[at]
    two = text[at:at + 2]
    if two in ("<=", ">="):
        operator = {"<=": "\\le", ">=": "\\ge"}[two]
        tokens.append(Token("relation", operator, at, at + 2, blank))
        return at + 2
    if two in ("=>", "->"):
        tokens.append(Token("link", "\\Rightarrow", at, at + 2, blank))
        return at + 2
    for table, kind in ((_SUPERSCRIPTS, "superscript"), (_SUBSCRIPTS, "subscript")):
        if char in table:
            end = at
            while end < len(text) and text[end] in table:
                end += 1
            tokens.append(Token(kind, "".join(table[mark] for mark in text[at:end]), at, end, blank))
            return end
    if char in _SIMPLE or char in _UNICODE:
        kind, normal = _SIMPLE.get(char) or _UNICODE[char]
        tokens.append(Token(kind, normal, at, at + 1, blank))
    elif char in _GREEK_UNICODE:
        tokens.append(Token("letter", _GREEK_UNICODE[char], at, at + 1, blank))
    elif char in _VULGAR:
        tokens.append(Token("vulgar", _VULGAR[char], at, at + 1, blank))
    elif "①" <= char <= "⑳":
        tokens.append(Token("tag", str(ord(char) - ord("①") + 1), at, at + 1, blank))
    else:
        raise ParseError(text, at, "a number, a letter or a sign of mathematics")
    return at + 1


def _letters(text: str, at: int, tokens: list[Token], blank: bool) -> int:
    run = _WORD.match(text, at)
    if run is not None and (at == 0 or not text[at - 1].isalpha()):
        word = run.group()
        end = run.end()
        if word in FUNCTIONS:
            tokens.append(Token("command", word, at, end, blank))
            return end
        if word.lower() in _WORDS or word in ("LHS", "RHS"):
            tokens.append(Token("text", word.lower(), at, end, blank))
            return end
        if _NAME.fullmatch(word):
            tokens.append(Token("letter", word, at, end, blank))
            return end
        for name in ("sin", "cos", "tan", "ln", "log"):
            if word.startswith(name) and len(word) == len(name) + 1:
                tokens.append(Token("command", name, at, at + len(name), blank))
                return at + len(name)
    tokens.append(Token("letter", text[at], at, at + 1, blank))
    return at + 1


def _group(text: str, at: int) -> tuple[str, int] | None:
    """The braces' content from `at` on (blanks skipped) and where the group ends; None when there is no group."""
    while at < len(text) and text[at].isspace():
        at += 1
    if at >= len(text) or text[at] != "{":
        return None
    depth = 0
    for end in range(at, len(text)):
        if text[end] == "{":
            depth += 1
        elif text[end] == "}":
            depth -= 1
            if depth == 0:
                return text[at + 1:end], end + 1
    raise ParseError(text, len(text), "a closing brace }")


def _command(text: str, at: int, tokens: list[Token], blank: bool) -> int:
    match = _COMMAND.match(text, at)
    if match is None:
        raise ParseError(text, len(text), "a command's name after the backslash")
    name, end = match.group(1), match.end()
    if name in ("left", "right", "mleft", "mright"):
        return _delimiter(text, at, end, name.removeprefix("m"), tokens, blank)
    if name in (",", ";", ":", "!", " ", "/", ">"):
        return end
    if name in ("quad", "qquad", "\\", "newline"):
        tokens.append(Token("gap", "\\quad", at, end, blank))
        return end
    if name in _SKIPPED or name in ("phantom", "hphantom", "vphantom", "label", "color"):
        group = _group(text, end) if name.endswith(("phantom", "hspace", "label", "color")) else None
        return end if group is None else group[1]
    if name in _TEXTS or name in ("operatorname", "tag", "textcircled", "boxed"):
        return _with_text(text, at, end, name, tokens, blank)
    kind, normal = _classify(name)
    tokens.append(Token(kind, normal, at, end, blank))
    return end


def _classify(name: str) -> tuple[str, str]:
    if name in _SIGNS:
        return "sign", _SIGNS[name]
    if name in _RELATIONS:
        return "relation", _RELATIONS[name]
    if name in GREEK:
        return "letter", name
    if name in _LINKS:
        return "link", "\\" + name
    if name in ("lvert", "rvert", "vert", "mid", "|", "lVert", "rVert"):
        return {"l": "open", "r": "close"}.get(name[0], "bar"), "|"
    if name in ("{", "lbrace", "lbrack", "("):
        return "open", {"{": "\\{", "lbrace": "\\{", "lbrack": "[", "(": "("}[name]
    if name in ("}", "rbrace", "rbrack", ")"):
        return "close", {"}": "\\}", "rbrace": "\\}", "rbrack": "]", ")": ")"}[name]
    if name == "%":
        return "percent", "%"
    if name in ("arcosec", "arccosec"):
        return "command", "arccsc"
    if name in ("circ", "degree"):
        return "degree", "°"
    if name == "prime":
        return "prime", "'"
    if name in ("dfrac", "tfrac", "cfrac"):
        return "command", "frac"
    if name in ("dbinom", "tbinom"):
        return "command", "binom"
    return "command", name


def _delimiter(text: str, at: int, end: int, side: str, tokens: list[Token], blank: bool) -> int:
    while end < len(text) and text[end].isspace():
        end += 1
    if end >= len(text):
        raise ParseError(text, len(text), f"a bracket after \\{side}")
    if text[end] == ".":
        return end + 1
    match = _COMMAND.match(text, end) if text[end] == "\\" else None
    if match is not None:
        _, mark = _classify(match.group(1))
        stop = match.end()
    else:
        mark, stop = text[end], end + 1
    if mark not in ("(", ")", "[", "]", "|", "\\{", "\\}"):
        raise ParseError(text, end, f"a bracket after \\{side}")
    tokens.append(Token("open" if side == "left" else "close", mark, at, stop, blank))
    return stop


def _with_text(text: str, at: int, end: int, name: str, tokens: list[Token], blank: bool) -> int:
    group = _group(text, end)
    if group is None:
        return end
    inner, stop = group
    word = " ".join(inner.split())
    if name == "operatorname":
        tokens.append(Token("command" if word in FUNCTIONS else "letter", word, at, stop, blank))
    elif name == "boxed":
        opening = stop - len(inner) - 2
        tokens.append(Token("{", "{", opening, opening + 1, blank))
        for token in tokenize(inner)[:-1]:
            tokens.append(replace(token, start=token.start + opening + 1, end=token.end + opening + 1))
        tokens.append(Token("}", "}", stop - 1, stop))
    elif name in ("tag", "textcircled"):
        tokens.append(Token("tag", word, at, stop, blank))
    elif word:
        tokens.append(Token("text", word.lower() if word.lower() in _WORDS else word, at, stop, blank))
    return stop


_SPELLED = ("therefore", "hence", "check", "since", "thus", "then", "let", "so")


def _spelled_words(tokens: list[Token]) -> list[Token]:
    """Join letters that spell a word at the start of a line: l e t u = ... as a recogniser gives it."""
    start = next((n for n, token in enumerate(tokens) if token.kind not in ("link", "tag", "gap")), 0)
    for word in _SPELLED:
        part = tokens[start:start + len(word)]
        following = tokens[start + len(word)] if start + len(word) < len(tokens) else None
        if (
            following is not None and following.kind != "end" and all(token.kind == "letter" for token in part)
            and "".join(token.text for token in part) == word and (len(word) > 2 or following.kind in ("letter", ":"))
        ):
            joined = Token("text", word, part[0].start, part[-1].end, part[0].blank)
            return [*tokens[:start], joined, *tokens[start + len(word):]]
    return tokens


def ends_of(tokens: Sequence[Token]) -> tuple[int, int]:
    """Where the first token begins and the last one ends."""
    return tokens[0].start, tokens[-1].end
