"""Plain words, those outside brackets, cut up once: words, numbers and signs, with their places and classes.

Who wants to know something of them (the verbs, vessels, times, measures that they name) asks the same `Plain`, and what
is answered once is kept with it. Places count from the start of the stretch, so equal stretches are one.
"""

from __future__ import annotations

from tamis.reading.parsers import parser_of
from tamis.syntax.cutting import NUMBER_WORD, ONE, UNITS
from tamis.syntax.elision import Elision
from tamis.typed import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from tamis.kitchen.house import Kitchen
    from tamis.reading.vocabulary import Vocabulary

Answer = TypeVar("Answer")
Phrases = dict[str, tuple[tuple[str, ...], ...]]
"""Phrases by their first word, the longest first, each as the words it is cut into."""

# What is kept of a house's plain words: enough for a library, little enough for an editor that stays open.
_MOST_KEPT = 8_000
_LONG = 2_000
_NUMBERS = frozenset((ONE["NUMBER"], ONE["MISWRITTEN"]))
_UNITS = frozenset(ONE[kind] for kind in UNITS)
_COUNTS = _NUMBERS | {NUMBER_WORD}


class Plain:
    """A stretch of plain words. `said` has every token in lower case, `words` the words alone and "" for numbers, their
    units and signs; tokens begin at `starts` and end at `ends`."""

    __slots__ = (
        "_answers", "_ways", "cut", "ends", "fixed", "kitchen", "said", "starts", "text", "vocabulary", "words",
    )  # fmt: skip

    def __init__(self, text: str, vocabulary: Vocabulary) -> None:
        cut = vocabulary.cutter.cut(text)
        self.text, self.cut = text, cut
        self.vocabulary = vocabulary
        self.kitchen = vocabulary.kitchen
        self.fixed, self.words, self.starts, self.ends = cut.fixed, cut.words, cut.starts, cut.ends
        self.said = [
            word or text[start:end].lower() for word, start, end in zip(cut.words, cut.starts, cut.ends, strict=True)
        ]
        if "." in text:
            self._give_back_stops()
        self._ways: list[tuple[tuple[str, int], ...] | None] = [None] * len(self.said)
        self._answers: dict[Callable[[Plain], object], Any] = {}

    def __len__(self) -> int:
        return len(self.said)

    def _give_back_stops(self) -> None:
        """The full stop of a unit that is the sentence's is no part of it: *for 2 min. Then*."""
        for at, choice in enumerate(self.fixed):
            is_last = at + 1 == len(self.said) or self.text[self.starts[at + 1]].isupper()
            if is_last and choice in _UNITS and self.said[at][-1] == ".":
                self.ends[at] -= 1

    def ask(self, question: Callable[[Plain], Answer]) -> Answer:
        """The answer to a question, worked out when it is first asked."""
        found = self._answers.get(question, self)  # which is no answer
        if found is self:
            found = self._answers[question] = question(self)
        return found  # type: ignore[no-any-return]

    def is_number(self, at: int) -> bool:
        """Whether a token is a number in figures."""
        return self.fixed[at] in _NUMBERS

    @property
    def has_numbers(self) -> bool:
        """Whether there is a number in figures."""
        return not _NUMBERS.isdisjoint(self.fixed)

    def is_count(self, at: int) -> bool:
        """Whether a token is a number, in figures or in letters."""
        return self.fixed[at] in _COUNTS

    def is_word(self, at: int) -> bool:
        """Whether a token is a word, though it may be a number in letters."""
        return at < len(self.said) and (self.fixed[at] is None or self.fixed[at] is NUMBER_WORD)

    def is_a(self, at: int, kinds: frozenset[str]) -> int:
        """How many words at a place are of one of these classes; 0 for none."""
        for kind, size in self.ways(at):
            if kind in kinds:
                return size
        return 0

    def ways(self, at: int) -> tuple[tuple[str, int], ...]:
        """The classes of a word, alone or with those after it; none of what is no word, or stands behind the end."""
        if at >= len(self.said):
            return ()
        ways = self._ways[at]
        if ways is None:
            ways = () if self.fixed[at] is not None else self.vocabulary.choice(self.words, at).ways
            self._ways[at] = ways
        return ways

    def phrase(self, phrases: Phrases, at: int) -> int:
        """How many tokens the longest of the phrases has that begins at a place; 0 if none does."""
        if at < len(self.said):
            for words in phrases.get(self.said[at], ()):
                if tuple(self.said[at : at + len(words)]) == words:
                    return len(words)
        return 0

    def run(self, phrases: Phrases, at: int) -> int:
        """The place after all the phrases that follow one another from a place on."""
        while size := self.phrase(phrases, at):
            at += size
        return at

    def slice(self, first: int, end: int) -> str:
        """The text from a token to the one before `end`."""
        return self.text[self.starts[first] : self.ends[end - 1]]

    def after(self, offset: int) -> int:
        """The first token that begins at an offset or behind it."""
        return next((at for at, start in enumerate(self.starts) if start >= offset), len(self.said))


def kept_plain(kitchen: Kitchen) -> dict[str, Plain]:
    """What is kept of a kitchen's plain words, by their text; it may be emptied at any time."""
    kept: dict[str, Plain] = parser_of(kitchen).vocabulary.plain
    return kept


def plain_of(text: str, kitchen: Kitchen) -> Plain:
    """The plain words of a text: equal ones are cut once."""
    kept = kept_plain(kitchen)
    found = kept.get(text)
    if found is None:
        if len(kept) >= _MOST_KEPT or len(text) > _LONG:
            kept.clear()
        found = kept[text] = Plain(text, parser_of(kitchen).vocabulary)
    return found


def phrases(said: Iterable[str], language: str) -> Phrases:
    """Phrases of a word list as they are looked up."""
    elision, table = Elision(language), dict[str, list[tuple[str, ...]]]()
    for phrase in said:
        words = tuple(elision.parted(phrase))
        table.setdefault(words[0], []).append(words)
    return {first: tuple(sorted(rows, key=lambda row: -len(row))) for first, rows in table.items()}
