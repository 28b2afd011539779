"""Equations with sines and the like: bounds, whole periods, general solutions, degrees and radians."""

import pytest

from tests.checker.verdict_letters import check

# Worked by hand (common practice, no source). The letters are those of `verdict_letters`.
CASES = [
    ((r"\sin x=\frac12", r"x=30^\circ, 150^\circ"), "0f", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin x=\frac12", r"x=30^\circ, 150^\circ"), "0f", {"givens": (r"0\le x<360",)}, None),
    ((r"\sin x=\frac12", "x=30, 150"), "0f", {"givens": (r"0\le x<360",)}, None),
    ((r"\sin x=\frac12", r"x=30^\circ"), "0l", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin x=\frac12", r"x=30^\circ, 210^\circ"), "0S", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin x=\frac12", r"x=\frac{\pi}{6},\frac{5\pi}{6}"), "0f", {"givens": (r"0\le x<2\pi",)}, None),
    ((r"\sin x=\frac12", r"x=\frac{\pi}{6},\frac{7\pi}{6}"), "0S", {"givens": (r"0\le x<2\pi",)}, None),
    ((r"\sin x=\frac12, 0\le x<2\pi", r"x=\frac{\pi}{6},\frac{5\pi}{6}"), "0f", {}, None),
    ((r"\sin x=\frac12, 0^\circ\le x\le360^\circ", r"x=30^\circ,150^\circ"), "0f", {}, None),
    ((r"\sin x=\frac12 \quad 0^\circ\le x\le360^\circ", r"x=30^\circ"), "0l", {}, None),
    ((r"\sin x=\frac12", r"x=30^\circ, 150^\circ"), "0?", {}, None),
    ((r"\sin x=\frac12", r"x=30^\circ"), "0.", {}, None),
    ((r"\sin x=\frac12", r"x=60^\circ"), "0S", {}, None),
    ((r"\sin x=\frac12", r"x=30^\circ+360^\circ n \text{ or } x=150^\circ+360^\circ n"), "0f", {}, None),
    ((r"\sin x=\frac12", r"x=\frac{\pi}{6}+2n\pi, \frac{5\pi}{6}+2n\pi"), "0f", {}, None),
    ((r"\sin x=\frac12", r"x=\frac{\pi}{6}+2k\pi \text{ or } x=\frac{5\pi}{6}+2k\pi, k\in\mathbb{Z}"), "0f", {}, None),
    ((r"\sin x=\frac12", r"x=\frac{\pi}{6}+n\pi"), "0S", {}, None),
    ((r"\cos x=\frac12", r"x=\pm\frac{\pi}{3}+2n\pi"), "0f", {}, None),
    ((r"\cos x=\frac12", r"x=60^\circ, 300^\circ"), "0f", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\cos x=\frac12", r"x=60^\circ, 120^\circ"), "0S", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\tan x=1", r"x=45^\circ, 225^\circ"), "0f", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\tan x=1", r"x=\frac{\pi}{4}+n\pi"), "0f", {}, None),
    (
        (r"2\sin x-1=0", r"\sin x=\frac12", r"x=30^\circ,150^\circ"),
        "0ff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"2\sin x-1=0", r"\sin x=-\frac12"), "0S", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"2\sin x-1=0", r"\sin x=2"), "0S", {}, None),
    (
        (r"2\cos^2x-\cos x-1=0", r"(2\cos x+1)(\cos x-1)=0", r"\cos x=-\frac12 \text{ or } \cos x=1",
         r"x=120^\circ,240^\circ,0^\circ"),
        "0fff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"2\cos^2x-\cos x-1=0", r"(2\cos x-1)(\cos x+1)=0"), "0S", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    (
        (r"2\sin^2x+3\cos x=0", r"2(1-\cos^2x)+3\cos x=0", r"2-2\cos^2x+3\cos x=0", r"2\cos^2x-3\cos x-2=0",
         r"(2\cos x+1)(\cos x-2)=0", r"\cos x=-\frac12", r"x=120^\circ,240^\circ"),
        "0ffffff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"2\sin^2x+3\cos x=0", r"2(1+\cos^2x)+3\cos x=0"), "0S", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin 2x=\cos x", r"2\sin x\cos x=\cos x", r"2\sin x=1"), "0fl", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    (
        (r"\sin 2x=\cos x", r"2\sin x\cos x-\cos x=0", r"\cos x(2\sin x-1)=0", r"\cos x=0 \text{ or } \sin x=\frac12"),
        "0fff", {}, None,
    ),
    (
        (r"\sin(2x)=\frac{\sqrt3}{2}", r"2x=60^\circ,120^\circ,420^\circ,480^\circ",
         r"x=30^\circ,60^\circ,210^\circ,240^\circ"),
        "0ff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    (
        (r"\sin(2x)=\frac{\sqrt3}{2}", r"2x=60^\circ,120^\circ", r"x=30^\circ,60^\circ"),
        "0lf", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    (
        (r"\sin(x+30^\circ)=\frac12", r"x+30^\circ=30^\circ,150^\circ,390^\circ", r"x=0^\circ,120^\circ"),
        "0.f", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"\sin x=0.4", r"x=23.6^\circ,156.4^\circ"), "0f", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin x=0.4", r"x=\sin^{-1}(0.4)", r"x=23.6^\circ"), "0l?", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin x=0.4", r"x=23.6^\circ,203.6^\circ"), "0S", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\tan\theta=2", r"\theta=63.4^\circ,243.4^\circ"), "0f", {"givens": (r"0\le\theta<360",)}, None),
    ((r"\tan\theta=2", r"\theta=63.4,243.4"), "0f", {"givens": (r"0\le\theta<360",)}, None),
    ((r"\sin x=\cos x", r"\tan x=1", r"x=45^\circ,225^\circ"), "0ff", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"3\sin x=4\cos x", r"\tan x=\frac43"), "0f", {}, None),
    ((r"3\sin x=4\cos x", r"\tan x=\frac34"), "0S", {}, None),
    (
        (r"\sin^2x=\frac14", r"\sin x=\pm\frac12", r"x=30^\circ,150^\circ,210^\circ,330^\circ"),
        "0ff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"\sin^2x=\frac14", r"\sin x=\frac12"), "0l", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    (
        (r"\cos 2x=\sin x", r"1-2\sin^2x=\sin x", r"2\sin^2x+\sin x-1=0", r"(2\sin x-1)(\sin x+1)=0",
         r"x=30^\circ,150^\circ,270^\circ"),
        "0ffff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"\cos x=2", r"\text{no solutions}"), "0f", {}, None),
    ((r"\sin x=1", r"x=90^\circ"), "0f", {"givens": (r"0^\circ\le x<360^\circ",)}, None),
    ((r"\sin x=1", "x=90"), "0f", {"givens": (r"0\le x<360",)}, None),
    (
        (r"\sin x=-\frac12", r"x=-30^\circ", r"x=210^\circ,330^\circ"),
        "0.f", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    (
        (r"\sin x=\frac{1}{2}", r"x=30^\circ", r"x=180^\circ-30^\circ=150^\circ"),
        "0.f", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    (
        (r"\sin x=\frac{1}{2}", r"x=30^\circ \text{ or } x=180^\circ-30^\circ"),
        "0f", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    ((r"\sec x=2", r"\cos x=\frac12", r"x=\frac{\pi}{3},\frac{5\pi}{3}"), "0ff", {"givens": (r"0\le x<2\pi",)}, None),
    ((r"\sin\theta=\frac{3}{5}", r"\cos\theta=\frac45"), "0?", {}, None),
    ((r"\sin^2\theta+\cos^2\theta=1", r"\cos^2\theta=1-\sin^2\theta"), "0f", {}, None),
    ((r"\tan x=\frac{\sin x}{\cos x}", r"\sin x=\tan x\cos x"), "0?", {}, None),
    ((r"\sin x = 0.5, \quad 0 \le x \le 180", r"x=30 \text{ or } 150"), "0f", {}, None),
    (
        (r"4\cos x+1=0", r"\cos x=-0.25", r"x=104.5^\circ, 255.5^\circ"),
        "0ff", {"givens": (r"0^\circ\le x<360^\circ",)}, None,
    ),
    (
        (r"\frac{\sin A}{7}=\frac{\sin 40^\circ}{5}", r"\sin A=\frac{7\sin40^\circ}{5}", r"A=64.1^\circ"),
        "0f.", {}, None,
    ),
    ((r"a^2=5^2+8^2-2(5)(8)\cos60^\circ", "a^2=49", "a=7"), "0fl", {}, None),
    ((r"a^2=5^2+8^2-2(5)(8)\cos60^\circ", "a^2=129"), "0S", {}, None),
    ((r"a^2=5^2+8^2-2(5)(8)\cos60", "a^2=49"), "0f", {}, None),
    ((r"\sin 30", "=0.5"), "0f", {}, None),
    ((r"x=5\sin 40", "x=3.21"), "0f", {}, None),
    ((r"x=5\sin 40", "x=3.31"), "0S", {}, None),
    ((r"\cos x=0.6", "x=53.1"), "0.", {}, None),
]


@pytest.mark.parametrize(("lines", "verdicts", "options", "correct"), CASES)
def test_verdicts(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    check(lines, verdicts, options, correct)
