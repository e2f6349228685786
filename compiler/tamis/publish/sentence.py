"""One line of the method as it is printed.

The cook's sentence stays; what a bracket held is marked, so that an eye that comes back from the pan finds the measure,
the time and the cue. What follows an ingredient's first comma belongs to the table. A temperature gets its twin in the
other scale, inches get their centimetres, and a part of a measure (*half of 300 g*) the amount it comes to.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from tamis.patterns import pattern
from tamis.publish.degrees import twins, with_twins
from tamis.publish.words import PageWords
from tamis.quantity.degrees import with_sign
from tamis.quantity.duration import Duration
from tamis.quantity.inches import with_centimetres
from tamis.reading.clauses import Cue, Ingredient, Naming, Read, Reference, Tending
from tamis.record import NamedTuple
from tamis.source import NOWHERE, Span
from tamis.syntax.document import Clause, Part
from tamis.syntax.items import Quantity
from tamis.typed import Literal

ONE_LINE = 30
"""A length of time is set in one line; more characters than this would not fit a phone's."""
_SPACE = pattern(r"\s+")
_KEPT = pattern(r" (?<=[\d¼-¾⅐-⅞] )(?=[^\s(])")
_FRACTION = pattern(r"(?<![\d/.,])(?:(\d+)[ -])?(\d/\d)(?![\d/])")
_VULGAR = {"1/2": "½", "1/3": "⅓", "2/3": "⅔", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞"}
_NAMED = (Naming, Reference)
_DOTS = frozenset("-*•")
_LIST_MARK = pattern(r"\A(?:\d{1,3}[.)]|[-*•])[ \t]+(?=\S)")


PieceKind = Literal["", "measure", "time", "cue"]


class Piece(NamedTuple):
    """A stretch of the sentence: plain words, or a "measure", a "time" (with its length), a "cue"."""

    text: str
    kind: PieceKind = ""
    length: Duration | None = None


def pieces_of(
    parts: Iterable[Part],
    reads: Iterable[Read],
    comes_to: Mapping[Span, str],
    words: PageWords,
    knobs: Collection[Span] = (),
) -> list[Piece]:
    """The pieces of an action. `comes_to` gives the amounts of parts of a measure, by clause; `knobs` are the clauses
    whose degrees are an oven's."""
    understood = {read.clause.span.start: read for read in reads}
    pieces: list[Piece] = []
    for part in parts:
        if isinstance(part, Clause):
            pieces += _clause(part, understood.get(part.span.start), words, part.span in knobs)
            if comes_to and part.span in comes_to:
                pieces.append(Piece(f" ({comes_to[part.span]})", "measure"))
        else:
            pieces.append(Piece(_plain(part.text if pieces else _without_mark(part.text))))
    return [_with_centimetres(piece, words.language) for piece in pieces]


def _without_mark(text: str) -> str:
    """The words without the number or the dot of a list before them."""
    first = text[:1]
    return _LIST_MARK.sub("", text, count=1) if first.isdecimal() or first in _DOTS else text


def _with_centimetres(piece: Piece, language: str) -> Piece:
    text = with_centimetres(piece.text, language)
    return piece if text is piece.text else piece._replace(text=text)


def plain_text(pieces: Iterable[Piece]) -> str:
    """The sentence without marks."""
    return "".join([piece.text for piece in pieces])


def as_html(pieces: Iterable[Piece]) -> str:
    """The sentence as HTML."""
    return "".join([_html(piece) for piece in pieces])


def kept_together(text: str) -> str:
    """Text in which no line ends between a number and its unit."""
    return _KEPT.sub("\u00a0", text).replace("≈ ", "≈\u00a0") if " " in text else text


def _html(piece: Piece) -> str:
    words, kind, length = piece
    from html import escape  # and with it all the names of characters, which a terminal wants nothing of

    text = escape(words, quote=False)
    if not text.isascii():
        text = text.replace(" × ", "\u00a0×\u00a0").replace(" °", "\u00a0°")
    if not kind:
        return text
    if kind == "cue":
        return f'<span class="cue">{text}</span>'
    text = kept_together(text)
    if kind == "measure":
        return f'<b class="measure">{text}</b>'
    from tamis.publish.iso import iso_duration, least

    return f'<time datetime="{iso_duration(least(length))}">{text}</time>' if length else text


def _plain(text: str) -> str:
    """Words as printed: a line that continues is one line, and an escaped bracket a bracket."""
    if text.isprintable() and "\\" not in text and "  " not in text:
        return text
    return _SPACE.sub(" ", text.replace("\\[", "[").replace("\\]", "]"))


def _with_fractions(text: str) -> str:
    """`2 1/4 tsp` as it is printed: 2¼ tsp. A fraction that no cup has stays as it is."""
    if "/" not in text:
        return text
    return _FRACTION.sub(lambda found: (found[1] or "") + _VULGAR[found[2]] if found[2] in _VULGAR else found[0], text)


def _clause(clause: Clause, read: Read | None, words: PageWords, oven: bool) -> list[Piece]:
    """The pieces of a clause; one that was not understood stays as written."""
    if read is None:
        return [Piece(_plain(clause.text))]
    if isinstance(read, Ingredient):
        return _ingredient(clause, read, words, oven)
    if isinstance(read, _NAMED):
        return _marked(clause.text, *_first_measure(clause))
    kind: PieceKind = "cue" if isinstance(read, Cue) else ""
    length = read.every if isinstance(read, Tending) else getattr(read, "duration", None)
    if length is None and not _has_degrees(clause):
        return [Piece(_plain(clause.text), kind)]
    return _timed(clause, length, kind, words, oven)


def _ingredient(clause: Clause, read: Ingredient, words: PageWords, oven: bool) -> list[Piece]:
    """Measure and name; the words up to the comma."""
    cut = _first_comma(clause, read, words)
    text = clause.text[:cut] + "".join(_conditions(clause.text[cut:], words))
    if any(part.strip().lower().startswith(words.apart) for part in read.preparation.split(",")):
        text = clause.text  # *1 lemon, zested*: without the comma's words the sentence would be another
    if read.at:
        text = with_twins(text, twins(clause, oven))
    named = read.name_span.start - clause.inner
    if not read.measured or read.measure_span == NOWHERE:
        return _marked(text, -1, -1)
    start, end = (place - clause.inner for place in read.measure_span)
    end = min(end, named) if start < named else start
    return _marked(text, start, len(words.between.sub("", text[:end].rstrip())))


def _conditions(behind: str, words: PageWords) -> list[str]:
    """What stands behind a comma and tells whether the food goes in at all: *if needed*."""
    return [f" ({part.strip()})" for part in behind.split(",") if part.strip().lower() in words.conditions]


def _marked(text: str, start: int, end: int) -> list[Piece]:
    """Words with a measure in them, if there is one between the two places."""
    if not 0 <= start < end:
        return [Piece(_plain(text))]
    return _between(text[:start], Piece(_with_fractions(_plain(text[start:end])), "measure"), text[end:])


def _between(before: str, marked: Piece, after: str, kind: PieceKind = "") -> list[Piece]:
    """A marked piece and the words around it, as far as there are any."""
    pieces = [Piece(_plain(before), kind)] if before else []
    if marked.text:
        pieces.append(marked)
    if after:
        pieces.append(Piece(_plain(after), kind))
    return pieces


def _first_measure(clause: Clause) -> tuple[int, int]:
    """The first weight or volume of a clause such as `2 tbsp of the duck fat`."""
    measured = (i for i in clause.items.items if isinstance(i, Quantity) and i.kind in ("mass", "volume"))
    return next((item.span for item in measured), (-1, -1))


def _first_comma(clause: Clause, read: Ingredient, words: PageWords) -> int:
    """Where the table's part begins: the first comma after the name, round brackets passed over. What is measured
    behind it (`75 g butter, plus 10 g for the tin`) belongs to the sentence."""
    if "," not in clause.text:
        return len(clause.text)
    named = read.name_span.end - clause.inner
    if _measures_more(clause, named, words):
        return len(clause.text)
    at = clause.text.find(",", named)
    if at < 0 or ("(" not in clause.text and clause.text[at + 1 : at + 2] == " "):
        return at if at >= 0 else len(clause.text)
    for item, key in zip(clause.items.items, clause.items.keys, strict=True):
        if key == "," and item.span.start >= named:
            return item.span.start
    return len(clause.text)


def _measures_more(clause: Clause, named: int, words: PageWords) -> bool:
    """Whether more of the food is measured behind its name."""
    if not any(word in clause.text for word in words.plus):
        return False
    items, keys = clause.items.items, clause.items.keys
    return any(
        keys[at - 1] in words.plus and isinstance(items[at], Quantity) and items[at - 1].span.start >= named
        for at in range(1, len(items))
    )


def _timed(clause: Clause, length: Duration | None, kind: PieceKind, words: PageWords, oven: bool) -> list[Piece]:
    """Words with the lengths of time in them marked, and the twin of a temperature put in."""
    text = clause.text
    start, end = _stretch(clause, words) if length else (len(text), len(text))
    degrees = twins(clause, oven) if _has_degrees(clause) else []
    before = with_twins(text[:start], [one for one in degrees if one.at <= start])
    after = with_twins(text[end:], [one._replace(at=one.at - end) for one in degrees if one.at >= end > start])
    if _has_degrees(clause):
        before, after = with_sign(before), with_sign(after)
    return _between(before, Piece(_with_fractions(_plain(text[start:end])), "time", length), after, kind)


def _has_degrees(clause: Clause) -> bool:
    return "#temperature" in clause.items.keys or "#gas" in clause.items.keys


def _stretch(clause: Clause, words: PageWords) -> tuple[int, int]:
    """From the first to the last length of time in a clause: `4 h, up to 18 h`, `overnight`."""
    spans = [
        item.span
        for item, key in zip(clause.items.items, clause.items.keys, strict=True)
        if key in words.night or (isinstance(item, Quantity) and item.kind == "time")
    ]
    if not spans:
        return len(clause.text), len(clause.text)
    last = spans[-1].end if spans[-1].end - spans[0].start <= ONE_LINE else spans[0].end
    return spans[0].start, last
