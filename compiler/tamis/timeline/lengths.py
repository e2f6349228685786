"""How long the whole takes, in words: exactly for who plans by it, roughly for who only wants to know."""

from __future__ import annotations

from functools import lru_cache

from tamis.quantity.times import duration, duration_range

# From here on nobody reads minutes.
_LONG = 6 * 3600
_HALF = 1800


def length_between(least: int, most: int) -> str:
    """The range of a whole in seconds, rounded up to minutes: `3 h 40 min`, `3 h 40 min to 4 h`."""
    lo, hi = (-(-seconds // 60) * 60 for seconds in (least, most))
    return duration(lo) if lo == hi else f"{duration(lo)} to {duration(hi)}"


@lru_cache(maxsize=1024)  # the list of recipes, the facts and the timeline's sentence say the same length
def rough_length(least: int, most: int) -> tuple[str, int]:
    """A length in words, with its greatest value in seconds: to the minute, a long one to the half-hour."""
    if most < _LONG:
        return length_between(least, most), -(-most // 60) * 60
    lo, hi = (least + _HALF // 2) // _HALF * _HALF or _HALF, -(-most // _HALF) * _HALF
    return duration_range(lo, hi), hi
