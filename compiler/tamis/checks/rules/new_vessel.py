"""New food is put into a new vessel while the batch still lies in another, and nothing says how they meet.

Brackets act in order on one batch: the new food counts as added to what lies in the pan, though it lies
in a bowl. A cook reading this stands with two vessels and does not know which goes into which. Plain words in the
line or the next one may say it: `stir into the butter`, `pour both over the crumbs`, `whisk it into the pan`.

Give the first a name where its last line ends (`… and grind [as spices].`) and take it in again by it (`pound
[the spices] with …`); or say that this is made beside it (`[Meanwhile], whip …`), and take this in afterwards
(`Add [the cream]`).
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.objects import mixes_what_is_there
from tamis.checks.words import check_words, word_set
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.model.apart import closes_its_own
from tamis.model.batch import Food, matches_food
from tamis.model.mass import NOTHING
from tamis.model.words import plain, vessel_noun
from tamis.reading.clauses import Division, Ingredient, Naming, Reference, Time, Tool
from tamis.reading.plain_names import done_to, put_to
from tamis.reading.plain_tools import placed_tools
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import Stretch, View
    from tamis.checks.words import Words
    from tamis.kitchen.food import Role
    from tamis.model.recipe import Action
    from tamis.reading.plain import Plain
    from tamis.reading.plain_tools import Placed
    from tamis.reading.reading import Event

_FAT: Role = "fat"
RULE = "new-vessel"
LEVEL: Severity = "warning"
ABOUT = ("equipment",)
BAD = """\
title: Onions and cream
serves: 4

# Onions

Fry [2 onions, sliced] [in 20 g butter] [in a frying pan] [over low heat] [until soft, 10–12 min].
Whip [200 ml double cream] [in a bowl] [until thick].
"""
GOOD = """\
title: Onions and cream
serves: 4

# Onions

Fry [2 onions, sliced] [in 20 g butter] [in a frying pan] [over low heat] [until soft, 10–12 min].
[Meanwhile], whip [200 ml double cream] [in a bowl] [until thick].

