"""The forms of the sentences that the checker, the reader and the page stage say, each with a German one. No Qt."""

from __future__ import annotations

from desktop.forms import answers, files, hints, marks, products, reading, relations, rules, steps

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    *products.TEMPLATES,
    *relations.TEMPLATES,
    *rules.TEMPLATES,
    *hints.TEMPLATES,
    *steps.TEMPLATES,
    *answers.TEMPLATES,
    *marks.TEMPLATES,
    *reading.TEMPLATES,
    *files.TEMPLATES,
)
"""Every form: names in braces stand for what changes, as `desktop.forms.matching` reads them."""
