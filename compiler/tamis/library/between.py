"""What is wrong between recipes, or with a file as a file; no phase that sees one recipe can know it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from tamis.diagnostics import INTERNAL_ERROR, Diagnostic
from tamis.library.order import USES
from tamis.source import Source, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.header import Header
    from tamis.syntax.document import Document


def about_bytes(offset: int) -> Diagnostic:
    """The finding for a byte that is not UTF-8."""
    message = "this byte is not UTF-8; from here on, what it stood for is guessed"
    return Diagnostic("not-utf8", "error", Span(offset, offset + 1), message, "save the file again as UTF-8")


def about_uses(document: Document, missing: Sequence[str], known: Iterable[str]) -> list[Diagnostic]:
    """A finding for each stem under `uses:` that no recipe of the house has."""
    if not missing:
        return []
    from tamis.quantity.near import nearest

    findings, stems = [], sorted(known)
    for stem in missing:
        field = next((field for field in document.fields if field.key == USES and stem in field.value), None)
        start = field.value_span.start + field.value.index(stem) if field else 0
        near = nearest(stem, stems)
        hint = f"did you mean `{near}`?" if near else "write a file's name without `.tamis`"
        message = f"there is no recipe “{stem}” in this library"
        findings.append(Diagnostic("uses-unknown", "error", Span(start, start + len(stem)), message, hint))
    return findings


def about_broken(document: Document, stems: Sequence[str]) -> Diagnostic:
    """The finding for a recipe that uses others, of which the compiler made nothing or only a part: it failed there."""
    span = next((field.value_span for field in document.fields if field.key == USES), Span(0, 0))
    message = f"the compiler failed on {', '.join(stems)}: what is taken from there is not known"
    return Diagnostic(INTERNAL_ERROR, "error", span, message, "`tamis check` of that recipe tells what to report")


def about_circle(document: Document, circle: Sequence[str]) -> Diagnostic:
    """The finding for a recipe that uses itself by way of others."""
    span = next((field.value_span for field in document.fields if field.key == USES), Span(0, 0))
    message = f"these recipes depend on each other in a circle: {' → '.join(circle)}"
    hint = "one of them must be made without the other: take it out of `uses:`"
    return Diagnostic("uses-circle", "error", span, message, hint)


def same_titles(recipes: Sequence[tuple[Source, Header]]) -> Iterator[tuple[int, Diagnostic]]:
    """For each recipe with the title of an earlier one: its index and the finding."""
    first: dict[str, Source] = {}
    for index, (source, header) in enumerate(recipes):
        title = " ".join(header.title.casefold().split())
        earlier = first.setdefault(title, source)
        if title and earlier is not source:
            message = f"{earlier.name} has the same title"
            hint = "a reader could not tell them apart: say in the title what is different"
            yield index, Diagnostic("duplicate-title", "warning", header.span("title"), message, hint)


def same_stems(sources: Sequence[Source]) -> Iterator[tuple[int, Diagnostic]]:
    """For each file that is called like an earlier one in another folder: its index and the finding."""
    first: dict[str, Source] = {}
    for index, source in enumerate(sources):
        earlier = first.setdefault(source.stem, source)
        if earlier is not source:
            message = f"{earlier.name} has the same file name; `uses: {source.stem}` means that one"
            hint = "call one of the two files differently: pages and `uses:` go by the file name"
            yield index, Diagnostic("duplicate-name", "error", Span(0, 0), message, hint)
