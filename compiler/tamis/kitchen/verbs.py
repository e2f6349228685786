"""What the words for work mean: who is busy, what is needed, where the food goes.

A recipe says "whisk", "bring", "leave to rise" in plain text. From that one word follow things the cook never
writes: whether a time is missing, whether the cook's hands are free, whether a range of time is the food's
choice or the cook's, whether food joins the batch or leaves it. These facts are the trade's, so they stand in
`grammar/verbs.toml`, and nothing in the compiler asks for a verb by its name.

Phrases are kept whole ("fold in" is not "fold") and found longest first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Literal, get_args

from tamis.kitchen.equipment import Station
from tamis.kitchen.seconds import seconds
from tamis.kitchen.verb_words import verb_words
from tamis.quantity.near import nearest
from tamis.record import NamedTuple
from tamis.string_tables import tables

Attention = Literal["hands", "unattended"]


_ATTENTION: tuple[Attention, ...] = get_args(Attention)
_TIMES = ("takes", "per_kg", "per_piece", "estimate", "estimate_per_kg", "water_per_kg")
_TAKEN_BACK = "-"

# *leave the dough in a warm place to rise*: so many words at most.
_LONGEST_OBJECT = 8


class Verb(NamedTuple):
    """A word or phrase for work: by what the data call it, and as a cook writes it first. All times in seconds; 0 means
    that the trade has no opinion."""

    base: str
    name: str
    attention: Attention = "hands"
    """`hands`: a timed line keeps the cook; `unattended`: it does not."""
    waits: bool = False
    """A line with it needs a time, a cue or a target."""
    keeps: bool = False
    """A range of time is a window (the cook decides), not an estimate (the food decides)."""
    cooks: bool = False
    """A range of time wants a cue to look for."""
    heat: bool = False
    off: bool = False
    """What it is done to is on no heat any more, unless its line names some."""
    cold: bool = False
    """Also done without heat, where its line says so: by a cold liquid, a bowl, the room's temperature."""
    station: Station = ""
    sets: bool = False
    """An oven or grill named after it, in plain words too, is what it is done to."""
    lets: bool = False
    """A waiting verb after it, or after it and its object, takes its place: let it bubble, leave the dough to rise."""
    occasional: bool = False
    """As tending (basting, skimming) it is done now and then, unless it says how often."""
    stands: bool = False
    """What it leaves in the room may not stand there for hours."""
    adds: bool = False
    """Puts other food into or on to the batch."""
    removes: bool = False
    """What it names leaves the batch."""
    lifts: bool = False
    """… but is only lifted out where a later line names it again."""
    separates: bool = False
    """Parts the liquid from what was in it."""
    divides: bool = False
    names: bool = False
    """Parts some of the food, which stays open under its own name."""
    purpose: str = ""
    """What unmeasured goods beside it are for, as `for dusting`."""
    greases: bool = False
    """Puts fat on a piece of equipment: where no bracket names the fat, something is missing."""
    takes: int = 0
    """Handling of a line without a time; `per_kg` and `per_piece` come on top."""
    per_kg: int = 0
    per_piece: int = 0
    estimate: int = 0
    """Length of a line that only a cue or a target ends; `estimate_per_kg` comes on top."""
    estimate_per_kg: int = 0
    water_per_kg: int = 0
    """… and this for what the line puts in for boiling and the like, unless that is hot."""
    doubtful: bool = False
    """Also a noun or an adjective (cream, warm): within a line a verb only where an object follows."""


