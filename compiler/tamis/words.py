"""The words of a language, as data: `grammar/words/<language>/`, a file for each phase that asks for words.

No phase holds a word of a cook's language in its code. It has a class of its own for the words that it asks for, made
once for each language from its file here, so that another language is another folder and no other code.

A file holds tables of strings; a list of words stands in one string, parted by commas. A list can take up another one
of `clause.toml`: `set {places}` is that phrase with each of the words of `places`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from os import scandir
from os.path import exists

from tamis.assets import asset
from tamis.string_tables import saved_tables
from tamis.typed import Literal

LANGUAGE_OF_DATA: Literal["en"] = "en"
"""In which the files of `grammar/` beside `words/` name foods, verbs, equipment and units: their ids are English."""

Lists = dict[str, dict[str, tuple[str, ...]]]


@cache
def word_tables(language: str, name: str) -> dict[str, dict[str, str]]:
    """The tables of one file as written: `word_tables("en", "safety")` reads `grammar/words/en/safety.toml`."""
    return saved_tables(language, name)


@cache
def word_lists(language: str, name: str) -> Lists:
    """The same, each string as the list of words that it holds."""
    raw = word_tables(language, name)
    return {table: {key: _words(language, text) for key, text in rows.items()} for table, rows in raw.items()}


def _words(language: str, text: str) -> tuple[str, ...]:
    if "{" not in text:
        return tuple(text.split(", "))
    words: dict[str, None] = {}
    for phrase in text.split(", "):
        before, _, rest = phrase.partition("{")
        name, brace, after = rest.partition("}")
        words |= dict.fromkeys([before + word + after for word in _of_clause(language, name)] if brace else [phrase])
    return tuple(words)


def _of_clause(language: str, name: str) -> tuple[str, ...]:
    """The words of a list of `clause.toml`."""
    for rows in word_tables(language, "clause").values():
        if name in rows:
            return _words(language, rows[name])
    raise ValueError(f"words/{language}/clause.toml has no list {name!r}")


@cache
def own_names(language: str, name: str) -> dict[str, dict[str, str]]:
    """The tables of a file that a language has only where its names differ from the ids of the data, which are English;
    none where there is no such file."""
    return word_tables(language, name) if exists(asset(f"grammar/words/{language}/{name}.toml")) else {}


def example(language: str, key: str, **parts: object) -> str:
    """A clause as a hint offers it, in the words of the recipe and as code: `[until …]`."""
    return f"`{word_tables(language, 'hints')['clauses'][key].format(**parts)}`"


def named(language: str, key: str) -> str:
    """A word as a hint names it, in the language of the recipe and as code: `until`."""
    return f"`{word_tables(language, 'hints')['words'][key]}`"


@cache
def languages() -> tuple[str, ...]:
    """The languages that there are, each a folder of `grammar/words/`."""
    with scandir(asset("grammar/words")) as folders:
        return tuple(sorted(folder.name for folder in folders if folder.is_dir()))


def one_of(words: Iterable[str]) -> str:
    """A regular expression for any of the words or phrases; where one begins another, the longer is tried first."""
    return f"(?:{'|'.join(map(re.escape, sorted(words, key=lambda word: (-len(word), word))))})"
