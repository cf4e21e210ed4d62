"""How were the four font files made? From the two OFL variable fonts that the workspace installs, once, by hand.

Run from the root of the project:  python3 drawing/fonts/make-fonts.py
Needs the packages fonttools and brotli; nothing at run time needs this file.
For each family: pin the weight axis, join the latin and latin-ext subsets, rename, write a TTF.
"""
from pathlib import Path
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer
from fontTools.merge import Merger

ROOT = Path("node_modules/@fontsource-variable")
OUT = Path("drawing/fonts")
FACES = [
    ("national-park", "Coldset Letter", "ColdsetLetter", 500, "Medium"),
    ("national-park", "Coldset Letter", "ColdsetLetter", 700, "Bold"),
    ("atkinson-hyperlegible-next", "Coldset Read", "ColdsetRead", 400, "Regular"),
    ("atkinson-hyperlegible-next", "Coldset Read", "ColdsetRead", 700, "Bold"),
]
FIXED_TIME = 3786912000  # 2024-01-01 in the font's own clock, so that two runs give the same bytes


def static(package: str, subset: str, weight: int) -> TTFont:
    font = TTFont(ROOT / package / "files" / f"{package}-{subset}-wght-normal.woff2", recalcTimestamp=False)
    font = instancer.instantiateVariableFont(font, {"wght": weight})
    for table in ("STAT", "GSUB", "GDEF", "gasp", "prep"):
        if table in font:
            del font[table]
    if subset != "latin" and "GPOS" in font:
        del font["GPOS"]
    font.flavor = None
    return font


def name(font: TTFont, family: str, ps: str, style: str, weight: int) -> None:
    table = font["name"]
    licence = {n: table.getDebugName(n) for n in (0, 13, 14)}
    table.names = []
    bold = style == "Bold"
    entries = {
        0: licence[0],
        1: family if style in ("Regular", "Bold") else f"{family} {style}",
        2: "Bold" if bold else "Regular",
        3: f"{ps}-{style}",
        4: f"{family} {style}",
        5: "Version 1.000",
        6: f"{ps}-{style}",
        13: licence[13] or "This Font Software is licensed under the SIL Open Font License, Version 1.1.",
        14: licence[14] or "https://openfontlicense.org",
        16: family,
        17: style,
    }
    for key, value in entries.items():
        if value:
            table.setName(value, key, 3, 1, 0x409)
    font["OS/2"].usWeightClass = weight
    font["OS/2"].fsSelection = (font["OS/2"].fsSelection & ~0x61) | (0x20 if bold else 0x40)
    font["head"].macStyle = 1 if bold else 0
    font["head"].created = font["head"].modified = FIXED_TIME


for package, family, ps, weight, style in FACES:
    pieces = []
    for subset in ("latin", "latin-ext"):
        piece = OUT / f".{ps}-{style}-{subset}.ttf"
        static(package, subset, weight).save(piece)
        pieces.append(str(piece))
    licence = TTFont(pieces[0])["name"]
    merged = Merger().merge(pieces)
    merged["name"] = licence
    name(merged, family, ps, style, weight)
    merged.recalcTimestamp = False
    merged.save(OUT / f"{ps}-{style}.ttf")
    for piece in pieces:
        Path(piece).unlink()
    print(ps, style, len(merged.getBestCmap()))
