"""A time allowance that the checker's own loops look at, so that no line hangs."""

from __future__ import annotations

import time

__all__ = ["Budget", "OutOfTimeError"]


class OutOfTimeError(Exception):
    """The time allowance is spent."""


class Budget:
    """Time that may be spent, in seconds from now by the clock: a user waits by the clock."""

    __slots__ = ("end",)

    def __init__(self, seconds: float) -> None:
        self.end = time.monotonic() + seconds

    @property
    def left(self) -> float:
        return self.end - time.monotonic()

    def is_over(self) -> bool:
        return time.monotonic() > self.end

    def check(self) -> None:
        """Raises:
        OutOfTimeError: nothing is left.
        """
        if self.is_over():
            raise OutOfTimeError

    def part(self, seconds: float) -> Budget:
        """A smaller allowance inside this one."""
        return Budget(max(0.0, min(seconds, self.left)))
