"""What a cook has in hand while a component is worked through: its batches, its equipment, and how far the text is."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.effects import SAID, Why
from tamis.model.mass import ONE
from tamis.model.recipe import Product
from tamis.model.state import State
from tamis.model.words import plain
from tamis.reading.clauses import Reference, Tool
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Equipment, Station
    from tamis.model.batch import Batch, Origin
    from tamis.model.flow import Flow


class Hands(State):
    """One component while its steps are worked through."""

    __slots__ = (
        "_tools_by_noun", "_tools_seen", "again", "at_hand", "empty", "heated", "hot_vessel", "keeps_warm",
        "kept_together", "last_wait", "long_meanwhiles", "new_step", "number", "read", "running",
        "tools", "unread",
    )  # fmt: skip

    def __init__(self, flow: Flow, component: int) -> None:
        super().__init__(flow, component)
        self.read = flow.reading.components[component]
        self.number = flow.first_action[component]
        self.last_wait: int | None = flow.last_waits.get(component - 1)
        self.long_meanwhiles: set[Batch] = set()
        self.unread: bool | None = None
        self.heated = ""
        self.keeps_warm = False
        self.hot_vessel: tuple[Equipment, Station] | None = None
        self.running: list[int] = []
        self.new_step = True
        self.again = ONE  # so many times the shares of the step are taken
        self.tools: list[Tool] = []
        self.kept_together: list[tuple[int, Reference]] = []  # food lifted out that no later line names
        self.empty: int | None = None  # the line that heats a vessel in which nothing lies yet
        self.at_hand: int | None = None  # the last line of the work in a vessel that is hot
        self._tools_by_noun: dict[str, Tool] = {}
        self._tools_seen = 0

    def has_unread(self) -> bool:
        """Whether a clause of the component could not be read: that is told, and food may be missing for it."""
        if self.unread is None:
            self.unread = any(line.unread(self.flow.kitchen) for line in self.flow.lines_of(self.component))
        return self.unread

    def tool_called(self, noun: str) -> Tool | None:
        """The last piece of equipment used here whose name ends with this word."""
        for tool in self.tools[self._tools_seen :]:
            self._tools_by_noun[plain(tool.equipment.name, self.flow.kitchen.language)[-1]] = tool
        self._tools_seen = len(self.tools)
        return self._tools_by_noun.get(noun)

    def put_aside(self, batch: Batch, origin: Origin, name: str, span: Span, why: Why = SAID) -> None:
        """Close a batch: from now on it is one of the open ones, under its names."""
        batch.origin = origin
        batch.span = span
        kinds = {"named": "named", "share": "share", "meanwhile": "meanwhile"}
        kind = kinds.get(origin, "set-aside")
        label = name or " ".join(batch.label)
        names = tuple(dict.fromkeys((label, *(" ".join(words) for words in batch.names.own()))))
        product = Product(label, names, kind, self.component, batch.last, span)  # type: ignore[arg-type]  # from the table
        self.close(batch, product, why=why)

    def find(self, rule: str, severity: str, span: Span, message: str, hint: str = "") -> None:
        """Keep a finding."""
        self.tell(Diagnostic(rule, severity, span, message, hint))  # type: ignore[arg-type]  # by callers
