"""The sample ward of ``word_samples`` with its French catalogues on disk."""

import pytest
from word_samples import build_library, french_entries, interface_entries, write_po

from signage.model.messages import library_messages
from signage.words.catalogue import CatalogueKind


@pytest.fixture
def library():
    return build_library()


@pytest.fixture
def messages(library):
    return library_messages(library)


@pytest.fixture
def protocol(library):
    return library.protocols["off"]


@pytest.fixture
def french(library):
    return french_entries(library)


@pytest.fixture
def locales(tmp_path, french):
    folder = tmp_path / "locales"
    write_po(folder, "fr", CatalogueKind.CONTENT, french.values())
    write_po(folder, "fr", CatalogueKind.INTERFACE, interface_entries().values())
    return folder


@pytest.fixture
def rewrite(locales, french):
    """Writes content.po of a locale again, with some entries changed, added or (None) left out."""

    def write(changes, tag="fr"):
        entries = {**french, **changes}
        return write_po(
            locales, tag, CatalogueKind.CONTENT, [entry for entry in entries.values() if entry is not None]
        )

    return write
