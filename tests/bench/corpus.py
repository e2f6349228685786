"""Recipes for the stop-watch, as many as wanted and no two alike.

A compiler that remembers clauses is fast on copies, so copies would measure nothing. Whole recipes are filled in from
a few templates: each slot in braces is drawn afresh (`{70..130}` a number, `{0.3..0.9}` one with tenths, `{a|b}` one
of several words, `{look}` a word from a list of `words.txt`), and a clause with slots is drawn again until its text
is new. Clauses without slots repeat in every recipe of the template: about a tenth of all. Of the plain words between
them the short ones (", ", " and ") repeat and the long ones are new, as in any library: of the characters about two
thirds are in stretches that no recipe before has.

Drawn from a fixed seed: the same number of recipes is the same text on every machine.
"""

from __future__ import annotations

import random
import re
from pathlib import Path

_TEMPLATES = Path(__file__).parent / "templates"
_NAMES = ("loaf", "stew", "cake")
_SLOT = re.compile(r"\{([^{}]*)\}")
_CLAUSE = re.compile(r"\[[^\[\]]*\{[^\[\]]*\]")
_BOUNDS = re.compile(r"(\d+)(?:\.(\d+))?\.\.(\d+)(?:\.(\d+))?")
_TRIES = 200
_MEASURED = re.compile(r"(\[[\d.]+ (?:g|ml) )([a-z]+[^],]*)")
_SYLLABLES = (
    "ba",
    "dor",
    "fen",
    "gul",
    "kim",
    "lo",
    "mer",
    "nas",
    "pil",
    "quo",
    "ras",
    "tev",
    "vun",
    "wex",
    "yil",
    "zam",
)
UNKNOWN = 10


def recipes(number: int, seed: int = 2610) -> list[str]:
    """The texts of so many recipes, each about 3.25 kB with some 52 clauses."""
    press = _Press(random.Random(seed))
    templates = [(_TEMPLATES / f"{name}.txt").read_text(encoding="utf-8") for name in _NAMES]
    return [press.recipe(templates[at % len(templates)], at + 1) for at in range(number)]


def drafts(texts: list[str], seed: int = 4702) -> list[str]:
    """The recipes as hasty drafts: ten foods of each under names that no list has. By turns one is a slip of the pen,
    and one is made up."""
    draw = random.Random(seed)
    return [_draft(text, draw) for text in texts]


def _draft(text: str, draw: random.Random) -> str:
    spoilt = 0

    def unknown(found: re.Match[str]) -> str:
        nonlocal spoilt
        spoilt += 1
        name = found[2]
        if spoilt % 2:
            at = draw.randrange(1, len(name) - 1)
            return f"{found[1]}{name[:at]}{draw.choice('jqxz')}{name[at + 1 :]}"
        return found[1] + " ".join("".join(draw.choices(_SYLLABLES, k=2)) for _ in range(draw.choice((1, 2))))

    return _MEASURED.sub(unknown, text, count=UNKNOWN)


def clause_texts(text: str) -> list[str]:
    """What stands in the square brackets of a recipe."""
    return re.findall(r"\[([^\[\]]*)\]", text)


class _Press:
    """Fills templates in, and remembers the clauses it has set."""

    __slots__ = ("draw", "number", "seen", "words")

    def __init__(self, draw: random.Random) -> None:
        self.draw = draw
        self.seen: set[str] = set()
        self.number = 0
        self.words = _words()

    def recipe(self, template: str, number: int) -> str:
        self.number = number
        return self._filled(_CLAUSE.sub(self._clause, template))

    def _clause(self, found: re.Match[str]) -> str:
        for _ in range(_TRIES):
            text = self._filled(found[0])
            if text not in self.seen:
                break
        self.seen.add(text)
        return text

    def _filled(self, text: str) -> str:
        return _SLOT.sub(lambda found: self._filled(self._slot(found[1])), text)

    def _slot(self, slot: str) -> str:
        if slot == "number":
            return str(self.number)
        bounds = _BOUNDS.fullmatch(slot)
        if bounds and bounds[2]:
            places = len(bounds[2])
            drawn = self.draw.randint(int(bounds[1] + bounds[2]), int(bounds[3] + bounds[4]))
            return f"{drawn // 10**places}.{drawn % 10**places:0{places}}"
        if bounds:
            return str(self.draw.randint(int(bounds[1]), int(bounds[3])))
        return self.draw.choice(self.words[slot] if slot in self.words else slot.split("|"))


def _words() -> dict[str, list[str]]:
    lines = (_TEMPLATES / "words.txt").read_text(encoding="utf-8").splitlines()
    lists = (line.partition(":") for line in lines if not line.startswith("%"))
    return {name: [word.strip() for word in words.split("|")] for name, _, words in lists}
