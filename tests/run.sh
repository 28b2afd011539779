#!/usr/bin/env bash
# Installs what is missing, then runs the style check, the type check and every test.
set -u
EXTRA=test
. "$(dirname "${BASH_SOURCE[0]}")/../desktop/setup.sh"

status=0
"$PYTHON" -m ruff check . || status=1
"$PYTHON" -m mypy || status=1
"$PYTHON" -m pytest "$@" || status=1
exit $status
