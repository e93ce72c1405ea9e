"""Makes the report's fonts from Open Sans 1.11 and DejaVu 2.37 (Debian packages fonts-open-sans, fonts-dejavu-core).

Usage: python3 make_fonts.py OPEN_SANS_FOLDER DEJAVU_FOLDER OUTPUT_FOLDER        (fontTools 4.38)

Open Sans has the letters and digits; the symbols it lacks come from DejaVu Sans Condensed (both 2048 units an em), so
that one font draws every character of a line. The result is renamed, as the DejaVu licence asks, and has neither
hints nor kerning: PDFsharp and Skia use neither, and the files are embedded whole in every report.
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

CHARACTERS = (
    {c for c in range(0x20, 0x7F)}
    | {c for c in range(0xA0, 0x180)}  # Latin-1 and Latin Extended-A
    | {0x218, 0x219, 0x21A, 0x21B, 0x1E9E}  # Romanian, capital sharp s
    | {ord(c) for c in "ΑΒΓΔΘΛΞΠΣΦΨΩαβγδεζηθικλμνξοπρσςτυφχψω"}
    | {ord(c) for c in "‐‑‒–—―‘’‚“”„†‡•…‰′″‹›⁄€№℃™"}
    | {ord(c) for c in "⁰ⁱ⁴⁵⁶⁷⁸⁹⁺⁻⁼⁽⁾ⁿ₀₁₂₃₄₅₆₇₈₉₊₋"}
    | {ord(c) for c in "←↑→↓↔⇒∂∆∏∑−∓∙√∞∫≈≠≡≤≥≪≫∈∩∪±×÷∝∼⌈⌉⌊⌋"}
    | {ord(c) for c in "✓✗□■○●◇◆△▲▽▼▷▶◊☐☑"}
    | {0x2002, 0x2003, 0x2007, 0x2009, 0x200A, 0x202F}  # spaces of fixed width
)

FONTS = [
    ("ReportSans-Regular", "open-sans/OpenSans-Regular.ttf", "dejavu/DejaVuSansCondensed.ttf", "Report Sans", "Regular"),
    ("ReportSans-Semibold", "open-sans/OpenSans-Semibold.ttf", "dejavu/DejaVuSansCondensed-Bold.ttf", "Report Sans", "Bold"),
    ("ReportSans-Italic", "open-sans/OpenSans-Italic.ttf", "dejavu/DejaVuSansCondensed-Oblique.ttf", "Report Sans", "Italic"),
    ("ReportMono-Regular", "dejavu/DejaVuSansMono.ttf", "dejavu/DejaVuSansMono.ttf", "Report Mono", "Regular"),
]


def reduced(path):
    options = subset.Options()
    options.hinting = False
    options.layout_features = []
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "kern", "DSIG", "FFTM", "gasp"]
    options.name_IDs = []
    options.notdef_outline = True
    options.recalc_timestamp = False
    font = subset.load_font(str(path), options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=CHARACTERS)
    subsetter.subset(font)
    return font


def add_missing(font, other):
    have = font.getBestCmap()
    source = other.getGlyphSet()
    names = other.getBestCmap()
    for code in sorted(CHARACTERS - set(have)):
        if code not in names:
            continue
        recording = DecomposingRecordingPen(source)
        source[names[code]].draw(recording)
        pen = TTGlyphPen(None)
        recording.replay(pen)
        name = f"uni{code:04X}"
        font["glyf"][name] = pen.glyph()
        font["hmtx"][name] = (other["hmtx"][names[code]][0], 0)
        font["glyf"][name].recalcBounds(font["glyf"])
        font["hmtx"][name] = (font["hmtx"][name][0], getattr(font["glyf"][name], "xMin", 0))
        for table in font["cmap"].tables:
            if table.isUnicode() and table.format in (4, 12):
                table.cmap[code] = name
    font.setGlyphOrder(font["glyf"].glyphOrder)
    font["maxp"].numGlyphs = len(font.getGlyphOrder())


def rename(font, file_name, family, style):
    table = font["name"]
    table.names = []
    notice = (
        "Modified from Open Sans (c) 2010-2011 Google Corporation, Apache License 2.0, and DejaVu, "
        "(c) 2003 Bitstream, Inc.; see the licence files beside this font"
    )
    for identifier, text in [(0, notice), (1, family), (2, style), (3, file_name), (4, f"{family} {style}"), (5, "Version 1.0"), (6, file_name)]:
        table.setName(text, identifier, 3, 1, 0x409)


def main(open_sans, dejavu, output):
    folders = {"open-sans": Path(open_sans), "dejavu": Path(dejavu)}
    for file_name, base, symbols, family, style in FONTS:
        paths = [folders[p.split("/")[0]] / p.split("/")[1] for p in (base, symbols)]
        font = reduced(paths[0])
        if paths[0] != paths[1]:
            add_missing(font, TTFont(str(paths[1])))
        rename(font, file_name, family, style)
        font["OS/2"].usWeightClass = 700 if style == "Bold" else 400
        font["OS/2"].fsSelection = {"Bold": 0x20, "Italic": 0x01}.get(style, 0x40)
        font["head"].macStyle = {"Bold": 1, "Italic": 2}.get(style, 0)
        font["OS/2"].fsType = 0
        font["head"].modified = font["head"].created
        font.recalcTimestamp = False
        missing = sorted(CHARACTERS - set(font.getBestCmap()))
        font.save(str(Path(output) / f"{file_name}.ttf"))
        print(file_name, "lacks", "".join(chr(c) for c in missing) or "nothing")


main(*sys.argv[1:])
