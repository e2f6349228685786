"""Durations as machines read them.

HTML's `time` element and schema.org both take the durations of ISO 8601, and both refuse ranges, years and months. So
everything is said in days, hours, minutes and seconds, which are exact; a range must be resolved before it comes here.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.duration import Duration

DAY, HOUR, MINUTE = 86400, 3600, 60


def iso_duration(seconds: Fraction | int) -> str:
    """A length in seconds as ISO 8601: "PT20M", "PT2H30M", "P1DT4H"; nothing at all is "PT0S"."""
    days, left = divmod(int(seconds), DAY)
    hours, left = divmod(left, HOUR)
    minutes, rest = divmod(left, MINUTE)
    date = f"{days}D" if days else ""
    clock = (f"{hours}H" if hours else "") + (f"{minutes}M" if minutes else "") + (f"{rest}S" if rest else "")
    if not date and not clock:
        return "PT0S"
    return f"P{date}T{clock}" if clock else f"P{date}"


def least(length: Duration) -> Fraction:
    """The one length, in seconds, that stands for a duration: its least, or what "up to" names."""
    return length.lo if length.lo or length.hi is None else length.hi
