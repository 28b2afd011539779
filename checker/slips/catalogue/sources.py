"""Published sources of the documented slips, each with what of it was read."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["SOURCES", "Source", "source_of"]


@dataclass(frozen=True, slots=True)
class Source:
    """A work and how far it was seen when the catalogue was made."""

    cite: str
    status: str


SOURCES = {
    "A82": Source(
        "Anderson 1982, Error patterns in the simplification of polynomial expressions (MA thesis, "
        "Memorial University)",
        "abstract seen: 200 pupils, 15 systematic errors in sign, wrong operation, distribution, "
        "exponent",
    ),
    "B84": Source(
        "Booth 1984, Algebra: children's strategies and errors (NFER-Nelson)",
        "teacher's summary seen; details from memory",
    ),
    "C13": Source(
        "Cangelosi et al. 2013, The negative sign and exponential expressions, Journal of Mathematical "
        "Behavior 32",
        "abstract seen",
    ),
    "CW05": Source(
        "Chua & Wood 2005, Working with logarithms: students' misconceptions and errors, The Mathematics"
        " Educator 8(2):53-70",
        "abstract seen: over-generalised algebraic rules",
    ),
    "H02": Source(
        "Hall 2002, An analysis of errors made in the solution of simple linear equations",
        "abstract seen: transposing, switching addends, division are about 3/4 of 166 errors",
    ),
    "HL94": Source(
        "Herscovics & Linchevski 1994, A cognitive gap between arithmetic and algebra, Educational "
        "Studies in Mathematics 27",
        "abstract seen: a numeral is detached from the minus before it",
    ),
    "K92": Source(
        "Kieran 1992, The learning and teaching of school algebra (Handbook of Research on Mathematics "
        "Teaching and Learning)",
        "from memory",
    ),
    "L10": Source(
        "Lim 2010, An error analysis of Form 2 students in simplifying algebraic expressions, EJREP "
        "8(1):139-162",
        "abstract seen: 265 pupils, 12 kinds; bracket expansion, negative integers",
    ),
    "LAM": Source(
        "Lamar University online notes, Common Math Errors: Algebra Errors",
        "first part seen",
    ),
    "LOG": Source(
        "A computer model of pupils' errors in logarithms (Chinese University of Hong Kong conference "
        "paper): 14 primary mal-rules explain 90.71 % of errors",
        "abstract seen",
    ),
    "M82": Source(
        "Matz 1982, Towards a process model for high school algebra errors (in Intelligent Tutoring "
        "Systems, Academic Press)",
        "from memory",
    ),
    "MaE": Source(
        "Misconceptions dataset MaE, 55 kinds, 220 examples (MIT; arXiv 2412.03765)",
        "opened",
    ),
    "OS": Source(
        "OpenStax algebra textbooks (CC BY-NC-SA 4.0)",
        "opened; the module states the rule or a caution, not always the slip itself",
    ),
    "P16": Source(
        "Pournara, Hodgen, Sanders & Adler 2016, Learners' errors in secondary algebra, Pythagoras 37(1)"
        " a334 (CC BY)",
        "abstract seen",
    ),
    "PRACTICE": Source(
        "common practice of the trade, no source opened",
        "from memory",
    ),
    "PS90": Source(
        "Payne & Squibb 1990, Algebra mal-rules and cognitive accounts of error, Cognitive Science "
        "14:445-481, doi 10.1207/s15516709cog1403_4",
        "record seen; its rule list from memory",
    ),
    "PUP": Source(
        "5,339 pupils' recorded steps in linear equations (CC BY 4.0; arXiv 2305.06163)",
        "opened; counts by this catalogue's author",
    ),
    "R11": Source(
        "Ruhl, Belward & Balatti 2011, A systematic analysis of errors in the simplification of a "
        "rational expression",
        "abstract seen: 95 scripts",
    ),
    "S84": Source(
        "Sleeman 1984, An attempt to understand students' understanding of basic algebra, Cognitive "
        "Science 8:387-412 (also ERIC ED 258 847)",
        "abstract seen; its rule list from memory",
    ),
    "T24": Source(
        "Theba, Pournara & Takker 2024, Simplifying algebraic expressions with brackets, Pythagoras "
        "45(1) a783 (CC BY)",
        "abstract seen: brackets read as multiplication where there is subtraction",
    ),
    "TA01": Source(
        "Tsamir & Almog 2001, Students' strategies and difficulties: the case of algebraic inequalities,"
        " IJMEST 32",
        "from memory",
    ),
    "VC06": Source(
        "Vaiyavutjamai & Clements 2006, Effects of classroom instruction on students' understanding of "
        "quadratic equations, MERJ 18",
        "from memory",
    ),
}


def source_of(reference: str) -> Source:
    """The source of a reference such as "S84", or "OS m82528" with its module or number."""
    return SOURCES[reference.split()[0]]
