"""The neural reader, its weights and its model card."""

import hashlib
import json
import re
import shutil
import subprocess
import sys

import numpy as np
import pytest

from recognition.errors import Cancelled, ModelError
from recognition.evaluate import DrawnStrokes, load_samples
from recognition.reader import ModelFacts, NeuralReader
from recognition.reader.boxes import bounds_in_shares, cut_ink, drawn, places_from_attention
from recognition.reader.calibration import (
    ScoredLine,
    calibration_error,
    fit_temperature,
    probabilities,
    share_of_wrong_in_doubt,
)
from recognition.reader.grammar import BANNED, Grammar
from recognition.reader.tokens import EOS, L2R, LOWER_SCHOOL, R2L, TOKEN_ID, VOCABULARY, is_valid
from recognition.reader.weights import MODEL_FILES, MODEL_FOLDER, load_weights
from tests.recognition.test_tokens import DATA


@pytest.fixture(scope="module")
def reader():
    return NeuralReader.load(threads=2)


@pytest.fixture(scope="module")
def lines():
    """Twelve lines of CROHME 2014 as ink and as pictures. Source: Mouchere et al., ICFHR 2014."""
    path = DATA / "crohme" / "test2014.jsonl.xz"
    if not path.exists():
        pytest.skip("CROHME 2014 is not in the data folder")
    return [list(load_samples(path, route=route, limit=12)) for route in ("ink", "images")]


def _equation():
    """x = 1 in strokes of our own; 1 unit is 1 px."""
    return DrawnStrokes(
        (
            np.array([[0.0, 0], [30, 40]]), np.array([[30.0, 0], [0, 40]]),
            np.array([[55.0, 14], [85, 14]]), np.array([[55.0, 27], [85, 27]]),
            np.array([[120.0, 0], [120, 20], [120, 40]]),
        )
    )  # fmt: skip


def test_half_or_more_of_a_few_published_lines_are_read_and_more_are_among_five(reader, lines):
    # The rate over all 986 lines is 69 % (model card); 12 lines at p = 0.69 give fewer than 5 once in 400 draws.
    for route in lines:
        read = reader.read([sample.crop for sample in route])
        first = [one[0].latex.split() == list(sample.truth) for one, sample in zip(read, route, strict=True)]
        five = [
            any(c.latex.split() == list(sample.truth) for c in one) for one, sample in zip(read, route, strict=True)
        ]
        assert sum(first) >= 5
        assert sum(five) >= sum(first)


def test_candidates_parse_and_their_probabilities_are_a_share(reader, lines):
    for one in reader.read([sample.crop for sample in lines[0]]):
        assert 1 <= len(one) <= 5
        assert all(is_valid(candidate.latex.split()) for candidate in one)
        assert [c.probability for c in one] == sorted((c.probability for c in one), reverse=True)
        assert 0 < sum(c.probability for c in one) <= 1 + 1e-9
        assert len({c.latex for c in one}) == len(one)
        for candidate in one:
            assert candidate.latex == " ".join(token.text for token in candidate.tokens)
            assert all(0 <= token.probability <= 1 and token.box is not None for token in candidate.tokens)


def test_boxes_stand_on_the_signs(reader):
    (candidates,) = reader.read([_equation()])
    assert candidates[0].latex.split()[1:2] == ["="]
    boxes = [token.box for token in candidates[0].tokens]
    centres = [(box.x + box.w / 2, box.y + box.h / 2) for box in boxes]
    assert np.array(centres) == pytest.approx(np.array([(15, 20), (70, 20), (120, 20)]), abs=6)
    assert boxes[1].w == pytest.approx(30, abs=6) and boxes[1].h == pytest.approx(14, abs=6)


def test_boxes_are_in_pixels_of_the_original(reader):
    crop = _equation()
    moved = np.array([[2.0, 0, 100], [0, 2, 50], [0, 0, 1]])
    (candidates,) = reader.read([DrawnStrokes(crop.strokes, moved)])
    box = candidates[0].tokens[1].box
    assert (box.x, box.y) == pytest.approx((100 + 2 * 55, 50 + 2 * 14), abs=10)


