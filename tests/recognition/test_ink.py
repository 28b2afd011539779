"""Ink in and out, and lines from strokes."""

import tarfile
import time
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from recognition.errors import InputError
from recognition.ink import (
    Ink,
    Stroke,
    StrokeGroup,
    ink_from_inkml,
    inkml_from_ink,
    read_inkml,
    render_page,
    strokes_to_lines,
    write_inkml,
)
from tests.recognition.test_tokens import DATA

HEAD = '<ink xmlns="http://www.w3.org/2003/InkML">'


def _assert_same(one: Ink, other: Ink) -> None:
    assert (one.unit, one.groups, one.notes) == (other.unit, other.groups, other.notes)
    assert len(one.strokes) == len(other.strokes)
    for a, b in zip(one.strokes, other.strokes, strict=True):
        np.testing.assert_array_equal(a.points, b.points)
        for mine, theirs in ((a.time, b.time), (a.pressure, b.pressure)):
            assert (mine is None) == (theirs is None)
            if mine is not None:
                np.testing.assert_array_equal(mine, theirs)


_number = st.floats(-1e6, 1e6, allow_nan=False).map(lambda value: value + 0.0)  # no minus zero
_points = st.integers(1, 6).flatmap(lambda n: hnp.arrays(np.float64, (n, 2), elements=_number))


@st.composite
def _strokes(draw):
    points = draw(_points)
    channel = hnp.arrays(np.float64, (len(points),), elements=_number)
    return Stroke(points, draw(st.none() | channel), draw(st.none() | channel))


@settings(max_examples=80, deadline=None)
@given(
    st.lists(_strokes(), min_size=1, max_size=5),
    st.sampled_from(["dev", "mm", "pt"]),
    st.text(st.characters(codec="utf-8", exclude_categories=["C"]), max_size=20).map(str.strip),
)
def test_ink_comes_back_from_its_inkml_to_the_last_bit(strokes, unit, note):
    ink = Ink(tuple(strokes), unit, (StrokeGroup((0,), note),), (("truth", note),))
    _assert_same(ink_from_inkml(inkml_from_ink(ink).encode()), ink)


def test_file_is_written_whole_and_read_back(tmp_path):
    ink = Ink((Stroke(np.array([[1.5, 2.0], [3.0, 4.25]]), np.array([0.0, 8.0]), np.array([0.5, 0.75])),), "mm")
    write_inkml(ink, tmp_path / "drawing.inkml")
    _assert_same(read_inkml(tmp_path / "drawing.inkml"), ink)
    assert [path.name for path in tmp_path.iterdir()] == ["drawing.inkml"]
    with pytest.raises(InputError, match="cannot be saved there"):
        write_inkml(ink, tmp_path / "no folder" / "drawing.inkml")


def test_plain_traces_of_the_recommendation():
    # Source: InkML, W3C Recommendation 20 September 2011, the opening example (first points; from memory).
    ink = ink_from_inkml(f"{HEAD}<trace>10 0, 9 14, 8 28, 7 42</trace></ink>".encode())
    assert ink.strokes[0].points.tolist() == [[10, 0], [9, 14], [8, 28], [7, 42]]


def test_differences_of_the_recommendation():
    # Source: InkML, W3C Recommendation 20 September 2011, Section 3.2.1: ' first and " second differences, from memory:
    # 1125 18432; velocity (23, 43); then accelerations (7, -8), (3, -5), (7, -3), (6, 2).
    ink = ink_from_inkml(f"""{HEAD}<trace>1125 18432,'23'43,"7"-8,3-5,7 -3,6 2</trace></ink>""".encode())
    assert ink.strokes[0].points.tolist() == [
        [1125, 18432], [1148, 18475], [1178, 18510], [1211, 18540], [1251, 18567], [1297, 18596],
    ]  # fmt: skip


