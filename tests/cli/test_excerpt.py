"""The underline stands under the words at fault, whatever the line holds."""

from __future__ import annotations

import time

import pytest

from tamis.cli.excerpt import WINDOW, columns, excerpt
from tamis.cli.findings import Ink, as_data, as_text
from tamis.diagnostics import Diagnostic, Label
from tamis.source import Source, Span


def marked(text: str, words: str) -> str:
    """The excerpt and its underline, as they stand one above the other."""
    start = text.index(words)
    part = excerpt(Source("x", text), Span(start, start + len(words)))
    return f"{part.text}\n{' ' * part.start}{'^' * part.width}"


@pytest.mark.parametrize(
    ("text", "words", "expected"),
    [
        ("Add [2 tbps sugar].\n", "tbps", "Add [2 tbps sugar].\n       ^^^^"),
        ("a\nAdd\tmilk\r\nb", "milk", "Add    milk\n       ^^^^"),
        ("味噌を [10 g] 入れ", "[10 g]", "味噌を [10 g] 入れ\n       ^^^^^^"),
        ("味噌を", "噌", "味噌を\n  ^^"),
        ("cre\u0301me x", "x", "cre\u0301me x\n      ^"),
        ("a\x1b[31mb", "b", "a\ufffd[31mb\n      ^"),
    ],
)
def test_underline(text: str, words: str, expected: str) -> None:
    assert marked(text, words) == expected


def test_long_line_is_cut_to_a_window_around_the_fault() -> None:
    text = "x" * 500_000 + "FAULT" + "y" * 500_000
    shown, underline = marked(text, "FAULT").split("\n")
    assert shown.startswith("…x") and shown.endswith("y…") and columns(shown) == WINDOW + 2
    assert shown[underline.index("^") : underline.rindex("^") + 1] == "FAULT"


def test_end_of_a_long_line_is_shown_whole() -> None:
    shown, underline = marked("x" * 300 + "END", "END").split("\n")
    assert shown.endswith("xEND") and underline.endswith("^^^") and len(underline) == len(shown)


def test_fault_that_is_longer_than_the_window_is_marked_to_its_edge() -> None:
    shown, underline = marked("[" + "z" * 400 + "]", "[" + "z" * 400).split("\n")
    assert len(underline) <= len(shown)


def test_nothing_at_the_end_of_a_text_gets_one_mark() -> None:
    part = excerpt(Source("x", "title: x\n"), Span(9, 9))
    assert (part.line, part.text, part.width) == (2, "", 1)


def test_a_span_over_two_lines_is_marked_in_its_first() -> None:
    assert marked("a bc\nde", "bc\nde") == "a bc\n  ^^"


def test_many_findings_in_one_huge_line_cost_no_more_than_their_windows() -> None:
    source = Source("x", "[" * 1_000_000)
    source.place(0)
    begin = time.process_time()
    for at in range(0, 1_000_000, 1000):
        excerpt(source, Span(at, at + 1))
    assert time.process_time() - begin < 1


def test_whole_finding() -> None:
    source = Source("buns.tamis", "# Dough\n\nAdd [2 tbps sugar].\n")
    finding = Diagnostic(
        "unit-unknown",
        "error",
        Span(16, 20),
        "there is no unit “tbps”",
        "did you mean `tbsp`?",
        (Label(Span(0, 7), "in this component"),),
    )
    assert as_text(source, finding) == (
        "buns.tamis:3:8: error: there is no unit “tbps” (unit-unknown)\n"
        "    3 | Add [2 tbps sugar].\n"
        "      |        ^^^^\n"
        "    1 | # Dough\n"
        "      | ------- in this component\n"
        "      > did you mean `tbsp`?"
    )
    assert "\x1b[1;31merror\x1b[0m" in as_text(source, finding, Ink(True))
    data = as_data(source, finding)
    assert (data["line"], data["column"], data["end_line"], data["end_column"]) == (3, 8, 3, 12)
    assert data["labels"][0]["line"] == 1 and data["fix"] is None
