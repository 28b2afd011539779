"""The grammar table: every example parses, holds the kind named, and is read as said."""

import re
from pathlib import Path

import pytest

import checker.syntax
from checker.syntax import nodes_of, parse_line, to_latex, walk

TABLE = Path(checker.syntax.__file__).with_name("GRAMMAR.md")
_CELL = re.compile(r"\| (?P<name>[^|]+) \| `(?P<example>.+?)` \| (?P<kind>[A-Z]\w+) \| (?P<read>.+) \|$")


def table() -> list[tuple[str, str, str, str]]:
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    return [match.group("name", "example", "kind", "read") for line in lines if (match := _CELL.match(line))]


def test_every_row_of_the_table_is_tested() -> None:
    written = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if line.startswith("| ")]
    heads = [line for line in written if line.startswith(("| construct", "| ---"))]
    assert len(table()) == len(written) - len(heads) > 50


@pytest.mark.parametrize(("name", "example", "kind", "read"), table())
def test_construct_is_read_as_the_table_says(name: str, example: str, kind: str, read: str) -> None:
    line = parse_line(example)
    kinds = {type(line.statement).__name__} | {
        type(node).__name__ for top in nodes_of(line.statement) for node in walk(top)
    }
    assert kind in kinds, name
    if read.startswith("`"):
        assert to_latex(line.statement) == read.strip("`"), name
