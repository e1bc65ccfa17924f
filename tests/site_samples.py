"""The training site of the demo in four languages, made once for each test process."""

from datetime import date
from functools import lru_cache

from demo import project

from signage.pages.publication import PageContext
from signage.publish import publication_of, site_of

MADE_ON = date(2026, 11, 26)
LANGUAGES = ("en", "ar", "hi", "am")


@lru_cache(maxsize=1)
def publication():
    made, refused = publication_of(project(), MADE_ON, LANGUAGES)
    assert not refused, refused
    return made


@lru_cache(maxsize=1)
def site():
    return site_of(project(), publication())


def page_context(tag="en", protocol="layered-protection"):
    made = publication()
    return PageContext(made, made.library.protocols[protocol], made.words[tag])


def html(path):
    return site().files[path].decode()
