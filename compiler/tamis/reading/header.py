"""The header of a recipe: its keys, what each may hold, and what is wrong with them."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic, Fix
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.reading.tables import tables
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Bracket, Item, Product, Quantity, Word
from tamis.typed import TYPE_CHECKING, Literal, cast, get_args
from tamis.words import example, word_lists

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.kitchen.house import Kitchen
    from tamis.syntax.document import Document, Field

HeaderKey = Literal[
    "title", "makes", "serves", "tags", "author", "source", "image", "keeps", "tested", "published", "uses", "flour",
    "dough", "served", "course", "cuisine",
]  # fmt: skip
"""The keys of the format, the same in every language."""
KEYS: tuple[HeaderKey, ...] = get_args(HeaderKey)
_TITLE: HeaderKey = "title"

Value = tuple[object, str]
"""What a key holds, None where it cannot be read; and what was expected."""


class Makes(NamedTuple):
    """What a recipe makes: `2 loaves`, `5 jars (340 g each)`, `600 ml`. `noun` is empty for a bare measure."""

    amount: Amount
    noun: str
    text: str
    measure: Measure | None = None
    each: Measure | None = None
    size: str = ""


class Header(NamedTuple):
    """The header's values; a key that is missing or unreadable is empty or None. `spans` tell where each stands."""

    title: str = ""
    makes: Makes | None = None
    serves: Amount | None = None
    tags: tuple[str, ...] = ()
    author: str = ""
    source: str = ""
    image: str = ""
    keeps: str = ""
    tested: str = ""
    published: str = ""
    uses: tuple[str, ...] = ()
    flour: Measure | None = None
    dough: Measure | None = None
    served: str = ""
    course: str = ""
    cuisine: str = ""
    spans: tuple[tuple[str, Span], ...] = ()

    def span(self, header_key: HeaderKey) -> Span:
        """Where the key's value stands; the start of the file where it has none."""
        return dict(self.spans).get(header_key, Span(0, 0))


def read_header(document: Document, kitchen: Kitchen, findings: list[Diagnostic]) -> Header:
    """The header's values, and what is wrong with its lines."""
    values: dict[str, object] = {}
    spans: dict[str, Span] = {}
    meant: set[str | None] = set()
    for field in document.fields:
        if field.key not in KEYS:
            meant.add(_unknown_key(field, kitchen.language, findings))
        elif field.key in spans:
            message = f"`{field.key}` stands twice; the first one counts"
            findings.append(Diagnostic("header-key", "warning", field.key_span, message))
        else:
            spans[field.key] = field.value_span
            values[field.key] = _value(field, kitchen, findings)
    if not values.get(_TITLE) and _TITLE not in meant:
        at = document.fields[0].key_span if document.fields else Span(0, min(1, len(document.source.text)))
        message = (
            "a recipe needs a title"
            if document.fields
            else "a recipe begins with a header; expected `title: …` in its first line"
        )
        findings.append(Diagnostic("missing-title", "error", at, message, "write `title:` and the name of the dish"))
    kept = {key: value for key, value in values.items() if value is not None}
    return Header(**kept, spans=tuple(spans.items()))  # type: ignore[arg-type]  # `_value` gives each key its type


def _unknown_key(field: Field, language: str, findings: list[Diagnostic]) -> str | None:
    """Report it; the key that was meant, if that can be said."""
    from tamis.quantity.near import nearest

    lists = word_lists(language, "reading")
    others = lists.get("header-keys", {})
    near = nearest(field.key, KEYS) or _other_ending(field.key)
    near = next((key for key in KEYS if field.key in others.get(key, ())), None) or near
    fix = Fix(field.key_span, near, f"write `{near}`") if near else None
    hint = f"did you mean `{near}`?" if near else "known keys: " + ", ".join(KEYS)
    if any(field.key in names for names in lists.get("worked-out", {}).values()):
        hint, fix = "take it out: the compiler works it out from the method", None
    message = f"no header key is called “{field.key}”"
    findings.append(Diagnostic("header-key", "warning", field.key_span, message, hint, fix=fix))
    return near


def _other_ending(key: str) -> str | None:
    """The known key that is the same word with another ending, which is often further off than a slip of the pen:
    `servings`, `serv` for `serves`."""
    return next((each for each in KEYS if each[:4] == key[:4] and abs(len(each) - len(key)) < 3), None)


