"""`image:` names a picture that the site cannot show.

The page is built without it, and a guest who looks for the dish sees none.

Put the picture beside the recipe and write its file's name as it is, capitals too, or take the line out. A picture must
lie in the folder of the house and end in `.jpg`, `.jpeg`, `.png`, `.webp`, `.avif`, `.gif` or `.svg`. One on the web is
not looked for.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD: Files = {
    "oats.tamis": """\
title: Oats
serves: 2
image: oat.svg

# Oats

Stir [100 g rolled oats] into [200 ml milk] [in a bowl].
[Chill for 8 h].
""",
    "oats.svg": b"<svg xmlns='http://www.w3.org/2000/svg'/>",
}
GOOD: Files = {
    "oats.tamis": """\
title: Oats
serves: 2
image: oats.svg

# Oats

Stir [100 g rolled oats] into [200 ml milk] [in a bowl].
[Chill for 8 h].
""",
    "oats.svg": b"<svg xmlns='http://www.w3.org/2000/svg'/>",
}