def test_channels_are_taken_in_the_order_of_the_trace_format():
    text = f"""{HEAD}<definitions><context xml:id="c"><traceFormat>
        <channel name="F" type="integer"/><channel name="Y" type="decimal" units="mm"/>
        <channel name="X" type="decimal" units="mm"/><channel name="T" type="integer" units="ms"/>
        <intermittentChannels><channel name="B1" type="boolean"/></intermittentChannels>
        </traceFormat></context></definitions>
        <trace contextRef="#c">9 2 1 100, 8 4 3 110 T</trace><trace>5 6</trace></ink>"""
    ink = ink_from_inkml(text.encode())
    first, second = ink.strokes
    assert ink.unit == "mm"
    assert first.points.tolist() == [[1, 2], [3, 4]]
    assert (first.time.tolist(), first.pressure.tolist()) == ([100, 110], [9, 8])
    assert second.points.tolist() == [[5, 6]] and second.time is None


def test_groups_continuations_and_lifted_pens():
    text = f"""{HEAD}<traceGroup><annotation type="truth">x</annotation>
        <trace xml:id="a" continuation="begin">0 0, 1 1</trace>
        <trace xml:id="b" continuation="end" priorRef="#a">2 2</trace>
        <trace type="penUp">3 3, 4 4</trace></traceGroup>
        <trace xml:id="c">9 9</trace><traceGroup><traceView traceDataRef="#c"/></traceGroup></ink>"""
    ink = ink_from_inkml(text.encode())
    assert [stroke.points.tolist() for stroke in ink.strokes] == [[[0, 0], [1, 1], [2, 2]], [[9, 9]]]
    assert ink.groups == (StrokeGroup((0,), "x"), StrokeGroup((1,)))


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "not well-formed"),
        (b"\xff\xd8\xff\xe0", "not well-formed"),
        (b"<ink><trace>1 2</ink>", "not well-formed"),
        (b"<html></html>", "not InkML"),
        (f"{HEAD}</ink>".encode(), "no pen strokes"),
        (f"{HEAD}<trace>  </trace></ink>".encode(), "no pen strokes"),
        (f"{HEAD}<trace>1 2, 3</trace></ink>".encode(), "does not fit its trace format"),
        (f"{HEAD}<trace>1 2, x y</trace></ink>".encode(), "does not fit its trace format"),
        (f"{HEAD}<trace>1 2, 3 1e300</trace></ink>".encode(), "beyond any page"),
        (("<ink>" + "<traceGroup>" * 5000 + "</traceGroup>" * 5000 + "</ink>").encode(), "nested too deep"),
        (b'<?xml version="1.0" encoding="no-such"?><ink/>', "(encoding|well-formed)"),
    ],
)
def test_bad_ink_gets_one_sentence(content, sentence):
    with pytest.raises(InputError, match=sentence) as caught:
        ink_from_inkml(content, "page.inkml")
    assert "page.inkml" in str(caught.value)


def test_entities_are_refused_before_they_grow():
    lol = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 12))
    text = f'<!DOCTYPE ink [<!ENTITY l0 "lol">{lol}]><ink><trace>&l11;</trace></ink>'
    start = time.perf_counter()
    with pytest.raises(InputError, match="entities"):
        ink_from_inkml(text.encode())
    assert time.perf_counter() - start < 1


def test_no_such_file(tmp_path):
    with pytest.raises(InputError, match="cannot be read"):
        read_inkml(tmp_path / "none.inkml")


def test_original_inkml_of_crohme_is_read():
    # Source: CROHME training ink as published (InkML); two files of the whole set are not XML.
    path = DATA / "crohme" / "train-inkml.tar.xz"
    if not path.exists():
        pytest.skip("the original InkML is not in the data folder")
    count = 0
    with tarfile.open(path) as archive:
        for member in archive:
            if not member.isfile() or not member.name.endswith(".inkml"):
                continue
            file = archive.extractfile(member)
            assert file is not None
            ink = ink_from_inkml(file.read(), Path(member.name).name)
            assert ink.strokes and any(kind == "truth" for kind, _ in ink.notes)
            count += 1
            if count == 400:
                break
    assert count == 400


# Strokes of our own for the grouping: a unit is 40.
def _one(x, y):
    return Stroke(np.array([[x, y], [x + 2, y + 40.0]]))


