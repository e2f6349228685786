"""A recipe as people write it elsewhere: which of its lines are its list, and how its first line would be written here.

Loaded only for a text without brackets.
"""

from __future__ import annotations

from tamis.checks.words import check_words
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.reading.bracketed import bracketed_text
from tamis.reading.clause_reader import read_alone
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.checks.view import View
    from tamis.kitchen.house import Kitchen

_MARKED = pattern(r"\s*(?:[-*•–—]\s+|\d{1,2}[.)]\s+)?")
_SENTENCE = pattern(r"[^.!?]+(?:[.!?](?!\s|\Z)[^.!?]*)*[.!?]?")
_WORD = pattern(r"[^\W\d_][\w'’-]*")
_FEWEST = 2
_LONGEST_TITLE = 60


class Pasted(NamedTuple):
    """Such a recipe: the line that shows it, whether it has a list, a title for it, and a sentence of its method with
    the brackets that it lacks."""

    span: Span
    listed: bool
    title: str
    example: str


class _Line(NamedTuple):
    text: str
    span: Span
    food: Ingredient | None


def pasted(view: View) -> Pasted | None:
    """What the text looks like; None where it is no recipe without brackets."""
    lines = list(_lines(view))
    listed = [line for line in lines if line.food]
    is_list = len(listed) >= _FEWEST
    method = _method(lines, bool(view.recipe.title))
    worked = [line for line in method if bracketed_text(line.text, view.kitchen) != line.text]
    if not is_list and len(worked) < _FEWEST:
        return None
    first = (listed if is_list else worked)[0]
    sentences = [sentence for line in method for sentence in _sentences(line.text)]
    return Pasted(first.span, is_list, _title(view, lines), _example(sentences, listed, view.kitchen))


def _method(lines: Sequence[_Line], titled: bool) -> list[_Line]:
    """The lines behind the list, if there is one and it does not stand at the end."""
    first = next((at for at, line in enumerate(lines) if line.food), 0)
    behind = [line for line in lines[first:] if not line.food]
    return behind or [line for line in lines[0 if titled else 1 :] if not line.food]


def _lines(view: View) -> Iterator[_Line]:
    """The lines below the header, without their marks; what is a food and its amount is in the list."""
    in_header = {field.key_span.start for field in view.document.fields}
    for line in view.document.lines:
        if line.kind not in ("TEXT", "FIELD", "HEADING") or line.span.start in in_header:
            continue
        mark = _MARKED.match(line.text)
        start = mark.end() if mark else 0
        text = line.text[start:].strip()
        span = Span(line.span.start + start, line.span.start + start + len(text))
        several = _in_a_row(text, span, view.kitchen)
        if several:
            yield from several
        elif text:
            yield _Line(text, span, _listed(text, view.kitchen))


def _in_a_row(text: str, span: Span, kitchen: Kitchen) -> list[_Line]:
    """A list in one line: `You need: 500 g flour, 7 g yeast, 10 g salt`."""
    said = text.rpartition(":")[2].rstrip(".").split(",")
    foods = [_listed(part.strip(), kitchen) for part in said]
    if len(foods) < _FEWEST or not all(foods):
        return []
    return [_Line(part.strip(), span, food) for part, food in zip(said, foods, strict=True)]


def _listed(text: str, kitchen: Kitchen) -> Ingredient | None:
    """The food of a line that is nothing but an amount of it."""
    records, _ = read_alone(text, kitchen)
    food = records[0] if len(records) == 1 else None
    return food if isinstance(food, Ingredient) and food.measured else None


def _title(view: View, lines: Sequence[_Line]) -> str:
    first = lines[0].text.lstrip("# ") if lines and not lines[0].food else ""
    return first if first and len(first) <= _LONGEST_TITLE and not first.endswith((".", ":")) else "…"


def _sentences(text: str) -> Iterator[str]:
    for found in _SENTENCE.finditer(text):
        if found[0].strip():
            yield found[0].strip()


def _example(sentences: Sequence[str], listed: Sequence[_Line], kitchen: Kitchen) -> str:
    """The first sentence that names a food of the list, with the amount of it; else the first with any clause."""
    for sentence in sentences:
        written = _with_amounts(sentence, listed, kitchen)
        if written != bracketed_text(sentence, kitchen):
            return written
    changed = (bracketed_text(sentence, kitchen) for sentence in sentences)
    return next((written for written, old in zip(changed, sentences, strict=True) if written != old), "")


def _with_amounts(sentence: str, listed: Sequence[_Line], kitchen: Kitchen) -> str:
    """A sentence with the lines of the list in the place of the names of their foods."""
    places: list[tuple[int, int, str]] = []
    for line in listed:
        assert line.food is not None, "they are listed"
        place = _place(sentence, line.food.name, kitchen.language)
        if place and not any(place[0] < end and start < place[1] for start, end, _ in places):
            places.append((*place, line.text))
    said, after = "", 0
    for start, end, text in sorted(places):
        said += f"{bracketed_text(sentence[after:start], kitchen)}[{text}]"
        after = end
    return said + bracketed_text(sentence[after:], kitchen)


def _place(sentence: str, name: str, language: str) -> tuple[int, int] | None:
    """Where a sentence names a food, by its whole name or the end of it; with its article."""
    rules, of = nouns(language), check_words(language).small.between
    words = [(word.start(), word.end(), rules.singular(word[0].lower())) for word in _WORD.finditer(sentence)]
    wanted = [rules.singular(word) for word in name.lower().split()]
    for size in range(len(wanted), 0, -1):
        for at in range(len(words) - size + 1):
            if [word for _, _, word in words[at : at + size]] == wanted[-size:]:
                first = at - 1 if at and words[at - 1][2] in rules.definite else at
                if first and words[first - 1][2] in of:
                    return None
                return words[first][0], words[at + size - 1][1]
    return None
