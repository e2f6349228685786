"""The data files that every check reads: tables of strings.

Each of these files is kept to what takes no general reader of TOML: tables with a plain name, and a string in double
quotes on the line of its key. Anything else is a fault of a file that ships with the compiler, and raises. A test holds
the two readers together. A start finds them saved, without what is said of them: a row of `tables.txt` is a file.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tamis.saved import Saved, saved


@cache
def _saved(language: str) -> Saved:
    return saved(language, "tables")


def saved_tables(language: str, name: str) -> dict[str, dict[str, str]]:
    """The tables of a data file: `saved_tables("en", "safety")` are those of `grammar/words/en/safety.toml`,
    `saved_tables("", "safety")` of `grammar/safety.toml`."""
    cells = _saved(language).row(name)
    rows = [cell.split("=") for cell in cells[1::2]]
    return {table: dict(zip(said[::2], said[1::2], strict=False)) for table, said in zip(cells[::2], rows, strict=True)}


def tables(text: str) -> dict[str, dict[str, str]]:
    """The tables of a TOML file that holds nothing but strings, each on its line."""
    found: dict[str, dict[str, str]] = {}
    table: dict[str, str] | None = None
    for at, line in enumerate(text.split("\n"), 1):
        if line[:1] in "#":
            continue
        if line[0] == "[":
            name, sign, rest = line[1:].partition("]")
            name = _plain(name)
            again, value, table = name in found, "", {}
            found[name] = table
        else:
            name, _, rest = line.partition(' = "')
            value, sign, rest = rest.partition('"')
            name = name[1:-1] if name[:1] == name[-1:] == '"' else _plain(name)
            if table is None:
                raise ValueError(f"a key before all tables: {line}")
            again, table[name] = name in table, value
        if not (sign and name) or rest.lstrip(" ")[:1] not in "#" or '"' in name or "\\" in name + value:
            raise ValueError(f"neither a table nor a string: line {at}, {line}")
        if again:
            raise ValueError(f"a table or a key stands twice: {line}")
    return found


def exact(text: str) -> Fraction:
    """The number that a string is: `3`, `0.25`, `1/2`; any other as `Fraction` reads it, which takes four times as
    long."""
    whole, point, part = text.partition(".")
    if point and whole.isdigit() and part.isdigit():
        return Fraction(int(whole + part), 10 ** len(part))
    top, stroke, bottom = text.partition("/")
    if stroke and top.isdigit() and bottom.isdigit():
        return Fraction(int(top), int(bottom))
    return Fraction(int(text) if text.isdigit() else text)


def _plain(name: str) -> str:
    """A name without quotes; "" if it would need them."""
    return name if name.replace("-", "").replace("_", "").isalnum() else ""
