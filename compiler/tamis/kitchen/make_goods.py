"""Make ``grammar/goods.json``: ``python -m tamis.kitchen.make_goods`` (in a checkout).

Weights copied by hand drift from their source. So the hand-kept lists in ``grammar/sources`` only *point*
at a row of the USDA tables beside them (or quote a figure with its source), and this joins the two. The
result is checked in, one food a line, and a test fails when it is not what this would write.
"""

from __future__ import annotations

import csv
import json
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

from tamis.generated import write
from tamis.quantity.units import shipped
from tamis.saved import Written
from tamis.typed import Any
from tamis.words import LANGUAGE_OF_DATA, one_of, own_names

from .food import MILLILITRES, PLAIN, GoodsKey, amount
from .goods import key

ITEMS = b',\n"items": [\n'
ROOT = Path(__file__).resolve().parents[3] / "grammar"
SOURCES = ROOT / "sources"
Portions = dict[str, list[tuple[str, str]]]
Refuse = dict[str, tuple[str, str]]
Tables = dict[str, Any]

# "state, state: 20083 cup" | "state: 117 g/cup, HERR 41" | "1.7–2 g, from memory" | "~ bread-flour"
_VOLUMES = one_of(unit.replace("_", " ") for unit in MILLILITRES)
_FIGURE = re.compile(
    r"(?:(?P<states>[a-z][a-z ,-]*): )?"
    r"(?:(?P<ndb>\d{5}) (?P<measure>.+)|~ (?P<like>[a-z0-9-]+)"
    rf"|(?P<lo>[\d./]+)(?:–(?P<hi>[\d./]+))?(?P<unit> g(?:/{_VOLUMES})?), (?P<lent>~ )?(?P<source>.+))"
)
_ANALOGY = "by analogy to "
_ORDER: tuple[GoodsKey, ...] = (
    *("id", "name", "plural", "aliases", "keys", "states", "densities", "pieces", "parts", "liquid", "show"),
    *("allergens", "hazard", "animal", "flour", "salt", "leavener", "role", "merchant", "water", "refuse"),
)
_JOINED: frozenset[GoodsKey] = frozenset(("kind", "states", "sorts"))
_MADE: frozenset[GoodsKey] = frozenset(("id", "keys"))
_FIGURES: tuple[GoodsKey, ...] = ("densities", "pieces", "parts")
_KNOWN = _JOINED.union(_ORDER) - _MADE


def read_portions(path: Path) -> Portions:
    """Return the measures of each USDA food, by NDB number: (measure, grams) in USDA's order."""
    portions: Portions = {}
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            portions.setdefault(row["ndb_no"], []).append((row["measure"], row["grams_per_1_measure"]))
    return portions


def measure(portions: Portions, ndb: str, wanted: str) -> tuple[str, str]:
    """Return the row called `wanted`, else the first that begins so."""
    rows = portions.get(ndb, [])
    for row in [r for r in rows if r[0] == wanted] or [r for r in rows if r[0].startswith(wanted)]:
        return row
    raise ValueError(f"USDA {ndb} has no measure {wanted!r}, only {[r[0] for r in rows]}")


