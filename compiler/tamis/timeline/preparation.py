"""Work that the ingredients ask for before their line: an onion chopped, butter melted, beans soaked.

A recipe never gives a time for it, though it is often half of the cooking. What a word costs comes from the
verb that it is a form of, by the piece and by weight; what must be done late or only takes waiting comes
from `grammar/preparations.toml`.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import ceil

from tamis.kitchen.seconds import seconds
from tamis.model.fineness import fineness, is_cut, shape_of
from tamis.model.mass import ONE
from tamis.model.pieces import one_by_one
from tamis.model.recipe import Use
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.reading.plain import plain_of
from tamis.record import NamedTuple
from tamis.string_tables import saved_tables
from tamis.timeline.words import PreparationWords, preparation_words, row_words
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import word_lists, word_tables

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.food import Show
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.reading.clauses import Ingredient
    from tamis.reading.plain import Plain

When = Literal["before", "just-before", "boils", "waits"]
Table = Literal["before", "just_before", "boils", "waits", "fridge", "fats"]

_WORD = pattern(r"[^\W\d_][\w’'-]*")
_LONGEST = 3
_TABLES: dict[Table, When] = {
    "before": "before",
    "just_before": "just-before",
    "boils": "boils",
    "waits": "waits",
    "fridge": "waits",
    "fats": "waits",
}


_SOLD: tuple[Show, ...] = ("meat", "fish")
"""Food that is worked on by those who sell it."""


class Known(NamedTuple):
    """What a word of the data file means: when the work is done, and how many seconds it takes; none for no work."""

    when: When
    seconds: int


class Preparation(NamedTuple):
    """One thing to do to one ingredient: when, how many seconds, and in words: `chop`, `onion`. In `verb`
    dots stand for the food where it does not come last."""

    when: When
    seconds: int
    verb: str
    name: str


def preparations(use: Use, kitchen: Kitchen) -> list[Preparation]:
    """What a use's words after the comma, and its states before the name, ask for."""
    ingredient = use.ingredient
    found: list[Preparation] = []
    if not ingredient.states and not ingredient.preparation and not ingredient.part:
        return found
    tastes = word_lists(kitchen.language, "preparations")["tastes"]
    known_words = _known(_is_fat(use), _is_cold(use), kitchen.language)
    for word in ingredient.states:
        known = known_words.get(word)
        cut = _cut_by_the_spoon(use, word, kitchen) if known is None else None
        if cut is not None:
            found.append(cut)
        if ingredient.goods is not None and ingredient.goods.id in tastes.get(word, ()):
            continue
        if known is None or not known.seconds or (known.when == "just-before" and _is_oil(use)):
            continue
        if known.when == "boils":
            takes = ceil(known.seconds * use.mass.hi / 1000) if use.mass.known and use.mass.hi > 1000 else 0
            found += [] if ingredient.role == "medium" else [made_hot(word, ingredient.name, kitchen, takes)]
            continue
        name = ingredient.name.replace(f"{word} ", "", 1)
        found.append(_titled(*known, word, name, kitchen))
    if ingredient.preparation:
        found += _after_comma(use, known_words, kitchen)
    return [*_got_off(use, kitchen), *found] if ingredient.part else found


def _got_off(use: Use, kitchen: Kitchen) -> list[Preparation]:
    """`juice of 2 lemons`: the work of getting that part off, where a verb is called like it; grated zest is grated."""
    verbs = list(filter(None, map(kitchen.verbs.get, use.ingredient.part.split())))
    after = filter(None, map(kitchen.verbs.participle, _WORD.findall(use.ingredient.preparation)))
    cut = any(map(is_cut, after))
    return [
        Preparation("before", ceil(takes), verb.name, use.ingredient.name)
        for verb in verbs
        if (takes := _by_amount(use, verb, kitchen)) and not (cut and verb.prepares)
    ]


def goes_along(item: Ingredient, verb: str, language: str) -> bool:
    """Whether what is said of a food after its comma is done by the verb, an id, of its own line: *crack [2 eggs,
    separated]*."""
    return bool(item.preparation) and verb in _along(language).get(item.preparation.lower().strip(), ())


