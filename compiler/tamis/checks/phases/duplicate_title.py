"""Two recipes of one house have the same title.

A reader of the index, and a cook at the stove, cannot tell them apart.

Say in the title what is different.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD: Files = {
    "brine.tamis": """\
title: Brine
makes: 1 l

# Brine

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
    "brine-strong.tamis": """\
title: Brine
makes: 1 l

# Brine

Stir [1 l water] with [20 g fine salt] [in a jug].
""",
}
GOOD: Files = {
    "brine.tamis": """\
title: Brine
makes: 1 l

# Brine

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
    "brine-strong.tamis": """\
title: Strong brine
makes: 1 l

# Brine

Stir [1 l water] with [20 g fine salt] [in a jug].
""",
}
