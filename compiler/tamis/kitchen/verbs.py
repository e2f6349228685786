"""What the words for work mean: who is busy, what is needed, where the food goes.

A recipe says "whisk", "bring", "leave to rise" in plain text. From that one word follow things the cook never
writes: whether a time is missing, whether the cook's hands are free, whether a range of time is the food's
choice or the cook's, whether food joins the batch or leaves it. These facts are the trade's, so they stand in
`grammar/verbs.toml`, and nothing in the compiler asks for a verb by its name.

Phrases are kept whole ("fold in" is not "fold") and found longest first. What is read at a start is
`grammar/saved/<language>/verbs.txt`, which make_verbs makes; a verb becomes a `Verb` when it is first asked for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tamis.kitchen.equipment import Station
from tamis.kitchen.verb_words import verb_words
from tamis.record import NamedTuple
from tamis.saved import Saved, facts, saved
from tamis.typed import TYPE_CHECKING, Any, Literal, get_args

if TYPE_CHECKING:
    from tamis.quantity.near import Known

Attention = Literal["hands", "unattended"]
Fact = Literal[
    "adds", "cold", "divides", "fries", "heat", "lifts", "moves", "off", "outside", "per_kg", "per_piece", "per_vessel",
    "rinsed", "serves", "sieved_per_kg", "station", "waits",
]  # fmt: skip
"""A fact that is asked of all the verbs of a line at once."""


_FACTS: frozenset[Fact] = frozenset(get_args(Fact))
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
    scalds: bool = False
    """What has waited in it is full of hot liquid until it cools."""
    cools: bool = False
    """What it is done to is brought down to a temperature."""
    drains: bool = False
    """The liquid goes out of what it is done to."""
    cold: bool = False
    """Also done without heat, where its line says so: by a cold liquid, a bowl, the room's temperature."""
    station: Station = ""
    outside: bool = False
    """No work on food while it is in an oven or under a grill."""
    fries: bool = False
    """Degrees in its line are those of its fat or its pan, and not an oven's."""
    moves: bool = False
    """What it is done to comes from where it lies to another place."""
    sets: bool = False
    """An oven or grill named after it, in plain words too, is what it is done to."""
    lets: bool = False
    """A waiting verb after it, or after it and its object, takes its place: let it bubble, leave the dough to rise."""
    carries: bool = False
    """Also moves what it names, which is no wait: bring the edges together."""
    occasional: bool = False
    """As tending (basting, skimming) it is done now and then, unless it says how often."""
    stands: bool = False
    """What it leaves in the room may not stand there for hours."""
    fresh: bool = False
    """What it makes falls, weeps or wilts within minutes."""
    adds: bool = False
    """Puts other food into or on to the batch."""
    coats: bool = False
    """… of which some is kept where the line names it in the end: brush with an egg as egg wash."""
    removes: bool = False
    """What it names leaves the batch."""
    lifts: bool = False
    """What it names leaves the batch as one of its own where a later line names it again."""
    serves: bool = False
    """What it names first is served, and no more joins what it was lifted out of."""
    separates: bool = False
    """Parts the liquid from what was in it."""
    divides: bool = False
    prepares: bool = False
    """Its participle before a food tells how that was cut, tied or cleaned: a spatchcocked chicken is a chicken."""
    bought: Literal["", "alone", "along"] = ""
    """Meat and fish are bought so (`alone`), or are if they are bought prepared at all (`along`)."""
    names: bool = False
    """Parts some of the food, which stays open under its own name."""
    purpose: str = ""
    """What unmeasured goods beside it are for, as `for dusting`."""
    over: str = ""
    """The same where *over* stands behind them: grate [nutmeg] over the top."""
    on_heat: str = ""
    """The verb that it is where its line names what stands on the stove: jars are processed in a canner."""
    greases: bool = False
    """Puts fat on a piece of equipment: where no bracket names the fat, something is missing."""
    takes: int = 0
    """Handling of a line without a time; `per_kg` and `per_piece` come on top."""
    per_kg: int = 0
    per_piece: int = 0
    most_per_kg: int = 0
    """The most that `per_piece` comes to where the pieces follow from the weight: small things are worked several at a
    time."""
    estimate: int = 0
    """Length of a line that only a cue or a target ends; `estimate_per_kg` comes on top."""
    estimate_per_kg: int = 0
    water_per_kg: int = 0
    """… and this for what the line puts in for boiling and the like, unless that is hot."""
    rinsed: int = 0
    """Handling of a line without a time that does it under water, which is no wait: `cool [under cold water]`."""
    sieved_per_kg: int = 0
    """What a kilo more takes where its line does it through a sieve: `rub [through a sieve]`."""
    least_per_kg: int = 0
    """The least that a kilo takes: large pieces take longer."""
    part_per_kg: int = 0
    """What a kilo more takes where its line takes off a part of the food: `remove [the bones]`."""
    per_vessel: int = 0
    """What each vessel but the first takes where its line works on several, or fills them."""
    doubtful: bool = False
    """Also a noun or an adjective (cream, warm): within a line a verb only where an object follows."""
    does: frozenset[Fact] = frozenset()
    """The names of those of its facts that the data give: what several verbs do is their union."""