Add [the cream].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Follows, in each component, the vessel that the batch lies in."""
    into = check_words(view.recipe.language).vessels.enters
    opens = word_set(view.recipe.language, "vessels.opens")
    put_by = {product.made_by for product in view.recipe.products if product.kind == "set-aside"}
    for component in view.recipe.components:
        lies_in: Tool | None = None
        last: Action | None = None
        begun = False
        for step in component.steps:
            for index in step.actions:
                action = view.recipe.actions[index]
                begun = begun or bool(action.takings) or any([view.recipe.uses[use].in_batch for use in action.uses])
                ends = any([type(read) is Naming and read.kind != "leaving" for read in action.reads])
                if (
                    step.meanwhile
                    or action.beside is not None
                    or (ends and closes_its_own(_events(action), action.parts, view.kitchen))
                ):
                    continue
                vessel = _vessel(action, into)
                said = None
                if last is not None and last.number in put_by:  # a later line takes it in again
                    lies_in = None
                if vessel and lies_in and _takes_new_food(view, action, vessel):
                    said = vessel.clause.span
                elif lies_in and not vessel:
                    said = _vessel_in_words(view, action, opens)
                if said and lies_in and not _meets(view, action, said.end, lies_in):
                    yield _finding(view, said, lies_in, last)
                last = action
                closed = ends or action.product is not None  # the next food begins another batch
                lies_in = None if closed or not begun else _divided(action, vessel or lies_in)


def _divided(action: Action, lies_in: Tool | None) -> Tool | None:
    """What is divided is no longer in its bowl, unless the line puts it into one after that."""
    if lies_in is None:
        return None
    divided = [read.clause.span.start for read in action.reads if type(read) is Division]
    return lies_in if not divided or lies_in.clause.span.start > max(divided) else None


def _meets(view: View, action: Action, behind: int, lies_in: Tool) -> bool:
    """Whether plain words say where it goes: *stir into the butter* or *into the pan*, further on in the line or in the
    next one, where the butter lies in the pan; or that what lay there goes in: *add the spinach*."""
    recipe, kitchen = view.recipe, view.kitchen
    noun = vessel_noun(lies_in.equipment.name, recipe.language)
    lines = [one for one in recipe.actions[action.number : action.number + 2] if one.component == action.component]
    if _is_named(view, lines, behind) or _is_for_frying(view, lines):
        return True
    places = [found for line in lines for found in put_to(line.parts, kitchen) if found.start >= behind]
    places += done_to(action.parts, kitchen)
    said = [words for found in places for words, _ in found.names]
    if any(words[-1:] == (noun,) for words in said):
        return True
    foods = _foods_before(view, action) if said else []
    return any(matches_food(words, food, kitchen) for words in said for food in foods)


def _is_for_frying(view: View, lines: list[Action]) -> bool:
    """Whether only fat is heated there, and the next line has no food of its own: what lay elsewhere is fried in it."""
    uses, heated = view.recipe.uses, any([use.verb.heat for use in lines[0].verbs])
    roles = [goods and goods.role for use in lines[0].uses for goods in [uses[use].ingredient.goods]]
    more = any([uses[use].in_batch for line in lines[1:] for use in line.uses])
    return heated and len(lines) > 1 and not more and all([role == _FAT for role in roles])


def _is_named(view: View, lines: list[Action], behind: int) -> bool:
    """Whether a bracket further on names what lies there besides the new food, puts it together with that, and takes
    nothing up from elsewhere: *fold into [the custard]*, *stir in [the onions]*."""
    kitchen = view.kitchen
    new = [use for number in lines[0].uses for use in [view.recipe.uses[number]] if use.in_batch]
    foods = [Food.of(-1, use.ingredient, plain(use.ingredient.name, kitchen.language), NOTHING, kitchen) for use in new]
    names = [
        plain(read.name, kitchen.language)
        for line in lines
        if not line.takings
        for read in line.reads
        if isinstance(read, Reference) and read.clause.span.start >= behind and _goes_in(line, read)
    ]
    return any(name and not any(matches_food(name, food, kitchen) for food in foods) for name in names)


def _goes_in(line: Action, read: Reference) -> bool:
    """Whether its verb puts it in, or puts something into it."""
    verb = next((use.verb for use in reversed(line.verbs) if use.span.start < read.clause.span.start), None)
    return verb is not None and (verb.adds or bool(read.preposition))


def _foods_before(view: View, action: Action) -> list[Food]:
    """What the lines before have put in."""
    foods = [
        use.ingredient for use in view.recipe.uses if use.component == action.component and use.action < action.number
    ]
    language = view.recipe.language
    return [Food.known_as(-1, plain(food.name, language), food.goods, NOTHING) for food in foods]


def _events(action: Action) -> list[Event]:
    """What the line says, in the order of its text."""
    places = [use.span.start for use in action.verbs] + [read.clause.span.start for read in action.reads]
    events: list[Event] = [*action.verbs, *action.reads]
    return [events[at] for at in sorted(range(len(places)), key=places.__getitem__)]


def _vessel(action: Action, into: Words) -> Tool | None:
    """The vessel that the batch lies in after an action that puts it there."""
    for tool in reversed(action.tools):
        if tool.equipment.kind == "vessel" and tool.preposition in into and not tool.contains:
            return tool
    return None


def _takes_new_food(view: View, action: Action, vessel: Tool) -> bool:
    """Whether new food goes into a vessel by itself: right before it, no verb and no word for the batch between. A bowl
    named again with an article is another one."""
    if vessel.definite or action.takings:
        return False
    if any(read.role in ("reference", "division") for read in action.reads):
        return False
    food = next((read for read in action.reads if isinstance(read, Ingredient) and not read.purpose), None)
    if food is None or food.clause.span.end > vessel.clause.span.start or _has_no_object(action, food):
        return False
    between = range(food.clause.span.end, vessel.clause.span.start)
    if any(use.span.start in between for use in action.verbs):
        return False
    return not any(_goes_along(words.plain) or _mixes(words, food) for words in view.plain_in(action))


def _has_no_object(action: Action, food: Ingredient) -> bool:
    """*Brown [in 20 g butter] in a pan*: a verb with no object but what is in hand."""
    verbs = [use.span.end for use in action.verbs if use.span.start < food.clause.span.start and use.verb.cooks]
    between = range(verbs[-1], food.clause.span.start) if verbs else range(0)
    return bool(verbs and food.preposition) and not any(
        part.span.start in between and part.text.strip() for part in action.parts
    )


def _mixes(words: Stretch, food: Ingredient) -> bool:
    """*Mix with [1 kg salt]*, *[boil for 5 min] with [vinegar]*: a verb with no object but what is in hand."""
    if words.start + len(words.plain.text) != food.clause.span.start:
        return False
    alone = len(words.plain) == 1 and words.plain.said[0] in word_set(words.plain.kitchen.language, "vessels.mixes")
    timed = alone and any([type(read) is Time and read.clause.span.end == words.start for read in words.action.reads])
    return timed or mixes_what_is_there(words.plain, words.start, words.action)


def _vessel_in_words(view: View, action: Action, opens: frozenset[str]) -> Span | None:
    """`In a clean bowl, whip [4 egg whites]`: a vessel that opens the line in plain words, before new food."""
    first = next(iter(view.plain_in(action)), None)
    if first is None or first.start != action.span.start or action.takings or opens.isdisjoint(first.plain.said[:1]):
        return None
    placed = first.plain.ask(_opens)
    if placed is None or any(read.role == "reference" for read in action.reads):
        return None
    food = any(isinstance(read, Ingredient) and not read.purpose for read in action.reads)
    return placed.span.shifted(first.start) if food else None


def _opens(plain: Plain) -> Placed | None:
    """`In a clean bowl,` at the start of a line."""
    placed = next(iter(plain.ask(placed_tools)), None)
    if placed is None or placed.span.start > 0 or plain.said[plain.after(placed.span.end) :][:1] != [","]:
        return None
    entered = placed.indefinite and placed.tool.preposition in check_words(plain.kitchen.language).vessels.opens
    return placed if entered and placed.tool.equipment.kind == "vessel" else None


def _goes_along(plain: Plain) -> bool:
    """Whether a word says that the batch itself goes along."""
    return not word_set(plain.kitchen.language, "vessels.goes_along").isdisjoint(plain.said)


def _finding(view: View, vessel: Span, lies_in: Tool, last: Action | None) -> Diagnostic:
    message = f"this food goes into another vessel, and nothing says that what lay in the {lies_in.name} goes with it"
    labels = [Label(lies_in.clause.span, "it was put here")]
    end = last.span.end if last else lies_in.clause.span.end
    if last is not None and last.span.start > lies_in.clause.span.end:
        labels.append(Label(Span(end - 1, end), "its last line ends here"))
    keys = ("as_any", "the_any", "meanwhile")
    named, the, meanwhile = (example(lies_in.clause.language, key) for key in keys)
    line = view.source.place(end - 1).line
    hint = (
        f"name the first food at the end of line {line}, {named}, and write {the} where it goes in; or, if the new "
        f"food is made at the same time and added in a later step, begin this line with {meanwhile} and write {the} "
        "there"
    )
    return Diagnostic(RULE, LEVEL, vessel, message, hint, tuple(labels))
