"""Words as classes: every word is looked up in the words of the language and in the lists of the kitchen.

A word may have several classes (*butter* is food and work, *tin* a vessel and a measure), and a phrase may be one
word (*off the heat*). They are offered in order, the longest phrase first; the parser takes the first that can stand
at its place. WORD is the last resort of an open word (a name may hold it), ANY that of every word (only free words
may hold it): a preposition never becomes part of a name.
"""

from __future__ import annotations

from tamis.kitchen.goods import key as food_key
from tamis.quantity.nouns import nouns
from tamis.saved import Names, saved
from tamis.syntax.clause import cutter
from tamis.syntax.cutting import COMMA, Choice, Cut
from tamis.syntax.elision import Elision
from tamis.typed import TYPE_CHECKING, Any, TypeVar
from tamis.words import Lists, word_lists, word_tables

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from tamis.kitchen.house import Kitchen

_Asked = TypeVar("_Asked")
_Answer = TypeVar("_Answer")
_LONGEST = 6
_LONGEST_NOUN = 4
# What a house's kitchen keeps of words that no list has: enough for a library, little enough for an editor that stays
# open.
_MOST_KEPT = 20_000
_BETWEEN_NOUNS = frozenset(("PREP", "INTO", "TO", "AT", "OF", "FOR", "ARTICLE", "THE"))
_NO_ADJECTIVES = frozenset(("OR", "PLUS"))
_ADJECTIVES = Choice((("ADJCOMMA", 1), ("COMMA", 1)))
# Classes whose words are told from the word after them.
_LOOKED_BEHIND = frozenset(("PREP", "ANOTHER", "MORE", "SIZEWORD", "WITHOUT", "FRACTION"))
_TOLD_BEHIND = frozenset(("FRACTION", "MORE", "SIZEWORD", "WITHOUT"))
_BEHIND_DONE = frozenset(("FOR", "UPTO", "OVERNIGHT", "PREP"))
_BEHIND = 4  # *over a very low heat*


def classes(lists: Lists) -> dict[str, list[str]]:
    """The classes of each phrase of a language's own words, by `words/<language>/clause.toml`."""
    closed: dict[str, list[str]] = {}
    for table in (lists["closed"], lists["open"]):
        for name, phrases in table.items():
            for phrase in phrases:
                closed.setdefault(phrase, []).append(name)
    return closed


def reaches(language: str, lists: Iterable[Iterable[str]]) -> dict[str, int]:
    """How many words the longest phrase has that begins with a word; of others, what is looked at.

    It is saved for each language with the lists that ship with the compiler (`phrases.txt`).
    """
    closed, elision = classes(word_lists(language, "clause")), Elision(language)
    behind = (word for word, names in closed.items() if not _LOOKED_BEHIND.isdisjoint(names))
    reach = {elision.parted(word.replace("-", " "))[0]: _BEHIND for word in behind}
    for phrases in (closed, *lists):
        _lengthen(reach, phrases, elision)
    return reach


def _lengthen(reach: dict[str, int], phrases: Iterable[str], elision: Elision) -> None:
    for phrase in phrases:
        if " " in phrase or "-" in phrase or "'" in phrase:
            parts = elision.parted(phrase.replace("-", " "))
            if len(parts) > reach.get(parts[0], 1):
                reach[parts[0]] = min(len(parts), _LONGEST)


