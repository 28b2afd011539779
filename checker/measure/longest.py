"""`python -m checker.measure.longest`: the longest calls into sympy and mpmath at the bounds set for them.

These calls cannot be stopped from inside, so what goes into them is bounded in size: polynomials to be factored, ideals
of two equations, complex roots, intervals. Random inputs of the largest size let in show how long one can take.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Callable, Sequence
from contextlib import suppress
from fractions import Fraction
from random import Random
from typing import Any

from checker.budget import Budget, OutOfTimeError
from checker.factors import irreducible_factors
from checker.measure.published import spread
from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known
from checker.polynomial import BITS, Poly, TooLargeError, multiply
from checker.refusals import UndefinedError, UnsupportedError
from checker.steps import judge_step
from checker.syntax import parse_expression, parse_line
from checker.systems import follows_together

__all__ = ["main", "measure_longest"]

_LETTERS = "xyzw"
Trial = tuple[str, Callable[[], object]]


def measure_longest(count: int, seed: int) -> dict[str, Any]:
    """The time of so many calls of each kind, in milliseconds of the processor, with the longest one's input."""
    found: dict[str, Any] = {}
    for name, trials in _KINDS.items():
        draws = Random(f"{name}{seed}")
        times: list[float] = []
        longest = ""
        for _ in range(count):
            shown, work = trials(draws)
            start = time.process_time()
            with suppress(OutOfTimeError, TooLargeError, UndefinedError, UnsureError, UnsupportedError):
                work()
            took = time.process_time() - start
            if took >= max(times, default=0.0):
                longest = shown
            times.append(took)
        found[name] = {"calls": count, "cpu_ms": spread(times), "longest": longest[:400]}
    return found


def _polynomial(draws: Random, terms: int, degree: int, largest: int) -> Poly:
    letters = draws.randint(1, 4)
    out: Poly = {}
    for _ in range(terms):
        key = sum(1 << (BITS * draws.randrange(letters)) for _ in range(draws.randint(0, degree)))
        out[key] = draws.randint(1, largest) * draws.choice((-1, 1))
    return out


def _factoring(draws: Random) -> Trial:
    if draws.random() < 0.4:
        whole = _polynomial(draws, 40, 12, 10**12 - 1)
    else:
        whole = multiply(_polynomial(draws, 6, 6, 9), _polynomial(draws, 6, 6, 9))
    return str(whole), lambda: irreducible_factors(whole)


def _terms(draws: Random, count: int, degree: int = 3) -> str:
    powers = {"".join(draws.choice(_LETTERS) for _ in range(draws.randint(0, degree))) for _ in range(count)}
    return "+".join(f"{draws.randint(1, 999)}{one}" for one in sorted(powers))


def _ideals(draws: Random) -> Trial:
    equations, branches = (
        [f"{_terms(draws, draws.choice((2, 4, 12)), draws.randint(1, 3))}=0" for _ in range(draws.randint(low, high))]
        for low, high in ((2, 6), (1, 8))
    )
    earlier = [(at, parse_line(text).statement) for at, text in enumerate(equations)]
    after = parse_line(" or ".join(branches)).statement
    return f"{equations} -> {branches}", lambda: follows_together(earlier, after, Known(budget=Budget(2.0)))


def _complex_roots(draws: Random) -> Trial:
    texts = ["+".join(f"{draws.randint(1, 999)}x^{{{at}}}" for at in range(draws.randint(3, 19))) + "=i" for _ in "ab"]
    before, after = (parse_line(text).statement for text in texts)
    known = Known(budget=Budget(2.0), complex_numbers=True)
    return str(texts), lambda: judge_step(before, after, known)


def _intervals(draws: Random) -> Trial:
    inner = draws.choice(("10^{{{n}}}", "x^{{{n}}}", "\\sqrt[{n}]{{x}}", "e^{{{n}}}", "1.0001^{{{n}}}", "{n}!"))
    text = inner.format(n=draws.choice((3, 50, 400, 499, 9_999, 17_000)))
    for _ in range(draws.randint(1, 4)):
        text = f"\\{draws.choice(('sin', 'cos', 'tan', 'ln', 'exp', 'sinh', 'tanh', 'arctan'))}({text})"
    node = parse_expression(text)
    return text, lambda: Evaluator({"x": Fraction(draws.choice((2, 7)))}, euler=True).value(node)


_KINDS: dict[str, Callable[[Random], Trial]] = {
    "polynomials factored (sympy)": _factoring, "ideals of two equations (sympy)": _ideals,
    "complex roots (mpmath)": _complex_roots, "intervals (mpmath)": _intervals,
}


def _count(text: str) -> int:
    return max(1, int(text))


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the measurement as one JSON object.

    Returns:
        0 when no call took longer than two seconds of the processor, else 1.
    """
    parser = argparse.ArgumentParser(prog="python -m checker.measure.longest", description=__doc__)
    parser.add_argument("--count", type=_count, default=1_000, help="calls of each kind (default 1000)")
    parser.add_argument("--seed", type=int, default=1, help="of the chance (default 1)")
    options = parser.parse_args(arguments)
    found = measure_longest(options.count, options.seed)
    sys.stdout.write(json.dumps(found, ensure_ascii=False, indent=1) + "\n")
    return 0 if all(row["cpu_ms"]["max"] < 2_000 for row in found.values()) else 1


if __name__ == "__main__":
    raise SystemExit(main())
