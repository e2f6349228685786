"""What has been cut into pieces of one name by now: the log is read once, and read on where that was left."""

from __future__ import annotations

from tamis.model.effects import Closes, Gives, Parts, Stands, Takes
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.model.batch import Origin
    from tamis.model.effects import Entry

LEFT: tuple[Origin, ...] = ("share", "left")
"""What lies there since a line went on with something else: that line did not work on it."""


class CutSo:
    """The batches that lines which make such pieces worked on, by their numbers, and those that these went into or
    that were parted from them."""

    __slots__ = ("_at", "_lines", "_numbers")

    def __init__(self, lines: set[int]) -> None:
        self._at = 0
        self._lines = lines
        self._numbers: dict[int, None] = {}

    def numbers(self, log: Sequence[Entry]) -> Iterator[int]:
        """Their numbers, as far as the log goes."""
        numbers = self._numbers
        for at in range(self._at, len(log) if self._lines else 0):
            effect = log[at].effect
            if isinstance(effect, Takes | Parts):
                if effect.source in numbers:
                    numbers[effect.into if isinstance(effect, Takes) else effect.batch] = None
            elif log[at].action in self._lines and (
                isinstance(effect, Stands | Gives) or (isinstance(effect, Closes) and effect.origin not in LEFT)
            ):
                numbers[effect.batch] = None
        self._at = len(log)
        return (number for number in numbers if number >= 0)
