"""Runs in the environment that holds pix2tex, never in ours: one JSON object a line in, one a line out.

First line in: {"checkpoint", "config", "tokenizer": path or null, "threads": n}; out: {"ready": true, "engine": "..."}.
Then {"id": n, "png": base64} in and {"id": n, "latex": "...", "probability": p} or {"id": n, "error": "..."} out.
A start that fails says {"ready": false, "missing": module or null, "error": "..."}. Imports nothing of this project.
"""

from __future__ import annotations

import base64
import io
import json
import sys
from typing import Any

SEED = 20_14
COLDEST = 1e-4
"""The package draws each token by lot; at this temperature the lot always falls on the likeliest."""


def main() -> int:
    out = sys.stdout
    sys.stdout = sys.stderr  # the package and its libraries print as they please
    wanted = json.loads(sys.stdin.readline())
    try:
        engine = _Engine(wanted)
        _say(out, {"ready": True, "engine": engine.name})
    except ModuleNotFoundError as exc:
        _say(out, {"ready": False, "missing": exc.name, "error": str(exc)})
        return 1
    except Exception as exc:
        _say(out, {"ready": False, "missing": None, "error": f"{type(exc).__name__}: {exc}"})
        return 1
    for line in sys.stdin:
        asked = json.loads(line)
        try:
            _say(out, {"id": asked["id"], **engine.read(base64.b64decode(asked["png"]))})
        except Exception as exc:
            _say(out, {"id": asked["id"], "error": f"{type(exc).__name__}: {exc}"})
    return 0


def _say(out: Any, message: dict[str, Any]) -> None:
    out.write(json.dumps(message) + "\n")
    out.flush()


class _Engine:
    def __init__(self, wanted: dict[str, Any]) -> None:
        import torch
        from munch import Munch  # type: ignore[import-not-found]
        from pix2tex import cli  # type: ignore[import-not-found]

        torch.set_num_threads(int(wanted["threads"]))
        # The package copies each reading to the clipboard, which is the user's.
        cli.clipboard.copy = lambda text: None
        arguments = None
        if wanted["checkpoint"] is not None:
            arguments = Munch(
                config=wanted["config"], checkpoint=wanted["checkpoint"], tokenizer=wanted["tokenizer"],
                no_cuda=True, no_resize=False, temperature=COLDEST,
            )  # fmt: skip
        self._torch = torch
        self._ocr = cli.LatexOCR(arguments)
        self._ocr.args.temperature = COLDEST
        self._said: list[tuple[Any, Any]] = []
        generate = self._ocr.model.decoder.generate

        def remembered(begin: Any, *lengths: Any, **options: Any) -> Any:
            said = generate(begin, *lengths, **options)
            self._said.append((options["context"], said))
            return said

        self._ocr.model.decoder.generate = remembered
        from importlib.metadata import version

        self.name = f"pix2tex {version('pix2tex')}"

    def read(self, png: bytes) -> dict[str, Any]:
        from PIL import Image  # type: ignore[import-not-found]

        self._torch.manual_seed(SEED)
        self._said.clear()
        latex = self._ocr(Image.open(io.BytesIO(png)))
        context, said = self._said[-1]
        return {"latex": latex, "probability": self._probability(context, said), "tokens": int(said.shape[-1])}

    def _probability(self, context: Any, said: Any) -> float:
        """Product of the tokens' probabilities, by one more pass of the decoder over what was said."""
        torch, model = self._torch, self._ocr.model
        with torch.no_grad():
            begin = torch.full((1, 1), int(self._ocr.args.bos_token), dtype=torch.long)
            given = torch.cat([begin, said[:, :-1]], dim=1)[:, -int(self._ocr.args.max_seq_len) :]
            logits = model.decoder.net(given, context=context)
            logs = torch.log_softmax(logits.float(), -1).gather(-1, said[:, -given.shape[1] :, None])
        return float(logs.sum().exp())


if __name__ == "__main__":
    sys.exit(main())
