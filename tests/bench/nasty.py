"""Input that nobody means and somebody will send: does the time grow as the text does?

An editor compiles at every keystroke, and a file may be anything: a log, a table, a cat on the keyboard. Each family
here is a text that grows as long as wanted and has once made a compiler of some kind look at everything for
everything: a bracket that never closes, brackets within brackets, one endless line, ten thousand headings, a batch
that is divided for ever, a sentence over thousands of lines, a silencing comment above every line.
"""

from __future__ import annotations

from collections.abc import Callable

_HEAD = "title: Nasty\nserves: 4\n\n"


def _repeated(start: str, unit: Callable[[int], str], size: int) -> str:
    """`start`, then the units 0, 1, 2 … up to so many characters; the last may be cut."""
    parts, length, at = [start], len(start), 0
    while length < size:
        parts.append(unit(at))
        length += len(parts[-1])
        at += 1
    return "".join(parts)[:size]


def open_brackets(size: int) -> str:
    """A line of nothing but `[`."""
    return _repeated(f"{_HEAD}# A\n\nStir ", lambda _: "[", size)


def nested(size: int) -> str:
    """Square and round brackets within each other, none of them closed, on many lines."""
    return _repeated(f"{_HEAD}# A\n\n", lambda _: "Add [1 (" * 12 + "[2 g salt] " + "((" * 40 + "\n", size)


def one_line(size: int) -> str:
    """A single line with all the clauses."""
    return _repeated(f"{_HEAD}# A\n\nMix ", lambda at: f"[{at} g flour, sifted], [{at} ml water] and ", size)


def headings(size: int) -> str:
    """A component every few words, used by the next but one."""
    return _repeated(_HEAD, lambda at: f"# C{at}\n\nStir [{at + 1} g flour].\nAdd [the C{at // 2 * 2 - 2}].\n\n", size)


def shares(size: int) -> str:
    """One batch, taken from again and again under new names."""
    start = f"{_HEAD}# A\n\nStir [9 kg flour] and [half of 9 kg sugar].\n"
    unit = "Add [the rest of the sugar] to [a tenth of the flour], [set aside] [as heap {}].\n"
    return _repeated(start, lambda at: unit.format(at), size)


def continued(size: int) -> str:
    """One action over thousands of lines."""
    return _repeated(f"{_HEAD}# A\n\nMix [1 kg flour]\n", lambda at: f"and then [{at + 1} g salt] with a spoon\n", size)


def comments(size: int) -> str:
    """A silencing comment above every line."""
    unit = "% allow missing-cue: because of {0}\nSimmer [{0} g onions] [for {0}-{1} min].\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1, at + 2), size)


FAMILIES: dict[str, Callable[[int], str]] = {
    "open brackets": open_brackets,
    "nested brackets": nested,
    "one line": one_line,
    "headings": headings,
    "shares": shares,
    "continued line": continued,
    "comments": comments,
}
