"""The measure of a line's time counts what it says."""

import json

import numpy as np

from recognition.evaluate import DrawnStrokes
from recognition.reader.weights import load_weights
from recognition.training.line_speed import TimedNetwork, line_times, main

MINUS = DrawnStrokes((np.array([[0.0, 10], [40, 10]]),))


def test_stages_are_parts_of_the_whole_and_calls_and_rows_are_counted_by_line():
    network = TimedNetwork(load_weights(), threads=1)
    first, second = line_times([MINUS, MINUS], network)
    for spent in (first, second):
        assert spent.encoder > 0 and spent.decoder > 0
        assert spent.picture + spent.encoder + spent.decoder < spent.whole
    # The same line takes the same calls; each of them gives the decoder a token or more.
    assert (first.calls, first.rows) == (second.calls, second.rows) and 2 <= first.calls <= first.rows


def test_one_object_is_printed(tmp_path, capsys):
    data = tmp_path / "lines.jsonl"
    data.write_text(json.dumps({"latex": "-", "strokes": [[[0, 10], [40, 10]]]}) + "\n")
    assert main([str(data), "--threads", "1", "--routes", "ink"]) == 0
    report = json.loads(capsys.readouterr().out)
    assert report["ink"]["lines"] == 1 and report["ink"]["ms_a_line"]["p50"] > 0 and report["peak_memory_mb"] > 50
