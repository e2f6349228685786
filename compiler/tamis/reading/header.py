"""The header of a recipe: its keys, what each may hold, and what is wrong with them."""

from __future__ import annotations

import difflib
import re
from typing import TYPE_CHECKING, NamedTuple

from tamis.diagnostics import Diagnostic, Fix
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.source import Span

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.syntax.document import Document, Field

KEYS = (
    "title",
    "makes",
    "serves",
    "tags",
    "author",
    "source",
    "image",
    "keeps",
    "tested",
    "published",
    "uses",
    "flour",
    "dough",
    "served",
    "course",
    "cuisine",
)


class Makes(NamedTuple):
    """What a recipe makes: `2 loaves`, `5 jars (340 g each)`, `600 ml`. `noun` is empty for a bare measure."""

    amount: Amount
    noun: str
    text: str
    measure: Measure | None = None
    each: Measure | None = None
    size: str = ""


class Header(NamedTuple):
    """The header's values; a key that is missing or unreadable is empty or None. `spans` tell where each stands."""

    title: str = ""
    makes: Makes | None = None
    serves: Amount | None = None
    tags: tuple[str, ...] = ()
    author: str = ""
    source: str = ""
    image: str = ""
    keeps: str = ""
    tested: str = ""
    published: str = ""
    uses: tuple[str, ...] = ()
    flour: Measure | None = None
    dough: Measure | None = None
    served: str = ""
    course: str = ""
    cuisine: str = ""
    spans: tuple[tuple[str, Span], ...] = ()

    def span(self, key: str) -> Span:
        """Where the key's value stands; the start of the file where it has none."""
        return dict(self.spans).get(key, Span(0, 0))
