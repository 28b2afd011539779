"""Training ink: what a CROHME file links, and that no test ink is ever among it."""

import json
import lzma
import random
import tarfile
from pathlib import Path

import pytest

from recognition.reader.tokens import is_valid
from recognition.training.ink_pack import resampled, stroke_shape
from recognition.training.linked_ink import read_linked

DATA = Path(__file__).resolve().parents[3] / "shared" / "data" / "crohme"
_INK = """<ink xmlns="http://www.w3.org/2003/InkML"><annotation type="truth">$\\frac{a}{7}$</annotation>
<annotationXML type="truth"><math xmlns="http://www.w3.org/1998/Math/MathML"><mfrac xml:id="bar"><mi xml:id="a1">a</mi>
<mn xml:id="n7">7</mn></mfrac></math></annotationXML>
<trace id="0">0 0, 10 0</trace><trace id="1">2 -9, 8 -2</trace><trace id="2">2 3, 8 3, 4 9</trace>
<traceGroup xml:id="g">
{groups}</traceGroup></ink>""".replace("{groups}", "".join(
    f'<traceGroup xml:id="g{number}"><annotation type="truth">{label}</annotation>'
    f'<traceView traceDataRef="{number}"/><annotationXML href="{link}"/></traceGroup>'
    for number, (label, link) in enumerate((("-", "bar"), ("a", "a1"), ("7", "n7")))
))


def test_each_token_is_linked_to_its_strokes(tmp_path: Path):
    path = tmp_path / "one.inkml"
    path.write_text(_INK)
    ink = read_linked(path, random.Random(1))
    assert ink.whole.tokens == (r"\frac", "{", "a", "}", "{", "7", "}")
    assert ink.whole.groups == (0, -1, 1, -1, -1, 2, -1)
    assert ink.group == (0, 1, 2)


@pytest.mark.skipif(not DATA.exists(), reason="the CROHME ink is not beside the checkout")
def test_published_training_files_link_nearly_all_their_ink():
    # Source: CROHME 2013 to 2019 training part (Mouchere et al. 2014); 100 files, every 80th.
    linked = 0
    with tarfile.open(DATA / "train-inkml.tar.xz") as archive:
        for member in [member for member in archive.getmembers() if member.name.endswith(".inkml")][::80][:100]:
            file = archive.extractfile(member)
            assert file is not None
            ink = read_linked(file, random.Random(1))
            assert is_valid(ink.whole.tokens)
            linked += max(ink.whole.groups) >= 0
    assert linked >= 85


@pytest.mark.skipif(not DATA.exists(), reason="the CROHME ink is not beside the checkout")
def test_no_test_ink_is_among_the_training_ink():
    def shapes(name: str) -> list[tuple[str, str]]:
        with lzma.open(DATA / name, "rt", encoding="utf-8") as lines:
            data = [json.loads(line) for line in lines]
        # The same ink has as many points in each stroke and starts every stroke at the same place.
        return [(stroke_shape(d["strokes"]), str([stroke[:2] for stroke in d["strokes"]])) for d in data]

    training = set(shapes("train.jsonl.xz"))
    for name in ("test2013.jsonl.xz", "test2014.jsonl.xz"):
        assert not training & set(shapes(name)), name


def test_resampled_strokes_keep_their_ends_and_have_no_long_gaps():
    import numpy as np

    strokes = [np.array([(0, 0), (0, 100)], np.float32), np.array([(50, 0), (51, 0.1), (50, 100)], np.float32)]
    out = resampled(strokes)
    # Both strokes are 100 high, so the scale is 40 / 100.
    assert np.allclose(out[0][-1], (0, 40)) and np.allclose(out[1][0], (20, 0))
    assert max(float(np.hypot(*np.diff(stroke, axis=0).T).max()) for stroke in out) <= 8.01
