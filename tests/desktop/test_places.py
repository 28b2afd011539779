"""From characters of a line's LaTeX to a box on the page."""

from desktop.desk_line import DeskLine
from desktop.places import span_box, token_spans
from recognition.result import Box, Candidate, Token


def read_line(latex: str) -> DeskLine:
    """A line whose symbols stand side by side, each 20 wide; braces and ^ have no ink."""
    tokens, x = [], 0
    for text, _, _ in token_spans(latex):
        inked = text not in "{}^"
        tokens.append(Token(text, 0.9, Box(x, 10, 20, 30) if inked else None))
        x += 20 * inked
    return DeskLine(Box(0, 0, x, 50), (Candidate(latex, 0.9, tuple(tokens)),), latex)


def test_span_gives_the_box_round_its_symbols():
    line = read_line("= 5 t + 8 t")
    # "+ 8 t" are the symbols at places 3, 4 and 5: from x = 60 to x = 120.
    assert span_box(line, (6, 11)) == Box(60, 10, 60, 30)


def test_braces_and_carets_take_no_room():
    line = read_line("2 t ^ { 2 } + 8 t")
    start = line.latex.index("+")
    assert span_box(line, (start, len(line.latex))) == Box(60, 10, 60, 30)


def test_confirmed_latex_in_another_form_keeps_the_places():
    line = read_line("2 t ^ { 2 } + 8 t")
    corrected = DeskLine(line.box, line.candidates, "2t^2+8t")
    assert span_box(corrected, (4, 7)) == Box(60, 10, 60, 30)


def test_corrected_symbol_takes_the_place_of_the_misread_one():
    line = read_line("5 t + 8 t")
    corrected = DeskLine(line.box, line.candidates, "5t-8t")
    assert span_box(corrected, (2, 3)) == Box(40, 10, 20, 30)


def test_nearest_candidate_gives_the_places():
    first, second = read_line("x = 1 + 1 1").candidates[0], read_line("y - 4").candidates[0]
    line = DeskLine(Box(0, 0, 100, 40), (second, first), "x=1+12")
    assert span_box(line, (0, 1)) == Box(0, 10, 20, 30)


def test_line_without_boxes_has_no_place():
    assert span_box(DeskLine(Box(0, 0, 9, 9), latex="k"), (0, 1)) is None


def test_words_are_one_token():
    tokens = [text for text, _, _ in token_spans(r"x=2\text{ or }x=-5")]
    assert tokens == ["x", "=", "2", r"\text{or}", "x", "=", "-", "5"]
