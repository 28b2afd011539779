"""Errors that are the user's to mend, and the signal that a long job was stopped."""

__all__ = ["Cancelled", "InputError", "ModelError"]


class InputError(Exception):
    """A sentence fit to show: what is wrong, where, and what to do next."""


class ModelError(InputError):
    """The shipped weights are missing or damaged."""


class Cancelled(BaseException):
    """The user stopped the job; no error, so a careless `except Exception` lets it pass."""
