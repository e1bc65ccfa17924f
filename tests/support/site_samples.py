"""Part of the training site of the demo in four languages, made once for each test process."""

from dataclasses import replace
from datetime import date
from functools import lru_cache

from demo import project

from signage.pages.practice.reasons import Examiner
from signage.pages.publication import PageContext
from signage.produce.publish import publication_of, site_of

MADE_ON = date(2026, 11, 26)
LANGUAGES = ("en", "ar", "hi", "am")
PROTOCOLS = ("layered-protection", "clean-hands", "gone-wrong")
KINDS = {
    "contents": "",
    "overview": "p1/",
    "technique-overview": "p3/",
    "step": "p1/goggles-off/",
    "critical-step": "p1/inner-gloves-off/",
    "timed-step": "p1/wash-hands/",
    "full-view": "full-view/p1/",
    "current": "is-current/p1/?r=AAAA",
    "what-if": "what-if/",
    "trainer": "trainer-notes/p1/",
    "practice": "practice/p1/",
    "ordering": "practice/p1/order-take-off-1/",
    "meaning": "practice/p1/meaning-take-off/",
    "container": "practice/p1/container-take-off/",
    "mistake": "practice/p1/wrong-take-off-1/",
}
"""One page of each kind, below the folder of a language."""

EVERY_PAGE = [(tag, kind) for tag in LANGUAGES for kind in KINDS]
SAMPLED_PAGES = [
    *((LANGUAGES[place % len(LANGUAGES)], kind) for place, kind in enumerate(KINDS)),
    *(("ar", kind) for kind in ("step", "ordering")),
]
"""Every kind and every language; tests/whole looks at every kind in every language."""

UNEXAMINED = Examiner(lambda _protocol: [], lambda _protocol: [])
"""Where the verdicts of exercises do not matter."""


@lru_cache(maxsize=1)
def publication():
    made, refused = publication_of(project(), MADE_ON, LANGUAGES)
    assert not refused, refused
    others = {name for name in made.library.protocols if name not in PROTOCOLS}
    return replace(made, left_out=frozenset((name, tag) for name in others for tag in made.words))


@lru_cache(maxsize=1)
def site():
    return site_of(project(), publication())


def page_context(tag="en", protocol="layered-protection"):
    made = publication()
    return PageContext(made, made.library.protocols[protocol], made.words[tag])


def html(path):
    return site().files[path].decode()
