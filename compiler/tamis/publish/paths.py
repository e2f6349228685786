"""Where a recipe's page lies in the site, as a file and as a link.

Pages lie in a folder of their own, so that no recipe's file name can be the index's. A file name may hold any
character, and on some machines bytes that are none; a link holds them as per cent signs.
"""

from __future__ import annotations

from urllib.parse import quote


def page_file(stem: str) -> str:
    """The path of a recipe's page in the site's folder."""
    return f"recipes/{stem}.html"


def picture_path(stem: str, suffix: str) -> str:
    """The path of a recipe's picture in the site's folder."""
    return f"pictures/{stem}{suffix.lower()}"


def link(path: str) -> str:
    """A path in the site as a link from its first page."""
    return quote(path, errors="surrogateescape")


def page_link(stem: str) -> str:
    """The same as a link from the site's first page."""
    name = quote(stem, errors="surrogateescape")
    return f"recipes/{name}.html"
