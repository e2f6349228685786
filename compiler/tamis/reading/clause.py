"""One clause under the reader's eye: its tree, its text, and the lists that its words are looked up in."""

from __future__ import annotations

from functools import lru_cache

from tamis.diagnostics import Diagnostic, Fix, Severity
from tamis.quantity.number import parse as parse_number
from tamis.record import NamedTuple, made
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Any, Literal
from tamis.words import word_lists, word_tables

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from tamis.kitchen.house import Kitchen
    from tamis.syntax.document import Clause

# A node is (rule, [children]), a leaf (class, text, start, end); both are tuples made by the parser.
Node = tuple[Any, ...]
NodeKind = str
"""The name of a rule or class of `grammar/clause.lark`."""

WORDS_ONLY: Literal["words-only"] = "words-only"
"""The rule of brackets that hold nothing that is known."""


class Unreadable(Exception):
    """A clause that fits the grammar and cannot be read all the same; holds the finding. It never leaves this
    package."""

    def __init__(self, finding: Diagnostic) -> None:
        super().__init__(finding.message)
        self.finding = finding


def is_leaf(node: Node) -> bool:
    """Whether a node is a word."""
    return node[1].__class__ is not list


def start_of(node: Node) -> int:
    """Where the words of a node begin in the clause's text."""
    while node[1].__class__ is list:
        node = node[1][0]
    return node[2]  # type: ignore[no-any-return]


def end_of(node: Node) -> int:
    """Where the words of a node end."""
    while node[1].__class__ is list:
        node = node[1][-1]
    return node[3]  # type: ignore[no-any-return]


def leaves(nodes: Sequence[Node]) -> list[Node]:
    """The words of nodes, in order."""
    found, waiting = list[Node](), [*reversed(nodes)]
    while waiting:
        node = waiting.pop()
        if node[1].__class__ is list:
            waiting += reversed(node[1])
        else:
            found.append(node)
    return found


def only_leaf(nodes: Sequence[Node]) -> Node | None:
    """The word of nodes that hold just one, whatever they are made of."""
    while len(nodes) == 1:
        node = nodes[0]
        if node[1].__class__ is not list:
            return node
        nodes = node[1]
    return None


def first_leaf(node: Node) -> Node:
    """The first word of a node."""
    while node[1].__class__ is list:
        node = node[1][0]
    return node


def child(nodes: Sequence[Node], kind: str) -> Node | None:
    """The first of these nodes that is of a kind."""
    for node in nodes:
        if node[0] == kind:
            return node
    return None


class ClauseWords(NamedTuple):
    """The words of a language that are asked for once a clause's tree is known."""

    fractions: dict[str, Fraction]
    spans: dict[str, int]
    """Lengths of time in one phrase, in seconds."""
    about: frozenset[str]
    few: frozenset[str]
    how: frozenset[str]
    sized: tuple[str, ...]
    another: frozenset[str]
    articles: frozenset[str]
    the: frozenset[str]
    of: frozenset[str]
    of_the: frozenset[str]
    same: frozenset[str]
    parts_of_tools: frozenset[str]
    hollows: frozenset[str]
    speed: frozenset[str]
    heats: frozenset[str]
    levels: frozenset[str]
    degrees: frozenset[str]
    joins: frozenset[str]
    ands: frozenset[str]
    beside: frozenset[str]
    constant: frozenset[str]
    once: frozenset[str]
    sometimes: frozenset[str]
    frequent: frozenset[str]
    hands: frozenset[str]
    loads: frozenset[str]
    into: frozenset[str]
    cut_in: frozenset[str]
    possessive: tuple[str, ...]
    no_name: frozenset[str]
    pronouns: frozenset[str]
    no_size: frozenset[str]
    each: frozenset[str]
    in_all: frozenset[str]
    as_needed: str
    overnight: frozenset[str]
    old: frozenset[str]
    ways: frozenset[str]
    places: frozenset[str]
    left_free: frozenset[str]
    filled: frozenset[str]
    lengths: dict[str, str]
    by_length: frozenset[str]
    holds_one: frozenset[str]

    def tells_manner(self, noun: str) -> bool:
        """Whether a noun is of the cook or of a place in the work: with floured *hands*, on one *side*."""
        return noun in self.ways or noun in self.places


