"""Explain a rule: what it finds, why it matters and how to fix it. Without a rule, list them all.

The text and the examples are those of the rule's own file, so that they cannot say something else than
it does.
"""

from __future__ import annotations

import sys

from tamis.checks.registry import Files, names, page, scaling_names
from tamis.diagnostics import INTERNAL_ERROR
from tamis.quantity.near import nearest
from tamis.quantity.numerals import decimal
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse


_HEADS = ("", "Why it matters", "How to fix it")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis explain` takes."""
    parser.add_argument("rule", nargs="?", metavar="RULE", help="the name in parentheses at the end of a finding")


def run(options: argparse.Namespace) -> int:
    """Print a rule's page, or the list; 2 if there is no such rule."""
    known = sorted((*names(), *scaling_names()))
    if options.rule is None:
        print("\n".join(_listed(name) for name in known))
        return 0
    if options.rule == INTERNAL_ERROR:
        import tamis.internal

        print(f"{INTERNAL_ERROR} (error)\n\n{(tamis.internal.__doc__ or '').strip()}")
        return 0
    if options.rule not in known:
        near = nearest(options.rule, known) or next((rule for rule in known if rule.startswith(options.rule)), None)
        hint = f"did you mean `{near}`?" if near else "`tamis explain` lists them"
        print(f"tamis explain: there is no rule “{options.rule}”; {hint}", file=sys.stderr)
        return 2
    print(explained(options.rule))
    return 0


def explained(name: str) -> str:
    """A rule's page as text for a terminal."""
    rule = page(name)
    blocks = [f"{name} ({rule.level})"]
    for head, part in zip(_HEADS, rule.parts, strict=False):
        blocks.append(f"{head}\n{part}" if head else part)
    scaled = f", scaled by {decimal(rule.factor)}" if rule.factor else ""
    blocks.append(f"A recipe with the problem{scaled}\n{_example(rule.bad)}")
    blocks.append(f"The same without it{scaled}\n{_example(rule.good)}")
    return "\n\n".join(blocks)


def _listed(name: str) -> str:
    rule = page(name)
    first = " ".join(rule.parts[0].split()) if rule.parts else ""
    return f"{name:<28}{rule.level:<13}{first}"


def _example(files: Files) -> str:
    """The texts of an example, indented; named where there are several."""
    shown = []
    for name, content in files.items():
        text = content.decode("utf-8", "replace") if isinstance(content, bytes) else content
        lines = [f"    {line}".rstrip() for line in text.strip("\n").split("\n")]
        shown.append("\n".join([f"  {name}:", *lines] if len(files) > 1 else lines))
    return "\n".join(shown)
