"""What confirmed lines tell of a hand, on studies made by hand and on the shipped reader."""

import math
from collections import Counter

import numpy as np
import pytest

from recognition.evaluate import DrawnStrokes
from recognition.reader import Hand, LineStudy, NeuralReader, reweighed
from recognition.reader.same_hand import letter_evidence
from recognition.result import Box, Candidate, Token
from recognition.training.hand_gain import StudiedLine, gain
from recognition.training.own_hand import own_bank

VOCABULARY = ("<pad>", "<eos>", "<l2r>", "<r2l>", "1", "7", "2", "z", "x", "+", "=")
SHAPES = {token: np.eye(8, dtype=np.float32)[n % 8] for n, token in enumerate(VOCABULARY)}


def _study(tokens, looks_like=None, rivals=None):
    """A line whose signs look as their names say, or as `looks_like` says; rivals: {place: (token, log p)}."""
    tokens = tuple(tokens.split())
    looks = np.array([SHAPES[t] for t in (looks_like or " ".join(tokens)).split()])
    spread = np.full((len(tokens), len(VOCABULARY)), -9.0, np.float32)
    spread[np.arange(len(tokens)), [VOCABULARY.index(t) for t in tokens]] = -0.1
    for place, (token, log_probability) in (rivals or {}).items():
        spread[place, VOCABULARY.index(token)] = log_probability
    return LineStudy(tokens, np.ones(len(tokens), bool), spread, looks, VOCABULARY)


def _candidate(latex, probability=0.6):
    return Candidate(latex, probability, tuple(Token(t, 0.9, Box(n, 0, 1, 1)) for n, t in enumerate(latex.split())))


CONFIRMED = [_study("x + 7 = 1 2"), _study("7 x = 1 + 2"), _study("1 + x = 7")]


def test_a_doubtful_sign_is_what_it_looks_like_in_this_hand():
    # Read 1, with 7 close behind; in this hand it looks as the confirmed 7s do.
    study = _study("x + 1", looks_like="x + 7", rivals={2: ("7", -1.5)})
    first, second = reweighed([_candidate("x + 1", 0.6), _candidate("x + 7", 0.2)], study, Hand.of(CONFIRMED))
    assert (first.latex, second.latex) == ("x + 7", "x + 1")
    assert first.probability + second.probability == pytest.approx(0.8)
    assert first.tokens[2] == Token("7", 0.9, Box(2, 0, 1, 1))


def test_a_reading_that_was_no_candidate_yet_is_brought_in():
    study = _study("x + 1", looks_like="x + 7", rivals={2: ("7", -1.5)})
    read = reweighed([_candidate("x + 1")], study, Hand.of(CONFIRMED))
    assert [candidate.latex for candidate in read] == ["x + 7", "x + 1"]
    assert read[0].tokens[2].text == "7" and read[0].tokens[2].box == Box(2, 0, 1, 1)
    assert read[0].tokens[2].probability <= 0.5  # still a doubtful sign


def test_what_the_network_is_sure_of_stays():
    study = _study("x + 1", looks_like="x + 7", rivals={2: ("7", -7.0)})
    candidates = (_candidate("x + 1"),)
    assert reweighed(candidates, study, Hand.of(CONFIRMED)) == candidates
    alike = _study("x + 1", rivals={2: ("7", -1.5)})  # looks like the confirmed 1s
    assert reweighed(candidates, alike, Hand.of(CONFIRMED)) == candidates


def test_letters_of_the_page_weigh_on_a_strange_letter():
    # z was never confirmed on a page of x alone, 2 was: a z that looks half like the 2s is a 2.
    half = _study("z x", rivals={0: ("2", -0.6)})
    looks = half.looks.copy()
    looks[0] = (SHAPES["2"] + 0.3 * SHAPES["z"]) / np.linalg.norm(SHAPES["2"] + 0.3 * SHAPES["z"])
    study = LineStudy(half.tokens, half.is_sign, half.spread, looks, VOCABULARY)
    assert reweighed([_candidate("z x")], study, Hand.of(CONFIRMED))[0].latex == "2 x"


def test_letters_of_another_page_say_nothing_of_this_one():
    # One hand on two pages: signs are made alike on both, but the letters of the other page are not awaited here.
    hand = Hand.of(CONFIRMED)
    study = _study("z x", rivals={0: ("2", -0.6)})
    looks = study.looks.copy()
    looks[0] = (SHAPES["2"] + 0.3 * SHAPES["z"]) / np.linalg.norm(SHAPES["2"] + 0.3 * SHAPES["z"])
    study = LineStudy(study.tokens, study.is_sign, study.spread, looks, VOCABULARY)
    known = _gain_of("2", study, hand.for_page(CONFIRMED))
    assert known == _gain_of("2", study, hand)
    assert _gain_of("2", study, hand.for_page([])) < known  # nothing says that z is strange here
    likeness = hand.for_page([]).likeness(looks)
    assert all(np.array_equal(likeness[token], near) for token, near in hand.likeness(looks).items())


def _gain_of(token, study, hand):
    read = reweighed([_candidate("z x", 0.5), _candidate("2 x", 0.1)], study, hand)
    return next(candidate.probability for candidate in read if candidate.latex == "2 x")


