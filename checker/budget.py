"""A time allowance that the checker's own loops look at, so that no line hangs."""

from __future__ import annotations

import time

__all__ = ["Budget", "OutOfTimeError"]

_PATIENCE = 3.0  # how many times the allowance may pass by the clock while the processor is busy with something else


class OutOfTimeError(Exception):
    """The time allowance is spent."""


class Budget:
    """Time that the processor may spend in this thread, in seconds from now.

    What is decided should not hang on what else the machine is doing; so the clock alone ends nothing before three
    times the allowance has passed.
    """

    __slots__ = ("end", "latest", "spent")

    def __init__(self, seconds: float) -> None:
        now = time.monotonic()
        self.end = now + seconds
        self.latest = now + _PATIENCE * seconds
        self.spent = time.thread_time() + seconds

    @property
    def left(self) -> float:
        return min(self.spent - time.thread_time(), self.latest - time.monotonic())

    def is_over(self) -> bool:
        # the clock is looked at first, as that is quick, and no more is spent than has passed
        now = time.monotonic()
        return now > self.end and (now > self.latest or time.thread_time() > self.spent)

    def check(self) -> None:
        """Raises:
        OutOfTimeError: nothing is left.
        """
        if self.is_over():
            raise OutOfTimeError

    def part(self, seconds: float) -> Budget:
        """A smaller allowance inside this one."""
        return Budget(max(0.0, min(seconds, self.left)))
