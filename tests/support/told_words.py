"""What the rules of words tell of the demo's texts: in whatever catalogues, by the text they are about."""

import re
from collections import defaultdict
from functools import lru_cache

import demo

from signage.ground.problem import Severity
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import CatalogueKind, catalogue_path
from signage.words.coverage import fixed_messages, locale_problems
from signage.words.po.reader import read_catalogue_file
from signage.words.po.writer import write_catalogue


def tell_everything(monkeypatch):
    """Reports are cut for people; here each finding counts."""
    monkeypatch.setattr("signage.words.po.lines.MOST_PROBLEMS", 10**6)
    monkeypatch.setattr("signage.words.po.reader.MOST_PROBLEMS", 10**6)
    monkeypatch.setattr("signage.words.coverage._MOST_GLYPHS", 10**6)


@lru_cache
def catalogue_of(tag, kind):
    """A catalogue of the demo, and the role of each of its texts that are in use."""
    wanted = fixed_messages() if kind is CatalogueKind.INTERFACE else demo.project().messages
    roles = {message.context: message.role.value for message in wanted}
    return read_catalogue_file(catalogue_path(demo.ROOT / "locales", tag, kind), tag).catalogue, roles


def write_entries(locales, tag, kind, catalogue):
    path = catalogue_path(locales, tag, kind)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(write_catalogue(catalogue))


def findings(locales, tag):
    """Codes and severities, S3 left out, by the context they are about: named, or found by the line."""
    project = demo.project()
    by_line = {}
    for kind in CatalogueKind:
        path = catalogue_path(locales, tag, kind)
        context = ""
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
            if match := re.match(r'msgctxt "(.*)"$', line):
                context = match.group(1)
            by_line[path.as_posix(), number] = context
    told = defaultdict(set)
    for problem in locale_problems(project.library, project.messages, locales, tag, BUNDLED_FONTS):
        if problem.severity is not Severity.S3:
            context = problem.text or by_line.get((problem.place.path, problem.place.line), "")
            told[context].add((problem.code, problem.severity))
    return told
