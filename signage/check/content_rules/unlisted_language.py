"""A folder of translations whose language library.yaml does not name."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.load.suggestion import nearest

UNLISTED_LANGUAGE = Rule(
    code="CN-10",
    name="unlisted-language",
    severity=S3,
    what="The folders of the translations: each language is named under 'locales' in library.yaml.",
    why="A language that is not named is never printed or checked, however well it is translated.",
    example="locales/sw/LC_MESSAGES/content.po without 'sw' in library.yaml.",
    cure="Name the language in library.yaml, or delete its folder.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each folder; the hint is the line to add."""
    known = subject.library.locales
    for tag, place in subject.unlisted:
        spelt = {name.lower().replace("_", "-"): name for name in known}
        match = spelt.get(tag.lower().replace("_", "-")) or nearest(tag, known, 0.8)
        meant = f"Is it '{match}'? Then rename the folder. Otherwise add" if match else "Add"
        yield subject.problem(
            UNLISTED_LANGUAGE,
            f"The language '{tag}' has translations, but library.yaml does not name it.",
            place,
            hint=f"{meant} this line under 'locales:' in library.yaml:  "
            f"{tag}: {{owner: language lead, state: in-work}}",
        )


RULE = ContentRule(UNLISTED_LANGUAGE, find)
