"""What a house has decided: its cooks and ovens, how it publishes, whose limits it keeps, what it checks.

A house writes these in `kitchen.toml`. A misspelt key would quietly do nothing, so it is told with the
nearest one; a value of the wrong form is told with the form that was expected, and the default holds.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Level
from tamis.kitchen.seconds import seconds
from tamis.patterns import pattern
from tamis.quantity.degrees import typed_degrees
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import Any, Literal, get_args
from tamis.words import languages

ShownUnits = Literal["metric", "us", "written"]
HouseCup = Literal["us", "metric", "label"]
Authority = Literal["us-home", "us-food-service", "uk"]
AllergenLists = Literal["us", "eu", "both"]

UNITS: tuple[ShownUnits, ...] = get_args(ShownUnits)
CUPS: tuple[HouseCup, ...] = get_args(HouseCup)
AUTHORITIES: tuple[Authority, ...] = get_args(Authority)
ALLERGENS: tuple[AllergenLists, ...] = get_args(AllergenLists)
LEVELS: tuple[Level, ...] = get_args(Level)

DEFAULT_LANGUAGE = "en"
"""The language of recipes where no `kitchen.toml` names one; nothing else takes a language for granted."""


class Workplace(NamedTuple):
    """What plans are made for.

    `awake` is in minutes from midnight, `heat` in °C a minute, `stone` and `handling` in seconds; `language` is the one
    in which the recipes are written, a folder of `grammar/words/`.
    """

    cooks: int = 1
    ovens: int = 1
    racks: int = 2
    rings: int = 4
    mixers: int = 1
    awake: tuple[int, int] = (420, 1380)
    heat: Fraction = Fraction(8)
    stone: int = 1200
    handling: int = 120
    language: str = DEFAULT_LANGUAGE


class Publishing(NamedTuple):
    """How measures are shown (one of UNITS), what a cup holds (one of CUPS), whose pages these are, and in what money.

    `currency` is a sign to stand before a price ("£") or letters to stand after it ("EUR"); "" prints the figure alone.
    """

    units: ShownUnits = "metric"
    cup: HouseCup = "us"
    name: str = ""
    address: str = ""
    currency: str = ""


class Safety(NamedTuple):
    """Whose limits hold: one of AUTHORITIES; which allergens are declared: one of ALLERGENS, "" for the authority's."""

    authority: Authority = "us-home"
    allergens: AllergenLists | Literal[""] = ""


class Dough(NamedTuple):
    """Between which percentages of all flour the house's breads lie; what is far outside is told.

    `salt`: from tin loaves and milk rolls to well salted country bread, common practice.
    `hydration` counts the water in milk, eggs and butter too: from stiff or rich doughs to slack ones, common practice.
    `yeast` is instant dry: from a night-long rise to sweet doughs, common practice.
    """

    salt: tuple[Fraction, Fraction] = (Fraction(1), Fraction(5, 2))
    hydration: tuple[Fraction, Fraction] = (Fraction(45), Fraction(90))
    yeast: tuple[Fraction, Fraction] = (Fraction(1, 20), Fraction(5, 2))


class Settings(NamedTuple):
    """The tables of `kitchen.toml`; `checks` gives a rule's level, one of LEVELS, if the house chose one."""

    kitchen: Workplace = Workplace()
    publish: Publishing = Publishing()
    safety: Safety = Safety()
    dough: Dough = Dough()
    checks: Mapping[str, Level] = {}


def read_settings(said: Mapping[str, Any], text: str) -> tuple[Settings, list[Diagnostic]]:
    """The settings that a parsed file gives, and what is wrong with it; `text` is the file's own."""
    findings: list[Diagnostic] = []
    chosen: dict[str, dict[str, Any]] = {}
    for table, values in said.items():
        if table not in Settings._fields:
            findings.append(_unknown(table, Settings._fields, setting_span(text, table), "table"))
        elif not isinstance(values, Mapping):
            findings.append(_wrong(table, f"[{table}] with its keys below", setting_span(text, "", table)))
        else:
            chosen[table] = _read_table(table, values, text, findings)
    default = Settings()
    settings = Settings(
        default.kitchen._replace(**chosen.get("kitchen", {})),
        default.publish._replace(**chosen.get("publish", {})),
        default.safety._replace(**chosen.get("safety", {})),
        default.dough._replace(**chosen.get("dough", {})),
        chosen.get("checks", {}),
    )
    return settings, findings


def setting_span(text: str, table: str, key: str = "") -> Span:
    """Where a key (without one: a table's head) stands in a settings file; its start if it is not found."""
    head = re.search(rf"(?m)^[ \t]*\[[ \t]*({re.escape(table)})[ \t]*\]", text) if table else None
    if key:
        line = pattern(rf"(?m)^[ \t]*[\"']?({re.escape(key)})[\"']?[ \t]*=")
        found = line.search(text, head.end() if head else 0)
        head = found or head
    return Span(*head.span(1)) if head else Span(0, 0)


