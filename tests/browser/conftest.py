"""A real browser without a window, the built site on the loopback interface and as files, and axe."""

import subprocess
from pathlib import Path

import pytest
from conftest import outside
from serving import serving
from site_samples import site

from signage.publish import write_site

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
PHONE = {"width": 390, "height": 844}
AXE_RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture(scope="session")
def browser():
    playwright = outside("playwright.sync_api")
    chromium = outside("chromium")
    with playwright.sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=chromium, args=FLAGS)
        yield opened
        opened.close()


@pytest.fixture(scope="session")
def folder(tmp_path_factory):
    """The site on disk, in a folder with a space and a letter beyond ASCII."""
    written = tmp_path_factory.mktemp("sïte") / "on a stick"
    write_site(written, site().files)
    return written


@pytest.fixture(scope="session")
def host(folder):
    with serving(folder) as port:
        yield f"http://127.0.0.1:{port}"


class Visit:
    """A page with a record of what it said on the console and what it asked for."""

    def __init__(self, context, host):
        self.host = host
        self.said = []
        self.asked = []
        self.page = context.new_page()
        self.page.on("console", lambda message: self.said.append(message.text))
        self.page.on("pageerror", lambda error: self.said.append(str(error)))
        self.page.on("request", lambda request: self.asked.append(request.url))

    def open(self, path):
        self.page.goto(f"{self.host}/{path}")
        return self.page

    def assert_quiet(self):
        assert self.said == []
        outside_host = [url for url in self.asked if not url.startswith((self.host, "data:"))]
        assert outside_host == []


@pytest.fixture
def visit(browser, host):
    """A phone; the test fails if any page of it says a word on the console or asks another host."""
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=False)
    visited = Visit(context, host)
    yield visited
    cookies = context.cookies()
    context.close()
    visited.assert_quiet()
    assert cookies == []


@pytest.fixture(scope="session")
def axe(tmp_path_factory):
    """The source of axe-core, from its package."""
    npm = outside("npm")
    target = tmp_path_factory.mktemp("axe")
    done = subprocess.run(
        [
            npm,
            "install",
            "--prefix",
            str(target),
            "--ignore-scripts",
            "--no-audit",
            "--no-fund",
            "axe-core@4",
        ],
        check=False,
        capture_output=True,
        text=True,
        timeout=120,
    )
    source = Path(target) / "node_modules" / "axe-core" / "axe.min.js"
    if done.returncode != 0 or not source.is_file():
        outside("axe-core of the npm registry")
    return source.read_text(encoding="utf-8")


@pytest.fixture
def violations(axe):
    """What axe finds wrong with a page, all of it in sight and nothing behind the bar at its foot."""

    def find(page):
        height = page.evaluate("document.documentElement.scrollHeight")
        page.set_viewport_size({"width": PHONE["width"], "height": height})
        page.evaluate(axe)
        found = page.evaluate(
            "tags => axe.run(document, {runOnly: tags, resultTypes: ['violations']})", AXE_RULES
        )
        return [
            (each["id"], node["html"][:160], node.get("failureSummary", ""))
            for each in found["violations"]
            for node in each["nodes"]
        ]

    return find
