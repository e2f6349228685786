"""A heading has no name.

Other components call what it makes by that name.

Write what the component makes: `# Dough`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

#

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