def _value(field: Field, kitchen: Kitchen, findings: list[Diagnostic]) -> object:
    """The value of one field in its own type; None and a finding where it cannot be read."""
    if not field.value:
        findings.append(Diagnostic("header-value", "error", field.key_span, f"`{field.key}` has no value"))
        return None
    reader = _READERS.get(cast("HeaderKey", field.key))
    if reader is None:
        return field.value
    value, wanted = reader(field.value, kitchen)
    if value is None:
        message = f"`{field.key}` holds “{field.value[:40]}”: expected {wanted}"
        findings.append(Diagnostic("header-value", "error", field.value_span, message))
    return value


def _made(text: str, kitchen: Kitchen) -> Value:
    value = _makes(text, kitchen)
    if value is not None:
        return value, ""
    loaves, jars = example(kitchen.language, "made"), example(kitchen.language, "made_each")
    return None, f"a number and a name, such as {loaves} or {jars}"


def _served(text: str, kitchen: Kitchen) -> Value:
    return _amount(text, kitchen.language), "a number or a range, such as `8` or `4–6`"


def _weight(text: str, kitchen: Kitchen) -> Value:
    made = _makes(text, kitchen)
    return made.measure if made else None, "a weight, such as `1 kg`"


def _date(text: str, kitchen: Kitchen) -> Value:
    return text if _is_date(text) else None, "a date, such as `2026-10-18`"


def _listed(text: str, kitchen: Kitchen) -> Value:
    return tuple(part.strip() for part in text.split(",") if part.strip()), "a list with commas"


def _is_date(text: str) -> bool:
    year, month, day = text[:4], text[5:7], text[8:]
    plain = len(text) == 10 and text[4] == text[7] == "-" and text.isascii() and (year + month + day).isdecimal()
    if plain and year > "0000" and "01" <= month <= "12" and "01" <= day <= "28":
        return True  # no calendar need be asked
    from datetime import date  # which takes longer to import than the header to read

    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _amount(text: str, language: str) -> Amount | None:
    read = parse_clause(text, language)
    first = read.items[0] if read.items else None
    if isinstance(first, Quantity) and first.kind == "pieces" and len(read.items) == 1:
        return first.amount if 0 < first.amount.lo <= first.amount.hi else None
    return None


def first_amount(items: tuple[Item, ...], language: str) -> Item | None:
    """What a header's value begins with, after *about* and the like."""
    hedges = tables(language).hedges
    return next((item for item in items if not isinstance(item, Word) or item.lower not in hedges), None)


def _makes(text: str, kitchen: Kitchen) -> Makes | None:
    """`2 loaves`, `5 jars (340 g each)`, `1 cake (20 cm)`, `600 ml`."""
    read = parse_clause(text, kitchen.language)
    first = first_amount(read.items, kitchen.language)
    if isinstance(first, Product) and first.kind in ("mass", "volume") and first.factors[0].lo > 0:
        unit = kitchen.units.get(first.unit)
        noun = text[first.span.end :].strip(" ,")
        weight = Measure(first.factors[1], unit.id if unit else first.unit)
        return Makes(first.factors[0], noun, text, None, weight) if noun else None
    if not isinstance(first, Quantity) or not 0 < first.amount.lo <= first.amount.hi:
        return None
    if first.kind in ("mass", "volume"):
        unit = kitchen.units.get(first.unit)
        return Makes(first.amount, "", text, Measure(first.amount, unit.id if unit else first.unit))
    if first.kind != "pieces":
        return None
    bracket = next((item for item in read.items if isinstance(item, Bracket)), None)
    end = bracket.span.start if bracket else len(text)
    noun = text[first.span.end : end].strip(" ,")
    each, size = _each(bracket, text, kitchen) if bracket else (None, "")
    return Makes(first.amount, noun, text, None, each, size) if noun else None


def _each(bracket: Bracket, text: str, kitchen: Kitchen) -> tuple[Measure | None, str]:
    inner = bracket.items[0] if bracket.items else None
    if isinstance(inner, Quantity) and inner.kind in ("mass", "volume"):
        unit = kitchen.units.get(inner.unit)
        return Measure(inner.amount, unit.id if unit else inner.unit), ""
    return None, text[bracket.span.start + 1 : bracket.span.end - 1]


_READERS: dict[HeaderKey, Callable[[str, Kitchen], Value]] = {
    "makes": _made,
    "serves": _served,
    "flour": _weight,
    "dough": _weight,
    "tested": _date,
    "published": _date,
    "tags": _listed,
    "uses": _listed,
}
