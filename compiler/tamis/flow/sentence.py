"""A line in the author's own words, without what the rows below it say: measures, times, degrees and signs."""

from __future__ import annotations

from tamis.model.names import with_part
from tamis.patterns import pattern
from tamis.quantity.wrapping import wrap
from tamis.reading.clauses import (
    Cue,
    Division,
    Ingredient,
    Manner,
    Meanwhile,
    Naming,
    Pause,
    Reference,
    Repeat,
    Setting,
    Target,
    Tending,
    Time,
    Tool,
)
from tamis.syntax.document import Text
from tamis.timeline.titles import title
from tamis.timeline.words import title_words
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    import re

    from tamis.model.recipe import Action
    from tamis.reading.clauses import Read
    from tamis.syntax.document import Part

_LINES = 2
_GAPS = pattern(r"\s+(?=[,.;:])")
_COMMAS = pattern(r"([,;:])(?:\s*[,;:])+")


def sentence(action: Action, language: str, room: int) -> str:
    """The line; what is longer than two lines of `room` is called as in a timeline."""
    said: list[str] = []
    before = ""
    for part in action.parts:
        said.append(part.text if isinstance(part, Text) else _clause(part, action, before))
        before = part.text if isinstance(part, Text) and part.text.strip() else "," if before or said[-1] else ""
    text = " ".join("".join(said).split())
    text = _COMMAS.sub(r"\1", _GAPS.sub("", text))
    text = _dangling(language).sub("", text).strip(" ,;:.")
    if not text or len(wrap(text, room)) > _LINES:
        return title(action, language)
    return text[:1].upper() + text[1:]


def _dangling(language: str) -> re.Pattern[str]:
    """A joint before which or behind which nothing is left."""
    joints = one_of(sorted(title_words(language).joints))
    return pattern(rf"\s+{joints}(?=[,.;:]|\s*\Z)|\A\W*{joints}\s")


def _clause(part: Part, action: Action, before: str) -> str:
    """What is said of a clause."""
    reads = [read for read in action.reads if read.clause.span == part.span]
    words = list(dict.fromkeys(filter(None, (_read(read, action, before) for read in reads))))
    foods = all(isinstance(read, Ingredient) for read in reads)  # salt and pepper
    return ", ".join(words if foods else words[:1])


def _read(read: Read, action: Action, before: str) -> str:
    if isinstance(read, Ingredient):
        return _food(read)
    if isinstance(read, Target):
        return "" if read.kind == "temperature" else read.text or read.clause.text
    if isinstance(read, Time):
        end = max(
            (use.span.end for use in action.verbs if read.clause.span.start <= use.span.start < read.clause.span.end),
            default=0,
        )
        return read.clause.text[: end - read.clause.inner] if end else ""
    if isinstance(read, Tool):
        beside = read.equipment.kind in ("vessel", "surface", "station")
        return "" if beside and not _needed(before) else read.clause.text
    if isinstance(read, Setting):
        return read.clause.text if read.celsius is None and _needed(before) else ""
    if isinstance(read, Naming):
        return "" if read.kind == "as" else read.clause.text
    if isinstance(read, Cue | Tending | Meanwhile | Manner):
        return ""
    return read.clause.text if isinstance(read, Reference | Division | Repeat | Pause) else ""


def _food(read: Ingredient) -> str:
    """Its name, with the part of it that is taken: `zest of 2 lemons`."""
    return with_part(read) if read.part else f"{read.preposition} {read.name}".strip()


def _needed(before: str) -> bool:
    """Whether the words before a clause would miss it: *put the tin [over medium heat]*."""
    words = before.rstrip()
    return not words or words[-1].isalnum()
