"""The letters and words by which the size of a script is measured, and the measuring itself.

``signage.text.metrics`` holds the results as a table. Letters: plain letters without marks, as tall as most
letters of the script. Words: ordinary ones with the marks and stacks that reach farthest up and down;
they are examples of shapes, not texts to print.
"""

from __future__ import annotations

from dataclasses import dataclass
from statistics import fmean, median

from signage.text.font_set import BUNDLED_FONTS
from signage.text.ink import ink_box
from signage.text.paragraph import shape_paragraph
from signage.text.script_ink import ScriptInk

_UNLIMITED = 1000.0
_WEIGHT_OF_LETTERS = 400
_WEIGHT_OF_WORDS = 700


@dataclass(frozen=True, slots=True)
class ReferenceText:
    """What a script (ISO 15924) is measured by."""

    language: str
    letters: str
    words: str


REFERENCE_TEXTS = {
    "Arab": ReferenceText("ar", "دحهطصمسن", "أغلق الباب يديك إلى غرفة عند"),
    "Deva": ReferenceText("hi", "कगचजटतदनपबमयरलवसह", "अपने हाथ दरवाज़ा स्त्री कुर्सी"),
    "Ethi": ReferenceText("am", "ለመሰረሸቀበተነአከወዘደጠ", "እጅዎን በሩን ይዝጉ"),
    "Hebr": ReferenceText("he", "אבגדהחטכמסעפצרשת", "ידיים ובסבון סגרו לפני הדלק"),
    "Beng": ReferenceText("bn", "কখগচজতদনপবমরলসহ", "হাত ধুয়ে দরজা স্ত্রী কুর্সি"),
    "Guru": ReferenceText("pa", "ਕਗਚਜਟਤਦਨਪਬਮਰਲਵਸਹ", "ਹੱਥ ਧੋਵੋ ਦਰਵਾਜ਼ਾ ਕੁਰਸੀ"),
    "Gujr": ReferenceText("gu", "કગચજટતદનપબમરલવસહ", "હાથ ધોઈ દરવાજો સ્ત્રી કુર્સી"),
    "Orya": ReferenceText("or", "କଗଚଜଟତଦନପବମରଲସହ", "ହାତ ଧୁଅନ୍ତୁ କବାଟ ସ୍ତ୍ରୀ ହଁ"),
    "Taml": ReferenceText("ta", "கசதபமயரலவன", "கைகளை கதவை மூடு பிறகு"),
    "Telu": ReferenceText("te", "జణబల", "చేతులు తలుపు స్త్రీ కుర్చీ"),
    "Knda": ReferenceText("kn", "ಜಣಬಲ", "ಕೈ ಬಾಗಿಲು ಸ್ತ್ರೀ ಕುರ್ಚಿ"),
    "Mlym": ReferenceText("ml", "കഗചജടതദനപബമയരലവസഹ", "കൈകൾ വാതിൽ അടയ്ക്കുക സ്ത്രീ"),
    "Sinh": ReferenceText("si", "කගචජටතදනපබමයරලවසහ", "අත් සෝදන්න දොර ස්ත්‍රී පුටුව"),
    "Thai": ReferenceText("th", "กขคงจตดนบมยรลวสหอ", "ล้างมือ ประตู ก่อนปิด ที่นี่ กู้"),
    "Laoo": ReferenceText("lo", "ກຂຄງຈຕດນບມຍລວສຫອ", "ລ້າງມື ປະຕູ ທີ່ນີ້ ຢູ່"),
    "Khmr": ReferenceText("km", "កខគងចតនបមយរលវសហអ", "លាងដៃ ទ្វារ សាប៊ូ ស្ត្រី ខ្ញុំ"),
    "Mymr": ReferenceText("my", "ကခဂငစတနပဗမယလသဟအ", "လက်ကို တံခါး ဆေးပါ ကြက် မြို့"),
    "Geor": ReferenceText("ka", "აეიოუსმნრთ", "ხელები დახურეთ კარი წყალი"),
    "Armn": ReferenceText("hy", "անսուոէռմխ", "Լվացեք ձեռքերը դուռը փակեք"),
    "Hani": ReferenceText("zh", "请用洗手关门水面上口国", "请用肥皂洗手关上门"),
    "Jpan": ReferenceText("ja", "石手洗閉あのてくだ", "石けんで手を洗い閉める"),
    "Kore": ReferenceText("ko", "비누로손을씻은다음문닫", "비누로 손을 씻은 다음"),
}  # fmt: skip
"""Scripts other than Latin, Greek and Cyrillic, whose font states its x-height itself."""


def measure_script(script: str) -> ScriptInk:
    """Measure a script of ``REFERENCE_TEXTS`` with its font. Raises KeyError for others."""
    reference = REFERENCE_TEXTS[script]
    tops = [_ink(letter, reference.language, _WEIGHT_OF_LETTERS)[0] for letter in reference.letters]
    top, depth = _ink(reference.words, reference.language, _WEIGHT_OF_WORDS)
    each = [_ink(word, reference.language, _WEIGHT_OF_WORDS) for word in reference.words.split()]
    return ScriptInk(median(tops), top, depth, fmean(depth for _, depth in each))


def _ink(text: str, language: str, weight: int) -> tuple[float, float]:
    """Ink above and below the baseline in one line, both counted away from it."""
    line = shape_paragraph(text, language, weight, BUNDLED_FONTS).lines(_UNLIMITED)[0]
    box = ink_box(line.runs)
    return box.top, max(0.0, -box.bottom)
