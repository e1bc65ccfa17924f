import json
import re
from collections import Counter
from html.parser import HTMLParser
from posixpath import dirname, join, normpath
from urllib.parse import urlsplit

import pytest
from demo import project
from site_samples import LANGUAGES, UNEXAMINED, html, page_context, publication, site

from signage.pages.site import build_site
from signage.produce.publish import site_of

HREF = re.compile(r'(?:href|src)="([^"]*)"')


class Elements(HTMLParser):
    def __init__(self, text):
        super().__init__()
        self.found = []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.found.append((tag, dict(attributes)))


def elements(path):
    return Elements(html(path)).found


def pages():
    return [path for path in site().files if path.endswith(".html")]


def test_every_step_has_a_page_in_every_language():
    protocols = publication().protocols()
    wanted = {
        f"{tag}/{protocol.code.lower()}/{step.id}/index.html"
        for tag in LANGUAGES
        for protocol in protocols
        for step in protocol.steps
    }
    assert wanted <= site().files.keys()


def test_every_link_and_every_picture_leads_to_a_file_of_the_site():
    for path in pages():
        for target in HREF.findall(html(path)):
            if target.startswith(("#", "data:")) or path == "404.html":
                continue
            file = urlsplit(target).path
            assert normpath(join(dirname(path), file)) in site().files, (path, target)


def test_the_page_for_missing_addresses_works_at_any_depth():
    for target in HREF.findall(html("404.html")):
        assert target.startswith(("/", "#", "data:"))
        assert target.startswith(("#", "data:")) or target[1:] in site().files


def test_nothing_is_asked_from_elsewhere():
    for path, data in site().files.items():
        if path.endswith(".woff2"):
            continue
        text = data.decode().replace('xmlns="http://www.w3.org/2000/svg"', "")
        assert "http:" not in text, path
        assert "https:" not in text, path
        assert "//" not in "".join(HREF.findall(text)), path


def test_no_page_is_heavy():
    for path in pages():
        assert len(site().files[path]) < 100_000, path
    together = sum(len(site().files[f"site-assets/{name}"]) for name in ("site.css", "site.js"))
    heaviest = max(len(site().files[path]) for path in pages())
    assert heaviest + together < 100_000


def test_pages_of_other_languages_bring_the_name_of_a_rare_script_only():
    """The whole letters of Amharic come with Amharic pages, where they are read."""
    assert "names-ethi.css" in html("en/p1/apron-off/index.html")
    assert "letters-ethi.css" not in html("en/p1/apron-off/index.html")
    assert "letters-ethi.css" in html("am/p1/apron-off/index.html")
    assert len(site().files["site-assets/names-ethi.css"]) < 10_000


def test_ids_are_unique_and_labels_lead_to_them():
    for path in [path for path in pages() if path != "404.html"][::7]:
        found = elements(path)
        ids = Counter(attributes["id"] for _, attributes in found if "id" in attributes)
        assert [name for name, count in ids.items() if count > 1] == [], path
        for _, attributes in found:
            for name in ("aria-labelledby", "aria-describedby", "for"):
                assert set(attributes.get(name, "").split()) <= ids.keys(), path


def test_no_style_and_no_script_stands_in_a_page():
    for path in pages():
        for tag, attributes in elements(path):
            assert tag != "style"
            assert "style" not in attributes
            assert not any(name.startswith("on") for name in attributes)
            if tag == "script":
                assert "src" in attributes or attributes["type"] == "application/json"


@pytest.mark.parametrize("tag", LANGUAGES)
def test_a_page_names_its_language_and_direction(tag):
    root = next(
        attributes for name, attributes in elements(f"{tag}/p1/apron-off/index.html") if name == "html"
    )
    assert root["lang"] == tag
    assert root["dir"] == ("rtl" if tag == "ar" else "ltr")


@pytest.mark.parametrize("tag", LANGUAGES)
def test_a_step_page_carries_what_its_card_carries(tag):
    context = page_context(tag)
    step = next(step for step in context.protocol.steps if step.id == "inner-gloves-off")
    page = html(f"{tag}/p1/inner-gloves-off/index.html")
    for field in ("text", "detail", "why", "caution"):
        assert context.words.step_text(context.protocol, step, field) in page
    assert context.picture_words(step) in page
    assert context.words.content("ward/lantern-bay/zone/dirty-side") in page
    assert context.words.fixed("critical") in page
    assert 'class="rail speckle"' in page
    assert ">B</text>" in page
    assert context.revision in page
    assert context.words.fixed("draft-sentence") in page


