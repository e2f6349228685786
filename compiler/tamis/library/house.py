"""The house that a folder of recipes belongs to: its settings and its own goods, read once."""

from __future__ import annotations

from tamis.checks.registry import names, scaling_names
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import UNREADABLE, Kitchen, house_kitchen, price_problems
from tamis.kitchen.settings import setting_span
from tamis.library.files import GOODS, SETTINGS, Text, Unreadable, read_if_there
from tamis.record import NamedTuple
from tamis.source import Source


class House(NamedTuple):
    """A folder with the kitchen that holds in it, and what is wrong with the files that say so; prices aside."""

    folder: str
    kitchen: Kitchen
    findings: tuple[tuple[Source, Diagnostic], ...]
    goods: Text | None = None

    def with_prices(self) -> tuple[tuple[Source, Diagnostic], ...]:
        """The findings, and what is wrong with packs and prices."""
        if self.goods is None:
            return self.findings
        source = self.goods.source
        wrong = price_problems(source.text, self.kitchen)
        return (*self.findings, *((source, problem.finding) for problem in wrong))


def open_house(folder: str) -> House:
    """The house of a folder.

    Raises Unreadable where a plan made with half the settings would be worse than none.
    """
    settings, goods = _text(f"{folder}/{SETTINGS}"), _text(f"{folder}/{GOODS}")
    kitchen, problems = house_kitchen(settings.source.text if settings else None, goods.source.text if goods else None)
    sources = {SETTINGS: settings, GOODS: goods}
    findings: list[tuple[Source, Diagnostic]] = []
    for problem in problems:
        text = sources[problem.file]
        assert text is not None  # a problem is one of a file that was read
        if problem.finding.rule == UNREADABLE:
            place = text.source.place(problem.finding.span.start)
            raise Unreadable(f"{text.source.name}:{place.line}:{place.column}: {problem.finding.message}")
        findings.append((text.source, problem.finding))
    if settings:
        findings += [(settings.source, finding) for finding in _unknown_rules(kitchen, settings.source)]
    return House(folder, kitchen, tuple(findings), goods)


def _text(path: str) -> Text | None:
    text = read_if_there(path)
    if text and text.bad_byte is not None:
        line = text.source.place(text.bad_byte).line
        raise Unreadable(f"{text.source.name}:{line}: this file is not UTF-8: save it again as UTF-8")
    return text


def _unknown_rules(kitchen: Kitchen, source: Source) -> list[Diagnostic]:
    """Levels for rules that do not exist.

    The settings lie below the checks, so it is only here that both are known.
    """
    findings = []
    known = (*names(), *scaling_names()) if kitchen.settings.checks else ()
    for rule in kitchen.settings.checks:
        if rule not in known:
            from tamis.quantity.near import nearest

            near = nearest(rule, known)
            message = f"“{rule}” is not a rule; this entry has no effect"
            hint = f"did you mean `{near}`?" if near else "`tamis explain` lists the rules"
            span = setting_span(source.text, "checks", rule)
            findings.append(Diagnostic("setting-unknown", "warning", span, message, hint))
    return findings
