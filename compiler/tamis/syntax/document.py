"""A recipe file taken apart, with every character kept.

A document knows lines, paragraphs and brackets, not what they mean: a clause that cannot be understood is still
here, with the words that the cook wrote.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.source import Source, Span
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.syntax.clause import Items

RemarkKind = Literal["Note", "Tip", "Caution", "Variation"]
AHEAD: Literal["Ahead"] = "Ahead"
ALLOW: Literal["allow"] = "allow"
"""Words of the format, the same in every language."""


class Field(NamedTuple):
    """One `key: value` of the header; the key in lower case."""

    key: str
    value: str
    key_span: Span
    value_span: Span


class Text(NamedTuple):
    """Words of an action outside brackets."""

    text: str
    span: Span


class Clause(NamedTuple):
    """A bracket and what stands in it; `span` covers the brackets, `text` does not. What is wrong with a `broken` one
    is known already."""

    text: str
    span: Span
    language: str
    broken: bool = False

    @property
    def items(self) -> Items:
        """Its numbers with their units, and its words: what is asked where a clause is rewritten or printed."""
        from tamis.syntax.clause import parse_clause

        return parse_clause(self.text, self.language)

    @property
    def inner(self) -> int:
        """The offset at which the clause's own text begins; the spans of its items count from there."""
        return self.span.start + 1


Part = Text | Clause


class Action(NamedTuple):
    """One line of a step, with the lines that continue it; its parts printed in order give its text back."""

    parts: tuple[Part, ...]
    span: Span

    def clauses(self) -> list[Clause]:
        """The brackets, in order."""
        return [part for part in self.parts if isinstance(part, Clause)]


class Step(NamedTuple):
    """A paragraph of actions."""

    actions: tuple[Action, ...]
    span: Span


class Remark(NamedTuple):
    """A paragraph for the reader, in Markdown; `text` is without its opening word."""

    kind: RemarkKind
    text: str
    span: Span


class Ahead(NamedTuple):
    """A paragraph on how a component may wait, with its time clauses."""

    action: Action
    span: Span


Block = Step | Remark | Ahead


class ComponentNode(NamedTuple):
    """A heading and the blocks under it; `heading` is None for the part before the first heading."""

    name: str
    heading: Span | None
    blocks: tuple[Block, ...]


class Comment(NamedTuple):
    """A `%` line. For `% allow RULE: reason`, `rule` and `reason` are set and it speaks for `line` (from 1)."""

    text: str
    span: Span
    rule: str = ""
    reason: str = ""
    line: int = 0


class Line(NamedTuple):
    """A line as it stands in the file, line end included."""

    kind: str
    text: str
    span: Span


class Document(NamedTuple):
    """The whole file. Where it has headings, `headnote` is the Markdown before the first; where it has none,
    `opening` holds every paragraph, headnote and steps alike, for the reader to part."""

    source: Source
    lines: tuple[Line, ...]
    fields: tuple[Field, ...]
    headnote: str
    opening: ComponentNode
    components: tuple[ComponentNode, ...]
    comments: tuple[Comment, ...]

    def print(self) -> str:
        """The text of the file, byte for byte."""
        return "".join(line.text for line in self.lines)
