"""A document read: its clauses as records, its verbs, its header. What the model is built from."""

from __future__ import annotations

from tamis.reading.clauses import Read, VerbUse
from tamis.reading.header import Header
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Document, Part, Remark

Event = VerbUse | Read


class ActionRead(NamedTuple):
    """One action: its parts as written, and verbs and clauses in the order in which they act.

    `continues` is set for what follows a `then` in the line of the action before.
    """

    parts: tuple[Part, ...]
    events: tuple[Event, ...]
    span: Span
    continues: bool = False


class StepRead(NamedTuple):
    """A paragraph of actions and the remarks that follow it."""

    actions: tuple[ActionRead, ...]
    remarks: tuple[Remark, ...]
    span: Span


class WaitingRead(NamedTuple):
    """An `Ahead:` paragraph."""

    action: ActionRead
    span: Span


class ComponentRead(NamedTuple):
    """A component: its steps, the remarks before the first of them, and how it may wait."""

    name: str
    heading: Span | None
    steps: tuple[StepRead, ...]
    remarks: tuple[Remark, ...]
    ahead: tuple[WaitingRead, ...]


class Reading(NamedTuple):
    """The whole recipe, read."""

    document: Document
    header: Header
    headnote: str
    components: tuple[ComponentRead, ...]
