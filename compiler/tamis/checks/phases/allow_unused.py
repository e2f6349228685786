"""An `% allow` comment silences nothing.

Left standing, it would hide a fault that comes later.

Take it out, or move it right above the line that it speaks for.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD = """\
title: Oats
serves: 2

# Oats

% allow missing-quantity: to taste
Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
