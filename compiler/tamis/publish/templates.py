"""The page templates, compiled once a process.

They ship as data beside the package, in a wheel or in a checkout, and only the assets module knows where. What a cook
wrote is always escaped; only `Markup` made here goes in as it is.
"""

from __future__ import annotations

from functools import cache

from tamis.assets import asset_text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from jinja2 import Environment, Template


def template(name: str) -> Template:
    """A template of `site/templates/`."""
    return _environment().get_template(name)


@cache
def _environment() -> Environment:
    from jinja2 import Environment, FunctionLoader, StrictUndefined

    return Environment(
        loader=FunctionLoader(lambda name: asset_text(f"site/templates/{name}")),
        autoescape=True,
        undefined=StrictUndefined,
        auto_reload=False,
        keep_trailing_newline=True,
    )
