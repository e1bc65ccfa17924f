"""JSON schemas of the content files, with which editors complete keys and mark mistakes."""

from __future__ import annotations

import json
from typing import Any

from signage.load.fields.reference import FILE_KINDS, FileKind, meanings_of, parts_of
from signage.load.files.action import ActionEntry
from signage.load.files.kit import GarmentEntry
from signage.load.files.policy import (
    AGENT_POLICIES,
    AGENTS,
    CHOICE_POLICIES,
    NUMBER_POLICIES,
    YES_NO_POLICIES,
)
from signage.load.files.protocol import StepEntry
from signage.load.validation import Entry

_DIALECT = "https://json-schema.org/draft/2020-12/schema"
_YES_NO = {"enum": [True, False, "yes", "no", "true", "false"]}


def content_schemas() -> dict[str, dict[str, Any]]:
    """The schema of each kind of file by the name of its own file, such as ``ward.json``."""
    return {f"{file.name}.json": schema_of(file) for file in FILE_KINDS}


def schema_files() -> dict[str, bytes]:
    """The same as files, by their names."""
    return {
        name: (json.dumps(schema, ensure_ascii=False, indent=2) + "\n").encode()
        for name, schema in content_schemas().items()
    }


def schema_of(file: FileKind) -> dict[str, Any]:
    """The JSON schema (draft 2020-12) of a kind of content file."""
    schema: dict[str, Any] = _without_null(file.schema.model_json_schema())
    definitions = schema.setdefault("$defs", {})
    for part in parts_of(file):
        holder = definitions.get(part.schema.__name__, schema)
        _describe(holder, part.schema, part.about)
    if file.name == "protocol":
        _open_steps(definitions)
    if file.name == "kit":
        _open_fasteners(definitions)
    if file.name == "policy":
        _name_decisions(schema)
    return {"$schema": _DIALECT, **schema, "title": file.path, "description": file.about}


def _without_null(value: Any) -> Any:
    """The schema without null, which no file may hold, and without titles that only repeat the key."""
    if isinstance(value, list):
        return [_without_null(each) for each in value]
    if not isinstance(value, dict):
        return value
    kept = {
        key: _without_null(each)
        for key, each in value.items()
        if key not in {"default", "description"} and (key != "title" or isinstance(each, dict))
    }
    choices = [each for each in kept.pop("anyOf", ()) if each != {"type": "null"}]
    if len(choices) == 1:
        return {**kept, **choices[0]}
    return {**kept, "anyOf": choices} if choices else kept


def _describe(holder: dict[str, Any], schema: type[Entry], about: str) -> None:
    """What each key means, and what the mapping is."""
    holder["description"] = about
    meanings = meanings_of(schema)
    for name, info in schema.model_fields.items():
        holder["properties"][info.alias or name]["description"] = meanings[name]


def _open_steps(definitions: dict[str, Any]) -> None:
    """A step with one movement may hold the keys of the movement itself."""
    step, action = (definitions[each.__name__]["properties"] for each in (StepEntry, ActionEntry))
    many = {key: value for key, value in step["do"].items() if key != "description"}
    verb = {key: value for key, value in action["do"].items() if key != "description"}
    beside = {key: value for key, value in action.items() if key not in step}
    step.update(beside)
    step["do"] = {"anyOf": [verb, many], "description": step["do"]["description"]}
    needed = definitions[StepEntry.__name__]
    written_out = needed.pop("required")
    needed["anyOf"] = [{"required": written_out}, {"required": ["step", "again"]}]


def _open_fasteners(definitions: dict[str, Any]) -> None:
    """Fasteners that have no keys may be a list of names."""
    garment = definitions[GarmentEntry.__name__]["properties"]
    named = {key: value for key, value in garment["fasteners"].items() if key != "description"}
    listed = {key: value for key, value in garment["adjusters"].items() if key != "description"}
    garment["fasteners"] = {
        "anyOf": [listed, named],
        "description": garment["fasteners"]["description"],
    }


def _name_decisions(schema: dict[str, Any]) -> None:
    """The known decisions with the kind of their values."""
    entry = schema["$defs"]["PolicyEntry"]
    agents = {"type": "array", "items": {"enum": list(AGENTS)}}
    kinds: dict[str, Any] = {
        **dict.fromkeys(YES_NO_POLICIES, _YES_NO),
        **{key: {"type": "integer", "minimum": 0} for key in NUMBER_POLICIES},
        **dict.fromkeys(AGENT_POLICIES, agents),
        **{key: {"enum": list(words)} for key, words in CHOICE_POLICIES.items()},
    }
    schema["properties"]["policy"]["properties"] = {
        key: {**entry, "properties": {**entry["properties"], "value": kind}} for key, kind in kinds.items()
    }
