"""Something is made and never used.

A reader makes a sauce and does not know where it goes.

Use it by its name, or take it out.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min].

[Meanwhile], stir [50 g honey] with [20 ml water] [in a cup] [as syrup].

Serve.
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min].

[Meanwhile], stir [50 g honey] with [20 ml water] [in a cup] [as syrup].

Add [the syrup].
"""