class Vocabulary:
    """All words of a kitchen, each phrase with its classes."""

    __slots__ = (
        "_closed", "_degrees", "_doing", "_elision", "_function", "_lengths", "_listed", "_longer", "_made", "_nouns",
        "_of", "_reach", "_reach_of", "_traits", "cutter", "kitchen", "of_first", "of_later", "plain",
    )  # fmt: skip

    def __init__(self, kitchen: Kitchen) -> None:
        self.kitchen = kitchen
        self.cutter = cutter(kitchen.language, kitchen.units)
        self._elision = Elision(kitchen.language)
        self._traits = "after" in nouns(kitchen.language).orders
        lists = word_lists(kitchen.language, "clause")
        self._closed = classes(lists)
        only_open = {phrase for phrases in lists["open"].values() for phrase in phrases}
        shut = (phrase for phrases in lists["closed"].values() for phrase in phrases)
        self._function = frozenset(p for p in shut if " " not in p and p not in only_open)
        self._doing = lists["said"]["doing"]
        self._of = frozenset(lists["closed"]["OF"])
        self._degrees = frozenset(lists["said"]["degrees"])
        self._lengths = frozenset(word_tables(kitchen.language, "clause")["lengths"])
        self._reach = self._reaches()
        # What words are that begin no phrase, as a clause's first and later; and the phrases that begin with others.
        self.of_first: dict[str, Choice] = {}
        self.of_later: dict[str, Choice] = {}
        self._reach_of: dict[tuple[str, bool], int] = {}
        self._longer: dict[tuple[bool, tuple[str, ...]], Choice] = {}
        self._made: dict[tuple[tuple[str, int], ...], Choice] = {}
        self._nouns: dict[tuple[str, ...], bool] = {}
        self._listed: dict[tuple[str, bool], tuple[str, ...]] = {}
        self.plain: dict[str, Any] = {}
        """The stretches of plain words that were cut with these words, a `Plain` each (`plain_of`)."""

    def choice(self, words: list[str], at: int) -> Choice:
        """What the word at a place may be, alone or with those after it; only the first of a clause is work.

        Most words begin no phrase: for them one look-up does. For the others as many words are looked up as the longest
        phrase has that begins so.
        """
        first, word = at == 0, words[at]
        known = self.of_first if first else self.of_later
        found = known.get(word)
        if found is None:
            begins = word, first
            reach = self._reach_of.get(begins) or _keep(self._reach_of, begins, self._looks_ahead(word, first))
            if reach == 1:
                return _keep(known, word, self._choice((word,), first))
            asked = first, tuple(words[at : at + reach])
            found = self._longer.get(asked) or _keep(self._longer, asked, self._choice(asked[1], first))
        return found

    def _looks_ahead(self, word: str, first: bool) -> int:
        """How many words are looked up where this one stands; behind a participle that begins a clause, one more."""
        reach = int(self._reach.get(word.replace("-", " ").partition(" ")[0]) or 1)
        return max(reach, 2) if first and self._is_past(word) else reach

    def _choice(self, words: tuple[str, ...], first: bool) -> Choice:
        end = words.index("") if "" in words else len(words)
        ways = tuple(self._ways(words[:end], first))
        return self._made.setdefault(ways, Choice(ways))

    def _reaches(self) -> Names:
        language = self.kitchen.language
        reach, rules = saved(language, "phrases").names("reach"), nouns(language)
        own: dict[str, int] = {}
        _lengthen(own, self.kitchen.larder.added, self._elision)
        longer = {head: str(length) for head, length in own.items() if length > int(reach.get(head) or 1)}
        reach = reach.with_more(longer)
        if rules.plural_within:
            heads = reach.everything()
            plurals = {rules.plural(head): length for head, length in heads.items()}
            reach = reach.with_more({head: length for head, length in plurals.items() if head not in heads})
        return reach

    def _ways(self, words: tuple[str, ...], first: bool) -> Iterator[tuple[str, int]]:
        for n in range(len(words), 0, -1):
            phrase = self._elision.joined(words[:n])
            closed = self._closed.get(phrase, [])
            if first and closed == ["HEATNOUN"]:  # `heat for 2 min`
                closed = []
            if n == 1 and "PREP" in closed and self._heats(words):
                yield "ONHEAT", 1
            if "ANOTHER" in closed and self._is_article(words[n:]):
                yield "ARTICLE", n
            if n == 1 and not _TOLD_BEHIND.isdisjoint(closed):
                closed = self._told_behind(words, closed)
            if n == 1 and first and not closed and self._is_done(words):
                yield "VERB", 1
            listed = self._listed.get((phrase, first))
            if listed is None:
                names = tuple(self._from_lists(phrase, tuple(phrase.split(" ")), first))
                listed = _keep(self._listed, (phrase, first), names)
            for name in (*closed, *listed):
                yield name, n
        if words[0] not in self._function:
            if self._traits:
                yield "TRAIT", 1
            yield "WORD", 1
        yield "ANY", 1

    def _is_past(self, word: str) -> bool:
        """Whether a word is the past participle of work: chilled, kept."""
        verbs = self.kitchen.verbs
        return verbs.participle(word) is not None and verbs.present(word) is None and verbs.get(word) is None

    def _is_done(self, words: tuple[str, ...]) -> bool:
        """Work of which a line says that it may be done: *the gravy can be made first and chilled for up to 2 days*."""
        if len(words) < 2 or not self._is_past(words[0]):
            return False
        return not _BEHIND_DONE.isdisjoint(self._closed.get(words[1], ()))

    def _told_behind(self, words: tuple[str, ...], closed: list[str]) -> list[str]:
        """The classes of a word without those that the words after it rule out."""
        if "FRACTION" in closed and self._is_tool(words[1:]):  # a third bowl
            return []
        out = {name for name, stays in (("MORE", self._adds), ("WITHOUT", self._works)) if not stays(words)}
        if words[1:2] and words[1] in self._of:  # `2 squares of chocolate`
            out.add("SIZEWORD")
        return [name for name in closed if name not in out]

    def _heats(self, words: tuple[str, ...]) -> bool:
        """`over medium heat`, `on a low heat`: a look at the word after the article, which one symbol does not give."""
        at = 1
        while at < len(words) and (words[at] in self._degrees or "ARTICLE" in self._closed.get(words[at], ())):
            at += 1
        return at < len(words) and not {"SETWORD", "HEATNOUN"}.isdisjoint(self._closed.get(words[at], ()))

    def _adds(self, words: tuple[str, ...]) -> bool:
        """`10 more minutes`, `2 min more`, but `2 more eggs`: a name follows."""
        unit = self.kitchen.units.get(words[1]) if words[1:2] else None
        return not words[1:2] or words[1] in self._function or (unit is not None and unit.kind == "time")

    def _works(self, words: tuple[str, ...]) -> bool:
        """`without stirring`, `never letting it boil`, but `without dressing`, which is food."""
        return words[1:2] != () and words[1].endswith(self._doing) and not self.is_noun(words[1:2])

    def _is_article(self, behind: tuple[str, ...]) -> bool:
        """`another bowl`, `a second bowl` are one; `another 5 min`, `another third` are more of the same."""
        return behind != () and "FRACTION" not in self._closed.get(behind[0], ())

    def _is_tool(self, words: tuple[str, ...]) -> bool:
        """Whether the first noun is equipment (a third small dish); of what it holds (a third cup of
        sugar) or measures (half teaspoon salt) the share may be meant."""
        cupboard = self.kitchen.cupboard
        at = next((n for n, word in enumerate(words) if word in self._function or cupboard.get(word)), None)
        if at is None or words[at] in self._function or any(self.is_noun((word,)) for word in words[:at]):
            return False
        measures = cupboard.count_word(words[at]) or self.kitchen.units.get(words[at])
        return at + 1 == len(words) or not measures

    def _from_lists(self, phrase: str, words: tuple[str, ...], first: bool) -> Iterator[str]:
        kitchen = self.kitchen
        verb = kitchen.verbs.get(phrase) if first else None
        food = kitchen.larder.knows(food_key(words, kitchen.language)) if phrase not in self._function else False
        tool, count = self._tool(phrase, words), kitchen.cupboard.count_word(phrase)
        unit = kitchen.units.get(phrase) if len(phrase) > 1 else None
        if unit and unit.kind == "time":
            yield "TIME"
        measure = count or (unit is not None and unit.kind == "volume")  # a tablespoon of flour, with a tablespoon
        measures = (
            (count and not tool) or (unit and unit.kind in ("mass", "volume", "nominal")) or phrase in self._lengths
        )
        if verb:
            yield "VERBFOOD" if food or measures else "VERB"
        if first and kitchen.verbs.present(phrase):
            yield "PARTICIPLE"
        if tool:
            yield "COUNTTOOL" if measure else "TOOL"
        elif food and not count:
            yield "FOOD"
        if measures:
            yield "COUNT"

    def _tool(self, phrase: str, words: tuple[str, ...]) -> object:
        """The equipment of this name. *Iced water* is food first; of *bowl of ice* the head is the bowl, but *bowl of
        the mixer* is one piece."""
        tool = self.kitchen.cupboard.get(phrase)
        food = self.kitchen.larder.find(words) if tool is not None and len(words) > 1 else None
        if tool is None or (food is not None and not food.piece_word):  # a fish slice is no slice of fish
            return None
        return tool if tool.part_of or self._of.isdisjoint(words) else None

    def joins(self, word: str) -> bool:
        """Whether a word is a preposition or an article, which stands between nouns."""
        return not _BETWEEN_NOUNS.isdisjoint(self._closed.get(word, ()))

    def goes_on(self, words: list[str]) -> bool:
        """Whether what stands behind a comma is no adjective: *or 5 g of another food*, *plus some for the tin*."""
        return bool(words) and not _NO_ADJECTIVES.isdisjoint(self._closed.get(words[0], ()))

    def is_noun(self, words: tuple[str, ...]) -> bool:
        """Whether words, or the last of them, are a food or a tool."""
        for at in range(len(words) - 1, -1, -1):  # mostly the last word alone tells
            end = words[at:]
            known = self._nouns.get(end)
            if known is None:
                known = _keep(self._nouns, end, self._is_name(tuple(self._elision.joined(end).split(" "))))
            if known:
                return True
        return False

    def _is_name(self, words: tuple[str, ...]) -> bool:
        kitchen = self.kitchen
        return kitchen.cupboard.get(" ".join(words)) is not None or kitchen.larder.knows(
            food_key(words, kitchen.language)
        )


