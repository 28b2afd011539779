"""InkML as the W3C Recommendation of 20 September 2011 has it: files of our own in the structure of its sections."""

import random

import numpy as np
import pytest

from recognition.ink import Ink, Stroke, StrokeGroup, ink_from_inkml, inkml_from_ink, strokes_to_lines


def _read(body: str) -> Ink:
    return ink_from_inkml(f'<?xml version="1.0"?><ink xmlns="http://www.w3.org/2003/InkML">{body}</ink>'.encode())


def _points(ink: Ink) -> list[list[list[float]]]:
    return [stroke.points.tolist() for stroke in ink.strokes]


def test_archival_style_names_the_context_at_each_trace():
    # Source: InkML, Section 5.1 (Archival Applications): definitions first, each trace refers to a context in them.
    ink = _read("""<definitions>
        <brush xml:id="thin"><brushProperty name="width" value="0.3" units="mm"/></brush>
        <traceFormat xml:id="flat"><channel name="X" type="decimal" units="mm"/>
          <channel name="Y" type="decimal" units="mm"/></traceFormat>
        <traceFormat xml:id="timed"><channel name="X" type="decimal" units="mm"/>
          <channel name="Y" type="decimal" units="mm"/><channel name="T" type="integer" units="ms"/></traceFormat>
        <context xml:id="one" traceFormatRef="#flat" brushRef="#thin"/>
        <context xml:id="two" contextRef="#one" traceFormatRef="#timed"/></definitions>
        <trace contextRef="#one">1 2, 3 4</trace><trace contextRef="#two">5 6 70, 7 8 80</trace>""")
    assert ink.unit == "mm" and _points(ink) == [[[1, 2], [3, 4]], [[5, 6], [7, 8]]]
    assert ink.strokes[0].time is None and ink.strokes[1].time.tolist() == [70, 80]


def test_streaming_style_changes_the_context_between_traces():
    # Source: InkML, Section 5.2 (Streaming Applications): a context holds until the next one.
    ink = _read("""<context><traceFormat><channel name="X" type="integer"/><channel name="Y" type="integer"/>
        <channel name="F" type="integer"/></traceFormat></context><trace>1 2 9, 3 4 8</trace>
        <context><traceFormat><channel name="Y" type="integer"/><channel name="X" type="integer"/></traceFormat>
        </context>
        <trace>2 1, 4 3</trace>""")
    assert _points(ink) == [[[1, 2], [3, 4]], [[1, 2], [3, 4]]]
    assert ink.strokes[0].pressure.tolist() == [9, 8] and ink.strokes[1].pressure is None


def test_ink_source_brings_its_trace_format():
    # Source: InkML, Sections 4.1 (ink source) and 4.2 (context): what the device writes is told with the device.
    ink = _read("""<definitions><inkSource xml:id="pad" manufacturer="none" model="drawn by hand">
        <traceFormat><channel name="X" type="integer" max="9999" units="dev"/>
          <channel name="Y" type="integer" max="9999" units="dev"/>
          <channel name="F" type="integer" min="0" max="255"/></traceFormat>
        <sampleRate uniform="true" value="100"/></inkSource>
        <context xml:id="now" inkSourceRef="#pad"/></definitions>
        <trace contextRef="#now">10 20 100, 30 40 200</trace>""")
    assert _points(ink) == [[[10, 20], [30, 40]]] and ink.strokes[0].pressure.tolist() == [100, 200]


def test_groups_within_groups_pass_their_context_on():
    # Source: InkML, Section 3.3 (trace groups): a group's context holds for what is in it and has none of its own.
    ink = _read("""<definitions><context xml:id="c"><traceFormat><channel name="Y" type="decimal"/>
        <channel name="X" type="decimal"/></traceFormat></context></definitions>
        <traceGroup contextRef="#c"><traceGroup><trace>2 1, 4 3</trace></traceGroup><trace>6 5</trace></traceGroup>""")
    assert _points(ink) == [[[1, 2], [3, 4]], [[5, 6]]]
    assert {group.strokes for group in ink.groups} == {(0,), (0, 1)}


def test_all_prefixes_wildcards_and_intermittent_channels_of_one_trace():
    # Source: InkML, Section 3.2.1: "!" ends differences, "*" repeats the value, "?" is unknown, T and F are booleans.
    ink = _read("""<traceFormat><channel name="X" type="integer"/><channel name="Y" type="integer"/>
        <intermittentChannels><channel name="S" type="boolean"/></intermittentChannels></traceFormat>
        <trace>10 20 T, '3 '-2, 4 *, !30 !7 F, * 9</trace>""")
    # 10 20; 13 18; 17 and as before, -2: 16; explicit 30 7; 30 again and 9.
    assert _points(ink) == [[[10, 20], [13, 18], [17, 16], [30, 7], [30, 9]]]


@pytest.mark.parametrize("seed", range(6))
def test_lines_do_not_depend_on_the_order_of_writing(seed: int):
    # Three rows "1 1 - 1 = 1" of our own; a bar or dot put back later falls where it stands.
    strokes = []
    for y in (0.0, 90.0, 180.0):
        for x in (0, 30, 90, 170):
            strokes.append(np.array([[x, y], [x + 2.0, y + 40]]))
        strokes += [np.array([[52.0, y + 20], [76.0, y + 21]]), np.array([[120.0, y + 14], [146.0, y + 15]]),
                    np.array([[120.0, y + 26], [146.0, y + 27]])]  # fmt: skip
    order = list(range(len(strokes)))
    random.Random(seed).shuffle(order)
    lines = strokes_to_lines(Ink(tuple(Stroke(strokes[number]) for number in order))).lines
    assert [sorted(order[number] for number in line.numbers) for line in lines] == [
        list(range(7)), list(range(7, 14)), list(range(14, 21))
    ]  # fmt: skip


def test_what_was_read_is_written_and_read_back_the_same():
    ink = _read("""<annotation type="truth">x=1</annotation><traceGroup><annotation type="truth">x</annotation>
        <trace>0 0, 1.5 2.25</trace><trace>1e-3 7, 8 9</trace></traceGroup>""")
    again = ink_from_inkml(inkml_from_ink(ink).encode())
    assert _points(again) == _points(ink) and again.notes == ink.notes == (("truth", "x=1"),)
    assert again.groups == ink.groups == (StrokeGroup((0, 1), "x"),)
