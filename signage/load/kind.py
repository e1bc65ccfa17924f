"""What a kind of scalar is: how it is read, and what is said of it; and the errors of reading."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError
from pydantic_core.core_schema import no_info_before_validator_function

from signage.ground.rule import Rule
from signage.load import faults


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of scalar: how it is read, and what the field reference and the JSON schema say of it.

    ``name`` and ``form`` are for people, ``schema`` is the JSON schema that editors use; ``words`` are the
    only ones that may stand there, empty where the kind is no choice of words.
    """

    read: Callable[[Any], Any]
    name: str
    form: str
    schema: Mapping[str, Any] = field(hash=False)
    words: tuple[str, ...] = ()

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        """The reader in front of the type that it makes."""
        return no_info_before_validator_function(self.read, handler(source))

    def __get_pydantic_json_schema__(
        self, _core_schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """What stands in the file, which is not what it becomes."""
        return dict(self.schema)


def fault_error(fault: Rule, message: str, hint: str = "") -> PydanticCustomError:
    """An error for pydantic to carry; validation turns it into a problem with its place."""
    return PydanticCustomError("content", "{message}", {"fault": fault, "message": message, "hint": hint})


def kind_of(value: object) -> str:
    """What a value is, in the words of messages."""
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, tuple):
        return "a list"
    return "a text" if isinstance(value, str) else "a value that was refused"


def wanted_text(value: Any, wanted: str) -> str:
    """The value where it is a text; else the error that says what was wanted."""
    if isinstance(value, str):
        return value
    raise fault_error(faults.WRONG_KIND, f"Here stands {kind_of(value)}; {wanted} was wanted.")