class Maker:
    """Joins items to the tables; holds what has been made so that neighbours can lend their figures."""

    def __init__(self, head: Tables, said: Tables, portions: Portions, refuse: Refuse) -> None:
        """`head` is ``goods.toml``, `said` the foods by id."""
        self.head = head
        self.said = said
        self.portions = portions
        self.refuse = refuse
        self.made: dict[str, dict[str, Any]] = {}

    def item(self, id: str) -> dict[str, Any]:
        """Return the finished record of one food; a lender's may be asked for before its turn."""
        if id in self.made:
            return self.made[id]
        try:
            self.made[id] = self.join(id, self.said[id])
        except (ValueError, KeyError) as error:
            raise ValueError(f"[{id}] {error}") from error
        return self.made[id]

    def join(self, id: str, said: dict[str, Any]) -> dict[str, Any]:
        """Return what is said of one food joined to its kind and to the tables."""
        if unknown := set(said) - _KNOWN:
            raise ValueError(f"unknown keys {sorted(unknown)}")
        kind = said.get("kind")
        facts: dict[str, Any] = dict(self.head["kinds"][kind]) if kind else {}
        states = [*facts.pop("states", []), *said.get("states", [])]
        facts |= {k: v for k, v in said.items() if k not in _JOINED}
        facts |= {"id": id, "name": said.get("name", id.replace("-", " ")), "states": states}
        for figures in _FIGURES:
            facts[figures] = self.figures(facts.get(figures, []), figures)
        water, refuse = facts.get("water"), facts.get("refuse")
        facts |= {"water": water.split(", ", 1) if water else None, "refuse": self.loss(refuse) if refuse else None}
        names = [facts["name"], facts.get("plural", ""), *facts.get("aliases", [])]
        facts["keys"] = list(dict.fromkeys(_key(n) for n in names if n))
        self.check(facts)
        return {k: facts[k] for k in _ORDER if facts.get(k)}

    def sorts(self, id: str) -> list[dict[str, Any]]:
        """Return the sorts of a food: short records that take every other fact from it."""
        short = []
        for text in self.said[id].get("sorts", []):
            name, *aliases = text.split(", ")
            names = list(dict.fromkeys(map(_key, (name, *aliases))))
            facts = {"id": _key(name).replace(" ", "-").replace("'", ""), "of": id, "name": name}
            facts |= {"aliases": aliases, "keys": names} if aliases else {"keys": names}
            self.check(facts | {"states": []})
            self.made[facts["id"]] = facts
            short.append(facts)
        return short

    def figures(self, said: list[str], kind: GoodsKey) -> list[list[Any]]:
        """Return rows of (state, lo, hi, usual, source, analogy): several lines of one state make a range."""
        rows: dict[str, list[Any]] = {}
        for text in said:
            for row in self.figure(text, kind):
                old = rows.get(row[0])
                if old is None:
                    rows[row[0]] = row
                    continue
                old[1] = min(old[1], row[1], key=amount)
                old[2] = max(old[2], row[2], key=amount)
                old[4] += f"; {row[4]}"
        return list(rows.values())

    def figure(self, text: str, kind: GoodsKey) -> list[list[Any]]:
        """Return the rows that one line stands for."""
        parsed = _FIGURE.fullmatch(text)
        if parsed is None:
            raise ValueError(f"cannot read the figure {text!r}")
        states = [s if s != PLAIN else "" for s in (parsed["states"] or PLAIN).split(", ")]
        if parsed["like"]:
            lender = self.item(parsed["like"])
            return [[*r[:4], f"{_ANALOGY}{lender['id']} ({r[4]})", True] for r in lender[kind]]
        if parsed["ndb"]:
            name, grams = measure(self.portions, parsed["ndb"], parsed["measure"])
            lo = hi = grams + self.unit(name, kind)
            source = f"USDA SR28 {parsed['ndb']} {name}"
        else:
            lo, hi = (parsed[end] + parsed["unit"].rstrip() for end in ("lo", "hi" if parsed["hi"] else "lo"))
            source = (_ANALOGY if parsed["lent"] else "") + parsed["source"]
        return [[state, lo, hi, lo, source, bool(parsed["lent"])] for state in states]

    def unit(self, name: str, kind: GoodsKey) -> str:
        """Return the volume that a USDA measure begins with, as ``" g/cup"``; a piece needs none."""
        if kind != "densities":
            return " g"
        words = name.replace(",", "").split()
        units = (shipped(LANGUAGE_OF_DATA).get(" ".join(words[:count])) for count in (2, 1))
        volume = next((unit.id for unit in units if unit and unit.id in MILLILITRES), None)
        if volume is None:
            raise ValueError(f"{name!r} is no volume")
        return f" g/{volume.replace('_', ' ')}"

    def loss(self, text: str) -> list[str]:
        """Return percent and source of an NDB number's refuse, or of ``"12, source"``."""
        if text in self.refuse:
            percent, what = self.refuse[text]
            return [percent, f"USDA SR28 {text}: {what}"]
        return text.split(", ", 1)

    def check(self, facts: dict[str, Any]) -> None:
        """Refuse a word outside the closed lists, a group of states nobody made, a clash of names."""
        for name, allowed in self.head["closed"].items():
            values = facts.get(name, [])
            for value in values if isinstance(values, list) else [values]:
                if value not in allowed:
                    raise ValueError(f"{name}: {value!r} is not in the closed list")
        for state in facts["states"]:
            if state.startswith("@") and state[1:] not in self.head["groups"]:
                raise ValueError(f"no group of states {state!r}")
        if facts["id"] in self.made:
            raise ValueError(f"there are two foods {facts['id']}")
        for other in self.made.values():
            if clash := set(facts["keys"]) & set(other["keys"]):
                raise ValueError(f"{sorted(clash)} already means {other['id']}")


