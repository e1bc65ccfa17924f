"""``signage about``: what a helper needs to know about this installation."""

from __future__ import annotations

import platform

from signage import __version__
from signage.cli.application import Format, FormatOption, QuietOption, typer_application
from signage.cli.report import print_json, say
from signage.ground.counting import counted

_LIBRARIES = (
    "babel", "fonttools", "icu4py", "manimgx-fonts", "justmytype-intl-cjk", "pillow", "pydantic", "pypdfium2",
    "pyyaml", "qrcode", "reportlab", "rich", "skia-pathops", "typer", "uharfbuzz",
)  # fmt: skip


@typer_application.command()
def about(form: FormatOption = Format.TEXT, quiet: QuietOption = False) -> None:
    """Print versions, fonts with their scripts, and the platform, to paste into a report."""
    from importlib import metadata

    from signage.pictograms.shipped import shipped_names
    from signage.text.manifest import FONT_FILES

    versions = {}
    for name in _LIBRARIES:
        try:
            versions[name] = metadata.version(name)
        except metadata.PackageNotFoundError:
            versions[name] = "not installed"
    fonts = sorted(f"{file.name}: {', '.join(file.scripts) or 'symbols'}" for file in FONT_FILES)
    pictures = len(shipped_names())
    facts = {
        "signage": __version__,
        "python": platform.python_version(),
        "platform": platform.platform(),
        "libraries": versions,
        "fonts": fonts,
        "pictures": pictures,
    }
    if form is Format.JSON:
        print_json(facts)
        return
    if quiet:
        return
    say(f"signage {__version__}")
    say(f"Python {facts['python']} on {facts['platform']}")
    for name, version in versions.items():
        say(f"  {name} {version}")
    say(f"{counted(pictures, 'picture')}; fonts:")
    for font in fonts:
        say(f"  {font}")
