"""The demo library as tests use it: loaded once, sheets composed once."""

from functools import lru_cache
from pathlib import Path

from signage.build import SheetRequest, compose_request
from signage.compose.theme import Tone
from signage.project import Project, open_project

ROOT = Path(__file__).resolve().parent.parent
LANGUAGES = ("en", "ar", "fr", "am", "hi")


@lru_cache(maxsize=1)
def project() -> Project:
    return open_project(ROOT / "content", ROOT / "locales")


@lru_cache(maxsize=64)
def context(tag="en", protocol="layered-protection", tone=Tone.COLOUR):
    return project().context(project().library.protocols[protocol], tag, tone)


@lru_cache(maxsize=64)
def sheet(kind="poster", tag="en", phase="", paper="A3", protocol="layered-protection", tone="colour"):
    return compose_request(project(), SheetRequest(protocol, tag, kind, phase, paper, tone))
