"""Headnotes and remarks can do no harm: no HTML of their own, no headings, no pictures, no stopped press."""

from __future__ import annotations

import time

import pytest

from tamis.publish.prose import LONGEST_PARAGRAPH, first_words, html_of


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("Plain words.", "<p>Plain words.</p>\n"),
        ("One.\n\nTwo.", "<p>One.</p>\n<p>Two.</p>\n"),
        ("*Cold* and **hot**.", "<p><em>Cold</em> and <strong>hot</strong>.</p>\n"),
        ("<script>alert(1)</script>", "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>\n"),
        ('Salt & "pepper"', "<p>Salt &amp; &quot;pepper&quot;</p>\n"),
        ("[a](javascript:alert(1))", "<p>[a](javascript:alert(1))</p>\n"),
        ("## Big", "<p>## Big</p>\n"),
        ("Big\n===", "<p>Big\n===</p>\n"),
        ("![a quay](https://example.org/q.jpg)", '<p>!<a href="https://example.org/q.jpg">a quay</a></p>\n'),
        ("- one\n- two", "<ul>\n<li>one</li>\n<li>two</li>\n</ul>\n"),
        ("", ""),
    ],
)
def test_a_text(text: str, html: str) -> None:
    assert html_of(text) == html


@pytest.mark.parametrize(
    "text",
    ["Plain words, 1–2 lines.", "Two\nlines.", "One.\n\nTwo.", "Quotes \" and ' and – dashes", "One.\n \n\nTwo."],
)
def test_words_without_marks_come_out_as_markdown_would_set_them(text: str) -> None:
    from markdown_it import MarkdownIt

    assert html_of(text).replace("&#x27;", "'") == MarkdownIt("commonmark").render(text)


def test_brackets_without_end_are_set_as_written_and_soon() -> None:
    text = "[" * 200_000
    begun = time.process_time()
    assert html_of(text) == f"<p>{text}</p>\n"
    assert time.process_time() - begun < 5


def test_a_long_paragraph_is_still_escaped() -> None:
    assert "<b>" not in html_of("<b>" * LONGEST_PARAGRAPH)


def test_first_words_are_plain_and_cut_between_words() -> None:
    assert first_words("*Close* & moist loaves.\n\nMore.") == "Close & moist loaves."
    assert first_words("one two three four", 12) == "one two …"
    assert first_words("") == ""
