"""What to call a piece of work in a timeline: its verbs and its main food, in the recipe's own order.

The line itself is prose and too long for a row; the words that matter are the ones the compiler has
understood anyway.
"""

from __future__ import annotations

from tamis.kitchen.equipment import COLD, MADE_READY
from tamis.model.names import with_part
from tamis.model.recipe import Action
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.quantity.temperature_text import oven_c, temperature_c
from tamis.reading.clauses import Division, Ingredient, Reference, Setting, Target, Tending, Tool, VerbUse
from tamis.record import NamedTuple
from tamis.syntax.document import Clause, Text
from tamis.timeline.lengths import length_between
from tamis.timeline.preparation import goes_along
from tamis.timeline.tasks import calls_left_out
from tamis.timeline.words import TitleWords, row_words, title_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import re

    from tamis.model.places import Here

LONGEST = 76
SHORTEST = 24
MOST_FOODS = 3
MOST_WORDS = 6
"""Plain words that a bare verb takes along: `Lay them skin up`."""
MOST_BEHIND = 5
"""Plain words behind the last food: `Spoon dressing over each`."""
MOST_PLACE = 32
"""Letters of the place to which something is moved."""
MOST_BETWEEN = 11
"""… and those up to a food: `Rub a salad bowl with the cut side of garlic`."""

DASHES = ("–", "—", "(")
_DASHED = [[dash] for dash in DASHES]

_PLACES = (*MADE_READY, "station")
_SHARES = ("fraction", "rest", "some")
_MEASURED = pattern(r"[\d(]")
_WORD = pattern(r"\s*([^\W_][\w'’-]*)")
_ONE_MORE = pattern(r",\s*([^\W_][\w'’-]*)")


def title(action: Action, language: str) -> str:
    """`Stir rye flour, water, instant yeast`, and how often the cook is called: `Roast, basting every 15 min`."""
    often = "".join([_often(action, tending, language) for tending in action.tending if tending.every or tending.often])
    if boils := action.work.boils_up:
        often += f" ({row_words(language).boils.format(time=length_between(boils, boils))})"
    return _cut(_work_title(action, language), max(SHORTEST, LONGEST - len(often)), title_words(language)) + often


def _often(action: Action, tending: Tending, language: str) -> str:
    calls = calls_left_out(action, tending)
    more = f" ({row_words(language).calls.format(count=calls)})" if calls else ""
    return f", {tending.text[:1].lower()}{tending.text[1:]}{more}"


def _work_title(action: Action, language: str) -> str:
    """The verbs and what they are done to; the beginning of the line where it has no known verb."""
    if not action.verbs:
        said = _added(action, language) or _first_words(action)
        return said or action.work.verb.capitalize() or row_words(language).work
    return ", ".join(_by_verb(action, language))


def _added(action: Action, language: str) -> str:
    """The foods of a line that begins with one, and goes on with those of the line before; or that are named behind a
    word for the work that is no known verb: *throw in [1 tbsp vinegar]*."""
    words = title_words(language)
    items = [read for read in action.reads if isinstance(read, Ingredient)]
    foods = [one.text for one in _named(action, words, language)]
    if not items or len(foods) != len(items):
        return ""
    before = _text_between(action, action.span.start, items[0].clause.span.start).split()
    if len(before) > MOST_BEHIND or (before and before[-1][-1] in ",.;:"):
        return ""
    if len(foods) > MOST_FOODS:
        foods[MOST_FOODS - 1 :] = ["…"]
    shown = ", ".join(foods)
    return f"{' '.join(before)} {shown}" if before else row_words(language).add.format(foods=shown)


def _by_verb(action: Action, language: str) -> list[str]:
    """Each verb and what it is done to."""
    words = title_words(language)
    named = _named(action, words, language)
    for_tools = _for_tools(action, words)
    bare = not any(one.start not in for_tools for one in named)
    said: list[str] = []
    for at, use in enumerate(action.verbs):
        end = action.verbs[at + 1].span.start if at + 1 < len(action.verbs) else action.span.end
        behind = [one for one in named if use.span.end <= one.start or one.opens is use]
        foods = [one for one in behind if use is action.verbs[-1] or one.start < end]
        worked = [one for one in foods if one.start not in for_tools]
        tools = bool(foods) or (bare and not at) or not use.verb.waits
        alone = "" if worked else _object(action, use, end, words, tools)
        verb = use.text.lower()
        if not foods or not words.empty.issuperset(alone.lower().split()[-1:]):
            text = f"{verb} {alone}".strip()
        else:
            passed = [one.end for one in foods if one.start in for_tools and worked]
            text = _with_foods(action, use, worked or foods, passed, end, words)
        text += _kept(action, use, end, text)
        if at and action.verbs[at - 1].verb.lets and " " in said[-1] and _goes_on(action, at):
            said[-1] += f" {text}"  # *let it drain* is one thing
        else:
            said.append(text)
    return said


