"""Where the food is: for each line its batch, the station that this is at, and how hot it is there.

A fact has the rank of what tells it, and each reader says what that is worth to him: safety counts nothing below
`stays`, a plan reserves a station for a `guess` too, a page prints what was `said`.
"""

from __future__ import annotations

from tamis.quantity.amount import Amount
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station

Rank = Literal["said", "verb", "stays", "guess", "nowhere"]
"""The line says where it works; its verb means it; nothing has moved the food since; it may be there; no station."""


class Knob(NamedTuple):
    """Degrees that a clause, by its number in the action, gives to the place of its line, and not to the food."""

    read: int
    celsius: Amount


class Here(NamedTuple):
    """The place of one line while it lasts. `batch` is -1 where no food is in it: it `heats` a station or an empty
    vessel. `came_from` is where the batch lay when the line began, `since` the entry that brought it to the station.
    `celsius` is how hot it is there, as this line (`sets`) or one before it says; None where none does. `preheat` are
    the degrees of an oven that food goes into and that no line has heated to them. `stays`: at the end of the line the
    batch is still there. `hot`: it is full of hot liquid, or has taken in what was or is."""

    action: int
    batch: int = -1
    station: Station = ""
    came_from: Station = ""
    rank: Rank = "nowhere"
    since: int = -1
    celsius: Amount | None = None
    sets: tuple[Knob, ...] = ()
    preheat: Amount | None = None
    stays: bool = False
    heats: Literal["", "station", "vessel"] = ""
    hot: bool = False


class Places(NamedTuple):
    """The places of all lines, by their number."""

    lines: tuple[Here, ...] = ()
