"""The demo site in a real browser: nothing wider than a small phone, and every recipe prints.

Needs Chromium (or the program that CHROMIUM names); without one these tests are skipped, and say so.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
from html import unescape
from pathlib import Path

import pytest

from tamis.library.library import open_library
from tamis.publish.site import build_site

NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
BROWSER = os.environ.get("CHROMIUM") or next((path for name in NAMES if (path := shutil.which(name))), None)
QUIET = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
    "--disable-background-networking", "--disable-component-update", "--allow-file-access-from-files",
)  # fmt: skip
PHONE = 360

pytestmark = pytest.mark.skipif(
    BROWSER is None, reason=f"no browser here: none of {', '.join(NAMES)}, CHROMIUM not set"
)

# A window of a headless browser cannot be made as narrow as a phone, but a frame can.
FRAMES = """<!doctype html><meta charset="utf-8"><body><script>
const pages = %s, widths = {};
function next() {
  const page = pages.shift();
  if (!page) { const out = document.createElement("pre"); out.id = "out"; out.textContent = JSON.stringify(widths);
               document.body.replaceChildren(out); return; }
  const frame = document.createElement("iframe");
  frame.style.cssText = "width: %dpx; height: 700px; border: 0";
  frame.onload = () => { widths[page] = frame.contentDocument.documentElement.scrollWidth; frame.remove(); next(); };
  frame.src = page; document.body.append(frame);
}
next();
</script>"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("browser") / "public"
    report = build_site(open_library(Path(__file__).resolve().parents[2] / "recipes"), out, keep_going=True)
    assert report.pages > 10
    return out


def browse(profile: Path, *arguments: str) -> str:
    assert BROWSER
    command = [BROWSER, *QUIET, f"--user-data-dir={profile}", *arguments]
    return subprocess.run(command, capture_output=True, text=True, timeout=50, check=True).stdout


def test_no_page_is_wider_than_a_small_phone(site: Path, tmp_path: Path) -> None:
    pages = sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))
    wrapper = site.parent / "frames.html"
    wrapper.write_text(FRAMES % (json.dumps([f"public/{page}" for page in pages]), PHONE), encoding="utf-8")
    dom = browse(tmp_path / "profile", "--virtual-time-budget=30000", "--dump-dom", wrapper.as_uri())
    found = re.search(r'<pre id="out">(.*?)</pre>', dom, re.DOTALL)
    assert found, dom[-2000:]
    widths = json.loads(unescape(found[1]))
    assert len(widths) == len(pages)
    assert {page: width for page, width in widths.items() if width > PHONE} == {}


@pytest.mark.parametrize("page", ["recipes/harbour-rye-tin-loaves.html", "recipes/lemon-poppy-cake.html", "index.html"])
def test_a_page_prints(site: Path, tmp_path: Path, page: str) -> None:
    pdf = tmp_path / "page.pdf"
    browse(tmp_path / "profile", "--no-pdf-header-footer", f"--print-to-pdf={pdf}", (site / page).as_uri())
    data = pdf.read_bytes()
    assert data.startswith(b"%PDF-")
    assert 1 <= len(re.findall(rb"/Type\s*/Page\b(?!s)", data)) <= 3
