"""Which slip explains a line that does not follow, and how to say it."""

from checker.slips.diagnosis import Follows, diagnose
from checker.slips.hints import hint

__all__ = ["Follows", "diagnose", "hint"]
