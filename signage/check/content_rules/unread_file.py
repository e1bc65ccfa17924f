"""A file of the content that has no effect."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

UNREAD_FILE = Rule(
    code="CN-9",
    name="unread-file",
    severity=S2,
    what="Files and folders of the content that look as if they counted, and that nothing reads.",
    why="Somebody believes that a protocol, a sign-off or a waiver counts, and it does not.",
    example="content/protocol/spill.yaml, in a folder that is to be called protocols.",
    cure="Give the file the name and folder that are read, or move it out of the content.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each file or folder."""
    for file in subject.unread:
        yield subject.problem(UNREAD_FILE, file.message, file.place, hint=file.hint)


RULE = ContentRule(UNREAD_FILE, find)