def _kept(action: Action, use: VerbUse, end: int, text: str) -> str:
    """The fridge, the freezer or the warm place in which something waits, where its verb does not say it: *leave in the
    fridge*."""
    tools = (read for read in action.reads if isinstance(read, Tool) and read.equipment.kind == "station")
    behind = (tool for tool in tools if use.span.end <= tool.clause.span.start < end)
    tool = next(behind, None) if use.verb.waits else None
    if tool is None or not _is_placed(tool) or tool.equipment.station not in ("", *COLD):
        return ""
    implied = tool.equipment.station == use.verb.station or tool.clause.text in text
    return "" if implied else f" {tool.clause.text}"


def _goes_on(action: Action, at: int) -> bool:
    """Whether a verb stands right behind the one before it, with no comma between."""
    between = _text_between(action, action.verbs[at - 1].span.end, action.verbs[at].span.start)
    return "," not in between and len(between.split()) <= 1


def _for_tools(action: Action, words: TitleWords) -> frozenset[int]:
    """Where foods stand that go on a bench, a tin or a cloth that the work is done with, and are not what is worked:
    *roll out on a bench dusted with flour*."""
    found = []
    for read in action.reads:
        if isinstance(read, Ingredient) and read.purpose:
            at = read.clause.span.start
            use = next((use for use in reversed(action.verbs) if use.span.start < at), None)
            # … given by a participle right before it, where its own verb does not give it
            if use is not None and not _text_between(action, use.span.end, at).strip():
                continue  # the food is what is spread, strewn, sifted
            given = read.role == "unmeasured" and not read.purpose_spans
            on_tools = given or read.purpose.lower() in words.for_tools
            if use is not None and (use.verb.greases or (use.verb.purpose != read.purpose and on_tools)):
                found.append(at)
    return frozenset(found)


def _with_foods(
    action: Action, use: VerbUse, foods: list[Named], passed: list[int], end: int, words: TitleWords
) -> str:
    """`Turn the legs in duck fat, salt`: each food with the plain words before it, if these are few; those up to
    a place of `passed` are about what the bench or the tin gets."""
    place, at = _place(action, use, foods[0], words)
    text = use.text.lower() + place
    for number, food in enumerate(foods):
        if number + 1 == MOST_FOODS < len(foods):
            return f"{text}, …"
        at = max([at, *(place for place in passed if place <= food.start)])
        between = _text_between(action, at, food.start)
        if not number and len(between.split()) > MOST_BETWEEN:
            between = " ".join([*_plain_words(action, use, words)[0], _joint(between, words, True)])
        name = food.text if not _says_again(text, between, food.text) else food.text.partition(" ")[2]
        text += _joint(between, words, not number or food.placed) + name
        at = food.end
    if len(foods) == 1 and (use.verb.moves or not foods[0].placed):
        text, at = _with_place(text, action, use, at, end, words)
    return text + _behind(action, at, end, words)


def _with_place(text: str, action: Action, use: VerbUse, at: int, end: int, words: TitleWords) -> tuple[str, int]:
    """What is moved, with the bracket right behind it that says where to: *turn [the batter] [into a tin]*; and where
    that ends."""
    tools = (read for read in action.reads if isinstance(read, Tool) and at <= read.clause.span.start < end)
    tool = next(tools, None)
    if tool is None or not _is_placed(tool):
        return text, at
    through = tool.preposition in words.through
    goes = through or use.verb.moves or tool.preposition in words.into or tool.equipment.kind == "lining"
    if not goes or not (through or tool.equipment.kind in _PLACES):
        return text, at
    between = any(at <= read.clause.span.start < tool.clause.span.start for read in action.reads)
    out = _text_between(action, at, tool.clause.span.start).split()  # *turn [the pudding] out [on to a plate]*
    if between or not words.particles.issuperset(out) or len(tool.clause.text) > MOST_PLACE:
        return text, at
    return " ".join([text, *out, tool.clause.text]), tool.clause.span.end


