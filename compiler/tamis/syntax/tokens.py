"""The words of a clause as tokens for its grammar.

What a word is depends on what stands before it: `in` after a number may be a unit, `to` between numbers makes a
range, `x` a size. One regular expression cuts the text; the rest is looked up, so that a new unit in `units.txt`
needs no new grammar. Words in a row are one token: the grammar has nothing to say about them.
"""

from __future__ import annotations

import re
from functools import cache
from typing import TYPE_CHECKING, Any

from lark.lexer import Lexer

from tamis.assets import asset_text
from tamis.quantity.number_words import number_words
from tamis.quantity.units import Units
from tamis.syntax.token import Token

if TYPE_CHECKING:
    from collections.abc import Iterator

_FRACTIONS = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_TOKEN = re.compile(
    rf"""\s*(?:
      (?P<MISWRITTEN>[0-9]+,[0-9]+(?:[.,][0-9]+)*)
    | (?P<NUMBER>(?!00\b|[0-9]+-hole\b)(?:[0-9]+[ \u00a0-][0-9]+/[0-9]+(?![0-9/]) | [0-9]+/[0-9]+
        | [0-9]*[ \u00a0]?[{_FRACTIONS}] | [0-9]+(?:\.[0-9]+)?))
    | (?P<WORD>(?:[^\W\d_]|00\b|[0-9]+-hole\b)[\w’'-]*)  # 00 flour is a name, a 12-hole tin a kind of tin
    | (?P<RANGE>[–—−-](?=\s*[0-9{_FRACTIONS}]))
    | (?P<HYPHEN>-(?=[^\W\d_]))
    | (?P<DEGREE>°\s*[CF]?(?!\w))
    | (?P<PERCENT>%)
    | (?P<TIMES>×)
    | (?P<OPEN>\()
    | (?P<CLOSE>\))
    | (?P<MARK>\S)
    )""",
    re.VERBOSE,
)
# A word that is neither a number nor the begin of one: nothing but more words can be made of a row of these.
WORDS = number_words("en").ones
_PLAIN = rf"(?!(?:{'|'.join(WORDS)}|(?:half a |a )?dozen|gas)\b(?!-))[^\W\d_{_FRACTIONS}][\w’'-]*"
ROW_OF_WORDS = re.compile(rf"\s*({_PLAIN}(?:\s+{_PLAIN})*)\s*", re.IGNORECASE)
_AFTER_WHICH_WORDS_ARE_MORE = frozenset(("NUMBER", "TIME", "LENGTH"))
_DOZEN = re.compile(r"(?:(?:half )?a )?dozen\b(?!-)", re.IGNORECASE)
_BEFORE_NUMBER = re.compile(rf"\s*(?:[0-9{_FRACTIONS}]|(?:{'|'.join(WORDS)})\b)", re.IGNORECASE)
_GAS = re.compile(rf"gas(?:\s+mark)?(?=\s*[0-9{_FRACTIONS}])", re.IGNORECASE)
_DEGREES = re.compile(r"degrees?(?:\s+(?:celsius|fahrenheit|C|F)\b)?", re.IGNORECASE)
# From 30 on nobody counts cups.
_HOT = re.compile(r"(?<![\d.,])(?:[3-9]\d|[1-9]\d\d)[ \u00a0]?\Z")
_PERCENT = re.compile(r"per ?cent\b", re.IGNORECASE)
_SECOND_WORD = re.compile(r"[ \t]+([^\W\d_]+)")
_KINDS = {"mass": "MASS", "volume": "VOLUME", "length": "LENGTH", "time": "TIME"}


