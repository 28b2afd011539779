"""Reads a CROHME training file: strokes, label, and which strokes make which token of the label.

Source of the format: InkML (W3C Recommendation 2011-09-20) with CROHME's traceGroups and presentation MathML, linked by
`xml:id` and `annotationXML href` (Mouchere et al., ICFHR 2014 competition on CROHME).
"""

from __future__ import annotations

import random
import xml.etree.ElementTree as ElementTree
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import (
    TOKEN_ID,
    Fraction,
    Node,
    NotCanonical,
    Root,
    Row,
    Script,
    Symbol,
    is_valid,
    normalise,
    split_tokens,
)

__all__ = ["Item", "LinkedInk", "read_linked"]

_XML_ID: Final = "{http://www.w3.org/XML/1998/namespace}id"
_ROWS: Final = frozenset(("math", "mrow", "mstyle", "semantics", "mpadded", "mphantom", "mtd"))
_LEAVES: Final = frozenset(("mi", "mo", "mn", "mtext", "ms"))
_SILENT: Final = frozenset(("annotation", "annotation-xml", "mspace", "none"))
_BARE_NAMES: Final = {"times": r"\times", "infty": r"\infty", "sum": r"\sum", "ctdot": r"\ldots"}
_ALIKE: Final = frozenset((".", "|", r"\cdot", r"\prime"))
"""Signs that label and MathML of one file name differently though they mean the same ink."""

Ids = dict[int, str]
"""Python identity of a node -> xml:id of its sign."""


@dataclass(frozen=True, slots=True)
class Item:
    """Tokens of an expression or a part of it; group says for each token which symbol of the ink it is, or -1."""

    tokens: tuple[str, ...]
    groups: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class LinkedInk:
    """strokes: float32 (n, 2) each, y downwards; group: symbol of each stroke or -1; symbols: label of each group."""

    strokes: tuple[NDArray[np.float32], ...]
    group: tuple[int, ...]
    symbols: tuple[str, ...]
    whole: Item
    parts: tuple[Item, ...]


def read_linked(file: Path | IO[bytes], rng: random.Random, *, most_parts: int = 6) -> LinkedInk:
    """Read one file; `parts` holds sub-expressions drawn by lot where every token is linked to its ink.

    Raises:
        NotCanonical: the label is out of the vocabulary.
        ElementTree.ParseError: the file is not XML.
    """
    root = ElementTree.parse(file).getroot()
    names, strokes = [], []
    for trace in root.iter():
        if _tag(trace) == "trace":
            points = _points(trace.text or "")
            if len(points):
                names.append(trace.get("id") or trace.get(_XML_ID) or "")
                strokes.append(points)
    if not strokes:
        raise NotCanonical("The file has no strokes.")
    place = {name: number for number, name in enumerate(names)}
    group, symbols = [-1] * len(strokes), list[str]()
    by_href: dict[str, int] = {}
    for sign, href, members in _groups(root):
        for member in members:
            if member in place:
                group[place[member]] = len(symbols)
        if href:
            by_href[href] = len(symbols)
        symbols.append(sign if all(member in place for member in members) else "")
    row, ids = _mathml(root)
    label = _label(root, row)
    linked = _linked(row, ids) if row else []
    groups = [by_href.get(name, -1) if name else -1 for _, name in linked]
    if not _agree(label, linked) or not _complete(linked, groups, group, len(symbols)):
        whole = Item(tuple(label), (-1,) * len(label))
        return LinkedInk(tuple(strokes), tuple(group), tuple(symbols), whole, ())
    parts = []
    if [token for token, _ in linked] == label:
        parts = _parts(row, ids, by_href, rng, most_parts)
    return LinkedInk(tuple(strokes), tuple(group), tuple(symbols), Item(tuple(label), tuple(groups)), tuple(parts))


def _tag(element: ElementTree.Element) -> str:
    return element.tag.rsplit("}", 1)[-1]


def _points(text: str) -> NDArray[np.float32]:
    pairs = (point.split() for point in text.strip().split(","))
    return np.array([(float(p[0]), float(p[1])) for p in pairs if len(p) >= 2], np.float32).reshape(-1, 2)


def _groups(root: ElementTree.Element) -> Iterator[tuple[str, str | None, list[str]]]:
    for group in root.iter():
        if _tag(group) != "traceGroup":
            continue
        members = [view.get("traceDataRef") or "" for view in group if _tag(view) == "traceView"]
        if members:
            label = next((child.text or "" for child in group if _tag(child) == "annotation"), "")
            link = next((child.get("href") for child in group if _tag(child) == "annotationXML"), None)
            yield _token(label), link, members


def _token(text: str) -> str:
    """A sign as MathML or a group names it, as a token of ours."""
    text = text.strip()
    text = _BARE_NAMES.get(text, text)
    tokens = split_tokens(text)
    if len(tokens) == 1:
        return r"\prime" if tokens[0] == "'" else tokens[0]
    return "\\" + text if "\\" + text in TOKEN_ID else text


def _label(root: ElementTree.Element, row: Row) -> list[str]:
    truth = next((a.text for a in root if _tag(a) == "annotation" and a.get("type") == "truth"), None)
    try:
        label = normalise(truth or "")
    except NotCanonical:
        label = [token for token, _ in _linked(row, {})]
        if not is_valid(label):
            raise
    if not label:
        raise NotCanonical("The label is empty.")
    return label


def _mathml(root: ElementTree.Element) -> tuple[Row, Ids]:
    ids: Ids = {}
    math = next((element for element in root.iter() if _tag(element) == "math"), None)
    if math is None:
        return (), ids
    try:
        return _row(math, ids), ids
    except (NotCanonical, IndexError):
        return (), ids