class Verbs:
    """All the verbs, found by phrase or by participle.

    The phrases are those of the file, which are English, or those of `words/<language>/verbs.toml`.
    """

    __slots__ = ("_by_base", "_by_first", "_by_phrase", "_forms", "_words")

    def __init__(self, language: str = "en") -> None:
        self._by_base: dict[str, Verb] = {}
        self._by_phrase: dict[str, Verb] = {}
        self._by_first: dict[str, list[tuple[tuple[str, ...], Verb]]] = {}
        self._forms: dict[str, Verb] | None = None
        self._words = verb_words(language)

    @classmethod
    def load(cls, text: str, language: str = "en") -> Verbs:
        """Verbs from the text of `verbs.toml`, which ships with the compiler: a fault in it raises."""
        verbs = cls(language)
        for table in tables(text).values():
            every = _facts(table.pop("every", ""))
            for base, own in table.items():
                verbs._add(base, every | _facts(own))
        for entries in verbs._by_first.values():
            entries.sort(key=lambda entry: -len(entry[0]))
        return verbs

    def _add(self, base: str, facts: dict[str, Any]) -> None:
        words = self._words
        also = facts.pop("also", "")
        phrases = (base, *also.split(" / ")) if also else (base,)
        if words.names is not None:
            phrases = words.names.get(base, ())
        purpose = facts.get("purpose")
        if purpose in words.purposes:
            facts["purpose"] = words.purposes[purpose]
        verb = self._by_base[base] = Verb(base, phrases[0] if phrases else base, **facts)
        for phrase in phrases:
            if phrase in self._by_phrase:
                raise ValueError(f"the verb {phrase!r} stands twice")
            self._by_phrase[phrase] = verb
            parts = tuple(phrase.split(" "))
            self._by_first.setdefault(parts[0], []).append((parts, verb))

    def __iter__(self) -> Iterator[Verb]:
        """Each verb once, in the order of the file."""
        return iter(dict.fromkeys(self._by_phrase.values()))

    def get(self, phrase: str) -> Verb | None:
        """The verb of a base form, `bring` or `fold in`, or of another word for it."""
        return self._by_phrase.get(phrase)

    def of_base(self, base: str) -> Verb | None:
        """The verb that the data call so, whatever a cook calls it."""
        return self._by_base.get(base)

    def match(self, words: Sequence[str], start: int) -> tuple[Verb, int] | None:
        """The longest verb that begins at `words[start]` (lower case), and the number of words it has."""
        if start >= len(words):
            return None
        for phrase, verb in self._by_first.get(words[start], ()):
            if tuple(words[start : start + len(phrase)]) == phrase:
                let = self._let(words, start + len(phrase)) if verb.lets else None
                return (let[0], let[1] - start) if let else (verb, len(phrase))
        return None

    def _let(self, words: Sequence[str], after: int) -> tuple[Verb, int] | None:
        """The waiting verb that takes the place of one that lets, and where its words end."""
        for at in range(after, min(len(words), after + _LONGEST_OBJECT)):
            if not words[at].isalpha():
                return None
            found = self.match(words, at) if words[at - 1] not in self._words.articles else None
            if found and found[0].waits and not found[0].lets:
                end = at + found[1]
                sure = not found[0].doubtful or at == after or words[at - 1] in self._words.before
                if sure or self._ends(words, end):
                    return found[0], end
        return None

    def participle(self, word: str) -> Verb | None:
        """The verb of a participle, present or past: `whisking`, `dusted`, `folding in`."""
        if self._forms is None:
            self._forms = self._all_forms()
        return self._forms.get(word)

    def near(self, word: str) -> str | None:
        """The verb that a misspelt word may have meant, or None."""
        return nearest(word, self._by_phrase)

    def _all_forms(self) -> dict[str, Verb]:
        forms: dict[str, Verb] = {}
        for phrase, verb in self._by_phrase.items():
            first, space, rest = phrase.partition(" ")
            for form in self._words.participles(first):
                forms.setdefault(form + space + rest, verb)
        return forms

    def _ends(self, words: Sequence[str], end: int) -> bool:
        """Whether what stands before is no adjective of what follows."""
        return end == len(words) or not words[end].isalpha() or words[end] in self._words.after


def _facts(text: str) -> dict[str, Any]:
    """The facts of one line of the file: `adds, takes 30 s` gives `{"adds": True, "takes": 30}`."""
    facts: dict[str, Any] = {}
    for fact in text.split(", ") if text else ():
        key, _, value = fact.partition(" ")
        if key in _ATTENTION:
            facts["attention"] = key
        elif key in _TIMES:
            facts[key] = seconds(value)
        else:
            facts[key] = Verb._field_defaults[key] if value == _TAKEN_BACK else value or True
    return facts
