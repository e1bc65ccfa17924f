from babel import Locale

from signage.load.files.library import NUMERALS


def test_a_language_in_three_letters_is_told_once_where_it_is_written(library):
    (problem,) = library.check(
        "library.yaml",
        """\
name: Mill House
source-language: en
training-address: http://mill.internal:8080
papers: [A4]
locales:
  en: {owner: language lead, state: in-use}
  ara: {owner: language lead, state: in-work}  #! LD-15:3
""",
    )
    # ISO 639-2 writes Arabic ara; BCP 47 wants the ar of ISO 639-1 (RFC 5646, section 2.2.1)
    assert problem.message.startswith("'ara' is the long form of 'ar'")
    assert problem.hint == "Write 'ar:', and call its folder of translations so too."


def test_every_fault_of_the_library_file_is_found_at_its_place(library):
    library.check(
        "library.yaml",
        """\
name: Mill {House}                                        #! LD-19:7
source-language: de                                       #! LD-16:18
training-address: mill.internal                           #! LD-15:19
papers: A4                                                #! LD-13:9
colour: red                                               #! LD-11:1
locales:
  en: {owner: language lead, state: in use}               #! LD-14:37
  ar: {owner: language lead, state: in-work, numerals: arabic, register: rude}  #! LD-14:56 LD-14:74
  EN: {owner: language lead, state: in-work}              #! LD-9:3
  fr_CA: {owner: language lead, state: in-work}           #! LD-15:3
  nl: in-work                                             #! LD-13:7
""",
    )


def test_every_fault_of_the_glossary_is_found_at_its_place(library):
    library.check(
        "terms.yaml",
        """\
terms:
  apron:
    source: apron
    approved: {ar: مئزر}                                  #! LD-13:20
    forbidden: {fr: [blouse], en: [smock]}                #! LD-16:17
  Gloves: {source: gloves}                                #! LD-15:3
  hood: {note: over the cap}                              #! LD-12:9
""",
    )


def test_numerals_are_numbering_systems_of_cldr():
    # Outside reader: the CLDR data that Babel carries.
    languages = ("ar", "bn", "dz", "fa", "gu", "hi", "km", "kn", "lo", "ml", "my", "nqo", "or", "pa", "sat")
    languages += ("si", "ta", "te", "th")
    locales = [Locale.parse(language) for language in languages]
    known = {locale.default_numbering_system for locale in locales}
    known |= {system for locale in locales for system in locale.number_symbols}
    assert set(NUMERALS) <= known
