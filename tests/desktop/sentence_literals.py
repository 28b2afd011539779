"""Every text in the source of the checker and the reader that may be part of a sentence for the user."""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice, product
from pathlib import Path

ROOT = Path(__file__).parents[2]
ROOMS = ("checker", "recognition")
BESIDE = (
    "checker/measure", "checker/practice", "checker/__main__.py", "checker/batch.py", "checker/report.py",
    "checker/slips/measure.py", "checker/slips/documented_measure.py", "checker/slips/catalogue/sources.py",
    "recognition/training", "recognition/printed", "recognition/__main__.py", "recognition/evaluate.py",
    "recognition/reader/calibration.py",
)  # fmt: skip
"""Rooms whose sentences go to a terminal or into a file of the contract, never to the desk."""
OURS = frozenset({"ValueError", "TypeError", "AssertionError", "RuntimeError", "KeyError", "_Bad", "GrammarError"})
"""Errors that tell of a fault of ours: they go to the log with their trace."""
FILLINGS = ("3x", "2", "x = 1", "left", "the line before has 3x", "The value is rounded.", "2 d.p.", "a power", "a b c")
"""What may stand where the source puts something in."""


@dataclass(frozen=True)
class Literal:
    """A text with holes: what stands between them, and for each hole the texts that the source writes for it.

    A hole without such texts is worked out: anything of FILLINGS may stand there.
    """

    place: str
    parts: tuple[str | tuple[Literal, ...], ...]

    @property
    def bare(self) -> str:
        """The text with empty braces for its holes."""
        return "".join(part if isinstance(part, str) else "{}" for part in self.parts)

    def sentences(self, most: int = 4_000) -> Iterator[str]:
        """Examples of it."""
        return ("".join(text for text, _ in chosen) for chosen in islice(self._chosen(), most))

    def lacking(self, is_known: Callable[[str], bool], most: int = 4_000) -> list[str]:
        """What no known sentence has: the text itself, or one that the source writes for a hole of it."""
        seen: set[tuple[int, Literal]] = set()
        is_found = False
        for chosen in islice(self._chosen(), most):
            if is_known("".join(text for text, _ in chosen)):
                is_found = True
                seen.update((at, one) for at, (_, one) in enumerate(chosen) if one is not None)
        if not is_found:
            return [self.bare]
        holes = [(at, one) for at, part in enumerate(self.parts) if not isinstance(part, str) for one in part]
        return [f"{self.bare} with {one.bare}" for at, one in holes if one.is_plain and (at, one) not in seen]

    @property
    def is_plain(self) -> bool:
        """Whether it is a text without holes; those with holes are looked at by themselves."""
        return bool(self.bare) and all(isinstance(part, str) for part in self.parts)

    def _chosen(self) -> Iterator[tuple[tuple[str, Literal | None], ...]]:
        choices: list[list[tuple[str, Literal | None]]] = []
        for part in self.parts:
            if isinstance(part, str):
                choices.append([(part, None)])
            elif part:
                choices.append([(text, one) for one in part for text in one.sentences(12)])
            else:
                choices.append([(text, None) for text in FILLINGS])
        return product(*choices)


def literals() -> Iterator[Literal]:
    """Every text with words in the rooms whose sentences reach the desk."""
    for room in ROOMS:
        for path in sorted((ROOT / room).rglob("*.py")):
            name = path.relative_to(ROOT).as_posix()
            if not name.startswith(BESIDE):
                yield from _Module(name, ast.parse(path.read_text(encoding="utf-8"))).literals()


_ANYTHING = Literal("", ((),))


class _Module:
    """One module, with what its names may stand for."""

    def __init__(self, name: str, tree: ast.Module) -> None:
        self._name, self._tree = name, tree
        self._told: dict[str, list[ast.expr]] = {}
        for node in ast.walk(tree):
            match node:
                case ast.Assign(targets=targets, value=value):
                    self._note(targets, value)
                case ast.AnnAssign(target=target, value=ast.expr() as value):
                    self._note([target], value)
                case ast.For(target=target, iter=value) | ast.comprehension(target=target, iter=value):
                    self._note([target], value)
                case ast.FunctionDef(name=function):
                    found = [one.value for one in ast.walk(node) if isinstance(one, ast.Return) and one.value]
                    self._told.setdefault(function, []).extend(found)

    def _note(self, targets: list[ast.expr], value: ast.expr) -> None:
        for target in targets:
            for name in ast.walk(target):
                if isinstance(name, ast.Name):
                    self._told.setdefault(name.id, []).append(value)

    def literals(self) -> Iterator[Literal]:
        left_out = {id(node) for top in ast.walk(self._tree) if _is_no_sentence(top) for node in ast.walk(top)}
        inner = {
            id(child) for node in ast.walk(self._tree) if isinstance(node, ast.JoinedStr) for child in ast.walk(node)
            if child is not node
        }  # fmt: skip
        for node in ast.walk(self._tree):
            if id(node) not in left_out | inner and _is_text(node):
                literal = Literal(f"{self._name}:{node.lineno}", tuple(self._parts(node, 0)))
                if _has_words(literal.bare):
                    yield literal

    def _parts(self, node: ast.AST, depth: int) -> Iterator[str | tuple[Literal, ...]]:
        match node:
            case ast.Constant(value=str(text)):
                yield text
            case ast.JoinedStr(values=values):
                for value in values:
                    if isinstance(value, ast.FormattedValue):
                        found = tuple(dict.fromkeys(self._alternatives(value.value, depth + 1)))[:8]
                        yield (*found, _ANYTHING) if found else ()
                    else:
                        yield from self._parts(value, depth)

    def _alternatives(self, node: ast.AST, depth: int) -> Iterator[Literal]:
        """The texts that the source writes out for what stands in a hole; none where it is worked out."""
        if depth > 3:
            return
        match node:
            case ast.Constant(value=str()) | ast.JoinedStr():
                yield Literal("", tuple(self._parts(node, depth)))
            case ast.IfExp(body=body, orelse=orelse):
                yield from self._alternatives(body, depth)
                yield from self._alternatives(orelse, depth)
            case ast.BoolOp(values=values) | ast.Tuple(elts=values) | ast.List(elts=values) | ast.Dict(values=values):
                for one in values:
                    yield from self._alternatives(one, depth)
            case ast.Name(id=name):
                for value in self._told.get(name, _ELSEWHERE.get(name, [])):
                    yield from self._alternatives(value, depth + 1)
            case ast.Call(func=ast.Name(id=name)):
                for value in self._told.get(name, []):
                    yield from self._alternatives(value, depth + 1)
            case ast.Subscript(value=value):
                yield from self._alternatives(value, depth)


_ELSEWHERE: dict[str, list[ast.expr]] = {"SIDES": [ast.Constant("left"), ast.Constant("right")]}
"""Names that modules take from one another."""


def _is_no_sentence(node: ast.AST) -> bool:
    """A docstring, a log record, an error of ours, or a pattern."""
    if isinstance(node, ast.Expr):
        return isinstance(node.value, ast.Constant)
    if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call):
        return getattr(node.exc.func, "id", getattr(node.exc.func, "attr", "")) in OURS
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        owner = getattr(node.func.value, "id", "")
        return owner == "log" or (owner == "re" and node.func.attr in ("compile", "sub", "match", "fullmatch", "split"))
    return False


def _is_text(node: ast.AST) -> bool:
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


def _has_words(text: str) -> bool:
    bare = re.sub(r"\\[A-Za-z]+", " ", text)
    return re.search(r"[A-Za-z]{2,}\W? +\{?\}?,? ?[A-Za-z]{2,}", bare) is not None