def is_done_by(work: Preparation, verb: Verb, kitchen: Kitchen) -> bool:
    """Whether a verb does that work itself: *separate [2 eggs, separated]*, *squeeze in [the juice of a lemon]*."""
    return kitchen.verbs.get(work.verb) is verb or verb.base in _along(kitchen.language).get(work.verb, ())


@cache
def _along(language: str) -> dict[str, list[str]]:
    said = saved_tables("", "preparations")["along"]
    own = word_lists(language, "preparations").get("names")
    names = {id: (id,) if own is None else own.get(id, ()) for id in said}
    return {word: said[id].split(", ") for id in said for word in names[id]}


class _Step(NamedTuple):
    """One thing that words behind a comma tell to do, and at which of them: a `phrase` of the data, or a verb, with
    what it is called, the work that it is here, how much longer that takes by the words round it, and on what it is
    done where that is not the food itself."""

    at: int
    phrase: str
    verb: Verb | None = None
    said: str = ""
    work: Verb | None = None
    fine: Fraction = ONE
    source: tuple[str, ...] = ()


def _after_comma(use: Use, known_words: dict[str, Known], kitchen: Kitchen) -> list[Preparation]:
    words, steps = plain_of(use.ingredient.preparation.lower(), kitchen).ask(_steps)
    name, found = use.ingredient.name, list[Preparation]()
    for step in steps:
        if step.verb is None or step.work is None:
            when, takes = known_words[step.phrase]
            if takes:
                found.append(_titled(when, takes, step.phrase, name, kitchen))
        elif not _is_bought(step.verb, use, words, step.at, kitchen):
            takes = ceil((step.work.takes + _by_amount(use, step.work, kitchen)) * step.fine)
            cold = preparation_words(kitchen.language).kept_cold
            late: When = "before" if cold.isdisjoint(use.ingredient.states) else "just-before"
            little = use.ingredient.vague or use.ingredient.purpose  # parsley, chopped, to serve
            usual = kitchen.settings.kitchen.handling
            takes = takes or (not use.ingredient.measures and bool(little) and step.work.per_piece) or usual
            found.append(Preparation(late, takes, step.said, *step.source or (name,)))
    return _in_order(found) if len(found) > 1 else found


def _steps(plain: Plain) -> tuple[list[str], list[_Step]]:
    """The words behind a comma, and what they tell to do, whatever the food is: equal ones are read once."""
    kitchen, text = plain.kitchen, plain.text
    words, known, steps, at = _WORD.findall(text), preparation_words(kitchen.language), list[_Step](), 0
    parts, phrases = _parts(text, known), _known(False, False, kitchen.language)
    while at < len(words):
        phrase = _longest(words, at, phrases) if words[at] in _openings(kitchen.language) else ""
        if phrase:
            steps.append(_Step(at, phrase))
            at += phrase.count(" ") + 1
            continue
        two = kitchen.verbs.participle(" ".join(words[at : at + 3]))  # topped and tailed
        verb = two or kitchen.verbs.participle(words[at])
        if at and words[at - 1] in known.to:
            verb = None  # enough to spread
        lies = " ".join(words[at + 1 :]).startswith(known.lies)
        if verb is not None and not (verb.waits or words[at].endswith(known.present) or lies):
            steps.append(_step(verb, words, at, 3 if two else 1, parts.get(words[at], ("", "")), kitchen))
        at += 3 if two else 1
    return words, steps


def _step(verb: Verb, words: list[str], at: int, size: int, of_part: tuple[str, str], kitchen: Kitchen) -> _Step:
    part, out = of_part
    work = _shaped(verb, words[at + 1 :], kitchen)
    said = kitchen.verbs.spoken(" ".join(words[at : at + size]), verb)
    if part:
        work, said = _of_part(work), row_words(kitchen.language).part.format(verb=said + out, part=part)
    source = words[at + 1 : at + 2] if at and words[at - 1] in nouns(kitchen.language).articles else ()
    return _Step(at, "", verb, said, work, _fineness(verb, words, at, kitchen), tuple(source))


def _of_part(verb: Verb) -> Verb:
    """`stalks removed`: so much by the piece and by weight, where the verb itself tells nothing; `bones pulled out`."""
    if not verb.removes:
        return verb._replace(per_kg=verb.per_kg + verb.part_per_kg)
    each, most = _part_seconds()
    return verb._replace(takes=0, per_piece=each, most_per_kg=most, prepares=True)


