"""Two recipe files of one house have the same name, in different folders.

Pages and `uses:` go by the file name: one of the two could not be reached.

Call one of the files differently.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD: Files = {
    "brine.tamis": """\
title: Brine
makes: 1 l

# Brine

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
    "old/brine.tamis": """\
title: Old brine
makes: 1 l

# Brine

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
}
GOOD: Files = {
    "brine.tamis": """\
title: Brine
makes: 1 l

# Brine

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
    "old/old-brine.tamis": """\
title: Old brine
makes: 1 l

# Brine

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
}
