"""Which slip explains a line that does not follow, and how to say it."""

from checker.slips.diagnosis import Follows, diagnose

__all__ = ["Follows", "diagnose"]
