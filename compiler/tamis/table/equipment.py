"""The equipment list: what to set out, in order of need.

The method names a pan where food goes into it, and again where it comes back; the list must name it once.
A noun with the same adjectives and size is the same piece; *the pan* is the pan before it, whatever it
was called there. What comes with another piece (the bowl of a mixer) is listed as that piece, and what
stands in every kitchen is not listed.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.equipment import Equipment
from tamis.kitchen.house import Kitchen
from tamis.model.recipe import Action, Recipe
from tamis.quantity.display import number as number_text
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Tool
from tamis.reading.prose import prose_words
from tamis.table.occupied import occupied_of
from tamis.table.rows import EquipmentRow
from tamis.table.set_out import stands_for, tools_of
from tamis.table.words import equipment_words

__all__ = ["EquipmentRow", "equipment_list"]

Key = tuple[str, tuple[str, ...], str, str]


class _Piece:
    """A row being filled."""

    __slots__ = ("actions", "components", "equipment", "instead", "named", "number", "tool")

    def __init__(self, tool: Tool, equipment: Equipment) -> None:
        self.tool = tool
        self.equipment = equipment
        self.number = tool.number
        self.actions: list[int] = []
        self.components: list[int] = []
        self.instead: _Piece | None = None  # for which it may be taken
        self.named: set[int] = set()  # where the clauses stand that mean it

    def full(self, occupied: tuple[Tool, ...]) -> Fraction:
        """How many of it have other food in them."""
        return sum((tool.number for tool in occupied if tool.clause.span.start in self.named), Fraction(0))


def equipment_list(recipe: Recipe, kitchen: Kitchen) -> tuple[EquipmentRow, ...]:
    """What the method names, each piece once, in order of need."""
    pieces: dict[Key, _Piece] = {}
    occupied = occupied_of(recipe)
    for action in recipe.actions:
        before: tuple[Tool, _Piece] | None = None
        for tool in tools_of(action, kitchen):
            full = occupied.get(tool.clause.span.start, ())
            piece = None if _in_the_oven(tool, action, kitchen) else _piece(tool, pieces, full, kitchen)
            if piece is not None:
                piece.named.add(tool.clause.span.start)
                piece.actions.append(action.number)
                piece.components.append(action.component)
                if before and not piece.instead and before[1] is not piece:
                    piece.instead = before[1] if stands_for(before[0], tool, action, kitchen) else None
                before = tool, piece
    return tuple(_row(piece, kitchen) for piece in pieces.values())


def _in_the_oven(tool: Tool, action: Action, kitchen: Kitchen) -> bool:
    """Whether these are the racks that an oven has: *bake on two racks*."""
    if action.work.station != "oven" or tool.number == 1 or tool.adjectives:
        return False
    return nouns(kitchen.language).singular(tool.name.lower()) in equipment_words(kitchen.language).racks


def _piece(tool: Tool, pieces: dict[Key, _Piece], occupied: tuple[Tool, ...], kitchen: Kitchen) -> _Piece | None:
    """The piece that a clause means: one set out before, or a new one; None for a fixture. One in which other food lies
    is another one."""
    equipment, words = tool.equipment, equipment_words(kitchen.language)
    if equipment.part_of:
        equipment = kitchen.cupboard.of_id(equipment.part_of) or equipment
        tool = tool._replace(name=equipment.name, adjectives=(), size="")
    if equipment.name in words.fixtures:
        return None
    if equipment.kind == "lid" and any(words.lidded.intersection(piece.tool.adjectives) for piece in pieces.values()):
        return None
    tool = tool._replace(adjectives=tuple(word for word in tool.adjectives if word not in words.pointers))
    before = _before(tool, equipment, pieces, kitchen.language) if tool.definite else None
    if before is not None:
        return before
    key = (equipment.name, tool.adjectives, tool.size, tool.contains)
    if key in pieces and pieces[key].full(occupied) and _called(tool, kitchen) != _called(pieces[key].tool, kitchen):
        key = (f"{equipment.name} {_called(tool, kitchen)}", *key[1:])  # a saucepan beside the stew-pan
    piece = pieces.setdefault(key, _Piece(tool, equipment))
    said = tool.clause.text.partition(tool.name)[0].split() + tool.name.split()  # not what it stands on
    more = piece.actions and words.another.intersection(said)
    piece.number = max(piece.number + tool.number * bool(more), tool.number + piece.full(occupied))
    return piece


def _before(tool: Tool, equipment: Equipment, pieces: dict[Key, _Piece], language: str) -> _Piece | None:
    """The last piece that *the* pan can be: of this noun or one that ends in it, with the adjectives said; else any
    vessel for the same place, for *the pot* may be a casserole."""
    said = set(tool.adjectives) - equipment_words(language).changed
    singular = nouns(language).singular
    for piece in reversed(pieces.values()):
        name = piece.equipment.name
        alike = singular(_last(piece.tool)) == singular(_last(tool))  # *the pans* are the cake pans
        ends = alike or name == equipment.name or name.endswith(f" {equipment.name}")
        if ends and said <= {*piece.tool.adjectives, *name.split()} and tool.size in ("", piece.tool.size):
            return piece
    if tool.several and not said:  # one to a dish: to each of the ramekins
        same = (piece for piece in reversed(pieces.values()) if piece.equipment.kind == equipment.kind)
        several = next((piece for piece in same if piece.number > 1), None)
        if several is not None:
            return several
    if equipment.general and not said:
        vessels = [piece for piece in pieces.values() if piece.equipment.kind == equipment.kind]
        return next((piece for piece in reversed(vessels) if piece.equipment.station == equipment.station), None)
    return None


def _called(tool: Tool, kitchen: Kitchen) -> str:
    """The noun that the cook has for it, of one piece."""
    return nouns(kitchen.language).singular(" ".join(_parted(tool, tool.equipment, kitchen)[0]).lower())


def _last(tool: Tool) -> str:
    return tool.name.lower().rpartition(" ")[2]


def _row(piece: _Piece, kitchen: Kitchen) -> EquipmentRow:
    tool = piece.tool
    label = _label(tool, piece.number, piece.equipment, kitchen)
    if piece.instead and len(piece.actions) == len(piece.instead.actions) == 1:  # neither is wanted for anything else
        label = f"{prose_words(kitchen.language).alternative[0].strip()} {label}"
    return EquipmentRow(
        name=piece.equipment.name,
        label=label,
        number=None if tool.several and piece.number == 1 else piece.number,
        size=tool.size,
        kind=piece.equipment.kind,
        station=piece.equipment.station,
        actions=tuple(dict.fromkeys(piece.actions)),
        components=tuple(dict.fromkeys(piece.components)),
        span=tool.clause.span,
    )


def _label(tool: Tool, count: Fraction, equipment: Equipment, kitchen: Kitchen) -> str:
    """`2 round tins, 20 cm`, `heavy saucepan`, `bowl of ice`; a single piece without its number."""
    lining = equipment.kind == "lining"
    last = tool.name.lower().rpartition(" ")[2]
    several = count > 1 or (count == 1 and nouns(kitchen.language).singular(last) != last)
    behind = _behind(tool, equipment, kitchen)
    words = [word for word in tool.adjectives if word not in behind]
    # A hyphened size stands before its noun, as does a unit: a 3-litre pan, pint jars, but a tin, 20 × 20 cm.
    first = "-" in tool.size or tool.size.isalpha()
    words = _as_written([*words, *[tool.size] * first], tool.clause.text)
    words += [_noun(tool, equipment, several and not lining, kitchen), *behind]
    if count != 1 and not lining:
        words.insert(0, number_text(count))
    if tool.contains:
        words += ["of", tool.contains]
    return " ".join(words) + (f", {tool.size}" if tool.size and not first else "")


def _as_written(words: list[str], text: str) -> list[str]:
    """These words in the order of the text: a 2-litre glass bowl, a heavy 3-litre pan. Capitals stay: a GN tray."""
    said = {word.lower(): (at, word) for at, word in enumerate(text.replace(",", " ").split())}
    placed = sorted(words, key=lambda word: said[word][0] if word in said else len(said))
    return [said[word][1] if word in said and said[word][1].isupper() else word for word in placed]


def _noun(tool: Tool, equipment: Equipment, several: bool, kitchen: Kitchen) -> str:
    """The piece as the cook calls it, in the number of the list: a skillet stays a skillet."""
    words, _ = _parted(tool, equipment, kitchen)
    if not words:
        return equipment.plural if several else equipment.name
    noun = " ".join(words)
    if noun.lower() in (equipment.name, equipment.plural) or equipment.kind == "station":
        return equipment.plural if several else equipment.name
    rules = nouns(kitchen.language)
    one = " ".join(rules.key(words))
    return rules.plural(one) if several else one


def _parted(tool: Tool, equipment: Equipment, kitchen: Kitchen) -> tuple[list[str], list[str]]:
    """The noun in the name of a piece, and the words behind it where the language has adjectives there."""
    words = tool.name.replace("’", "'").split()
    first = 1 if "after" in nouns(kitchen.language).orders else len(words)
    for end in range(len(words), first - 1, -1):
        for start in range(end):
            if kitchen.cupboard.get(" ".join(words[start:end]).lower()) == equipment:
                return words[start:end], words[end:]
    return [], []


def _behind(tool: Tool, equipment: Equipment, kitchen: Kitchen) -> list[str]:
    """The adjectives that stand behind the noun: *assiettes creuses*."""
    said = [word.lower() for word in _parted(tool, equipment, kitchen)[1]]
    return [word for word in said if word in tool.adjectives]