def test_letters_of_the_page_are_kept_to(reader):
    free = reader.read([_equation()])[0]
    assert any("x" in c.latex or "X" in c.latex for c in free)
    kept = reader.read([_equation()], allowed=LOWER_SCHOOL - {"x"})[0]
    assert kept and all(set(c.latex.split()) <= LOWER_SCHOOL - {"x"} for c in kept)


def test_same_line_gives_the_same_answer(reader):
    assert reader.read([_equation()]) == reader.read([_equation()])


def test_a_sure_line_has_five_candidates_too(reader):
    (candidates,) = reader.read([_equation()])
    assert candidates[0].latex == "x = 1"
    assert len(candidates) == 5 and len({c.latex for c in candidates}) == 5
    assert all(is_valid(c.latex.split()) for c in candidates)
    (declared,) = reader.read([_equation()], allowed={"x", "=", *"0123456789"})
    assert all(set(c.latex.split()) <= {"x", "=", *"0123456789"} for c in declared)


def test_blank_line_gives_no_candidates(reader):
    assert reader.read([DrawnStrokes(())]) == [()]
    assert reader.read([]) == []


def test_quick_reading_needs_no_beam(reader):
    (candidates,) = reader.read([_equation()], beam=1)
    assert len(candidates) == 1
    with pytest.raises(ValueError, match="at least one"):
        reader.read([_equation()], beam=0)


def test_reading_tells_how_far_it_is_and_can_be_stopped(reader):
    seen = []
    reader.read([_equation()] * 2, beam=1, tick=lambda done, total: seen.append((done, total)))
    assert seen == [(0, 2), (1, 2), (2, 2)]

    def stop(done, total):
        if done == 1:
            raise Cancelled

    with pytest.raises(Cancelled):
        reader.read([_equation()] * 3, beam=1, tick=stop)


def test_unlikely_ink_gives_no_crash(reader):
    rng = np.random.default_rng(5)
    scribble = DrawnStrokes((rng.uniform(0, 500, (400, 2)),))
    dot = DrawnStrokes((np.array([[3.0, 3.0]]),))
    for one in reader.read([scribble, dot]):
        assert all(is_valid(candidate.latex.split()) for candidate in one)


# The weights


def test_sums_are_those_of_the_shipped_files_and_the_card_names_them():
    listed = dict(line.split()[::-1] for line in (MODEL_FOLDER / "SHA256SUMS").read_text().splitlines())
    card = (MODEL_FOLDER / "CARD.md").read_text("utf-8")
    assert set(listed) == set(MODEL_FILES)
    for name in MODEL_FILES:
        found = hashlib.sha256((MODEL_FOLDER / name).read_bytes()).hexdigest()
        assert found == listed[name]
        assert found in card
    size = sum((MODEL_FOLDER / name).stat().st_size for name in MODEL_FILES) / 1e6
    stated = re.search(r"Weights: ([\d.]+) MB", card)
    assert stated is not None and float(stated[1]) == pytest.approx(size, abs=0.1)
    assert size <= 30  # MB, the design's target


def test_card_states_the_licence_of_the_data():
    card = (MODEL_FOLDER / "CARD.md").read_text("utf-8")
    for words in ("CROHME", "non-commercial", "CC BY-NC-SA 3.0", "OFL", "Apache"):
        assert words in card


def test_vocabulary_of_the_model_begins_with_the_first_128_tokens(reader):
    assert reader.facts.vocabulary[:128] == VOCABULARY[:128]


@pytest.fixture
def copied(tmp_path):
    folder = tmp_path / "models"
    shutil.copytree(MODEL_FOLDER, folder)
    return folder


def test_missing_weights_get_one_sentence(copied):
    (copied / "decoder.onnx").unlink()
    with pytest.raises(ModelError, match=r"decoder\.onnx are missing\. Install Firstslip again\."):
        NeuralReader.load(copied)
    with pytest.raises(ModelError, match="SHA256SUMS"):
        load_weights(copied / "nowhere")


