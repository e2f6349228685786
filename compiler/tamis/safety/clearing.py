"""Whether what a clause does is enough for a hazard, by the house's authority."""

from __future__ import annotations

from fractions import Fraction

from tamis.safety.data import Limit, rules
from tamis.safety.hazards import FLESH
from tamis.safety.records import ClearedBy, Clearing, Item
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.settings import Authority
    from tamis.safety.heatings import Heating
    from tamis.safety.words import Cues

_BAKED = 300
"""Seconds in the oven after which dough, batter and a glaze on them are hot through: well below any baking time
(common practice; bread is done at 88 °C and more)."""
_LONG = 300
"""Seconds at a simmer that are better evidence for flour than the minute in which it was stirred into hot fat."""
_FRIED = 60
"""Seconds on the heat for a thin batter, a roux, or the surface that a dirty board touched (common practice)."""


def heated(item: Item, done: Heating, action: int, authority: Authority, cues: Cues) -> Item:
    """The item after a clause has acted on its batch."""
    if done.places:
        done = done._replace(core=_at_its_place(item, done, cues))
    if item.hazard == "leftover":
        return _reheated(item, done, action, authority, cues)
    if item.cleared:
        if item.form == "white" and item.cleared.action == action and _cue(item, done, authority, cues):
            return item._replace(cleared=Clearing(action, done.words, "cue"))  # what shows it says more than minutes
        if not (done.wet or done.core is not None):
            return item
        if item.cleared.by == "fried" and done.wet >= _LONG:
            return item._replace(cleared=Clearing(action, done.words, "boiled"))
        return _by_degrees(item, item.cleared, done, action, authority)
    if done.wet or done.fried or done.boiled or done.soaked or (done.hot and not item.heated) or done.core is not None:
        item = item._replace(
            wet=item.wet + done.wet,
            fried=item.fried + done.fried,
            boiled=item.boiled + done.boiled,
            soaked=item.soaked + done.soaked,
            heated=item.heated or done.hot,
            core=max([t for t in (item.core, done.core) if t is not None], default=None),
        )
    by = _enough(item, done, authority, cues)
    return item._replace(cleared=Clearing(action, done.words, by)) if by else item


def _reheated(item: Item, done: Heating, action: int, authority: Authority, cues: Cues) -> Item:
    """Cooked food after it was heated again: `heated` as long as it is only asked to be warm."""
    limit, said = limit_of(item, authority), done.words.lower()
    if limit is None or item.cleared or not (done.hot or done.core is not None):
        return item
    if done.boils or done.boiled or _measured(limit, done) or (done.cue and _cue(item, done, authority, cues)):
        return item._replace(cleared=Clearing(action, done.words, "heated"))
    tepid = cues.tepid.search(said) if done.core is None else done.core < rules().windows[authority].hold
    if tepid:
        return item._replace(core=done.core, heated=True)
    hot = done.core is not None or max(done.wet, done.fried, done.baked) >= rules().reheated
    return item._replace(cleared=Clearing(action, done.words, "heated")) if hot else item


def _at_its_place(item: Item, done: Heating, cues: Cues) -> Fraction | None:
    """The core that is asked for where the item lies, if a cue with several names that place; else the lowest."""
    names = {name.lower().split()[-1] for name in (item.food, *item.path) if name}
    for words, core in done.places:
        if cues.stuffed.search(words) if item.form == "stuffing" else not names.isdisjoint(words.split()):
            return core
    return done.core


def _by_degrees(item: Item, cleared: Clearing, done: Heating, action: int, authority: Authority) -> Item:
    """The degrees that a line asks for, where its minutes alone would do: a cook goes by the thermometer."""
    limit = limit_of(item, authority)
    by_time = cleared.by in ("boiled", "fried") or item.form == "white"
    if cleared.action != action or not by_time or limit is None or item.form == "juices":
        return item
    if not _measured(limit, done):
        return item
    return item._replace(core=done.core, cleared=Clearing(action, done.words, "temperature"))


def _measured(limit: Limit, done: Heating) -> bool:
    """Whether a thermometer says it."""
    return done.core is not None and reaches(limit, done.core, rules().reading)


def limit_of(item: Item, authority: Authority) -> Limit | None:
    """What the authority asks for this hazard; None for one that no temperature clears (kidney beans)."""
    return rules().limits[authority].get(item.hazard)


