"""The summary of a report: one HTML page that needs nothing beside it."""

from __future__ import annotations

import base64
from collections.abc import Sequence
from html import escape

from desktop.answer_words import answer_words
from desktop.document import Document, WorkingVerdict
from desktop.language import tr
from desktop.maths import MathsError, compact, typeset
from desktop.overruled import counted_style
from desktop.wording import TEACHER_DECIDES, heading, headline, line_reason, slip_rows

__all__ = ["page_section", "summary_page"]

_STYLE = """
:root { color-scheme: light dark; --ink: #15191e; --quiet: #50565e; --paper: #ffffff; --line: #c9cdd3; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #eceff3; --quiet: #b3bac3; --paper: #1b1e22; --line: #454b53; } }
body { font: 16px/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); margin: 0 auto;
  padding: 24px; max-width: 1240px; }
h1 { font-size: 24px; margin: 0 0 4px; } h2 { font-size: 20px; margin: 40px 0 8px; border-top: 1px solid var(--line);
  padding-top: 20px; } h3 { font-size: 16px; margin: 16px 0 6px; }
p { margin: 4px 0; } .quiet { color: var(--quiet); }
.page { display: grid; grid-template-columns: minmax(0, 11fr) minmax(0, 9fr); gap: 24px; align-items: start; }
@media (max-width: 800px) { .page { grid-template-columns: 1fr; } }
.page img { width: 100%; height: auto; border: 1px solid var(--line); }
dl { display: grid; grid-template-columns: max-content 1fr; gap: 4px 16px; margin: 0; align-items: center; }
dt { color: var(--quiet); } dd { margin: 0; } svg { max-width: 100%; height: auto; vertical-align: middle; }
table { border-collapse: collapse; width: 100%; margin-top: 12px; } td, th { text-align: left; padding: 4px 12px 4px 0;
  border-bottom: 1px solid var(--line); font-weight: normal; vertical-align: top; } th { color: var(--quiet); }
a { color: inherit; }
"""


def page_section(document: Document, name: str, picture: bytes) -> str:
    """The part of the summary for one page.

    Args:
        document: the page with its verdicts.
        name: the page's name in the report.
        picture: the marked picture, as JPEG.
    """
    shown = base64.b64encode(picture).decode("ascii")
    workings = "".join(_working(document, verdict) for verdict in document.verdicts)
    alt = escape(" ".join(headline(document, verdict) for verdict in document.verdicts), quote=True)
    return (
        f'<section id="{escape(name, quote=True)}"><h2>{escape(name)}</h2><div class="page">'
        f'<img alt="{alt}" src="data:image/jpeg;base64,{shown}"><div>{workings}</div></div></section>'
    )


def summary_page(rows: Sequence[tuple[str, Document]], sections: Sequence[str], problems: Sequence[str]) -> str:
    """The whole page.

    Args:
        rows: name and document of each page; pictures are not used.
        sections: from `page_section`, in the same order.
        problems: a sentence for each file that could not be done.
    """
    table = "".join(
        f'<tr><td><a href="#{escape(name, quote=True)}">{escape(name)}</a></td>'
        f"<td>{'<br>'.join(escape(heading(document, v)) for v in document.verdicts)}</td></tr>"
        for name, document in rows
    )
    trouble = "".join(f"<p>{escape(problem)}</p>" for problem in problems)
    if trouble:
        trouble = f"<h2>{escape(tr('Not done'))}</h2>{trouble}"
    count = tr("1 page checked") if len(rows) == 1 else tr("{count} pages checked", count=len(rows))
    head = _head(tr("Page"), tr("What was found"))
    language = tr("en")
    return (
        f'<!DOCTYPE html><html lang="{language}"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>Firstslip: {count}</title><style>{_STYLE}</style></head><body><h1>{count}</h1>"
        f'<p class="quiet">{escape(tr(TEACHER_DECIDES))}</p><table><tr>{head}</tr>{table}'
        f"</table>{trouble}{''.join(sections)}</body></html>\n"
    )


def _working(document: Document, verdict: WorkingVerdict) -> str:
    rows = slip_rows(document, verdict)
    card = "".join(
        f"<dt>{escape(row.label)}</dt><dd>{_maths(row.latex) if row.latex else escape(row.text)}</dd>" for row in rows
    )
    lines = []
    for place, index in enumerate(verdict.lines):
        style = counted_style(document, index)
        word = "" if style is None else style.word
        is_in_card = place == verdict.report.first_slip and document.lines[index].override is None
        reason = "" if is_in_card else line_reason(document, index)
        tail = f'<br><span class="quiet">{escape(reason)}</span>' if reason else ""
        lines.append(
            f"<tr><td>{index + 1}</td><td>{_maths(document.lines[index].latex)}</td><td>{escape(word)}{tail}</td></tr>"
        )
    head = _head(tr("Line"), tr("Reading"), tr("Verdict"))
    told = answer_words(document, verdict)
    answer = f"<p><b>{escape(tr('Answer'))}:</b> {escape(told)}</p>" if told else ""
    return (
        f"<h3>{escape(heading(document, verdict))}</h3>"
        f"{f'<dl>{card}</dl>' if card else ''}"
        f"<table><tr>{head}</tr>{''.join(lines)}</table>{answer}"
    )


def _head(*words: str) -> str:
    return "".join(f"<th>{escape(word)}</th>" for word in words)


def _maths(latex: str) -> str:
    try:
        maths = typeset(latex, size=20, colour="currentColor")
    except MathsError:
        return f"<code>{escape(compact(latex))}</code>"
    return f'<span role="img" aria-label="{escape(compact(latex), quote=True)}">{maths.svg}</span>'
