"""The desk: the window, the report and the documents behind them. Joins recognition and checker."""
