"""A time axis on which a minute's stirring can be seen beside a night's rest.

Drawn true to scale, twelve hours of waiting leave one pixel for the work. So the axis is cut wherever
anything begins or ends, short stretches are drawn as long as they are, and of longer ones each doubling
adds the same. Order and simultaneity stay true, lengths do not; the ticks tell.
"""

from __future__ import annotations

from bisect import bisect_left
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
_MANY = 40
"""More round times than this of one step could never stand beside each other."""

_APART = 13.0
"""Per cent of the width between two ticks: a clock time at 360 pixels."""


class Scale:
    """Where on the axis a time lies, in per cent of the width."""

    __slots__ = ("_at", "_marks", "_places", "end")

    def __init__(self, moments: Iterable[int]) -> None:
        marks = sorted({0, *moments})
        self.end = marks[-1]
        reach = [0.0]
        for before, mark in pairwise(marks):
            reach.append(reach[-1] + _drawn(mark - before))
        self._marks = marks
        self._at = [round(100 * at / reach[-1], 2) if reach[-1] else 0.0 for at in reach]
        self._places = dict(zip(marks, self._at, strict=True))

    def __call__(self, seconds: int) -> float:
        """Per cent from the left; between two marks in proportion, beyond the ends the ends."""
        if seconds in self._places:
            return self._places[seconds]
        right = bisect_left(self._marks, seconds)
        if right == len(self._marks):
            return self._at[-1]
        if right == 0:
            return self._at[0]
        left = right - 1
        part = (seconds - self._marks[left]) / (self._marks[right] - self._marks[left])
        return round(self._at[left] + (self._at[right] - self._at[left]) * part, 2)

    def ticks(self) -> list[int]:
        """Round times that stand far enough apart to be read: days first, then hours, then minutes."""
        chosen = [(0.0, 0)]
        for step in _STEPS:
            for moment in range(step, self.end + 1, step) if self.end // step <= _MANY else ():
                at = self(moment)
                if _APART * 1.2 <= at <= 100 - _APART / 3:
                    after = bisect_left(chosen, (at, moment))
                    if all([abs(at - other) >= _APART for other, _ in chosen[after - 1 : after + 1]]):
                        chosen.insert(after, (at, moment))
        return [moment for _, moment in chosen]


def _drawn(seconds: int) -> float:
    if seconds > _TRUE:
        return _TRUE + _DOUBLING * log2(seconds / _TRUE)
    return float(max(_VISIBLE, seconds))
