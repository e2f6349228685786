"""What to call a piece of work in a timeline: its verbs and its main food, in the recipe's own order.

The line itself is prose and too long for a row; the words that matter are the ones the compiler has
understood anyway.
"""

from __future__ import annotations

from tamis.model.recipe import Action
from tamis.quantity.display import temperature_c
from tamis.reading.clauses import Ingredient, Reference, Target

LONGEST = 64
MOST_FOODS = 3


def title(action: Action) -> str:
    """`Stir rye flour, water, instant yeast`; the beginning of the line where it has no known verb."""
    if not action.verbs:
        return _cut(_plain(action) or action.work.verb.capitalize() or "Work")
    phrases: list[list[str]] = []
    for word, opens in _words(action):
        if opens:
            phrases.append([word])
        elif phrases:
            phrases[-1].append(word)
    said = [f"{phrase[0]} {', '.join(_few(phrase[1:]))}".strip() for phrase in phrases]
    return _cut(", ".join(said))


def _words(action: Action) -> list[tuple[str, bool]]:
    """Verbs (which open a phrase) and the foods and states after them, in the order of the text."""
    found = [(use.span.start, use.text.lower(), True) for use in action.verbs]
    for read in action.reads:
        if isinstance(read, (Ingredient, Reference)):
            found.append((read.clause.span.start, read.name, False))
        elif isinstance(read, Target) and read.text:
            found.append((read.clause.span.start, read.text, False))
    return [(word, opens) for _, word, opens in sorted(found)]


def _few(foods: list[str]) -> list[str]:
    different = list(dict.fromkeys(foods))
    return different if len(different) <= MOST_FOODS else [*different[: MOST_FOODS - 1], "…"]


def _plain(action: Action) -> str:
    return " ".join("".join(part.text for part in action.parts).split()).rstrip(".,;:")


def _cut(text: str) -> str:
    """At a word's end, with a sign that there is more; the first letter large."""
    if len(text) > LONGEST:
        text = text[: LONGEST - 1].rsplit(" ", 1)[0].rstrip(",;:") + "…"
    return text[:1].upper() + text[1:]


def heat_title(action: Action) -> str:
    """`Heat oven to 230 °C`, whether a line asks for it or only implies it."""
    station = action.heats or action.work.station
    degrees = action.preheat
    if degrees is None:
        settings = [*(t.celsius for t in action.targets), *(s.celsius for s in action.settings)]
        degrees = next((celsius for celsius in settings if celsius is not None), None)
    return f"Heat {station} to {temperature_c(degrees)}" if degrees is not None else f"Heat {station}"