def test_damaged_weights_get_one_sentence(copied):
    path = copied / "encoder.onnx"
    content = bytearray(path.read_bytes())
    content[len(content) // 2] ^= 1
    path.write_bytes(bytes(content))
    with pytest.raises(ModelError, match="damaged"):
        NeuralReader.load(copied)


def test_weights_that_do_not_belong_together_get_one_sentence(copied):
    # The encoder twice, with a true sum: no decoder among them.
    content = (copied / "encoder.onnx").read_bytes()
    (copied / "decoder.onnx").write_bytes(content)
    total = hashlib.sha256(content).hexdigest()
    (copied / "SHA256SUMS").write_text(f"{total}  encoder.onnx\n{total}  decoder.onnx\n")
    with pytest.raises(ModelError, match="do not fit"):
        NeuralReader.load(copied)
    (copied / "decoder.onnx").write_bytes(b"no model")
    total_bad = hashlib.sha256(b"no model").hexdigest()
    (copied / "SHA256SUMS").write_text(f"{total}  encoder.onnx\n{total_bad}  decoder.onnx\n")
    with pytest.raises(ModelError, match="cannot be loaded"):
        NeuralReader.load(copied)


def test_facts_come_back_from_metadata():
    facts = ModelFacts(temperature=1.5, rest=-3.25, version="7")
    assert ModelFacts.from_metadata(facts.to_metadata()) == facts
    with pytest.raises(ValueError, match="special tokens"):
        ModelFacts(vocabulary=("a", "b"))


def test_tokens_need_neither_onnx_runtime_nor_qt():
    code = (
        "import sys, recognition.reader.tokens as t; print([m for m in ('onnxruntime', 'PySide6') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


# Syntax inside the beam


@pytest.mark.parametrize("backwards", [False, True])
def test_every_canonical_reading_may_be_said(backwards):
    grammar = Grammar(VOCABULARY, backwards=backwards)
    for latex in (
        r"x ^ { 2 } _ y",
        r"\frac { a } { \sqrt [ 3 ] { x _ { 1 } ^ { 2 } } } + [ 2 ]",
        r"\sqrt { 2 } ( \sqrt { 3 } )",
    ):
        tokens = latex.replace("_ y", "").split()
        assert is_valid(tokens)
        said = [TOKEN_ID[token] for token in (tokens[::-1] if backwards else tokens)]
        last, depth = (R2L if backwards else L2R), 0
        for token in (*said, EOS):
            assert grammar.after[last, token] > BANNED / 2
            assert grammar.at_depth[int(depth > 0), token] > BANNED / 2
            depth += int(grammar.depth_change[token])
            last = token
        assert depth == 0


def test_broken_braces_may_not_be_said():
    grammar = Grammar(VOCABULARY, backwards=False)
    ids = {token: TOKEN_ID[token] for token in ("^", "{", "}", "x", r"\frac")}
    assert grammar.after[ids["^"], ids["x"]] <= BANNED
    assert grammar.after[ids[r"\frac"], ids["x"]] <= BANNED
    assert grammar.after[ids["{"], ids["}"]] <= BANNED
    assert grammar.after[ids["x"], ids["{"]] <= BANNED
    assert grammar.at_depth[0, ids["}"]] <= BANNED
    assert grammar.at_depth[1, EOS] <= BANNED


# Boxes


def test_ink_is_shared_out_by_attention_and_groups_enclose_theirs():
    # Two upright strokes of 16 px in cells 1 and 3 of a 2 x 6 grid of 16 px; the second is raised.
    pixels = np.zeros((32, 96), np.uint8)
    pixels[16:30, 20:24] = 255
    pixels[2:14, 52:56] = 255
    tokens = ["1", "^", "{", "1", "}"]
    attention = np.zeros((5, 12), np.float32)
    attention[0, 7], attention[3, 3] = 1, 1
    attention[0, 3] = attention[3, 7] = 0.2
    bounds = places_from_attention(cut_ink(pixels, columns=6, cell=16), tokens, attention).bounds
    assert bounds[0].tolist() == [20, 16, 24, 30]
    assert bounds[1].tolist() == bounds[2].tolist() == bounds[3].tolist() == bounds[4].tolist() == [52, 2, 56, 14]


def test_touching_signs_are_parted_by_cells():
    pixels = np.zeros((16, 64), np.uint8)
    pixels[4:12, 0:64] = 255
    attention = np.array([[0.5, 0.5, 0, 0], [0, 0, 0.5, 0.5]], np.float32)
    bounds = places_from_attention(cut_ink(pixels, columns=4, cell=16), ["a", "b"], attention).bounds
    assert bounds.tolist() == [[0, 4, 32, 12], [32, 4, 64, 12]]


def test_ink_that_no_token_explains_is_reported_and_widens_no_box():
    # Three upright strokes of 20 px in cells 1, 3 and 5 of a 2 x 6 grid; two tokens, which look at the outer ones.
    pixels = np.zeros((32, 96), np.uint8)
    for left in (20, 52, 84):
        pixels[8:28, left : left + 4] = 255
    attention = np.zeros((2, 12), np.float32)
    attention[0, [1, 7]], attention[1, [5, 11]] = 0.5, 0.5
    attention[:, [3, 9]] = 0.02
    pieces = cut_ink(pixels, columns=6, cell=16)
    assert places_from_attention(pieces, ["1", "l"], attention).left_out.tolist() == [[52, 8, 56, 28]]
    bounds = places_from_attention(pieces, ["1", "l"], attention).bounds
    assert bounds.tolist() == [[20, 8, 24, 28], [84, 8, 88, 28]]
    pixels[8:28, 48:64] = 0
    pixels[14:18, 50:62] = 255  # as low as a bar: no struck sign by itself
    assert places_from_attention(cut_ink(pixels, columns=6, cell=16), ["1", "l"], attention).left_out.shape == (0, 4)
    seen = np.zeros((3, 12), np.float32)
    seen[0, [1, 7]], seen[1, [3, 9]], seen[2, [5, 11]] = 0.5, 0.5, 0.5
    assert places_from_attention(pieces, ["1", "x", "l"], seen).left_out.shape == (0, 4)


def test_ink_hardly_looked_at_is_the_sign_that_has_no_other_or_a_letter_of_the_word_beside_it():
    # The same three strokes; a bracket is often known by what it encloses, so the decoder looks past it.
    pixels = np.zeros((32, 96), np.uint8)
    for left in (20, 52, 84):
        pixels[8:28, left : left + 4] = 255
    pieces = cut_ink(pixels, columns=6, cell=16)
    attention = np.zeros((3, 12), np.float32)
    attention[0, [1, 7]], attention[1, [5, 11]], attention[2, [5, 11]] = 0.5, 0.48, 0.5
    attention[1, [3, 9]] = 0.02
    places = places_from_attention(pieces, ["1", "(", "l"], attention)
    assert places.left_out.shape == (0, 4) and places.bounds[1].tolist() == [52, 8, 56, 28]
    attention = np.array([attention[0], attention[2]])
    attention[0, [3, 9]] = 0.02
    for sign, left_out in (("1", [[52, 8, 56, 28]]), (r"\ln", [])):
        places = places_from_attention(pieces, [sign, "l"], attention)
        assert places.left_out.tolist() == left_out
    assert places.bounds[0].tolist() == [20, 8, 56, 28]


def test_a_struck_sign_whose_strike_touches_a_read_one_is_reported():
    pixels = np.zeros((64, 192), np.uint8)
    pixels[12:52, 8:14] = 255  # a sign that is read
    pixels[12:52, 112:144] = 255  # a scribble
    pixels[30:33, 10:140] = 255  # its strike, too long
    pieces = cut_ink(pixels, columns=12, cell=16)
    attention = np.zeros((1, 48), np.float32)
    attention[0, [0, 12, 24, 36]] = 0.25
    (found,) = places_from_attention(pieces, ["1"], attention).left_out.tolist()
    assert found[0] < 112 and found[2] == 144 and (found[1], found[3]) == (12, 52)
    both = np.concatenate([attention, np.zeros((1, 48), np.float32)])
    both[1, [7, 8, 19, 20, 31, 32]] = 1 / 6
    assert places_from_attention(pieces, ["1", "x"], both).left_out.shape == (0, 4)
    pixels[12:52, 112:144] = 0
    pixels[26:37, 112:144] = 255  # as low as the end of a bar
    assert places_from_attention(cut_ink(pixels, columns=12, cell=16), ["1"], attention).left_out.shape == (0, 4)


def test_neighbouring_struck_signs_are_one_place():
    pixels = np.zeros((32, 96), np.uint8)
    for left in (4, 30, 38, 80):
        pixels[8:28, left : left + 4] = 255
    attention = np.zeros((1, 12), np.float32)
    attention[0, [0, 6]] = 0.5
    found = places_from_attention(cut_ink(pixels, columns=6, cell=16), ["1"], attention).left_out
    assert found.tolist() == [[30, 8, 42, 28], [80, 8, 84, 28]]


def test_without_attention_ink_is_shared_equally():
    pixels = np.zeros((10, 40), np.uint8)
    pixels[2:8, 10:30] = 255
    assert bounds_in_shares(pixels, ["x", "y"]).tolist() == [[10, 2, 20, 8], [20, 2, 30, 8]]


def test_brackets_of_an_index_are_not_drawn():
    assert drawn([r"\sqrt", r"[", r"3", r"]", r"{", r"x", r"}", r"[", r"y", r"]"]) == [0, 2, 5, 7, 8, 9]


# Confidence


def test_temperature_is_found_again_from_lines_drawn_with_it():
    rng = np.random.default_rng(0)
    lines = []
    for _ in range(8000):
        scores = np.sort(rng.normal(-4, 3, 4))[::-1]
        shares = probabilities(list(scores), 2.0, 0.5)
        pick = rng.choice(5, p=[*shares, 1 - shares.sum()])
        lines.append(ScoredLine(tuple(scores), int(pick) if pick < 4 else None))
    temperature, rest = fit_temperature(lines)
    assert temperature == pytest.approx(2.0, rel=0.15)
    assert rest == pytest.approx(0.5, abs=0.3)
    with pytest.raises(ValueError, match="nothing to fit"):
        fit_temperature([ScoredLine((), None)])


def test_shares_by_hand():
    # Gaps 0 and -ln 3: weights 1 and 1/3; none of these weighs as much as the second: 1/3. Sum 5/3.
    assert probabilities([-1.0, -1.0 - np.log(3)], 1.0, 0.0) == pytest.approx([0.6, 0.2])
    # Not fitted: the two alone, 3/4 and 1/4.
    assert probabilities([-1.0, -1.0 - np.log(3)], 1.0, -np.inf) == pytest.approx([0.75, 0.25])


def test_calibration_error_by_hand():
    # Ten lines said to be 0.9 sure, of which 8 are right: 0.1 away. Each bin of one line has |0.9 - 1| or |0.9 - 0|;
    # so use 100 lines, ten to a bin, 8 right in each.
    right = ([True] * 8 + [False] * 2) * 10
    assert calibration_error([0.9] * 100, right) == pytest.approx(0.1)
    assert calibration_error([], []) == 0


def test_wrong_lines_among_the_least_sure():
    # 20 lines; the 3 least sure (15 %) hold 2 of the 4 wrong ones.
    sure = np.linspace(0, 1, 20)
    right = np.ones(20, bool)
    right[[0, 2, 10, 11]] = False
    assert share_of_wrong_in_doubt(sure, right) == pytest.approx(0.5)


def test_shares_of_nothing_are_none():
    assert probabilities([], 1.0, -1.0).tolist() == []
    assert json.loads(ModelFacts().to_metadata()["vocabulary"])[0] == "<pad>"