def read_refuse(path: Path) -> Refuse:
    """Return percent of refuse and what it is, by NDB number."""
    with path.open(encoding="utf-8", newline="") as file:
        return {r["ndb_no"]: (r["refuse_percent"], r["refuse_description"]) for r in csv.DictReader(file)}


def make() -> str:
    """Return the text of ``goods.json``."""
    head = tomllib.loads((SOURCES / "goods.toml").read_text(encoding="utf-8"))
    said: dict[str, Any] = {}
    for path in sorted((SOURCES / "aisles").glob("*.toml")):
        aisle = tomllib.loads(path.read_text(encoding="utf-8"))
        if twice := sorted(set(aisle) & set(said)):
            raise ValueError(f"{path.name}: {twice} stand in another aisle too")
        said |= aisle
    portions, refuse = read_portions(SOURCES / "usda_portions.csv"), read_refuse(SOURCES / "usda_refuse.csv")
    maker = Maker(head, said, portions, refuse)
    made = [item for id in said for item in (maker.item(id), *maker.sorts(id))]
    lists = ("groups", "adverbs", "of", "minced", "cuts", "closed")
    lines = [f"{json.dumps(name)}: {json.dumps(head[name], ensure_ascii=False)}," for name in lists]
    items = ",\n".join(json.dumps(item, ensure_ascii=False, separators=(",", ":")) for item in made)
    return "{\n" + "\n".join(lines) + '\n"items": [\n' + items + "\n]\n}\n"


def names(text: str, language: str) -> dict[str, Written]:
    """The rows of words that `Larder` takes, from the text of ``goods.json`` and `words/<language>/goods.toml`.

    Where each food stands in that text; what it is called, with semicolons between; the id of each name's :func:`key`;
    the odd plurals, where the names are not those of the list; the state that each of the language's own words says;
    adverbs.
    """
    data = json.loads(text)
    own = own_names(language, "goods")
    called = {item["id"]: (item["name"], *item.get("aliases", ())) for item in data["items"]}
    index = {name: item["id"] for item in data["items"] for name in item["keys"]}
    own_called, plurals = own.get("names"), own.get("plurals", {})
    if own_called is not None:
        called = {id: tuple(own_called.get(id, "").split(", ")) for id in called}
        index = {}
        for id, said in called.items():
            index |= dict.fromkeys((key(n.split(), language) for n in (*said, plurals.get(id, "")) if n), id)
    states = {word: state for state, words in own.get("states", {}).items() for word in words.split(", ")}
    adverbs = own.get("adverbs")
    renamed = {"plurals": plurals} if own_called is not None else {}
    head, *places = _places(text)
    return renamed | {
        "head": [head],
        "in order": list(called),
        "places": dict(zip(called, places, strict=True)),
        "called": {id: ";".join(said) for id, said in called.items()},
        "keys": index,
        "states": states,
        "adverbs": data["adverbs"] if adverbs is None else adverbs["words"].split(", "),
    }


def _places(text: str) -> Iterator[str]:
    """Where in the file the head ends, and where each food stands: its first byte and the number of its bytes."""
    head, items, foods = text.encode("utf-8").partition(ITEMS)
    yield str(len(head))
    start = len(head) + len(items)
    for line in foods.removesuffix(b"\n]\n}\n").split(b"\n"):
        yield f"{start}+{len(line.rstrip(b','))}"
        start += len(line) + 1


def _key(name: str) -> str:
    return key(name.split(), LANGUAGE_OF_DATA)


if __name__ == "__main__":
    write({"grammar/goods.json": make()})
