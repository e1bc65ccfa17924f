"""A kind of sheet from outside the programme, in one file: the name of a zone and a picture, for its door."""

from signage.compose.canvas import Canvas
from signage.compose.envelope import finished_sheet
from signage.compose.furniture.footer import draw_footer, plan_footer
from signage.compose.lettering import Lettering, TextPlace
from signage.compose.paper_choice import PaperChoice
from signage.compose.parts import draft_ribbon, draft_tag
from signage.compose.sheet_kind import CodeTarget, Owed, Per, SheetKind
from signage.compose.theme import style_of
from signage.drawing.marks import Structure
from signage.drawing.roles import TypeRole

MARGIN = 12.0


def compose_door_sign(order):
    context, paper = order.context, order.paper
    wording, protocol = context.wording, context.protocol
    style = style_of(protocol.phases[0].theme, context.tone)
    canvas = Canvas(paper.width, paper.height, context, style, 0.707, MARGIN)
    width = paper.width - 2 * MARGIN
    footer = plan_footer(context, 0.707, MARGIN, width, is_landscape=paper.is_landscape, page=1, pages=1)
    draft_ribbon(canvas, context, 8.5)
    draft_tag(canvas, context, MARGIN, MARGIN + 5, 7, 11, style.ink)
    message = f"ward/{context.ward.id}/zone/{order.part}"
    headline = wording.content(message)
    with canvas.group(structure=Structure.HEADING_1):
        y = canvas.text(
            headline,
            Lettering(TypeRole.HEADLINE, canvas.face(700), 60, floor=30),
            TextPlace(MARGIN, MARGIN + 14, width, lines=2),
            message=message,
        )
    link = context.training_link()
    canvas.qr_code(link, MARGIN + width - 34, y + 8, 34, f"{wording.fixed('training-page')} {link}")
    step = protocol.steps[0]
    canvas.picture(step.picture, MARGIN, y + 8, 110, context.picture_words(step))
    draw_footer(canvas, context, footer, headline, paper.height - MARGIN - footer.height, footer.height)
    return finished_sheet(
        context,
        "door-sign",
        f"{protocol.code} {headline}",
        [canvas],
        protocol=protocol,
        paper=paper.name,
        stem=f"door-sign-{order.part}",
    )


DOOR_SIGN = SheetKind(
    name="door-sign",
    singular="door sign",
    plural="door signs",
    summary="the name of a zone, for its door",
    place=40,
    per=Per.ZONE,
    papers=PaperChoice(names=("A4", "Letter"), made_on="made on A4 or Letter", usual="A4"),
    compose=compose_door_sign,
    owes=Owed.RULER | Owed.TAG | Owed.RIBBON | Owed.AIR,
    code=CodeTarget.PROTOCOL,
)

SHEET_KINDS = (DOOR_SIGN,)