class Verbs:
    """All the verbs, found by phrase or by participle."""

    __slots__ = (
        "_facts",
        "_known",
        "_made",
        "_others",
        "_rows",
        "first_words",
        "forms",
        "language",
        "phrases",
        "present_forms",
    )

    def __init__(self, rows: Saved, language: str) -> None:
        self.language = language
        self._rows = rows
        self.phrases = rows.names("phrases")
        """The base of each base form, `bring` or `fold in`, and of each other word for it."""
        self.forms = rows.names("forms")
        """The base of each participle, present or past: `whisking`, `dusted`, `folding in`."""
        self.present_forms = rows.names("present")
        """The base of each present participle alone: `whisking`."""
        self._facts = rows.names("facts")
        self._others = rows.names("others")
        self.first_words = rows.names("first words")
        """How many words the longest phrase has that begins with a word."""
        self._made: dict[str, Verb] = {}
        self._known: Known | None = None

    @classmethod
    def load(cls, language: str) -> Verbs:
        """The verbs of a language."""
        return cls(saved(language, "verbs"), language)

    def __iter__(self) -> Iterator[Verb]:
        """Each verb once, in the order of the file."""
        return map(self._verb, dict.fromkeys(map(self.phrases.__getitem__, self._rows.row("in order"))))

    def get(self, phrase: str) -> Verb | None:
        """The verb of a base form, `bring` or `fold in`, or of another word for it."""
        base = self.phrases.get(phrase)
        return None if base is None else self._verb(base)

    def of_base(self, base: str) -> Verb | None:
        """The verb that the data call so, whatever a cook calls it."""
        return self._made.get(base) or (self._verb(base) if base in self._facts else None)

    def match(self, words: Sequence[str], start: int) -> tuple[Verb, int] | None:
        """The longest verb that begins at `words[start]` (lower case), and the number of words it has."""
        longest = self.first_words.get(words[start]) if start < len(words) else None
        for size in range(min(int(longest or 0), len(words) - start), 0, -1):
            base = self.phrases.get(" ".join(words[start : start + size]))
            if base is not None:
                verb = self._verb(base)
                let = self._let(words, start + size) if verb.lets else None
                return (let[0], let[1] - start) if let else (verb, size)
        return None

    def _let(self, words: Sequence[str], after: int) -> tuple[Verb, int] | None:
        """The waiting verb that takes the place of one that lets, and where its words end."""
        about = verb_words(self.language)
        for at in range(after, min(len(words), after + _LONGEST_OBJECT)):
            if not words[at].isalpha():
                return None
            found = self.match(words, at) if words[at - 1] not in about.articles else None
            if found and (found[0].waits or found[0].cooks) and not found[0].lets:
                end = at + found[1]
                sure = not found[0].doubtful or at == after or words[at - 1] in about.before
                if sure or end == len(words) or not words[end].isalpha() or words[end] in about.after:
                    return found[0], end
        return None

    def participle(self, word: str) -> Verb | None:
        """The verb of a participle, present or past: `whisking`, `dusted`, `folding in`."""
        base = self.forms.get(word)
        return None if base is None else self._verb(base)

    def present(self, word: str) -> Verb | None:
        """The verb of a present participle: `whisking`, `folding in`."""
        base = self.present_forms.get(word)
        return None if base is None else self._verb(base)

    def spoken(self, participle: str, verb: Verb) -> str:
        """The verb of a participle as the cook says it: `pull` of `pulled`, though the data call that `push`."""
        return self._others.get(participle) or verb.name

    def near(self, word: str) -> str | None:
        """The verb that a misspelt word may have meant, or None."""
        from tamis.quantity.near import Known, nearest

        if self._known is None:
            self._known = Known(self._rows.row("in order"))
        return nearest(word, self._known)

    def _verb(self, base: str) -> Verb:
        made = self._made.get(base)
        if made is None:
            said: dict[str, Any] = facts(self._facts[base])
            made = self._made[base] = Verb(base, **said, does=_FACTS.intersection(said))
        return made
