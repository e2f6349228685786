"""A clause cut into tokens: numbers, units, marks, and every word by itself.

What a word is depends on what stands before it: `g` after a number is a unit, `to` between numbers makes a range, `x`
a size. One regular expression cuts the text, the rest is looked up; so a new unit or a word of another language needs
no new grammar. Nothing is left out: a sign that nothing can be made of is a token too (ODD), which no production
takes.
"""

from __future__ import annotations

import re
from itertools import islice

from tamis.patterns import pattern
from tamis.quantity.degrees import degree_words
from tamis.quantity.number_words import number_words
from tamis.syntax.elision import Elision
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.quantity.units import UnitKind, Units

_FRACTIONS = "¼-¾⅐-⅞"
_PLAIN_SIGNS = (
    ("’", "'"), ("‐", "-"), ("‑", "-"), ("−", "–"), ("⁄", "/"), ("\u00a0", " "), ("\u2009", " "), ("\u202f", " "),
)  # fmt: skip
_UNIT_KINDS: dict[UnitKind, str] = {"mass": "MASS", "volume": "VOLUME", "length": "LENGTH", "time": "TIME"}
_SIGNS = {
    ",": "COMMA", "/": "SLASH", "+": "PLUS", "@": "AT", "%": "PERCENT", "×": "TIMES", "(": "OPEN", ")": "CLOSE",
    "°": "DEGREE", "℃": "DEGREE", "℉": "DEGREE",
}  # fmt: skip
_DASHES = frozenset("‒–—―-")
_DIGITS = frozenset("0123456789¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞")
UNITS = frozenset(("MASS", "VOLUME", "LENGTH", "TIME", "DEGREE", "PERCENT", "INCH"))


class Choice:
    """What a token may be: classes with the number of tokens that they take, the likeliest first. There is one object
    for equal ways, so that whoever remembers what a choice led to need not compare them."""

    __slots__ = ("ways",)

    def __init__(self, ways: tuple[tuple[str, int], ...]) -> None:
        self.ways = ways


def _one(kind: str) -> Choice:
    return Choice(((kind, 1),))


ONE = {
    kind: _one(kind)
    for kind in (
        "NUMBER", "MISWRITTEN", "RANGE", "TIMES", "MASS", "VOLUME", "LENGTH", "TIME", "DEGREE", "PERCENT", "GAS",
        "OPEN", "CLOSE", "ODD", "COMMA", "SLASH", "PLUS", "AT", "INCH",
    )
}  # fmt: skip
# A number in letters: a count (two eggs) or just a word (until one side is brown).
NUMBER_WORD = Choice((("NUMWORD", 1), ("ANY", 1)))
# *Between* before a range of these.
_HEDGED = Choice((("HEDGE", 1), ("ANY", 1)))
_BETWEEN = frozenset(("TIME", "DEGREE", "LENGTH"))
_CHOICES: dict[str, Choice | None] = {**ONE, "WORD": None, "NUMWORD": NUMBER_WORD}
"""What each kind of token may be; of a word the vocabulary tells."""
END = _one("$END")
COMMA, _NUMBER, _MISWRITTEN, _VOLUME = ONE["COMMA"], ONE["NUMBER"], ONE["MISWRITTEN"], ONE["VOLUME"]


def _looked_up(text: str) -> str:
    """A text as its words are looked up: in lower case, with plain apostrophes, hyphens, strokes and spaces, and a
    minus as a dash. No letter may take more room than before, or the places would not fit.

    So the regular expression of tokens has no set of far-flung signs: each takes as long to compile as a small module
    to import."""
    lower = text.lower()
    if text.isascii():
        return lower
    if len(lower) != len(text):
        lower = "".join(small if len(small := letter.lower()) == 1 else letter for letter in text)
    for sign, plain in _PLAIN_SIGNS:
        if sign in lower:
            lower = lower.replace(sign, plain)
    return lower


