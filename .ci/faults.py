#!/usr/bin/env python3
"""Puts one fault into a good PDF, so that a check can show that it bites.

    faults.py GOOD.pdf FOLDER

Writes FOLDER/<fault>.pdf for each fault, and prints "<fault> <checker>" with the checker that
has to refuse it.
"""
import sys
from pathlib import Path

import pikepdf
from pikepdf import Array, Dictionary, Name


def elements(pdf):
    """All structure elements, the root's child first."""
    waiting = [pdf.Root.StructTreeRoot.K]
    while waiting:
        element = waiting.pop()
        if isinstance(element, Array):
            waiting.extend(element)
        elif isinstance(element, Dictionary) and "/S" in element:
            yield element
            if "/K" in element:
                waiting.append(element.K)


def drop(element, key):
    if key in element:
        del element[key]


def of_kind(pdf, kind):
    return [element for element in elements(pdf) if element.S == Name(kind)]


def without_words_for_figures(pdf):
    for figure in of_kind(pdf, "/Figure"):
        drop(figure, "/Alt")


def without_words_for_fields(pdf):
    for page in pdf.pages:
        for touched in page.obj.get("/Annots", []):
            drop(touched, "/TU")


def without_language(pdf):
    del pdf.Root.Lang


def without_claim(pdf):
    del pdf.Root.Metadata


def without_tags(pdf):
    del pdf.Root.StructTreeRoot
    del pdf.Root.MarkInfo


def without_tab_order(pdf):
    for page in pdf.pages:
        drop(page.obj, "/Tabs")


def with_an_unknown_kind(pdf):
    of_kind(pdf, "/P")[0].S = Name("/Verse")


def with_a_level_skipped(pdf):
    of_kind(pdf, "/H2")[0].S = Name("/H5")


def without_scope(pdf):
    for head in of_kind(pdf, "/TH"):
        drop(head, "/A")


def with_heads_as_data(pdf):
    for head in of_kind(pdf, "/TH"):
        head.S = Name("/TD")
        drop(head, "/A")


FAULTS = {
    "without-words-for-figures": (without_words_for_figures, "outloud"),
    "without-words-for-fields": (without_words_for_fields, "outloud"),
    "without-language": (without_language, "outloud"),
    "without-claim": (without_claim, "outloud"),
    "without-tags": (without_tags, "outloud"),
    "without-tab-order": (without_tab_order, "outloud"),
    "with-an-unknown-kind": (with_an_unknown_kind, "outloud"),
    "with-a-level-skipped": (with_a_level_skipped, "outloud"),
    "without-scope": (without_scope, "pdfua"),
    "with-heads-as-data": (with_heads_as_data, "pdfua"),
}

good, folder = Path(sys.argv[1]), Path(sys.argv[2])
folder.mkdir(parents=True, exist_ok=True)
for name, (put, checker) in FAULTS.items():
    with pikepdf.open(good) as pdf:
        put(pdf)
        pdf.save(folder / f"{name}.pdf")
    print(name, checker)
