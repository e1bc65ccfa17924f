"""The words that the rehearsal knows are the words that content files may use."""

import shutil

from rehearsal_edits import CONTENT, demo_library

from signage.control.standing import SIGNATURES_REQUIRED
from signage.load import step_grammar
from signage.load.files import kit as kit_file
from signage.load.files import policy as policy_file
from signage.load.library import load_library
from signage.load.starter import starter_files
from signage.model.choices import ActionVerb
from signage.rehearse import local_policy, references
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.state.body import SITES
from signage.rehearse.techniques import TECHNIQUES
from signage.rehearse.variations.study import study_protocol
from signage.rehearse.verbs.table import VERBS


def test_verbs():
    assert set(VERBS) == set(step_grammar.VERBS) == set(ActionVerb)


def test_parts_of_the_body():
    assert SITES == kit_file.SITES


def test_techniques():
    assert set(TECHNIQUES) == set(kit_file.TECHNIQUES)


def test_agents():
    assert set(policy_file.AGENTS) == references.AGENTS


def test_local_decisions():
    of_the_rehearsal = {*local_policy.STRICTEST, local_policy.CRITICAL_MARKS}
    of_document_control = {SIGNATURES_REQUIRED, "audit-days", "training-pages-days", "refresher-days"}
    assert of_the_rehearsal | of_document_control == set(policy_file.KNOWN_POLICIES)
    choices = policy_file.CHOICE_POLICIES[local_policy.CRITICAL_MARKS]
    assert set(choices) == {local_policy.MARK_EVERY_S1, local_policy.MARK_EXPOSURE}


def test_fresh_kit_can_be_written(tmp_path):
    shutil.copytree(CONTENT, tmp_path / "content")
    file = tmp_path / "content" / "protocols" / "layered-protection.yaml"
    text = file.read_text(encoding="utf-8")
    assert text.count("item: hood\n") == 2
    file.write_text(text.replace("item: hood\n", "item: hood\n        fresh: yes\n", 1), encoding="utf-8")
    library = load_library(tmp_path / "content")
    fresh = [s.id for s in library.protocols["layered-protection"].steps if s.action.fresh]
    assert fresh == ["hood-on"]


def test_every_protocol_that_comes_with_the_programme_is_clean(tmp_path):
    for name, data in starter_files().items():
        target = tmp_path / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
    for library in (load_library(tmp_path / "content"), demo_library()):
        for protocol in library.protocols.values():
            assert rehearse(library, protocol).findings == ()
            assert study_protocol(library, protocol).findings == ()
