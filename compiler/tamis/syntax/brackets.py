"""Square brackets in the lines of a step: which belong together, and which belong to nothing.

The scan is one linear pass; an unclosed bracket costs its own line and nothing more.
"""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.record import NamedTuple

# A clause in a paragraph for the reader, where it is only printed; a link is none.
IN_REMARK = pattern(r"(?<!\\)\[([^\[\]\n]+)(?<!\\)\](?![(\[])")
_BRACKET = pattern(r"\\[\[\]]|[\[\]]")


class Pairing(NamedTuple):
    """Offsets in the scanned text: outermost pairs (both ends are brackets), and brackets without a partner."""

    pairs: tuple[tuple[int, int], ...]
    nested: tuple[int, ...]
    unclosed: tuple[int, ...]
    stray: tuple[int, ...]


def pair_brackets(text: str, start: int, end: int) -> Pairing:
    """Pair the brackets of `text[start:end]`; `\\[` and `\\]` are literal and do not count."""
    open_at: list[int] = []
    pairs: list[tuple[int, int]] = []
    stray: list[int] = []
    for found in _BRACKET.finditer(text, start, end):
        mark, at = found.group(), found.start()
        if mark == "[":
            open_at.append(at)
        elif mark == "]" and open_at:
            pairs.append((open_at.pop(), at))
        elif mark == "]":
            stray.append(at)
    outer: list[tuple[int, int]] = []
    nested: list[int] = []
    for first, last in sorted(pairs):
        if outer and first < outer[-1][1]:
            nested.append(first)
        else:
            outer.append((first, last))
    return Pairing(tuple(outer), tuple(nested), tuple(open_at), tuple(stray))
