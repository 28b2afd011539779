"""Whole workings for practice: right throughout, or with one planted slip and true carried error after it."""

from __future__ import annotations

import random
from dataclasses import dataclass
from typing import Any

from checker.practice.book import MISSING, Book, Degenerate, Planted
from checker.practice.equations import EQUATION_TOPICS
from checker.practice.expressions import EXPRESSION_TOPICS

__all__ = ["MISSING", "TOPICS", "Exercise", "Planted", "exercise", "exercises"]

TOPICS = {**EXPRESSION_TOPICS, **EQUATION_TOPICS}
FEWEST, MOST = 3, 8


@dataclass(frozen=True, slots=True)
class Exercise:
    """A working; `slip_line` is the 0-based index of the line with the planted slip."""

    topic: str
    lines: tuple[str, ...]
    slip_line: int | None = None
    slip: Planted | None = None

    def to_json(self) -> dict[str, Any]:
        slip = self.slip
        return {
            "topic": self.topic,
            "lines": list(self.lines),
            "first_slip": self.slip_line,
            "slip": None
            if slip is None
            else {
                "kind": slip.kind,
                "term": slip.term,
                "span": list(slip.span),
                "should_be": slip.should_be,
            },
        }


def exercise(seed: int, *, topic: str | None = None, kind: str | None = None, slipped: bool = True) -> Exercise:
    """One working, the same for the same arguments.

    Args:
        seed: any whole number.
        topic: a key of TOPICS, or None for any.
        kind: the kind of slip wanted, or None for any.
        slipped: whether a slip is planted.
    Raises:
        ValueError: the topic is unknown, or no working of it can hold a slip of this kind.
    """
    if topic is not None and topic not in TOPICS:
        raise ValueError(f"No topic {topic!r}; choose one of: {', '.join(TOPICS)}.")
    for attempt in range(400):
        draws = random.Random(f"{seed}:{attempt}")
        chosen = topic or draws.choice(list(TOPICS))
        found = _attempt(chosen, draws.randrange(2**32), draws, kind, slipped)
        if found is not None:
            return found
    raise ValueError(f"No working of topic {topic or 'any'} holds a slip of kind {kind!r}; choose another kind.")


def _attempt(topic: str, seed: int, draws: random.Random, kind: str | None, slipped: bool) -> Exercise | None:
    book = Book(random.Random(seed))
    try:
        TOPICS[topic](book)
        if not slipped:
            return Exercise(topic, tuple(book.lines)) if FEWEST <= len(book.lines) <= MOST else None
        places = [
            (step, number)
            for step, kinds in enumerate(book.offered)
            for number, found in enumerate(kinds)
            if kind is None or found == kind
        ]
        if not places:
            return None
        kinds = sorted({book.offered[step][number] for step, number in places})
        wanted = draws.choice(kinds)
        book = Book(
            random.Random(seed),
            draws.choice([(step, number) for step, number in places if book.offered[step][number] == wanted]),
        )
        TOPICS[topic](book)
    except Degenerate:
        return None
    if book.slip is None or not FEWEST <= len(book.lines) <= MOST:
        return None
    return Exercise(topic, tuple(book.lines), *book.slip)


def exercises(count: int, *, seed: int = 0, slipped: bool = True) -> list[Exercise]:
    """`count` workings over all topics in turn."""
    topics = list(TOPICS)
    return [exercise(seed * 1_000_003 + n, topic=topics[n % len(topics)], slipped=slipped) for n in range(count)]
