"""Why a line was understood so, a sentence an entry: the rule, and the words that it goes by."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.flow.records import Reason
from tamis.model.effects import Begins, Beside, Closes, Follows, Gives, Names, Refers, Splits, Turns, Weighs
from tamis.quantity.display import written
from tamis.reading.clauses import Tool
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.flow.told import Told
    from tamis.model.effects import Entry, Rule

_MEANS: dict[Rule, str] = {
    "holds": "{what}, in which it is{told}",
    "kind": "{what}, which contains food of that kind{told}",
    "made-of": "{what}, which is made of the right foods",
    "pieces": "{what}, which lies in such pieces{told}",
    "share-left": "{what}, of which a share was taken before",
    "in-hand": "what is in hand",
    "only-open": "{what}, the only thing that was set aside",
    "own-name": "what is in hand, of which this is made",
    "own-part": "{what}, whose food has such a part by nature",
    "used-recipe": "the dish of another recipe, which the header names",
    "equipment": "equipment",
    "medium": "what was put there for this: food goes into it, and none of it is used up",
    "equipment-here": "equipment that was used before",
}
_TURNS: dict[Rule, str] = {
    "meanwhile": "what is done beside a wait is a batch of its own",
    "meanwhile-over": "the work before it goes on",
    "goes-back": "this names what the work before it holds, so that goes on",
    "apart": "this is made and set aside in one line, so what was in hand waits",
    "apart-over": "what was in hand is taken up again",
    "lifted-out": "what is lifted out is a batch of its own from here on",
    "lifted-over": "what it was lifted out of is worked on from here on",
    "only-one-left": "what was set aside is all that is left, so it is what is made here",
}
_CLOSES: dict[Rule, str] = {
    "takes-over": "sets {what} aside: the step begins with something else that was made before",
    "meanwhile-over": "sets {what} aside, since the work beside the wait ends",
    "lifted-out": "sets {what} aside, out of which something was lifted",
    "component-end": "what is in hand at the end is “{what}”",
}
_FOLLOWS: dict[Rule, str] = {
    "same-batch": "which worked on the same food",
    "goes-in": "which worked last on: {what}",
    "weighed": "whose weight is asked for",
    "ready": "which makes the equipment ready",
    "heated": "which heats the place",
    "hot-vessel": "whose vessel is still hot",
    "meanwhile-over": "which is done beside the wait",
}


def reason_of(told: Told, entry: Entry) -> Reason | None:
    """The reason that an entry tells; None where the words say all themselves."""
    says = _SAYS.get(type(entry.effect))
    text = says(told, entry, entry.effect) if says else ""
    if not text:
        return None
    whole = entry.read < 0 or isinstance(entry.effect, Follows | Gives | Closes)
    words = "" if whole else _inside(told, entry)
    line = _line(told, entry.why.entry) if entry.why.entry >= 0 else 0
    return Reason(words, text, entry.why.rule, line)


def _inside(told: Told, entry: Entry) -> str:
    """What the bracket of an entry holds."""
    return " ".join(told.source.slice(entry.clause)[1:-1].split())


def _line(told: Told, number: int) -> int:
    return told.source.place(told.recipe.log[number].clause.start).line


def _told(told: Told, number: int) -> str:
    """Who said so: `the heading “Dough”, line 4`, `“as egg wash”, line 12`."""
    entry = told.recipe.log[number]
    line = _line(told, number)
    if isinstance(entry.effect, Names) and entry.why.rule == "component-end":
        component = told.recipe.components[entry.component]
        return f"the heading “{component.name}”, line {line}" if component.heading else f"the title, line {line}"
    return f"“{_inside(told, entry)}”, line {line}"


def _refers(told: Told, entry: Entry, effect: Refers) -> str:
    where = _told(told, entry.why.entry) if entry.why.entry >= 0 else ""
    if entry.why.rule == "named":
        text = f"named by {where}" if where else f"so called: {told.name(effect.batch)}"
    else:
        in_hand = effect.batch >= 0 and effect.batch == entry.batch
        what = "what is in hand" if in_hand else told.name(effect.batch)
        text = _MEANS.get(entry.why.rule, "{what}").format(what=what, told=f" ({where})" if where else "")
    others = " or ".join(told.name(batch) for batch in effect.also)
    return f"{text}; it may mean {others} as well" if others else text


def _begins(told: Told, entry: Entry, effect: Begins) -> str:
    return "begins something new: nothing was in hand"


def _gives(told: Told, entry: Entry, effect: Gives) -> str:
    """Into what is in hand; of what began in the same line nobody asks."""
    if effect.food is None or effect.batch != entry.batch:
        return ""
    began = told.began[effect.batch]
    return "" if began == entry.action else f"food goes into what is in hand since line {told.line(began)}"


def _weighs(told: Told, entry: Entry, effect: Weighs) -> str:
    return f"comes to {written(effect.measure, told.recipe.language)}"


def _closes(told: Told, entry: Entry, effect: Closes) -> str:
    return _CLOSES.get(entry.why.rule, "").format(what=told.name(effect.batch))


def _turns(told: Told, entry: Entry, effect: Turns) -> str:
    return _TURNS.get(entry.why.rule, "")


def _splits(told: Told, entry: Entry, effect: Splits) -> str:
    return "divided, since it goes into several" if entry.why.rule == "divided-between" else ""


def _tool(told: Told, entry: Entry, effect: Tool) -> str:
    return "as many as were named before" if entry.why.rule == "as-before" else ""


def _follows(told: Told, entry: Entry, effect: Follows) -> str:
    line = told.line(effect.action)
    until = f"until line {line} has begun" if effect.from_start else f"for the end of line {line}"
    what = told.said(entry.words)
    return f"waits {until}, {_FOLLOWS[entry.why.rule].format(what=what)}"


def _beside(told: Told, entry: Entry, effect: Beside) -> str:
    return f"runs beside the wait of line {told.line(effect.action)}" if effect.action >= 0 else ""


def _found(told: Told, entry: Entry, effect: Diagnostic) -> str:
    return f"{effect.severity}: {effect.message} ({effect.rule})"


_SAYS: dict[type, Callable[[Told, Entry, Any], str]] = {
    Refers: _refers,
    Begins: _begins,
    Gives: _gives,
    Weighs: _weighs,
    Closes: _closes,
    Turns: _turns,
    Splits: _splits,
    Tool: _tool,
    Follows: _follows,
    Beside: _beside,
    Diagnostic: _found,
}
