"""Which recipe must be compiled before which.

A braise that takes half a litre of the brown stock can only be understood once the stock is. So recipes
are taken in the order of their `uses:`; where these go round in a circle, each of its recipes is
compiled without the other, and the circle is told.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tamis.record import NamedTuple
from tamis.typed import Literal

USES: Literal["uses"] = "uses"
"""The header's key."""

_HEADER_LIMIT = 8192


class Order(NamedTuple):
    """Stems in the order to compile them.

    `circles` gives, for a stem in a circle, the way round it back to itself.
    """

    stems: tuple[str, ...]
    circles: Mapping[str, tuple[str, ...]]


def uses_of(text: str) -> tuple[str, ...]:
    """The stems that a recipe's header names under `uses:`, before anything is compiled.

    It is asked of every file, so only the lines to the first blank one are read.
    """
    stems: list[str] = []
    begun = False
    head = text[:_HEADER_LIMIT].lstrip("\ufeff")
    for line in head.replace("\r\n", "\n").replace("\r", "\n").split("\n"):
        if begun and not line.strip():
            break
        begun = begun or bool(line.strip() and not line.startswith("%"))
        key, _, value = line.partition(":")
        if key.rstrip().lower() == USES:
            stems += [stem.strip() for stem in value.split(",") if stem.strip()]
    return tuple(stems)


def order_of(uses: Mapping[str, Sequence[str]]) -> Order:
    """Every stem after those that it uses.

    `uses` may name stems that are no recipe, which are passed over.
    """
    done: dict[str, None] = {}
    circles: dict[str, tuple[str, ...]] = {}
    for first in uses:
        _visit(first, uses, done, circles)
    return Order(tuple(done), circles)


def _visit(
    first: str,
    uses: Mapping[str, Sequence[str]],
    done: dict[str, None],
    circles: dict[str, tuple[str, ...]],
) -> None:
    """Depth first with a stack of its own: a long chain of recipes is no reason to overflow. The library's sorter names
    one circle and stops; here each is to be told, and everything compiled."""
    path: dict[str, int] = {}
    stack: list[tuple[str, int]] = [(first, 0)]
    while stack:
        stem, at = stack.pop()
        if at == 0:
            if stem in done:
                continue
            path[stem] = len(path)
        needed = uses[stem]
        while at < len(needed):
            other = needed[at]
            at += 1
            if other in path:
                _note_circle(list(path)[path[other] :], circles)
            elif other in uses and other not in done:
                stack += [(stem, at), (other, 0)]
                break
        else:
            del path[stem]
            done[stem] = None


def _note_circle(circle: list[str], circles: dict[str, tuple[str, ...]]) -> None:
    for index, stem in enumerate(circle):
        circles.setdefault(stem, (*circle[index:], *circle[: index + 1]))