@cache
def _part_seconds() -> tuple[int, int]:
    """By the piece, and the most for a kilogram."""
    takes = saved_tables("", "preparations")["parts"]
    return seconds(takes["per_piece"]), seconds(takes["most_per_kg"])


def _is_bought(verb: Verb, use: Use, words: list[str], at: int, kitchen: Kitchen) -> bool:
    """Whether it is done where the food is bought: a joint is sold boned, and, if it is boned, rolled and tied too; so
    many steaks are sold as thick as they are to be."""
    goods = use.ingredient.goods
    if goods is None or goods.show not in _SOLD:
        return False
    if verb.divides:
        counted = bool(use.ingredient.measures) and kitchen.units.get(use.ingredient.measures[0].unit) is None
        length, *how = [*words[at + 1 : at + 3], ""]
        thick = preparation_words(kitchen.language).thick
        return counted and kitchen.units.get(length) is not None and not thick.isdisjoint(how)
    if not verb.bought:
        return False
    others = filter(None, map(kitchen.verbs.participle, words))
    return verb.bought == "alone" or any(other.bought == "alone" for other in others)


def _in_order(found: list[Preparation]) -> list[Preparation]:
    """`toasted and chopped`: what is worked on afterwards is made ready as early as that."""
    early = [at for at, one in enumerate(found) if one.when == "before"]
    last = early[-1] if early else -1
    return [
        one._replace(when="before") if at < last and one.when == "just-before" else one for at, one in enumerate(found)
    ]


def _parts(text: str, words: PreparationWords) -> dict[str, tuple[str, str]]:
    """What a participle is about where that is a part of the food, and the word behind it: `side muscles removed` gives
    the side muscles, `bones pulled out` the bones and `out`."""
    found = words.of_part.finditer(text)
    return {one[2]: (one[1], one[3] or "") for one in found if not words.manner.fullmatch(one[1].rpartition(" ")[2])}


def _shaped(verb: Verb, after: list[str], kitchen: Kitchen) -> Verb:
    """`cut into 1-cm slices` is slicing: what a dividing verb makes says how long it takes, if that is a verb too."""
    if not verb.divides:
        return verb
    made = (kitchen.verbs.get(nouns(kitchen.language).singular(word)) for word in after)
    found = next((other for other in made if other is not None and other.per_piece), None)
    finer = found or shape_of(after, kitchen)
    return finer if finer is not None and (found or finer.per_kg > verb.per_kg) else verb


def _fineness(verb: Verb, words: list[str], at: int, kitchen: Kitchen) -> Fraction:
    """How much longer a participle takes by the words before it, or by those behind it up to the next one: *finely
    chopped*, *cut into thin slices*."""
    if not is_cut(verb):
        return Fraction(1)
    ends = (there for there in range(at + 1, len(words)) if kitchen.verbs.participle(words[there]))
    behind = words[at + 1 : next(ends, len(words))]
    return fineness([*words[max(0, at - 2) : at], *(behind if verb.divides else ())], kitchen.language)


def _cut_by_the_spoon(use: Use, word: str, kitchen: Kitchen) -> Preparation | None:
    """`2 tbsp finely chopped onion` is cut at home, though it is measured as it is when it is cut; what is weighed so,
    or comes from the shelf, may be bought so."""
    item, verb = use.ingredient, kitchen.verbs.participle(word)
    unit = kitchen.units.get(item.measures[0].unit) if item.measures else None
    if unit is None or unit.kind != "volume" or verb is None or not is_cut(verb) or verb.divides or not _is_cold(use):
        return None
    if item.goods is None or not verb.per_piece:
        return None
    before, _, name = item.name.partition(f"{word} ")
    takes = (verb.takes + max(verb.per_piece, _by_amount(use, verb, kitchen))) * fineness(
        before.split(), kitchen.language
    )
    return Preparation("before", ceil(takes), kitchen.verbs.spoken(word, verb), name or item.name)


def _is_oil(use: Use) -> bool:
    """Toasted sesame oil is bought so: what is said of an oil is no work on it."""
    goods = use.ingredient.goods
    return goods is not None and goods.liquid and goods.role == "fat"


