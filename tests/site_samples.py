"""Part of the training site of the demo in four languages, made once for each test process."""

from dataclasses import replace
from datetime import date
from functools import lru_cache

from demo import project

from signage.pages.publication import PageContext
from signage.pages.reasons import Examiner
from signage.publish import publication_of, site_of

MADE_ON = date(2026, 11, 26)
LANGUAGES = ("en", "ar", "hi", "am")
PROTOCOLS = ("layered-protection", "clean-hands", "gone-wrong")
UNEXAMINED = Examiner(lambda _protocol: [], lambda _protocol: [])
"""Where the verdicts of exercises do not matter."""


@lru_cache(maxsize=1)
def publication():
    made, refused = publication_of(project(), MADE_ON, LANGUAGES)
    assert not refused, refused
    return replace(made, is_left_out=lambda protocol: protocol.id not in PROTOCOLS)


@lru_cache(maxsize=1)
def site():
    return site_of(project(), publication())


def page_context(tag="en", protocol="layered-protection"):
    made = publication()
    return PageContext(made, made.library.protocols[protocol], made.words[tag])


def html(path):
    return site().files[path].decode()
