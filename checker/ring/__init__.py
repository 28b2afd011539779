"""Trees to quotients of polynomials: letters, and atoms (roots, bars, logs, sines) with the relations they obey."""

from checker.refusals import UndefinedError, UnsupportedError
from checker.ring.algebra import MAX_LETTERS, Ring, in_ring

__all__ = ["MAX_LETTERS", "Ring", "UndefinedError", "UnsupportedError", "in_ring"]