class Cut:
    """The tokens of a clause: what each is if it is no word, its word as it is looked up (else ""), and its place.

    `opened` are its round brackets; `timed` tells that a word of it is one of time."""

    __slots__ = ("ends", "fixed", "opened", "starts", "text", "timed", "words")

    def __init__(self, text: str) -> None:
        self.text = text
        self.opened = 0
        self.timed = False
        self.fixed: list[Choice | None] = []
        self.words: list[str] = []
        self.starts: list[int] = []
        self.ends: list[int] = []

    @property
    def numbers(self) -> int:
        """How many numbers are written in figures; -1 if any stands in letters, which may be just a word."""
        if NUMBER_WORD in self.fixed:
            return -1
        return self.fixed.count(_NUMBER) + self.fixed.count(_MISWRITTEN)


class Cutter:
    """Cuts clauses of one language into tokens."""

    def __init__(self, language: str, units: Units) -> None:
        lists = word_lists(language, "clause")
        self.numbers = number_words(language).ones
        self._range = frozenset(lists["between"]["range"])
        self._times = frozenset(lists["between"]["times"])
        self._joins = {"TIME": frozenset(lists["between"]["range-of-times"]), "LENGTH": self._times}
        self._inch = frozenset(lists["open"]["INCH"])
        self._hot = int(lists["signs"]["hot"][0])
        self._letters = frozenset(lists["signs"]["letters"])
        self._at = frozenset(lists["closed"]["AT"])
        self._signs = _phrases((("DEGREE", degree_words(language).phrases), ("PERCENT", lists["signs"]["percent"])))
        self._between, self._and = frozenset(lists["between"]["between"]), frozenset(lists["closed"]["AND"])
        self._gas = _phrases((("GAS", lists["signs"]["gas"]),))
        self._dozens = _phrases((("NUMWORD", lists["dozens"]["words"]),))
        self._units = units
        self._kinds: dict[str, str] = {}
        self._alone: dict[str, str] = {}  # of those that begin no longer unit
        self._unit_words = _most_words(units)
        elided = Elision(language).words
        # The words by which a time may stand in letters: the units, and *overnight*.
        self._lengths = frozenset((*units.names("time"), *lists["open"]["OVERNIGHT"]))
        self._special = self._lengths | self._between | self.numbers.keys() | self._gas.keys() | self._dozens.keys()
        self._by_means, self._spoons = frozenset(lists["said"]["by-means"]), frozenset(lists["said"]["spoons"])
        self._numbered = lists["numbered"]["words"]
        token = _pattern(self._numbered, elided, number_words(language).joins)
        self._token = re.compile(token, re.VERBOSE)
        self._known: dict[str, tuple[str, str, int]] = {}
        self._settled: dict[str, tuple[Choice | None, str, int, int]] = {}  # of those that are one thing in most places
        after = "|".join(map(re.escape, self.numbers))
        letters = "".join(sorted(self._letters))
        self._degrees_next = pattern(rf"\s*[0-9][0-9.,/–-]*\s*(?:°|[{letters}]\b)")
        self._number_next = pattern(rf"\s*(?:[0-9{_FRACTIONS}]|(?:{after})\b)", re.IGNORECASE)

    def cut(self, text: str) -> Cut:
        """The tokens of a text, in order."""
        cut, lower = Cut(text), _looked_up(text)
        at, last, special = 0, "", False
        known, settled, special_words, alone = self._known, self._settled, self._special, self._alone
        fixed, words, starts, ends = cut.fixed, cut.words, cut.starts, cut.ends
        pieces = self._token.findall(lower)
        pieces.reverse()
        while pieces:
            piece = pieces.pop()
            if last not in _BEFORE_UNITS and (one := settled.get(piece)):
                choice, word, start, size = one
                fixed.append(choice)
                words.append(word)
                starts.append(start + at)
                at += size
                ends.append(at)
                continue
            kind, word, start = known.get(piece) or self._piece(piece, lower, at)
            start += at
            end = at = at + len(piece)
            if kind == "WORD":
                if last == "NUMBER" and (unit := alone.get(text[start:at])):
                    kind, word, end = unit, "", at + (text[at : at + 1] == ".")
                elif last in _BEFORE_UNITS or word in special_words:
                    special = special or word in special_words
                    kind, end = self._word(text, word, start, at, last, cut)
                    word = word if kind in _WORDS else ""
            elif kind == "HYPHEN":
                kind, start, end = self._hyphened(text, at, pieces, last) or ("ODD", start, at)
            elif kind == "OPEN":
                cut.opened += 1
                kind = "OPEN" if cut.opened <= _DEEPEST else "ODD"
            fixed.append(_CHOICES[kind])
            words.append(word)
            starts.append(start)
            ends.append(end)
            last = "NUMBER" if kind == "NUMWORD" else kind
            if end != at:
                at = self._cut_again(pieces, lower, at, end)
        _drop_last_comma(cut)
        if words and words[0] in self._by_means:
            self._settle_spoons(cut, lower)
        if special:
            _settle_number_words(cut)
            self._settle_between(cut)
        return cut

    def _piece(self, piece: str, lower: str, at: int) -> tuple[str, str, int]:
        """The kind of a piece, its word if it is one, and how many spaces it begins with. What no neighbour changes is
        kept, but for numbers, of which there is no end."""
        said = piece.lstrip()
        lead, sign, end = len(piece) - len(said), said[0], at + len(piece)
        if sign in _DIGITS:
            if (said in self._numbered and not _goes_on(lower, end)) or said[-1] not in _DIGITS:
                return "WORD", said, lead
            return "MISWRITTEN" if "," in said else "NUMBER", "", lead
        if sign in _DASHES:
            behind = lower[end:].lstrip()[:1]
            return "RANGE" if behind and behind in _DIGITS else "HYPHEN" if sign == "-" else "ODD", "", lead
        if said == "°":
            return "ODD" if _goes_on(lower, end) else "DEGREE", "", lead
        is_word = sign.isalnum() and not sign.isdecimal()
        found = ("WORD", said, lead) if is_word else (_SIGNS.get(sign, "ODD"), "", lead)
        if len(self._known) < _MOST_KEPT:
            self._known[piece] = found
            if said not in self._special and sign != "(":
                self._settled[piece] = _CHOICES[found[0]], found[1], lead, len(piece)
        return found

    def _cut_again(self, pieces: list[str], lower: str, at: int, end: int) -> int:
        """Go on behind a token that ends elsewhere than its piece, which ends at a place: with a unit of two words, or
        the × of `9x13`."""
        begin, more = end, list[str]()
        while at != end and (pieces or at > end):
            if at > end:
                more.append(self._token.match(lower, end)[0])  # type: ignore[index]  # there is more of the piece
                end += len(more[-1])
            else:
                at += len(pieces.pop())
        pieces += reversed(more)
        return begin

    def _settle_between(self, cut: Cut) -> None:
        """*Between 10 and 15 min* is a range, where a unit tells that nothing is divided."""
        fixed, words = cut.fixed, cut.words
        for at in range(len(words) - 4):
            first, second, unit = fixed[at + 1], fixed[at + 3], fixed[at + 4]
            numbers = first is second is _NUMBER and unit is not None and unit.ways[0][0] in _BETWEEN
            if numbers and words[at] in self._between and words[at + 2] in self._and:
                fixed[at], fixed[at + 2] = _HEDGED, ONE["RANGE"]
                words[at] = words[at + 2] = ""

    def _settle_spoons(self, cut: Cut, lower: str) -> None:
        """*Using 2 teaspoons*: behind such a word a measure of nothing is the thing that is used."""
        fixed, words = cut.fixed, cut.words
        for at, choice in enumerate(fixed):
            said = lower[cut.starts[at] : cut.ends[at]]
            if choice is _VOLUME and said in self._spoons and (at + 1 == len(fixed) or fixed[at + 1] is COMMA):
                fixed[at], words[at] = None, said

    def _word(self, text: str, word: str, start: int, stop: int, last: str, cut: Cut) -> tuple[str, int]:
        """The class of a word that may be more than a word where it stands, and where it ends."""
        if last == "NUMBER":
            kind, end = self._after_number(text, word, start, stop, cut)
            if kind:
                return kind, end
        elif last in self._joins and word in self._joins[last] and self._number_next.match(text, stop):
            if last != "TIME":
                return "TIMES", stop
            if not self._degrees_next.match(text, stop):  # in French a range is joined by the word before degrees
                return "RANGE", stop
        if word not in self._special:
            return "WORD", stop
        cut.timed = cut.timed or word in self._lengths
        for phrases in (self._dozens, self._gas):
            found = _longest(phrases, word, text, start)
            if found and (found[0] != "GAS" or self._number_next.match(text, found[1])):
                return found
        return ("NUMWORD", stop) if word in self.numbers else ("WORD", stop)

    def _after_number(self, text: str, word: str, start: int, stop: int, cut: Cut) -> tuple[str, int]:
        unit = self._unit(text, start, stop)
        if unit:
            return unit
        if (word in self._range or word in self._times) and self._number_next.match(text, stop):
            return ("TIMES" if word in self._times else "RANGE"), stop
        if word[0] in self._times and word[1:2].isdigit():  # `9x13`
            return "TIMES", start + 1
        if word in self._inch and ONE["TIMES"] in cut.fixed:
            return "INCH", stop
        if text[start:stop] in self._letters and self._is_hot(cut):
            return "DEGREE", stop
        return _longest(self._signs, word, text, start) or ("", stop)

    def _is_hot(self, cut: Cut) -> bool:
        """Whether a letter behind the last number is one of degrees: `200C`, `at 18C`, `at 16–18C`."""
        back = 4 if ONE["RANGE"] in cut.fixed[-2:-1] else 2
        placed = len(cut.words) >= back and cut.words[-back] in self._at
        return placed or _number(cut.text[cut.starts[-1] : cut.ends[-1]]) >= self._hot

    def _hyphened(self, text: str, at: int, pieces: list[str], last: str) -> tuple[str, int, int] | None:
        """The unit behind a hyphen: `2-cm`, `3-litre`."""
        name = pieces[-1] if last == "NUMBER" and pieces else " "
        unit = None if name[0].isspace() else self._unit(text, at, at + len(name))
        return (unit[0], at, unit[1]) if unit else None

    def _unit(self, text: str, start: int, stop: int) -> tuple[str, int] | None:
        """The kind of unit that stands here, and where it ends; several words (`fl oz`) before one."""
        name = text[start:stop]
        words = self._unit_words.get(name.lower())
        if words:
            ends = [found.end() for found in islice(_next_words(text, stop), words - 1)]
            for end in reversed(ends):
                if kind := self._kind(text[start:end]):
                    return kind, end + (len(ends) > 1 and text[end : end + 1] == ".")
        kind = self._kind(name)
        if not kind:
            return None
        if not words and len(self._alone) < _MOST_KEPT:
            self._alone[name] = kind
        return kind, stop + (text[stop : stop + 1] == ".")

    def _kind(self, name: str) -> str:
        known = self._kinds.get(name)
        if known is None:
            unit = self._units.get(name)
            known = _UNIT_KINDS.get(unit.kind, "") if unit else ""
            if len(self._kinds) < _MOST_KEPT:
                self._kinds[name] = known
        return known


