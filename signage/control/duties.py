"""Which role acts, and whether it may: by the roles of ``people.yaml``, which identify nobody."""

from __future__ import annotations

from collections.abc import Callable

from signage.ground.errors import RefusedError, WrongUsageError
from signage.ground.quotation import quoted
from signage.load.suggestion import suggest
from signage.model.people import People, Role


def acting_role(people: People, name: str, duty: str, may: Callable[[Role], bool]) -> Role:
    """The role with an id, if it may do what ``duty`` says, such as ``mount sheets``.

    Raises WrongUsageError where there is no such role, and RefusedError where it may not.
    """
    fitting = [role.id for role in people.values() if may(role)]
    if not people:
        raise WrongUsageError(
            f"content/people.yaml names no role, so nobody may {duty}. Write the roles of your ward there; "
            "'signage explain LD-11' lists the keys, 'signage start' writes an example."
        )
    if not name:
        raise WrongUsageError(f"Say with --as which role did it. These may {duty}: {', '.join(fitting)}.")
    role = people.get(name)
    if role is None:
        raise WrongUsageError(f"There is no role {quoted(name)}. {suggest(name, people, 'Roles are')}")
    if not may(role):
        others = f"These may: {', '.join(fitting)}." if fitting else "No role of people.yaml may."
        raise RefusedError(f"The role {name} may not {duty}. {others}")
    return role
