"""Wall charts as one HTML file that needs nothing else: a sheet of SVG for each, cut by CSS."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from html import escape

from weldwhy.wall.book import Book
from weldwhy.wall.page import Page
from weldwhy.wall.print import Print
from weldwhy.wall.svg import svg_page

STYLE = (
    "@page{size:A4 portrait;margin:0}"
    "body{margin:0;font:12pt/1.35 Arial,Helvetica,'Liberation Sans',sans-serif;color:#000}"
    "section{break-after:page}svg{display:block;margin:0 auto;max-width:100%;height:auto}"
    ".words{max-width:176mm;margin:0 auto;padding:17mm}"
    "h1{font-size:40pt;line-height:1.1;border-bottom:2mm solid;padding-bottom:4mm}"
    "h2{font-size:15pt;border-bottom:.5mm solid;break-after:avoid}"
    "ol{list-style:none;padding:0;columns:2;column-gap:9mm}"
    "li{break-inside:avoid;display:flex;justify-content:space-between;gap:3mm}"
    "li p{margin:0}a{color:#000;text-decoration:none}"
    "@media print{svg{width:210mm;height:297mm}}"
    "@media screen{section{border-bottom:1px dashed}}"
)


def html_pages(title: str, pages: Iterable[tuple[Page, Print]]) -> Iterator[str]:
    """The lines of a file of some pages."""
    yield from _start(title)
    yield from _sheets(pages)
    yield from ("</body>", "</html>")


def html_book(book: Book, pages: Iterable[tuple[Page, Print]]) -> Iterator[str]:
    """The lines of the book: title, how to use it, safety, contents with links, then its pages."""
    yield from _start(book.title)
    yield f'<section class="words"><h1>{escape(book.title)}</h1>'
    yield from (f"<p>{escape(line)}</p>" for line in book.about)
    for part in book.parts:
        yield f'</section><section class="words"><h2>{escape(part.title)}</h2>'
        yield from (f"<p>{escape(line)}</p>" for line in part.lines)
    yield '</section><section class="words"><h2>Contents</h2>'
    for process, entries in book.contents.items():
        yield f"<h2>{escape(process)}</h2><ol>"
        for entry in entries:
            link = f'<a href="#page-{entry.number}">{escape(entry.title)}</a>'
            yield f"<li>{link}<span>{entry.number}</span></li>"
        yield "</ol>"
    yield "</section>"
    yield from _sheets(pages)
    yield from ("</body>", "</html>")


def _start(title: str) -> Iterator[str]:
    yield from ("<!DOCTYPE html>", '<html lang="en">', "<head>", '<meta charset="utf-8">')
    yield from (f"<title>{escape(title)}</title>", f"<style>{STYLE}</style>", "</head>", "<body>")


def _sheets(pages: Iterable[tuple[Page, Print]]) -> Iterator[str]:
    for page, form in pages:
        yield f'<section id="page-{page.number}">'
        yield from svg_page(page, form)
        yield "</section>"
