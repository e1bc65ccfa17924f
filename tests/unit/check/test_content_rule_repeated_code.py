from dataclasses import replace

from content_samples import found, subject, ward, with_ward

from signage.check.content_rules.repeated_code import RULE


def test_two_bins_of_a_ward_with_one_code_in_different_zones():
    bins = dict(ward().fixtures)
    bins["bin-w"] = replace(bins["bin-w"], code="A")
    (problem,) = found(RULE, subject(with_ward(replace(ward(), fixtures=bins))))
    assert "'bin-w' has the code 'A', which 'bin-a'" in problem.message
    assert problem.place == bins["bin-w"].at("code")


def test_the_same_letter_in_another_ward_and_things_without_one_are_no_fault():
    other = ward("quay-ward")
    bins = {**other.fixtures, "bin-k": replace(other.fixtures["bin-k"], code="A")}
    assert found(RULE, subject(with_ward(replace(other, fixtures=bins)))) == []
