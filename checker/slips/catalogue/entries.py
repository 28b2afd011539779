"""An entry of the catalogue: the rewriting, the kind, the reason, and where it is documented."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from checker.slips.catalogue.relation_rules import Branches
from checker.slips.catalogue.sources import Source, source_of
from checker.slips.values import Value
from checker.syntax.tree import Node, Relation

__all__ = ["ExpressionSlip", "RelationSlip"]


@dataclass(frozen=True, slots=True)
class ExpressionSlip:
    """A slip that turns a part of an expression into something else.

    Args:
        id: its name.
        rewrite: a node to the wrong values it is turned into.
        kind: the kind of slip it is reported as.
        because: why it is wrong.
        sources: where it is documented, as keys of the list of sources.
        telling: whether it says more than that a term has a wrong sign, number or power.
        whole: whether the place is all that was rewritten, rather than one term of it.
    """

    id: str
    rewrite: Callable[[Node], Iterator[Value]]
    kind: str
    because: str
    sources: tuple[str, ...]
    telling: bool = False
    whole: bool = False

    def documented(self) -> tuple[Source, ...]:
        return tuple(source_of(reference) for reference in self.sources)


def no_detail(relation: Relation) -> str:
    return ""


@dataclass(frozen=True, slots=True)
class RelationSlip:
    """A slip that turns a relation into others.

    Args:
        id: its name.
        rewrite: a relation to the wrong relations, or roots, it is turned into.
        kind: the kind of slip it is reported as.
        because: why it is wrong.
        sources: where it is documented, as keys of the list of sources.
        telling: whether it says more than that a term has a wrong sign, number or power.
        whole: whether the whole line is the place, rather than one term.
        detail: the numbers of this relation in words, to stand after the reason; empty where there are none.
    """

    id: str
    rewrite: Callable[[Relation], Iterator[Branches]]
    kind: str
    because: str
    sources: tuple[str, ...]
    telling: bool = False
    whole: bool = False
    detail: Callable[[Relation], str] = no_detail

    def documented(self) -> tuple[Source, ...]:
        return tuple(source_of(reference) for reference in self.sources)
