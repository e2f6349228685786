"""Saved parse tables give the trees that Lark gives, and refuse the token that Lark refuses."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lark import Lark, Tree
from lark.exceptions import UnexpectedToken
from lark.lexer import Lexer
from lark.lexer import Token as LarkToken

from tamis.assets import asset_text
from tamis.lalr.build import lark_of, made, save, tables_of
from tamis.lalr.parse import TokenParser, Unexpected
from tamis.lalr.table import load

# What a grammar may use: an alias, hidden rules one within the other, hidden tokens, repetition, nothing at all.
SUMS = """
%declare NUMBER NAME PLUS _OPEN _CLOSE _END
sum: _terms _END? | empty
_terms: term (PLUS term)*
term: NUMBER -> number
    | NAME
    | _OPEN sum _CLOSE -> group
    | _OPEN _names _CLOSE
_names: _pair+
_pair: NAME NAME
empty:
list: _pair* NUMBER
"""
GRAMMARS = {"outline": asset_text("grammar/outline.lark"), "sums": SUMS}
STARTS = {"outline": ("document",), "sums": ("sum", "list")}
KINDS = {
    "outline": ("BOM", "BLANK", "COMMENT", "HEADING", "REMARK", "AHEAD", "FIELD", "TEXT"),
    "sums": ("NUMBER", "NAME", "PLUS", "_OPEN", "_CLOSE", "_END"),
}


class Words(Lexer):
    """Tokens that are named by the words of the text, for Lark."""

    def __init__(self, _conf: Any) -> None:
        pass

    def lex(self, data: Any, *_: Any) -> Iterator[LarkToken]:
        """A token a word; its value is its place."""
        for at, kind in enumerate(str(data).split()):
            yield LarkToken(kind, str(at), start_pos=at)


LARKS = {name: lark_of(text, *STARTS[name], lexer=Words) for name, text in GRAMMARS.items()}
TABLES = {name: load(made(text, *STARTS[name])) for name, text in GRAMMARS.items()}


def plain(tree: Any) -> Any:
    """A tree of either kind as tuples."""
    if isinstance(tree, Tree):
        return (str(tree.data), [plain(child) for child in tree.children])
    if isinstance(tree, tuple):
        return (tree[0], [plain(child) for child in tree[1]])
    return str(tree)


def by_lark(lark: Lark, start: str, kinds: list[str]) -> Any:
    try:
        return plain(lark.parse(" ".join(kinds), start=start))
    except UnexpectedToken as error:
        return len(kinds) if error.token.type == "$END" else int(error.token)


def by_table(name: str, start: str, kinds: list[str]) -> Any:
    tokens = [(kind, LarkToken(kind, str(at))) for at, kind in enumerate(kinds)]
    try:
        return plain(TokenParser(TABLES[name]).parse(start, tokens))
    except Unexpected as error:
        return len(kinds) if error.token is None else int(str(error.token))


@pytest.mark.parametrize(("name", "start"), [(name, start) for name in GRAMMARS for start in STARTS[name]])
@given(data=st.data())
def test_rows_of_tokens_give_the_tree_that_lark_gives(name: str, start: str, data: st.DataObject) -> None:
    kinds = data.draw(st.lists(st.sampled_from(KINDS[name]), max_size=12))
    assert by_table(name, start, kinds) == by_lark(LARKS[name], start, kinds)


@pytest.mark.parametrize(
    ("kinds", "tree"),
    [
        ("NAME PLUS NUMBER _END", ("sum", [("term", ["0"]), "1", ("number", ["2"])])),
        ("_OPEN NAME NAME NAME NAME _CLOSE", ("sum", [("term", ["1", "2", "3", "4"])])),
        ("_OPEN _CLOSE", ("sum", [("group", [("sum", [("empty", [])])])])),
        ("NAME NAME", 1),
        ("NAME PLUS", 2),
    ],
)
def test_hidden_rules_leave_their_children_and_hidden_tokens_nothing(kinds: str, tree: Any) -> None:
    assert by_table("sums", "sum", kinds.split()) == tree == by_lark(LARKS["sums"], "sum", kinds.split())


def test_a_refusal_names_what_may_stand_there() -> None:
    with pytest.raises(Unexpected) as error:
        TokenParser(TABLES["sums"]).parse("list", [("NAME", "x"), ("PLUS", "+")])
    assert error.value.expected == ["NAME"]


def test_a_row_is_cut_when_its_state_is_visited() -> None:
    table = load(made(SUMS, "sum", "list"))
    assert len(table.rows) == 0
    TokenParser(table).parse("list", [("NUMBER", "1")])
    assert 0 < len(table.rows) < len(tables_of(LARKS["sums"]).rows)


def test_a_saved_table_holds_all_of_the_table() -> None:
    tables = tables_of(LARKS["sums"])
    table = load(save(tables))
    assert dict(table.starts) == tables.starts
    assert [tuple(table.rules[at]) for at in range(len(tables.rules))] == tables.rules
    for state, row in enumerate(tables.rows):
        found = {symbol: table.rows[state][symbol] for symbol in (*table.symbols, "NONE")}
        assert {symbol: to for symbol, to in found.items() if to is not None} == row


@pytest.mark.parametrize("rule", ["?start: A | A start", "!start: A", 'start: "," A'])
def test_what_the_loop_does_not_know_is_refused(rule: str) -> None:
    with pytest.raises(ValueError, match="start: "):
        made(f"%declare A\n{rule}\n", "start")
