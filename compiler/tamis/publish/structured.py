"""A recipe for machines that read pages: schema.org Recipe as JSON-LD.

The vocabulary is that of schema.org release 30.0; durations are ISO 8601 and must be exact, so the total is the longest
that the food's own estimates can make it (nobody is served early by a promise). Only what the recipe says is said:
a diet where a tag claims it and every food agrees, no picture where there is none.
"""

from __future__ import annotations

from functools import cache

from tamis.publish.iso import iso_duration
from tamis.quantity.display import amount
from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from json import JSONEncoder

    from tamis.compile import Compiled
    from tamis.publish.method import Section
    from tamis.reading.header import Header
    from tamis.safety.records import Claim
    from tamis.table.rows import EquipmentRow


class Words(NamedTuple):
    """What the page says already: its address, house, first words and picture (each perhaps empty), the method, the
    ingredients a line each, and what is used but not eaten as such (for steam, for the tin)."""

    address: str
    house: str
    description: str
    image: str
    method: tuple[Section, ...]
    ingredients: list[str]
    supplies: list[str]


def structured_data(compiled: Compiled, words: Words) -> str:
    """The JSON-LD of a recipe, safe inside a script element."""
    text = _encoder().encode(recipe_data(compiled, words))
    return text.replace("&", "\\u0026").replace("<", "\\u003c").replace(">", "\\u003e")


@cache
def _encoder() -> JSONEncoder:
    from json import JSONEncoder

    return JSONEncoder(ensure_ascii=False, separators=(",", ":"))


def recipe_data(compiled: Compiled, words: Words) -> dict[str, Any]:
    """The same as plain data; a property that has nothing to say is left out."""
    header = compiled.recipe.header
    said = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": header.title,
        "url": words.address,
        "description": words.description,
        "image": words.image,
        **_about(header, words.house),
        "suitableForDiet": _diets(compiled.safety.claims),
        "totalTime": iso_duration(-(-compiled.timeline.most // 60) * 60) if compiled.timeline.most else "",
        "recipeIngredient": words.ingredients,
        "supply": [{"@type": "HowToSupply", "name": name} for name in words.supplies],
        "tool": [_tool(piece) for piece in compiled.equipment],
        "recipeInstructions": _instructions(words.method),
    }
    return {key: value for key, value in said.items() if value}


def _diets(claims: tuple[Claim, ...]) -> list[str]:
    """The diets that tags claim, and that all the foods agree with: of one that is not known nothing is promised."""
    kept = {claim.promise for claim in claims if claim.verdict == "agrees"}
    return [f"https://schema.org/{diet}" for diet, promise in rules().diets.items() if promise in kept]


def _about(header: Header, house: str) -> dict[str, Any]:
    """What the header says, in schema.org's words."""
    return {
        "author": {"@type": "Person", "name": header.author} if header.author else "",
        "publisher": {"@type": "Organization", "name": house} if house else "",
        "datePublished": header.published,
        "recipeYield": _yields(header),
        "recipeCategory": header.course,
        "recipeCuisine": header.cuisine,
        "keywords": ", ".join(header.tags),
    }


def _yields(header: Header) -> list[str]:
    made = [header.makes.text] if header.makes else []
    return made + ([f"{amount(header.serves)} servings"] if header.serves else [])


def _tool(piece: EquipmentRow) -> dict[str, Any]:
    tool: dict[str, Any] = {"@type": "HowToTool", "name": piece.label}
    if piece.number is not None and piece.number.denominator == 1 and piece.number.numerator > 1:
        tool["requiredQuantity"] = piece.number.numerator
    return tool


def _instructions(method: tuple[Section, ...]) -> list[dict[str, Any]]:
    """A section for each component; the steps themselves where there is only one."""
    if len(method) == 1:
        return _steps(method[0])
    return [
        {"@type": "HowToSection", "name": section.name, "itemListElement": _steps(section)}
        for section in method
        if section.steps
    ]


def _steps(section: Section) -> list[dict[str, Any]]:
    return [{"@type": "HowToStep", "text": step.plain} for step in section.steps]
