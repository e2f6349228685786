"""The whole compiler: text in; recipe, table, timeline and findings out."""

from __future__ import annotations

from functools import cached_property

from tamis.checks.run import has_errors, run_checks, settle_more
from tamis.checks.view import View
from tamis.model.build import build, supply_of
from tamis.model.recipe import Supply
from tamis.reading.reader import read
from tamis.safety.assess import assess, supplied
from tamis.syntax.outline import parse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.source import Source


class Compiled(View):
    """One recipe, everything that follows from it, and what is to be said about it.

    `earlier` are the findings of the phases. What the rules find is worked out when somebody asks, of the recipe as it
    was compiled (`first`): a command that prints a sound recipe asks for no warnings.
    """

    earlier: tuple[Diagnostic, ...] = ()
    first: Compiled | None = None
    settled: tuple[Diagnostic, ...] | None = None

    @property
    def findings(self) -> tuple[Diagnostic, ...]:
        """All that is to be said, sorted, levels and allows applied."""
        if self.settled is None:
            self.settled = self.first.findings if self.first else run_checks(self, self.earlier)
        return self.settled

    @property
    def faulty(self) -> bool:
        """Whether there is an error in it, so that what was made of it is only a part."""
        if self.settled is not None:
            return any(finding.severity == "error" for finding in self.settled)
        return self.first.faulty if self.first else self._has_errors

    @cached_property
    def _has_errors(self) -> bool:
        return has_errors(self, self.earlier)

    def again(self) -> Compiled:
        """The same, with whatever has been made of it by now."""
        other = super().again()
        other.first = self.first or self
        return other

    @property
    def supply(self) -> Supply:
        """The dish as other recipes use it."""
        return supplied(supply_of(self.recipe), self.safety)._replace(takes=self._takes)

    def _takes(self) -> tuple[int, int]:
        return self.timeline.lead

    def with_findings(self, findings: Iterable[Diagnostic]) -> Compiled:
        """The same with these findings."""
        other = self.again()
        other.settled = tuple(findings)
        return other

    def with_more(self, findings: list[Diagnostic]) -> Compiled:
        """The same with further findings, as the house and the cook have decided about them."""
        levels = self.kitchen.settings.checks
        return self.with_findings(settle_more(self.findings, findings, self.document, levels)) if findings else self

    def with_used(self, used: Mapping[str, Supply]) -> Compiled:
        """The same with other dishes to use."""
        other = self.again()
        other.used = used
        return other


def compile(source: Source, kitchen: Kitchen, used: Mapping[str, Supply]) -> Compiled:
    """Compile one recipe; `used` holds the dishes of the recipes that it uses, by file stem."""
    document, in_syntax = parse(source, kitchen.language)
    reading, in_reading = read(document, kitchen)
    recipe, in_flow = build(reading, kitchen, used)
    safety = assess(recipe, kitchen, used)
    compiled = Compiled(source, document, recipe, kitchen, used, safety)
    compiled.earlier = (*in_syntax, *in_reading, *in_flow)
    return compiled
