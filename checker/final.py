"""The final answer: is it right, has it the form that was asked, and what was expected?"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction as Rational
from math import gcd

import sympy

from checker.budget import Budget, OutOfTimeError
from checker.equality import equal
from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known
from checker.polynomial import Poly, TooLargeError, exponents, is_constant, letters_in, multiply, power
from checker.real_roots import RealNumber
from checker.relations import compare_relations, free_letters, solved_letter, unfolded_branches
from checker.report import Final
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.solutions import critical_values, is_true, links, places_of, solution_set
from checker.steps import value_of_line
from checker.substitution import known_values, solved_for
from checker.syntax import (
    Alternatives,
    Bracket,
    Expression,
    Fraction,
    Negation,
    Node,
    Note,
    Number,
    Power,
    Product,
    Statement,
    Sum,
    Symbol,
    System,
    letters,
    to_latex,
    walk,
)
from checker.verdict import No, Yes
from checker.written import polynomial_latex

__all__ = ["final_answer", "written_out"]

_AT_MOST = {True: " \\le ", False: "<"}
_AT_LEAST = {True: " \\ge ", False: ">"}


def final_answer(starts: Sequence[Statement], lines: Sequence[Statement], known: Known) -> Final:
    """Judge the last line against the first, or against the question as set.

    Args:
        starts: the question, or the lines taken as given.
        lines: statements of the readable lines, the first among them.
        known: time, task and givens.
    """
    told = [line for line in lines if not isinstance(line, Note)]
    if not told:
        return Final()
    first = starts[0]
    try:
        if isinstance(first, Expression):
            return _of_value(first.body, told[-1], known)
        if known.task == "identity":
            return _of_identity(first, known)
        if len(starts) > 1 or isinstance(first, System):
            return _of_system(starts, told, known)
        return _of_condition(first, told, known)
    except (UnsupportedError, UndefinedError, TooLargeError, UnsureError, OutOfTimeError):
        return Final()


# values


def _of_value(start: Node, last: Statement, known: Known) -> Final:
    answer = value_of_line(last)
    expected = written_out(start, known)
    if answer is None:
        return Final(expected=expected or "")
    verdict = equal(start, answer, budget=known.budget, euler=known.euler)
    correct = True if isinstance(verdict, Yes) else False if isinstance(verdict, No) else None
    form = _form(answer, known) if known.task in ("expand", "factorise", "simplify") else None
    return Final(correct, form, expected or "")


def written_out(start: Node, known: Known) -> str | None:
    """The value as the task wants it: factorised for "factorise", over a common denominator else; None when unknown."""

    def work(ring: Ring) -> str | None:
        top, bottom = ring.quotient(start)
        if any(ring.names[letter].startswith("\0") for letter in letters_in(top) | letters_in(bottom)):
            return None
        if "i" in ring.index and ring.index["i"] in letters_in(bottom):
            return None
        if is_constant(bottom):
            if known.task == "factorise":
                return _factorised(top, bottom[0], ring.names)
            return polynomial_latex(top, ring.names, bottom[0])
        return _cancelled(top, bottom, ring.names)

    try:
        return in_ring(work, euler=known.euler)
    except (UnsupportedError, UndefinedError, TooLargeError):
        return None


def _is_small(poly: Poly) -> bool:
    return len(poly) <= 40 and len(letters_in(poly)) <= 4 and all(
        sum(times for _, times in exponents(key)) <= 12 for key in poly
    ) and all(abs(value) < 10**12 for value in poly.values())


def _factors(poly: Poly) -> tuple[int, list[tuple[Poly, int]]] | None:
    """The content and the irreducible factors over the rationals; None when too large to try."""
    if not _is_small(poly):
        return None
    used = sorted(letters_in(poly))
    if not used:
        return poly.get(0, 0), []
    symbols = sympy.symbols(f"v0:{len(used)}")
    rows = {}
    for key, value in poly.items():
        powers = dict(exponents(key))
        rows[tuple(powers.get(letter, 0) for letter in used)] = value
    whole = sympy.Poly.from_dict(rows, *symbols, domain="ZZ")
    content, found = sympy.factor_list(whole)
    out = []
    for factor, times in found:
        back: Poly = {}
        for powers_of, value in factor.terms():
            back[sum(raised << (20 * letter) for raised, letter in zip(powers_of, used, strict=True))] = int(value)
        out.append((back, times))
    return int(content), out


def _factorised(poly: Poly, bottom: int, names: list[str]) -> str | None:
    parts = _factors(poly)
    if parts is None:
        return None
    content, found = parts
    common = gcd(content, bottom)
    share = Rational(content // common, bottom // common)
    plain = "".join(
        polynomial_latex(factor, names) + ("" if times == 1 else f"^{times}" if times < 10 else f"^{{{times}}}")
        for factor, times in sorted(found, key=lambda one: _order(one[0], names)) if len(factor) == 1
    )
    sums = sorted((one for one in found if len(one[0]) > 1), key=lambda one: _order(one[0], names))
    if len(sums) == 1 and sums[0][1] == 1 and share == 1 and not plain:
        return polynomial_latex(sums[0][0], names)
    brackets = "".join(
        f"({polynomial_latex(factor, names)})" + ("" if times == 1 else f"^{times}") for factor, times in sums
    )
    if share == 1 and (plain or brackets):
        head = ""
    elif share == -1 and (plain or brackets):
        head = "-"
    else:
        head = polynomial_latex({0: share.numerator}, names, share.denominator)
    return head + plain + brackets


def _order(poly: Poly, names: list[str]) -> tuple[int, str]:
    degree = max(sum(times for _, times in exponents(key)) for key in poly)
    return degree, polynomial_latex(poly, names)


def _cancelled(top: Poly, bottom: Poly, names: list[str]) -> str | None:
    """The quotient with common factors taken out."""
    above, below = _factors(top), _factors(bottom)
    if above is None or below is None:
        return None
    if not top:
        return "0"
    rest_above, rest_below = list(above[1]), []
    for factor, times in below[1]:
        for at, (other, count) in enumerate(rest_above):
            if other == factor or other == {key: -value for key, value in factor.items()}:
                shared = min(times, count)
                if other != factor and shared % 2:
                    above = (-above[0], above[1])
                rest_above[at] = (other, count - shared)
                times -= shared
        if times:
            rest_below.append((factor, times))
    ratio = Rational(above[0], below[0])
    new_top = _multiplied(ratio.numerator, rest_above)
    new_bottom = _multiplied(ratio.denominator, rest_below)
    if is_constant(new_bottom):
        return polynomial_latex(new_top, names, new_bottom[0])
    return f"\\frac{{{polynomial_latex(new_top, names)}}}{{{polynomial_latex(new_bottom, names)}}}"


def _multiplied(number: int, factors: Sequence[tuple[Poly, int]]) -> Poly:
    out: Poly = {0: number}
    for factor, times in factors:
        out = multiply(out, power(factor, times))
    return out


# forms


def _plain(node: Node) -> Node:
    return _plain(node.body) if isinstance(node, Bracket) else node


def _form(answer: Node, known: Known) -> bool | None:
    node = _plain(answer)
    if known.task == "factorise":
        return _is_factorised(node, known)
    if known.task == "expand":
        return _is_collected(node, known)

    def fraction(ring: Ring) -> bool | None:
        top, bottom = ring.quotient(node)
        if ring.relations or is_constant(bottom):
            return None
        above, below = _factors(top), _factors(bottom)
        if above is None or below is None:
            return None
        shared = [factor for factor, _ in below[1] if any(factor == other for other, _ in above[1])]
        return not shared and gcd(above[0], below[0]) == 1

    found = in_ring(fraction, euler=known.euler)
    return _is_collected(node, known) or _is_factorised(node, known) if found is None else found


def _is_collected(node: Node, known: Known) -> bool | None:
    """No bracket left around a sum, and as many terms as the value has."""
    if any(isinstance(part, Bracket) and isinstance(_plain(part), Sum) for part in walk(node)):
        return False
    terms = len(node.terms) if isinstance(node, Sum) else 1

    def work(ring: Ring) -> bool | None:
        top, bottom = ring.quotient(node)
        if not is_constant(bottom):
            return None
        bodies = [term.body for term in node.terms] if isinstance(node, Sum) else [node]
        return terms == max(1, len(top)) and all(_is_monomial(body) for body in bodies)

    return in_ring(work, euler=known.euler)


def _is_monomial(node: Node) -> bool:
    """At most one number in front, each letter once."""
    seen: set[str] = set()
    numbers = 0
    node = _plain(node)
    factors = node.factors if isinstance(node, Product) else (node,)
    for factor in factors:
        base = factor.base if isinstance(factor, Power) else factor
        names = letters(base)
        if not names:
            numbers += 1
        elif names & seen:
            return False
        seen |= names
    return numbers <= 1


def _is_factorised(node: Node, known: Known) -> bool | None:
    """As many factors written as there are irreducible ones, each sum without a common factor of its own."""
    if isinstance(node, Negation):
        node = _plain(node.body)
    factors = node.factors if isinstance(node, Product) else (node,)
    written: list[tuple[Node, int]] = []
    for factor in factors:
        inner = _plain(factor)
        times = 1
        if isinstance(inner, Power) and isinstance(inner.exponent, Number) and inner.exponent.value.denominator == 1:
            times, inner = int(inner.exponent.value), _plain(inner.base)
        if isinstance(inner, Product):
            written += [(_plain(one), times) for one in inner.factors]
        else:
            written.append((inner, times))

    def work(ring: Ring) -> bool | None:
        top, bottom = ring.quotient(node)
        if not is_constant(bottom) or ring.relations:
            return None
        parts = _factors(top)
        if parts is None:
            return None
        count = 0
        for inner, times in written:
            poly, below = ring.quotient(inner)
            if is_constant(poly):
                continue
            count += times * (sum(count_of for _, count_of in exponents(next(iter(poly)))) if len(poly) == 1 else 1)
            content = 0
            for value in poly.values():
                content = gcd(content, value)
            if len(poly) > 1 and content > 1 and below == {0: 1}:
                return False
        needed = sum(
            times * (sum(count_of for _, count_of in exponents(next(iter(factor)))) if len(factor) == 1 else 1)
            for factor, times in parts[1]
        )
        return count == needed

    return in_ring(work, euler=known.euler)


# conditions


def _of_identity(first: Statement, known: Known) -> Final:
    verdicts = [equal(left, right, budget=known.budget, euler=known.euler) for left, _, right in links(first)]
    if any(isinstance(verdict, No) for verdict in verdicts):
        return Final(False, None, "not an identity")
    if verdicts and all(isinstance(verdict, Yes) for verdict in verdicts):
        return Final(True, None, "true for all values")
    return Final()


def _of_condition(first: Statement, told: Sequence[Statement], known: Known) -> Final:
    names = free_letters(first, known)
    if not names or isinstance(told[-1], Expression):
        return Final()
    answer = _gathered_answer(told)
    name = next(iter(names)) if len(names) == 1 else solved_letter(answer)
    expected = _solutions_text(first, name, known.budget, known) if name and names == {name} else ""
    outcome = compare_relations(first, answer, known)
    correct = True if outcome.kind == "follows" else None if outcome.kind == "undecided" else False
    if free_letters(answer, known) != names and outcome.kind != "follows":
        correct = None
    form = _is_solved(answer, name) if known.task == "solve" or expected else None
    return Final(correct, form, expected)


def _of_system(starts: Sequence[Statement], told: Sequence[Statement], known: Known) -> Final:
    """Numbers for every letter, put into each equation given."""
    values = {
        name: node for name, node in known_values(told).items() if not letters(node) - {"pi", "e"}
    }
    names = frozenset().union(*(free_letters(start, known) for start in starts))
    if not names or not names <= values.keys():
        return Final()
    point = {name: Evaluator({}, euler=known.euler).value(values[name]) for name in names}
    evaluator = Evaluator(point, euler=known.euler)
    correct = all(is_true(start, evaluator) for start in starts)
    return Final(correct, all(_is_final_number(values[name]) for name in names))


def _gathered_answer(told: Sequence[Statement]) -> Statement:
    """The last line; with the lines just before it when each gives one value of the same letter."""
    last = told[-1]
    name = solved_letter(last)
    if name is None:
        return last
    branches = list(unfolded_branches(last))
    for line in reversed(told[1:-1]):
        if solved_letter(line) != name or letters(line) != {name} or not _are_numbers(line):
            break
        seen = {to_latex(branch) for branch in branches}
        branches += [branch for branch in unfolded_branches(line) if to_latex(branch) not in seen]
    return last if len(branches) == 1 else Alternatives(last.span, tuple(branches))


def _are_numbers(line: Statement) -> bool:
    return all(_is_final_number(solved[1]) for branch in unfolded_branches(line) if (solved := solved_for(branch)))


def _solutions_text(first: Statement, name: str, budget: Budget, known: Known) -> str:
    try:
        roots, stretches = solution_set(first, name, budget, euler=known.euler)
    except (UnsupportedError, TooLargeError, UnsureError):
        return ""
    if stretches:
        return _stretches_text(first, name, known)
    return " \\text{ or } ".join(f"{name}={root.latex}" for root in roots) if roots else "\\text{no solution}"


def _stretches_text(first: Statement, name: str, known: Known) -> str:
    """The solutions of an inequality as intervals."""
    values, proved = critical_values(first, name, {}, known.budget, euler=known.euler)
    if not proved:
        return ""
    runs: list[tuple[RealNumber | None, bool, RealNumber | None, bool]] = []
    start: tuple[RealNumber | None, bool] | None = None
    last_point: RealNumber | None = None
    places = places_of(values)
    for place, is_stretch in places:
        inside = is_true(first, Evaluator({name: place.value}, euler=known.euler))
        if inside and start is None:
            start = (last_point, False) if is_stretch else (place, True)
        elif not inside and start is not None:
            runs.append((*start, place if not is_stretch else last_point, is_stretch))
            start = None
        if not is_stretch:
            last_point = place
    if start is not None:
        runs.append((*start, None, False))
    return " \\text{ or } ".join(_run_text(name, *run) for run in runs)


def _run_text(name: str, low: RealNumber | None, with_low: bool, high: RealNumber | None, with_high: bool) -> str:
    if low is None and high is None:
        return f"\\text{{every }}{name}"
    if low is None:
        assert high is not None
        return f"{name}{_AT_MOST[with_high]}{high.latex}"
    if high is None:
        return f"{name}{_AT_LEAST[with_low]}{low.latex}"
    if low.latex == high.latex:
        return f"{name}={low.latex}"
    return f"{low.latex}{_AT_MOST[with_low]}{name}{_AT_MOST[with_high]}{high.latex}"


def _is_solved(answer: Statement, name: str | None) -> bool | None:
    branches = unfolded_branches(answer)
    solved = [solved_for(branch) for branch in branches]
    if all(one is not None for one in solved):
        return all(one is not None and (name is None or one[0] == name) and _is_final_number(one[1]) for one in solved)
    sides = [side for left, sign, right in links(answer) if sign != "=" for side in (left, right)]
    if sides and len(sides) >= len(branches):
        return all(isinstance(side, Symbol) or _is_final_number(side) for side in sides)
    return False


def _is_final_number(node: Node) -> bool:
    """Worked out: a number, a fraction in lowest terms, or what holds a root, pi or a letter."""
    node = _plain(node)
    if isinstance(node, Negation):
        node = _plain(node.body)
    if isinstance(node, Number | Symbol):
        return True
    if isinstance(node, Fraction) and isinstance(node.numerator, Number) and isinstance(node.denominator, Number):
        top, bottom = node.numerator.value, node.denominator.value
        return bottom.denominator == 1 and top.denominator == 1 and gcd(int(top), int(bottom)) == 1 and bottom != 1
    if letters(node) - {"pi", "e", "i"}:
        return True

    def work(ring: Ring) -> bool:
        value = ring.quotient(node)
        return not (is_constant(value[0]) and is_constant(value[1]))

    return in_ring(work)