@lru_cache(8)
def clause_words(language: str) -> ClauseWords:
    """The words of a language, read once."""
    from tamis.kitchen.seconds import seconds
    from tamis.string_tables import exact

    lists = word_lists(language, "clause")
    closed, opened, said = lists["closed"], lists["open"], lists["said"]
    tables = word_tables(language, "clause")
    return ClauseWords(
        fractions={word: exact(text) for word, text in tables["fractions"].items()},
        spans={phrase: seconds(length) for phrase, length in tables.get("spans", {}).items()},
        about=frozenset(closed["HEDGE"]),
        few=frozenset(said["few"]),
        how=frozenset(said["how"]),
        sized=said["sized"],
        another=frozenset(closed["ANOTHER"]),
        articles=frozenset(closed["ARTICLE"]),
        the=frozenset(closed["THE"]),
        of=frozenset(closed["OF"]),
        of_the=frozenset(word for phrase in closed.get("OFTHE", ()) for word in phrase.split()),
        same=frozenset(opened["SAME"]),
        parts_of_tools=frozenset(said["parts-of-tools"]),
        hollows=frozenset(said["hollows"]),
        speed=frozenset(said["speed"]),
        heats=frozenset(opened["HEATNOUN"]),
        levels=frozenset(opened["SETWORD"]),
        degrees=frozenset(said["degrees"]),
        joins=frozenset(closed["OR"]) | frozenset(closed["TO"]),
        ands=frozenset(closed["AND"]),
        beside=frozenset(closed["PREP"]),
        constant=frozenset(said["constant"]),
        once=frozenset(said["once"]),
        sometimes=frozenset(said["sometimes"]),
        frequent=frozenset(said["frequent"]),
        hands=frozenset(said["hands"]),
        loads=frozenset(said["loads"]),
        into=frozenset(closed["INTO"]),
        cut_in=frozenset(closed["CUTIN"]),
        possessive=said["possessive"],
        no_name=frozenset(said["no-name"]),
        pronouns=frozenset(said["pronouns"]),
        no_size=frozenset(said["no-size"]),
        each=frozenset(closed["EACH"]),
        in_all=frozenset(said["in-all"]),
        as_needed=said["as-needed"][0],
        overnight=frozenset(opened["OVERNIGHT"]),
        old=frozenset(said["old"]),
        ways=frozenset(said["ways"]),
        places=frozenset(said["places"]),
        left_free=frozenset(said["left-free"]),
        filled=frozenset(said["filled"]),
        lengths=tables["lengths"],
        by_length=frozenset(said["by-length"]),
        holds_one=frozenset(said["holds-one"]),
    )


class Reading:
    """A clause whose tree is known, and the plain words before it. Findings that do not hinder it gather in
    `findings`, the places of the numbers that are read in `numbers`: one that no record asks for is lost."""

    __slots__ = ("before", "clause", "findings", "inner", "kitchen", "numbers", "text", "words")

    def __init__(self, clause: Clause, kitchen: Kitchen, findings: list[Diagnostic], before: str = "") -> None:
        self.clause = clause
        self.before = before
        self.text = clause.text
        self.inner = clause.span.start + 1
        self.kitchen = kitchen
        self.words = clause_words(kitchen.language)
        self.findings = findings
        self.numbers: set[int] = set()

    def said(self, nodes: Sequence[Node]) -> str:
        """The words of nodes as written, from the first to the last."""
        return self.text[start_of(nodes[0]) : end_of(nodes[-1])] if nodes else ""

    def span(self, nodes: Sequence[Node]) -> Span:
        """Where nodes stand in the file."""
        if not nodes:
            return self.clause.span
        return made(Span, (self.inner + start_of(nodes[0]), self.inner + end_of(nodes[-1])))

    def keys(self, nodes: Sequence[Node]) -> tuple[str, ...]:
        """The words of nodes as lists know them: in lower case, one by one."""
        return tuple([key for leaf in leaves(nodes) for key in keys_of(leaf[1])])

    def find(
        self, rule: str, severity: Severity, span: Span, message: str, hint: str = "", fix: Fix | None = None
    ) -> None:
        """Keep a finding about this clause."""
        self.findings.append(Diagnostic(rule, severity, span, message, hint, fix=fix))

    def fail(self, rule: str, span: Span, message: str, hint: str = "", fix: Fix | None = None) -> Unreadable:
        """An error that leaves the clause unread: to be raised."""
        return Unreadable(Diagnostic(rule, "error", span, message, hint, fix=fix))

    def number(self, leaf: Node) -> Fraction | None:
        """The number that a word or figures say."""
        return _number(leaf[1], self.kitchen.language)


_PLAIN = str.maketrans({"’": "'", "‐": "-", "‑": "-"})


@lru_cache(4096)
def keys_of(text: str) -> tuple[str, ...]:
    """The words of a text as lists know them."""
    lower = text.lower()
    return tuple((lower if lower.isascii() else lower.translate(_PLAIN)).split())


@lru_cache(4096)
def _number(text: str, language: str) -> Fraction | None:
    return parse_number(text if text.isascii() else text.translate(_FIGURES), language)


_FIGURES = str.maketrans({"\u2009": " ", "\u202f": " ", "‐": "-", "‑": "-"})
