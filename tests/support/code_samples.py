"""The codes that stand on composed sheets."""

from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.pages.link_check import Payload


def payloads_of(sheets):
    """Each QR code with its sheet and language."""
    for sheet in sheets:
        for page in sheet.pages:
            for group, _box in groups_of(page, GroupRole.QR):
                yield Payload(group.name, sheet.file_stem, sheet.locale)