_WORDS = frozenset(("WORD", "NUMWORD"))
_BEFORE_UNITS = frozenset(("NUMBER", "TIME", "LENGTH"))
_MOST_KEPT = 2_000
# Round brackets in one clause: more are no cook's.
_DEEPEST = 20
_NEXT_WORD = pattern(r"\.?[ \t\u00a0]+[^\W\d_]+")


def _most_words(units: Units) -> dict[str, int]:
    """How many words the longest unit has that begins with a word, where that is more than one."""
    most: dict[str, int] = {}
    for name in units.spellings:
        first, *more = name.split(" ")
        if more:
            most[first] = max(most.get(first, 0), 1 + len(more))
    return most


def _next_words(text: str, at: int) -> Iterator[re.Match[str]]:
    """The words that follow a place, one after another."""
    found = _NEXT_WORD.match(text, at)
    while found:
        yield found
        found = _NEXT_WORD.match(text, found.end())


def _number(text: str) -> float:
    return float(text) if text.replace(".", "", 1).isdigit() else 0


def _pattern(numbered: tuple[str, ...], elided: tuple[str, ...], joins: tuple[str, ...]) -> str:
    """The regular expression of tokens with the spaces before them, for text as it is looked up. `numbered` are words
    that hold digits (# for each number), `elided` small words that end in an apostrophe and are words of their own
    before the next, `joins` what may stand between a number and its fraction (1 and 1/2)."""
    joined = "".join(rf"|\ {re.escape(word)}\ " for word in joins)
    with_digits = (re.escape(word).replace(r"\#", "[0-9]+").replace("#", "[0-9]+") + r"\b" for word in numbered)
    odd_words = "".join([f"{word}|" for word in (*with_digits, *(re.escape(word) + r"(?=\w)" for word in elided))])
    return rf"""\s*+(?:{odd_words}[a-z][\w'-]*+
    | [0-9]++(?!,[0-9])(?:\.[0-9]+ | (?:[ -]{joined})[0-9]+/[0-9]+(?![0-9/]) | /[0-9]+
        | (?:[ ]{joined})?[{_FRACTIONS}])?
    | [0-9]+,[0-9]+(?:[.,][0-9]+)* | [ ]?[{_FRACTIONS}] | °\s*[cf]?(?!\w) | (?![{_FRACTIONS}])[^\W\d_][\w'-]*+ | \S)"""


