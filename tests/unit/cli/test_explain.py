"""Whoever reads a code in a report can ask what it means, whichever room it comes from."""

from signage.check.registry import all_rules


def test_a_code_of_every_room_is_explained(signage):
    for code in ("LD-2", "WD-40", "PO-1", "HH-1", "PIC-1", "PG-2", "CN-4", "PC-2", "SH-0", "SH-9", "TR-8"):
        rule = all_rules()[code]
        told = signage(f"explain {code.lower()}").out
        assert told.startswith(f"{code} {rule.name} ({rule.severity.value})\n")
        said = " ".join(told.split())
        assert all(" ".join(text.split()) in said for text in (rule.what, rule.why, rule.example, rule.cure))


def test_the_list_is_all_rules_as_a_table_and_as_json(signage):
    assert [line.split()[0] for line in signage("explain").out.splitlines()] == list(all_rules())
    assert [rule["code"] for rule in signage("explain --format json").json["rules"]] == list(all_rules())
