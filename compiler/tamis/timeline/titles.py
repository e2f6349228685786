"""What to call a piece of work in a timeline: its verbs and its main food, in the recipe's own order.

The line itself is prose and too long for a row; the words that matter are the ones the compiler has
understood anyway.
"""

from __future__ import annotations

from tamis.model.recipe import Action
from tamis.patterns import pattern
from tamis.quantity.display import oven_c, temperature_c
from tamis.reading.clauses import Ingredient, Reference, Setting, Target, Tool, VerbUse
from tamis.syntax.document import Text
from tamis.timeline.tasks import calls_left_out
from tamis.timeline.words import TitleWords, row_words, title_words

LONGEST = 64
MOST_FOODS = 3
MOST_WORDS = 6
"""Plain words that a bare verb takes along: `Lay them skin up`."""

_WORD = pattern(r"\s*([^\W\d_][\w'’-]*)")


def title(action: Action, language: str) -> str:
    """`Stir rye flour, water, instant yeast`, and how often the cook is called: `Roast, basting every 15 min`."""
    often = next((tending.text for tending in action.tending if tending.every), "")
    if often:
        calls = calls_left_out(action)
        more = f" ({row_words(language).calls.format(count=calls)})" if calls else ""
        often = f", {often[:1].lower()}{often[1:]}{more}"
    return _cut(_work_title(action, language), LONGEST - len(often)) + often


def _work_title(action: Action, language: str) -> str:
    """The verbs and their foods; the beginning of the line where it has no known verb."""
    if not action.verbs:
        return _plain(action).partition(",")[0] or action.work.verb.capitalize() or row_words(language).work
    words = title_words(language)
    phrases: list[list[str]] = []
    for word, opens in _words(action, words, row_words(language).off):
        if opens:
            phrases.append([word])
        elif phrases:
            phrases[-1].append(word)
    if phrases and all(len(phrase) == 1 for phrase in phrases):
        end = action.verbs[1].span.start if len(phrases) > 1 else action.span.end
        phrases[0][0] = f"{phrases[0][0]} {_object(action, action.verbs[0], end, words)}".strip()
    said = [_said(phrase[0], _few(phrase[1:]), words) for phrase in phrases]
    return ", ".join(said)


def _words(action: Action, words: TitleWords, off: str) -> list[tuple[str, bool]]:
    """Verbs (which open a phrase) and the foods and states after them, in the order of the text."""
    found = [(use.span.start, use.text.lower(), True) for use in action.verbs]
    for read in action.reads:
        if isinstance(read, Ingredient):
            if not (read.preposition in words.boils_in and read.purpose):  # the water that something boils in
                found.append((read.clause.span.start, read.name, False))
        elif isinstance(read, Reference):
            place = f"{read.preposition} " if read.preposition in words.places else ""
            found.append((read.clause.span.start, place + read.name, False))
        elif isinstance(read, Setting) and read.kind == "off":
            found.append((read.clause.span.start, off, False))
        elif isinstance(read, Setting) and (use := _opened_by(read, action)):
            found.append((use.span.end, read.text[len(use.text) :].strip(), False))
        elif (isinstance(read, Setting) and read.celsius is None and read.text.lower().startswith(words.turned_to)) or (
            isinstance(read, Target) and read.text
        ):
            found.append((read.clause.span.start, read.text, False))
    return [(word, opens) for _, word, opens in sorted(found)]


def _opened_by(setting: Setting, action: Action) -> VerbUse | None:
    """The verb that a setting's clause opens with: `cook over low heat`."""
    inner = setting.clause.inner
    return next((use for use in action.verbs if use.span.start == inner), None)


def _object(action: Action, use: VerbUse, end: int, words: TitleWords) -> str:
    """What a bare verb works on or with: the plain words after it, else the tool: *Lay* alone tells nothing."""
    part = next((part for part in action.parts if part.span.start <= use.span.start < part.span.end), None)
    if not isinstance(part, Text):
        return ""
    said: list[str] = []
    at = use.span.end - part.span.start
    while len(said) < MOST_WORDS and (match := _WORD.match(part.text, at)) and match[1].lower() not in words.joints:
        if match[1].lower() in words.prepositions and not words.empty.issuperset(map(str.lower, said)):
            break
        said.append(match[1])
        at = match.end()
    trail: list[str] = []
    while said and said[-1].lower() in words.empty:
        trail.insert(0, said.pop())
    tools = (read for read in action.reads if isinstance(read, Tool))
    tool = next((tool for tool in tools if use.span.end <= tool.clause.span.start < end), None)
    return " ".join(said or ([*trail, tool.clause.text] if tool else []))


def _said(verb: str, foods: list[str], words: TitleWords) -> str:
    """`Spoon mash over filling`; foods without a place have commas between them, and *spoon over* has its place."""
    text = verb
    for food in foods:
        place = next((place for place in words.places if food.startswith(f"{place} ")), "")
        if place and text == verb and verb.endswith(f" {place}"):
            food = food.removeprefix(place).lstrip()
        text += " " + food if place or text == verb else ", " + food
    return text


def _few(foods: list[str]) -> list[str]:
    different = list(dict.fromkeys(foods))
    return different if len(different) <= MOST_FOODS else [*different[: MOST_FOODS - 1], "…"]


def _plain(action: Action) -> str:
    return " ".join("".join(part.text for part in action.parts).split()).rstrip(".,;:")


def _cut(text: str, longest: int = LONGEST) -> str:
    """At a word's end, with a sign that there is more; the first letter large."""
    if len(text) > longest:
        text = text[: longest - 1].rsplit(" ", 1)[0].rstrip(",;:") + "…"
    return text[:1].upper() + text[1:]


def heat_title(action: Action, language: str) -> str:
    """`Heat oven to 230 °C`, whether a line asks for it or only implies it."""
    words, station, degrees = row_words(language), action.heats or action.work.station, action.preheat
    if degrees is None:
        settings = [*(t.celsius for t in action.targets), *(s.celsius for s in action.settings)]
        degrees = next((celsius for celsius in settings if celsius is not None), None)
    turned = action.heats == "oven" and not any(use.verb.heat for use in action.verbs)
    called = words.stations.get(station, station)
    if degrees is None:
        return (words.set if turned else words.heat).format(station=called)
    # What was written as a gas mark or in °F comes out as a setting that a knob has.
    whole = degrees.lo.denominator == 1 and degrees.hi.denominator == 1
    shown = temperature_c(degrees) if whole or station != "oven" else oven_c(degrees.lo)
    return (words.set_to if turned else words.heat_to).format(station=called, degrees=shown)
