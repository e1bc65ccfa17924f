"""The demo's library as subjects of the rules over content, changed one field at a time."""

from dataclasses import replace
from datetime import date

import demo

from signage.check.content_rule import ContentSubject

DAY = date(2027, 1, 31)


def library():
    return demo.project().library


def subject(changed=None, day=DAY, **more):
    return ContentSubject(changed or library(), day, **more)


def with_ward(ward):
    return replace(library(), wards={**library().wards, ward.id: ward})


def ward(name="lantern-bay"):
    return library().wards[name]


def with_protocol(name="contact-room", **fields):
    protocol = replace(library().protocols[name], **fields)
    return replace(library(), protocols={**library().protocols, name: protocol})


def found(rule, looked_at):
    """The findings of a rule, each with what every finding has to have."""
    problems = list(rule.find(looked_at))
    for problem in problems:
        assert problem.code == rule.rule.code
        assert problem.hint
        assert problem.place.path
    return problems