@pytest.mark.parametrize("tag", LANGUAGES)
def test_the_rule_for_taking_off_says_stop_and_that_for_putting_on_says_caution(tag):
    found = re.findall(r'<div class="rule"><b>(.*?)</b><p>', html(f"{tag}/p1/index.html"))
    assert found == [page_context(tag).words.fixed(word) for word in ("caution", "stop")]


def test_next_and_back_walk_through_a_phase():
    path, seen = "en/p1/to-dirty-side/index.html", []
    while path.count("/") == 3:
        seen.append(path.split("/")[2])
        onwards = re.search(r'rel="next" href="([^"]*)"', html(path)).group(1)
        path = normpath(join(dirname(path), onwards))
    assert seen == [step.id for step in publication().library.protocols["layered-protection"].phases[1].steps]
    assert path == "en/p1/index.html"


@pytest.mark.parametrize("tag", LANGUAGES)
def test_the_whole_protocol_ends_with_its_sources_in_their_own_language(tag):
    listed = html(f"{tag}/full-view/p1/index.html").split('<ul class="sources')[1].split("</ul>")[0]
    assert 'lang="en"' in listed
    assert (
        "<cite>WHO Guidelines on Hand Hygiene in Health Care</cite>. World Health Organization, 2009."
        in listed
    )
    assert listed.count("<li>") == len(page_context(tag).protocol.sources) == 2


def test_every_critical_step_has_its_reason_and_questions_for_the_trainer():
    page = html("en/trainer-notes/p1/index.html")
    context = page_context("en")
    critical = [step for step in context.protocol.steps if step.critical]
    assert page.count('class="question"') == len(critical)
    for step in critical:
        assert context.words.step_text(context.protocol, step, "why") in page
    assert page.count(context.words.fixed("page-ask-watch")) == len(critical)


def test_what_to_do_when_something_goes_wrong_holds_every_stop_rule():
    page = html("en/what-if/index.html")
    assert "Stay where you are. Tell the observer." in page
    assert "Only the respirator model" not in page


def test_timers_stand_where_a_step_has_a_time_of_its_own():
    assert 'data-seconds="40"' in html("en/p1/wash-hands/index.html")
    assert "data-seconds" not in html("en/p1/apron-off/index.html")
    assert "data-seconds" not in html("en/p3/palms/index.html")
    assert 'data-seconds="20"' in html("en/p3/index.html")


def test_judgements_are_data_that_cannot_end_their_element():
    page = html("ar/practice/p1/order-take-off-1/index.html")
    text = re.search(r'id="judgement">(.*?)</script>', page).group(1)
    judgement = json.loads(text)
    assert len(judgement["verdicts"]) == 120
    assert max(judgement["verdicts"]) < len(judgement["sentences"])
    assert "<" not in text


def test_exercises_say_that_they_are_practice():
    for path in pages():
        if "/practice/" in path:
            tag = path.split("/")[0]
            assert publication().words[tag].fixed("page-only-practice") in html(path)


def test_languages_are_offered_by_the_number_of_readers():
    readers = project().library.wards["lantern-bay"].readers
    shown = re.findall(r'<li><a href="([a-z]+)/index.html"', html("index.html"))
    counts = [readers.get(tag, 0) for tag in shown]
    assert sorted(shown) == sorted(LANGUAGES)
    assert counts == sorted(counts, reverse=True)


def test_the_same_content_gives_the_same_bytes():
    again = site_of(project(), publication())
    assert again.files == site().files


def test_what_nobody_rehearsed_is_called_neither_safe_nor_unsafe():
    made = build_site(publication(), UNEXAMINED)
    page = made.files["en/practice/p1/order-take-off-1/index.html"].decode()
    judgement = json.loads(re.search(r'id="judgement">(.*?)</script>', page).group(1))
    assert set(judgement["verdicts"]) == {0, 2}
    assert not [path for path in made.files if "/wrong-" in path]
