"""Verdicts over published data, and the time of a comparison beside sympy: `python -m tests.checker.benchmark`."""

from __future__ import annotations

import json
import statistics
import time
from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from string import ascii_letters

import sympy
from sympy.parsing.sympy_parser import parse_expr

from checker.equality import equal
from checker.polynomial import TooLargeError
from checker.report import Working
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Node, nodes_of, parse, to_latex
from checker.verdict import Yes
from checker.working import judge
from checker.written import polynomial_latex
from tests.checker.published import FOLDER

SYMBOLS = {name: sympy.Symbol(name, real=True) for name in ascii_letters}
PAIRS = 150  # compared by sympy too


def rows(name: str) -> Iterator[dict[str, list[str]]]:
    with (FOLDER / name).open(encoding="utf-8") as stream:
        for row in stream:
            yield json.loads(row)


def milliseconds(times: list[float]) -> str:
    ordered = sorted(times)
    p50, p95 = (ordered[int(len(ordered) * share)] * 1e3 for share in (0.5, 0.95))
    return f"p50 {p50:.3f} ms, p95 {p95:.3f} ms, longest {ordered[-1] * 1e3:.0f} ms"


def verdicts() -> None:
    for name in ("chains-math", "chains-openstax", "chains-conditional", "pupil-valid", "pupil-slips"):
        count: Counter[str] = Counter()
        times = []
        for row in rows(f"{name}.jsonl"):
            start = time.perf_counter()
            told = judge(Working(tuple(row["lines"])))
            times.append(time.perf_counter() - start)
            count.update(line.verdict for line in told.lines[1:])
            count["explained"] += sum(line.slip is not None and line.slip.kind != "other" for line in told.lines)
        print(f"{name}: {len(times)} workings, {dict(count)}; a working {milliseconds(times)}")


def rational_pairs() -> Iterator[tuple[Node, Node, sympy.Expr, sympy.Expr]]:
    """Neighbours in published chains that are quotients of polynomials, with sympy's own copies."""

    def copy(node: Node) -> sympy.Expr | None:
        def work(ring: Ring) -> tuple[str, str] | None:
            top, bottom = ring.quotient(node)
            if ring.relations or ring.opaque or any(len(name) > 1 for name in ring.names) or not ring.names:
                return None
            return polynomial_latex(top, ring.names), polynomial_latex(bottom, ring.names)

        try:
            found = in_ring(work)
        except (UnsupportedError, UndefinedError, TooLargeError):
            return None
        return None if found is None else parse_expr(_plain(to_latex(node)), local_dict=SYMBOLS, evaluate=False)

    for row in rows("chains-math.jsonl"):
        nodes = [node for line in row["lines"] for node in nodes_of(parse(line))]
        for a, b in pairwise(nodes):
            try:
                copies = copy(a), copy(b)
            except (SyntaxError, TypeError, sympy.SympifyError):
                continue
            if copies[0] is not None and copies[1] is not None:
                yield a, b, copies[0], copies[1]


def _plain(latex: str) -> str:
    """Enough of LaTeX for sympy: polynomials and fractions without names longer than a letter."""
    out = latex.replace("\\frac{", "({").replace("}{", "})/({").replace("\\cdot ", "*").replace("\\times ", "*")
    out = out.replace("{", "(").replace("}", ")").replace("^", "**").replace("[", "(").replace("]", ")")
    if "\\" in out or "/" in out:
        raise SyntaxError(latex)
    spaced = ""
    for before, char in pairwise(" " + out):
        joined = (before.isalnum() or before == ")") and (char.isalpha() or char == "(")
        joined = joined or ((before.isalpha() or before == ")") and char.isdigit())
        spaced += ("*" if joined else "") + char
    return spaced


def comparison() -> None:
    own, theirs, agreed, done = [], [], 0, 0
    for a, b, copy_a, copy_b in rational_pairs():
        start = time.perf_counter()
        verdict = equal(a, b)
        own.append(time.perf_counter() - start)
        start = time.perf_counter()
        same = sympy.simplify(copy_a - copy_b) == 0
        theirs.append(time.perf_counter() - start)
        agreed += isinstance(verdict, Yes) == same
        if isinstance(verdict, Yes) != same:
            print(f"not alike: {to_latex(a)} and {to_latex(b)}: {verdict}; sympy says {same}")
        done += 1
        if done == PAIRS:
            break
    ratio = statistics.median(theirs) / statistics.median(own)
    print(f"own: {milliseconds(own)}\nsympy simplify(a - b) == 0: {milliseconds(theirs)}")
    print(f"{agreed} of {done} verdicts alike; {ratio:.0f} times faster at the median")


if __name__ == "__main__":
    comparison()
    verdicts()
