"""The cooks' hands while a plan is made: which stretches are taken, and where a block still fits.

A block may want hands several times with waits between; all its stretches must be free at once. It is moved
towards earlier times, past one taken stretch after another, until it fits.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable
from itertools import pairwise

Held = tuple[int, int, int]
"""First and last second of a stretch of hands-on work, counted from its block's start, and its task."""


class Bench:
    """One line of taken stretches a cook. Times are seconds before the end of everything (zero or less)."""

    __slots__ = ("_done", "_full", "_lines")

    def __init__(self, cooks: int, nights: Iterable[tuple[int, int]] = ()) -> None:
        self._lines = [list(nights) for _ in range(max(1, cooks))]
        self._done: list[list[Held]] = [[] for _ in self._lines]
        self._full: dict[int, tuple[int, int]] = {}  # by length: no free stretch ends after the first, up to the second

    def place(self, held: list[Held], latest: int) -> int:
        """The latest start, not after `latest`, at which every stretch has a cook; the stretches are then
        taken."""
        at = latest
        moved = True
        while moved:
            moved = False
            for begin, end, _ in held:
                free = self._free(end - begin, at + end)
                if free < at + end:
                    at, moved = free - end, True
        for begin, end, task in held:
            self._take(at + begin, at + end, task)
        return at

    def turns(self) -> list[tuple[int, int]]:
        """Pairs of tasks that follow each other in one cook's hands."""
        pairs = []
        for done in self._done:
            done.sort()
            pairs += [(first[2], second[2]) for first, second in pairwise(done)]
        return pairs

    def _free(self, length: int, latest: int) -> int:
        """The latest end, not after `latest`, of a stretch so long for which a cook is free. What was full once stays
        so: it is looked through once for each length."""
        low, high = self._full.get(length, (latest, latest))
        end, room = latest, self._clear(length, latest)
        while room < end:
            end = room if not low < room <= high else low
            room = self._clear(length, end)
        if low <= latest and end <= high:
            self._full[length] = (min(low, end), max(high, latest))
        elif latest - end > high - low:
            self._full[length] = (end, latest)
        return end

    def _clear(self, length: int, end: int) -> int:
        """The latest end that keeps such a stretch clear of what keeps every cook busy; `end` itself if one is free."""
        return max([self._room(line, end - length, end) for line in self._lines])

    @staticmethod
    def _room(line: list[tuple[int, int]], begin: int, end: int) -> int:
        """The latest end that keeps a stretch clear of the one it runs into; its own end if it is clear."""
        after = bisect_left(line, (end,))
        return line[after - 1][0] if after and line[after - 1][1] > begin else end

    def _take(self, begin: int, end: int, task: int) -> None:
        for line, done in zip(self._lines, self._done, strict=True):
            if self._room(line, begin, end) == end:
                self._done_with(line, begin, end)
                done.append((begin, end, task))
                return
        self._done[0].append((begin, end, task))

    @staticmethod
    def _done_with(line: list[tuple[int, int]], begin: int, end: int) -> None:
        """Marks a stretch as taken; what touches it becomes one with it, so that a crowded line stays
        short."""
        first = past = bisect_left(line, (begin,))
        if past < len(line) and line[past][0] == end:
            end, past = line[past][1], past + 1
        if first and line[first - 1][1] == begin:
            begin, first = line[first - 1][0], first - 1
        line[first:past] = [(begin, end)]