def _goes_on(lower: str, at: int) -> bool:
    """Whether a word goes on at a place."""
    after = lower[at : at + 1]
    return after.isalnum() or after == "_"


def _phrases(groups: tuple[tuple[str, tuple[str, ...]], ...]) -> _Phrases:
    """Phrases in lower case by their first word, the longest first, each with its class."""
    table: dict[str, list[tuple[str, str]]] = {}
    for kind, phrases in groups:
        for phrase in phrases:
            table.setdefault(phrase.partition(" ")[0].lower(), []).append((phrase.lower(), kind))
    return {first: tuple(sorted(rows, key=lambda row: -len(row[0]))) for first, rows in table.items()}


def _longest(phrases: _Phrases, word: str, text: str, start: int) -> tuple[str, int] | None:
    """The class of the longest phrase that begins with a word, and where it ends; part of a longer word is none."""
    for phrase, kind in phrases.get(word, ()):
        end = start + len(phrase)
        after = text[end : end + 1]
        if text[start:end].lower().replace("\u00a0", " ") == phrase and not (after.isalnum() or after in HYPHENS):
            return kind, end
    return None


_Phrases = dict[str, tuple[tuple[str, str], ...]]
HYPHENS = frozenset("‐‑-")
"""A plain hyphen, and those that typesetters write."""


def _drop_last_comma(cut: Cut) -> None:
    """A comma of the sentence may stand within the bracket: *1.2 kg cod, skinned,*."""
    if len(cut.fixed) > 1 and cut.fixed[-1] is COMMA:
        for tokens in (cut.fixed, cut.words, cut.starts, cut.ends):
            tokens.pop()


def _settle_number_words(cut: Cut) -> None:
    """A number in letters that has its unit after it is a number like any other: two cups, two to three hours."""
    fixed = cut.fixed
    for at, choice in enumerate(fixed):
        if choice is not NUMBER_WORD:
            continue
        after = at + 1
        if after + 1 < len(fixed) and fixed[after] is ONE["RANGE"]:
            after += 2
        following = fixed[after] if after < len(fixed) else None
        if following is not None and following.ways[0][0] in UNITS:
            fixed[at] = ONE["NUMBER"]
