"""Why an expression cannot be taken into exact algebra."""

from __future__ import annotations

__all__ = ["RegrowError", "UndefinedError", "UnsupportedError"]


class UndefinedError(Exception):
    """The expression has no value, such as 1/0."""


class UnsupportedError(Exception):
    """A construct that exact algebra here does not take."""


class RegrowError(Exception):
    """A root of higher index than planned is needed: begin again with it."""
