"""The font files that text is set in: where each comes from, which scripts it serves, and its SHA-256.

A file that differs by one byte may shape or measure differently, so sheets that were checked would no
longer be the sheets that are printed. Fonts of the operating system are never searched.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FontPackage:
    """An installed package that carries font files, and the command that installs it."""

    module: str
    install: str


NOTO = FontPackage("manimgx_fonts", "pip install 'manimgx-fonts>=2026.9,<2027'")
NOTO_CJK = FontPackage("justmytype_intl_cjk", "pip install -e '.[cjk]'")


@dataclass(frozen=True, slots=True)
class FontFile:
    """One font file: its name, the folder inside its package, the scripts (ISO 15924) it is the font of."""

    name: str
    scripts: tuple[str, ...]
    sha256: str
    package: FontPackage = NOTO
    folder: str = ""


def _noto(name: str, scripts: tuple[str, ...], sha256: str) -> FontFile:
    return FontFile(name, scripts, sha256)


def _cjk(name: str, folder: str, scripts: tuple[str, ...], sha256: str) -> FontFile:
    return FontFile(name, scripts, sha256, NOTO_CJK, f"fonts/ofl/{folder}")


FONT_FILES = (
    _noto(
        "NotoSans[wght].ttf",
        ("Latn", "Grek", "Cyrl"),
        "fb53504de62e767a54695416123d68d67f71c9b69722175184ad56e7dd13547b",
    ),
    _noto(
        "NotoSansArabic[wght].ttf",
        ("Arab",),
        "3fae4d7239d1faa55b234bda8091019a5251ff79df40d5e29367d84bed2a8138",
    ),
    _noto(
        "NotoSansArmenian[wght].ttf",
        ("Armn",),
        "e979dfaed56ddb4bfd05121958b25425eb7593253d64b6b3654c77c11c5cda94",
    ),
    _noto(
        "NotoSansBengali[wght].ttf",
        ("Beng",),
        "dc9defe97bb041876b6609e9029d9e1e228a686259acde2fe2a9f99d793ee17d",
    ),
    _noto(
        "NotoSansDevanagari[wght].ttf",
        ("Deva",),
        "bf99bf762743ff3259e73196852520ab0ffe8d384238bff3e4806a84b981e972",
    ),
    _noto(
        "NotoSansEthiopic[wght].ttf",
        ("Ethi",),
        "93f223089e300b983dbfd693c7be619e0e76565a70d639e71a4fe0bfd72cf66f",
    ),
    _noto(
        "NotoSansGeorgian[wght].ttf",
        ("Geor",),
        "42f4a8bf4fe0af8afd91ee3c19e81e14f1bc74ddbd9b6a59a4182f67a596adb4",
    ),
    _noto(
        "NotoSansGujarati[wght].ttf",
        ("Gujr",),
        "83d1bde74d64fb389f97a5e27b2699d8ee8bad4c15a02be347228e6c10011248",
    ),
    _noto(
        "NotoSansGurmukhi[wght].ttf",
        ("Guru",),
        "8a3096ee2166f6383501e2df7b368fce88cfa4068c8d75bcb6af07da353a00ea",
    ),
    _noto(
        "NotoSansHebrew[wght].ttf",
        ("Hebr",),
        "9d81d81ad592644487b03843da73a87b99cd28a2c4da4a096e1db8fbd14fda61",
    ),
    _noto(
        "NotoSansKannada[wght].ttf",
        ("Knda",),
        "b6b11505d76eddf916667d73adfec19095ec777742444dc662dae81471461f4e",
    ),
    _noto(
        "NotoSansKhmer[wght].ttf",
        ("Khmr",),
        "56f89948a84cc0b01962ed6af573ac4ac885bd7bb6e7e40f9afc72a435728b70",
    ),
    _noto(
        "NotoSansLao[wght].ttf", ("Laoo",), "fc138d605aa998d8407789ee6a7f5554aae8b54f5cd98d66dd2c33e79d15b67e"
    ),
    _noto(
        "NotoSansMalayalam[wght].ttf",
        ("Mlym",),
        "94cddc94a03fa9a5e8d1784090ba97b267def6933d60762081eaa003751142c5",
    ),
    _noto(
        "NotoSansMyanmar[wght].ttf",
        ("Mymr",),
        "e0b280aa3080aab922800c88fa9a2015a4bec3103bb8b70491a92e4a04f3a3a3",
    ),
    _noto(
        "NotoSansOriya[wght].ttf",
        ("Orya",),
        "37f482d0179d0a50e3128d004f007ff1c1741ad5f6b0b2bcc7238b257ef1caa0",
    ),
    _noto(
        "NotoSansSinhala[wght].ttf",
        ("Sinh",),
        "3fd7c6a61cb6dfb8a2ca7af5b4078bd24e9c8ad9b55839a0177277db6e4d1326",
    ),
    _noto(
        "NotoSansTamil[wght].ttf",
        ("Taml",),
        "37e151cdec4a8cfb15c432f7bb164a83b98df69419d47e50b35aa7073963716b",
    ),
    _noto(
        "NotoSansTelugu[wght].ttf",
        ("Telu",),
        "6c06de88b2d420d899543724a13765994191cd29860c6226efca098b51fec64b",
    ),
    _noto(
        "NotoSansThai[wght].ttf",
        ("Thai",),
        "13f52f79b04f01f2751a81052a5dee2df639fd4e13f4ac30821ab45c8dd5f7e7",
    ),
    _noto(
        "NotoSansSymbols[wght].ttf", (), "63724daeff6755a45933b9a5e3a3b41df5df8fe925c0f4c991f2f68c08a4182d"
    ),
    _cjk(
        "NotoSansSC[wght].ttf",
        "notosanssc",
        ("Hani", "Hans", "Bopo"),
        "a3041811a78c361b1de50f953c805e0244951c21c5bd412f7232ef0d899af0da",
    ),
    _cjk(
        "NotoSansTC[wght].ttf",
        "notosanstc",
        ("Hant",),
        "864727d210d54f2537bbe23b3a839436c3992af72de9322af5270897246bd44f",
    ),
    _cjk(
        "NotoSansJP[wght].ttf",
        "notosansjp",
        ("Jpan", "Hira", "Kana"),
        "c2f3b4d463500a2ddcd3849cded1fceeb9fd6d1c32e6cbecd568453ba50fc68f",
    ),
    _cjk(
        "NotoSansKR[wght].ttf",
        "notosanskr",
        ("Kore", "Hang"),
        "194018e6b2b293a7964f037b25c0249ce1418bc9ab3c971060a03aa57861e252",
    ),
)
"""All files that may be used, from packages pinned in pyproject.toml; all under the Open Font License."""

LATIN_FONT = "NotoSans[wght].ttf"
FALLBACK_FONTS = (LATIN_FONT, "NotoSansSymbols[wght].ttf")
"""Tried in this order for characters that the font of their script lacks."""

WEIGHTS = (400, 600, 700)
"""The weights of the type scale, on the wght axis of the variable fonts."""

FILE_BY_NAME = {file.name: file for file in FONT_FILES}
FILE_BY_SCRIPT = {script: file for file in FONT_FILES for script in file.scripts}
