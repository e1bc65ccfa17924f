"""Where each page of the site stands, and how one page links to another.

An address is the path of a folder below the site: empty or ending in a slash, such as ``ar/p1/apron-off/``.
Links are relative and end in ``index.html``, so that the site works from a memory stick too. Folders that
are no protocol have names longer than six letters or with a hyphen, which no protocol code has.
"""

from __future__ import annotations

from signage.model.library import Protocol, Step
from signage.model.training_path import training_path

LANGUAGES = ""
"""The page that every phone can reach: the choice of languages."""

ASSETS = "site-assets/"
STYLESHEET = f"{ASSETS}site.css"
SCRIPT = f"{ASSETS}site.js"
PICTURES = f"{ASSETS}pictures/"
NOT_FOUND_FILE = "404.html"

FILE_LIST = "site-files.txt"
"""Names every file of the site, so that the next run takes away only what this programme wrote."""


def file_of(address: str) -> str:
    """The file that a server shows for an address."""
    return f"{address}index.html"


def link_to_file(start: str, file: str) -> str:
    """From the page at an address to a file of the site."""
    here, there = [part for part in start.split("/") if part], file.split("/")
    shared = 0
    while shared < min(len(here), len(there)) and here[shared] == there[shared]:
        shared += 1
    return "/".join([*[".."] * (len(here) - shared), *there[shared:]]) or "."


def contents(locale: str) -> str:
    """The list of protocols in a language."""
    return f"{locale}/"


def protocol_page(locale: str, protocol: Protocol) -> str:
    """The page that a poster's code leads to."""
    return training_path(locale, protocol).removeprefix("/")


def step_page(locale: str, protocol: Protocol, step: Step) -> str:
    """The page that a step card's code leads to."""
    return training_path(locale, protocol, step).removeprefix("/")


def full_view(locale: str, protocol: Protocol) -> str:
    """All steps of a protocol on one page."""
    return _beside(locale, "full-view", protocol)


def current_sheet(locale: str, protocol: Protocol) -> str:
    """Whether a sheet is current."""
    return _beside(locale, "is-current", protocol)


def trainer_notes(locale: str, protocol: Protocol) -> str:
    """The critical steps, for people who teach."""
    return _beside(locale, "trainer-notes", protocol)


def practice(locale: str, protocol: Protocol, exercise: str = "") -> str:
    """The list of exercises, or one of them, such as ``order-take-off-2``."""
    return _beside(locale, "practice", protocol) + (f"{exercise}/" if exercise else "")


def what_if(locale: str) -> str:
    """What to do when something goes wrong."""
    return f"{locale}/what-if/"


def _beside(locale: str, kind: str, protocol: Protocol) -> str:
    return f"{locale}/{kind}/{protocol.code.lower()}/"