def _bar(x0, x1, y):
    return Stroke(np.array([[x0, y], [(x0 + x1) / 2, y + 2.0], [x1, y]], float))


def _dot(x, y):
    return Stroke(np.array([[x, y]], float))


def _numbers(strokes):
    return {line.numbers for line in strokes_to_lines(Ink(tuple(strokes))).lines}


def test_fraction_stays_one_line():
    # 11/11 + 1, with the bar drawn last.
    strokes = [_one(10, 0), _one(40, 0), _one(10, 75), _one(40, 75), _bar(90, 120, 57), Stroke(
        np.array([[105.0, 42], [105.0, 72]])), _one(140, 38), _bar(0, 60, 57)]  # fmt: skip
    assert _numbers(strokes) == {tuple(range(8))}


def test_lines_below_each_other_stay_apart_and_in_order():
    strokes = []
    for row in (2, 0, 1):
        strokes += [_one(30.0 * place, 80.0 * row) for place in range(5)]
    lines = strokes_to_lines(Ink(tuple(strokes))).lines
    assert [line.numbers for line in lines] == [tuple(range(5, 10)), tuple(range(10, 15)), tuple(range(5))]


def test_dot_minus_and_far_word_stay_in_their_row():
    row = [_one(0, 0), _dot(15, 38), _one(30, 0), _bar(50, 80, 20), _one(100, 0), _one(420, 2), _one(450, 2)]
    below = [_one(0, 90), _bar(20, 50, 110), _one(70, 90)]
    assert _numbers([*row, *below]) == {tuple(range(7)), (7, 8, 9)}


def test_line_crossed_out_whole_is_marked():
    row = [_one(30.0 * place, 0) for place in range(5)]
    (plain,) = strokes_to_lines(Ink((*row, _bar(-5, 130, 60)))).lines  # underlined
    assert not plain.struck_out
    (struck,) = strokes_to_lines(Ink((*row, _bar(-5, 130, 20)))).lines
    assert struck.struck_out
    zigzag = Stroke(np.array([[x, 5.0 if x % 20 else 35.0] for x in range(-10, 140, 10)]))
    (scribbled,) = strokes_to_lines(Ink((*row, zigzag))).lines
    assert scribbled.struck_out
    (crossed_sevens,) = strokes_to_lines(Ink((*row, *(_bar(x - 8, x + 8, 20) for x in range(0, 150, 30))))).lines
    assert not crossed_sevens.struck_out


def test_page_picture_leads_back_to_the_ink():
    ink = Ink(tuple(Stroke(np.array([[x, 1000.0], [x + 10.0, 1400.0]])) for x in (500.0, 900.0, 1300.0)), "himetric")
    picture = render_page(ink)
    # 400 units become 40 px: 0.1 px a unit; the first point stands at the margin of 40 px.
    assert picture.from_ink @ [500, 1000, 1] == pytest.approx([40, 40, 1])
    assert picture.to_ink @ [40, 40, 1] == pytest.approx([500, 1000, 1])
    assert picture.image.shape == (120, 161, 3) and picture.image.dtype == np.uint8
    assert picture.image[60, 41].max() < 120  # on the stroke
    line = strokes_to_lines(ink).lines[0]
    assert line.box.x <= 40 <= line.box.x + line.box.w
    assert line.image.shape == (line.box.h, line.box.w)
    assert line.image.min() < 50 and line.image[0, 0] == 255


def test_huge_drawing_keeps_its_picture_within_bounds():
    ink = Ink((Stroke(np.array([[0.0, 0], [0, 1]])), Stroke(np.array([[1e8, 1e8], [1e8, 1e8 + 1]]))))
    assert max(render_page(ink).image.shape) <= 8000


def test_bad_stroke_is_refused():
    with pytest.raises(ValueError, match="at least one point"):
        Stroke(np.zeros((0, 2)))
    with pytest.raises(ValueError, match="finite"):
        Stroke(np.array([[np.nan, 1.0]]))
    with pytest.raises(ValueError, match="its own ink"):
        Ink((_dot(0, 0),), groups=(StrokeGroup((3,)),))
