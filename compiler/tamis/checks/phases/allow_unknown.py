"""An `% allow` comment names a rule that does not exist.

It silences nothing, though its writer thought so.

Use the name that stands in brackets at the end of the finding.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

% allow missing-quantty: to taste
Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
