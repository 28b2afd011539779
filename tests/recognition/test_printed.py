"""The second engine for printed lines: its protocol with a worker of our own, and the real package where it is."""

import json
import os
import sys
import time
from pathlib import Path

import cv2
import numpy as np
import pytest

from recognition.__main__ import main
from recognition.errors import Cancelled, InputError
from recognition.page import LineCrop
from recognition.printed import PrintedReader, PrintedSettings
from recognition.result import Box, Candidate
from recognition.training.printed_speed import milliseconds

STUB = r"""
import base64, json, sys, time
first = json.loads(sys.stdin.readline())
MODE = MODE_HERE
if MODE == "missing":
    print(json.dumps({"ready": False, "missing": "pix2tex", "error": "No module named 'pix2tex'"})); sys.exit(1)
if MODE == "bad weights":
    print(json.dumps({"ready": False, "missing": None, "error": "RuntimeError: size mismatch"})); sys.exit(1)
if MODE == "silent":
    time.sleep(60)
if MODE == "dies":
    sys.exit(3)
if MODE == "chatter":
    print("loading...", flush=True)
print(json.dumps({"ready": True, "engine": "stub 1 " + json.dumps(first)}), flush=True)
for line in sys.stdin:
    asked = json.loads(line)
    if MODE == "stops":
        sys.exit(0)
    if MODE == "cannot":
        print(json.dumps({"id": asked["id"], "error": "ValueError: no"}), flush=True); continue
    size = len(base64.b64decode(asked["png"]))
    assert size > 50
    answer = {"plain": {"latex": r"\frac{x}{2}\leq 3", "probability": 0.5},
              "odd": {"latex": r"\mathcal{L}  (f)", "probability": 7},
              "empty": {"latex": "", "probability": 0.1}, "wrong kind": {"latex": 3, "probability": 0.1}}.get(MODE)
    print(json.dumps({"id": asked["id"], **(answer or {})}), flush=True)
"""


@pytest.fixture
def settings(tmp_path, monkeypatch):
    """Settings whose worker is the stub in a given mode; the three files are there but never looked into."""

    def make(mode, **options):
        worker = tmp_path / "stub.py"
        worker.write_text(STUB.replace("MODE_HERE", repr(mode)))
        monkeypatch.setattr("recognition.printed.reader._WORKER", worker)
        files = {name: tmp_path / name for name in ("checkpoint", "config", "tokenizer")}
        for file in files.values():
            file.touch()
        return PrintedSettings(python=Path(sys.executable), **files, **options)

    return make


def _crop():
    picture = np.full((60, 200), 255, np.uint8)
    cv2.putText(picture, "x/2", (20, 45), cv2.FONT_HERSHEY_SIMPLEX, 1.2, 0, 2)
    return LineCrop(picture, Box(0, 0, 200, 60), (), np.eye(3))


class _Strokes:
    strokes = (np.array([[0.0, 0.0], [30.0, 40.0]]), np.array([[30.0, 0.0], [0.0, 40.0]]))
    to_original = np.eye(3)


def test_lines_go_out_and_canonical_readings_come_back(settings):
    told = []
    with PrintedReader(settings("plain")) as reader:
        read = reader.read([_crop(), _Strokes()], tick=lambda done, total: told.append((done, total)))
        assert read == [(Candidate(r"\frac { x } { 2 } \le 3", 0.5),)] * 2
        assert json.loads(reader.engine.removeprefix("stub 1 "))["threads"] == 2
    assert told == [(0, 2), (1, 2), (2, 2)]


def test_a_picture_without_ink_is_not_sent(settings):
    blank = LineCrop(np.full((60, 200), 255, np.uint8), Box(0, 0, 200, 60), (), np.eye(3))
    reader = PrintedReader(settings("dies"))
    assert reader.read([blank]) == [()]


def test_tokens_that_we_do_not_know_stay_as_they_are(settings):
    with PrintedReader(settings("odd")) as reader:
        assert reader.read([_crop()]) == [(Candidate(r"\mathcal{L} (f)", 1.0),)]
    with PrintedReader(settings("empty")) as reader:
        assert reader.read([_crop()]) == [()]


@pytest.mark.parametrize(
    ("mode", "sentence"),
    [
        ("missing", "needs the package pix2tex, which is not installed there. Make an environment"),
        ("bad weights", "cannot load its weights. See that checkpoint"),
        ("dies", "ended by itself"),
        ("stops", "ended by itself"),
        ("cannot", "could not read a line"),
        ("chatter", "does not speak as pix2tex does"),
        ("wrong kind", "does not speak as pix2tex does"),
        ("unknown", "does not speak as pix2tex does"),
    ],
)
def test_what_goes_wrong_is_one_sentence(settings, mode, sentence):
    with PrintedReader(settings(mode)) as reader, pytest.raises(InputError, match=sentence):
        reader.read([_crop()])


def test_an_engine_that_is_silent_is_stopped(settings):
    reader = PrintedReader(settings("silent", start_s=0.4))
    start = time.perf_counter()
    with pytest.raises(InputError, match=r"no answer in 0\.4 seconds"):
        reader.read([_crop()])
    assert time.perf_counter() - start < 10
    assert reader._process is None


def test_it_starts_anew_after_it_was_stopped(settings):
    reader = PrintedReader(settings("plain"))
    first = reader.read([_crop()])
    process = reader._process
    process.kill()
    process.wait()
    assert reader.read([_crop()]) == first
    reader.close()
    reader.close()


def test_stopping_between_lines(settings):
    def tick(done, total):
        if done == 1:
            raise Cancelled

    with PrintedReader(settings("plain")) as reader, pytest.raises(Cancelled):
        reader.read([_crop()] * 3, tick=tick)


