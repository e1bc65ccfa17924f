"""Luminance and contrast of colours written ``#RRGGBB``."""


def channels(colour: str) -> tuple[float, float, float]:
    """Red, green and blue from 0 to 1."""
    return int(colour[1:3], 16) / 255, int(colour[3:5], 16) / 255, int(colour[5:7], 16) / 255


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def relative_luminance(colour: str) -> float:
    """From 0 (black) to 1 (white), by the definition of WCAG 2.2."""
    red, green, blue = (_linear(channel) for channel in channels(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast_ratio(one: str, other: str) -> float:
    """From 1 to 21, by the definition of WCAG 2.2: ``(lighter + 0.05) / (darker + 0.05)``."""
    darker, lighter = sorted((relative_luminance(one), relative_luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)
