"""The safety of a recipe as text for a terminal and as data for other programs."""

from __future__ import annotations

from tamis.safety.data import AllergenList, rules
from tamis.safety.wording import doubt_words, limit_words, name_of, path_of
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.recipe import Recipe
    from tamis.safety.records import Allergen, Claim, Form, Item, Part, Safety, Verdict

PREVAIL = "Local food codes and licensed practice prevail."
_FORMS: dict[Form, str] = {"juices": "its juices or marinade", "stuffing": "stuffing", "contact": "by an unwashed tool"}
LISTS: dict[AllergenList, str] = {"us": "US (21 USC 321(qq))", "eu": "EU (1169/2011, Annex II)"}


def report_text(safety: Safety, recipe: Recipe, partial: bool = False) -> str:
    """A few blocks: hazards, allergens, cautions."""
    head = f"Hazards ({rules().sources[safety.authority]})\n"
    blocks = [recipe.title, head + "\n".join(_hazards(safety, recipe))]
    blocks += ["Allergens\n" + "\n".join(_allergens(safety))]
    if safety.claims:
        blocks.append("Claims made by the tags\n" + "\n".join(f"  {claim_words(claim)}" for claim in safety.claims))
    if safety.cautions:
        blocks.append("Cautions\n" + "\n".join(f"  {_said(c.text, c.source)}" for c in safety.cautions))
    blocks.append(PREVAIL)
    if partial:
        blocks.append("Incomplete: the recipe has errors.")
    return "\n\n".join(blocks)


def _hazards(safety: Safety, recipe: Recipe) -> Iterator[str]:
    """A line for each hazard; what goes in twice and ends at one place (flour, and flour for dusting) has one."""
    doubted = {doubt.food: doubt for doubt in safety.doubts}
    unknown = [food for food in safety.dish.not_known if food not in doubted]
    if not safety.items and not doubted:
        known = " among the foods that tamis knows" if unknown else ""
        yield f"  no raw-food hazards{known}"
    yield from dict.fromkeys(f"  {_named(item)}: {_ended(item, recipe, safety)}" for item in safety.items)
    for doubt in doubted.values():
        yield f"  not known: {doubt_words(doubt)}"
    if unknown:
        yield f"  not known for {', '.join(unknown)}"


def _named(item: Item) -> str:
    form = _FORMS.get(item.form, "")
    return f"{item.food} ({name_of(item)}{', ' + form if form else ''})"


def _ended(item: Item, recipe: Recipe, safety: Safety) -> str:
    if item.cleared:
        line = recipe.actions[item.cleared.action]
        component = recipe.components[line.component].name or recipe.title
        return f"made safe in {component} by “{item.cleared.words}”"
    wanted = limit_words(item, safety.authority, recipe.language)
    served = f" (served {safety.served})" if safety.served else ""
    return f"not made safe{served}: {path_of(item, recipe)}; needed: {wanted}"


def _allergens(safety: Safety) -> Iterator[str]:
    for part in (safety.dish, *safety.parts):
        for declared in part.declared:
            none = "none among the foods that tamis knows" if part.not_known else "none"
            listed = "; ".join(allergen_words(allergen) for allergen in declared.allergens) or none
            yield f"  {part.name}, {declared.list.upper()}: {listed}"
        if part.not_known:
            yield f"  {part.name}: not known for {', '.join(part.not_known)}"


def allergen_words(allergen: Allergen) -> str:
    """An allergen with its foods, and whether it can be avoided."""
    foods = ", ".join(allergen.foods)
    if allergen.instead:
        return f"{allergen.name} only with the alternative ({foods})"
    return f"{allergen.name} ({foods})" + (", may be left out" if allergen.optional else "")


def claim_words(claim: Claim) -> str:
    """A tag that promises something, and what comes of it."""
    foods = ", ".join(claim.foods)
    said: dict[Verdict, str] = {
        "agrees": "no ingredient contradicts it",
        "contradicted": f"contradicted by {foods}",
        "unknown": f"not known for {foods}",
        "unchecked": "not checked",
    }
    return f"{claim.tag}: {said[claim.verdict]}"


def _said(text: str, source: str) -> str:
    return f"{text} [{source}]" if source else text


def report_data(safety: Safety, recipe: Recipe) -> dict[str, Any]:
    """Everything, as data; temperatures in words as the authority prints them."""
    return {
        "format": 1,
        "title": recipe.title,
        "authority": safety.authority,
        "source": rules().sources[safety.authority],
        "served": safety.served or None,
        "hazards": [_item_data(item, recipe, safety) for item in safety.items],
        "doubts": [{"food": doubt.food, "hazard": doubt.hazard} for doubt in safety.doubts],
        "dish": _part_data(safety.dish),
        "components": [_part_data(part) for part in safety.parts],
        "contradictions": [
            {"tag": c.tag, "food": c.food, "why": c.why, "optional": c.optional} for c in safety.contradictions
        ],
        "claims": [{"tag": claim.tag, "verdict": claim.verdict, "foods": list(claim.foods)} for claim in safety.claims],
        "cautions": [
            {"key": c.key, "text": c.text, "source": c.source or None, "action": c.action} for c in safety.cautions
        ],
        "notice": PREVAIL,
    }


def _item_data(item: Item, recipe: Recipe, safety: Safety) -> dict[str, Any]:
    cleared = item.cleared
    return {
        "hazard": item.hazard,
        "food": item.food,
        "form": item.form,
        "path": list(item.path),
        "cleared": {"action": cleared.action, "words": cleared.words, "by": cleared.by} if cleared else None,
        "limit": limit_words(item, safety.authority, recipe.language),
        "line": _ended(item, recipe, safety),
    }


def _part_data(part: Part) -> dict[str, Any]:
    return {
        "name": part.name,
        "allergens": {
            declared.list: [
                {"name": a.name, "foods": list(a.foods), "optional": a.optional, "instead": a.instead}
                for a in declared.allergens
            ]
            for declared in part.declared
        },
        "unknown": list(part.not_known),
    }
