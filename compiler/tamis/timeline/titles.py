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
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.places import Here

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
    """The verbs and what they are done to; the beginning of the line where it has no known verb."""
    if not action.verbs:
        return _plain(action).partition(",")[0] or action.work.verb.capitalize() or row_words(language).work
    words = title_words(language)
    phrases: list[tuple[str, list[tuple[int, str]]]] = []
    for at, word, opens in _words(action, words, row_words(language).off):
        if opens:
            phrases.append((word, []))
        elif phrases:
            phrases[-1][1].append((at, word))
    for_tools = _for_tools(action, words)
    bare = not any(place not in for_tools for _, foods in phrases for place, _ in foods)
    said: list[str] = []
    for at, (verb, foods) in enumerate(phrases):
        use = action.verbs[at]
        end = action.verbs[at + 1].span.start if at + 1 < len(phrases) else action.span.end
        worked = [food for food in foods if food[0] not in for_tools]
        tools = bool(foods) or (bare and not at) or not use.verb.waits
        alone = "" if worked else _object(action, use, end, words, tools)
        if not foods or not words.empty.issuperset(alone.lower().split()[-1:]):
            said.append(f"{verb} {alone}".strip())
        else:
            said.append(_with_foods(action, use, verb, worked or foods, words))
    return ", ".join(said)


def _for_tools(action: Action, words: TitleWords) -> frozenset[int]:
    """Where foods stand that go on a bench, a tin or a cloth that the work is done with, and are not what is worked:
    *roll out on a bench dusted with flour*."""
    found = []
    for read in action.reads:
        if isinstance(read, Ingredient) and read.purpose:
            at = read.clause.span.start
            use = next((use for use in reversed(action.verbs) if use.span.start < at), None)
            # … given by a participle right before it, where its own verb does not give it
            given = read.role == "unmeasured" and not read.purpose_spans
            on_tools = given or read.purpose.lower() in words.for_tools
            if use is not None and (use.verb.greases or (use.verb.purpose != read.purpose and on_tools)):
                found.append(at)
    return frozenset(found)


def _with_foods(action: Action, use: VerbUse, verb: str, foods: list[tuple[int, str]], words: TitleWords) -> str:
    """`Turn the legs in duck fat, salt`: with the plain words between the verb and its first food, and the preposition
    before that."""
    names = _few([name for _, name in foods])
    said, stop = _plain_words(action, use, words)
    between = _text_between(action, stop, foods[0][0]).strip()
    if not said or (between and between.lower() not in words.prepositions):
        dusted = said and foods[0][0] in _purposes(action)
        return f"{verb} {' '.join(said)}" if dusted else _said(verb, names, words)
    place = f" {between.lower()} " if between else " "
    first = names[0].partition(" ")[0]
    if first in words.places and first in (between.lower(), said[-1].lower()):
        names[0] = names[0].removeprefix(f"{first} ")
    return f"{verb} {' '.join(said)}{place}{', '.join(names)}"


def _purposes(action: Action) -> set[int]:
    """Where foods stand that are there for a purpose: the flour of a dusted bench."""
    foods = (read for read in action.reads if isinstance(read, Ingredient) and read.purpose)
    return {food.clause.span.start for food in foods}


def _text_between(action: Action, start: int, end: int) -> str:
    part = next((part for part in action.parts if part.span.start <= start < part.span.end), None)
    return part.text[start - part.span.start : end - part.span.start] if isinstance(part, Text) else ""


def _words(action: Action, words: TitleWords, off: str) -> list[tuple[int, str, bool]]:
    """Verbs (which open a phrase) and the foods and states after them, with where they stand, in the text's order."""
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
    return sorted(found)


def _opened_by(setting: Setting, action: Action) -> VerbUse | None:
    """The verb that a setting's clause opens with: `cook over low heat`."""
    inner = setting.clause.inner
    return next((use for use in action.verbs if use.span.start == inner), None)


def _object(action: Action, use: VerbUse, end: int, words: TitleWords, tools: bool) -> str:
    """What a bare verb works on or with: the plain words after it, else the tool: *Lay* alone tells nothing."""
    said, _ = _plain_words(action, use, words)
    trail: list[str] = []
    while said and said[-1].lower() in words.empty and said[-1].lower() not in words.particles:
        trail.insert(0, said.pop())
    if said or not tools or not _is_plain(action, use):
        return " ".join(said)
    found = (read for read in action.reads if isinstance(read, Tool))
    tool = next((tool for tool in found if use.span.end <= tool.clause.span.start < end), None)
    return " ".join([*trail, tool.clause.text] if tool else [])


def _is_plain(action: Action, use: VerbUse) -> bool:
    """Whether a verb stands in plain words, and not in the bracket of its time."""
    return any(isinstance(part, Text) and part.span.start <= use.span.start < part.span.end for part in action.parts)


def _plain_words(action: Action, use: VerbUse, words: TitleWords) -> tuple[list[str], int]:
    """The plain words after a verb, up to a joint or a preposition that is no part of the verb (*take the foil off*),
    and where they end."""
    part = next((part for part in action.parts if part.span.start <= use.span.start < part.span.end), None)
    if not isinstance(part, Text):
        return [], use.span.end
    said: list[str] = []
    at = use.span.end - part.span.start
    while len(said) < MOST_WORDS and (match := _WORD.match(part.text, at)) and match[1].lower() not in words.joints:
        word = match[1].lower()
        behind = _WORD.match(part.text, match.end())
        last = word in words.particles and (behind is None or behind[1].lower() in words.joints)
        if word in words.prepositions and not last and not words.empty.issuperset(map(str.lower, said)):
            break
        said.append(match[1])
        at = match.end()
    return said, part.span.start + at


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


def heat_title(action: Action, here: Here, language: str) -> str:
    """`Heat oven to 230 °C`, whether a line asks for it or only implies it."""
    words, station, degrees = row_words(language), here.station, here.preheat
    if degrees is None and here.sets:
        degrees = here.sets[0].celsius
    turned = here.heats == "station" and station == "oven" and not any(use.verb.heat for use in action.verbs)
    called = words.stations.get(station, station)
    if degrees is None:
        return (words.set if turned else words.heat).format(station=called)
    # What was written as a gas mark or in °F comes out as a setting that a knob has.
    whole = degrees.lo.denominator == 1 and degrees.hi.denominator == 1
    shown = temperature_c(degrees) if whole or station != "oven" else oven_c(degrees.lo)
    return (words.set_to if turned else words.heat_to).format(station=called, degrees=shown)