def _place(action: Action, use: VerbUse, food: Named, words: TitleWords) -> tuple[str, int]:
    """Where that stands between a verb and the words before its food, and where these words begin: *put [in a saucepan]
    with [the rice]*, *put them [through a mincer] with …*."""
    end = use.span.end
    tools = [read for read in action.reads if isinstance(read, Tool) and end < read.clause.span.end <= food.start]
    if not tools or not _is_placed(tools[0]):
        return "", end
    start, behind = tools[0].clause.span
    goes_on = [word.lower() for word in _text_between(action, behind, food.start).split()[:1]]
    moved = tools[0].preposition in words.into
    if not moved and (not goes_on or goes_on[0] not in words.prepositions):
        return "", end
    before = _text_between(action, end, start).split()
    told = words.empty.issuperset(word.lower() for word in before) or (moved and len(before) <= MOST_BEHIND)
    return (" ".join(["", *before, tools[0].clause.text]), behind) if told else ("", end)


def _says_again(text: str, between: str, food: str) -> bool:
    """*Spoon over* has its place, which the bracket says again: `[over the filling]`."""
    last = (between.split() or text.split())[-1].lower()
    return last == food.partition(" ")[0]


def _joint(between: str, words: TitleWords, close: bool) -> str:
    """What parts a food from what stands before it: the plain words there, or a comma."""
    said = between.split()
    begins = between.lstrip()[:1] in (",", ";") and not (said[1:] and said[1].lower() in words.prepositions)
    while said and said[0].lower().strip(",;:") in words.joints | {""} and not _compares(said, words):
        begins = begins or said[0].isalpha()
        said.pop(0)
    while said and said[-1].lower().strip(",;:") in words.joints | {""} and said[-2:-1] not in _DASHED:
        said.pop()
    if len(said) > MOST_BETWEEN:
        said = said[-1:] if said[-1].lower() in words.prepositions else []
    if not said:
        return " " if close and not between.strip(" ,;") else ", "
    return f"{', ' if begins else ' '}{' '.join(said).lstrip(',; ')} "


def _compares(said: list[str], words: TitleWords) -> bool:
    """*As much of*, *as soon as you can*: a joint that its words cannot do without."""
    return said[0].lower() in words.compares and len(said) > 1 and said[1].lower() not in words.joints


def _behind(action: Action, at: int, end: int, words: TitleWords) -> str:
    """What the words up to the next bracket add to the last food or to the verb: *turn [the cake] out*, *[2 eggs] – the
    whites*."""
    ends = (part.span.start for part in action.parts if isinstance(part, Clause) and at <= part.span.start < end)
    text = _text_between(action, at, next(ends, end))
    said = text.split()
    if said and said[0] in DASHES:
        aside = text.strip().partition(",")[0].split()
        return f" {' '.join(aside[:MOST_WORDS])}"
    described = len(said) > 2 and said[0].isalpha() and said[0] not in words.joints | words.particles
    if described and said[1].lower() in words.where:
        return _phrase(said, words, False)  # *loosely into the cavity*
    if said and said[0].lower() in words.prepositions - words.joints:
        return _phrase(said, words, f"{said[0].lower()} " in words.turned_to)
    return f" {said[0].strip(',.')}" if said and said[0].strip(",.") in words.particles - words.prepositions else ""


def _phrase(said: list[str], words: TitleWords, ends: bool) -> str:
    """A short phrase that a preposition opens, up to a joint or a comma, if one `ends` it: *to come [halfway up]* goes
    on in a bracket."""
    stops = (at for at, word in enumerate(said) if word[-1] in ",.;:" or word.lower() in words.joints)
    last = next(stops, len(said))
    phrase = said[:last] if last == len(said) or said[last].lower() in words.joints else said[: last + 1]
    phrase = [word for word in (word.strip(",.;:") for word in phrase) if word]
    openings = [at for at, word in enumerate(phrase[: MOST_BEHIND + 1]) if word.lower() in words.prepositions]
    if len(phrase) > MOST_BEHIND and openings[-1] > 2:
        phrase = phrase[: openings[-1]]  # *in the fridge* to get cold, *into the syrup* one at a time
        phrase = phrase[:-1] if phrase[-1].lower() in words.numbers else phrase
    tells = len(phrase) > 1 and (phrase[-1].lower() not in words.empty or phrase[-1].lower() in words.pronouns)
    return f" {' '.join(phrase)}" if tells and len(phrase) <= MOST_BEHIND and not (ends and last == len(said)) else ""


