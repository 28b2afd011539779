"""Trees to quotients of polynomials: letters, and atoms (roots, bars, logs, sines) with the relations they obey."""

from checker.ring.algebra import MAX_LETTERS, Ring, in_ring
from checker.ring.refusals import UndefinedError, UnsupportedError

__all__ = ["MAX_LETTERS", "Ring", "UndefinedError", "UnsupportedError", "in_ring"]
