"""The first law of an editor's compiler: taking a text apart loses nothing of it."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kitchen_table import demo_texts, edited

from tamis.source import Source, decode
from tamis.syntax.document import Action, Ahead, Clause, Document, Step
from tamis.syntax.outline import parse

_SCRAPS = [
    "title: A", "serves: 4", "# Dough", "## Deep", "Note: soft", "Ahead: [freeze for 1 month]", "% allow x: y", "%",
    "Stir [2 g salt", "[", "]", "[[", "\\[", "(", ")", "[]", "[1,5 g salt]", "and so on", "1. Mix", "- Mix", ":", "#",
    "\n", "\n\n", "\r\n", "\r", "\n\r", " ", "\t", "\ufeff", "\0", "\x0b", "\x0c", "\x85", "\u2028", "\u00a0", "½", "é",
]  # fmt: skip
_RECIPE_LIKE = st.lists(st.sampled_from(_SCRAPS), max_size=40).map("".join)
_ANY = st.one_of(st.text(max_size=200), _RECIPE_LIKE)


def _document(text: str) -> Document:
    return parse(Source("any.tamis", text), "en")[0]


def _actions(document: Document) -> list[Action]:
    blocks = [block for node in (document.opening, *document.components) for block in node.blocks]
    steps = [action for block in blocks if isinstance(block, Step) for action in block.actions]
    return steps + [block.action for block in blocks if isinstance(block, Ahead)]


@settings(deadline=None, max_examples=300)
@given(_ANY)
def test_a_document_prints_back_what_was_read(text: str) -> None:
    assert _document(text).print() == text


@settings(deadline=None, max_examples=300)
@given(_ANY)
def test_the_parts_of_an_action_print_its_text(text: str) -> None:
    for action in _actions(_document(text)):
        printed = "".join(f"[{part.text}]" if isinstance(part, Clause) else part.text for part in action.parts)
        assert printed == text[action.span.start : action.span.end]


@settings(deadline=None, max_examples=200)
@given(_ANY)
def test_every_span_covers_what_it_names(text: str) -> None:
    document = _document(text)
    for line in document.lines:
        assert text[line.span.start : line.span.end] == line.text
    for field in document.fields:
        assert text[field.value_span.start : field.value_span.end].strip() == field.value
        assert text[field.key_span.start : field.key_span.end].lower() == field.key
    for clause in (clause for action in _actions(document) for clause in action.clauses()):
        for item in clause.items.items:
            span = item.span.shifted(clause.inner)
            assert clause.span.start < span.start < span.end <= clause.span.end


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_byte_order_marks_are_kept_and_change_nothing(ending: str, mark: str) -> None:
    for stem, text in demo_texts().items():
        other = mark + text.replace("\n", ending)
        document, findings = parse(Source(stem, other), "en")
        plain, plain_findings = parse(Source(stem, text), "en")
        assert document.print() == other
        assert [field.value for field in document.fields] == [field.value for field in plain.fields]
        assert [node.name for node in document.components] == [node.name for node in plain.components]
        clauses = [[part.text for part in action.clauses()] for action in _actions(document)]
        as_before = [[part.text.replace("\n", ending) for part in a.clauses()] for a in _actions(plain)]
        assert clauses == as_before
        assert [finding.rule for finding in findings] == [finding.rule for finding in plain_findings]


def test_damaged_recipes_print_back() -> None:
    draw = random.Random(1)
    for text in demo_texts().values():
        for _ in range(20):
            damaged = decode(edited(text.encode(), 5, draw))[0]
            assert _document(damaged).print() == damaged