def _text_between(action: Action, start: int, end: int) -> str:
    """The plain words between two places, whatever brackets stand among them."""
    return "".join(
        part.text[max(0, start - part.span.start) : max(0, end - part.span.start)]
        for part in action.parts
        if isinstance(part, Text)
    )


class Named(NamedTuple):
    """What a bracket names, as a title says it, and where; `placed` if it needs no comma before it; `opens` is the verb
    that the bracket begins with."""

    start: int
    end: int
    text: str
    placed: bool = False
    opens: VerbUse | None = None


def _named(action: Action, words: TitleWords, language: str) -> list[Named]:
    """The foods, the equipment that is worked on and the states of a line, in the text's order."""
    found = []
    for read in action.reads:
        start, end = read.clause.span
        if isinstance(read, Ingredient | Reference):
            if isinstance(read, Ingredient) and read.preposition in words.boils_in and read.purpose:
                continue  # the water that something boils in
            inside = _is_placed(read)
            called = _called(read, action, language)
            found.append(Named(start, end, f"{read.preposition} {called}" if inside else called, inside))
        elif isinstance(read, Tool) and _is_worked(read, action):
            found.append(Named(start, end, read.clause.text, True))
        elif isinstance(read, Division):
            found.append(Named(start, end, read.clause.text.partition(" (")[0], True))
        elif isinstance(read, Setting) and read.kind == "off":
            found.append(Named(start, end, row_words(language).off, True))
        elif isinstance(read, Setting) and (use := _opened_by(read, action)):
            found.append(Named(start, end, read.text[len(use.text) :].strip(), True, use))
        elif (isinstance(read, Setting) and read.celsius is None and read.text.lower().startswith(words.turned_to)) or (
            isinstance(read, Target) and read.text
        ):
            found.append(Named(start, end, read.text, True))
    return found


def _called(read: Ingredient | Reference, action: Action, language: str) -> str:
    """The name of a food with the share that is taken of it, and with what its line does to it at once: *crack [2 eggs,
    separated]*."""
    if read.share is not None and read.share.kind in _SHARES:
        share, name, _ = read.clause.text.partition(read.name)
        opens = share.lower().startswith(f"{read.preposition} ") if read.preposition else False
        share = _MEASURED.split(share[len(read.preposition) if opens else 0 :])[0]
        share = " ".join(share.split())
        return f"{share} {read.name}" if name and share else read.name
    before = [use.verb.base for use in action.verbs if use.span.start < read.clause.span.start]
    if not isinstance(read, Ingredient):
        return read.name
    along = before and goes_along(read, before[-1], language)
    if along or not read.part:
        return f"{read.name}, {read.preparation}" if along else read.name
    first, _, part = with_part(read).partition(" ")
    return part if first.lower() in nouns(language).articles else f"{first} {part}"


def _is_placed(read: Ingredient | Reference | Tool) -> bool:
    """Whether a bracket says itself where something goes."""
    return bool(read.preposition) and read.clause.text.lower().startswith(f"{read.preposition} ")


def _is_worked(tool: Tool, action: Action) -> bool:
    """Whether a bracket names equipment that something is done to, and not only where."""
    at = next((at for at, part in enumerate(action.parts) if part.span == tool.clause.span), 0)
    before = action.parts[at - 1].text.rstrip().lower() if at else ""
    return at > 0 and not _is_placed(tool) and before.endswith(tool.preposition)


def _opened_by(setting: Setting, action: Action) -> VerbUse | None:
    """The verb that a setting's clause opens with: `cook over low heat`."""
    inner = setting.clause.inner
    return next((use for use in action.verbs if use.span.start == inner), None)


