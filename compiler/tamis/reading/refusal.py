"""A clause that the grammar refuses, as those look at it who say what is wrong with it."""

from __future__ import annotations

from tamis.diagnostics import Fix
from tamis.lalr.table import END
from tamis.reading.parsers import parser_of
from tamis.reading.phrase import Phrase
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.clause import Reading
    from tamis.reading.parser import Fault
    from tamis.reading.phrase import Alone
    from tamis.syntax.cutting import Cut


class Refusal:
    """A refused clause: its tokens, the one that does not fit, its items."""

    def __init__(self, reading: Reading, fault: Fault, alone: Alone) -> None:
        self.reading = reading
        self.fault = fault
        self.cut: Cut = parser_of(reading.kitchen).vocabulary.cutter.cut(reading.text)
        self.phrase = Phrase(reading, alone)

    def kind(self, at: int) -> str:
        """The class of a token that is no word, "" of one that is, `$END` past the last."""
        if not 0 <= at < len(self.cut.words):
            return END
        choice = self.cut.fixed[at]
        return choice.ways[0][0] if choice else ""

    @property
    def ended(self) -> bool:
        """Whether the clause stops too early."""
        return self.fault.token >= len(self.cut.words)

    def text(self, at: int) -> str:
        """A token as written."""
        return self.reading.text[self.cut.starts[at] : self.cut.ends[at]] if 0 <= at < len(self.cut.words) else ""

    def span(self, first: int, last: int) -> Span:
        """Where the tokens from one to another stand in the file."""
        last = min(last, len(self.cut.words) - 1)
        inner = self.reading.inner
        return Span(inner + self.cut.starts[first], inner + self.cut.ends[last])

    def find(self, rule: str, span: Span, message: str, hint: str = "", fix: Fix | None = None) -> bool:
        """Keep an error, and say that the clause has been dealt with."""
        self.reading.find(rule, "error", span, message, hint, fix)
        return True