def _is_cold(use: Use) -> bool:
    """Whether the food comes out of the fridge, as far as is known."""
    goods = use.ingredient.goods
    return goods is None or goods.merchant not in _in_room()


@cache
def _in_room() -> tuple[str, ...]:
    return tuple(saved_tables("", "preparations")["room"]["merchants"].split(", "))


def _is_fat(use: Use) -> bool:
    goods = use.ingredient.goods
    return goods is not None and goods.role == "fat"


def hot_word(words: Sequence[str], language: str) -> str:
    """The word that says of a liquid that it is hot already; empty if none does."""
    known = _known(False, False, language)
    return next((word for word in words if word in known and known[word].when == "boils"), "")


def made_hot(word: str, name: str, kitchen: Kitchen, takes: int = 0) -> Preparation:
    """`boiling salted water`: salted water is brought to the boil, in so many seconds, else in those of the word."""
    known = _known(False, False, kitchen.language)[word]
    return _titled(known.when, takes or known.seconds, word, name.rpartition(f"{word} ")[2], kitchen)


def _longest(words: list[str], at: int, known: dict[str, Known]) -> str:
    """The longest known phrase that begins at a word; empty if there is none."""
    phrases = (" ".join(words[at : at + count]) for count in range(_LONGEST, 0, -1))
    return next((phrase for phrase in phrases if phrase in known), "")


def _titled(when: When, takes: int, phrase: str, name: str, kitchen: Kitchen) -> Preparation:
    """As the data file says it, else with the verb that the phrase is a form of."""
    said = word_tables(kitchen.language, "preparations")["said"].get(phrase)
    verb = None if said else kitchen.verbs.participle(phrase)
    return Preparation(when, takes, said or (kitchen.verbs.spoken(phrase, verb) if verb is not None else phrase), name)


def in_words(group: list[Preparation]) -> str:
    """`slice onions, garlic; crush fennel seed`: each verb once, in the order of the text; and the food once that
    several are done to: `peel, dice potatoes`."""
    foods: dict[str, list[str]] = {}
    for one in group:
        names = foods.setdefault(one.verb, [])
        if one.name not in names:
            names.append(one.name)
    said: list[str] = []
    verbs: list[str] = []
    for at, (verb, names) in enumerate(foods.items()):
        verbs.append(verb)
        behind = list(foods.items())[at + 1 : at + 2]
        if behind and behind[0][1] == names and "…" not in verb + behind[0][0]:
            continue
        done = ", ".join(verbs)
        said.append(done.replace("…", ", ".join(names)) if "…" in done else f"{done} {', '.join(names)}")
        verbs = []
    return "; ".join(said)


def _by_amount(use: Use, work: Verb, kitchen: Kitchen) -> int:
    """Seconds for so many pieces and so much weight, where these are known; for pieces that only the weight tells, no
    less than for food of which nothing is known."""
    measures = use.ingredient.measures
    takes = one_by_one(work, use.ingredient, use.mass, kitchen)
    if measures and kitchen.units.get(measures[0].unit) is None:
        takes *= use.times * use.fraction
    elif takes and not work.per_kg:
        takes = max(takes, Fraction(kitchen.settings.kitchen.handling))
    if work.per_kg and use.mass.known:
        takes += -(-work.per_kg * use.mass.hi.numerator // (1000 * use.mass.hi.denominator))
    return ceil(takes)


@cache
def _openings(language: str) -> frozenset[str]:
    """The words with which a phrase of the data begins."""
    return frozenset(phrase.partition(" ")[0] for phrase in _known(False, False, language))


@cache
def _known(fat: bool, cold: bool, language: str) -> dict[str, Known]:
    """The phrases of the data, as the language says them; those that mean no work have no seconds. A fault raises."""
    said, lists = saved_tables("", "preparations"), word_lists(language, "preparations")
    known = dict.fromkeys(lists["nothing"]["words"], Known("before", 0))
    own = lists.get("names")
    for table, when in _TABLES.items():
        for id, takes in said[table].items():
            holds = (cold or table not in ("fridge", "fats")) and (fat or table != "fats")
            one = Known(when, seconds(takes) if holds else 0)
            known |= dict.fromkeys((id,) if own is None else own.get(id, ()), one)
    return known
