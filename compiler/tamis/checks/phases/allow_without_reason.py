"""An `% allow` comment that does not name a rule and a reason.

Whoever reads the recipe next year must know why the rule does not hold here.

Write `% allow missing-quantity: as much as the bowl holds`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

% allow missing-cue
Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

% the oats may be toasted first
Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
