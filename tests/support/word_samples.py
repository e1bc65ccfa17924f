"""A ward of one step sheet: two garments, one bin, three steps, in English and French. All invented."""

import re
from datetime import date
from pathlib import Path

from signage.ground.place import Place
from signage.model.garment import Garment
from signage.model.library import (
    Action,
    Actor,
    Door,
    Fixture,
    Library,
    Locale,
    LocaleState,
    Phase,
    Protocol,
    Step,
    Term,
    Ward,
    Zone,
)
from signage.model.messages import library_messages
from signage.model.vocabulary import Verb, Vocabulary
from signage.words.catalogue import Catalogue, CatalogueKind, Entry, catalogue_path
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.po.writer import complete_header, write_catalogue

FRENCH = {
    "library/name": "Hôpital du Port",
    "kit/apron/name": "tablier",
    "kit/outer-gloves/name": "gants externes",
    "kit/inner-gloves/name": "gants internes",
    "ward/bay/name": "Secteur de la baie",
    "ward/bay/zone/dirty": "Côté sale",
    "ward/bay/zone/clean": "Côté propre",
    "off/title": "Retirer la tenue",
    "off/owner": "infirmier hygiéniste",
    "off/phase/take-off/title": "Déshabillage",
    "off/rub/text": "Frotter les mains {time}.",
    "off/apron-off/text": "Retirer le tablier.",
    "off/apron-off/detail": "Jeter {item} dans le bac {bin}.",
    "off/gloves-off/text": "Retirer les gants externes.",
    "off/gloves-off/why": "Ils sont sales : ne rien toucher.",
    "off/leave/text": "Passer : {zone} ?",
}


def _steps():
    return (
        Step(
            id="rub",
            text="Rub the hands for {time}.",
            picture="hand-rub",
            actions=(Action(verb="hygiene", agent="rub", seconds=20, amount="10 ml"),),
        ),
        Step(
            id="apron-off",
            text="Take off the apron.",
            detail="Put {item} into bin {bin}.",
            picture="apron-off",
            actions=(Action(verb="doff", item="apron", bin="bin-a"),),
            critical=True,
        ),
        Step(
            id="gloves-off",
            text="Take off the outer gloves.",
            why="They are dirty: touch nothing.",
            picture="outer-glove-off",
            actions=(Action(verb="doff", item="outer-gloves", bin="bin-a"),),
            negation=True,
        ),
        Step(
            id="leave",
            text="Cross to: {zone}?",
            picture="to-clean-side",
            actions=(Action(verb="move", to="clean"),),
        ),
    )


def _terms():
    return (
        Term(
            id="apron",
            source="apron",
            note="Plastic.",
            approved={"fr": ("tablier",)},
            forbidden={"fr": ("blouse",)},
        ),
        Term(id="outer-gloves", source="outer gloves", approved={"fr": ("gants externes",)}),
        Term(
            id="inner-gloves",
            source="inner gloves",
            approved={"fr": ("gants internes",)},
            forbidden={"fr": ("gants",)},
        ),
    )


def build_library(*, steps=None, terms=None, locales=None):
    zones = {
        "dirty": Zone(id="dirty", name="Dirty side", zone_class="transition", floor="dirty"),
        "clean": Zone(id="clean", name="Clean side", zone_class="transition", floor="transition"),
    }
    fixtures = {"bin-a": Fixture(id="bin-a", kind="bin", zone="dirty", code="A")}
    ward = Ward(
        id="bay", name="Bay area", zones=zones, doors=(Door(start="dirty", end="clean"),), fixtures=fixtures
    )
    protocol = Protocol(
        id="off",
        code="P1",
        title="Take off the kit",
        revision=1,
        owner="infection-control nurse",
        review_by=date(2027, 5, 31),
        ward="bay",
        people=(Actor(id="wearer", role="wearer", starts_in="dirty"),),
        ends_in="clean",
        phases=(Phase(id="take-off", title="Take off", theme="doff", steps=steps or _steps()),),
    )
    garments = {
        name: Garment(id=name, name=name.replace("-", " "), kind="kit")
        for name in ("apron", "outer-gloves", "inner-gloves")
    }
    return Library(
        name="Harbour Hospital",
        source_locale="en",
        locales=locales
        or {
            "en": Locale(tag="en", owner="language lead", state=LocaleState.IN_USE),
            "fr": Locale(tag="fr", owner="language lead", state=LocaleState.IN_USE),
        },
        training_address="http://ward.internal",
        papers=("A4",),
        garments=garments,
        policy={},
        terms=_terms() if terms is None else terms,
        vocabulary=Vocabulary(
            verbs=(
                Verb(
                    id="take-off",
                    source="take off",
                    acts=("doff",),
                    approved={"en": ("take … off",), "fr": ("retirer",)},
                ),
            )
        ),
        wards={"bay": ward},
        protocols={"off": protocol},
        place=Place("content/library.yaml", 1, 1),
    )


def french_entries(library):
    return {
        message.context: Entry(
            context=message.context, source=message.source, translation=FRENCH[message.context]
        )
        for message in library_messages(library)
    }


def _in_no_language(text):
    """No letter that makes a word of any language; placeholders stay."""
    parts = re.split(r"(\{[a-z_]+\})", text)
    letters = str.maketrans("aeiouhtnsyAEIOUHTNSY", "zxkzxkqqjjZXKZXKQQJJ")
    return "".join(part if part.startswith("{") else part.translate(letters) for part in parts)


def interface_entries():
    return {
        f"interface/{text.id}": Entry(
            context=f"interface/{text.id}", source=text.source, translation=_in_no_language(text.source)
        )
        for text in FIXED_TEXTS.values()
    }


def write_po(locales: Path, tag: str, kind: CatalogueKind, entries) -> Path:
    path = catalogue_path(locales, tag, kind)
    path.parent.mkdir(parents=True, exist_ok=True)
    catalogue = Catalogue(entries=tuple(entries), header=complete_header(kind, tag, {}))
    path.write_bytes(write_catalogue(catalogue))
    return path
