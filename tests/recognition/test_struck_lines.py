"""Lines with symbols struck out, and whether a report lies on them."""

import numpy as np

from recognition.reader.tokens import is_valid
from recognition.result import Box
from recognition.training.own_hand import own_bank
from recognition.training.struck_lines import reported_on, struck_lines


def test_struck_symbols_are_no_part_of_what_is_left():
    for line in struck_lines(own_bank(), 5, 3):
        assert len(line.rest.tokens) < len(line.whole.tokens)
        assert is_valid(list(line.rest.tokens))
        assert line.gone  # the symbols and the strikes over them
        owners = set(line.rest.drawing.token.tolist()) - {-1}
        assert max(owners) < len(line.rest.tokens)


def test_reports_are_counted_where_struck_ink_is():
    stroke = np.array([[10, 10], [20, 20]], np.float32)
    assert reported_on([Box(0, 0, 12, 12), Box(50, 0, 9, 9)], [stroke]) == 1
    assert reported_on([Box(50, 0, 9, 9)], [stroke]) == 0
    assert reported_on([Box(0, 0, 9, 9)], []) == 0
