"""Make `grammar/saved/<language>/equipment.txt`, the equipment as it is looked up, from `grammar/equipment.toml`.

The names are those of the file, which are English and the ids, or those of `words/<language>/equipment.toml`. The files
ship with the compiler: a fault in them raises.
"""

from __future__ import annotations

from tamis.kitchen.equipment import WORDS, Equipment
from tamis.kitchen.seconds import seconds
from tamis.quantity.nouns import nouns
from tamis.saved import Written, cell
from tamis.string_tables import tables
from tamis.typed import Any
from tamis.words import own_names


def made(text: str, language: str) -> dict[str, Written]:
    """The rows that `Cupboard` takes, from the text of `equipment.toml`."""
    said = tables(text)
    maker = _Maker(language)
    maker.add_counts(said.pop("counts", {}))
    for kind, table in said.items():
        for id, own in table.items():
            maker.add(id, kind, own)
    return {
        "facts": maker.pieces,
        "in order": list(maker.names),
        "names": maker.names,
        "heads": sorted({WORDS.findall(name)[0] for name in maker.names}),
        "several": {name: "" for name, several in maker.several.items() if several},
        "counts in order": list(maker.counts),
        "counts": maker.counts,
        "holders": maker.holders,
        "tins": maker.tins,
    }


class _Maker:
    """Gathers the pieces and their names."""

    def __init__(self, language: str) -> None:
        self._nouns = nouns(language)
        self._own = own_names(language, "equipment")
        self._count_ids: frozenset[str] = frozenset()
        self.pieces: dict[str, str] = {}
        self.names: dict[str, str] = {}
        self.several: dict[str, bool] = {}
        self.counts: dict[str, str] = {}
        self.holders: tuple[str, ...] = ()
        self.tins: tuple[str, ...] = ()

    def add_counts(self, groups: dict[str, str]) -> None:
        """The count words, of which some hold food that is sold in them."""
        blocks, packs, self.tins = (tuple(groups.get(name, "").split(", ")) for name in ("blocks", "packs", "tins"))
        self.holders = (*blocks, *packs, *self.tins)
        own = self._own.get("counts")
        words = ", ".join(groups.values()).split(", ")
        self._count_ids = frozenset(words)
        for word in words:
            for name in _listed(own.get(word, "")) if own is not None else (word,):
                self.counts[name] = self.counts[self._plural(name)] = word

    def add(self, id: str, kind: Any, text: str) -> None:
        """One piece, from its line in the file."""
        facts: dict[str, Any] = dict(fact.partition(" ")[::2] for fact in text.split(", ") if fact)
        names = (id, *_listed(facts.pop("also", ""), " / "))
        plural = facts.pop("plural", "")
        own = self._own.get("names")
        if own is not None:
            names, plural = _listed(own.get(id, "")), ""
        name = names[0] if names else id
        item = Equipment(
            id=id,
            name=name,
            kind=kind,
            plural=plural or self._plural(name),
            station=facts.pop("station", ""),
            count_unit=id in self._count_ids,
            heats=seconds(facts.pop("heats", "0 s")),
            part_of=facts.pop("part_of", ""),
            general=facts.pop("general", None) is not None,
            round=facts.pop("round", None) is not None,
            grows=facts.pop("grows", None) is not None,
            oven_holds=int(facts.pop("oven_holds", "0")),
        )
        if facts:
            raise ValueError(f"{id!r} has facts that nobody knows: {', '.join(facts)}")
        usual = {"id": id, **Equipment._field_defaults}
        self.pieces[id] = cell({key: value for key, value in item._asdict().items() if value != usual.get(key)})
        for name in names:
            self._put(id, name, self._plural(name) if name != item.name else item.plural)

    def _plural(self, name: str) -> str:
        return self._own.get("plurals", {}).get(name) or self._nouns.plural(name)

    def _put(self, id: str, one: str, many: str) -> None:
        if one in self.names:
            raise ValueError(f"the equipment {one!r} stands twice")
        self.names[many] = self.names[one] = id
        self.several |= {many: True} | {one: False}


def _listed(text: str, between: str = ", ") -> tuple[str, ...]:
    return tuple(text.split(between)) if text else ()
