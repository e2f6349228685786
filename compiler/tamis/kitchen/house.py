"""A kitchen: everything that the compiler knows before it reads a recipe.

Units, goods, verbs and equipment ship with the compiler; a house adds its settings and its own goods. Every
phase takes the one record that holds them all, so that two houses can be compiled in one process.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from tamis.diagnostics import Diagnostic
from tamis.kitchen.equipment import Cupboard
from tamis.kitchen.goods import Larder
from tamis.kitchen.settings import DEFAULT_LANGUAGE, Settings, read_settings, setting_span
from tamis.kitchen.verbs import Verbs
from tamis.quantity.units import Units, shipped
from tamis.record import NamedTuple
from tamis.source import Source, Span
from tamis.typed import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.kitchen.house_goods import Fault

UNREADABLE: Literal["settings-unreadable"] = "settings-unreadable"


class Kitchen(NamedTuple):
    """One house's kitchen."""

    settings: Settings
    units: Units
    larder: Larder
    verbs: Verbs
    cupboard: Cupboard

    @property
    def language(self) -> str:
        """The language of the recipes: a folder of `grammar/words/`."""
        return self.settings.kitchen.language


class Problem(NamedTuple):
    """What is wrong with one of the house's files. A finding of the rule `UNREADABLE` stops the command."""

    file: Literal["kitchen.toml", "goods.toml"]
    finding: Diagnostic


@cache
def default_kitchen(language: str) -> Kitchen:
    """The kitchen that holds where no house has decided anything, but for the language of its recipes."""
    settings = Settings()
    settings = settings._replace(kitchen=settings.kitchen._replace(language=language))
    units = shipped(language)
    return Kitchen(settings, units, Larder.load(language), Verbs.load(language), Cupboard.load(language))


def house_kitchen(settings_toml: str | None, goods_toml: str | None) -> tuple[Kitchen, list[Problem]]:
    """The kitchen of a house, from the texts of its two files (None: no file), and what is wrong there."""
    problems: list[Problem] = []
    kitchen = default_kitchen(DEFAULT_LANGUAGE) if settings_toml is None else _settled(settings_toml, problems)
    if goods_toml is not None:
        said, findings = _parsed(goods_toml)
        from tamis.kitchen.house_goods import extended

        larder, faults = extended(kitchen.larder, said)
        findings = (*findings, *(_about_goods(fault, goods_toml) for fault in faults))
        problems += [Problem("goods.toml", finding) for finding in findings]
        kitchen = kitchen._replace(larder=larder)
    return kitchen, problems


def price_problems(goods_toml: str, kitchen: Kitchen) -> list[Problem]:
    """What is wrong with the packs and prices of a house's goods: it touches only what is bought and what it costs."""
    from tamis.kitchen.sale import sale_problems

    said, _ = _parsed(goods_toml)
    return [Problem("goods.toml", _about_goods(fault, goods_toml)) for fault in sale_problems(said, kitchen.units)]


def _settled(text: str, problems: list[Problem]) -> Kitchen:
    """The kitchen that a house's settings give."""
    said, findings = _parsed(text)
    settings, more = read_settings(said, text)
    problems += [Problem("kitchen.toml", finding) for finding in (*findings, *more)]
    language = settings.kitchen.language
    units = shipped(language, settings.publish.cup)
    return default_kitchen(language)._replace(settings=settings, units=units)


@lru_cache(2)
def _parsed(text: str) -> tuple[Mapping[str, Any], tuple[Diagnostic, ...]]:
    """The tables of a TOML text; none and a finding if it is not TOML. Those of the goods are asked twice: for what the
    foods are, and for what they cost."""
    from tamis.kitchen.plain_toml import read

    plain = read(text)
    if plain is not None:
        return plain, ()
    import tomllib

    try:
        return tomllib.loads(text), ()
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        reason = str(error) or "it nests too deep"
    found = re.search(r" \(\D+(\d+)\D+(\d+)\)$", reason)  # the reader says at which line and column
    at = Source("", text).starts[int(found[1]) - 1] + int(found[2]) - 1 if found else len(text)
    at = min(at, max(len(text) - 1, 0))
    message = f"this is not TOML: {reason[: found.start()] if found else reason}"
    hint = "a line is `key = value`, words stand in quotation marks, a table opens with `[name]`"
    return {}, (Diagnostic(UNREADABLE, "error", Span(at, min(at + 1, len(text))), message, hint),)


def _about_goods(fault: Fault, text: str) -> Diagnostic:
    return Diagnostic("house-goods", "error", setting_span(text, fault.id, fault.key), str(fault))
