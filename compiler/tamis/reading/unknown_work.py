"""Words that stand where the verb of an imperative does, and name no work that is known."""

from __future__ import annotations

from tamis.reading.prose import STOPS, commands, prose_words
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.plain import Plain
    from tamis.reading.prose import ProseWords

# What stands before the work and is told by itself: *in a bowl, …*, *meanwhile, …*.
_ASIDE = frozenset(("PREP", "INTO", "ONHEAT", "MEANWHILE", "UNTIL", "WHILE", "FOR", "AT"))
_MERE = ("WORD", "TRAIT", "ANY")
_OBJECT = frozenset(("THE", "ARTICLE"))
_PRONOUN = frozenset(("THE",))


class Unknown(NamedTuple):
    """A word in the place of an imperative that names no work which is known; `sure`: it can be nothing else there."""

    first: int
    sure: bool


def unknown_work(plain: Plain) -> tuple[Unknown, ...]:
    """Words in the place of an imperative: *faff* in *Then slowly faff with it*, in *When soft, faff with it*. Small
    words, foods and tools are none."""
    asked, said, found = prose_words(plain.kitchen.language), plain.said, []
    is_open, sure, joined, at, before = True, False, False, 0, -1
    while at < len(said):
        word = said[at]
        opens = word in asked.opens or word[-1] == "."
        if opens or (is_open and _is_passed(plain, at, asked)):
            sure = word in asked.then or word[-1] == "." or (is_open and sure)
            before = before if is_open else at - 1
            is_open, joined, at = True, word.isalpha(), at + 1
        elif is_open and (plain.is_a(at, _ASIDE) or plain.phrase(asked.aside, at)):
            at = next((comma for comma in range(at, len(said)) if said[comma] == ","), len(said))
        else:
            if is_open and _is_unknown(plain, at, asked):
                object_follows = joined and plain.is_a(at + 1, _OBJECT) > 0
                found.append(Unknown(at, sure or object_follows or _follows_work(plain, before, at, asked)))
            is_open, at = False, at + 1
    return tuple(found)


def _follows_work(plain: Plain, before: int, at: int, asked: ProseWords) -> bool:
    """Whether what stands before *and* is work, or the word has a particle, as work alone does: *stir it and faff*,
    *stir the sauce, faff about*. `before` is the last token before the joint, -1 for none."""
    if plain.said[at] in asked.things:
        return False
    after = plain.run(asked.particles, at + 1)
    if after > at + 1 and at and (after == len(plain) or plain.said[after] in STOPS or plain.is_a(after, _PRONOUN)):
        return True
    if before < 0 or plain.said[at - 1] in STOPS:
        return False
    return plain.is_a(before, _PRONOUN) > 0 or any(command.end == before + 1 for command in plain.ask(commands))


def _is_passed(plain: Plain, at: int, asked: ProseWords) -> bool:
    """Whether a word may stand before an imperative."""
    word = plain.said[at]
    return plain.is_number(at) or word in asked.through or word.endswith(asked.adverbs)


def _is_unknown(plain: Plain, at: int, asked: ProseWords) -> bool:
    """Whether a word has no meaning at all to the kitchen."""
    kitchen, word = plain.kitchen, plain.said[at]
    if len(word) == 1 or word in asked.small or plain.fixed[at] is not None:
        return False
    if any(kind not in _MERE for kind, _ in plain.ways(at)):
        return False
    names = kitchen.cupboard.find([word]) or kitchen.larder.find([word])
    return not (names or kitchen.verbs.match(plain.said, at) or kitchen.verbs.participle(word))
