r"""Method, accuracy and independent marks suggested for a judged working, by a scheme that a teacher writes.

Marks
-----
`"scheme"` in a working is a list of marks, in the order of the answer:

    {"lines": ["2x+3=13", "2x=11", "x=5.5"], "task": "solve", "scheme": [
        {"mark": "M1", "line": "2x=10", "for": "one term on each side"},
        {"mark": "A1", "final": "x=5", "ft": true}]}

- `mark`: M (method), A (accuracy) or B (independent) and its number. A2 is given whole or not at all. dM1 depends on
  the M before it, ddM1 on the two before it; N1 is for a right answer without working; SC B1, or `"sc": true`, is a
  special case. A1ft, A1cao, A1cso, A1* and M1dep may be written as in print.
- `line`: LaTeX that some line must show; or a list, of which any one will do (other methods).
- `final`: the same for the final answer; values on consecutive lines (x=2, then x=3) are taken together.
- `for`: words for the reader. An entry with words only is always left to the teacher.
- `form`: `oe` (or equivalent, of the same form; the default), `exact` (as written but for the order of terms, factors
  and sides), `expanded`, `factorised` (fully), `simplest`, `awrt` (decimals that round to the one given).
- `ft`: an A or B mark may be earned by follow-through from a slip of the candidate's own.
- `cao`, `cso`: correct answer only, never by follow-through; correct solution only, no slip before it either.
- `depends_on`: what it needs: a mark before it ("M1": the nearest), its place counted from 0, a list of these, or null.
  An A needs the nearest M before it unless this says otherwise.
- `isw`: for `final`: a right answer is enough wherever it stands (the default); false: the last line counts.
- `implied`: true: a later right line stands for it; false: the working must be shown; left out: see below.

The scheme may also be text, one mark to a line as printed schemes have it; SCHEMES.md has the table:

    "scheme": "M1 2x=10 for one term on each side\nA1ft final x=5"

The report then has `"marks"`; it is absent when no scheme was given. `line` counts from 0, the sentences from 1:

    {"each": [{"mark": "M1", "for": "one term on each side", "awarded": true, "line": 1, "reason": "..."},
              {"mark": "A1", "for": "", "awarded": true, "line": 2, "reason": "..."}],
     "sum": 2, "highest": 2, "out_of": 2, "note": "These marks are a suggestion; the teacher decides."}

`awarded` is true, false, or "teacher" when it cannot be told. `sum` counts what is surely earned, `highest` what it
would be if the teacher gave every open mark. A scheme that is not understood gives the `error` field.

What "of the same form" means
-----------------------------
Two lines have the same form when they have the same relation, the same number of terms on each side and the same
powers of letters in them, the same brackets and fractions, and roots where the other has roots; numbers and signs may
differ (shape.py). By `oe` a line is taken when it is equivalent and of that form: every right line of a working is
equivalent to every other, so that being equivalent shows no method. The line that a working starts with earns a mark
only when the scheme asks for that very line.

When a method mark is given
---------------------------
1. A line is equivalent and of the form asked, and does not come from a wrong line.
2. A line has the form asked and a slip, and the line with the slip mended, as the diagnosis has it, is one that 1 would
   take; all terms and factors but one are the same, and the slip is one of working out (a number, a sign in a product,
   like terms, copying). With a slip of another kind, or one wrong term that changes the form (a power, a term left
   out), the teacher decides: it may be a wrong method.
3. A line has the form asked and follows from the candidate's own earlier wrong line, which had another form: the same
   step was made on other numbers.
4. The line is left out, and a later line that is right and simpler follows from working that is shown, and both are
   linear, so that hardly anything else can lie between; or the scheme says `implied`. Else the teacher decides.

Marks that stand in place of others
-----------------------------------
A special case is given when its line is written, however it came about, and when the scheme itself gives fewer marks;
the sum is then that of the special case. N marks are for a right answer with no working, where the M and A marks
are not given; where working is shown they do not apply. `out_of` counts neither.

Nothing here knows methods that the scheme does not list: where the answer is right and no line shows the method, the
teacher decides. A mark with a misread question, an unread line, a rounded value or two different answers is left to
the teacher too, but for what the rules below settle.

Rules, with their sources as the tests name them: A needs its M (IB instructions 2, Edexcel pure notes 2); a right
answer from wrong working earns nothing by itself (IB 2); after a wrong value M may be earned and A not, unless ft (HKEA
1996 Paper 2, instruction 2); ft stops at a value that cannot be (IB 5) or where the rest has become easier (IB 5-6);
isw (IB 2, Edexcel note 6); the last complete attempt counts (Edexcel note 5); a misread loses the first two A or B
marks that follow from it (Edexcel note 4; the IB of 2010 takes one mark, once, so that this is the most it can lose);
miscopying one's own line is a slip, no misread (IB 6); marks are not subdivided (Edexcel note 2, HKEA 3); answers that
round to a value, awrt, and special cases (Edexcel general notes 3; AQA 8300/2H glossary); N marks (IB 3, to 2012).

    from checker.marking.suggestion import suggested_marks
    suggested_marks(working, report).to_json()
"""
