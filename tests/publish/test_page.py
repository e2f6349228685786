"""The recipe page: a whole one as a snapshot, valid HTML everywhere, and nothing a cook writes acts as markup."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import html5lib
import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.publish.page import recipe_page

from .samples import CUSTARD, HOUSE, Writer

NASTY = "<script>alert('\"&')</script>"


def page_of(opened: object, number: int = 0) -> str:
    library = opened
    entry = library.entries[number]  # type: ignore[attr-defined]
    return recipe_page(entry.compiled, library.kitchen, {entry.stem})  # type: ignore[attr-defined]


def assert_valid(html: str) -> None:
    html5lib.HTMLParser(strict=True).parse(html)
    identifiers = re.findall(r'\bid="([^"]*)"', html)
    assert len(identifiers) == len(set(identifiers))
    for targets in re.findall(r'(?:href="#|aria-labelledby=")([^"]+)"', html):
        assert set(targets.split()) <= set(identifiers)
    levels = [int(level) for level in re.findall(r"<h([1-6])", html)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_a_whole_page(library: Writer, snapshot: SnapshotAssertion) -> None:
    html = page_of(library(custard=CUSTARD))
    assert re.sub(r"<svg.*</svg>", "<svg>…</svg>", html, flags=re.DOTALL) == snapshot


def test_every_page_of_the_demo_site_is_valid(demo_site: Path) -> None:
    pages = sorted(demo_site.rglob("*.html"))
    assert len(pages) > 10
    for page in pages:
        assert_valid(page.read_text(encoding="utf-8"))


def test_every_link_of_the_demo_site_leads_somewhere(demo_site: Path) -> None:
    from urllib.parse import unquote

    for page in demo_site.rglob("*.html"):
        for target in re.findall(r'href="([^"#:]+)"', page.read_text(encoding="utf-8")):
            assert (page.parent / unquote(target)).is_file(), target


def test_every_page_says_whose_rules_prevail(demo_site: Path) -> None:
    for page in demo_site.rglob("*.html"):
        assert "Local food codes and licensed practice prevail" in page.read_text(encoding="utf-8")


@pytest.mark.parametrize("key", ["title", "tags", "keeps", "course", "cuisine", "author", "source", "tested"])
def test_the_header_cannot_act_as_markup(library: Writer, key: str) -> None:
    lines = [line for line in CUSTARD.splitlines() if not line.startswith(f"{key}:")]
    html = page_of(library(custard="\n".join([f"{key}: {NASTY}", *lines])))
    assert "<script>alert" not in html
    assert_valid(html)


@pytest.mark.parametrize(
    ("words", "instead"),
    [
        ("Warm over", f"{NASTY} over"),
        ("# Custard", f"# {NASTY}"),
        ("Pour [the milk]", f"Pour {NASTY} [the milk]"),
        ("sifted]", f"sifted {NASTY}]"),
        ("6 egg yolks", f"6 egg {NASTY} yolks"),
        ("coats the spoon", f"coats {NASTY} spoon"),
        ("in a bowl", f"in a {NASTY} bowl"),
        ("the yolks curdle", f"the {NASTY} curdle"),
    ],
)
def test_the_text_cannot_act_as_markup(library: Writer, words: str, instead: str) -> None:
    assert words in CUSTARD
    html = page_of(library(custard=CUSTARD.replace(words, instead)))
    assert "<script>alert" not in html
    assert_valid(html)


def test_the_house_cannot_act_as_markup(library: Writer) -> None:
    html = page_of(library(HOUSE.replace("Tern Quay", "<b>Quay</b>"), custard=CUSTARD))
    assert "<b>Quay" not in html


@pytest.mark.parametrize(
    ("units", "heads"),
    [("metric", ["Metric", "US"]), ("us", ["US", "Metric"]), ("written", ["Amount", "Or"])],
)
def test_the_house_chooses_the_first_column(library: Writer, units: str, heads: list[str]) -> None:
    html = page_of(library(HOUSE + f'units = "{units}"\n', custard=CUSTARD))
    assert re.findall(r'<th scope="col">([^<]*)<', html) == [*heads, "Ingredient"]


def test_the_cooks_own_figures_are_marked(library: Writer) -> None:
    html = page_of(library(custard=CUSTARD))
    assert re.search(r'<td class="own">70\u00a0g</td><td class="own">⅓\u00a0cup</td><th scope="row">caster sugar', html)
    assert re.search(r'<td class="own">400\u00a0ml</td><td>[^<]+</td><th scope="row">whole milk', html)


def test_the_comma_part_is_in_the_table_and_not_in_the_sentence(library: Writer) -> None:
    html = page_of(library(custard=CUSTARD))
    method = html.partition('class="method"')[2]
    assert '<span class="prep">, sifted</span>' in html
    assert "caster sugar" in method and "sifted" not in method


def test_a_page_says_in_one_way_how_long_it_takes(demo_site: Path) -> None:
    pages = sorted((demo_site / "recipes").glob("*.html"))
    assert len(pages) > 10
    for page in pages:
        html = page.read_text(encoding="utf-8")
        takes = re.search(r"<dt>Takes</dt><dd><time[^>]*>([^<]+)</time>", html)
        timing = re.search(r'<h2 id="timeline">Timeline</h2>\n<p>([^<]+)</p>', html)
        assert takes and timing, page.name
        assert re.split("[,;]", timing[1])[0] == takes[1]
