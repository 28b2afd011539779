"""No sentence that the checker, the reader or the page stage can say stays English at a German desk."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from desktop.forms import TEMPLATES
from desktop.forms.matching import HOLE
from desktop.sentences import in_language, latex_in_language, with_capital
from tests.desktop.sentence_literals import literals

PARTS = {
    " {} the left is {} and the right is {}. Only {}.":
        "Not true: the sides are 1 and 2. Multiplied out, the left is x and the right is 2. Only the left has x.",
    "Multiplied out,": "Multiplied out, the left is x and the right is y.",
    "the {} has {}": "Only the left has x and only the right has y.",
    "Over the denominator {}, the numerator of":
        "Over the denominator x-1, the numerator of the left is x and the right is 2.",
    " at which both sides are defined": "True for all values at which both sides are defined.",
    "Line {} follows from the candidate's own wrong line": "Line 3 follows from the candidate's own wrong line (ft).",
    "as in the scheme": "Line 2 has the right value but is not written as in the scheme.",
    "correct answer only (cao)":
        "Line 2 follows from the candidate's own wrong line, but this is correct answer only (cao).",
    "not a follow-through mark":
        "Line 2 follows from the candidate's own wrong line, but this is not a follow-through mark.",
    "they do not agree": "The two sides are different numbers: they do not agree.",
    "one side has no value": "The two sides are different numbers: one side has no value.",
    ": solutions are gained.": "x = 2 satisfies this line but not the line before: solutions are gained.",
    ": check it and reject it.": "x = 2 satisfies this line but not the line before: check it and reject it.",
    "The line before": "The line before is 3, this line is 4.",
    "the line before": "At x = 1 the line before is 3 and this line is 4.",
    "this line": "The boundary is another: x = 3 satisfies this line but not the line before.",
    "with {} in place of {}, ": "with 2x-1 in place of y, there is 6x",
    "the line before has": "the line before has 6x",
    "the line before gives": "the line before gives 6x",
    "there is": "with 2x-1 in place of y, there is 6x",
    "with this": "with this -4 makes the line before true",
    "over the bottom {}, {} has the top ": "over the bottom 6, 3x has the top 2x",
    "adding like terms keeps the letters and their powers: ":
        "adding like terms keeps the letters and their powers: 3x + 2x is 5x",
    ", which is {} here": "every term is divided: 6x divided by 2 is 3x, which is -3x here",
    "{} and belongs in it: ": "2 times 3x is 6x and belongs in it: 6x + x is 7x",
    "{}, but the first term is {}": "2x times 3x is 6x^2, but the first term is 5x^2",
    "{}, but the last term is {}": "-5 times +2 is -10, but the last term is +10",
    "the middle term is {}": "-3x + 4x is x, but the middle term is -x",
    "there is no middle term": "3x + 4x is 7x, but there is no middle term",
    "Save the drawing again as InkML and open the new file.":
        "a.inkml is XML but not InkML. Save the drawing again as InkML and open the new file.",
    "The drawing": "The drawing holds no pen strokes. Draw the working first, then save it as InkML.",
    "JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF":
        "a.txt holds text, not a picture. Choose a JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF file.",
    r"\text{every value of {}}": r"It holds for \text{every value of x}, as sampled.",
    "Install Firstslip again.": "The reader's weights cannot be loaded. Install Firstslip again.",
}  # fmt: skip
"""Texts that are no sentence by themselves, with one in which they stand."""

LATEX = (r"\text{no solution}", r"\text{all real values}")

NOT_SHOWN = {
    "checker/accuracy.py": {"whole number"},  # what a question may say
    "checker/answer_text.py": {"multiplied out"},  # what an answer lacks, asked by name
    "checker/calculus/domains.py": {"not negative"},  # a kind of limit
    "checker/factors.py": {"multiplied out"},
    "checker/final.py": {"not an identity", "true for all values"},  # what was expected, in the contract only
    "checker/marking/comparison.py": None,  # kinds of likeness
    "checker/marking/evidence.py": {"special case"},  # a part of a scheme
    "checker/marking/instead.py": {"special case", "no working"},
    "checker/marking/result.py": {"special case", "no working"},
    "checker/marking/scheme.py": {"special case", "no working"},
    "checker/marking/shape.py": {"to be multiplied out"},
    "checker/marking/text.py": {
        "no isw", "last line counts", "may be implied", "not implied", "working needed", "must be seen",
    },  # words of a scheme as a teacher types it
    "checker/slips/calculus.py": {"like terms"},  # looked for in a reason
    "checker/slips/relations.py": {"the same"},
    "checker/syntax/applications.py": {"power of a function"},  # a reading's name
    "checker/syntax/statements.py": {"so that", "we get"},  # words that a pupil may write
    "checker/walk.py": {"power of a function"},
    "recognition/correction.py": None,  # faults of the caller
    "recognition/ink/inkml.py": {
        '<?xml version="1.0" encoding="UTF-8"?>', '<ink xmlns="{}">', "  <annotation type={}>{}</annotation>",
        '    <context xml:id="{}"><traceFormat>', '  <trace xml:id="t{}" contextRef="#{}">{}</trace>',
        '    <traceView traceDataRef="#t{}"/>', '      <channel name="{}" type="decimal" units={}/>',
        '    <annotation type="truth">{}</annotation>',
    },  # the file's own lines
    "recognition/reader/tokens.py": None,  # why the reader leaves a reading out
}  # fmt: skip
"""Texts that never reach the desk, by module; None where none of those without a form does."""

TWICE_NAMED = {
    ("checker/slips/relations.py", "squared"), ("checker/slips/relations.py", "cubed"),
    ("checker/slips/relations.py", "divided"), ("checker/slips/relations.py", "multiplied"),
    ("checker/marking/suggestion.py", "teacher"),
    ("checker/slips/explanations.py", "adding like terms keeps the letters and their powers: "),
}  # fmt: skip
"""Words that a name stands for elsewhere in the module."""


def is_known(sentence: str) -> bool:
    bare = sentence.strip(" :;,")
    return in_language(bare) != bare


def test_every_text_in_the_source_has_a_german_form(german):
    found = list(literals())
    assert len(found) > 700
    english = []
    for literal in found:
        module = literal.place.partition(":")[0]
        unshown = NOT_SHOWN.get(module, set())
        if literal.bare in PARTS or literal.bare in LATEX or unshown is None or literal.bare in unshown:
            continue
        if re.fullmatch(r"(?:OS|MaE) \w+", literal.bare):  # a source in the catalogue
            continue
        english += [
            f"{literal.place}: {text}" for text in literal.lacking(is_known)
            if (module, text.rpartition(" with ")[2]) not in TWICE_NAMED
        ]  # fmt: skip
    assert english == [], "give it a form in desktop/forms, then run: python -m desktop.translations"


def test_texts_of_the_exceptions_are_still_in_the_source():
    bare = {(literal.place.partition(":")[0], literal.bare) for literal in literals()}
    assert set(PARTS) - {text for _, text in bare} == set()
    named = {(module, text) for module, texts in NOT_SHOWN.items() if texts is not None for text in texts}
    assert named - bare == set()


@pytest.mark.parametrize(("part", "whole"), PARTS.items())
def test_part_is_translated_in_its_sentence(german, part, whole):
    pieces = [piece for piece in part.split("{}") if piece.strip(" }")]
    assert all(piece.strip() in whole for piece in pieces)
    assert is_known(whole)


def test_a_new_sentence_is_found_missing(german):
    assert not is_known("The frame of this line is bent.")
    assert not is_known("3x times the frame is bent")


@pytest.mark.parametrize("latex", LATEX)
def test_words_within_mathematics_are_translated(german, latex):
    assert latex_in_language(latex) != latex


def test_solutions_are_joined_in_german(german):
    assert latex_in_language(r"x=2 \text{ or } x=-5") == r"x=2 \text{ oder } x=-5"


@pytest.mark.parametrize("template", TEMPLATES)
def test_form_is_translated_as_a_whole_and_keeps_what_stands_in_it(german, template):
    values = {"number": "3", "count": "4", "total": "5", "point": "x = 1", "name": "plan 2.pdf", "other": "JPEG"}
    inner = "the line before has 7y"
    filled = HOLE.sub(lambda hole: values.get(hole[1], f"-3{hole[1]}" if len(hole[1]) == 1 else inner), template)
    if "{what}" in template:
        filled = filled.replace(inner, "a power")
    told = in_language(filled)
    if template in {"and", "or", "times", "every", "let"}:
        return
    assert told != filled or template == "{sentence}, and {more}"
    kept = [values.get(name, f"-3{name}") for name in HOLE.findall(template) if len(name) == 1 or name in values]
    assert all(value in told for value in kept)


@pytest.mark.parametrize(("english", "expected"), [
    # a formula is left as it is; a joining word between two is not
    ("At x = 1 and y = 2 the line before is 7 and this line is -17.",
     "Für x = 1 und y = 2 ergibt die Zeile davor 7 und diese Zeile -17."),
    ("3 times 4 times -x is -12x: one factor is negative, so the product is negative",
     "3 mal 4 mal -x ist -12x: ein Faktor ist negativ, also ist das Produkt negativ"),
    ("At a = 1 and b = -2 and x = 3 f(x) is 4 and this line is 0.",
     "Für a = 1, b = -2 und x = 3 ist f(x) gleich 4, diese Zeile aber 0."),
    (r"the line before has \frac{ab}{c}", r"in der Zeile davor steht \frac{ab}{c}"),
    # letters side by side are a product, not an English word
    ("the line before has at", "in der Zeile davor steht at"),
    ("with u + at in place of v the line follows", "mit u + at statt v folgt die Zeile"),
    # sentences within sentences
    ("2 times the first equation minus 3 times the second: 4x taken away is -4x",
     "2-mal die erste Gleichung minus 3-mal die zweite: 4x abgezogen ergibt -4x"),
    ("every term is divided: 6x divided by 2 is 3x, which is -3x here",
     "jedes Glied wird dividiert: 6x geteilt durch 2 ist 3x, was hier -3x ergibt"),
    ("Rounded to 2 d.p..", "Gerundet auf 2 Nachkommastellen."),
    ("To 3 s.f. the value is 2.45.", "Auf 3 geltende Ziffern gerundet ist der Wert 2.45."),
    ("At character 8: a closing brace } expected. Edit the line there.",
     "Bei Zeichen 8 wird erwartet: eine schließende geschweifte Klammer „}“. Ändern Sie die Zeile dort."),
    # half of it is not known, so all of it stays
    ("3 times 4 is 12. Something quite new is said.", "3 times 4 is 12. Something quite new is said."),
    ("the line before has something new", "the line before has something new"),
])  # fmt: skip
def test_sentence_in_german(german, english, expected):
    assert in_language(english) == expected


@pytest.mark.parametrize(("text", "expected"), [
    ("über dem Nenner", "Über dem Nenner"), ("das Minus", "Das Minus"), ("sin x ist 1", "sin x ist 1"),
    ("abc mal 2 ist 2abc", "abc mal 2 ist 2abc"), ("a = 2 erfüllt", "a = 2 erfüllt"), ("", ""),
    ("beide Seiten", "Beide Seiten"),
    ("in der Zeile davor steht 3x", "In der Zeile davor steht 3x"), ("theta = 1 erfüllt", "theta = 1 erfüllt"),
])  # fmt: skip
def test_sentence_begins_with_a_capital_and_a_formula_does_not(german, text, expected):
    assert with_capital(text) == expected


def test_list_of_decimals_is_parted_by_semicolons_where_a_comma_is_decimal(german, comma):
    assert in_language("Solutions are lost: x = 0.5, 1.5.") == "Es gehen Lösungen verloren: x = 0.5; 1.5."
    assert in_language("Solutions are lost: x = 2, 3.") == "Es gehen Lösungen verloren: x = 2, 3."


WORDS = sorted({word for template in TEMPLATES for word in re.findall(r"[\w{}.:;,-]+", template)})
PIECES = st.one_of(
    st.sampled_from(TEMPLATES), st.sampled_from(WORDS), st.text(max_size=12),
    st.sampled_from((". ", ": ", "; ", " is ", " times ", ", so ", "\\text{", "}", "\n", "  ")),
)  # fmt: skip


@given(st.lists(PIECES, max_size=12).map(" ".join))
def test_no_text_raises_and_blanks_around_are_kept(text):
    told = in_language(text)
    assert bool(told) == bool(text)
    assert told[: len(told) - len(told.lstrip())] == text[: len(text) - len(text.lstrip())]


def test_text_built_to_take_long_stays_english_after_some_steps(german):
    text = "3x is " * 300 + "4"
    assert in_language(text) == text
    text = "3x is 4, so " * 300 + "something quite new is said"
    assert in_language(text) == text


def test_sentence_longer_than_any_of_ours_stays(german):
    text = "The line before is " + "1" * 5000 + ", this line is 2."
    assert in_language(text) == text
