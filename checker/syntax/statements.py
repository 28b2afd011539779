"""A parser of whole lines: relations, chains, alternatives, systems, definitions, notes, labels."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from checker.errors import ParseError
from checker.syntax.expressions import ExpressionParser
from checker.syntax.labels import after_label, is_label
from checker.syntax.segments import (
    PLAIN,
    all_equal,
    gives_number,
    is_number_for_letter,
    is_solved,
    joined_words,
    left_text,
    name_of,
    relates,
    says_whole,
    side_of,
    solved_letter,
    span_of,
    speaks_of_sets,
    with_depth,
    with_left,
)
from checker.syntax.sets import UNNAMED, SetReader, in_integers, is_set, is_set_sign, told_by_words
from checker.syntax.surroundings import surroundings_of
from checker.syntax.tokens import MAX_LENGTH, Token, ends_of, tokenize
from checker.syntax.tree import (
    Alternatives,
    Chain,
    Definition,
    Expression,
    Function,
    Line,
    Node,
    Note,
    Relation,
    Statement,
    Steps,
    Symbol,
    System,
    letters,
)

__all__ = ["parse", "parse_expression", "parse_line"]

_WORDS_ONLY = re.compile(r"[A-Za-z][A-Za-z ,.;:'!?-]*")
_CONDITIONAL = frozenset({"for", "when", "where", "given", "since", "because", "with", "if", "as", "provided"})
_LINKING = frozenset({"so", "hence", "thus", "then", "therefore", "giving", "gives", "check", "so that", "we get"})
_WHOLE = re.compile(r"\b(?:integer|whole number)")
_PUTTING_IN = frozenset({
    "when", "at", "for", "if", "put", "putting", "sub", "substitute", "substituting", "using", "given", "where", "with",
})
_LENGTH_UNITS = ("c m", "m m", "k m", "k g")


def parse(text: str) -> Statement:
    """What the line says.

    Args:
        text: LaTeX of one line, tight or with blanks between tokens.
    Raises:
        ParseError: with the position and what was expected there.
    """
    return parse_line(text).statement


def parse_expression(text: str) -> Node:
    """The one expression that the text is.

    Raises:
        ParseError: the text does not parse, or is a relation or words.
    """
    statement = parse(text)
    if not isinstance(statement, Expression) or statement.continues:
        raise ParseError(text, 0, "an expression alone")
    return statement.body


def parse_line(text: str, readings: frozenset[str] = frozenset()) -> Line:
    """The line with its statement, label, link, notes and conditions.

    Args:
        text: LaTeX of one line.
        readings: doubts to be read the other way: "mixed" (a whole number times a fraction), "slash" (how far a
            division on one line reaches), "function" (f times a bracket), "unit" (letters after a number are factors),
            "label" (a number in brackets before the line is a factor); and what `function_readings` found.
    Raises:
        ParseError: with the position and what was expected there.
    """
    if len(text) > MAX_LENGTH:
        raise ParseError(text, MAX_LENGTH, f"a line of at most {MAX_LENGTH} characters")
    if "\x00" in text:
        raise ParseError(text, text.index("\x00"), "a number, a letter or a sign of mathematics")
    if not text.strip():
        return Line(text, Note((0, len(text)), ""))
    if _is_words(text):
        told = told_by_words(text.strip(), (0, len(text)))
        return Line(text, told or Note((0, len(text)), text.strip()))
    return _LineParser(text, readings).line()


def _is_words(text: str) -> bool:
    if not _WORDS_ONLY.fullmatch(text.strip()):
        return False
    words = re.findall(r"[A-Za-z]+", text)
    return len(words) > 1 and max(map(len, words)) >= 4


class _LineParser:
    def __init__(self, text: str, readings: frozenset[str]) -> None:
        self.text = text
        self.readings = readings
        self.doubts: set[str] = set()
        self.notes: list[str] = []
        self.conditions: list[Statement] = []
        self.label: str | None = None
        self.link: str | None = None
        self.accuracy: tuple[str, int] | None = None
        self.puts_in = False

    def line(self) -> Line:
        around = surroundings_of(self.text, self.readings)
        if around.has_list:
            self.doubts.add("list")
        self.accuracy = around.accuracy
        self.label = around.label
        if around.label is not None:
            self.doubts.add("label")
        self.notes += around.notes
        tokens = self._trailing(self._leading(tokenize(around.text)[:-1]))
        if tokens:
            statement = self._with_values(self._steps(self._after_value(tokens)))
            if self.notes and isinstance(statement, Expression) and isinstance(statement.body, Symbol):
                told = told_by_words(f"{' '.join(self.notes)} {statement.body.name}", statement.span)
                statement = told or statement
        else:
            words = " ".join(self.notes) or self.text.strip()
            statement = told_by_words(words, (0, len(self.text))) or Note((0, len(self.text)), words)
        return Line(
            self.text, statement, self.label, self.link, tuple(self.conditions), tuple(self.notes), self.accuracy,
            frozenset(self.doubts), self.readings,
        )

    # what stands around the statement

    def _leading(self, tokens: list[Token]) -> list[Token]:
        while tokens:
            first = tokens[0]
            kinds = [token.kind for token in tokens[:4]]
            if first.kind in ("gap", ":") or (first.kind == "separator" and len(tokens) > 1):
                tokens = tokens[1:]
            elif first.kind == "link":
                self.link = first.text
                tokens = tokens[1:]
            elif first.kind == "tag":
                self.label = first.text
                tokens = tokens[1:]
            elif first.kind == "text" and first.text != "let" and not self._names_a_side(tokens, 0):
                if first.text in _LINKING:
                    self.link = first.text
                else:
                    self.notes.append(first.text)
                    self.puts_in = self.puts_in or first.text.split()[0].lower() in _PUTTING_IN
                tokens = tokens[1:]
            elif is_label(tokens):
                self.label = first.text
                tokens = tokens[2:]
            elif kinds[0] == "open" and kinds[1:2] in (["digit"], ["letter"]) and kinds[2:4] in (
                ["close", "gap"], ["close", ":"], ["close", "text"], ["close", "link"],
            ) and tokens[2].text == ")":
                self.label = tokens[1].text
                tokens = tokens[3:]
            elif (after := after_label(tokens)) is not None:
                size, is_likely = after
                self.doubts.add("label")
                if is_likely == ("label" in self.readings):
                    break
                self.label = "".join(token.text for token in tokens[1:size - 1])
                tokens = tokens[size:]
            else:
                break
        return tokens

    def _trailing(self, tokens: list[Token]) -> list[Token]:
        while tokens:
            last = tokens[-1]
            kinds = [token.kind for token in tokens[-4:]]
            if last.kind in ("gap", "separator", ":") or (last.kind == "." and len(tokens) > 1):
                tokens = tokens[:-1]
            elif last.kind == "tag":
                self.label = self.label or last.text
                tokens = tokens[:-1]
            elif last.kind == "command" and last.text in ("square", "checkmark", "blacksquare", "qed", "Box"):
                tokens = tokens[:-1]
            elif kinds == ["gap", "open", "digit", "close"] or (
                kinds[1:] == ["open", "digit", "close"] and self._set_apart(tokens[-3])
            ):
                self.label = self.label or tokens[-2].text
                tokens = tokens[:-3]
            else:
                break
        return tokens

    def _set_apart(self, token: Token) -> bool:
        return token.start >= 3 and self.text[token.start - 3:token.start].isspace()

    def _names_a_side(self, tokens: Sequence[Token], at: int) -> bool:
        """Words that stand alone on a side of a relation are a name: \\text{Area} = 6x."""
        before = at == 0 or tokens[at - 1].kind in ("relation", "separator", "link", "gap", "text")
        return before and at + 1 < len(tokens) and tokens[at + 1].kind == "relation" and tokens[at + 1].text == "="

    # values put in

    def _after_value(self, tokens: list[Token]) -> list[Token]:
        """x = 1: 6 = 3A, a value and what it gives: the value becomes a condition."""
        at = next((n for n, (token, depth) in enumerate(with_depth(tokens)) if depth == 0 and token.kind == ":"), -1)
        head, rest = tokens[:at], tokens[at + 1:]
        if at < 3 or not relates(rest) or not relates(head):
            return tokens
        value = self._alternatives(head)
        if not is_number_for_letter(value):
            return tokens
        self.conditions.append(value)
        return self._leading(rest)

    def _with_values(self, statement: Statement) -> Statement:
        """When x = 3, y = 5: the value after "when" becomes a condition, or a name where nothing follows it."""
        if not self.puts_in:
            return statement
        if isinstance(statement, Relation) and is_number_for_letter(statement) and isinstance(statement.left, Symbol):
            return Definition(statement.span, statement.left, statement.right)
        if isinstance(statement, System | Steps) and len(statement.parts) > 1 and is_number_for_letter(
            statement.parts[0]
        ):
            self.conditions.append(statement.parts[0])
            rest = statement.parts[1:]
            if len(rest) == 1:
                return rest[0]
            return replace(statement, span=span_of(rest), parts=rest)
        return statement

    # from links down to one relation

    def _steps(self, tokens: list[Token]) -> Statement:
        groups: list[list[Token]] = [[]]
        for token, depth in with_depth(tokens):
            inside = token.kind == "text" and token.text in _LINKING and groups[-1]
            if depth == 0 and (token.kind == "link" or inside):
                if groups[-1]:
                    groups.append([])
            else:
                groups[-1].append(token)
        parts = [self._alternatives(group) for group in groups if group]
        parts = [part for part in parts if not isinstance(part, Note)] or parts
        if not parts:
            raise ParseError(self.text, len(self.text), "an expression or an equation")
        return parts[0] if len(parts) == 1 else Steps(span_of(parts), tuple(parts))

    def _alternatives(self, tokens: list[Token]) -> Statement:
        tokens = self._without_conditions(tokens)
        groups: list[list[Token]] = [[]]
        for token in joined_words(tokens, "or"):
            if token.kind == "text" and token.text in ("or", "either"):
                if groups[-1]:
                    groups.append([])
            else:
                groups[-1].append(token)
        branches: list[Statement] = []
        for group in groups:
            if group:
                branches.extend(self._branches(group, branches))
        if len(branches) == 1:
            return branches[0]
        if not branches:
            return Note((0, len(self.text)), " ".join(self.notes))
        return Alternatives(span_of(branches), tuple(branches))

    def _without_conditions(self, tokens: list[Token]) -> list[Token]:
        for at, (token, depth) in enumerate(with_depth(tokens)):
            if depth == 0 and at and token.kind == "text" and token.text.split()[0].strip(",").lower() in _CONDITIONAL:
                rest = self._leading(list(tokens[at + 1:]))
                self.notes.append(self.text[token.start:tokens[-1].end])
                if any(one.kind == "relation" for one in rest):
                    try:
                        self.conditions.append(self._alternatives(rest))
                    except ParseError:
                        return tokens[:at]
                return tokens[:at]
        return tokens

    def _branches(self, tokens: list[Token], earlier: Sequence[Statement]) -> list[Statement]:
        """The parts between commas: conditions that hold at once, or further values of one letter."""
        segments: list[list[Token]] = [[]]
        joined_by_and = False
        listing = list(with_depth(joined_words(tokens, "and")))
        for at, (token, depth) in enumerate(listing):
            if depth == 0 and (token.kind == "separator" or (token.kind == "text" and token.text == "and")):
                joined_by_and = joined_by_and or token.kind == "text"
                segments.append([])
            elif depth == 0 and token.kind == "gap" and relates(segments[-1]) and relates(
                one for one, _ in listing[at + 1:]
            ):
                segments.append([])
            else:
                segments[-1].append(token)
        parts: list[Statement] = []
        for segment in segments:
            if len(segment) == 2 and segment[0].kind == "letter" and _WHOLE.search(segment[1].text):
                parts.append(in_integers(segment[0], segment[1].end))
                continue
            cleaned = self._cleaned(segment)
            if cleaned:
                parts.append(self._relation(cleaned))
        parts = [part for part in parts if not says_whole(part, parts)]
        if not parts:
            return []
        lead = next((part for part in (*reversed(earlier), *parts) if is_solved(part)), None)
        if lead is None and all(isinstance(part, Expression) and not letters(part) - PLAIN for part in parts[1:]):
            # 2x = 60, 120 and 2x = 60 or 120
            lead = next((part for part in (*reversed(earlier), parts[0]) if gives_number(part)), None)
        filled = [with_left(part, lead) for part in parts]
        names = {solved_letter(part) or left_text(part) for part in filled}
        if len(filled) == 1:
            return filled
        values_only = any(isinstance(part, Expression) for part in parts[1:])
        if len(names) == 1 and None not in names and (values_only or not joined_by_and or all_equal(filled)):
            return filled
        if all(isinstance(part, Expression) for part in filled):
            if not any(isinstance(part, Expression) and part.continues for part in filled):
                return filled
            raise ParseError(self.text, segments[0][-1].end, "the end of the line")
        return [System(span_of(filled), tuple(filled))]

    def _cleaned(self, segment: list[Token]) -> list[Token]:
        """The segment with words turned into names or passed over, units too."""
        out: list[Token] = []
        skip_power = 0
        for at, token in enumerate(segment):
            if skip_power:
                skip_power -= 1
                continue
            if token.kind != "text" or token.text == "let":
                out.append(token)
            elif self._names_a_side(segment, at) or (side_of(token.text) and at and segment[at - 1].text == "="):
                out.append(Token("letter", name_of(token.text), token.start, token.end, token.blank))
            else:
                self.notes.append(token.text)
                following = [one.kind for one in segment[at + 1:at + 5]]
                if following[:2] == ["^", "digit"]:
                    skip_power = 2
                elif following == ["^", "{", "digit", "}"]:
                    skip_power = 4
        while out and out[-1].kind in ("gap", "."):
            out.pop()
        return self._without_units(out)

    def _without_units(self, tokens: list[Token]) -> list[Token]:
        end = len(tokens)
        if end >= 4 and [token.kind for token in tokens[-4:]] == ["^", "{", "digit", "}"]:
            end -= 4
        elif end >= 2 and [token.kind for token in tokens[-2:]] == ["^", "digit"]:
            end -= 2
        if end < 3 or tokens[end - 3].kind != "digit" or tokens[end - 1].kind != "letter":
            return tokens
        if f"{tokens[end - 2].text} {tokens[end - 1].text}" in _LENGTH_UNITS:
            self.doubts.add("unit")
            if "unit" not in self.readings:
                self.notes.append(self.text[tokens[end - 2].start:tokens[-1].end])
                return tokens[:end - 2]
        return tokens

    def _relation(self, tokens: list[Token]) -> Statement:
        if tokens[0].kind == "text" and tokens[0].text == "let":
            return self._definition(tokens[1:])
        if any(token.kind == "command" and token.text == "propto" for token in tokens):
            return Note(ends_of(tokens), self.text[tokens[0].start:tokens[-1].end])
        rule = self._rule(tokens)
        if rule is not None:
            return rule
        if any(token.kind == ":" for token in tokens):
            tokens = self._ratios(tokens)
        if not tokens or speaks_of_sets(tokens):
            return Note((0, len(self.text)), self.text.strip())
        found = self._set(tokens)
        if found is not None:
            return found
        members: list[list[Token]] = [[]]
        signs: list[Token] = []
        for token, depth in with_depth(tokens):
            if token.kind == "relation" and depth == 0:
                signs.append(token)
                members.append([])
            else:
                members[-1].append(token)
        continues = not members[0] and bool(signs)
        if continues:
            members = members[1:]
        if not continues and len(members) == 2 and members[0] and not members[1] and self.notes:
            return Note(ends_of(tokens), self.text[tokens[0].start:tokens[-1].end])  # x = the cost of a cup
        ends = [sign.start for sign in (signs[1:] if continues else signs)]
        ends.append(tokens[-1].end)
        nodes = [self._expression(member, end) for member, end in zip(members, ends, strict=True)]
        span = (tokens[0].start, tokens[-1].end)
        if not signs:
            return Expression(span, nodes[0])
        if continues and len(nodes) == 1:
            return Expression(span, nodes[0], True, signs[0].text)
        spans = tuple((sign.start, sign.end) for sign in signs)
        if not continues and len(nodes) == 2:
            return Relation(span, nodes[0], signs[0].text, nodes[1], spans[0])
        return Chain(span, tuple(nodes), tuple(sign.text for sign in signs), spans, continues)

    def _rule(self, tokens: list[Token]) -> Statement | None:
        """f : x \\mapsto 2x + 1 says that f(x) = 2x + 1."""
        at = next((place for place, token in enumerate(tokens) if token.text == "mapsto"), -1)
        if at != 3 or [token.kind for token in tokens[:3]] != ["letter", ":", "letter"]:
            return None
        name, _, letter, arrow = tokens[:4]
        inner = Symbol((letter.start, letter.end), letter.text)
        left = Function((name.start, letter.end), name.text, (inner,))
        right = self._expression(tokens[4:], tokens[-1].end)
        return Relation(ends_of(tokens), left, "=", right, (arrow.start, arrow.end))

    def _ratios(self, tokens: list[Token]) -> list[Token]:
        """x : 3 = 8 : 6 as divisions; nothing where a ratio has three parts."""
        count = 0
        out = []
        for token, depth in with_depth(tokens):
            if token.kind == "relation" and depth == 0:
                count = 0
            if token.kind == ":" and depth == 0:
                count += 1
                if count > 1:
                    return []
                token = replace(token, kind="sign", text="\\div")
            out.append(token)
        return out

    def _set(self, tokens: list[Token]) -> Statement | None:
        """x in (1, 3], S = {2, 3} or a set alone; None when it is something else."""
        reader = SetReader(self.text, self._expression, self._alternatives)
        outer = [token if depth == 0 else None for token, depth in with_depth(tokens)]
        at = next((place for place, token in enumerate(outer) if token is not None and is_set_sign(token)), -1)
        if at >= 0:
            if at == 0 or tokens[at].text == "notin":
                return Note(ends_of(tokens), self.text[tokens[0].start:tokens[-1].end])
            return reader.statement(tokens[at + 1:], self._expression(tokens[:at], tokens[at].start))
        if tokens[0].kind == "letter" and tokens[0].text.isupper() and is_set(tokens[1:]) and tokens[1].text == "(":
            return Note(ends_of(tokens), self.text[tokens[0].start:tokens[-1].end])  # a point by its name
        at = next((place for place, token in enumerate(outer) if token is not None and token.text == "="), -1)
        rest = tokens[at + 1:]
        in_braces = bool(rest) and rest[0].text == "\\{" and rest[-1].text == "\\}"
        if not rest or not (is_set(rest) or (at == 1 and in_braces)):
            return None
        unnamed = Symbol((rest[0].start, rest[0].start), UNNAMED)
        if at < 0:
            return reader.statement(rest, unnamed)
        if at == 1 and tokens[0].kind == "letter" and tokens[0].text.isupper():
            self.notes.append(f"{tokens[0].text} =")
        if at == 1 and tokens[0].kind == "letter" and (tokens[0].text.isupper() or in_braces):
            letter = unnamed if tokens[0].text.isupper() else self._expression(tokens[:1], tokens[0].end)
            return reader.statement(rest, letter)
        self.notes.append(self.text[tokens[0].start:tokens[-1].end])
        return Note(ends_of(tokens), self.text[tokens[0].start:tokens[-1].end])

    def _definition(self, tokens: list[Token]) -> Statement:
        if not tokens:
            raise ParseError(self.text, len(self.text), "a letter after let")
        statement = self._relation(tokens)
        if isinstance(statement, Relation) and statement.operator == "=" and isinstance(statement.left, Symbol):
            return Definition(statement.span, statement.left, statement.right)
        return statement

    def _expression(self, tokens: list[Token], end: int) -> Node:
        parser = ExpressionParser(self.text, [*tokens, Token("end", "", end, end)], self.readings)
        node = parser.whole()
        self.doubts |= parser.cursor.doubts
        return node


