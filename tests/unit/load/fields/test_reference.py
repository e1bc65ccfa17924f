"""The field reference and the schemas are whole, and the files in docs/ are what the command makes."""

from pathlib import Path

import pytest
import yaml
from jsonschema import Draft202012Validator

from signage.load.fields.document import field_document
from signage.load.fields.lists import lists_for
from signage.load.fields.reference import FILE_KINDS, parts_of
from signage.load.fields.schema import content_schemas, schema_files
from signage.load.library import load_library
from signage.load.starter import starter_files

ROOT = Path(__file__).resolve().parents[4]
EXAMPLES = ROOT / "signage" / "load" / "example_content"


class Loader(yaml.SafeLoader):
    """YAML as editors read it by the core schema of YAML 1.2: dates, yes, no and on stay texts."""


Loader.yaml_implicit_resolvers = {
    letter: [
        each
        for each in resolvers
        if each[0] != "tag:yaml.org,2002:timestamp"
        and (each[0] != "tag:yaml.org,2002:bool" or letter in "tTfF")
    ]
    for letter, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def kind_of(path):
    folder = Path(path).parent.name
    return {"wards": "ward", "protocols": "protocol"}.get(folder, Path(path).stem)


def mistakes(kind, text):
    """What an outside validator says of a file (JSON Schema, draft 2020-12)."""
    validator = Draft202012Validator(content_schemas()[f"{kind}.json"])
    return [error.message for error in validator.iter_errors(yaml.load(text, Loader))]  # noqa: S506 - a safe loader


def content_files():
    files = [*(ROOT / "content").glob("*.yaml"), *EXAMPLES.rglob("*.yaml")]
    files += [*(ROOT / "content" / "wards").iterdir(), *(ROOT / "content" / "protocols").iterdir()]
    yield from ((path, path.read_text(encoding="utf-8")) for path in files)
    yield from ((name, data.decode()) for name, data in starter_files().items())


def test_the_documents_are_what_the_command_makes():
    hint = "run: signage fields > docs/fields.md && signage fields --schema docs/schema"
    assert (ROOT / "docs" / "fields.md").read_text(encoding="utf-8") == field_document(), hint
    for name, data in schema_files().items():
        assert (ROOT / "docs" / "schema" / name).read_bytes() == data, hint
    assert {path.name for path in (ROOT / "docs" / "schema").iterdir()} == set(content_schemas())


def test_each_file_of_the_starter_leads_editors_to_its_schema():
    for name, data in starter_files().items():
        head = data.decode().splitlines()[0]
        up = "../" * name.count("/")
        assert head == f"# yaml-language-server: $schema={up}schema/{kind_of(name)}.json"
        assert f"{kind_of(name)}.json" in schema_files()


def test_every_field_has_its_meaning_and_one_example():
    for file in FILE_KINDS:
        for part in parts_of(file):
            for row in part.rows:
                assert row.meaning.endswith("."), (file.name, row.key)
                assert row.example or row.below, (file.name, row.key)
                assert f"| `{row.key}` |" in field_document()


def test_the_examples_are_a_library_that_loads():
    library = load_library(EXAMPLES)
    assert list(library.protocols) == ["gloves"]
    assert library.waivers


def test_an_outside_validator_agrees_with_every_file_that_the_programme_reads():
    for schema in content_schemas().values():
        Draft202012Validator.check_schema(schema)
    for path, text in content_files():
        if kind_of(path) in {file.name for file in FILE_KINDS}:
            assert mistakes(kind_of(path), text) == [], path


@pytest.mark.parametrize(
    ("file", "old", "new", "told"),
    [
        ("library", "state: in-work", "state: in-wrok", "'in-wrok' is not one of"),
        ("library", "training-address:", "trainingaddress:", "'trainingaddress' was unexpected"),
        ("library", "http://example-ward.internal:8080", "example-ward.internal", "does not match"),
        ("kit", "kind: glove", "", "'kind' is a required property"),
        ("policy", "value: 20", "value: twenty", "'twenty' is not of type 'integer'"),
        ("wards/example-ward", "width: 297 mm", "width: 297", "297 is not of type 'string'"),
        ("wards/example-ward", "duplex: yes", "duplex: maybe", "'maybe' is not one of"),
        ("protocols/gloves", "picture: hand-rub", "picture: Hand_Rub", "does not match"),
        ("protocols/gloves", "agent: rub", "agent: soap", "'soap' is not one of"),
        ("protocols/gloves", "revision: 1", "revision: 0", "less than the minimum"),
        ("waivers", "step: rub-before", "setp: rub-before", "'setp' was unexpected"),
        ("terms", "markers: [not, never]", "markers: []", "[]"),
    ],
)
def test_an_editor_marks_the_mistakes_that_the_programme_refuses(file, old, new, told):
    text = (EXAMPLES / f"{file}.yaml").read_text(encoding="utf-8")
    assert old in text
    found = mistakes(kind_of(f"{file}.yaml"), text.replace(old, new, 1))
    assert any(told in message for message in found), found


def test_the_lists_of_explanations_are_whole():
    keys = {title: lines[0].split(", ") for title, lines in lists_for("LD-11")}
    needed = {title: lines[0].split(", ") for title, lines in lists_for("LD-12")}
    words = {(title, line) for title, lines in lists_for("LD-14") for line in lines}
    for file in FILE_KINDS:
        for part in parts_of(file):
            title = " › ".join((file.path, *part.way))
            assert keys[title] == list(part.schema.keys())
            required = [info.alias for info in part.schema.model_fields.values() if info.is_required()]
            assert needed.get(title, []) == required
            for row in part.rows:
                assert not row.words or (title, f"{row.key}: {', '.join(row.words)}") in words
    assert lists_for("LD-16")
    assert lists_for("LD-1") == ()
