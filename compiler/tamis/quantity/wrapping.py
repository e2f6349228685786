"""Text in lines for a terminal."""

from __future__ import annotations

from tamis.patterns import pattern

_NUMBER = pattern(r"([\d⅛¼⅓⅜½⅝⅔¾⅞]) (?=[a-z%°])")


def wrap(text: str, width: int, rest: str = "", first: str = "") -> list[str]:
    """Lines of at most a width, where words allow: `first` begins the first of them, `rest` the others.

    A number stays beside its unit, also one with a hyphen.
    """
    if len(first) + len(text) <= width:
        return [first + text]
    import textwrap

    held = _NUMBER.sub("\\1\u00a0", text)
    lines = textwrap.wrap(held, width, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False)
    return [line.replace("\u00a0", " ") for line in lines]
