"""Verbs whose object is what is in hand: *mix with [1 kg salt]*."""

from __future__ import annotations

from tamis.checks.words import word_set
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.recipe import Action
    from tamis.reading.plain import Plain


def mixes_what_is_there(plain: Plain, start: int, action: Action) -> bool:
    """Whether plain words, which begin at an offset, end in a verb of their line and *with*, without an object."""
    if not plain.said or plain.said[-1] not in word_set(plain.kitchen.language, "vessels.mixes"):
        return False
    behind = start + (plain.ends[-2] if len(plain) > 1 else 0)
    return any(use.span.end == behind for use in action.verbs)
