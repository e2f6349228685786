"""A board or knife that held raw meat, poultry or fish is used, unwashed, for food that isn't cooked after.

The bacteria that heat would have killed in the meat are eaten with the salad.

Wash it in between (`wash [the board] in hot soapy water`), take another (`[on a clean board]`), or cut the salad
first.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "unwashed-tool"
LEVEL: Severity = "warning"
ABOUT = ("view safety.open",)
BAD = """\
title: Chicken salad
serves: 2

# Chicken

Slice [400 g chicken breast] thinly [on a board].
Fry [in 1 tbsp olive oil] [in a frying pan] [for 4–5 min] [until 74 °C (165 °F) in the middle].

# Salad

Slice [1 cucumber] [on the board].
Toss with [2 tbsp lemon juice] [in a bowl] and top with [the chicken].
"""
GOOD = """\
title: Chicken salad
serves: 2

# Chicken

Slice [400 g chicken breast] thinly [on a board].
Fry [in 1 tbsp olive oil] [in a frying pan] [for 4–5 min] [until 74 °C (165 °F) in the middle].

# Salad

Slice [1 cucumber] [on a clean board].
Toss with [2 tbsp lemon juice] [in a bowl] and top with [the chicken].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each contact that no heat followed."""
    for item in view.safety.open:
        if item.form == "contact":
            tool = item.path[1] if len(item.path) > 1 else "tool"
            from tamis.safety.wording import name_of

            message = f"the {tool} held {name_of(item)} ({item.food}) and was not washed; this food isn't cooked after"
            yield Diagnostic(RULE, LEVEL, item.span, message, f"wash it first, or take a clean {tool}")
