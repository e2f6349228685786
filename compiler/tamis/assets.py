"""Where the data files lie that ship with the compiler: `grammar/` and `site/`.

In a wheel they are folders of the package; in a checkout they stand at its top, beside `compiler/`.
"""

from __future__ import annotations

import os

from tamis.typed import Any

_HERE = os.path.dirname(os.path.realpath(__file__))
_CHECKOUT = os.path.dirname(os.path.dirname(_HERE))


def asset(name: str) -> str:
    """The path of a shipped file or folder, such as `grammar/verbs.toml`."""
    packed = f"{_HERE}/{name}"
    return packed if os.path.exists(packed) else f"{_CHECKOUT}/{name}"


def asset_bytes(name: str) -> bytes:
    """What is in a shipped file."""
    with open(asset(name), "rb") as file:
        return file.read()


def asset_part(name: str, start: int, size: int) -> bytes:
    """So many bytes of a shipped file."""
    with open(asset(name), "rb", buffering=0) as file:
        file.seek(start)
        return file.read(size)


def asset_text(name: str) -> str:
    """The text of a shipped file."""
    text = asset_bytes(name).decode("utf-8")
    return text.replace("\r\n", "\n") if "\r" in text else text


class _Usual:
    """How a scanner of JSON reads unless it is told otherwise."""

    strict, object_hook, object_pairs_hook = True, None, None
    parse_float, parse_int, parse_constant = float, int, float


def json_of(text: str) -> Any:
    """What shipped JSON says. The scanner of Python's reader is asked by itself, if this Python has one and the text is
    sound: to import the reader takes as long as to read some lines of a recipe."""
    how: Any = _Usual
    try:
        from _json import make_scanner

        said, end = make_scanner(how)(text, 0)
        if not text[end:].strip():
            return said
    except (ImportError, AttributeError, TypeError, StopIteration):  # of another Python
        pass
    from json import loads

    return loads(text)
