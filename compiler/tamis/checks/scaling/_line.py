"""A line while it is read: what it put in and took so far, which vessels it named, and what its words tell of them."""

from __future__ import annotations

from tamis.checks.objects import mixes_what_is_there
from tamis.checks.scaling._hand import whole
from tamis.checks.scaling._scene import practice
from tamis.checks.words import check_words
from tamis.quantity.measure import base
from tamis.reading.clauses import Naming, Reference
from tamis.reading.plain import plain_of
from tamis.reading.plain_tools import tools_in
from tamis.reading.prose import commands
from tamis.record import NamedTuple
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene, Vessel
    from tamis.kitchen.verbs import Verb
    from tamis.model.recipe import Action
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient, Tool
    from tamis.reading.plain_tools import Placed
    from tamis.source import Span


class Taken(NamedTuple):
    """What a clause of a line took: so much of a batch, when so many vessels had been named."""

    source: int
    clause: Span
    size: int
    vessels: int


class Line:
    """A line while it is read: the batches that began in it, the vessels that it named, those that its plain words put
    food into and that are not read yet (`placed`), what it put in so far and where it said so last, in what it got
    food ready beside its batch, the verb by which liquid is to be parted from what it names, what it leaves (`left`),
    how much of that stays where it was, and the vessel that it goes into (`aside`)."""

    __slots__ = (
        "action", "apart", "aside", "begun", "beside", "covers", "food", "given", "kitchen", "left", "mixed", "named",
        "parting", "placed", "since_verb", "stays", "taken", "texts", "vessels", "words",
    )  # fmt: skip

    def __init__(self, scene: Scene, action: Action) -> None:
        self.action, self.kitchen, self.words = action, scene.kitchen, check_words(scene.recipe.language)
        self.begun: set[int] = set()
        self.vessels: list[Vessel] = []
        self.apart: list[Vessel] = []
        self.taken: list[Taken] = []
        self.given = self.since_verb = self.beside = 0
        self.covers = self.mixed = False
        self.named = -1
        self.parting: Verb | None = None
        self.food: Span | None = None
        self.left = next((read for read in action.reads if isinstance(read, Naming) and read.kind == "leaving"), None)
        self.stays = 0
        self.aside: Vessel | None = None
        self.texts = [part for part in action.parts if isinstance(part, Text)]
        said = [(text, one) for text in self.texts for one in tools_in(text, self.kitchen) if one.tool.preposition]
        self.placed = [one for text, one in said if not self._is_where_it_stays(text, one)]

    def says(self, words: tuple[str, ...]) -> bool:
        """Whether its plain words have one of these in them."""
        return any(word in text.text.lower() for text in self.texts for word in words)

    def does(self, what: str) -> bool:
        """Whether one of its verbs is in a list of the rules of thumb."""
        return any(use.verb.base in practice().verbs[what] for use in self.action.verbs)

    def give(self, size: int, read: int) -> None:
        """So much of another batch comes in by a clause: of several that the cook may choose from, the most."""
        words, found = self.words.scaling.choice, self.action.reads[read] if read >= 0 else None
        if isinstance(found, Reference) and any(word in found.clause.text for word in words):
            self.given = max(self.given, size)
        else:
            self.given += size
        self.since_verb += size

    def pours_it(self) -> bool:
        """*Scald [the milk] [in a pan] and pour it over*: whether what was got ready in a vessel leaves it again."""
        along, pouring = self.words.vessels.goes_along, practice().verbs["pouring"]
        said = [plain_of(text.text, self.kitchen) for text in self.texts]
        found = [(one.verb.base, plain.said[one.end : one.end + 1]) for plain in said for one in plain.ask(commands)]
        return any(verb in pouring and not set(along).isdisjoint(behind) for verb, behind in found)

    def drowns(self, food: Ingredient) -> bool:
        """Whether water that nobody measures covers what is there: *cover with [water]*, *[in boiling water]*."""
        boils = self.action.work.station == "ring" or any(one.equipment.kind == "vessel" for one in self.action.tools)
        enters = food.preposition in self.words.vessels.enters
        return boils if enters else self.says(self.words.scaling.covers)

    def leaves_liquid(self) -> bool:
        """Whether it is the liquid that a line leaves: it is called so, or parted from the rest."""
        name = self.left.name if self.left else ""
        larder = self.kitchen.larder
        known = larder.named(name) or larder.named(name.rpartition(" ")[2])  # smoky milk
        return known.goods.liquid if known else bool(name) and any(one.verb.separates for one in self.action.verbs)

    def lifts_out(self) -> bool:
        """Whether its batch leaves a liquid behind where it lies: *lift it on to a plate, [leaving broth]*."""
        return self.parting is None and self.left is not None and not self.left.measure and self.leaves_liquid()

    def _is_where_it_stays(self, text: Text, found: Placed) -> bool:
        """*[Leaving broth] in the pan*: whether a vessel stands right behind what the line leaves."""
        between = text.text[: found.span.start - text.span.start]
        return self.left is not None and self.left.clause.span.end == text.span.start and "," not in between

    def puts_aside(self, start: int) -> bool:
        """*Tip the fat out [into a bowl], [reserving duck fat]*: whether what it leaves goes into the vessel at this
        place, as words before that name it."""
        noun = self.left.name.lower().rpartition(" ")[2] if self.left else ""
        before = (text for text in self.texts if text.span.start < start <= text.span.end)
        return bool(noun) and any(noun in text.text[: start - text.span.start].lower().split() for text in before)

    def is_its_batch(self, tool: Tool, batch: int) -> bool:
        """Whether a line's batch is put into a vessel: not what is beaten or melted there before it joins."""
        if batch in self.begun:
            return True
        opens = tool.clause.span.start <= self.action.span.start + 1 and bool(self.action.uses)
        words, start = set(self.words.vessels.goes_along), tool.clause.span.start
        before = [part.text.lower().split() for part in self.texts if part.span.start < start]
        if self.apart or (before and not set(self.words.vessels.some).isdisjoint(before[-1])):
            return False  # what was got ready there goes on, or only some
        if (not self.since_verb and not opens) or (self.named == batch and self._is_put_on_food(start)):
            return True
        return any(not words.isdisjoint(text) for text in before) or self._mixes()

    def _is_put_on_food(self, start: int) -> bool:
        """*Pour [the milk] over [the breadcrumbs] [in a bowl]*: whether a vessel stands right behind the food to which
        the batch is put."""
        if self.food is None or not 0 <= start - self.food.end <= 1:
            return False
        before = next((text.text.lower().split() for text in self.texts if text.span.end == self.food.start), [])
        return bool(before) and before[-1] in self.words.vessels.puts_in

    def _mixes(self) -> bool:
        """*Mix with [1 kg salt] in a bowl*: whether a verb has no object but what is in hand."""
        kitchen, action = self.kitchen, self.action
        return any(mixes_what_is_there(plain_of(text.text, kitchen), text.span.start, action) for text in self.texts)

    def is_share(self, tool: Tool) -> bool:
        """Whether a vessel stands right behind a thing that the line parts, or that goes there by itself while another
        went into a vessel before: *a third of the sauce round it, and [the rest of the sauce] [in a jug]*."""
        *before, last = self.taken
        between = tool.clause.span.start - last.clause.end
        own = any(one.source == last.source or one.vessels < last.vessels for one in before)
        return own and not tool.definite and 0 <= between <= 1

    def amount(self, measure: Measure | None) -> int:
        """Grams or millilitres of a measure; 0 where it is neither."""
        amount = base(measure, self.kitchen.units) if measure is not None else None
        return whole(amount.hi) if amount is not None else 0

    def measured(self, read: int) -> int:
        """Of what a clause takes or leaves, so much as it says: *500 ml of the stock*."""
        found = self.action.reads[read] if read >= 0 else None
        share = found.share if isinstance(found, Reference) else None
        return self.amount(share.measure if share else found.measure if isinstance(found, Naming) else None)

    def is_put_to(self, read: int) -> bool:
        """Whether the batch in hand goes to what is named, and not that to it: *pour it over [the fish]*, and *into
        [the sauce]*, but not *pour over [the sauce]*."""
        found = self.action.reads[read] if read >= 0 else None
        words = self.words.vessels
        if not isinstance(found, Reference) or found.preposition not in (*words.puts_in, *words.puts_to):
            return False
        if self.does("dipping"):
            return False
        if found.preposition in words.puts_to:
            return True
        start = found.clause.span.start
        behind = next((text.text for text in self.texts if text.span.end == start), "")
        before = behind.lower().split()[: -len(found.preposition.split())]
        if any(word in behind.lower() for word in words.upon):
            return True
        return before[-1] in words.goes_along if before else self.action.span.start < start - len(behind)