class ClauseLexer(Lexer):
    """Lark's lexer for `clause.lark`."""

    def __init__(self, _conf: Any) -> None:
        self._units = Units.load(asset_text("grammar/units.json"))
        self._kinds: dict[str, str] = {}

    def lex(self, data: Any, *_: Any) -> Iterator[Token]:  # type: ignore[override]  # lighter than Lark's tokens
        """The tokens of a clause, in order."""
        text = str(data)
        at, end, last = 0, len(text), ""
        run = -1
        run_end = 0
        while at < end:
            if run >= 0 or last not in _AFTER_WHICH_WORDS_ARE_MORE:
                row = ROW_OF_WORDS.match(text, at)
                if row:
                    start, run_end = row.span(1)
                    run = start if run < 0 else run
                    at = run_end
            found = _TOKEN.match(text, at)
            if found is None:
                break
            kind = found.lastgroup or ""
            start, stop = found.span(kind)
            if kind in ("WORD", "HYPHEN"):
                kind, start, stop = self._word(text, kind, start, stop, last if run < 0 else "WORD")
            if kind == "WORD":
                run = start if run < 0 else run
                run_end = at = stop
                continue
            if run >= 0:
                yield Token("WORDS", text[run:run_end], run, run_end)
                run = -1
            yield Token(kind, text[start:stop], start, stop)
            last, at = kind, stop
        if run >= 0:
            yield Token("WORDS", text[run:run_end], run, run_end)

    def _word(self, text: str, kind: str, start: int, stop: int, last: str) -> tuple[str, int, int]:
        """What a word is after the token before it, and where it begins and ends."""
        if kind == "HYPHEN":
            found = _TOKEN.match(text, start + 1)
            if last != "NUMBER" or found is None:
                return "MARK", start, stop
            unit = self._unit(text, start + 1, found.end())
            return (unit[0], start + 1, unit[1]) if unit else ("MARK", start, stop)
        word = text[start:stop]
        if last == "NUMBER":
            after = self._after_number(text, word, start, stop)
            if after:
                return after
        if last == "TIME" and word == "to" and _BEFORE_NUMBER.match(text, stop):
            return "RANGE", start, stop
        if last == "LENGTH" and word == "x" and _BEFORE_NUMBER.match(text, stop):
            return "TIMES", start, stop
        return self._opening(text, word, start, stop)

    def _after_number(self, text: str, word: str, start: int, stop: int) -> tuple[str, int, int] | None:
        unit = self._unit(text, start, stop)
        if unit:
            return unit[0], start, unit[1]
        if word in ("to", "or", "x") and _BEFORE_NUMBER.match(text, stop):
            return ("TIMES" if word == "x" else "RANGE"), start, stop
        if word[0] in "xX" and word[1:2].isdigit():  # `9x13`
            return "TIMES", start, start + 1
        if word in ("C", "F") and _HOT.search(text, 0, start):  # `200C`
            return "DEGREE", start, stop
        for pattern, kind in ((_DEGREES, "DEGREE"), (_PERCENT, "PERCENT")):
            found = pattern.match(text, start)
            if found:
                return kind, start, found.end()
        return None

    def _opening(self, text: str, word: str, start: int, stop: int) -> tuple[str, int, int]:
        """A word that needs nothing before it: a number in words, a gas mark, or just a word."""
        lower = word.lower()
        if lower in WORDS:
            return "NUMBER", start, stop
        if lower in ("half", "a", "dozen"):
            found = _DOZEN.match(text, start)
            if found:
                return "NUMBER", start, found.end()
        if lower == "gas":
            found = _GAS.match(text, start)
            if found:
                return "GAS", start, found.end()
        return "WORD", start, stop

    def _unit(self, text: str, start: int, stop: int) -> tuple[str, int] | None:
        """The kind of unit that stands here, and where it ends; two words (`fl oz`) before one."""
        more = _SECOND_WORD.match(text, stop)
        if more:
            kind = self._kind(f"{text[start:stop]} {more[1]}")
            if kind:
                return kind, more.end()
        kind = self._kind(text[start:stop])
        if not kind:
            return None
        return kind, stop + (text[stop : stop + 1] == ".")

    def _kind(self, name: str) -> str:
        known = self._kinds.get(name)
        if known is None:
            unit = self._units.get(name)
            known = self._kinds[name] = _KINDS.get(unit.kind, "") if unit else ""
        return known


@cache
def clause_grammar() -> str:
    """The text of the clause grammar."""
    return asset_text("grammar/clause.lark")
