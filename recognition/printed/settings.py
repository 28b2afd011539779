"""Where the second engine lives: its Python, and the checkpoint, configuration and tokenizer of its model."""

from __future__ import annotations

import json
from dataclasses import dataclass, fields
from pathlib import Path

from recognition.errors import InputError

__all__ = ["INSTALL", "PrintedSettings"]

INSTALL = (
    "Make an environment of its own for it (python -m venv ENV; ENV/bin/pip install pix2tex) "
    'and give the path of ENV/bin/python as "python" in the settings.'
)


@dataclass(frozen=True, slots=True)
class PrintedSettings:
    """python: interpreter of the environment that holds pix2tex; it may not be ours, whose OpenCV it would replace.

    checkpoint, config, tokenizer: files of the model; all three, or none when `download` is set.
    download: let the package fetch its default weights, as it does by itself; only when the user says so.
    threads: processor threads. start_s, line_s: seconds to wait for the model to load and for one line.
    """

    python: Path
    checkpoint: Path | None = None
    config: Path | None = None
    tokenizer: Path | None = None
    download: bool = False
    threads: int = 2
    start_s: float = 120.0
    line_s: float = 60.0

    def __post_init__(self) -> None:
        if self.threads < 1 or not (self.start_s > 0 and self.line_s > 0):
            raise InputError(
                "Threads and seconds in the settings of the second engine are positive numbers. Mend them."
            )

    @classmethod
    def from_file(cls, path: Path) -> PrintedSettings:
        """Read a JSON object with the names above; paths may be given relative to the file.

        Raises:
            InputError: the file is no such object.
        """
        try:
            given = json.loads(path.read_text("utf-8"))
        except (OSError, ValueError) as exc:
            raise InputError(f"The settings {path.name} of the second engine cannot be read. Mend the file.") from exc
        kinds = {field.name: field.type for field in fields(cls)}
        if not isinstance(given, dict) or "python" not in given or set(given) - set(kinds):
            raise InputError(
                f"{path.name} is no settings of the second engine: a JSON object with {', '.join(kinds)} is needed, "
                'of which "python" must be there. Mend the file.'
            )
        out: dict[str, object] = {}
        for name, value in given.items():
            wanted: tuple[type, ...] = (str,)
            if name == "download":
                wanted = (bool,)
            elif name in ("threads", "start_s", "line_s"):
                wanted = (int,) if name == "threads" else (int, float)
            if not isinstance(value, wanted) or (isinstance(value, bool) and name != "download"):
                raise InputError(f'"{name}" in {path.name} has a value of the wrong kind. Mend the file.')
            # an interpreter of an environment is a link that must stay one, so paths are joined but not resolved
            out[name] = path.parent.absolute() / value if isinstance(value, str) else value
        return cls(**out)  # type: ignore[arg-type]

    def check(self) -> None:
        """Raises InputError when a file that is needed is not there."""
        if not self.python.is_file():
            raise InputError(f"The second engine's Python {self.python} is not there. {INSTALL}")
        files = {"checkpoint": self.checkpoint, "config": self.config, "tokenizer": self.tokenizer}
        missing = [name for name, file in files.items() if file is None]
        if self.download and len(missing) == len(files):
            return
        if missing:
            raise InputError(
                f"The settings of the second engine name no {' and no '.join(missing)}. Name these files, or set "
                '"download" to true to let pix2tex fetch its own.'
            )
        for name, file in files.items():
            if file is not None and not file.is_file():
                raise InputError(f"The second engine's {name} {file} is not there. Put it there or mend the settings.")
