"""Times as a cook reads them off a wall: from zero (`0:00`, `8:01`, `1 d 2:15`), or by the clock (`Sun 20
Dec 19:10`).

Days and months are spelt here: a timeline must not change with the language that a machine is set to.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import datetime

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def from_zero(seconds: int) -> str:
    """Hours and minutes since the beginning, to the nearest minute; days apart from the second one on."""
    minutes = (seconds + 30) // 60
    days, minutes = divmod(minutes, 1440)
    clock = f"{minutes // 60}:{minutes % 60:02}"
    return f"{days} d {clock}" if days else clock


def day(moment: datetime) -> str:
    """`Sun 20 Dec`."""
    return f"{DAYS[moment.weekday()]} {moment.day} {MONTHS[moment.month - 1]}"


def clock(moment: datetime) -> str:
    """`19:10`."""
    return f"{moment.hour:02}:{moment.minute:02}"


def after(zero: datetime, seconds: int) -> datetime:
    """The moment so many seconds after zero, to the nearest minute; none is rounded past the end of the
    calendar."""
    from datetime import timedelta

    moment = zero + timedelta(seconds=seconds + 30)
    return moment.replace(second=0, microsecond=0)
