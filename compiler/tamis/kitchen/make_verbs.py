"""Make `grammar/saved/<language>/verbs.txt`, the verbs as they are looked up.

They come from `grammar/verbs.toml`, their forms from the rules of the language (`verb_words.py`).
The file ships with the compiler: a fault in it raises.
"""

from __future__ import annotations

from collections.abc import Mapping

from tamis.kitchen.seconds import seconds
from tamis.kitchen.verb_words import VerbWords, verb_words
from tamis.kitchen.verbs import Attention, Verb
from tamis.saved import Written, cell, facts
from tamis.string_tables import tables
from tamis.typed import Any, Literal, get_args

_ATTENTION: tuple[Attention, ...] = get_args(Attention)
_TIMES = (
    "takes", "per_kg", "per_piece", "most_per_kg", "estimate", "estimate_per_kg", "water_per_kg", "rinsed",
    "sieved_per_kg", "least_per_kg", "part_per_kg", "per_vessel",
)  # fmt: skip
_PURPOSES = ("purpose", "over")
_TAKEN_BACK = "-"
_PREPARES: Literal["prepares"] = "prepares"


def made(text: str, language: str) -> dict[str, Written]:
    """The rows that `Verbs` takes, from the text of `verbs.toml`."""
    words = verb_words(language)
    verbs: dict[str, str] = {}
    phrases: dict[str, str] = {}
    others: list[str] = []
    for table in tables(text).values():
        every = _facts(table.pop("every", ""))
        for base, own in table.items():
            names = _add(base, every | _facts(own), words, verbs)
            if twice := [name for name in names if name in phrases or names.count(name) > 1]:
                raise ValueError(f"the verb {twice[0]!r} stands twice")
            phrases |= dict.fromkeys(names, base)
            others += names[1:] if words.names is None else ()  # elsewhere they are forms of one word
    longest: dict[str, int] = {}
    forms: dict[str, str] = {}
    present: dict[str, str] = {}
    for phrase, base in phrases.items():
        first = phrase.partition(" ")[0]
        longest[first] = max(longest.get(first, 0), len(phrase.split(" ")))
        both = _participles(phrase, words)
        present.setdefault(both[0], base)
        for form in both:
            forms.setdefault(form, base)
    return {
        "facts": verbs,
        "in order": list(phrases),
        "phrases": phrases,
        "forms": forms,
        "present": present,
        "others": {form: phrase for phrase in others for form in _participles(phrase, words)},
        "first words": {word: str(length) for word, length in longest.items()},
    }


def _participles(phrase: str, words: VerbWords) -> list[str]:
    """`fold in` gives `folding in`, `folded in`; of two verbs each has its form: `topped and tailed`."""
    first, space, rest = phrase.partition(" ")
    both = words.participles(first)
    joint, _, second = rest.partition(" ")
    if joint not in words.joints or not second:
        return [form + space + rest for form in both]
    return [f"{form} {joint} {other}" for form, other in zip(both, words.participles(second), strict=True)]


def prepared(made: Mapping[str, Any], language: str) -> list[str]:
    """The past participles of the verbs that prepare a food, from those rows; without those that make another food of
    it in this language."""
    verbs = {base for base, about in made["facts"].items() if _PREPARES in facts(about)}
    others = verb_words(language).other_foods.union(made["present"])
    return [form for form, base in made["forms"].items() if base in verbs and form not in others and " " not in form]


def _add(base: str, facts: dict[str, Any], words: VerbWords, verbs: dict[str, str]) -> tuple[str, ...]:
    """Put a verb among the verbs; the words for it."""
    also = facts.pop("also", "")
    names = (base, *also.split(" / ")) if also else (base,)
    if words.names is not None:
        names = words.names.get(base, ())
    for key in _PURPOSES:
        if (purpose := facts.get(key)) in words.purposes:
            facts[key] = words.purposes[purpose]
    verb = Verb(base, names[0] if names else base, does=frozenset(), **facts)  # which no line of the file may say
    usual = {"base": base, **Verb._field_defaults}
    verbs[base] = cell({key: value for key, value in verb._asdict().items() if value != usual.get(key)})
    return names


def _facts(text: str) -> dict[str, Any]:
    """The facts of one line of the file: `adds, takes 30 s` gives `{"adds": True, "takes": 30}`."""
    facts: dict[str, Any] = {}
    for fact in text.split(", ") if text else ():
        key, _, value = fact.partition(" ")
        if key in _ATTENTION:
            facts["attention"] = key
        elif key in _TIMES:
            facts[key] = seconds(value)
        else:
            facts[key] = Verb._field_defaults[key] if value == _TAKEN_BACK else value or True
    return facts