def _object(action: Action, use: VerbUse, end: int, words: TitleWords, tools: bool) -> str:
    """What a bare verb works on or with: the plain words after it, else the tool: *Lay* alone tells nothing."""
    said, at = _plain_words(action, use, words)
    trail: list[str] = []
    while said and said[-1].lower() in words.empty and said[-1].lower() not in words.particles:
        trail.insert(0, said.pop())
    if said:
        text, behind = _with_place(" ".join(said), action, use, at, end, words)
        return text if behind > at or trail else text + _behind(action, at, end, words)
    found = (read for read in action.reads if isinstance(read, Tool))
    tool = next((tool for tool in found if use.span.end <= tool.clause.span.start < end), None)
    if tool is not None and tools and _is_plain(action, use):
        return " ".join([*trail, tool.clause.text])
    return " ".join(trail if trail and trail[0].lower() in words.pronouns else [])


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
    while len(said) < MOST_WORDS:
        match = _WORD.match(part.text, at)
        if match is None and said[-2:-1] and said[-2].lower() in words.empty - words.pronouns:
            match = _ONE_MORE.match(part.text, at)  # *the hard, tough parts*, *the tops, tails and roots*
            if match is None or match[1].lower() in words.empty | words.joints or not _is_no_verb(action, part, match):
                break
            said[-1] += ","
        if match is None:
            break
        word = match[1].lower()
        behind = _WORD.match(part.text, match.end())
        if word in words.joints and not (said and word in words.pairs and behind and _is_no_verb(action, part, behind)):
            break
        last = word in words.particles and (behind is None or behind[1].lower() in words.joints)
        if word in words.prepositions and not last and not words.empty.issuperset(map(str.lower, said)):
            break
        said.append(match[1])
        at = match.end()
    if len(said) == MOST_WORDS and _WORD.match(part.text, at):  # *to a soft dough* that can just be rolled
        ends = (at for at, word in enumerate(said) if at > 1 and word.lower() in words.relative)
        said = said[: next(ends, len(said))]
    pair = next((back for back in (2, 1) if len(said) == MOST_WORDS and said[-back].lower() in words.pairs), 0)
    return said[: len(said) - pair], part.span.start + at


def _is_no_verb(action: Action, part: Text, behind: re.Match[str]) -> bool:
    """Whether what stands behind *and* goes on with the same: *the skin and bones*, not *the skin and chop it*."""
    return all(part.span.start + behind.start(1) != use.span.start for use in action.verbs)


def _first_words(action: Action) -> str:
    """The line up to its first comma, without the brackets before it that only say when: *[At once], mask it*."""
    parts = list(action.parts)
    named = {read.clause.span for read in action.reads if isinstance(read, Ingredient | Reference | Tool)}
    while len(parts) > 1 and not parts[0].text.strip():
        parts.pop(0)
    while len(parts) > 1 and isinstance(parts[0], Clause) and parts[0].span not in named and _parted(parts[1]):
        parts = parts[1:]
    said = " ".join("".join(part.text for part in parts).split())
    return said.lstrip(",;: ").rstrip(".,;:").partition(",")[0]


def _parted(part: Text | Clause) -> bool:
    """Whether a comma parts it from what stands before it, and words follow."""
    text = part.text.lstrip()
    return isinstance(part, Text) and text[:1] in (",", ";") and bool(text.strip(" ,;."))


def _cut(text: str, longest: int, words: TitleWords) -> str:
    """At a word's end and before no small word, with a sign that there is more; the first letter large."""
    text = text.replace(" ,", ",").replace("( ", "(")
    text += ")" * (text.count("(") - text.count(")"))
    if len(text) > longest:
        said = text[: longest - 1].rsplit(" ", 1)[0].split()
        # … nor between a number and what it counts
        while len(said) > 1 and (said[-1].lower() in words.empty | words.joints or said[-1][:1].isdigit()):
            said.pop()
        text = " ".join(said).rstrip(",;:") + "…"
    return text[:1].upper() + text[1:]


def by_hand_and_heat(action: Action, here: Here, language: str) -> str:
    """`Grease a loaf tin, heat oven to 175 °C`: a line whose hands do other work before its oven heats by itself."""
    heats = heat_title(action, here, language)
    others = [one for use, one in zip(action.verbs, _by_verb(action, language), strict=True) if not use.verb.sets]
    if not others:
        return heats
    work = _cut(", ".join(others), LONGEST, title_words(language))
    return f"{work}, {heats[:1].lower()}{heats[1:]}"


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
