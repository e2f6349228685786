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

_IN_KEYS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-"
_NUMBER = pattern(r"[+-]?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?![\w.:-])", re.ASCII)
_DIGITS = 8
"""Of a usual number."""
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
            head, key, value = _usual(line) or _Line(line).parts()
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


def _usual(line: str) -> tuple[str, str, Any] | None:
    """The parts of a line as most are: a table, a string or a number, a remark, nothing. Methods of text need no
    pattern, which takes long to compile."""
    if not line or (line[0] == "#" and not _has_control(line)):
        return "", "", None
    key, sign, said = line.partition(" = ")
    if not sign:
        head = line[1:-1]
        return (head, "", None) if head and line == f"[{head}]" and not head.strip(_IN_KEYS) else None
    if not key or key.strip(_IN_KEYS):
        return None
    inner = said[1:-1]
    if said == f'"{inner}"':
        return None if '"' in inner or "\\" in inner or _has_control(inner) else ("", key, inner)
    top, dot, rest = said.partition(".")
    usual = said.isascii() and top.isdigit() and (top[0] != "0" or top == "0") and (rest.isdigit() or not dot)
    return ("", key, _number(said)) if usual and len(top) <= _DIGITS >= len(rest) else None


def _has_control(text: str) -> bool:
    """Whether there is a sign in a text that TOML forbids."""
    return not text.isprintable() and any(sign == "\x7f" or (sign < " " and sign != "\t") for sign in text)


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
        start = len(self.text) - len(self.text[self.at :].lstrip(" \t"))
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
        return not rest or (rest[0] == "#" and not _has_control(rest))

    def key(self) -> str:
        """A name, plain or in quotation marks."""
        self.takes("")
        start, quoted = self.at, self._quoted()
        if not quoted:
            self.at = len(self.text) - len(self.text[start:].lstrip(_IN_KEYS))
            if self.at == start:
                raise _NotPlain
        return quoted or self.text[start : self.at]

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
        found = _NUMBER.match(self.text, self.at)
        if found is None:
            raise _NotPlain
        self.at = found.end()
        return _number(found[0])

    def _quoted(self) -> str | None:
        sign = self.text[self.at : self.at + 1]
        end = self.text.find(sign, self.at + 1) if sign in ("'", '"') else -1
        inner = self.text[self.at + 1 : end]
        if end < 0 or (sign == '"' and "\\" in inner) or _has_control(inner):
            return None
        self.at = end + 1
        return inner
