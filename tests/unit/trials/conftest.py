import pytest

PICTURES = ("apron-off", "hood-off", "hand-rub")
HEADER = "form,number,picture,reader,rater,category"


@pytest.fixture
def filled(tmp_path):
    """Writes a table of rows such as ``A,1,apron-off,R1,1,correct`` and returns its path."""

    def write(*rows, header=HEADER):
        path = tmp_path / "ratings.csv"
        path.write_text("\n".join([header, *rows, ""]), encoding="utf-8")
        return path

    return write


@pytest.fixture
def rated(filled):
    """The same from ``(picture, reader, first category, second category)``, both raters, on form A."""

    def write(*answers, agreed=()):
        rows = []
        for picture, reader, *categories in answers:
            number = PICTURES.index(picture) + 1
            rows += [
                f"A,{number},{picture},{reader},{rater},{category}"
                for rater, category in zip(("kim", "lee"), categories, strict=True)
            ]
        rows += [
            f"A,{PICTURES.index(p) + 1},{p},{reader},agreed,{category}" for p, reader, category in agreed
        ]
        return filled(*rows)

    return write
