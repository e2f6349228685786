"""A house's own goods over the list that ships with the compiler.

A house weighs its own flour and buys its own jam. Its ``goods.toml`` adds foods and overrides single
facts of known ones, so what it says is laid over ours key by key, and what it says wrongly is told and
left out: a misspelt key must not quietly leave an allergen off.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from tamis.record import NamedTuple
from tamis.saved import Names
from tamis.typed import Any

from .food import PLAIN, GoodsKey, Raw, amount, whole
from .goods import Foods, Larder, key

SOURCE = "your goods.toml"
_TEXTS: tuple[GoodsKey, ...] = (
    "name",
    "plural",
    "show",
    "hazard",
    "animal",
    "role",
    "merchant",
    "pack",
    "price",
    "like",
)
_LISTS: tuple[GoodsKey, ...] = ("aliases", "states", "allergens")
_FLAGS: tuple[GoodsKey, ...] = ("liquid", "flour", "salt", "leavener")
_FIGURES: tuple[GoodsKey, ...] = ("densities", "pieces")
_SHARES: tuple[GoodsKey, ...] = ("water", "refuse")
_PRICE: GoodsKey = "price"
_OWN: tuple[GoodsKey, ...] = (
    "id",
    "of",
    "name",
    "plural",
    "aliases",
    "keys",
    "pack",
    "price",
)  # what no neighbour can lend
_NAMING: frozenset[GoodsKey] = frozenset(("name", "plural", "aliases", "like"))
"""What a food is called, and whose facts it has: without these, only figures and facts of a known one change."""
_KEYS = (*_TEXTS, *_LISTS, *_FLAGS, *_FIGURES, *_SHARES)


class Fault(NamedTuple):
    """What is wrong in the table of one food, at one of its keys ("" for the whole table)."""

    id: str
    key: str
    text: str

    def __str__(self) -> str:
        return f"[{self.id}] {self.text}"


def extended(larder: Larder, house: Raw) -> tuple[Larder, list[Fault]]:
    """Return a larder with a house's own goods laid over ours, and what was wrong with them."""
    foods, names, faults = _merged(larder.foods, larder.names, larder.closed, house, larder.language)
    return larder.laid_over(foods, names), faults


def _merged(
    raw: Foods, index: Names, closed: Mapping[str, list[str]], house: Raw, language: str
) -> tuple[Foods, dict[str, str], list[Fault]]:
    """Return our items with the house's laid over them, the house's names, and what is wrong."""
    items, known, names = raw.copy(), index.with_more({}), {}
    faults: list[Fault] = []
    for id, said in house.items():
        if not isinstance(said, Mapping):
            faults.append(Fault(id, "", "must be a table with the facts of one food"))
            continue
        fresh, wrong = _facts(said, closed)
        faults += [Fault(id, key, text) for key, text in wrong]
        if id in items and not _NAMING.intersection(said):
            items.lay(id, fresh)
            continue
        base, lent = _known(items, known, id, language), said.get("like")
        if lent is not None and lent not in items:
            faults.append(Fault(id, "like", f"like: there is no food {lent!r}{_meant(str(lent), list(items))}"))
        elif lent is not None:
            base = _borrowed(whole(items, lent)) | base
        item = {"name": id.replace("-", " ")} | base | fresh | {"id": id}
        item.pop("of", None)
        items.add(id, item)
        for name in (item["name"], item.get("plural", ""), *item.get("aliases", ())):
            if name.strip():
                called = key(name.lower().split(), language)
                names[called] = id
                known.add(called, id)
    return items, names, faults


def _known(items: Mapping[str, Raw], names: Names, id: str, language: str) -> dict[str, Any]:
    """Return what is known of the food already. One that is called by a name of another (strong flour, which is bread
    flour to us) is that food, for which the house has its own figures: it keeps all the facts, allergens above all."""
    if id in items:
        return dict(whole(items, id))
    words = id.replace("-", " ").lower().split()
    same = names.get(key(words, language)) if words else None
    return {} if same is None else {name: value for name, value in whole(items, same).items() if name not in _OWN}


def _borrowed(neighbour: Raw) -> dict[str, Any]:
    """Return a neighbour's facts without its names, its figures marked as lent."""
    facts = {name: value for name, value in neighbour.items() if name not in _OWN}
    for figures in _FIGURES:
        rows = neighbour.get(figures, ())
        facts[figures] = [[*row[:4], f"by analogy to {neighbour['id']} ({row[4]})", True] for row in rows]
    return facts


def _facts(said: Raw, closed: Mapping[str, list[str]]) -> tuple[dict[str, Any], list[tuple[str, str]]]:
    """Return the facts that are well said, as the generated list has them, and what is wrong, by key."""
    facts: dict[str, Any] = {}
    wrong: list[tuple[str, str]] = []
    for name, value in said.items():
        if name not in _KEYS:
            meant = _meant(name, _KEYS) or f"; known here: {', '.join(sorted(_KEYS))}"
            wrong.append((name, f"unknown key {name!r}{meant}"))
            continue
        try:
            facts[name] = _fact(name, value)
        except (ValueError, KeyError, ZeroDivisionError, TypeError) as error:
            wrong.append((name, f"{name}: {_reason(error)}"))
            continue
        for word in _words(facts[name]) if name in closed else ():
            if word not in closed[name]:
                wrong.append((name, f"{name}: {word!r} is not one of {', '.join(w for w in closed[name] if w)}"))
                facts.pop(name, None)
    facts.pop("like", None)
    return facts, wrong


def _words(fact: Any) -> list[str]:
    return fact if isinstance(fact, list) else [fact]


def _reason(error: Exception) -> str:
    return str(error) if isinstance(error, TypeError) else 'is not an amount; write 0.53, 50 or "125 g/cup"'


def _fact(key: str, value: Any) -> Any:
    """Return one value as the generated list would hold it; TypeError says what was expected."""
    if key in _TEXTS:
        priced = key == _PRICE and isinstance(value, int | float)
        return str(value) if priced else _expect(value, str, "expected words in quotation marks")
    if key in _LISTS:
        words = _expect(value, list, "expected a list of words")
        return [_expect(word, str, "expected a list of words") for word in words]
    if key in _FLAGS:
        return _expect(value, bool, "expected true or false")
    if key in _SHARES:
        return [str(Fraction(str(value))), SOURCE]
    by_state = value if isinstance(value, Mapping) else {"": value}
    return [_row("" if state == PLAIN else state, figure) for state, figure in by_state.items()]


def _row(state: str, figure: object) -> list[Any]:
    text = str(figure)
    if amount(text) <= 0:
        raise ValueError(text)
    return [state, text, text, text, SOURCE, False]


def _expect(value: Any, kind: type, expected: str) -> Any:
    if not isinstance(value, kind):
        raise TypeError(expected)
    return value


def _meant(word: str, known: Any) -> str:
    # The plural of a word is often further off than a slip of the pen: density, densities.
    from tamis.quantity.near import nearest

    near = nearest(word, known) or next((each for each in known if each[:5] == word[:5]), None)
    return f"; did you mean {near!r}?" if near else ""
