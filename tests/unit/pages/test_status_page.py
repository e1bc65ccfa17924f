from datetime import date

from signage.model.mark import Mark
from signage.model.status import (
    FindingCount,
    LanguageStatus,
    LibraryStatus,
    ProtocolStatus,
    SheetStatus,
    Task,
    WordCount,
)
from signage.pages.status_page import status_page

DAY = date(2026, 11, 26)


def _page(*sheets, has_register=True):
    languages = {"en": "English", "ar": "العربية", "am": "አማርኛ"}
    protocol = ProtocolStatus(
        id="hands", code="P3", title="<b>Hands</b>", owner="nurse", review_by=DAY, path="p.yaml",
        findings=FindingCount(s2=2), sheets=sheets,
    )  # fmt: skip
    status = LibraryStatus(
        name="Harbour & Hill", source="en", day=DAY, is_demo=False, protocols=(protocol,),
        has_register=has_register,
        languages=tuple(
            LanguageStatus(tag=tag, name=name, owner="o", is_in_use=True, words=WordCount(), path="x.po")
            for tag, name in languages.items()
        ),
        tasks=(Task("icn", "P3: <i>mend</i>", "p.yaml", "signage check"),),
    )  # fmt: skip
    return status_page(status, "en")


def _sheet(tag, **fields):
    return SheetStatus(**{"locale": tag, "words": WordCount(checked=3), "mark": Mark.NONE, **fields})


def test_languages_of_which_the_same_is_told_share_a_row_and_each_name_its_direction():
    page = _page(_sheet("en"), _sheet("ar"), _sheet("am", mark=Mark.DRAFT))
    assert page.count('<th scope="row">') == 2
    assert '<bdi lang="ar" dir="rtl">العربية</bdi>' in page
    assert "all 3 checked" in page
    assert page.count("released") == 1


def test_what_a_file_says_is_no_markup_and_the_page_asks_no_server_for_letters():
    page = _page(_sheet("am"))
    assert "&lt;b&gt;Hands&lt;/b&gt;" in page
    assert "P3: &lt;i&gt;mend&lt;/i&gt;" in page
    assert "Harbour &amp; Hill" in page
    assert 'font-family:"signage-ethi"' in page
    assert "http" not in page


def test_obsolete_copies_stand_out_by_weight_and_without_a_register_there_is_no_column():
    assert '<td class="number old">1</td>' in _page(_sheet("en", mounted=2, obsolete=1))
    assert 'class="number"' not in _page(_sheet("en"), has_register=False)
