"""What a recipe's page says, gathered for the template.

The template only lays out: every word, and every piece of HTML that is more than a word, is made here from what the
compiler knows, so that the page can be changed by somebody who knows no Python.
"""

from __future__ import annotations

from tamis.library.pictures import is_on_the_web
from tamis.publish.cautions import SafetyView, safety_view
from tamis.publish.columns import Cells, cells_of, heads
from tamis.publish.facts import Fact, date_of, facts_of, timing_of
from tamis.publish.formula import FormulaView, formula_view
from tamis.publish.method import Section, method_of
from tamis.publish.paths import link, page_link
from tamis.publish.prose import first_words, html_of
from tamis.publish.running import Running, running_of
from tamis.publish.sentence import as_html
from tamis.publish.structured import Words, structured_data
from tamis.publish.templates import template
from tamis.publish.words import PageWords, page_words
from tamis.quantity.inches import with_centimetres
from tamis.record import NamedTuple
from tamis.table.lines import apart, supplied_text
from tamis.timeline.svg import timeline_svg
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Collection

    from markupsafe import Markup

    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen
    from tamis.syntax.document import Remark
    from tamis.table.rows import Table


class Group(NamedTuple):
    """Rows of the table under a name of their own."""

    name: str
    rows: list[Cells]


class StepView(NamedTuple):
    """A step as HTML, a line an action, with its remarks."""

    lines: Markup
    remarks: Markup
    meanwhile: bool


class SectionView(NamedTuple):
    """A component of the method as HTML; `first` is the number of its first step."""

    name: str
    remarks: Markup
    first: int
    steps: list[StepView]
    ahead: Markup


class Page(NamedTuple):
    """All that `recipe.html` shows."""

    title: str
    description: str
    address: str
    data: Markup
    course: str
    headnote: Markup
    picture: str
    facts: list[Fact]
    heads: tuple[str, str]
    groups: list[Group]
    apart: list[Markup]
    equipment: list[str]
    method: list[SectionView]
    timeline: Markup
    running: Running
    timing: str
    tested: Markup
    author: str
    source: str
    safety: SafetyView
    formula: FormulaView | None = None


def recipe_page(compiled: Compiled, kitchen: Kitchen, pages: Collection[str], picture: str = "") -> str:
    """The HTML of a recipe's page.

    `pages` are the stems of the recipes that have one, `picture` is the path of its picture in the site.
    """
    house = kitchen.settings.publish
    page = _page(compiled, kitchen, pages, picture)
    return template("recipe.html").render(page=page, root="../", house=house.name)


def _page(compiled: Compiled, kitchen: Kitchen, pages: Collection[str], picture: str) -> Page:
    from markupsafe import Markup

    site = f"{kitchen.settings.publish.address.rstrip('/')}/" if kitchen.settings.publish.address else ""
    address = f"{site}{page_link(compiled.source.stem)}" if site else ""

    recipe, table, header = compiled.recipe, compiled.table, compiled.recipe.header
    method = method_of(recipe, table, kitchen)
    groups = [
        Group("", cells_of(table.rows, table, kitchen)),
        Group("Optional", cells_of(table.optional, table, kitchen)),
    ]
    loose = apart(table, kitchen)
    description = first_words(recipe.headnote)
    words = page_words(recipe.language)
    listed = _for_machines(groups, apart(table, kitchen, alone=True), table, words)
    image = f"{site or '../'}{link(picture)}" if picture else header.image if is_on_the_web(header.image) else ""
    said = Words(address, kitchen.settings.publish.name, description, image, method, *listed)
    return Page(
        title=recipe.title,
        description=description,
        address=address,
        data=Markup(structured_data(compiled, said)),  # its angle brackets are escaped
        course=header.course,
        headnote=Markup(html_of(recipe.headnote)),
        picture=f"../{link(picture)}" if picture else "",
        facts=facts_of(header, compiled.timeline),
        heads=heads(kitchen),
        groups=[group for group in groups if group.rows],
        apart=_linked(loose, table, pages),
        equipment=[with_centimetres(piece.label, recipe.language) for piece in compiled.equipment],
        method=_sections(method, recipe.title),
        timeline=Markup(timeline_svg(compiled.timeline)),
        running=running_of(compiled.timeline),
        timing=timing_of(compiled.timeline),
        tested=date_of(header.tested),
        author=header.author,
        source=header.source,
        formula=formula_view(compiled.formula),
        safety=safety_view(compiled.safety, recipe.language),
    )


def _for_machines(groups: list[Group], loose: list[str], table: Table, words: PageWords) -> tuple[list[str], list[str]]:
    """The ingredients in a line each, and the supplies: what serves a purpose *for* something else."""
    ingredients = [cells.line for group in groups for cells in group.rows]
    supplies: list[str] = []
    for at, line in enumerate(loose):
        purposes = table.purposes[at].purposes if at < len(table.purposes) else ()
        serves = bool(purposes) and all(words.supplies.match(purpose) for purpose in purposes)
        (supplies if serves else ingredients).append(line)
    return ingredients, supplies


def _linked(said: list[str], table: Table, pages: Collection[str]) -> list[Markup]:
    """What counts in no sum; what another recipe makes links to its page, if it has one."""
    from markupsafe import Markup, escape

    own = [escape(words) for words in said[: len(said) - len(table.supplied)]]
    linked = Markup('<a href="../{}">{}</a>')
    for dish in table.supplied:
        words = supplied_text(dish)
        own.append(linked.format(page_link(dish.recipe), words) if dish.recipe in pages else escape(words))
    return own


def _sections(method: tuple[Section, ...], title: str) -> list[SectionView]:
    """The components, their steps numbered through; a single one needs no name but the dish's."""
    from markupsafe import Markup

    views: list[SectionView] = []
    first = 1
    for section in method:
        name = section.name if len(method) > 1 or section.name != title else ""
        ahead = "".join([f"<p>{as_html(pieces)}</p>" for pieces in section.ahead])
        aside = Markup(_aside("Ahead", ahead) if ahead else "")
        views.append(SectionView(name, Markup(_remarks(section.remarks)), first, _steps(section), aside))
        first += len(section.steps)
    return views


def _steps(section: Section) -> list[StepView]:
    from markupsafe import Markup

    return [
        StepView(
            Markup(" ".join([f'<span class="line">{as_html(line)}</span>' for line in step.lines])),
            Markup(_remarks(step.remarks)),
            step.meanwhile,
        )
        for step in section.steps
    ]


def _remarks(remarks: tuple[Remark, ...]) -> str:
    return "".join(_aside(remark.kind, html_of(remark.text)) for remark in remarks)


def _aside(kind: str, html: str) -> str:
    """A remark with its opening word run in."""
    label = f"<strong>{kind}:</strong> "
    body = html.replace("<p>", f"<p>{label}", 1) if html.startswith("<p>") else f"<p>{label}</p>{html}"
    return f'<div class="remark {kind.lower()}" role="note">{body}</div>\n'
