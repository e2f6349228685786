"""Whether a line's plain words tell of several things: those that lie there (*pinch the kernels*), or that it makes
(*form thin petals*).

No bracket says it, and it changes nothing but how long the cook's hands are busy.
"""

from __future__ import annotations

from math import ceil

from tamis.model.words import model_words
from tamis.quantity.nouns import nouns
from tamis.reading.prose import commands, prose_words
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.verbs import Verb
    from tamis.model.line import Line
    from tamis.reading.clauses import VerbUse
    from tamis.reading.plain import Plain

Many = Literal["", "worked", "made", "small"]

_MANY: tuple[Many, ...] = ("small", "made", "worked")
_DESCRIBED = 5
"""Words, commas counted, in which a noun stands behind its verb: *small, thin petals*."""

EACH, SEVERAL = 10, 9
"""Seconds for one of them, and how many are made of each piece where nobody says it: the petals of a flower; common
practice."""


def many_of(act: Line) -> Many:
    """Whether the plain words behind a verb that works by the piece, in a line that cuts nothing, tell of several."""
    labour = act.labour
    if "per_piece" not in labour.does or "divides" in labour.does or not any(_shapes(use.verb) for use in labour.verbs):
        return ""
    asked = [plain.ask(_things) for _, plain in labour.texts(act.walker.flow.kitchen)]
    return next((one for one in _MANY if one in asked), "")


def _shapes(verb: Verb) -> bool:
    """Whether a verb works things that lie there, or are made, one by one, and cuts nothing."""
    return bool(verb.per_piece) and not verb.prepares and not verb.divides and (verb.moves or not verb.adds)


def _things(plain: Plain) -> Many:
    """*Pinch the kernels*, *turn them* work what is there; *form thin petals*, *into balls* make it."""
    words = model_words(plain.kitchen.language)
    rules, said = nouns(plain.kitchen.language), plain.said
    shaping = [command for command in plain.ask(commands) if _shapes(command.verb)]
    participle = plain.kitchen.verbs.participle  # … which is work on something else: the butter, broken into pieces
    into = (at for at, word in enumerate(said) if word in words.into and not (at and participle(said[at - 1])))
    made = [_plural_at(plain, at + 1) for at in into]
    for command in shaping:
        behind = said[command.end : command.end + 1]
        if behind and behind[0] not in words.into:
            given = behind[0] in rules.articles
            kind = _plural_at(plain, command.end + given)
            made.append("worked" if behind[0] in words.them or (given and kind) else kind)
    return next((one for one in _MANY if one in made), "")


def _plural_at(plain: Plain, at: int) -> Many:
    """Whether a noun in the plural stands at a place, or behind words that describe it: of small things, or of any."""
    language, small = plain.kitchen.language, False
    asked = prose_words(language)
    for word in plain.said[at : at + _DESCRIBED]:
        if word in asked.inside or word in asked.each or not (word.isalpha() or word == ","):
            return ""
        small = small or word in model_words(language).small
        if nouns(language).singular(word) != word:
            return "small" if small else "made"
    return ""


def makes_many(act: Line, use: VerbUse) -> bool:
    """Whether the plain words right behind a verb tell of things that it makes, in the plural: *stamp out rounds*, *cut
    into stars*, and not *cut the strings*, *cut off the tips*."""
    language = act.walker.flow.kitchen.language
    articles, words, particles = nouns(language).articles, model_words(language), prose_words(language).particles
    for text, plain in act.labour.texts(act.walker.flow.kitchen):
        if text.span.start <= use.span.start < text.span.end:
            at = next((one.end for one in plain.ask(commands) if one.verb is use.verb), len(plain.said))
            at += not words.into.isdisjoint(plain.said[at : at + 1])
            given = not articles.isdisjoint(plain.said[at : at + 2]) or plain.phrase(particles, at)
            return not given and bool(_plural_at(plain, at))
    return False


def small_things(act: Line, pieces: int) -> int:
    """Seconds for small things that nobody counts: several of each piece, else as many as the weight gives."""
    batch = act.walker.present
    verbs = [use.verb for use in act.labour.verbs if _shapes(use.verb) and use.verb.most_per_kg and not use.verb.moves]
    if not verbs or batch is None:
        return 0
    by_weight = max(verb.most_per_kg for verb in verbs) * batch.mass.hi / 1000
    return max(ceil(by_weight), pieces * SEVERAL * EACH if pieces > SEVERAL else 0)
