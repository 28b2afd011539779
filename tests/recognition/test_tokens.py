"""Tokens and the canonical form of a line."""

import json
import lzma
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from recognition.reader.tokens import (
    LOWER_SCHOOL,
    SCHOOL,
    SPECIAL,
    TOKEN_ID,
    VOCABULARY,
    Fraction,
    NotCanonical,
    Root,
    Script,
    Symbol,
    is_lower_school,
    is_school,
    is_valid,
    normalise,
    parse,
    serialise,
)

DATA = Path(os.environ.get("FIRSTSLIP_DATA", Path(__file__).resolve().parents[3] / "shared" / "data"))


def test_first_128_tokens_keep_the_order_that_the_first_weights_were_taught():
    # common practice, no source: digits, letters, then signs; a token's place is the number of the network's output.
    assert len(VOCABULARY) == len(set(VOCABULARY)) == 133
    assert VOCABULARY[:4] == SPECIAL
    assert "".join(VOCABULARY[4:14]) == "0123456789"
    assert [TOKEN_ID[token] for token in ("a", "A", "+", "^", r"\frac", r"\therefore")] == [14, 40, 66, 92, 96, 127]
    assert VOCABULARY[128:] == (r"\text{or}", r"\text{and}", r"\circ", r"\because", r"\Leftrightarrow")


@pytest.mark.parametrize(
    ("latex", "canonical"),
    [
        ("x^2+3x-4=0", "x ^ { 2 } + 3 x - 4 = 0"),
        (r"\frac12", r"\frac { 1 } { 2 }"),
        (r"a_1^{n+1}", "a _ { 1 } ^ { n + 1 }"),
        (r"a^{n+1}_1", "a _ { 1 } ^ { n + 1 }"),
        (r"\sqrt[3]{x}\leq{\left(a+b\right)}^2", r"\sqrt [ 3 ] { x } \le ( a + b ) ^ { 2 }"),
        (r"y''", r"y ^ { \prime \prime }"),
        (r"y'^2", r"y ^ { \prime 2 }"),
        (r"y^2'", r"y ^ { \prime 2 }"),
        (r"y \prime", r"y ^ { \prime }"),
        (r"x=2\text{ or }x=-5", r"x = 2 \text{or} x = - 5"),
        (r"x=2 \mathrm { o r } x=-5", r"x = 2 \text{or} x = - 5"),
        (r"x>1\mbox{and}x<2", r"x > 1 \text{and} x < 2"),
        ("o r", "o r"),
        (r"90^\circ", r"90 ^ { \circ }".replace("90", "9 0")),
        ("90°", r"9 0 ^ { \circ }"),
        (r"x \not= 3", r"x \ne 3"),
        (r"\because a \iff b", r"\because a \Leftrightarrow b"),
        (r"\left. x \right|", "x |"),
        (r"1 + \cdots + n", r"1 + \ldots + n"),
        (r"\{x\}", r"\{ x \}"),
    ],
)
def test_canonical_form(latex, canonical):
    assert " ".join(normalise(latex)) == canonical
    assert normalise(canonical) == canonical.split()


@pytest.mark.parametrize(
    "latex",
    [
        "{x",
        "x}",
        r"\frac{}{2}",
        r"\frac{1}",
        r"\sqrt{}",
        r"\sqrt[3 x",
        "_2",
        "{}^2",
        "x_1_2",
        r"\foo",
        "é",
        "x^",
        "{" * 5000,
        "x" + "^{x" * 5000,
    ],
)
def test_what_has_no_canonical_form_is_refused(latex):
    with pytest.raises(NotCanonical):
        normalise(latex)


def test_tree_says_what_is_written_where():
    assert parse(r"\frac{x}{2}^3\sqrt[3]{y}") == (
        Script(Fraction((Symbol("x"),), (Symbol("2"),)), (), (Symbol("3"),)),
        Root((Symbol("y"),), (Symbol("3"),)),
    )


def test_only_canonical_tokens_are_valid():
    assert is_valid(["x", "^", "{", "2", "}"])
    assert not is_valid(["x", "^", "2"])
    assert not is_valid(["x", "^", "{", "}"])
    assert not is_valid(["{", "x", "}"])
    assert not is_valid([])
    assert not is_valid(["<eos>"])
    assert not is_valid([r"\cdots"])


def test_school_algebra_is_told_from_the_rest():
    assert is_school(normalise(r"\frac{2\pi A}{3}=x^2"))
    assert not is_school(normalise(r"\int x dx"))
    assert not is_school(normalise("a_1"))
    assert not is_school(normalise("[x]"))
    assert is_lower_school(normalise("x^2=4"))
    assert not is_lower_school(normalise("X^2=4"))
    assert not is_lower_school(normalise("l+o"))
    assert LOWER_SCHOOL < SCHOOL


_symbols = st.sampled_from([t for t in VOCABULARY[4:] if t not in ("^", "_", "{", "}", r"\frac", r"\sqrt")])
_soup = st.lists(st.one_of(_symbols, st.sampled_from(["^", "_", "{", "}", r"\frac", r"\sqrt", "'", r"\prime", "]"])))


@settings(max_examples=400, deadline=None)
@given(_soup)
def test_canonical_form_of_any_tokens_is_a_fixed_point(tokens):
    try:
        once = normalise(" ".join(tokens))
    except NotCanonical:
        return
    assert normalise(" ".join(once)) == once
    assert is_valid(once) or not once


def _rows() -> st.SearchStrategy[tuple]:
    symbol = st.builds(Symbol, _symbols.filter(lambda t: t not in ("[", "]", r"\prime")))
    return st.recursive(
        st.lists(symbol, min_size=1, max_size=3).map(tuple),
        lambda rows: st.lists(
            st.one_of(
                symbol,
                st.builds(Fraction, rows, rows),
                st.builds(Root, rows, st.one_of(st.just(()), rows)),
                st.builds(Script, symbol, st.just(()), rows),
                st.builds(Script, symbol, rows, st.one_of(st.just(()), rows)),
            ),
            min_size=1,
            max_size=3,
        ).map(tuple),
        max_leaves=8,
    )


@settings(max_examples=200, deadline=None)
@given(_rows())
def test_a_tree_comes_back_from_its_tokens(row):
    assert parse(" ".join(serialise(row))) == row


def _labels(name: str) -> Iterator[str]:
    path = DATA / name
    if not path.exists():
        pytest.skip(f"{name} is not in the data folder")
    with lzma.open(path, "rt", encoding="utf-8") as file:
        for line in file:
            latex = json.loads(line)["latex"] if ".jsonl" in name else line
            if latex:
                yield latex


@pytest.mark.parametrize(
    ("name", "least"),
    [  # Source: CROHME labels (Mouchere et al. 2014, Mahdavi et al. 2019), HME100K labels (arXiv 2203.01601)
        ("crohme/test2013.jsonl.xz", 667),
        ("crohme/test2014.jsonl.xz", 983),
        ("crohme/train.jsonl.xz", 9629),
        ("mathwriting/sample.jsonl.xz", 190),
        ("line-texts/lines.txt.xz", 52000),
    ],
)
def test_canonical_form_of_published_labels_is_a_fixed_point(name, least):
    good = 0
    for latex in _labels(name):
        try:
            once = normalise(latex)
        except NotCanonical:
            continue
        good += 1
        assert normalise(" ".join(once)) == once, latex
    assert good >= least
