"""ICU (International Components for Unicode) as an outside reference, in the library of the icu4py wheel."""

import ctypes
import re
import unicodedata
from functools import cache
from pathlib import Path

from outside_readers import absent, outside

_ERROR = ctypes.c_int
_SUCCESS = 0


@cache
def _library():
    breakers = outside("icu4py.breakers")
    folder = Path(breakers.__file__).parent.parent / "icu4py.libs"
    paths = sorted(folder.glob("libicuuc*"))
    if not paths:
        absent("a separate ICU library in the icu4py wheel is not there")
    match = re.search(rb"ubidi_open_(\d+)\x00", paths[0].read_bytes())
    assert match is not None
    return ctypes.CDLL(str(paths[0])), match.group(1).decode()


def _function(name: str, result: type | None, *arguments: type):
    library, version = _library()
    function = getattr(library, f"{name}_{version}")
    function.restype, function.argtypes = result, list(arguments)
    return function


def icu_visual_order(text: str, base_level: int) -> list[int]:
    """Indices of the characters from left to right by ICU's ubidi; BMP characters only."""
    assert all(ord(character) < 0x10000 for character in text)
    open_, close = _function("ubidi_open", ctypes.c_void_p), _function("ubidi_close", None, ctypes.c_void_p)
    set_paragraph = _function(
        "ubidi_setPara",
        None,
        ctypes.c_void_p,
        ctypes.c_char_p,
        ctypes.c_int32,
        ctypes.c_uint8,
        ctypes.c_void_p,
        ctypes.POINTER(_ERROR),
    )
    get_map = _function(
        "ubidi_getVisualMap", None, ctypes.c_void_p, ctypes.POINTER(ctypes.c_int32), ctypes.POINTER(_ERROR)
    )
    bidi, status = open_(), _ERROR(_SUCCESS)
    try:
        units = text.encode("utf-16-le") + b"\0\0"
        set_paragraph(bidi, units, len(text), base_level, None, ctypes.byref(status))
        order = (ctypes.c_int32 * len(text))()
        get_map(bidi, order, ctypes.byref(status))
        assert status.value <= _SUCCESS, f"ICU reports error {status.value}"
        return list(order)
    finally:
        close(bidi)


def icu_bracket_pairs() -> dict[str, str]:
    """Every opening bracket of the bidirectional algorithm with its closing one."""
    paired = _function("u_getBidiPairedBracket", ctypes.c_int32, ctypes.c_int32)
    property_value = _function("u_getIntPropertyValue", ctypes.c_int32, ctypes.c_int32, ctypes.c_int)
    bracket_type, opening = 0x1015, 1  # UCHAR_BIDI_PAIRED_BRACKET_TYPE, U_BPT_OPEN of uchar.h
    return {
        chr(code): chr(paired(code))
        for code in range(0x110000)
        if not 0xD800 <= code < 0xE000 and property_value(code, bracket_type) == opening
    }


def icu_line_breaks(text: str, language: str) -> list[int]:
    """Indices of characters at which ICU's line breaker ends a piece."""
    pointer = ctypes.c_void_p
    open_ = _function(
        "ubrk_open",
        pointer,
        ctypes.c_int,
        ctypes.c_char_p,
        ctypes.c_char_p,
        ctypes.c_int32,
        ctypes.POINTER(_ERROR),
    )
    next_, close = _function("ubrk_next", ctypes.c_int32, pointer), _function("ubrk_close", None, pointer)
    line_breaks, status = 2, _ERROR(_SUCCESS)  # UBRK_LINE of ubrk.h
    units = text.encode("utf-16-le")
    kept = ctypes.create_string_buffer(units + b"\0\0")  # the breaker reads it in place
    breaker = open_(line_breaks, language.encode(), kept, len(units) // 2, ctypes.byref(status))
    assert status.value <= _SUCCESS, f"ICU reports error {status.value}"
    ends = []
    while (end := next_(breaker)) >= 0:
        ends.append(len(units[: 2 * end].decode("utf-16-le")))
    close(breaker)
    return ends


def icu_is_right_to_left(locale: str) -> bool:
    """Whether ICU sets a locale, such as ``ks_Arab_IN``, from right to left."""
    return bool(_function("uloc_isRightToLeft", ctypes.c_int8, ctypes.c_char_p)(locale.encode()))


def icu_letters(locale: str, *, auxiliary: bool = False) -> frozenset[str]:
    """The letters (general category L) of CLDR's main or auxiliary exemplars of a locale, in ICU's data."""
    pointer, error = ctypes.c_void_p, ctypes.POINTER(_ERROR)
    _library()
    folder = Path(outside("icu4py.breakers").__file__).parent.parent / "icu4py.libs"
    (path,) = folder.glob("libicui18n*")
    _, version = _library()
    data = ctypes.CDLL(str(path))
    open_, get_set = (
        getattr(data, f"ulocdata_open_{version}"),
        getattr(data, f"ulocdata_getExemplarSet_{version}"),
    )
    close = getattr(data, f"ulocdata_close_{version}")
    open_.restype, open_.argtypes = pointer, [ctypes.c_char_p, error]
    get_set.restype, get_set.argtypes = pointer, [pointer, pointer, ctypes.c_uint32, ctypes.c_int, error]
    close.restype, close.argtypes = None, [pointer]
    contains = _function("uset_contains", ctypes.c_int8, pointer, ctypes.c_int32)
    close_set = _function("uset_close", None, pointer)
    status = _ERROR(_SUCCESS)
    opened = open_(locale.encode(), ctypes.byref(status))
    found = get_set(opened, None, 0, int(auxiliary), ctypes.byref(status))
    assert found, f"ICU has no exemplars of {locale}"
    letters = frozenset(
        chr(code)
        for code in range(0x3000)
        if contains(found, code) and unicodedata.category(chr(code)).startswith("L")
    )
    close_set(found)
    close(opened)
    return letters


def icu_with_property(number: int) -> frozenset[str]:
    """All characters with a binary property of the UCD, numbered as in ICU's uchar.h."""
    has = _function("u_hasBinaryProperty", ctypes.c_int8, ctypes.c_int32, ctypes.c_int)
    return frozenset(chr(code) for code in range(0x110000) if has(code, number))
