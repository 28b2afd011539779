"""How the time of a comparison grows with terms and letters, beside sympy in the same run."""

from __future__ import annotations

import re
import time
from random import Random
from typing import Any

import sympy

from checker.measure.algebra import to_sympy
from checker.measure.speed import MICROSECONDS, Judge, judges
from checker.syntax import parse_expression

__all__ = ["measure_growth"]

TERMS = {5: (5, 1), 10: (5, 2), 20: (5, 4), 50: (10, 5), 100: (10, 10)}  # of a product, as terms of its two factors
LETTERS = (1, 2, 4, 6)
_NAMES = "xyzabk"
_OWN_RUNS = 5


def measure_growth(seed: int = 1) -> list[dict[str, Any]]:
    """A product of two sums against what it is multiplied out, and against that with one number changed.

    Returns:
        One row for each number of terms and letters: the median time of each judge in microseconds of the processor,
        and how often it was wrong or undecided in the two comparisons.
    """
    draws = Random(seed)
    return [_row(terms, letters, draws) for letters in LETTERS for terms in TERMS]


def _row(terms: int, letters: int, draws: Random) -> dict[str, Any]:
    first, second = _factors(terms, letters, draws)
    product = f"({first})({second})"
    whole = sympy.expand(to_sympy(parse_expression(product)))
    written = [_latex(term) for term in whole.as_ordered_terms()]
    right = "+".join(written)
    place = draws.choice(list(re.finditer(r"\d+", right)))
    wrong = right[:place.start()] + str(int(place.group()) + 1) + right[place.end():]
    row: dict[str, Any] = {"terms": len(written), "letters": letters}
    for name, judge in judges().items():
        row[name] = _timed(judge, product, (right, wrong), _OWN_RUNS if name == "own" else 1)
    return row


def _latex(term: Any) -> str:
    text = re.sub(r"\*\*(\d+)", r"^{\1}", str(term)).replace("*", "")
    return text if re.match(r"-?\d", text) else re.sub(r"^(-?)", r"\g<1>1", text)


def _factors(terms: int, letters: int, draws: Random) -> tuple[str, str]:
    if letters == 1:
        sizes = ((terms + 1) // 2, terms // 2 + 1)
        return tuple(_sum([f"x^{{{power}}}" for power in range(size)], draws) for size in sizes)  # type: ignore[return-value]
    names = _NAMES[:letters]
    sums = []
    for size in TERMS[terms]:
        found: set[str] = set()
        while len(found) < size:
            powers = [draws.randint(0, 9) for _ in names]
            found.add("".join(f"{name}^{{{power}}}" for name, power in zip(names, powers, strict=True) if power))
        sums.append(_sum(sorted(found), draws))
    return sums[0], sums[1]


def _sum(monomials: list[str], draws: Random) -> str:
    return "+".join(f"{draws.randint(2, 9)}{one}" for one in monomials)


def _timed(judge: Judge, product: str, others: tuple[str, str], runs: int) -> dict[str, Any]:
    wrong = undecided = 0
    times = []
    a = parse_expression(product)
    for text, truth in zip(others, (True, False), strict=True):
        b = parse_expression(text)
        copies = to_sympy(a), to_sympy(b)
        for _ in range(runs):
            sympy.core.cache.clear_cache()
            start = time.process_time()
            found = judge(a, b, *copies)
            times.append(time.process_time() - start)
        undecided += found is None
        wrong += found is not None and found != truth
    times.sort()
    return {"us": round(times[len(times) // 2] * MICROSECONDS), "wrong": wrong, "undecided": undecided}

