"""A bracket stands in a tip, a note or another paragraph for the reader.

Such a paragraph is printed in plain words, without the brackets: what stands there is in no table and not on the
timeline, and a larger recipe does not scale it.

Take the brackets away; what belongs to the dish goes into a step. A link, `[text](address)`, is none.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.source import Span
from tamis.syntax.brackets import IN_REMARK
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "clause-in-note"
LEVEL: Severity = "warning"
ABOUT = ("view notes",)
BAD = """\
title: Pancake batter
serves: 4

Whisk [200 g plain flour] with [4 pasteurised eggs] and [300 ml whole milk] [in a bowl] and [stand for 30 min].
[Fry for 2 min on each side] [in a pan] [until golden].

Tip: with [50 ml milk] more it is thinner.
"""
GOOD = """\
title: Pancake batter
serves: 4

Whisk [200 g plain flour] with [4 pasteurised eggs] and [300 ml whole milk] [in a bowl] and [stand for 30 min].
[Fry for 2 min on each side] [in a pan] [until golden].

Tip: with 50 ml milk more it is thinner.
"""


def check(view: View) -> Iterator[Diagnostic]:
    """The brackets in paragraphs for the reader."""
    for remark in view.notes:
        for found in IN_REMARK.finditer(view.source.slice(remark.span)):
            span = Span(remark.span.start + found.start(), remark.span.start + found.end())
            message = f"“{found[0]}” in a {remark.kind} is only printed: it is in no table and not on the timeline"
            yield Diagnostic(RULE, LEVEL, span, message, "take the brackets away, or write it into a step")
