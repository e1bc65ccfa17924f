"""The demo library as tests use it: loaded once, sheets composed once."""

from functools import lru_cache
from pathlib import Path

from signage.compose.theme import Tone
from signage.paint.pdf.document import paint_pdf
from signage.produce.requests import SheetRequest, compose_request
from signage.project import Project, open_project

ROOT = Path(__file__).resolve().parents[2]
LANGUAGES = ("en", "ar", "fr", "am", "hi")


@lru_cache(maxsize=1)
def project() -> Project:
    return open_project(ROOT / "content", ROOT / "locales")


@lru_cache(maxsize=64)
def _context(protocol, tag, tone):
    return project().context(project().library.protocols[protocol], tag, tone)


def context(tag="en", protocol="layered-protection", tone=Tone.COLOUR):
    return _context(protocol, tag, tone)


@lru_cache(maxsize=160)
def composed(request):
    """The sheet of a request, however it was asked for before in this process."""
    return compose_request(project(), request)


def sheet(kind="poster", tag="en", phase="", paper="A3", protocol="layered-protection", tone="colour"):
    return composed(SheetRequest(protocol, tag, kind, phase, paper, tone))


@lru_cache(maxsize=64)
def printed(kind="poster", tag="en", phase="", paper="A3", protocol="layered-protection", tone="colour"):
    """The PDF of a sheet."""
    return paint_pdf(sheet(kind, tag, phase, paper, protocol, tone))
