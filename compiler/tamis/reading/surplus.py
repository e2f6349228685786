"""More food behind a name: `75 g butter plus 2 tbsp` is one amount; `75 g butter, plus 10 g for the tin` is two uses of
the butter; `1 onion stuck with 3 cloves` are two foods."""

from __future__ import annotations

from tamis.reading.clause import child, leaves
from tamis.reading.food_parts import Parts
from tamis.reading.measured import MEASURES
from tamis.reading.prose import prose_words
from tamis.reading.quantities import amount
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def second_use(reading: Reading, parts: Parts) -> tuple[Parts, Parts | None]:
    """The food without what more of it has a purpose of its own, and that."""
    at = next((n for n, node in enumerate(parts.tail) if node[0] == "surplus"), -1)
    measure = measured_more(parts.tail[at][1]) if at >= 0 else ()
    if not measure:
        return parts, None
    behind = parts.tail[at + 1 :]
    purposes = [node for node in (*parts.tail[at][1], *behind) if node[0] == "purpose"]
    if not purposes:
        if measure[0][0] == "counted":
            said = reading.said(measure)
            message = f"“{said}” more of what, and what for?"
            raise reading.fail(
                "clause-role", reading.span(measure), message, "write one number, or what the rest is for"
            )
        return parts, None
    comma = at > 0 and parts.tail[at - 1][0] == "COMMA"
    rest = tuple(node for node in behind if node[0] != "purpose")
    name = tuple(node for node in parts.name if node[0] not in ("bracket", *MEASURES))
    more = Parts("", "", None, measure, None, name, tuple(purposes), False)
    return parts._replace(tail=(*parts.tail[: at - comma], *rest)), more


def measured_more(nodes: Sequence[Node]) -> tuple[Node, ...]:
    """What is measured behind *plus*, as a measure before a name; nothing of `plus extra for the tin`."""
    found = child(nodes, "weight") or child(nodes, "amount") or child(nodes, "NUMWORD")
    if found is None:
        return ()
    hedges = child(nodes, "hedges")
    inside = [hedges] if hedges else []
    if found[0] == "weight":
        return (("weighed", [*inside, found]),)
    return (("counted", [*inside, ("count", [found])]),)


def with_work_behind(reading: Reading, parts: Parts) -> Parts:
    """`2 eggs well beaten`, `1 tbsp flour mixed with water`: what was done to a food, behind its name without a comma,
    is no part of the name."""
    at = next((at for at, node in enumerate(parts.name) if node[0] == "bracket"), 0)
    if at and parts.name[at + 1 :]:  # a yeast cake (17 g) dissolved in milk
        whole = parts._replace(name=(*parts.name[:at], *parts.name[at + 1 :]))
        done = with_work_behind(reading, whole)
        if done is not whole and len(done.name) == len(leaves(parts.name[:at])):
            return done._replace(name=parts.name[:at], tail=(parts.name[at], *done.tail))
    kitchen, words = reading.kitchen, leaves(parts.name)
    prose, larder, works = prose_words(kitchen.language), kitchen.larder, False
    for at in range(len(words) - 1, 0, -1):
        word = words[at][1].lower()
        works, worked = kitchen.verbs.participle(word) is not None, works
        how = word.endswith(prose.adverbs) or word in prose.particles or larder.is_state(word) or larder.tells_how(word)
        if not (works or how):
            return parts
        if (works or worked) and larder.find(reading.keys(words[:at])) is not None:
            place: list[Node] = []
            tail = parts.tail
            if tail and tail[0][0] == "place":
                place, tail = tail[0][1], tail[1:]
            behind: Node = ("preparation", [("said", [*words[at:], *place])])
            return parts._replace(name=tuple(words[:at]), tail=(behind, *tail))
    return parts


def joined_food(reading: Reading, parts: Parts) -> Parts | None:
    """The measured food that the words behind a name say this one is worked with: `stuck with 3 cloves`."""
    said = [node for part in parts.tail if part[0] in ("preparation", "place") for node in (part, *part[1])]
    joined = next((found for node in said if node[1].__class__ is list and (found := child(node[1], "joined"))), None)
    if joined is None:
        return None
    preposition, measure, *name = (node for node in joined[1] if node[0] != "OF")
    into = measure[0] == "count" and preposition[1].lower() in reading.words.cut_in
    if into and reading.kitchen.larder.find(reading.keys(name)) is None:  # cut in 4 pieces
        amount(reading, measure)
        return None
    measured: Node = measure if measure[0] == "weighed" else ("counted", [measure])
    return Parts("", "", None, (measured,), None, tuple(name), (), False)
