"""Clauses made from the productions of `grammar/clause.lark`, and clauses with something put in that hardly fits."""

from __future__ import annotations

import random
import re
from functools import cache
from pathlib import Path

from tamis.words import word_lists

_GRAMMAR = Path(__file__).parents[2] / "grammar" / "clause.lark"
_ITEM = re.compile(r"\(|\)|\||[A-Za-z_]+|[?*+]")
_DEEPEST = 9

# Words of the classes that the lists of the kitchen give, and signs and numbers.
_SAMPLES = {
    "NUMBER": ("2", "3", "20", "7", "1 1/2", "½", "180", "400", "1.5"),
    "NUMWORD": ("two", "three", "five"),
    "MISWRITTEN": ("1,5",),
    "RANGE": ("–", " to ", " or "),
    "TIMES": (" × ", " x "),
    "MASS": ("g", "kg", "lb", "oz"),
    "VOLUME": ("ml", "l", "cups", "tbsp"),
    "LENGTH": ("cm", "mm", "-inch"),
    "TIME": ("min", "h", "hours", "s", "days"),
    "DEGREE": ("°C", "°F"),
    "PERCENT": ("%", "per cent"),
    "GAS": ("gas", "gas mark"),
    "OPEN": ("(",),
    "CLOSE": (")",),
    "COMMA": (",",),
    "ADJCOMMA": (",",),
    "SLASH": ("/",),
    "PLUS": ("plus", "+"),
    "ONHEAT": ("over", "on"),
    "VERB": ("bake", "knead", "chill", "simmer", "roast"),
    "VERBFOOD": ("oil", "butter"),
    "PARTICIPLE": ("stirring", "basting", "turning"),
    "FOOD": ("flour", "eggs", "butter", "chicken thighs", "water", "onions"),
    "TOOL": ("bowl", "oven", "pan", "fridge", "baking tray"),
    "COUNT": ("cloves", "sprigs", "slices", "pieces"),
    "COUNTTOOL": ("tin", "jars", "cups"),
    "WORD": ("ripe", "dough", "sauce", "warm"),
    "ANY": ("golden", "at", "the", "soft", "in"),
}
# Signs between two numbers as they come from keyboards, from pasted text and from pages that were scanned.
SIGNS = (
    "‐",
    "‑",
    "‒",
    "–",
    "—",
    "―",
    "−",
    "-",
    "~",
    "..",
    "…",
    ", ",
    " ",
    "+",
    "/",
    ":",
    " to ",
    " or ",
    "×",
    "⁄",
)
_DAMAGING = (*SIGNS, "–~")


@cache
def _rules() -> dict[str, list[list[str]]]:
    text = re.sub(r"//.*|%declare.*", "", _GRAMMAR.read_text("utf-8"))
    rules: dict[str, list[list[str]]] = {}
    for name, body in re.findall(r"^(\w+):((?:.*\n)(?:^[ \t]+.*\n)*)", text, re.MULTILINE):
        rules[name] = _alternatives(_ITEM.findall(body))
    return rules


def _alternatives(items: list[str]) -> list[list[str]]:
    found: list[list[str]] = [[]]
    depth = 0
    for item in items:
        depth += (item == "(") - (item == ")")
        if item == "|" and not depth:
            found.append([])
        else:
            found[-1].append(item)
    return [items for items in found if not _wants_words(items)] or found


def _wants_words(items: list[str]) -> bool:
    """Whether an alternative needs a class that English does without."""
    lists = word_lists("en", "clause")
    known = {*_SAMPLES, *lists["closed"], *lists["open"]}
    return any(
        item.isupper() and item not in known and items[at + 1 : at + 2] != ["?"] for at, item in enumerate(items)
    )


def made(draw: random.Random, rule: str = "clause") -> str:
    """A clause as the productions allow it, with words of their classes."""
    text = " ".join(_rule(rule, draw, _DEEPEST))
    text = re.sub(r"\s+([,)–]|-inch)|([(–])\s+", lambda found: found[1] or found[2], text)
    return re.sub(r" {2,}", " ", text).strip()


def _rule(name: str, draw: random.Random, depth: int) -> list[str]:
    alternatives = _rules()[name]
    if depth <= 0:
        alternatives = [min(alternatives, key=_depth)]
    return _items(draw.choice(alternatives), draw, depth)


def _depth(items: list[str]) -> int:
    """How deep the tree is at least; what may be left out does not count, a choice counts whole."""
    needed = [item for at, item in enumerate(items) if items[at + 1 : at + 2] not in (["?"], ["*"])]
    return max((_depths().get(item, 0) for item in needed), default=0)


@cache
def _depths() -> dict[str, int]:
    rules = _rules()
    depths = dict.fromkeys(rules, 99)
    for _ in rules:
        for name, alternatives in rules.items():
            found = [max((depths.get(item, 0) for item in items), default=0) for items in alternatives]
            depths[name] = min(found) + 1
    return depths


def _items(items: list[str], draw: random.Random, depth: int) -> list[str]:
    words: list[str] = []
    at = 0
    while at < len(items):
        item, at = items[at], at + 1
        inside: list[str] = []
        if item == "(":
            nested = 1
            while nested:
                nested += (items[at] == "(") - (items[at] == ")")
                inside.append(items[at])
                at += 1
            inside.pop()
        sign = items[at] if at < len(items) and items[at] in "?*+" else ""
        at += bool(sign)
        for _ in range(_times(sign, draw, depth)):
            if inside:
                words += _items(draw.choice(_alternatives(inside)), draw, depth)
            else:
                words += _rule(item, draw, depth - 1) if item in _rules() else [_word(item, draw)]
    return words


def _times(sign: str, draw: random.Random, depth: int) -> int:
    if not sign:
        return 1
    least = int(sign == "+")
    return least if depth <= 0 else least + draw.choice((0, 0, 1))


def _word(kind: str, draw: random.Random) -> str:
    lists = word_lists("en", "clause")
    words = _SAMPLES.get(kind) or lists["closed"].get(kind) or lists["open"].get(kind)
    return draw.choice(words) if words else ""  # a class that English does without


def damaged(text: str, draw: random.Random) -> str:
    """A clause with a number put in somewhere, or another sign and another number behind one of its numbers."""
    found = list(re.finditer(r"\d+", text))
    if found and draw.random() < 0.6:
        one = draw.choice(found)
        return f"{text[: one.end()]}{draw.choice(_DAMAGING)}{draw.choice((7, 30, 200))}{text[one.end() :]}"
    places = [at for at, sign in enumerate(text) if sign == " "] or [len(text)]
    at = draw.choice([*places, len(text)])
    unit = draw.choice(("", "", " g", " min", " °C", " cm", " %", " h"))
    return f"{text[:at]} {draw.choice((7, 30, 200))}{unit}{text[at:]}"
