"""A time axis on which a minute's stirring can be seen beside a night's rest.

Drawn true to scale, twelve hours of waiting leave one pixel for the work. So the axis is cut wherever
anything begins or ends, short stretches are drawn as long as they are, and of longer ones each doubling
adds the same. Order and simultaneity stay true, lengths do not; the ticks tell.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from math import log2

_TRUE = 20 * 60
"""Seconds up to which a stretch is drawn to scale."""

_DOUBLING = 10 * 60
"""What each doubling beyond adds, as if it were so many seconds."""

_VISIBLE = 90
"""The least that a stretch is drawn as."""

_STEPS = (86400, 43200, 21600, 14400, 7200, 3600, 1800, 900, 600, 300, 120, 60)
_APART = 13.0
"""Per cent of the width between two ticks: a clock time at 360 pixels."""


class Scale:
    """Where on the axis a time lies, in per cent of the width."""

    __slots__ = ("_at", "end")

    def __init__(self, moments: Iterable[int]) -> None:
        marks = sorted({0, *moments})
        self.end = marks[-1]
        self._at = [(0, 0.0)]
        reach = 0.0
        for before, mark in pairwise(marks):
            reach += _drawn(mark - before)
            self._at.append((mark, reach))
        self._at = [(mark, 100 * at / reach if reach else 0.0) for mark, at in self._at]

    def __call__(self, seconds: int) -> float:
        """Per cent from the left; between two marks in proportion, beyond the ends the ends."""
        for (left, at), (right, to) in pairwise(self._at):
            if seconds <= right:
                return round(at + (to - at) * max(0, seconds - left) / (right - left), 2)
        return 100.0 if seconds > 0 and self.end else 0.0

    def ticks(self) -> list[int]:
        """Round times that stand far enough apart to be read: days first, then hours, then minutes."""
        chosen: dict[int, float] = {0: 0.0}
        for step in _STEPS:
            for moment in range(step, self.end + 1, step) if self.end // step <= 60 else ():
                at = self(moment)
                if _APART * 1.2 <= at <= 100 - _APART / 3 and all(
                    abs(at - other) >= _APART for other in chosen.values()
                ):
                    chosen[moment] = at
        return sorted(chosen)


def _drawn(seconds: int) -> float:
    if seconds > _TRUE:
        return _TRUE + _DOUBLING * log2(seconds / _TRUE)
    return float(max(_VISIBLE, seconds))