def test_what_was_read_stays_among_the_five():
    rivals = [_candidate(f"x + {token}", 0.1) for token in ("7", "2", "z", "x")]
    study = _study("x + 1 1", looks_like="x + 7 7", rivals={2: ("7", -1.0), 3: ("7", -1.0)})
    read = reweighed([_candidate("x + 1 1", 0.001), *rivals], study, Hand.of(CONFIRMED))
    assert len(read) == 5 and "x + 1 1" in [candidate.latex for candidate in read]


def test_evidence_of_letters_by_hand():
    # 9 x and 1 y: once-seen letters 1, so the share of new ones is (1 + 0.5) / (10 + 1) = 0.1364.
    evidence = letter_evidence(Counter({"x": 9, "y": 1, "7": 30}))
    assert evidence["x"] == 1.0  # log(0.8636 * 0.9 * 8) = 1.83, cut at 1
    assert evidence["y"] == pytest.approx(math.log(0.8636 * 0.1 * 8), abs=1e-3)
    assert evidence["z"] == pytest.approx(math.log(0.1364 / 12 * 8), abs=1e-3)
    assert letter_evidence(Counter({"7": 3})) == {}
    assert letter_evidence(Counter({"x": 200}))["z"] == -3.0


def test_few_confirmed_lines_say_nothing():
    assert Hand.of([]) is None and Hand.of(CONFIRMED[:1]) is None
    candidates = (_candidate("x + 1"),)
    assert reweighed(candidates, _study("x + 1", rivals={2: ("7", -0.2)}), None) == candidates
    assert reweighed((), _study("x + 1"), Hand.of(CONFIRMED)) == ()


def test_lines_that_share_few_signs_say_nothing_of_each_other():
    strange = [_study("x + 7 = 1 2"), _study("z = 7 + 7 + 7 + 7")]  # x, 1, 2, z once each, of 15 signs
    assert Hand.of(strange) is None
    assert Hand.of([*strange, _study("x = 1 2"), _study("z = 1 2")]) is not None


def test_a_study_of_another_reading_is_refused():
    with pytest.raises(ValueError, match="not of the first candidate"):
        reweighed([_candidate("x + 7")], _study("x + 1"), Hand.of(CONFIRMED))
    with pytest.raises(ValueError, match="one row for each token"):
        LineStudy(("x",), np.ones(2, bool), np.zeros((1, 3), np.float32), np.zeros((1, 3), np.float32), VOCABULARY)


def test_gain_counts_what_was_mended_by_hand():
    def line(latex, truth, study):
        return StudiedLine("a", truth, (_candidate(latex),), study, _study(truth))

    right = [line(text, text, _study(text)) for text in ("x + 7 = 1 2", "7 x = 1 + 2", "1 + x = 7")]
    wrong = [line("x + 1", "x + 7", _study("x + 1", looks_like="x + 7", rivals={2: ("7", -1.5)})) for _ in range(3)]
    report = gain([*right, *wrong], confirmed=3, draws=4)
    assert report["writers"] == 1 and report["lines"] == 12
    assert report["spoilt"] == 0
    assert report["ExpRate_after"] - report["ExpRate_before"] == pytest.approx(100 * report["mended"] / 12, abs=0.02)
    assert gain([*right, *wrong], confirmed=4, draws=1)["lines"] == 0  # 8 lines would be needed


def _written(text):
    """A line in the project's own pen hand."""
    bank, strokes, x = own_bank(), [], 0.0
    for token in text.split():
        shape = bank.ink[token][0]
        low, high = shape.points.min(axis=0), shape.points.max(axis=0)
        strokes += [(part - low) * 40 + [x, 0] for part in np.split(shape.points, shape.offsets[1:-1])]
        x += float(high[0] - low[0]) * 40 + 14
    return DrawnStrokes(tuple(np.asarray(stroke, np.float64) for stroke in strokes))


def test_reader_studies_what_it_is_told():
    reader = NeuralReader.load()
    lines = ["3 5 7 8", "7 7 5 3", "8 5 3 7"]
    studies = [reader.study(_written(line), line) for line in lines]
    assert [study.tokens for study in studies] == [tuple(line.split()) for line in lines]
    assert all(study.is_sign.all() for study in studies)
    np.testing.assert_allclose(np.exp(studies[0].spread).sum(axis=1), 1, atol=0.2)  # a mean of logs sums to at most 1
    hand = Hand.of(studies)
    likeness = hand.likeness(studies[0].looks)
    for place, token in enumerate(studies[0].tokens):  # each sign is like itself and more than like any other
        assert likeness[token][place] == pytest.approx(1, abs=1e-3)
        assert all(likeness[other][place] < 0.99 for other in likeness if other != token)
    (candidates,) = reader.read([_written("3 8 7 5")])
    again = reweighed(candidates, reader.study(_written("3 8 7 5"), candidates[0].latex), hand)
    assert again[0].latex == candidates[0].latex == "3 8 7 5"
    assert reader.study(_written("3 5"), r"\mathcal{L}") is None
    assert reader.study(DrawnStrokes(()), "x") is None
    structured = reader.study(_written("3 5"), r"\frac{3}{5}")
    assert structured.is_sign.tolist() == [False, False, True, False, False, True, False]
