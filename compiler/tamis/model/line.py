"""One line while its clauses act: what has been done in it so far, and what it must wait for."""

from __future__ import annotations

from fractions import Fraction

from tamis.diagnostics import Diagnostic, Label
from tamis.model.effects import SAID, Why
from tamis.model.mass import NONE, NOTHING, ONE, water_in
from tamis.model.words import model_words, vessel_noun
from tamis.quantity.amount import exactly
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Reference, Tool
from tamis.reading.prose import prose_words
from tamis.reading.tables import tables
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Equipment, Station
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Batch
    from tamis.model.goes_back import Joins
    from tamis.model.hands import Hands
    from tamis.model.mass import Mass
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Ingredient, Read
    from tamis.reading.reading import ActionRead

GOES_IN, AS_BEFORE, DIVIDED_BETWEEN = Why("goes-in"), Why("as-before"), Why("divided-between")


class Parting:
    """What a line lifted out, and called how, of which rest: where that lay, and whether the line works on what was
    lifted out (`out`)."""

    __slots__ = ("heat", "lifted", "name", "out", "rest")

    def __init__(self, lifted: Batch, name: str, rest: Batch) -> None:
        self.lifted = lifted
        self.name = name
        self.rest = rest
        self.heat: tuple[bool, Station] = (rest.on_heat, rest.station)
        self.out = True


class Line:
    """The work of one line on the batches of its component."""

    __slots__ = (
        "after", "after_start", "at_once", "batches", "before_time", "beside", "carried", "cold_water", "fresh",
        "joined", "joins", "labour", "mass_before", "masses", "named", "number", "part_of_next", "parting",
        "piece_mass", "pieces_before", "product", "read", "reads", "repeats", "step", "takings", "times", "tools",
        "tools_before", "uses", "verb", "vessel", "walker", "within", "worked",
    )  # fmt: skip

    def __init__(self, walker: Hands, read: ActionRead, number: int, step: int, batches: tuple[Fraction, bool]) -> None:
        self.walker = walker
        self.read = read
        self.labour = walker.flow.labours[number]
        self.number = number
        self.step = step
        self.batches = batches
        self.repeats = ONE
        if self.labour.repeats:
            from tamis.reading.repeated import times_of_food

            self.repeats = times_of_food(read)
        self.times = ONE
        self.after: set[int] = set()
        self.after_start: set[int] = set()
        self.uses: list[int] = []
        self.takings: list[int] = []
        self.tools: list[Tool] = []
        self.verb: Verb | None = None
        self.worked = 0  # so many uses stand before that verb
        self.product: int | None = None
        self.vessel = ""
        self.joins: Joins | None = None
        self.tools_before: list[Tool] = []  # of what a meanwhile makes and then puts into the work before it
        self.beside: int | None = None
        self.at_once = False
        self.within: int | None = None
        self.before_time = True
        self.cold_water = NONE  # g, put in for boiling and the like
        self.fresh = walker.new_step
        self.joined = False
        self.carried: Batch | None = None
        self.named: Batch | None = None
        self.part_of_next = ""  # what alone goes in of the food that comes next: *squeeze [the juice] from [2 oranges]*
        self.piece_mass: Mass | None = None
        self.mass_before = NOTHING
        self.masses: dict[int, Mass] = {}  # by the places of verbs, what they worked on
        self.pieces_before: tuple[Amount, str] | None = None
        self.parting: Parting | None = None
        self.reads: list[Read] = []  # the clauses that have acted
        for repeat in reversed(self.labour.repeats):  # the first of a kind counts
            if repeat.kind == "times":
                self.times = repeat.number
            elif repeat.kind in ("batches", "loads"):  # from its line to the end of the step
                self.batches = repeat.number, repeat.kind == "loads"

    def wait_for(self, action: int, why: Why, from_start: bool = False) -> None:
        """An earlier action must have ended before this one starts, or its wait begun."""
        those = self.after_start if from_start else self.after
        if action != self.number and action not in those:
            those.add(action)
            self.walker.follow(action, why, from_start)

    def link(self, batch: Batch, why: Why = GOES_IN) -> None:
        if batch.last is not None:
            self.wait_for(batch.last, why, batch.early)

    def only_part(self, food: Ingredient) -> Ingredient:
        """The food, or what alone of it goes in."""
        part, self.part_of_next = self.part_of_next, ""
        return food._replace(part=part) if part else food

    def hold(self, tool: Tool) -> None:
        """A piece of equipment is used; the food may be divided between several."""
        walker, known = self.walker, self._as_named_before(tool)
        self.tools.append(known)
        self.cold_water += water_in(known, walker.flow.kitchen)
        walker.tools.append(known)
        walker.emit(known, SAID if known is tool else AS_BEFORE)
        batch = walker.present
        self._lie_in(known, batch)
        if known.divides and batch:
            one = nouns(walker.flow.kitchen.language).singular
            number = known.number + self._filled_before(known)
            walker.split(batch, (exactly(number), one(known.name.lower())), DIVIDED_BETWEEN)

    def _filled_before(self, tool: Tool) -> Fraction:
        """*Between the other 2 tins*: how many of them were filled before."""
        language = self.walker.flow.kitchen.language
        if model_words(language).others.isdisjoint(tool.clause.text.lower().split()):
            return NONE
        one, inside = nouns(language).singular, prose_words(language).inside
        before = [other for other in self.walker.tools[:-1] if other.preposition in inside]
        return sum((other.number for other in before if one(_noun(other)) == one(_noun(tool))), NONE)

    def _lie_in(self, tool: Tool, batch: Batch | None) -> None:
        """What is put into a vessel lies in it; if the line names that first, what it begins does."""
        language = self.walker.flow.kitchen.language
        inside = not tool.preposition or tool.preposition in prose_words(language).inside
        if tool.equipment.kind == "vessel" and inside:
            noun = vessel_noun(tool.equipment.name, language)
            if batch:
                batch.vessel = noun
            else:
                self.vessel = noun

    def _as_named_before(self, tool: Tool) -> Tool:
        """*Between the prepared tins*: as many as were prepared."""
        noun = _noun(tool)
        one = nouns(self.walker.flow.kitchen.language).singular
        several = (
            tool.definite
            and tool.number == 1
            and one(noun) != noun
            and tool.preposition in tables(self.walker.flow.kitchen.language).dividing
        )
        if not several or tool.equipment.kind != "vessel":
            return tool
        alike = (other for other in reversed(self.walker.tools) if one(_noun(other)) == one(noun))
        before = next((other for other in alike if other.number > 1), None)
        return tool._replace(number=before.number, divides=True, several=False) if before else tool

    def name_tool(self, reference: Reference, equipment: Equipment) -> None:
        """Equipment called by `the`: the piece named before, or one that every kitchen has."""
        share, name = reference.share, reference.name
        measure = share.measure if share is not None and share.kind == "measure" else None
        number = measure.amount.hi if measure is not None else ONE
        if measure is not None and number == 1:
            name = nouns(self.walker.flow.kitchen.language).one(name)
        divides = number > 1 and reference.preposition in tables(self.walker.flow.kitchen.language).dividing
        self.hold(Tool(reference.clause, name, equipment, (), number, "", reference.preposition, True, divides))

    def say(self, rule: str, clause: object, message: str, hint: str, labels: tuple[Label, ...] = ()) -> None:
        span = clause.span  # type: ignore[attr-defined]  # always a clause
        self.walker.tell(Diagnostic(rule, "error", span, message, hint, labels))


def _noun(tool: Tool) -> str:
    """The last word by which the cook calls it."""
    return tool.name.lower().rpartition(" ")[2]
