"""The first page of a site: all its recipes, by course."""

from __future__ import annotations

from collections.abc import Sequence

from tamis.publish.facts import FactName, facts_of
from tamis.publish.paths import page_link
from tamis.publish.prose import first_words
from tamis.publish.templates import template
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen

SHOWN_FACTS: tuple[FactName, ...] = ("Makes", "Serves", "Takes")


class Listed(NamedTuple):
    """A recipe in the list."""

    title: str
    href: str
    words: str
    facts: str


class Group(NamedTuple):
    """The recipes of one course; the name is empty for those of none."""

    name: str
    entries: list[Listed]


def index_page(recipes: Sequence[Compiled], missing: Sequence[str], kitchen: Kitchen, market: str = "") -> str:
    """The HTML of the index. `missing` names the files that were left out; `market` links to their market list."""
    house = kitchen.settings.publish
    return template("index.html").render(
        root="", house=house.name, address=house.address, groups=_groups(recipes), missing=missing, market=market
    )


def _groups(recipes: Sequence[Compiled]) -> list[Group]:
    """By course and title, in the order of the alphabet; what has no course comes last, under no name of its own."""
    courses: dict[str, list[Compiled]] = {}
    for compiled in recipes:
        courses.setdefault(compiled.recipe.header.course.strip().casefold(), []).append(compiled)
    groups = []
    for course in sorted(courses, key=lambda name: (not name, name)):
        ordered = sorted(courses[course], key=lambda c: (c.recipe.title.casefold(), c.source.stem))
        name = ordered[0].recipe.header.course or ("Other dishes" if len(courses) > 1 else "")
        groups.append(Group(name, [_listed(compiled) for compiled in ordered]))
    return groups


def _listed(compiled: Compiled) -> Listed:
    facts = facts_of(compiled.recipe.header, compiled.timeline)
    said = [f"{fact.name} {fact.words}" for fact in facts if fact.name in SHOWN_FACTS]
    return Listed(
        compiled.recipe.title,
        page_link(compiled.source.stem),
        first_words(compiled.recipe.headnote, 130),
        " · ".join(said),
    )