def _enough(item: Item, done: Heating, authority: Authority, cues: Cues) -> ClearedBy | None:
    """By what the hazard is cleared, None if it is not."""
    limit = limit_of(item, authority)
    if item.hazard == "kidney-beans":
        return "boiled" if item.boiled >= rules().boil else None
    if item.hazard == "poison-raw":
        through = max(item.wet, item.fried, done.baked) >= rules().cooked
        return "heated" if through or (done.cue and not cues.denies.search(done.cue.lower())) else None
    if (item.form == "juices" and done.boils) or _wet(item):
        return "boiled"
    told = done.core is not None or item.core is not None  # too low a temperature is not made good by a time
    least = rules().fried.get(item.form)
    if not told and least is not None and item.fried >= least:
        return "fried"
    if item.form == "contact" and max(done.fried, done.baked) >= _FRIED:
        return "heated"
    # A cue may speak of what is inside, or of the thigh and the skin alone.
    if limit is None or (item.form == "stuffing" and not cues.stuffed.search(done.words.lower())):
        return None
    if _measured(limit, done):
        return "temperature"
    return "held" if _held(item, limit, done) else _by_look(item, done, authority, cues)


def _by_look(item: Item, done: Heating, authority: Authority, cues: Cues) -> ClearedBy | None:
    """Without a thermometer: a dough's baking, a cue that the authority accepts."""
    if item.form == "film":
        return _crust(done, cues)
    if item.hazard == "raw-flour" or item.bound:
        return _dough(done, cues)
    if _cue(item, done, authority, cues):
        return "cue"
    return "baked" if item.form == "white" and done.oven and reaches(rules().meringue, *done.oven) else None


def reaches(limit: Limit, celsius: Fraction, held: int) -> bool:
    """Whether food that is held at a core temperature for so many seconds meets one of the pairs."""
    return any(celsius >= pair.celsius and held >= pair.hold for pair in limit.pairs)


def _held(item: Item, limit: Limit, done: Heating) -> bool:
    """Held at a temperature: in a bath, after the time that the food takes to get as warm; by itself, only if the
    middle was that warm before."""
    if done.bath and done.baked and item.hazard in FLESH and item.form not in ("small", "fine"):
        return False  # nobody knows how long air takes to warm it through: in an oven a thermometer tells
    if done.bath:
        degrees, lasts = done.bath
        come_up = rules().egg_come_up if item.hazard == "egg" else rules().come_up
        return lasts > come_up and reaches(limit, degrees, lasts - come_up)
    if done.held:
        degrees, lasts = done.held
        return item.core is not None and item.core >= degrees and reaches(limit, degrees, lasts)
    return False


def _wet(item: Item) -> bool:
    """Simmered or boiled for so long that pieces of its size are done."""
    if item.form in ("stuffing", "large"):
        return False
    if not item.wet:
        return False
    wet = rules().wet
    names = (item.form, f"{item.form}-{item.hazard}", item.hazard)
    least = next((wet[name] for name in names if name in wet), None)
    return least is not None and item.wet >= least


def _dough(done: Heating, cues: Cues) -> ClearedBy | None:
    """Flour, and egg within dough or batter: baked, fried or boiled through."""
    said = done.cue.lower()
    if done.baked >= _BAKED or (done.baked and (cues.baked.search(said) or cues.browned.search(said))):
        return "baked"
    return "fried" if done.fried >= _FRIED or (done.fried and done.cue) else None


def _crust(done: Heating, cues: Cues) -> ClearedBy | None:
    """A film of egg, which is done before the crust on it has a colour; in an oven that is hot, after minutes too."""
    said = done.cue.lower()
    seen = cues.browned.search(said) and not (cues.partly.search(said) or cues.denies.search(said))
    if done.baked:
        return "baked" if seen or (done.baked >= _BAKED and done.bath is None) else None
    return "fried" if done.fried and seen else None


def _cue(item: Item, done: Heating, authority: Authority, cues: Cues) -> bool:
    """Whether the cue has a word that the authority accepts, without a word that takes it back."""
    said = done.cue.lower()
    if not said or not done.hot or cues.partly.search(said) or cues.denies.search(said):
        return False
    egg = item.hazard == "egg"
    if egg and done.baked and cues.baked.search(said):
        return True
    accepted = cues.accepted.get((authority, item.hazard))
    return bool(accepted and accepted.found.search(said)) and not (egg and cues.whites.search(said))
