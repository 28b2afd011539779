"""The desk: the window, the report and the documents behind them. Joins recognition and checker."""

import os

os.environ["ORT_DISABLE_TELEMETRY"] = "1"  # ONNX Runtime from 1.29 on sends usage data unless told before it is loaded
