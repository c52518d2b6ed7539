"""The hand that draws on the pages: letters, lines and boxes, and nothing that the same paper would not give again."""

from __future__ import annotations

from io import BytesIO

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from .fonts import Face, shown, strong
from .style import BOX_SIDE, HEAVY, INK, PAGE_HEIGHT, PAGE_WIDTH, THIN, Shade

_MAKER = "specbuilder"
# Files are bytes everywhere by now: written as letters they would be a quarter larger and slower to set.
rl_config.useA85 = 0


class Pen:
    """Draws one file. Places are in points from the left and from the foot of the page."""

    def __init__(self, *, title: str, author: str) -> None:
        self._file = BytesIO()
        # Invariant: no hour of the day and nothing by chance in the file.
        self._canvas = Canvas(
            self._file, pagesize=(PAGE_WIDTH, PAGE_HEIGHT), invariant=True, pageCompression=1, lang="en-GB"
        )
        self._canvas.setTitle(shown(title))
        self._canvas.setAuthor(shown(author))
        self._canvas.setCreator(_MAKER)
        self._canvas.setProducer(_MAKER)
        self._parts = 0

    def text(self, x: float, y: float, text: str, face: Face, size: float, shade: Shade = INK) -> None:
        """One line of text that begins at x and stands on y."""
        if not text:
            return
        self._canvas.setFillColorRGB(*shade)
        self._canvas.setFont(face.name, size)
        self._canvas.drawString(x, y, text)

    def right(self, x: float, y: float, text: str, face: Face, size: float, shade: Shade = INK) -> None:
        """One line of text that ends at x."""
        self.text(x - face.width(text) * size, y, text, face, size, shade)

    def line(self, x: float, y: float, to_x: float, to_y: float, width: float = THIN, shade: Shade = INK) -> None:
        """A straight line."""
        self._canvas.setStrokeColorRGB(*shade)
        self._canvas.setLineWidth(width)
        self._canvas.line(x, y, to_x, to_y)

    def box(self, x: float, y: float, width: float, height: float, line: float = THIN) -> None:
        """An empty box; x and y are its lower left corner."""
        self._canvas.setStrokeColorRGB(*INK)
        self._canvas.setLineWidth(line)
        self._canvas.rect(x, y, width, height, stroke=1, fill=0)

    def tick_box(self, x: float, middle: float) -> None:
        """A box to tick, in the middle of a line."""
        self.box(x, middle - BOX_SIDE / 2, BOX_SIDE, BOX_SIDE, 0.8)

    def caution_sign(self, x: float, middle: float, side: float) -> None:
        """A triangle with a mark of exclamation: the sign beside the word, for whoever does not read it."""
        height = side * 0.87
        foot = middle - height / 2
        path = self._canvas.beginPath()
        path.moveTo(x, foot)
        path.lineTo(x + side, foot)
        path.lineTo(x + side / 2, foot + height)
        path.close()
        self._canvas.setStrokeColorRGB(*INK)
        self._canvas.setLineWidth(HEAVY * 0.7)
        self._canvas.setLineJoin(1)
        self._canvas.drawPath(path, stroke=1, fill=0)
        size = side * 0.62
        self.text(x + (side - strong().width("!") * size) / 2, foot + side * 0.13, "!", strong(), size)

    def part(self, name: str, y: float) -> None:
        """Names a place in the list of parts that a reader shows beside the pages."""
        self._parts += 1
        key = f"part-{self._parts}"
        self._canvas.bookmarkHorizontal(key, 0, y)
        self._canvas.addOutlineEntry(shown(name), key, level=0)

    def turn(self) -> None:
        """Ends the page."""
        self._canvas.showPage()

    def written(self) -> bytes:
        """The file."""
        self._canvas.save()
        return self._file.getvalue()