def _keep(known: dict[_Asked, _Answer], asked: _Asked, found: _Answer) -> _Answer:
    if len(known) >= _MOST_KEPT:
        known.clear()
    known[asked] = found
    return found


class Choices:
    """What each token of a clause may be; looks ahead where one symbol does not tell."""

    __slots__ = ("cut", "vocabulary")

    def __init__(self, cut: Cut, vocabulary: Vocabulary) -> None:
        self.cut = cut
        self.vocabulary = vocabulary

    def at(self, at: int) -> Choice:
        """What the token at a place may be, alone or with those after it."""
        choice = self.cut.fixed[at]
        if choice is None:
            return self.vocabulary.choice(self.cut.words, at)
        return _ADJECTIVES if choice is COMMA and self._between_adjectives(at) else choice

    def _between_adjectives(self, at: int) -> bool:
        """`skinless, boneless thighs`: no noun before the comma, one after it."""
        words = self.cut.words
        if at == 0 or words[at - 1] == "" or self.vocabulary.goes_on(words[at + 1 : at + 2]) or self._ends_in_noun(at):
            return False
        noun = self._next_noun(at)
        # *onion juice, from an onion*: adjectives have no such words between them.
        return bool(noun) and not any(map(self.vocabulary.joins, words[at + 1 : noun]))

    def _next_noun(self, at: int) -> int:
        """Where the next noun stands that ends a row of words; 0 for nowhere."""
        words = self.cut.words
        for last in range(at + 1, len(words)):
            if words[last] and not any(words[last + 1 : last + 2]) and self._ends_in_noun(last + 1):
                return last
        return 0

    def _ends_in_noun(self, end: int) -> bool:
        """Whether the row of words before a place ends in a food or a tool."""
        words, start = self.cut.words, end
        while start and words[start - 1] and start > end - _LONGEST_NOUN:
            start -= 1
        return self.vocabulary.is_noun(tuple(words[start:end]))
