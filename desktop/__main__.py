"""`firstslip [FILES]` opens the window; `firstslip report FILES --out DIR` does the whole job without one."""

from __future__ import annotations

import argparse
import logging
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from desktop.language import spoken_in
from desktop.spoken import RUN_LANGUAGES, language_of_environment

__all__ = ["main"]


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit status."""
    arguments = list(sys.argv[1:] if argv is None else argv)
    if arguments[:1] == ["report"]:
        return _report(arguments[1:])
    return _window(arguments)


def _report(arguments: Sequence[str]) -> int:
    parser = argparse.ArgumentParser(
        prog="firstslip report",
        description="Mark pages without a window: NAME.json and NAME.png for each page, and index.html for all.",
        epilog="Marks and verdicts are a suggestion: the teacher decides.",
    )
    parser.add_argument("files", nargs="*", type=Path, metavar="FILES", help="photos, scans, PDF or InkML files")
    parser.add_argument("--out", type=Path, required=True, metavar="DIR", help="folder of the report")
    parser.add_argument(
        "--confirmed", type=Path, action="append", default=[], metavar="JSON",
        help="lines that you have confirmed: NAME.json, or a folder of them (may be given again)",
    )  # fmt: skip
    parser.add_argument("--pdf", action="store_true", help="NAME.pdf too, with the marks as annotations")
    parser.add_argument(
        "--language", choices=RUN_LANGUAGES, default=language_of_environment(),
        help="of pictures, PDF, summary and messages; that of the environment (LC_ALL, LC_MESSAGES, LANG) if left out",
    )  # fmt: skip
    parser.add_argument("--verbose", action="store_true", help="say what is done")
    options = parser.parse_intermixed_args(arguments)
    _log_to_stderr(logging.INFO if options.verbose else logging.ERROR)
    if sys.platform.startswith("linux"):
        os.environ["QT_QPA_PLATFORM"] = "offscreen"  # nothing is shown, so no display is asked for
    _keep_qt_to_its_own_plugins()
    from PySide6.QtGui import QGuiApplication

    from desktop.report import report

    application = QGuiApplication.instance() or QGuiApplication(["firstslip"])
    with spoken_in(options.language):
        status = report(
            options.files, options.out, confirmed=options.confirmed, wants_pdf=options.pdf,
            complain=lambda s: print(s, file=sys.stderr),
        )  # fmt: skip
    del application
    return status


def _window(arguments: Sequence[str]) -> int:
    parser = argparse.ArgumentParser(
        prog="firstslip",
        description="Open photos, scans, PDF or InkML files of worked algebra and find the first slip.",
        epilog="`firstslip report FILES --out DIR` does the whole job without a window.",
    )
    parser.add_argument("files", nargs="*", type=Path, metavar="FILES", help="pages to open")
    parser.add_argument("--verbose", action="store_true", help="say what is done")
    options = parser.parse_intermixed_args(arguments)
    _log_to_stderr(logging.INFO if options.verbose else logging.WARNING)
    if sys.platform.startswith("linux") and not _has_display():
        print(
            "There is no display here. Use `firstslip report FILES --out DIR` to mark pages without a window.",
            file=sys.stderr,
        )
        return 2
    _keep_qt_to_its_own_plugins()
    from desktop.application import run_window
    from desktop.fault_log import FaultLog
    from desktop.settings import log_file

    fault_log = FaultLog(log_file())
    ended_badly = fault_log.start()
    status = run_window(options.files, log_path=fault_log.path, ended_badly=ended_badly)
    fault_log.stop()
    return status


def _has_display() -> bool:
    return any(os.environ.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"))


def _keep_qt_to_its_own_plugins() -> None:
    """OpenCV points Qt at plugins of its own when it is imported; Qt must not follow."""
    for name in ("QT_QPA_PLATFORM_PLUGIN_PATH", "QT_QPA_FONTDIR"):
        os.environ.pop(name, None)


def _log_to_stderr(level: int) -> None:
    logging.basicConfig(level=level, format="%(levelname)s %(name)s: %(message)s", stream=sys.stderr)


if __name__ == "__main__":
    sys.exit(main())
