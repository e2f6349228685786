"""Words are data: no word that is asked of a cook's text stands in the code. `word_literals.py` says what counts.

A name of the code's own has a `Literal` type where it is held.
"""

from __future__ import annotations

import ast

import pytest

from tests.language.word_literals import trees, word_literals


def test_no_word_stands_in_the_code() -> None:
    assert not word_literals(trees()), "\n".join(map(str, word_literals(trees())))


HEAD = """
from typing import Literal
import re
Station = Literal["oven", "ring"]
class Tool:
    name: str
    station: Station
class Row:
    title: str
    amount: str
"""

COUNTED = {
    "if word == 'the': pass": "the",
    "if 'oven' != word: pass": "oven",
    "if 'oven' in text: pass": "oven",
    "if word not in ('of', 'the'): pass": "of the",
    "if words[:2] == ['of', 'the']: pass": "of the",
    "if tool.station == 'grill': pass": "grill",
    "if tool.name == 'oven': pass": "oven",
    "if word in ('oven', 'ring'): pass": "oven ring",
    "ARTICLES = frozenset(('the', 'an'))": "an the",
    "ARTICLES = {'the', 'an'}": "an the",
    "PLURALS = {'leaf': 'leaves'}": "leaf",
    "GROUPS = {1: ('the', 'an')}": "an the",
    "SMALL = ('the', 'an')\nif word in SMALL: pass": "an the",
    "SMALL = ('the', 'an')\nif any(word == small for small in SMALL): pass": "an the",
    "SMALL = ('the', 'an')\nif word.startswith(SMALL): pass": "an the",
    "class Reader:\n    SMALL = {'the'}": "the",
    "OF = 'of'\nif word == OF: pass": "of",
    "def read(words=frozenset(('the',))): pass": "the",
    "for end in ('ies', 'es'):\n    if word.endswith(end): pass": "es ies",
    "{'one': 1, 'two': 2}[word]": "one two",
    "{'one': 1, 'two': 2}.get(word)": "one two",
    "word.startswith('the ')": "the ",
    "word.endswith(('ch', 'sh'))": "ch sh",
    "text.split(' or ')": " or ",
    "text.partition(' of ')": " of ",
    "text.replace('the ', '')": "the ",
    "if letter in 'aeiou': pass": "aeiou",
    "match word:\n    case 'the': pass": "the",
    "match word:\n    case 'of' | 'the': pass": "of the",
    r"re.compile(r'\bto the boil\b')": "boil the to",
    r"pattern(r'\bto the boil\b', re.MULTILINE)": "boil the to",
    r"re.search(r'(?P<number>\d+) (?:min|hours?)', text)": "hours min",
    "TIME = 'min|hour'\nre.compile(rf'\\d+ (?:{TIME})')": "hour min",
    "re.compile('[aeiou]')": "aeiou",
    "def read(node: Node):\n    if node[1] == 'the': pass": "the",
    "kind = tool.name\nif kind == 'oven': pass": "oven",
    "if words[0] == 'other': pass": "other",
    "kind = words[0]\nif kind == 'other': pass": "other",
    "def read(node: Node):\n    if word == 'other': pass": "other",
    "def read(node: Node):\n    if node[1] == 'other': pass": "other",
    "def read(node: Node):\n    if node[0] == 'oven': pass": "oven",
    "OTHERS = frozenset(('other', 'each'))": "each other",
}

NOT_COUNTED = (
    "def read(node: Node):\n    kind = node[0]\n    if kind == 'ingredient': pass",
    "if token.kind == 'HYPHEN': pass",
    "ALLOW: Literal['allow'] = 'allow'\nre.compile(rf'% {ALLOW}')",
    "if tool.station == 'oven': pass",
    "if tool.station in ('oven', 'ring'): pass",
    "station = tool.station\nif 'oven' == station: pass",
    "def where() -> Station: ...\nif where() == 'oven': pass",
    "HOT: frozenset[Station] = frozenset(('oven', 'ring'))",
    "HOT: dict[Station, str] = {'oven': 'in the oven'}\nif word in HOT: pass",
    "for kind in tool.station:\n    if kind == 'oven': pass",
    "if measure.unit == 'cup': pass",
    "if finding.rule == 'missing-cue': pass",
    "walker.find('missing-cue', span)",
    "if token.type == 'COMMENT': pass",
    "parser.add_argument('--format', choices=('text', 'json'))\nif said.format == 'json': pass",
    "for field in ('title', 'amount'):\n    if row[field] == other: pass",
    "DAYS = ('Mon', 'Tue')\nprint(DAYS[day])",
    "print('the oven', sep=', ')",
    "raise ValueError('no number')",
    "if letter == 's': pass",
    "if path.suffix == '.tamis': pass",
    "if '<svg' in text: pass",
    "text.split(', ')",
    "text.replace('’', \"'\")",
    "row = {'title': 'Bread', 'amount': 1}",
    "table['hedges']",
    r"re.compile(r'(?P<number>\d+)\s*(?i:[a-z]+)°[CF]\N{DEGREE SIGN}\u00bd')",
    "if '½¼' in text: pass",
    "def read(node: Node):\n    if node[0] == 'other': pass",
    "def read(node: Node):\n    kind = node[0]\n    if kind in ('other', 'each'): pass",
    "def read(nodes: Sequence[Node]):\n    kinds = [node[0] for node in nodes]\n    if kinds == ['each', 'TIME']: pass",
    "OTHERS: frozenset[NodeKind] = frozenset(('other', 'each'))",
)


def words_in(snippet: str) -> str:
    modules = {"snippet.py": ast.parse(HEAD + snippet)}
    return " ".join(literal.word for literal in word_literals(modules))


@pytest.mark.parametrize("snippet", COUNTED)
def test_a_word_is_found(snippet: str) -> None:
    assert sorted(words_in(snippet).split(" ")) == sorted(COUNTED[snippet].split(" "))


@pytest.mark.parametrize("snippet", NOT_COUNTED)
def test_what_is_no_word_is_not_found(snippet: str) -> None:
    assert words_in(snippet) == ""
