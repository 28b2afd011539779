"""Training ink: what a CROHME file links, and that no test ink is ever among it."""

import json
import lzma
import random
import tarfile
from pathlib import Path

import numpy as np
import pytest

from recognition.reader import NeuralReader
from recognition.reader.tokens import is_valid
from recognition.result import Box, Candidate, Token
from recognition.training.ink_pack import resampled, stroke_shape
from recognition.training.linked_ink import Item, LinkedInk, read_linked
from recognition.training.linking import link, linked

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


@pytest.mark.skipif(not DATA.exists(), reason="the CROHME ink is not beside the checkout")
def test_the_reader_shares_out_strokes_as_the_published_links_do():
    # Source: CROHME 2013 to 2019 training part (Mouchere et al. 2014); the links of 40 files, taken away and found.
    reader, rng = NeuralReader.load(), random.Random(1)
    found, right, all_strokes = 0, 0, 0
    with tarfile.open(DATA / "train-inkml.tar.xz") as archive:
        names = sorted(name for name in archive.getnames() if name.endswith(".inkml"))[::200][:40]
        for name in names:
            file = archive.extractfile(name)
            assert file is not None
            ink = read_linked(file, rng)
            if max(ink.whole.groups) < 0:
                continue
            blank = Item(ink.whole.tokens, (-1,) * len(ink.whole.tokens))
            shared = link(LinkedInk(ink.strokes, (-1,) * len(ink.strokes), (), blank, ()), reader)
            if shared is not None:
                found += 1
                all_strokes += len(ink.strokes)
                right += sum(a == b for a, b in zip(_owners(ink), _owners(shared), strict=True))
    assert found >= 20
    assert right >= 0.98 * all_strokes


def test_strokes_that_fit_no_token_are_not_shared_out():
    tokens = ("1", "-", "7")
    drawing = ([[5, 0], [5, 40]], [[20, 20], [40, 20]], [[60, 0], [80, 40]])
    strokes = [np.array(points, np.float64) for points in drawing]
    ink = LinkedInk(tuple(s.astype(np.float32) for s in strokes), (-1,) * 3, (), Item(tokens, (-1,) * 3), ())

    def reading(*boxes: Box) -> Candidate:
        return Candidate("1 - 7", 1.0, tuple(Token(text, 1.0, box) for text, box in zip(tokens, boxes, strict=True)))

    shared = linked(ink, reading(Box(3, 0, 4, 40), Box(20, 18, 20, 4), Box(60, 0, 20, 40)), strokes)
    assert shared is not None and shared.group == (0, 1, 2) and shared.whole.groups == (0, 1, 2)
    assert linked(ink, reading(Box(3, 0, 4, 40), Box(20, 18, 20, 4), Box(90, 0, 20, 10)), strokes) is None


def _owners(ink: LinkedInk) -> list[int | None]:
    token_of = {group: token for token, group in enumerate(ink.whole.groups) if group >= 0}
    return [token_of.get(group) for group in ink.group]
