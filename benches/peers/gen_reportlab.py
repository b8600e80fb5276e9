"""ReportLab platypus: python gen_reportlab.py OUT.pdf [SCALE] [--warm N] ; env SHAPE=1 turns on HarfBuzz shaping."""
import os
from xml.sax.saxutils import escape as e
from reportlab.graphics.shapes import Drawing, Line, Rect, String
from reportlab.lib.colors import HexColor
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import (BaseDocTemplate, CondPageBreak, Flowable, Frame, KeepTogether, PageBreak, PageTemplate,
                                Paragraph, Table)
from reportlab.platypus.tableofcontents import TableOfContents
from content import FONTS, CHART_W, CHART_H, chart_shapes, cli

SHAPE = os.environ.get("SHAPE") == "1"
F = {"regular": "Lato", "bold": "Lato-Bold", "italic": "Lato-Italic"}
for k, n in F.items():
    pdfmetrics.registerFont(TTFont(n, FONTS[k], shapable=SHAPE))
X = dict(shaping=1) if SHAPE else {}
BODY = ParagraphStyle("body", fontName="Lato", fontSize=10.5, leading=14, alignment=4, spaceAfter=7, hyphenationLang="en_GB", **X)
H1 = ParagraphStyle("h1", fontName="Lato-Bold", fontSize=17, leading=21, spaceBefore=14, spaceAfter=6, keepWithNext=1, **X)
H2 = ParagraphStyle("h2", fontName="Lato-Bold", fontSize=12.5, leading=16, spaceBefore=8, spaceAfter=4, keepWithNext=1, **X)
CAP = ParagraphStyle("cap", fontName="Lato-Italic", fontSize=9, leading=12, spaceBefore=6, spaceAfter=5, keepWithNext=1, **X)
TCAP = ParagraphStyle("tcap", CAP, keepWithNext=0)   # keepWithNext would drag the whole table to a new page
TOP = ParagraphStyle("top", fontName="Lato-Bold", fontSize=22, leading=28, alignment=1, spaceAfter=14)
FIELDS = ParagraphStyle("f", fontName="Lato", fontSize=10.5, leading=16, spaceAfter=6)
GRID, FILL = HexColor("#999999"), HexColor("#E4E8EC")


class Doc(BaseDocTemplate):
    total = 0

    def __init__(self, out, doc):
        super().__init__(out, pagesize=A4, title=doc["title"], lang=doc["lang"], invariant=1)
        fr = Frame(20 * mm, 22 * mm, A4[0] - 40 * mm, A4[1] - 42 * mm, 0, 0, 0, 0)
        self.addPageTemplates(PageTemplate("p", [fr], onPage=self.foot))

    def foot(self, c, d):
        c.setFont("Lato", 8.5)
        c.drawCentredString(A4[0] / 2, 11 * mm, f"Page {c.getPageNumber()} of {self.total}")

    def beforeDocument(self):
        self.seq = 0

    def afterFlowable(self, f):
        lvl = {"h1": 0, "h2": 1}.get(getattr(getattr(f, "style", None), "name", ""))
        if lvl is not None:
            self.seq += 1
            key = f"h{self.seq}"
            self.canv.bookmarkPage(key)
            self.canv.addOutlineEntry(f.getPlainText(), key, lvl, closed=lvl == 0)
            self.notify("TOCEntry", (lvl, f.getPlainText(), self.page, key))

    def afterPage(self):          # multiBuild runs the story until the contents settle; "of Y" uses the last pass's count
        self.seen = self.page

    def _allSatisfied(self):
        ok = super()._allSatisfied() and self.total == self.seen
        self.total = self.seen
        return ok


def chart(c):
    d = Drawing(CHART_W, CHART_H)
    for s in chart_shapes(c):
        if s[0] == "line":
            d.add(Line(s[1], CHART_H - s[2], s[3], CHART_H - s[4], strokeColor=HexColor(s[5]), strokeWidth=.5))
        elif s[0] == "rect":
            d.add(Rect(s[1], CHART_H - s[2] - s[4], s[3], s[4], fillColor=HexColor(s[5]), strokeColor=None))
        else:
            d.add(String(s[1], CHART_H - s[2], s[5], fontName="Lato", fontSize=s[3], textAnchor=s[4]))
    return d


def tbl(head, rows, widths, rowh=None):
    w = [x * mm for x in widths] + [(170 - sum(widths)) * mm]
    return Table([head] + rows, w, [16] + [rowh] * len(rows), repeatRows=1, style=[
        ("FONT", (0, 0), (-1, -1), "Lato", 9), ("FONT", (0, 0), (-1, 0), "Lato-Bold", 9), ("BACKGROUND", (0, 0), (-1, 0), FILL),
        ("GRID", (0, 0), (-1, -1), .5, GRID), ("LEFTPADDING", (0, 0), (-1, -1), 4), ("TOPPADDING", (0, 0), (-1, -1), 1.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 3.5), ("VALIGN", (0, 0), (-1, -1), "MIDDLE")])


class Fields(Flowable):
    def __init__(self, names):
        super().__init__()
        self.names = names

    def wrap(self, w, h):
        self.w = w
        return w, 18

    def draw(self):
        step = self.w / len(self.names)
        for i, n in enumerate(self.names):
            self.canv.setFont("Lato", 10.5)
            self.canv.drawString(i * step, 6, n + ":")
            self.canv.setLineWidth(.5)
            self.canv.line(i * step + 40, 4, (i + 1) * step - 8, 4)


def render(doc, out):
    toc = TableOfContents(dotsMinLevel=0, levelStyles=[ParagraphStyle(f"t{i}", fontName="Lato", fontSize=10.5, leading=15, leftIndent=i * 14) for i in (0, 1)])
    st = [Paragraph(e(doc["title"]), TOP), Paragraph("Contents", ParagraphStyle("th", H1)), toc, PageBreak()]
    for s in doc["sections"]:
        st.append(Paragraph(e(s["title"]), H1))
        for i, u in enumerate(s["subs"]):
            st.append(Paragraph(e(u["title"]), H2))
            st += [Paragraph(e(p), BODY) for p in u["paras"]]
            if i == 0:
                st.append(KeepTogether([Paragraph(e(s["chart"]["caption"]), CAP), chart(s["chart"])]))
        if s["table"]:
            st += [CondPageBreak(75), Paragraph(e(s["table"]["caption"]), TCAP), tbl(s["table"]["head"], s["table"]["rows"], (14, 28, 28, 22), 15.5)]
        if f := s.get("form"):
            for pg in range(f["pages"]):
                st += [PageBreak(), Paragraph(e(f["title"]) + (" (continued)" if pg else ""), H2 if pg else H1), Fields(f["fields"]),
                       tbl(f["head"], [[str(pg * f["rows"] + i + 1), "", "", "", ""] for i in range(f["rows"])], (14, 32, 32, 32), 8.4 * mm)]
            if s is not doc["sections"][-1]:
                st.append(PageBreak())
    Doc(out, doc).multiBuild(st)


cli(render)
