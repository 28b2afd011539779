"""What does each written line say? Knows nothing of Qt or of the checker."""

import os
from typing import TYPE_CHECKING, Any

os.environ["ORT_DISABLE_TELEMETRY"] = "1"  # ONNX Runtime from 1.29 on sends usage data unless told before it is loaded

if TYPE_CHECKING:
    from recognition.read import read_file

__all__ = ["read_file"]


def __getattr__(name: str) -> Any:
    if name == "read_file":  # looked up when asked for: training runs where the page stage's packages are not installed
        from recognition.read import read_file

        return read_file
    raise AttributeError(name)
