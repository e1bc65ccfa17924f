from signage.ground.counting import counted


def test_one_of_a_thing_is_not_told_as_many():
    assert [counted(number, "file") for number in (0, 1, 2)] == ["0 files", "1 file", "2 files"]
    assert counted(1, "text is", "texts are") == "1 text is"
    assert counted(4, "text is", "texts are") == "4 texts are"
