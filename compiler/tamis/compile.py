"""The whole compiler: text in; recipe, table, timeline and findings out."""

from __future__ import annotations

from functools import cached_property

from tamis.checks.run import has_errors, run_checks, settle_more
from tamis.checks.view import View
from tamis.model.build import build, supply_of
from tamis.model.recipe import Supply
from tamis.reading.reader import read
from tamis.safety.assess import supplied
from tamis.source import Source
from tamis.syntax.outline import parse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen


class Compiled(View):
    """One recipe, everything that follows from it, and what is to be said about it.

    `earlier` are the findings of the phases. What the rules find is worked out when somebody asks, of the recipe as it
    was compiled (`first`): a command that prints a sound recipe asks for no warnings. `broken` says that the compiler
    itself failed on it: then there is nothing in it but findings.
    """

    earlier: tuple[Diagnostic, ...] = ()
    first: Compiled | None = None
    settled: tuple[Diagnostic, ...] | None = None
    broken: bool = False

    @property
    def findings(self) -> tuple[Diagnostic, ...]:
        """All that is to be said, sorted, levels and allows applied."""
        if self.settled is None:
            self.settled = self.first.findings if self.first else self._checked()
        return self.settled

    def _checked(self) -> tuple[Diagnostic, ...]:
        try:
            return run_checks(self, self.earlier)
        except Exception as error:
            return (*self.earlier, _internal_error(error))

    @property
    def faulty(self) -> bool:
        """Whether there is an error in it, so that what was made of it is only a part."""
        if self.settled is not None:
            return any(finding.severity == "error" for finding in self.settled)
        return self.first.faulty if self.first else self._has_errors

    @cached_property
    def _has_errors(self) -> bool:
        try:
            return has_errors(self, self.earlier)
        except Exception as error:
            return bool(_internal_error(error))

    @property
    def misread(self) -> bool:
        """Whether there is an error in it that reading it or following its food found."""
        return has_errors(self, self.earlier, asked=())

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

    def broken_off(self, error: Exception) -> Compiled:
        """What is left when the compiler fails on something made of it: what was said, and that."""
        return _broken_off(self.source, self.kitchen, (*self.findings, _internal_error(error)))


def compile(source: Source, kitchen: Kitchen, used: Mapping[str, Supply], assessed: bool = True) -> Compiled:
    """Compile one recipe; `used` holds the dishes of the recipes that it uses, by file stem.

    Without `assessed` its safety is worked out when somebody asks: that of a recipe for more is as it was for less.
    """
    earlier: list[Diagnostic] = []
    try:
        compiled = _phases(source, kitchen, used, earlier)
        if assessed:
            assert compiled.safety  # worked out here, so that a failure is one of the whole recipe
        return compiled
    except Exception as error:
        return _broken_off(source, kitchen, (*earlier, _internal_error(error)))


def _phases(source: Source, kitchen: Kitchen, used: Mapping[str, Supply], earlier: list[Diagnostic]) -> Compiled:
    """The phases in order; each leaves its findings in `earlier`, to be told even if the next one fails."""
    document, found = parse(source, kitchen.language)
    earlier += found
    reading, found = read(document, kitchen)
    earlier += found
    recipe, found = build(reading, kitchen, used)
    earlier += found
    compiled = Compiled(source, document, recipe, kitchen, used)
    compiled.earlier = tuple(earlier)
    return compiled


def _broken_off(source: Source, kitchen: Kitchen, findings: Iterable[Diagnostic]) -> Compiled:
    """A recipe with nothing in it, and findings: the compiler failed on it, which is the last of them."""
    compiled = _phases(Source(source.name, "", source.stem), kitchen, {}, [])
    compiled.source = source
    compiled.settled = tuple(dict.fromkeys(findings))
    compiled.broken = True
    return compiled


def _internal_error(error: Exception) -> Diagnostic:
    from tamis.internal import internal_error

    return internal_error(error)
