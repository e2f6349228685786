"""What a clause says, once its role is known: one record a role.

Spans count in the file. A record holds what the cook wrote, with names looked up in the goods, the verbs and the
equipment; what follows from it (which batch, which mass) is the model's business.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.equipment import Equipment
from tamis.kitchen.goods import Goods
from tamis.kitchen.verbs import Verb
from tamis.quantity.amount import Amount
from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.record import NamedTuple
from tamis.source import NOWHERE, Span
from tamis.syntax.document import Clause
from tamis.typed import Literal

Role = Literal[
    "ingredient",
    "unmeasured",
    "medium",
    "reference",
    "equipment",
    "setting",
    "target",
    "time",
    "cue",
    "tending",
    "pause",
    "naming",
    "division",
    "repeat",
    "meanwhile",
    "manner",
]


class Share(NamedTuple):
    """A part of something: a fraction, a measure of it, the rest of it, some, or all (but a measure).

    `kind` is `fraction` (with `fraction`), `measure` (with `measure`; `also` is the same in other measures), `rest`,
    `some`, `all`, or `but` (all but `measure`). `another` says that the same fraction was taken before, `of_rest` that
    the fraction is of what is left: half of the remaining cream.
    """

    kind: Literal["fraction", "measure", "rest", "some", "all", "but"]
    fraction: Fraction = Fraction(1)
    measure: Measure | None = None
    another: bool = False
    also: tuple[Measure, ...] = ()
    of_rest: bool = False


class Percent(NamedTuple):
    """A measure that depends on another weight: `72 %` of the flour, `2 % of its weight`, `18 g per kg of the duck`.

    `of` is "flour" or the food's name ("its" for the batch); `per_kg` is set for the last form, with the `base` that
    it is so much of.
    """

    amount: Amount
    of: str
    per_kg: Measure | None = None
    base: Measure | None = None


class Ingredient(NamedTuple):
    """One use of a food, as written.

    `measures` are added up (`1 cup plus 2 tbsp`); `also` is the same amount in another measure; `each` the weight of
    a piece; `prepared` the weight once stoned, peeled … (with the word for it, or for what of each piece weighs so).
    `share` is the part of the measure that goes in here. `part` is juice, zest, leaves … taken off the food named.
    `purpose` keeps it out of the batch. `bound` says that the measure is the least or the most; `wait` is how long it
    is soaked, thawed … before; `vague` words such as *a few sprigs*; `definite` is a part of the food that is there:
    `the juice of the lemon`. `for_each` is the noun of what each gets so much (on each bun; "" where none is told),
    None otherwise.

    `measure_span` is where `measure_text` stands; `preparation_spans` and `purpose_spans` are the places of what these
    two were put together from, with commas.
    """

    clause: Clause
    name: str
    name_span: Span
    goods: Goods | None
    states: tuple[str, ...] = ()
    piece_word: str = ""
    measures: tuple[Measure, ...] = ()
    measure_text: str = ""
    about: bool = False
    also: tuple[Measure, ...] = ()
    each: Measure | None = None
    prepared: Measure | None = None
    prepared_word: str = ""
    size: str = ""
    share: Share | None = None
    part: str = ""
    preposition: str = ""
    preparation: str = ""
    purpose: str = ""
    optional: bool = False
    alternatives: tuple[Ingredient, ...] = ()
    percent: Percent | None = None
    at: Amount | None = None
    role: Role = "ingredient"
    bound: Literal["", "least", "most"] = ""
    wait: Duration | None = None
    vague: str = ""
    definite: bool = False
    measure_span: Span = NOWHERE
    preparation_spans: tuple[Span, ...] = ()
    purpose_spans: tuple[Span, ...] = ()
    for_each: str | None = None

    @property
    def measured(self) -> bool:
        """Whether a cook can tell from the text how much is meant."""
        return bool(self.measures) or self.percent is not None


class Reference(NamedTuple):
    """Something made, opened or set out before: `the poolish`, `a third of the milk`, `the oven`.

    `removed` is set by the reader where a verb such as *discard* governs it.
    """

    clause: Clause
    name: str
    name_span: Span
    share: Share | None = None
    preposition: str = ""
    preparation: str = ""
    role: Role = "reference"


class Tool(NamedTuple):
    """A piece of equipment; `number` pieces of it, `size` as written, at `size_span`; `divides` where the food goes
    between them, `words` what is said of it behind it (sterilised). `several` says that nobody tells how many: `into
    buttered pans`."""

    clause: Clause
    name: str
    equipment: Equipment
    adjectives: tuple[str, ...] = ()
    number: Fraction = Fraction(1)
    size: str = ""
    preposition: str = ""
    definite: bool = False
    divides: bool = False
    contains: str = ""
    role: Role = "equipment"
    words: str = ""
    size_span: Span = NOWHERE
    several: bool = False


SettingKind = Literal["temperature", "heat", "speed", "off", "room"]


class Setting(NamedTuple):
    """How hot or how fast: degrees Celsius, a word for the heat, a speed, off the heat, or a room's temperature.
    `moist` is the share of damp in the air, in per cent; `degrees_span` where the degrees stand, or the heat's word."""

    clause: Clause
    kind: SettingKind
    celsius: Amount | None = None
    fan: bool = False
    word: str = ""
    text: str = ""
    role: Role = "setting"
    moist: Amount | None = None
    degrees_span: Span = NOWHERE


