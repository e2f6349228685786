"""A change of a few words, written in two ways, and texts with such changes made.

The compiler needs the exact product ("166 2/3 g"), the cook a measure that lies in the drawer ("167 g"). Both stand in
the same place of the same sentence, so a change holds both.
"""

from __future__ import annotations

from collections.abc import Iterable

from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import Literal

Form = Literal["exact", "shown"]


class Edit(NamedTuple):
    """What takes the place of a span: `exact` compiles to the exact figure, `shown` is for the reader."""

    span: Span
    exact: str
    shown: str

    def shifted(self, by: int) -> Edit:
        """The same change, in a text that begins `by` characters earlier."""
        return self._replace(span=self.span.shifted(by))


def edited(text: str, edits: Iterable[Edit], form: Form) -> str:
    """The text with the changes made; they must not overlap."""
    parts, at = [], 0
    for edit in sorted(edits):
        parts += [text[at : edit.span.start], getattr(edit, form)]
        at = edit.span.end
    return "".join([*parts, text[at:]])


def moved(offset: int, edits: Iterable[Edit], form: Form) -> int:
    """Where a place of the old text stands in the new one; a place within a change goes to its end."""
    by = 0
    for edit in sorted(edits):
        if edit.span.start >= offset:
            break
        by += len(getattr(edit, form)) - (edit.span.end - edit.span.start)
    return offset + by
