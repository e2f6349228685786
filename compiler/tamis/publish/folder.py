"""Putting a new site in the place of the old one.

A build that dies half-way must not leave half a site, and a folder may hold things that no build made: a picture, a
server's settings, by mistake somebody's recipes. So the new site is written beside the old and put in its place by
renaming; a mark in the folder lists the files that the build owns, and all others are carried over as they are.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path

from tamis.library.files import SITE_MARK
from tamis.record import NamedTuple

FORM = 1
"""The form of the mark; a later one may list more."""


class Refused(Exception):
    """The folder is not ours to change; the text tells why, and what the cook can do."""


class Swapped(NamedTuple):
    """What changed on disk, each a path in the site: new or different, gone, and carried over for others."""

    changed: tuple[str, ...]
    removed: tuple[str, ...]
    kept: tuple[str, ...]


def put_site(out: Path, files: Mapping[str, bytes], replace: bool) -> Swapped:
    """Make `out` hold exactly these files and those of others. Raises Refused, and OSError where the disk won't."""
    out = out.resolve()
    beside, old = out.with_name(f".{out.name}.new"), out.with_name(f".{out.name}.old")
    _mend(out, old)
    owned = _owned(out, replace)
    present = set(_all_files(out))
    kept = sorted(present - owned)
    _nothing_in_the_way(out, files, kept, replace)
    kept = [name for name in kept if name not in files]
    changed = tuple(name for name in sorted(files) if name not in present or (out / name).read_bytes() != files[name])
    removed = tuple(sorted((present & owned) - set(files) - {SITE_MARK}))
    mark = _mark(files)
    if changed or removed or not (out / SITE_MARK).exists() or (out / SITE_MARK).read_bytes() != mark:
        _build_beside(beside, out, {**files, SITE_MARK: mark}, kept)
        _swap(beside, out, old)
    return Swapped(changed, removed, tuple(kept))


def _mark(files: Mapping[str, bytes]) -> bytes:
    import json

    said = {
        "about": "This folder was built by tamis; the files below are its own.",
        "form": FORM,
        "files": sorted(files),
    }
    return (json.dumps(said, indent=1) + "\n").encode()


def _mend(out: Path, old: Path) -> None:
    """A build that was stopped between its two renames left the old site under its other name."""
    if old.is_dir() and not out.exists():
        old.rename(out)


def _owned(out: Path, replace: bool) -> set[str]:
    """The files of the last build. Raises Refused for a folder with things in it that no build has marked."""
    import json

    if not out.exists():
        return set()
    if not out.is_dir():
        raise Refused(f"{out} is not a folder; choose another place with `-o`")
    try:
        said = json.loads((out / SITE_MARK).read_text(encoding="utf-8"))
        return {SITE_MARK, *map(str, said["files"])}
    except FileNotFoundError:
        if replace or not any(out.iterdir()):
            return set()
        raise Refused(
            f"{out} was not built by tamis and is not empty; `--replace` builds there and leaves the other files alone"
        ) from None
    except (ValueError, KeyError, TypeError):
        if replace:
            return {SITE_MARK}
        raise Refused(
            f"{out / SITE_MARK} cannot be read; `--replace` rewrites it and leaves the other files alone"
        ) from None


def _nothing_in_the_way(out: Path, files: Mapping[str, bytes], kept: list[str], replace: bool) -> None:
    """Somebody else's file where one of ours must go is never lost without a word."""
    for name in kept:
        if name in files and not replace and (out / name).read_bytes() != files[name]:
            raise Refused(f"{out / name} is in the way and was not built by tamis; `--replace` overwrites it")
    blocked = {folder for folder in {_folder(name) for name in files} if _within_a_file(out / folder, out)}
    for name in files:
        if _folder(name) in blocked or (out / name).is_dir():
            raise Refused(f"{out / name} cannot be written: a folder or file of that name is in the way")


def _folder(name: str) -> str:
    """The folder of a file, both as paths in the site; empty for the site itself."""
    return name.rpartition("/")[0]


def _within_a_file(folder: Path, out: Path) -> bool:
    """Whether a folder of the site cannot be, as it or one above it is a file."""
    return any(path.is_file() for path in (folder, *folder.parents) if out in path.parents)


def _all_files(folder: Path) -> Iterator[str]:
    """Every file and link below a folder, and every empty folder, as a path from it."""
    for here, folders, names in os.walk(folder):
        links = [name for name in folders if Path(here, name).is_symlink()]
        empty = not folders and not names and Path(here) != folder
        for path in [Path(here)] if empty else [Path(here, name) for name in (*names, *links)]:
            yield path.relative_to(folder).as_posix()


def _build_beside(beside: Path, out: Path, files: Mapping[str, bytes], kept: list[str]) -> None:
    shutil.rmtree(beside, ignore_errors=True)
    beside.mkdir(parents=True)
    for folder in sorted({_folder(name) for name in (*files, *kept)}):
        (beside / folder).mkdir(parents=True, exist_ok=True)
    for name, data in files.items():
        (beside / name).write_bytes(data)
    for name in kept:
        if (out / name).is_dir() and not (out / name).is_symlink():
            (beside / name).mkdir(parents=True, exist_ok=True)
        else:
            shutil.copy2(out / name, beside / name, follow_symlinks=False)


def _swap(beside: Path, out: Path, old: Path) -> None:
    """The new folder in place of the old; if it cannot be put there, the old one comes back."""
    shutil.rmtree(old, ignore_errors=True)
    if not out.exists():
        beside.rename(out)
        return
    shutil.copymode(out, beside)
    out.rename(old)
    try:
        beside.rename(out)
    except OSError:
        old.rename(out)
        raise
    shutil.rmtree(old, ignore_errors=True)