class Target(NamedTuple):
    """What is to be reached: a temperature, a state (`to the boil`), a measure (`to 200 ml`) or a size;
    `degrees_span` is where the temperature stands."""

    clause: Clause
    kind: Literal["temperature", "state", "measure", "size"]
    celsius: Amount | None = None
    word: str = ""
    measure: Measure | None = None
    text: str = ""
    role: Role = "target"
    degrees_span: Span = NOWHERE


class Time(NamedTuple):
    """How long: a duration with the verb that fills it, if the clause names one.

    `per` makes it a rate (`20 min per 500 g`), to which `plus` is added once; `sides` doubles it (`3 min on each
    side`), `each` is of each batch, load or piece; `more` adds to what was cooked before (`another 5 min`). `hands` is
    set by `hands-on` / `unattended` after a comma. `before` is the work that is so long off: `1 h before roasting`.
    """

    clause: Clause
    duration: Duration
    verb: Verb | None = None
    verb_text: str = ""
    per: Measure | None = None
    sides: bool = False
    more: bool = False
    setting: Setting | None = None
    hands: bool | None = None
    text: str = ""
    each: bool = False
    plus: Duration | None = None
    role: Role = "time"
    before: str = ""


class Cue(NamedTuple):
    """What to look for; `celsius` is a temperature named in it, `duration` the time beside it, `verb` the work that
    fills this where the clause names one, `test` how long a trial takes (`until a cube of bread browns in 40 s`)."""

    clause: Clause
    text: str
    celsius: Amount | None = None
    duration: Duration | None = None
    verb: Verb | None = None
    verb_text: str = ""
    test: Duration | None = None
    role: Role = "cue"


class Tending(NamedTuple):
    """Work that a wait asks for: `stirring all the time` (constant), `stirring often`, `basting every 15 min`,
    `turning once`, `turning after 20 min`."""

    clause: Clause
    text: str
    constant: bool = False
    every: Duration | None = None
    once: bool = False
    after: Duration | None = None
    often: bool = False
    role: Role = "tending"


class Pause(NamedTuple):
    """How the next thing follows: at once, within a time, kept warm, or a time before serving.

    What keeps it warm has a `verb`; `setting` is how warm, or over which heat."""

    clause: Clause
    kind: Literal["at-once", "within", "keep-warm", "before-serving"]
    duration: Duration | None = None
    setting: Setting | None = None
    verb: Verb | None = None
    verb_text: str = ""
    role: Role = "pause"

    @property
    def waits(self) -> bool:
        """Whether it gives its line a length."""
        return self.kind == "keep-warm" and self.duration is not None


class Naming(NamedTuple):
    """A name for the batch (`as`), for what it leaves behind (`leaving`; `also` is its measure in other units), or
    closing it (`set-aside`)."""

    clause: Clause
    kind: Literal["as", "leaving", "set-aside"]
    name: str = ""
    measure: Measure | None = None
    role: Role = "naming"
    also: tuple[Measure, ...] = ()


class Division(NamedTuple):
    """The batch becomes pieces: `into 2 pieces`, `into 40 pieces (11 g each)`, `into 2-cm cubes` (no number).
    `of_each`: every piece of the batch is divided so. `food`: what it is behind a verb that fills: into 6 peppers."""

    clause: Clause
    number: Amount | None
    noun: str
    each: Measure | None = None
    text: str = ""
    of_each: bool = False
    food: Ingredient | None = None
    role: Role = "division"


class Repeat(NamedTuple):
    """The line (`times`), the step (`step-times`), or the rest of the step in batches or loads, is done again.

    `of` is what a batch holds where both are told (`in 3 batches of 8`). `bare`: nobody says how often (`Repeat`)."""

    clause: Clause
    kind: Literal["times", "step-times", "batches", "loads", "batch-size", "additions"]
    number: Fraction
    of: Measure | None = None
    role: Role = "repeat"
    bare: bool = False


class Meanwhile(NamedTuple):
    """What follows runs beside the last wait."""

    clause: Clause
    role: Role = "meanwhile"


class Manner(NamedTuple):
    """How the cook goes about it, or how a thing lies: `with floured hands`, `cut side up`, `2 at a time` (with the
    `measure`). It is printed, and nothing else is made of it."""

    clause: Clause
    measure: Measure | None = None
    role: Role = "manner"


class VerbUse(NamedTuple):
    """A verb in the place of an imperative, read from plain words (or from a time clause)."""

    verb: Verb
    text: str
    span: Span


Read = (
    Ingredient
    | Reference
    | Tool
    | Setting
    | Target
    | Time
    | Cue
    | Tending
    | Pause
    | Naming
    | Division
    | Repeat
    | Meanwhile
    | Manner
)
