"""Headnotes and remarks: a cook's Markdown as HTML that can do no harm.

CommonMark lets raw HTML through and makes headings of underlined lines; a page that others trust can allow neither
(a heading out of order misleads a screen reader). Both are shown as the text they are. Finding emphasis costs some
ten microseconds a bracket, so that a paragraph of brackets only would stop the press: beyond a length that no remark
has, text is set as written.
"""

from __future__ import annotations

from functools import cache
from html import escape, unescape

from tamis.patterns import pattern
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from markdown_it import MarkdownIt

LONGEST_PARAGRAPH = 4_000
LONGEST_TEXT = 40_000
_TAG = pattern(r"<[^>]*>")
_BLANK = pattern(r"\n[ \t]*\n\s*")
# Without one of these, the second at the start of a line, there is no Markdown in a text: it is paragraphs of words.
_SIGN = pattern(r"[\\`*_\[\]<>&#~|]")
_BLOCK = pattern(r" {4}|\t| *(?:[-+=]|\d+[.)])")


def html_of(markdown: str) -> str:
    """A text in CommonMark as HTML; raw HTML and headings in it are shown as text."""
    text = markdown.replace("\r\n", "\n").replace("\r", "\n").strip("\n")
    paragraphs = _BLANK.split(text)
    long = len(text) > LONGEST_TEXT or any(len(paragraph) > LONGEST_PARAGRAPH for paragraph in paragraphs)
    if long or not _marked(text):
        return "".join(f"<p>{escape(p.strip())}</p>\n" for p in paragraphs if p.strip())
    rendered: str = _markdown().render(text)
    return rendered


def first_words(markdown: str, most: int = 200) -> str:
    """The first paragraph as plain words, cut between two words where it is longer than `most` characters."""
    text = markdown.replace("\r\n", "\n").replace("\r", "\n").strip("\n")
    words = _BLANK.split(text[:LONGEST_PARAGRAPH], maxsplit=1)[0]
    if _marked(words):
        words = unescape(_TAG.sub("", html_of(words)))
    plain = " ".join(words.split())
    if len(plain) <= most:
        return plain
    return plain[:most].rpartition(" ")[0].rstrip(",;:– ") + " …"


def _marked(text: str) -> bool:
    """Whether there may be Markdown in a text; two spaces at the end of a line break it."""
    if _SIGN.search(text):
        return True
    return any(_BLOCK.match(line) or line.endswith("  ") for line in text.split("\n"))


@cache
def _markdown() -> MarkdownIt:
    from markdown_it import MarkdownIt

    # Pictures would be fetched from wherever they lie; a page needs nothing from elsewhere.
    return MarkdownIt("commonmark", {"html": False}).disable(["heading", "lheading", "image"])