def test_files_are_looked_for_first(tmp_path):
    with pytest.raises(InputError, match=r"Python .* is not there"):
        PrintedReader(PrintedSettings(tmp_path / "python"))
    here = Path(sys.executable)
    with pytest.raises(InputError, match="name no checkpoint and no config and no tokenizer"):
        PrintedReader(PrintedSettings(here))
    with pytest.raises(InputError, match=r"checkpoint .* is not there"):
        PrintedReader(PrintedSettings(here, tmp_path / "a", tmp_path / "b", tmp_path / "c"))
    PrintedReader(PrintedSettings(here, download=True))  # nothing starts before a line is read


def test_settings_from_a_file(tmp_path):
    file = tmp_path / "engine.json"
    given = {
        "python": "env/bin/python",
        "checkpoint": "w.pth",
        "config": "/etc/c.yaml",
        "tokenizer": "t.json",
        "line_s": 9,
    }
    file.write_text(json.dumps(given))
    read = PrintedSettings.from_file(file)
    assert (read.python, read.config, read.line_s) == (tmp_path / "env/bin/python", Path("/etc/c.yaml"), 9)
    for bad, sentence in (
        ("{", "cannot be read"), ("[]", "is no settings"), ('{"checkpoint": "x"}', "is no settings"),
        ('{"python": "p", "speed": 2}', "is no settings"), ('{"python": 3}', "wrong kind"),
        ('{"python": "p", "threads": true}', "wrong kind"), ('{"python": "p", "threads": 0}', "positive"),
        ('{"python": "p", "download": "no"}', "wrong kind"),
    ):  # fmt: skip
        file.write_text(bad)
        with pytest.raises(InputError, match=sentence):
            PrintedSettings.from_file(file)
    with pytest.raises(InputError, match="cannot be read"):
        PrintedSettings.from_file(tmp_path / "none.json")


def test_command_reads_a_line_with_it(settings, tmp_path, capsys):
    made = settings("plain")
    names = ("python", "checkpoint", "config", "tokenizer")
    (tmp_path / "engine.json").write_text(json.dumps({name: str(getattr(made, name)) for name in names}))
    cv2.imwrite(str(tmp_path / "line.png"), _crop().image)
    assert main(["read", "--line", str(tmp_path / "line.png"), "--printed", str(tmp_path / "engine.json")]) == 0
    (line,) = json.loads(capsys.readouterr().out)["lines"]
    assert line["candidates"] == [{"latex": r"\frac { x } { 2 } \le 3", "probability": 0.5, "tokens": []}]
    assert main(["read", "--line", str(tmp_path / "line.png"), "--printed", str(tmp_path / "no.json")]) == 2
    assert "cannot be read" in capsys.readouterr().err


def test_both_are_timed_on_the_same_lines(settings):
    with PrintedReader(settings("plain")) as one, PrintedReader(settings("plain")) as other:
        times = milliseconds([_crop(), _crop(), _crop()], (one, other))
    assert [len(each) for each in times] == [3, 3]
    assert all(spent > 0 for each in times for spent in each)


MAKE_MODEL = r"""
import sys, os, yaml, torch, pix2tex
from munch import Munch
from pix2tex.models import get_model
from pix2tex.utils import parse_args
home = os.path.join(os.path.dirname(pix2tex.__file__), "model")
params = yaml.safe_load(open(os.path.join(home, "settings", "config.yaml")))
params.update(dim=32, heads=2, num_layers=1, encoder_depth=1, backbone_layers=[1, 1, 1], max_seq_len=12, num_tokens=500)
folder = sys.argv[1]
torch.manual_seed(5)
args = parse_args(Munch(params), no_cuda=True)
args.wandb = False
weights = get_model(args).state_dict()
weights["decoder.net.to_logits.bias"][:3] = -50.0  # never says that it ends, so that it says something
torch.save(weights, os.path.join(folder, "weights.pth"))
yaml.safe_dump(params, open(os.path.join(folder, "config.yaml"), "w"))
print(os.path.join(home, "dataset", "tokenizer.json"))
"""


@pytest.mark.slow
def test_real_package_with_random_weights(tmp_path):
    """The protocol only: a small network of the package's own class with random weights says nothing of accuracy.

    Source: pix2tex (PyPI), run from FIRSTSLIP_PIX2TEX_PYTHON, the Python of an environment that holds it.
    """
    python = os.environ.get("FIRSTSLIP_PIX2TEX_PYTHON")
    if not python or not Path(python).is_file():
        pytest.skip("FIRSTSLIP_PIX2TEX_PYTHON names no Python with pix2tex")
    import subprocess

    made = subprocess.run(
        [python, "-I", "-c", MAKE_MODEL, str(tmp_path)], capture_output=True, text=True, check=True, timeout=300
    )
    tokenizer = Path(made.stdout.split()[-1])
    settings = PrintedSettings(Path(python), tmp_path / "weights.pth", tmp_path / "config.yaml", tokenizer)
    with PrintedReader(settings) as reader:
        (one,), (two,) = reader.read([_crop(), _crop()])
        assert reader.engine.startswith("pix2tex ")
    assert one == two and one.latex and 0 <= one.probability <= 1
    with PrintedReader(settings) as reader:
        assert reader.read([_crop()])[0][0] == one  # a new process says the same
    damaged = PrintedSettings(Path(python), tmp_path / "config.yaml", tmp_path / "config.yaml", tokenizer)
    with PrintedReader(damaged) as reader, pytest.raises(InputError, match="cannot load its weights"):
        reader.read([_crop()])
