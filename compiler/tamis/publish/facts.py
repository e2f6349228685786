"""The few lines under a recipe's title: how much, for how many, how long, how it keeps."""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.publish.iso import iso_duration
from tamis.quantity.display import amount
from tamis.record import NamedTuple
from tamis.timeline.lengths import length_between, rough_length
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from markupsafe import Markup

    from tamis.reading.header import Header
    from tamis.timeline.records import Timeline


_DATE = pattern(r"\d{4}-\d{2}-\d{2}")


FactName = Literal["Makes", "Serves", "Takes", "Hands-on", "Keeps", "Tags"]


class Fact(NamedTuple):
    """A name and what is said under it; a length of time for machines too."""

    name: FactName
    words: str
    length: str = ""


def facts_of(header: Header, timeline: Timeline) -> list[Fact]:
    """The facts that this recipe has."""
    facts = [
        Fact("Makes", header.makes.text if header.makes else ""),
        Fact("Serves", amount(header.serves) if header.serves else ""),
        _time("Takes", timeline.least, timeline.most),
        _time("Hands-on", timeline.hands_on, timeline.hands_on_most),
        Fact("Keeps", header.keeps),
        Fact("Tags", ", ".join(header.tags)),
    ]
    return [fact for fact in facts if fact.words]


def date_of(text: str) -> Markup:
    """A date of the header; marked as one where it is written year, month, day."""
    from markupsafe import Markup, escape

    if _DATE.fullmatch(text):
        return Markup(f'<time datetime="{text}">{text}</time>')  # digits and hyphens
    return escape(text)


def timing_of(timeline: Timeline) -> str:
    """The timeline's sentence, its figure in the words of the facts: a page says a length in one way only."""
    exact = length_between(timeline.least, timeline.most)
    return rough_length(timeline.least, timeline.most)[0] + timeline.sentence.removeprefix(exact)


def _time(name: FactName, lo: int, hi: int) -> Fact:
    if not hi:
        return Fact(name, "")
    words, most = rough_length(lo, hi)
    return Fact(name, words, iso_duration(most))