def _read_table(table: str, values: Mapping[str, Any], text: str, findings: list[Diagnostic]) -> dict[str, Any]:
    readers = _READERS.get(table)
    chosen: dict[str, Any] = {}
    for key, value in values.items():
        reader = readers.get(key) if readers is not None else _level
        if reader is None:
            findings.append(_unknown(key, tuple(readers or ()), setting_span(text, table, key), "setting"))
            continue
        try:
            chosen[key] = reader(value)
        except _Unfit as unfit:
            findings.append(_wrong(key, str(unfit), setting_span(text, table, key)))
    return chosen


def _unknown(key: str, known: tuple[str, ...], span: Span, what: str) -> Diagnostic:
    from tamis.quantity.near import nearest

    near = nearest(key, known)
    hint = f"did you mean `{near}`?" if near else f"known here: {', '.join(known)}"
    message = f"“{key}” is not a known {what}; this entry has no effect"
    return Diagnostic("setting-unknown", "warning", span, message, hint)


def _wrong(key: str, expected: str, span: Span) -> Diagnostic:
    message = f"“{key}” is not in a form that can be read: expected {expected}"
    return Diagnostic("setting-value", "error", span, message, "the default is used until this is corrected")


class _Unfit(ValueError):
    """A value that a key cannot hold; the text tells what was expected. It never leaves this file."""


def _count(least: int) -> Callable[[Any], int]:
    def read(value: Any) -> int:
        if isinstance(value, bool) or not isinstance(value, int) or value < least:
            raise _Unfit(f"a whole number, {least} or more")
        return value

    return read


def _one_of(known: tuple[str, ...]) -> Callable[[Any], str]:
    def read(value: Any) -> str:
        if value not in known:
            raise _Unfit("one of " + ", ".join(f'"{word}"' for word in known))
        return str(value)

    return read


def _words(value: Any) -> str:
    if not isinstance(value, str):
        raise _Unfit("words in quotation marks")
    return value


def _duration(value: Any) -> int:
    try:
        return seconds(str(value)) if str(value)[:1].isdecimal() else int("")
    except (ValueError, KeyError):
        raise _Unfit('a time such as "20 min"') from None


def _heat(value: Any) -> Fraction:
    degrees, _, unit = str(value).partition("/")
    rise = typed_degrees(degrees)
    if rise is None or not rise.signed or rise.scale == "F" or rise.value <= 0 or unit.strip() != "min":
        raise _Unfit('how fast an oven gets hot, as "8 °C/min"')
    return rise.value


def _clock(text: str) -> int | None:
    """The minutes since midnight of `7:00` or `07:00`; None of anything else."""
    hour, _, minute = text.partition(":")
    sound = hour.isdecimal() and minute.isdecimal() and len(hour) <= 2 and len(minute) == 2
    return int(hour) * 60 + int(minute) if sound and int(hour) <= 24 and int(minute) < 60 else None


def _awake(value: Any) -> tuple[int, int]:
    times = value if isinstance(value, list) else []
    minutes = [clock for time in times if (clock := _clock(str(time))) is not None]
    if len(times) != 2 or len(minutes) != 2 or not minutes[0] < minutes[1] <= 1440:
        raise _Unfit('two times of one day, the earlier first, as ["07:00", "23:00"]')
    return minutes[0], minutes[1]


def _band(value: Any) -> tuple[Fraction, Fraction]:
    ends = value if isinstance(value, list) else []
    if len(ends) != 2 or any(isinstance(end, bool) or not isinstance(end, int | float) for end in ends):
        raise _Unfit("two percentages of the flour, the lower first, as [1.5, 2.5]")
    try:
        lo, hi = (Fraction(str(end)) for end in ends)
    except ValueError:
        raise _Unfit("two percentages of the flour, as [1.5, 2.5]") from None
    if not 0 <= lo < hi:
        raise _Unfit("two percentages of the flour, the lower first, as [1.5, 2.5]")
    return lo, hi


def _language(value: Any) -> str:
    return _one_of(languages())(value)


_level = _one_of(LEVELS)

_READERS: dict[str, dict[str, Callable[[Any], Any]]] = {
    "kitchen": {
        "cooks": _count(1),
        "ovens": _count(0),
        "racks": _count(1),
        "rings": _count(0),
        "mixers": _count(0),
        "awake": _awake,
        "heat": _heat,
        "stone": _duration,
        "handling": _duration,
        "language": _language,
    },
    "publish": {
        "units": _one_of(UNITS),
        "cup": _one_of(CUPS),
        "name": _words,
        "address": _words,
        "currency": _words,
    },
    "safety": {"authority": _one_of(AUTHORITIES), "allergens": _one_of(ALLERGENS)},
    "dough": {"salt": _band, "hydration": _band, "yeast": _band},
}
