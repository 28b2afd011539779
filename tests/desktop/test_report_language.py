"""`firstslip report` in the language that is chosen, without a window; its JSON stays as other programs know it."""

import json
import os
import subprocess
import sys

import pytest

from desktop.language import has_decimal_comma, spoken_in, tr
from desktop.sentences import in_language
from desktop.spoken import language_of_environment
from tests.desktop.samples import ROOT, sample

_WITHOUT_QT = """
import sys
sys.modules["PySide6"] = None
from desktop.language import spoken_in, tr, with_comma
from desktop.sentences import in_language
with spoken_in("de"):
    print(tr("Why"), in_language("-2t times +4 is -8t"), with_comma("2.5"), sep="|")
print(tr("Why"), in_language("-2t times +4 is -8t"), with_comma("2.5"), sep="|")
"""


@pytest.mark.parametrize(
    ("environment", "language"),
    [
        ({}, "en"),
        ({"LANG": "de_DE.UTF-8"}, "de"),
        ({"LANG": "de"}, "de"),
        ({"LANG": "de_AT@euro"}, "de"),
        ({"LANG": "C.UTF-8"}, "en"),
        ({"LANG": "fr_FR.UTF-8"}, "en"),
        ({"LANG": "de_DE.UTF-8", "LC_ALL": "C"}, "en"),
        ({"LANG": "en_GB", "LC_MESSAGES": "de_CH.UTF-8", "LC_ALL": ""}, "de"),
    ],
)
def test_language_is_that_of_the_environment(environment, language):
    """POSIX.1-2017, Base Definitions, 8.2."""
    assert language_of_environment(environment) == language


def test_sentences_are_told_without_qt():
    ran = subprocess.run([sys.executable, "-c", _WITHOUT_QT], capture_output=True, text=True, check=True, cwd=ROOT)
    german, english = ran.stdout.splitlines()
    assert german == "Warum|-2t mal +4 ist -8t|2,5"
    assert english == "Why|-2t times +4 is -8t|2.5"


def test_language_ends_with_its_block_and_stands_above_that_of_qt(german):
    assert tr("Why") == "Warum"
    with spoken_in("en"):
        assert (tr("Why"), has_decimal_comma()) == ("Why", False)
        assert in_language("-2t times +4 is -8t") == "-2t times +4 is -8t"
    assert tr("Why") == "Warum"


def run(out, *arguments, **environment):
    names = {name: value for name, value in os.environ.items() if name not in ("LC_ALL", "LC_MESSAGES", "LANG")}
    command = [sys.executable, "-m", "desktop", "report", *map(str, arguments), "--out", str(out)]
    return subprocess.run(
        command, capture_output=True, text=True, encoding="utf-8", cwd=ROOT, check=False, timeout=120,
        env={**names, **environment, "PYTHONIOENCODING": "utf-8"},
    )  # fmt: skip


def test_report_speaks_the_language_and_its_json_the_contract(tmp_path):
    page = sample("candidate-4118.jpg")
    results = {
        "flag": run(tmp_path / "flag", page, tmp_path / "none.jpg", "--language", "de", LANG="en_GB.UTF-8"),
        "environment": run(tmp_path / "environment", page, LANG="de_DE.UTF-8"),
        "english": run(tmp_path / "english", page, "--language", "en", LANG="de_DE.UTF-8"),
    }
    assert "Es gibt keine Datei none.jpg." in results["flag"].stderr
    told = {name: (tmp_path / name / "index.html").read_text(encoding="utf-8") for name in results}
    for name in ("flag", "environment"):
        assert '<html lang="de">' in told[name] and "1 Seite durchgesehen" in told[name]
        assert "die Lehrkraft entscheidet" in told[name] and "Erster Fehler: Zeile 3." in told[name]
        for word in ("First slip", "Reading", "Verdict", "What was found", "follows"):
            assert word not in told[name]
    assert '<html lang="en">' in told["english"] and "First slip: line 3." in told["english"]
    texts = [json.loads((tmp_path / name / "candidate-4118.json").read_text(encoding="utf-8")) for name in results]
    assert texts[0] == texts[1] == texts[2]
    pictures = [(tmp_path / name / "candidate-4118.png").read_bytes() for name in results]
    assert pictures[0] == pictures[1] != pictures[2]


def test_other_languages_are_refused(tmp_path):
    result = run(tmp_path / "out", "--language", "fr")
    assert result.returncode == 2 and "--language" in result.stderr
