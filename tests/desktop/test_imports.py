"""What may be imported without what."""

import subprocess
import sys

import pytest

QT_FREE = [
    "checker", "recognition", "desktop.document", "desktop.desk_line", "desktop.line_changes",
    "desktop.page_changes", "desktop.codec", "desktop.store",
    "desktop.store_schema", "desktop.store_faults", "desktop.workings", "desktop.pipeline", "desktop.places",
    "desktop.reading", "desktop.confirmed", "desktop.page_json", "desktop.page_names", "desktop.maths",
    "desktop.wording", "desktop.verdict_style", "desktop.summary_page", "desktop.whole_file",
    "desktop.checker_process", "desktop.reader_process", "desktop.class_set", "desktop.language", "desktop.sentences",
    "desktop.translations.catalogue", "desktop.pdf_objects", "desktop.fault_log", "desktop.__main__",
]  # fmt: skip


@pytest.mark.parametrize("module", QT_FREE)
def test_module_is_imported_without_qt(module):
    code = f"import sys, {module}; sys.exit('PySide6' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_qt_keeps_its_own_plugins_after_recognition_is_imported():
    code = (
        "import os, recognition.read, sys;"
        "sys.exit(any(n in os.environ for n in ('QT_QPA_PLATFORM_PLUGIN_PATH', 'QT_QPA_FONTDIR')))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
