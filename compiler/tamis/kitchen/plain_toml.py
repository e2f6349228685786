"""The house's files as most of them are written, read without the general reader of TOML.

To import that one takes as long as to read a recipe. This knows tables with a plain name, and on the line of its key a
string without escapes, a number, a truth, or a flat list or table of these. For any other text it gives None, and the
general reader reads it, or tells what is wrong with it.
"""

from __future__ import annotations

import re

from tamis.patterns import pattern
from tamis.typed import Any, Literal

Truth = Literal["true", "false"]
TRUTHS: dict[Truth, bool] = {"true": True, "false": False}

_USUAL = pattern(
    r"""\[([A-Za-z0-9_-]+)\]|([A-Za-z0-9_-]+) = (?:\"([^\"\\\x00-\x1f\x7f]*)\"|([1-9][0-9]{0,8}(?:\.[0-9]{1,8})?))"""
    r"""|(?:\#[^\x00-\x08\x0a-\x1f\x7f]*)?"""
)
"""What most lines are: a table, a string or a number, a remark, nothing."""
_KEY = pattern(r"[A-Za-z0-9_-]+")
_QUOTED = pattern(r"""\"([^\"\\\x00-\x08\x0a-\x1f\x7f]*)\"|'([^'\x00-\x08\x0a-\x1f\x7f]*)'""")
_NUMBER = pattern(r"[+-]?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?![\w.:-])", re.ASCII)
_SPACES = pattern(r"[ \t]*")
_CONTROL = pattern(r"[\x00-\x08\x0a-\x1f\x7f]")
_LONGEST = 500
"""Longer lines are left to the other reader: a number may have more digits than can be read."""


class _NotPlain(Exception):
    """A line for the other reader; it never leaves this file."""


def read(text: str) -> dict[str, Any] | None:
    """The tables of a text; None where it is not plain."""
    said: dict[str, Any] = {}
    table = said
    try:
        for line in text.replace("\r\n", "\n").split("\n"):
            usual = _USUAL.fullmatch(line)
            if usual:
                head, key, value, number = usual.groups()
                value = _number(number) if number else value
            else:
                head, key, value = _Line(line).parts()
            if head:
                table = {}
                _put(said, head, table)
            elif key:
                _put(table, key, value)
    except _NotPlain:
        return None
    return said


def _put(table: dict[str, Any], key: str, value: Any) -> None:
    if key in table:
        raise _NotPlain
    table[key] = value


def _number(text: str) -> float | int:
    return float(text) if "." in text else int(text)


class _Line:
    """One line, read from left to right."""

    __slots__ = ("at", "text")

    def __init__(self, text: str) -> None:
        if len(text) > _LONGEST:
            raise _NotPlain
        self.text = text
        self.at = 0

    def parts(self) -> tuple[str, str, Any]:
        """The table that the line opens, the key that it gives, and its value."""
        head, key, value = "", "", None
        if self.takes("["):
            head = self.key()
            self.wants("]")
        elif not self.at_end():
            key = self.key()
            self.wants("=")
            value = self.value()
        if not self.at_end():
            raise _NotPlain
        return head, key, value

    def takes(self, sign: str) -> bool:
        """Whether the sign comes next; then it is passed over."""
        found = _SPACES.match(self.text, self.at)
        start = found.end() if found else self.at
        if not self.text.startswith(sign, start):
            return False
        self.at = start + len(sign)
        return True

    def wants(self, sign: str) -> None:
        """Pass over a sign that must come next."""
        if not self.takes(sign):
            raise _NotPlain

    def at_end(self) -> bool:
        """Whether nothing but a remark follows."""
        rest = self.text[self.at :].lstrip(" \t")
        return not rest or (rest[0] == "#" and not _CONTROL.search(rest))

    def key(self) -> str:
        """A name, plain or in quotation marks."""
        self.takes("")
        return self._quoted() or self._found(_KEY)

    def value(self) -> Any:
        """A simple value, or a flat list or table of such."""
        if self.takes("["):
            return self._list()
        if self.takes("{"):
            return self._table()
        return self._simple()

    def _list(self) -> list[Any]:
        values: list[Any] = []
        while not self.takes("]"):
            if values:
                self.wants(",")
                if self.takes("]"):
                    break
            values.append(self._simple())
        return values

    def _table(self) -> dict[str, Any]:
        table: dict[str, Any] = {}
        while not self.takes("}"):
            if table:
                self.wants(",")
            key = self.key()
            self.wants("=")
            _put(table, key, self._simple())
        return table

    def _simple(self) -> Any:
        self.takes("")
        for word, truth in TRUTHS.items():
            if self.text.startswith(word, self.at):
                self.at += len(word)
                return truth
        quoted = self._quoted()
        if quoted is not None:
            return quoted
        return _number(self._found(_NUMBER))

    def _quoted(self) -> str | None:
        found = _QUOTED.match(self.text, self.at)
        if found is None:
            return None
        self.at = found.end()
        return found[1] if found[2] is None else found[2]

    def _found(self, wanted: re.Pattern[str]) -> str:
        found = wanted.match(self.text, self.at)
        if found is None:
            raise _NotPlain
        self.at = found.end()
        return found[0]
