"""The few lines under a recipe's title: how much, for how many, how long, how it keeps."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from tamis.publish.iso import iso_duration
from tamis.quantity.display import amount, duration_range
from tamis.timeline.records import length_between

if TYPE_CHECKING:
    from markupsafe import Markup

    from tamis.reading.header import Header
    from tamis.timeline.records import Timeline


# From here on nobody reads minutes at the head of a page.
_LONG = 6 * 3600


class Fact(NamedTuple):
    """A name and what is said under it."""

    name: str
    words: str | Markup


def facts_of(header: Header, timeline: Timeline) -> list[Fact]:
    """The facts that this recipe has."""
    facts = [
        Fact("Makes", header.makes.text if header.makes else ""),
        Fact("Serves", amount(header.serves) if header.serves else ""),
        Fact("Takes", _time(timeline.least, timeline.most)),
        Fact("At work", _time(timeline.hands_on, timeline.hands_on_most)),
        Fact("Keeps", header.keeps),
        Fact("Tags", ", ".join(header.tags)),
    ]
    return [fact for fact in facts if fact.words]


def date_of(text: str) -> Markup:
    """A date of the header; marked as one where it is written year, month, day."""
    from markupsafe import Markup, escape

    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
        return Markup('<time datetime="{0}">{0}</time>').format(text)
    return escape(text)


def _time(lo: int, hi: int) -> str | Markup:
    from markupsafe import Markup

    if not hi:
        return ""
    if hi < _LONG:
        return Markup('<time datetime="{}">{}</time>').format(iso_duration(-(-hi // 60) * 60), length_between(lo, hi))
    least, most = _rough(lo, hi)
    return Markup('<time datetime="{}">{}</time>').format(iso_duration(most), duration_range(least, most))


def _rough(lo: int, hi: int) -> tuple[int, int]:
    """To the half-hour: the timeline has the minutes."""
    step = 1800
    return (lo + step // 2) // step * step or step, -(-hi // step) * step
