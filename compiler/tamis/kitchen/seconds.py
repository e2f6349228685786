"""Times in the kitchen's own data files: `30 s`, `8 min`, `2 h`.

The verbs and the equipment both carry times. In their files these stand as a cook reads them; the compiler
counts in whole seconds. This is data that ships with the compiler, so a wrong one is a fault to raise, not a
finding to report.
"""

from __future__ import annotations

_SECONDS = {"s": 1, "min": 60, "h": 3600}


def seconds(text: str) -> int:
    """Whole seconds of a number and a unit (s, min, h). Raises ValueError or KeyError for anything else."""
    number, unit = text.split(" ")
    return int(number) * _SECONDS[unit]
