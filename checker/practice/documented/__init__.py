"""The documented slips planted in fresh workings: `documented_exercise(name, seed)`."""

from checker.practice.documented.setting import (
    PLANTINGS,
    DocumentedExercise,
    documented_exercise,
    documented_exercises,
)

__all__ = ["PLANTINGS", "DocumentedExercise", "documented_exercise", "documented_exercises"]
