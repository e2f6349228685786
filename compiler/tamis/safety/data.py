"""The published limits and word lists of `grammar/safety.toml`, read once.

The file is written as a cook would print the rules; the checks need exact degrees and seconds. The two meet here.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import cache

from tamis.kitchen.seconds import seconds
from tamis.quantity.temperature import c_from_f
from tamis.record import NamedTuple
from tamis.string_tables import exact, saved_tables
from tamis.typed import Literal, get_args

AllergenList = Literal["us", "eu"]
LISTS: tuple[AllergenList, ...] = get_args(AllergenList)


class Pair(NamedTuple):
    """A core temperature in exact °C, how many seconds it must be held, and how the source prints it."""

    celsius: Fraction
    hold: int
    text: str


class Limit(NamedTuple):
    """What one authority asks for one hazard: one of the pairs, then `rest` seconds."""

    pairs: tuple[Pair, ...]
    rest: int = 0

    @property
    def text(self) -> str:
        """The limit in a few words: the pair that a cook with a thermometer goes by."""
        hottest = next((pair for pair in self.pairs if pair.hold <= 30), self.pairs[0])
        return hottest.text


class Window(NamedTuple):
    """How long risky food may be out (seconds), and the °C for holding hot, keeping cold and reheating."""

    out: int
    hold: Fraction
    cold: Fraction
    reheat: Fraction
    reheat_text: str


class Promise(NamedTuple):
    """What contradicts a tag: kinds of animal food, allergens, and foods, each with what it is called there.

    `makes` are the foods of which it depends on the make; `provable` if it holds where nothing of all that is there."""

    animal: frozenset[str]
    allergens: frozenset[str]
    foods: Mapping[str, str]
    makes: frozenset[str]
    provable: bool


class Rules(NamedTuple):
    """All of the file; `limits` by authority and hazard, `printed` the °F accepted for a °C as the trade prints it,
    `pairs` the whole °C that is printed for a °F.
    `meringue` are the degrees of an oven, and how long in it; `pot` those after which what is in a pot of
    `potful` grams simmers.

    `keeping` holds by how much what preserves must outweigh what is moist; `verbs`, `equipment` and `goods` are
    lists of ids, by what they are asked for.
    """

    limits: Mapping[str, Mapping[str, Limit]]
    sources: Mapping[str, str]
    printed: Mapping[Fraction, Fraction]
    pairs: Mapping[Fraction, int]
    wet: Mapping[str, int]
    fried: Mapping[str, int]
    windows: Mapping[str, Window]
    verbs: Mapping[str, frozenset[str]]
    equipment: Mapping[str, tuple[str, ...]]
    goods: Mapping[str, frozenset[str]]
    names: Mapping[str, str]
    allergens: Mapping[str, Mapping[str, frozenset[str]]]
    tags: Mapping[str, Promise]
    diets: Mapping[str, str]
    cautions: Mapping[str, str]
    keeping: Mapping[str, Fraction]
    reading: int
    come_up: int
    meringue: Limit
    pot: Limit
    potful: int
    egg_come_up: int
    soak: int
    boil: int
    cooked: int
    reheated: int


@cache
def rules() -> Rules:
    """The rules that ship with the compiler: a fault in the file raises."""
    raw = saved_tables("", "safety")
    trade = _trade(raw["printed"]["pairs"])
    return Rules(
        limits=_Limits(raw),
        sources=raw["sources"],
        pairs={Fraction(f): int(c) for f, c in trade.items()},
        printed=_printed(raw["printed"]["pairs"]),
        wet={what: seconds(text) for what, text in raw["wet"].items()},
        fried={what: seconds(text) for what, text in raw["fried"].items()},
        windows={name: _window(text, trade) for name, text in raw["windows"].items()},
        verbs=_sets(raw["verbs"]),
        equipment={what: listed(text) for what, text in raw["equipment"].items()},
        goods=_sets(raw["goods"]),
        names=raw["names"],
        allergens={who: _sets(raw[f"allergens-{who}"]) for who in LISTS},
        tags=_tags(raw),
        diets=raw["diets"],
        cautions=raw["cautions"],
        keeping={what: exact(text) for what, text in raw["keeping"].items()},
        reading=seconds(raw["held"]["reading"]),
        meringue=_limit(raw["meringue"]["baked"], trade),
        pot=_limit(raw["pot"]["come_up"], trade),
        potful=int(raw["pot"]["grams"]),
        come_up=seconds(raw["held"]["come_up"]),
        egg_come_up=seconds(raw["held"]["egg_come_up"]),
        soak=seconds(raw["beans"]["soak"]),
        boil=seconds(raw["beans"]["boil"]),
        cooked=seconds(raw["poison-raw"]["cooked"]),
        reheated=seconds(raw["leftover"]["heated"]),
    )


def listed(text: str) -> tuple[str, ...]:
    """The words of a list with commas."""
    return tuple(text.split(", ")) if text else ()


def celsius(text: str) -> Fraction:
    """Exact °C of a printed temperature, as `165 °F`."""
    number, _, scale = text.partition(" °")
    if scale not in ("C", "F"):
        raise ValueError(f"no temperature: {text!r}")
    return exact(number) if scale == "C" else c_from_f(exact(number))


class _Limits(dict[str, dict[str, Limit]]):
    """What each authority asks for each hazard, made when it is asked for: a check asks for one authority."""

    def __init__(self, raw: Mapping[str, Mapping[str, str]]) -> None:
        self._raw = raw
        self._trade = _trade(raw["printed"]["pairs"])

    def __missing__(self, authority: str) -> dict[str, Limit]:
        raw, limits = self._raw, {}
        rests = raw.get(f"{authority}-rest", {})
        roasts = _roasts(raw["roast"], self._trade) if raw["roast"]["authority"] == authority else {}
        for hazard, text in raw[authority].items():
            pairs = _limit(text, self._trade).pairs
            rest = rests.get(hazard)
            limits[hazard] = Limit((*pairs, *roasts.get(hazard, ())), seconds(rest) if rest else 0)
        self[authority] = limits
        return limits


def _limit(text: str, trade: Mapping[str, str]) -> Limit:
    """Pairs parted by a stroke."""
    return Limit(tuple([_pair(pair, trade) for pair in text.split(" / ")]))


def _pair(text: str, trade: Mapping[str, str]) -> Pair:
    degrees, _, held = text.partition(", ")
    return Pair(celsius(degrees), seconds(held) if held else 0, _both(degrees, trade))


def _both(text: str, trade: Mapping[str, str]) -> str:
    """A limit in both scales, °C as the trade prints it, else rounded up so that it is never below the limit."""
    number, _, scale = text.partition(" °")
    if scale == "C":
        return f"{text} ({_up(exact(number) * 9 / 5 + 32)} °F)"
    return f"{trade.get(number) or _up(celsius(text))} °C ({text})"


def _trade(pairs: str) -> dict[str, str]:
    """By °F the whole °C that is printed for it."""
    ends = [pair.split("/") for pair in listed(pairs)]
    return {f: c for f, c in ends if c.isdigit()}


def _up(value: Fraction) -> int:
    return -(-value.numerator // value.denominator)


def _roasts(said: Mapping[str, str], trade: Mapping[str, str]) -> dict[str, tuple[Pair, ...]]:
    """By hazard, what a roast may be held at instead."""
    ends = (pair.split("/") for pair in listed(said["pairs"]))
    pairs = tuple(Pair(c_from_f(exact(f)), int(held), _both(f"{f} °F", trade)) for f, held in ends)
    return dict.fromkeys(listed(said["hazards"]), pairs)


def _printed(text: str) -> dict[Fraction, Fraction]:
    """Exact °C meant by a printed °C that lies a little under it."""
    pairs = ([exact(end) for end in pair.split("/")] for pair in listed(text))
    return {c: max(c, c_from_f(f)) for f, c in pairs}


def _window(text: str, trade: Mapping[str, str]) -> Window:
    facts = dict(fact.split(" ", 1) for fact in listed(text))
    hold, cold, reheat = (celsius(facts[key]) for key in ("hold", "cold", "reheat"))
    return Window(seconds(facts["out"]), hold, cold, reheat, _both(facts["reheat"], trade))


def _sets(table: Mapping[str, str]) -> dict[str, frozenset[str]]:
    return {name: frozenset(listed(text)) for name, text in table.items()}


def _tags(raw: Mapping[str, Mapping[str, str]]) -> dict[str, Promise]:
    unproved = listed(raw["unproved"]["tags"])
    promises = {}
    for tag, text in raw["tags"].items():
        animal, allergens, groups, makes = (*text.split("; "), "", "")[:4]
        foods = {food: group for group in listed(groups) for food in listed(raw["goods"][group])}
        differ = frozenset(listed(raw["goods"][makes]) if makes else ())
        provable = tag not in unproved
        promises[tag] = Promise(frozenset(listed(animal)), frozenset(listed(allergens)), foods, differ, provable)
    return promises
