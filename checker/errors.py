"""Errors that are the user's to mend: what is wrong, where, and what to do next."""

__all__ = ["InputError", "ParseError"]


class InputError(Exception):
    """A sentence fit to show to the user."""


class ParseError(InputError):
    """A line that is not LaTeX the checker can read.

    Args:
        text: the line as given.
        position: where reading stopped, 0 to len(text).
        expected: what would have fitted there, as a noun phrase.
    """

    def __init__(self, text: str, position: int, expected: str) -> None:
        self.text = text
        self.position = position
        self.expected = expected
        super().__init__(f"At character {position + 1}: {expected} expected. Edit the line there.")

    def __reduce__(self) -> tuple[type["ParseError"], tuple[str, int, str]]:
        return ParseError, (self.text, self.position, self.expected)
