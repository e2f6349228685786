"""Input that nobody means and somebody will send: does the time grow as the text does?

An editor compiles at every keystroke, and a file may be anything: a log, a table, a cat on the keyboard. Each family
here is a text that grows as long as wanted and has once made a compiler of some kind look at everything for
everything: a bracket that never closes, brackets within brackets, one endless line, ten thousand headings, a batch
that is divided for ever, a sentence over thousands of lines, a silencing comment above every line, a
thousand names that nobody else uses.
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


def steps(size: int) -> str:
    """One component that never ends, with a long rest after every line."""
    return _repeated(f"{_HEAD}# A\n\n", lambda at: f"Stir [{at + 1} g flour] and [rest for {at + 1} min].\n\n", size)


def bakes(size: int) -> str:
    """An oven at another temperature for every line, and a cue of its own."""
    unit = "[Bake for {} min] [at {} C] [until {}].\n\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1, 100 + at % 150, _word(at)), size)


def vessels(size: int) -> str:
    """All food in the same bowl, line after line, with a cue of its own."""
    unit = "Stir [{} g flour] [in a bowl], [until {}].\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1, _word(at)), size)


def raw(size: int) -> str:
    """Raw poultry in every component, on the same board."""
    unit = "# C{0}\n\nPut [{1} g raw chicken breast] [on a board], [leave for {1} h].\n\n"
    return _repeated(_HEAD, lambda at: unit.format(at, at + 1), size)


def meanwhiles(size: int) -> str:
    """Everything beside something else."""
    unit = "[Meanwhile], chop [{0} g onions] and [simmer for {0} min].\n\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1), size)


def products(size: int) -> str:
    """Every line makes something with a name of its own."""
    unit = "Whisk [{} g flour] and [{} ml water] [set aside] [as paste {}].\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1, at + 2, _word(at)), size)


def used_products(size: int) -> str:
    """As many names, and then all of them once more."""
    return _named_again(f"{_HEAD}# A\n\n", "Whisk [{} g flour] [as paste {}].\n", "\n", "Add [the paste {}].\n", size)


def collected(size: int) -> str:
    """A component that names all others."""
    return _named_again(_HEAD, "# Sauce {1}\n\nStir [{0} g flour].\n\n", "# All\n\n", "Add [the sauce {}].\n", size)


def _named_again(start: str, unit: str, between: str, again: str, size: int) -> str:
    """Something made again and again, then the name of each; no name is cut off, spaces fill the text up."""
    made, named = [start], [between]
    left, at = size - len(start) - len(between), 0
    while left > 0:
        made.append(unit.format(at + 1, _word(at)))
        named.append(again.format(_word(at)))
        left -= len(made[-1]) + len(named[-1])
        at += 1
    return "".join((*made[:-1], *named[:-1])).ljust(size)


def halves(size: int) -> str:
    """Half of one thing, for ever."""
    start = f"{_HEAD}# Dough\n\nStir [9 kg flour] [in a bowl].\n\n# B\n\n"
    return _repeated(start, lambda _: "Add [half the dough] and stir.\n", size)


def references(size: int) -> str:
    """One name, called in every line."""
    start = f"{_HEAD}# A\n\nStir [9 kg flour] [in a bowl].\n\n# B\n\n"
    return _repeated(start, lambda _: "Add [the A] and stir.\n", size)


def unknown_foods(size: int) -> str:
    """A misspelt food in every line."""
    return _repeated(f"{_HEAD}# A\n\n", lambda at: f"Add [{at + 1} g flou{_word(at)}] and stir.\n", size)


def unknown_names(size: int) -> str:
    """A name in every line that nothing answers to, and not far from one that is there."""
    start = f"{_HEAD}# Sauce aaaa\n\nStir [1 g flour].\n\n# B\n\n"
    return _repeated(start, lambda at: f"Add [the sauce {_word(at)}] and stir.\n", size)


def misspelt(size: int) -> str:
    """Components, each of which misspells the one before."""
    unit = "# Sauce {}\n\nStir [{} g flour].\nAdd [the sauce {}x].\n\n"
    return _repeated(_HEAD, lambda at: unit.format(_word(at + 1), at + 1, _word(at)), size)


def notes(size: int) -> str:
    """A remark after every line break, with words that a step would have."""
    unit = "> A note about {}, which takes {} min at 180 C in a pan with 3 eggs.\n\n"
    return _repeated(f"{_HEAD}# A\n\nStir [1 g flour].\n\n", lambda at: unit.format(_word(at), at), size)


def header(size: int) -> str:
    """Nothing but a header, with keys that nobody knows."""
    return _repeated("title: Nasty\nserves: 4\n", lambda at: f"{_word(at)}: {_word(at + 7)} {at}\n", size)


def plain(size: int) -> str:
    """Measures, times and degrees in plain words."""
    unit = "Stir {0} g flour and {0} ml water in a pan for {0} min at {1} C.\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1, at % 200), size)


def prose(size: int) -> str:
    """Plain words on one line, with a verb every few words."""
    unit = "and then whisk {} until it is {}, chop and "
    return _repeated(f"{_HEAD}# A\n\nStir [1 kg flour] ", lambda at: unit.format(_word(at), _word(at + 3)), size)


def left_over(size: int) -> str:
    """Something left over in every line, under a name of its own."""
    unit = "Drain [{} g spinach], [leaving water {}].\n"
    return _repeated(f"{_HEAD}# A\n\n", lambda at: unit.format(at + 1, _word(at)), size)


def preferments(size: int) -> str:
    """A preferment and a dough, again and again."""
    unit = (
        "# Poolish {0}\n\nStir [{1} g flour] with [{1} g water] and [1 g yeast].\n[Leave for {2} h].\n\n"
        "# Dough {0}\n\nMix [the poolish {0}] with [{3} g flour] and [9 g salt].\n\n"
    )
    return _repeated(_HEAD, lambda at: unit.format(_word(at), at + 9, at % 9 + 3, at + 50), size)


def divided(size: int) -> str:
    """One batch, divided for ever."""
    return _repeated(f"{_HEAD}# A\n\nMix [9 kg flour].\n", lambda _: "Divide [into 2 pieces].\n", size)


def listed(size: int) -> str:
    """A list of ingredients as it stands elsewhere."""
    return _repeated(_HEAD, lambda at: f"{at + 1} g flour, sifted\n", size)


def empty_components(size: int) -> str:
    """Headings with nothing below."""
    return _repeated(_HEAD, lambda at: f"# C{_word(at)}\n\n", size)


def _word(number: int) -> str:
    """A word of four letters or more, another one for each number."""
    letters, left = "", number + 26**3
    while left:
        left, at = divmod(left, 26)
        letters += chr(ord("a") + at)
    return letters


FAMILIES: dict[str, Callable[[int], str]] = {
    "open brackets": open_brackets,
    "nested brackets": nested,
    "one line": one_line,
    "headings": headings,
    "shares": shares,
    "continued line": continued,
    "comments": comments,
    "steps": steps,
    "bakes": bakes,
    "vessels": vessels,
    "raw poultry": raw,
    "meanwhiles": meanwhiles,
    "products": products,
    "used products": used_products,
    "collected": collected,
    "halves": halves,
    "references": references,
    "unknown foods": unknown_foods,
    "unknown names": unknown_names,
    "misspelt names": misspelt,
    "notes": notes,
    "header": header,
    "plain words": plain,
    "plain words on a line": prose,
    "left over": left_over,
    "preferments": preferments,
    "divided": divided,
    "list": listed,
    "empty components": empty_components,
}
