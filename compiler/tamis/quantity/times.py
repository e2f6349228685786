"""Lengths of time as a cook reads them: "1 h 30 min", "60–90 min", "4–18 h", "2 days".

A range is easiest to read in one unit, so both ends are put into one that says them in whole numbers (hours
also in halves) and that nobody has to count far in. Only where there is none does each end get its own.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.duration import Duration
from tamis.quantity.numerals import number, rounded

SECOND, MINUTE, HOUR, DAY = 1, 60, 3600, 86400
WEEK, MONTH = 7 * DAY, 2629800  # a month as grammar/units.txt has it
NAMES = {SECOND: "s", MINUTE: "min", HOUR: "h", DAY: "day", WEEK: "week", MONTH: "month"}

# Units for a range, the finest first: up to how many of it are easily read, and in which parts.
RANGES = [
    (SECOND, 90, 1),
    (MINUTE, 120, 1),
    (HOUR, 48, 2),
    (DAY, 13, 1),
    (WEEK, 12, 1),
    (MONTH, 120, 1),
    (DAY, 1000, 1),
]


def duration(seconds: Fraction | int) -> str:
    """A length in seconds, to the second: "45 s", "1 h 30 min", "36 h", "2 days 4 h", "2 weeks"."""
    left = seconds if isinstance(seconds, int) else rounded(seconds, 1).numerator
    for unit in (MONTH, WEEK, DAY):
        if left and left % unit == 0:
            return _so_many(left // unit, unit)
    parts: list[str] = []
    for unit in (DAY, HOUR, MINUTE, SECOND):
        # Up to two days hours are clearer: "36 h".
        if unit == DAY and left < 2 * DAY:
            continue
        count, left = divmod(left, unit)
        if count:
            parts.append(_so_many(count, unit))
    return " ".join(parts) or "0 min"


def duration_range(lo: Fraction | int, hi: Fraction | int) -> str:
    """A range in seconds, in one unit if one will do: "60–90 min", "1½–2½ h", "1 h 50 min–2 h 10 min"."""
    if lo == hi:
        return duration(lo)
    for unit, most, parts in RANGES:
        # Half-hours are readily said, but "½–24 h" is not.
        said = all((end * parts) % unit == 0 and not 0 < end < unit for end in (lo, hi))
        if said and hi <= most * unit:
            return f"{number(Fraction(lo) / unit)}–{_so_many(Fraction(hi) / unit, unit)}"
    return f"{duration(lo)}–{duration(hi)}"


def wait(length: Duration) -> str:
    """A duration, open ends in words: "20 min", "4–18 h", "at least 2 h", "up to 3 days"."""
    if length.hi is None:
        return f"at least {duration(length.lo)}"
    if not length.lo and length.hi:
        return f"up to {duration(length.hi)}"
    return duration_range(length.lo, length.hi)


def _so_many(count: Fraction | int, unit: int) -> str:
    plural = "s" if unit >= DAY and count != 1 else ""
    return f"{number(count)} {NAMES[unit]}{plural}"
