#!/usr/bin/env python3
"""Whether the words on printed pages can be read: checked on the PDF, as another program sees it.

    word_boxes.py PROGRAM LANGUAGE CASE...

Makes every kind of page of every case, on both papers, and looks at each word with poppler's
pdftotext: no word may lie on another, none may leave the margins, and none may be set smaller than
8 point. Prints each fault; exit status 1 then. Every page must hold words, or nothing was checked.
"""
import itertools
import pathlib
import re
import subprocess
import sys
import tempfile

MARGIN_PT = 12 / 25.4 * 72 - 0.5  # of core/report/paper.h, less the drawing of a glyph beyond its box
SMALLEST_PT = 8 * 0.98
# Two boxes of pdftotext reach from ascent to descent of the font: lines that stand close share some
# of that, and letters none of it.
SHARED_HEIGHT = 0.45
SHARED_WIDTH_PT = 1.0

KINDS = [["pages", "--kinds", "plan,record,labels,what-to-do,teaching,solution"],
         ["templates", "--mirrored"]]
PAGE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', re.S)
WORD = re.compile(r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">'
                  r'(.*?)</word>')
FONT_HEIGHT = 1.164  # ascent and descent of DejaVu Sans, in sizes


def words_of(pdf):
    """Pages of a PDF: width, height, [(left, top, right, bottom, word)] in points."""
    text = subprocess.run(["pdftotext", "-bbox", str(pdf), "-"], check=True, capture_output=True,
                          text=True).stdout
    for width, height, inside in PAGE.findall(text):
        boxes = [(*map(float, word[:4]), word[4]) for word in WORD.findall(inside)]
        yield float(width), float(height), boxes


def upright(box):
    """A turned word's box says nothing of its size."""
    left, top, right, bottom, word = box
    return len(word) < 3 or right - left > bottom - top


def overlap(a, b):
    width = min(a[2], b[2]) - max(a[0], b[0])
    height = min(a[3], b[3]) - max(a[1], b[1])
    least = min(a[3] - a[1], b[3] - b[1])
    return width > SHARED_WIDTH_PT and height > SHARED_HEIGHT * least


def faults_on(width, height, boxes):
    for box in boxes:
        left, top, right, bottom, word = box
        if left < MARGIN_PT - 1 or right > width - MARGIN_PT + 1 or top < 0 or bottom > height:
            yield f"leaves the page's margins: {word}"
        if upright(box) and (bottom - top) / FONT_HEIGHT < SMALLEST_PT:
            yield f"is set in {(bottom - top) / FONT_HEIGHT:.1f} point: {word}"
    for a, b in itertools.combinations(boxes, 2):
        if overlap(a, b):
            yield f"lie on each other: {a[4]} and {b[4]}"


def check(program, language, case, kind, paper, folder):
    pdf = folder / "pages.pdf"
    subprocess.run([program, kind[0], case, *kind[1:], "--language", language, "--paper", paper,
                    "--today", "2031-03-02", "--pdf", str(pdf)], check=True)
    faults, pages = [], list(words_of(pdf))
    for number, (width, height, boxes) in enumerate(pages, 1):
        found = list(faults_on(width, height, boxes)) if boxes else ["holds no words"]
        faults += [f"{case}, {' '.join(kind)}, {paper}, page {number}: {fault}" for fault in found]
    return len(pages), faults or ([] if pages else [f"{case}: no page"])


def main(program, language, *cases):
    pages, faults = 0, []
    with tempfile.TemporaryDirectory() as folder:
        for case, kind, paper in itertools.product(cases, KINDS, ("a4", "letter")):
            made, found = check(program, language, case, kind, paper, pathlib.Path(folder))
            pages += made
            faults += found
    print("\n".join(faults + [f"{pages} pages, {len(faults)} faults"]))
    return 1 if faults or not cases else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
