"""A real browser without a window, the built site on the loopback interface and as files, and axe."""

import shutil
import subprocess
from pathlib import Path

import pytest
from outside_readers import outside
from serving import serving
from site_samples import site

from signage.produce.publish import write_site

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
    chromium = shutil.which("chromium-headless-shell") or outside("chromium")  # the shell costs a fifth
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
        """Nothing on the console, nothing asked from another host, nothing stored; then all is forgotten."""
        said, asked = list(self.said), list(self.asked)
        self.said.clear()
        self.asked.clear()
        assert said == []
        assert [url for url in asked if not url.startswith((self.host, "data:"))] == []
        assert self.page.context.cookies() == []


@pytest.fixture
def visit(browser, host):
    """A new phone; the test fails if any page of it is not quiet."""
    context = browser.new_context(viewport=PHONE, has_touch=True)
    visited = Visit(context, host)
    yield visited
    visited.assert_quiet()
    context.close()


@pytest.fixture(scope="session")
def kept_phone(browser, host):
    context = browser.new_context(viewport=PHONE, has_touch=True)
    yield Visit(context, host)
    context.close()


@pytest.fixture
def phone(kept_phone):
    """The same phone for many tests, which is faster; pages store nothing, so it forgets what was before."""
    kept_phone.page.set_viewport_size(PHONE)
    yield kept_phone
    kept_phone.assert_quiet()


@pytest.fixture(scope="session")
def scriptless(browser):
    """A phone without scripts that says what it asks for."""
    context = browser.new_context(java_script_enabled=False, viewport=PHONE)
    page = context.new_page()
    page.asked = []
    page.on("request", lambda request: page.asked.append(request.url))
    yield page
    context.close()


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
    """What axe finds wrong with a page, with the bar at its foot in line so that nothing lies behind it."""

    def find(page):
        page.evaluate("document.querySelector('.going')?.style.setProperty('position', 'static')")
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