def _row(element: ElementTree.Element, ids: Ids) -> Row:
    tag, children = _tag(element), [child for child in element if _tag(child) not in _SILENT]
    name = element.get(_XML_ID) or ""
    if tag in _SILENT:
        return ()
    if tag in _ROWS:
        return tuple(node for child in children for node in _row(child, ids))
    if tag in _LEAVES:
        return _leaf(element.text or "", name, ids)
    if tag == "mfrac":
        return (_named(Fraction(_row(children[0], ids), _row(children[1], ids)), name, ids),)
    if tag == "msqrt":
        return (_named(Root(tuple(node for child in children for node in _row(child, ids))), name, ids),)
    if tag == "mroot":
        return (_named(Root(_row(children[0], ids), _row(children[1], ids)), name, ids),)
    if tag in ("msup", "msub", "msubsup", "munder", "mover", "munderover"):
        base, first = _row(children[0], ids), _row(children[1], ids)
        if not base:
            raise NotCanonical("A script stands without a base.")
        if len(children) > 2:
            sub, sup = first, _row(children[2], ids)
        else:
            sub, sup = (first, ()) if tag in ("msub", "munder") else ((), first)
        last = base[-1]
        if isinstance(last, Script):
            return (*base[:-1], Script(last.base, last.sub or sub, (*last.sup, *sup)))
        return (*base[:-1], Script(last, sub, sup) if sub or sup else last)
    raise NotCanonical(f"MathML element {tag} is not known.")


def _leaf(text: str, name: str, ids: Ids) -> Row:
    token = _token(text)
    if not token:
        return ()
    if token in TOKEN_ID:
        return (_named(Symbol(token), name, ids),)
    if not token.startswith("\\") and all(sign in TOKEN_ID for sign in token):
        return tuple(_named(Symbol(sign), name if number == 0 else "", ids) for number, sign in enumerate(token))
    raise NotCanonical(f"MathML sign {token} is not known.")


def _named(node: Node, name: str, ids: Ids) -> Node:
    if name:
        ids[id(node)] = name
    return node


def _linked(row: Sequence[Node], ids: Ids) -> list[tuple[str, str]]:
    """The canonical tokens of a tree, each with the xml:id of its sign or an empty string."""
    out: list[tuple[str, str]] = []
    for node in row:
        name = ids.get(id(node), "")
        match node:
            case Symbol(text):
                out.append((text, name))
            case Fraction(above, below):
                out += [(r"\frac", name), ("{", ""), *_linked(above, ids), ("}", ""), ("{", ""), *_linked(below, ids)]
                out.append(("}", ""))
            case Root(body, index):
                out.append((r"\sqrt", name))
                if index:
                    out += [("[", ""), *_linked(index, ids), ("]", "")]
                out += [("{", ""), *_linked(body, ids), ("}", "")]
            case Script(base, sub, sup):
                out += _linked((base,), ids)
                for mark, script in (("_", sub), ("^", sup)):
                    if script:
                        out += [(mark, ""), ("{", ""), *_linked(script, ids), ("}", "")]
    return out


def _agree(label: Sequence[str], linked: Sequence[tuple[str, str]]) -> bool:
    """Label and MathML say the same; dots and bars are named loosely in the files."""
    if len(label) != len(linked):
        return False
    return all(a == b or (a in _ALIKE and b in _ALIKE) for a, (b, _) in zip(label, linked, strict=True))


def _complete(
    linked: Sequence[tuple[str, str]], groups: Sequence[int], stroke_groups: Sequence[int], symbols: int
) -> bool:
    """Every sign has a group of its own and every stroke belongs to one."""
    signs = [
        group
        for (token, name), group in zip(linked, groups, strict=True)
        if token not in ("{", "}", "^", "_") and (name or token not in ("[", "]"))
    ]
    complete = all(group >= 0 for group in (*signs, *stroke_groups))
    return complete and len(set(signs)) == len(signs) == symbols


def _parts(row: Row, ids: Ids, by_href: dict[str, int], rng: random.Random, most: int) -> list[Item]:
    candidates: list[Row] = []
    _collect(row, candidates, rng)
    rng.shuffle(candidates)
    seen: dict[tuple[str, ...], Item] = {}
    for part in candidates:
        linked = _linked(part, ids)
        tokens = tuple(token for token, _ in linked)
        if len(seen) < most and len(tokens) > 1 and tokens not in seen and is_valid(tokens):
            seen[tokens] = Item(tokens, tuple(by_href.get(name, -1) if name else -1 for _, name in linked))
    return list(seen.values())


def _collect(row: Row, out: list[Row], rng: random.Random) -> None:
    """Sub-rows that a hand could have written alone: slices with balanced brackets, and what scripts and bars hold."""
    if len(row) >= 4:
        depth = [0]
        for node in row:
            bare = node.base if isinstance(node, Script) else node
            sign = bare.text if isinstance(bare, Symbol) else ""
            depth.append(depth[-1] + (sign in ("(", "[", r"\{")) - (sign in (")", "]", r"\}")))
        for _ in range(4):
            begin = rng.randrange(len(row))
            end = rng.randrange(begin + 1, len(row) + 1)
            if 2 <= end - begin < len(row) and depth[begin] == depth[end] == min(depth[begin : end + 1]):
                out.append(row[begin:end])
    for node in row:
        if isinstance(node, Symbol):
            continue
        inner = (
            (node.numerator, node.denominator) if isinstance(node, Fraction)
            else (node.radicand,) if isinstance(node, Root) else (node.sub, node.sup)
        )  # fmt: skip
        out.append((node,))
        for part in inner:
            if part:
                out.append(part)
                _collect(part, out, rng)
