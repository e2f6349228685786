"""A clause that is two, and plain words before a clause: how to write them apart."""

from __future__ import annotations

from tamis.reading.openers import step_openers
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.clauses import Read, Role
    from tamis.reading.phrase import Phrase


def bracketed_end(phrase: Phrase, text: str) -> str:
    """Words with brackets round the clause that they end in: `hard [for 10 min]`; "" where they end in none."""
    words = text.split()
    for at in range(len(words)):
        found = read_alone(phrase, " ".join(words[at:]))
        if found and found[-1].role in _PLANNED:
            return " ".join([*words[:at], f"[{' '.join(words[at:])}]"])
    return ""


def two_clauses(phrase: Phrase) -> str:
    """`[the egg whites in three additions]`: two clauses in one pair of brackets."""
    for at in range(phrase.end - 1, 0, -1):
        first, rest = phrase.text(0, at), phrase.text(at, phrase.end)
        one = read_alone(phrase, first)
        other = read_alone(phrase, rest) if one else None
        if one and other and _stands(one[-1]) and _stands(other[0]) and other[0].role not in _NAMED:
            return f"part them: `[{first}] [{rest}]`"
    return ""


def words_before(phrase: Phrase) -> str:
    """`[uncovered, stirring now and then]`: plain words, then a clause."""
    if phrase.key(0) in step_openers(phrase.kitchen.language):
        return ""
    for at in range(1, phrase.end):
        if not phrase.keys[at - 1].isalpha() and phrase.keys[at - 1] != ",":
            return ""
        found = read_alone(phrase, phrase.text(at, phrase.end))
        if found and found[-1].role in _PLANNED:
            return f"plain words stand before the brackets: `{phrase.text(0, at)} [{phrase.text(at, phrase.end)}]`"
    return ""


_NAMED: frozenset[Role] = frozenset(("ingredient", "unmeasured", "reference", "naming"))
_PLANNED: frozenset[Role] = frozenset(("time", "cue", "tending", "setting", "target", "pause", "repeat"))


def _stands(record: Read) -> bool:
    """Whether a record is surely meant: the grammar takes any words for a food or a thing made before."""
    goods = getattr(record, "goods", True)
    return goods is not None


def read_alone(phrase: Phrase, text: str) -> tuple[Read, ...]:
    """The records of words as a clause of their own; none where they are no clause, or a faulty one."""
    from tamis.reading.clauses import VerbUse

    records, findings = phrase.alone(text, phrase.kitchen)
    if any(finding.severity == "error" for finding in findings):
        return ()
    return tuple(record for record in records if not isinstance(record, VerbUse))
