"""Published chains and pupils' steps: nothing right is accused, what is wrong is caught."""

from collections import Counter

import pytest

from checker.report import Working
from checker.working import judge
from tests.checker.published import rows


@pytest.mark.slow
@pytest.mark.parametrize(
    ("name", "every", "most_undecided", "most_unreadable", "most_soft"),
    [
        # Source: MATH (arXiv 2103.03874), worked solutions; MIT. One step of 5,053 really gains a root.
        ("chains-math.jsonl", 4, 0, 0, 1),
        # Source: OpenStax bundles 38cae454 and 789b5409, CC BY-NC-SA 4.0. Undecided: an even or odd index n of a root,
        # and slopes over zero; unreadable: two powers one after the other; soft: a root gained over a denominator.
        ("chains-openstax.jsonl", 2, 4, 1, 1),
        # Source: steps of real pupils published with arXiv 2305.06163, CC BY 4.0, that keep the solution set.
        ("pupil-valid.jsonl", 4, 0, 0, 0),
    ],
)
def test_right_steps_are_not_accused(
    name: str, every: int, most_undecided: int, most_unreadable: int, most_soft: int
) -> None:
    count: Counter[str] = Counter()
    for row in rows(name)[::every]:
        told = judge(Working(tuple(row["lines"])))
        count.update(line.verdict for line in told.lines)
        assert told.first_slip is None, row
    assert count["slip"] == count["ft"] == 0
    assert count["undecided"] <= most_undecided
    assert count["unreadable"] <= most_unreadable
    assert count["adds"] + count["loses"] <= most_soft


def test_chains_that_hold_only_on_a_condition_are_not_called_right() -> None:
    # Source: MATH, three chains that need positive letters; the data name a point where each fails.
    for row in rows("chains-conditional.jsonl"):
        told = judge(Working(tuple(row["lines"])))
        assert any(line.verdict in ("slip", "undecided") for line in told.lines), row


def test_identities_of_handbook_and_textbooks_hold() -> None:
    # Source: NIST DLMF 4.8, 4.14, 4.21 (equation numbers in the data); OpenStax; MATH.
    for name in ("identities-dlmf.jsonl", "identities-openstax.jsonl", "identities-math.jsonl"):
        for row in rows(name):
            for line in row["lines"]:
                told = judge(Working((line,), task="identity"))
                assert told.final.correct is not False, line


@pytest.mark.slow
def test_wrong_steps_of_pupils_are_caught() -> None:
    # Source: steps of real pupils published with arXiv 2305.06163, CC BY 4.0, whose solution sets differ.
    caught = explained = 0
    wrong = rows("pupil-slips.jsonl")[::4]
    for row in wrong:
        told = judge(Working(tuple(row["lines"])))
        slip = told.lines[1].slip
        caught += told.first_slip == 1
        if slip is not None:
            explained += slip.kind != "other"
            repaired = judge(Working((row["lines"][0], slip.repaired)))
            assert repaired.lines[1].verdict == "follows", (row, slip)
    assert caught >= 0.98 * len(wrong)
    assert explained >= 0.9 * caught
