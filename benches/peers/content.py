"""Shared, seeded content model for all makers: build(scale) -> dict (JSON-able).

scale=1 is the 20-page document, scale=10 the 200-page one (fresh text per copy, same structure).
chart_shapes() turns a bar chart into points-based drawing primitives every backend replays.
"""
import json, os, random, sys

TITLE = "Mixing Colour: A Workshop Handout"
LANG = "en-GB"
HERE = os.path.dirname(os.path.abspath(__file__))
FONT_DIR = os.path.abspath(os.environ.get("FONT_DIR", f"{HERE}/../../fonts"))     # a folder with the Lato TrueType faces
FONTS = {k: f"{FONT_DIR}/Lato-{v}.ttf" for k, v in
         dict(regular="Regular", bold="Bold", italic="Italic").items()}
CHART_W, CHART_H = 440, 190          # points
BAR = ["#B5532A", "#2A6FB5", "#3C8C4A", "#8A4FA3", "#C79A1E", "#4C5A66"]

_SUBJ = ["a warm red", "the cooler blue", "this different yellow", "a sufficient amount of white", "the first mixture",
         "an earthy orange", "the final layer", "a flat, unmodified green", "the complementary pair", "a reflective surface",
         "the original pigment", "a transparent glaze", "the neighbouring colour", "a confident learner"]
_VERB = ["shifts", "softens", "strengthens", "reflects", "neutralises", "influences", "clarifies", "balances",
         "deepens", "flattens", "transforms", "affects"]
_OBJ = ["the apparent temperature", "the overall effect", "a muted intermediate tone", "the saturation of its neighbour",
        "the finished surface", "an unexpectedly delicate shadow", "the relationship between value and chroma",
        "the observer's first impression", "a carefully measured proportion", "the difference between two swatches"]
_TAIL = ["when the light is diffuse", "under an office lamp", "after sufficient drying", "in a comparatively thin film",
         "before the second observation", "even if the ratio is unaltered", "because the eye compensates automatically",
         "while the palette remains limited", "without additional moisture", "as the worksheet illustrates"]
_LINK = ["However", "In practice", "For comparison", "Consequently", "At first", "Nevertheless", "Afterwards", "By contrast"]
_H1 = ["Primary Colours", "Warm and Cool", "Value and Tint", "Complementary Pairs", "Neutral Mixtures", "Observation"]
_H2 = ["What to look for", "Measured proportions", "Common difficulties"]
_HUES = ["Red", "Orange", "Yellow", "Green", "Blue", "Violet", "Ochre", "Umber", "Teal", "Magenta"]
_NOTE = ["even, flat finish", "slightly warm", "needs more white", "soft edge", "different in daylight", "fits the chart"]


def _sentence(r):
    s = f"{r.choice(_SUBJ)} {r.choice(_VERB)} {r.choice(_OBJ)} {r.choice(_TAIL)}"
    if r.random() < .4:
        s += f", and {r.choice(_SUBJ)} {r.choice(_VERB)} {r.choice(_OBJ)}"
    return (f"{r.choice(_LINK)}, {s}" if r.random() < .35 else s[0].upper() + s[1:]) + "."


def _table(r, n):
    head = ["Mix", "Base", "Added", "Ratio", "Observation"]
    rows = [[f"M{i + 1:03d}", r.choice(_HUES), r.choice(_HUES), f"{r.randint(1, 9)} : {r.randint(1, 9)}", r.choice(_NOTE)]
            for i in range(n)]
    return dict(head=head, rows=rows)


def build(scale=1, seed=2024):
    r = random.Random(seed)
    sections, forms, t = [], [], 0
    for copy in range(scale):
        for i, name in enumerate(_H1):
            subs = [dict(title=h, paras=[" ".join(_sentence(r) for _ in range(r.randint(4, 5))) for _ in range(4)])
                    for h in _H2]
            n = len(sections) + 1
            chart = dict(caption=f"Figure {n}: Mean rating for {name.lower()}", labels=_HUES[:8],
                         values=[r.randint(10, 100) for _ in range(8)])
            table = None
            if i < 5:
                t += 1
                table = _table(r, (40, 45, 50, 55, 60)[i]) | dict(caption=f"Table {t}: Trial mixtures, {name.lower()}")
            sections.append(dict(title=f"{n}. {name}", subs=subs, chart=chart, table=table))
        tag = f" {copy + 1}" if scale > 1 else ""
        # two pages: 2 x 24 blank ruled rows
        forms.append(dict(title=f"Worksheet{tag}", fields=["Name", "Group", "Date"],
                          head=["Step", "Colour A", "Colour B", "Result", "Remarks"], rows=24, pages=2))
        # each copy = 6 sections, then its worksheet
        sections[-1]["form"] = forms[-1]
    return dict(title=TITLE, lang=LANG, sections=sections)


def chart_shapes(chart):
    """('line'|'rect'|'text', ...) with y down, origin top left, units points."""
    x0, y0, w, h = 34, 8, CHART_W - 44, CHART_H - 34
    out = []
    for v in range(0, 101, 20):
        y = y0 + h - h * v / 100
        out += [("line", x0, y, x0 + w, y, "#C8CCD0"), ("text", x0 - 5, y + 3, 8, "end", str(v))]
    step = w / len(chart["values"])
    for i, (lab, v) in enumerate(zip(chart["labels"], chart["values"])):
        bh = h * v / 100
        bx = x0 + i * step + step * .18
        out += [("rect", bx, y0 + h - bh, step * .64, bh, BAR[i % len(BAR)]),
                ("text", bx + step * .32, y0 + h + 12, 8, "middle", lab),
                ("text", bx + step * .32, y0 + h - bh - 3 if v < 92 else y0 + h - bh + 9, 7, "middle", str(v))]
    out.append(("line", x0, y0 + h, x0 + w, y0 + h, "#333333"))
    return out


def chart_alt(chart):
    return chart["caption"] + ". Bars: " + ", ".join(f"{a} {b}" for a, b in zip(chart["labels"], chart["values"])) + "."


def cli(render):
    """Common main: gen_X.py OUT.pdf [SCALE] [--warm N]  (warm: N extra in-process runs, prints seconds each)."""
    import time
    argv, warm = sys.argv[1:], 0
    if "--warm" in argv:
        k = argv.index("--warm")
        warm = int(argv[k + 1])
        del argv[k:k + 2]
    out, scale = argv[0], int(argv[1]) if len(argv) > 1 else 1
    doc = build(scale)
    for i in range(1 + warm):
        if i:
            doc = build(scale, seed=2024 + i)      # fresh text, so memoised layout cannot be replayed
        t = time.perf_counter()
        render(doc, out)
        if warm:
            print(f"run {i}: {time.perf_counter() - t:.3f} s", flush=True)


if __name__ == "__main__":     # content.py [SCALE [SEED]]
    json.dump(build(*map(int, sys.argv[1:3])), sys.stdout)
