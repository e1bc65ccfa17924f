"""Signatures of records against the vectors of RFC 8032 (Ed25519), section 7.1, and the chain of keys."""

import base64
from dataclasses import replace

import pytest
from record_samples import record

from signage.control.approvals import NO_RECORDS, chained, with_record
from signage.control.records import RecordKind
from signage.control.signatures import (
    is_valid,
    judge_signatures,
    make_key,
    public_key_of,
    read_key,
    with_signature,
)
from signage.ground.errors import WrongUsageError
from signage.model.people import Role

RFC_8032 = (
    # TEST 1, TEST 2, TEST 3: public key, message, signature
    (
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        (
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
            "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"
        ),
    ),
    (
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        (
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
            "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"
        ),
    ),
    (
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "af82",
        (
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
            "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
        ),
    ),
)


def test_the_published_signatures_are_valid_and_no_changed_one_is():
    for key, message, signature in RFC_8032:
        public = base64.b64encode(bytes.fromhex(key)).decode()
        made = bytes.fromhex(signature)
        data = bytes.fromhex(message)
        assert is_valid(public, base64.b64encode(made).decode(), data)
        assert not is_valid(public, base64.b64encode(made).decode(), data + b"x")
        for at in range(0, 64, 7):
            changed = made[:at] + bytes([made[at] ^ 1]) + made[at + 1 :]
            assert not is_valid(public, base64.b64encode(changed).decode(), data)
        assert not is_valid(public, "no signature", data)


class Signers:
    """Keys of roles, and a chain to which they add."""

    def __init__(self, folder):
        self.folder, self.ledger, self.private = folder, NO_RECORDS, {}

    def key(self, name):
        public = make_key(self.folder / f"{name}.pem")
        self.private[name] = read_key(self.folder / f"{name}.pem")
        assert public == public_key_of(self.private[name])
        return public

    def add(self, each, key=None):
        ready = chained(self.ledger, each)
        ready = with_signature(ready, self.private[key]) if key else ready
        self.ledger, made = with_record(self.ledger, ready)
        return made


def role(key=None, name="ward-lead"):
    return {name: Role(id=name, initials="WL", signs=True, public_key=key)}


def test_a_key_comes_in_by_a_record_and_from_then_on_nothing_counts_without_it(tmp_path):
    signers = Signers(tmp_path)
    first, second = signers.key("first"), signers.key("second")
    change = record(RecordKind.KEY, "", author="ward-lead")
    signers.add(record(RecordKind.PROTOCOL))  # before any key: counts by its word
    signers.add(replace(change, key=first), "first")
    signers.add(record(RecordKind.PROTOCOL), "first")
    signers.add(record(RecordKind.PROTOCOL))  # unsigned
    signers.add(record(RecordKind.PROTOCOL), "second")  # with a key that is not in force
    signers.add(replace(change, key=second), "second")  # a new key that signs for itself
    signers.add(replace(change, key=second), "first")
    signers.add(record(RecordKind.PROTOCOL), "second")
    found = judge_signatures(signers.ledger.records, role(second), are_required=False)
    assert sorted(found.faults) == [4, 5, 6]
    assert found.verified == {2, 3, 7, 8}
    assert found.keys == {"ward-lead": second}
    assert "has a key" in found.faults[4]


def test_a_key_in_people_alone_or_another_one_makes_the_role_count_no_longer(tmp_path):
    signers = Signers(tmp_path)
    first, other = signers.key("first"), signers.key("other")
    signers.add(replace(record(RecordKind.KEY, "", author="ward-lead"), key=first), "first")
    signers.add(record(RecordKind.PROTOCOL), "first")
    for people, counts in ((role(first), True), (role(other), False), (role(None), False), ({}, False)):
        found = judge_signatures(signers.ledger.records, people, are_required=False)
        assert (2 not in found.faults) == counts, people


def test_another_role_replaces_a_lost_key_with_its_own(tmp_path):
    signers = Signers(tmp_path)
    lost, spare, doctor = signers.key("lost"), signers.key("spare"), signers.key("doctor")
    signers.add(replace(record(RecordKind.KEY, "", author="ward-lead"), key=lost), "lost")
    signers.add(
        replace(record(RecordKind.KEY, "", by="ipc-doctor", author="ipc-doctor"), key=doctor), "doctor"
    )
    signers.add(replace(record(RecordKind.KEY, "", by="ipc-doctor", author="ward-lead"), key=spare), "doctor")
    found = judge_signatures(signers.ledger.records, {}, are_required=True)
    assert found.keys == {"ward-lead": spare, "ipc-doctor": doctor}
    assert not found.faults


def test_files_that_hold_no_key_and_keys_that_are_there_are_refused(tmp_path):
    (tmp_path / "a.pem").write_text("x", encoding="utf-8")
    with pytest.raises(WrongUsageError, match="make-key"):
        read_key(tmp_path / "a.pem")
    with pytest.raises(WrongUsageError, match="never overwritten"):
        make_key(tmp_path / "a.pem")
