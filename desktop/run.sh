#!/usr/bin/env bash
# Opens Firstslip on FILES, or on the sample pages. With no display it writes the report and says where.
set -u
called_from=$PWD
. "$(dirname "${BASH_SOURCE[0]}")/setup.sh"

files=()
for name in "$@"; do
    case $name in
    /*) files+=("$name") ;;
    *) files+=("$called_from/$name") ;;
    esac
done
if [ ${#files[@]} -eq 0 ]; then
    files=(sample_images/*.jpg sample_images/*.inkml)
fi

if [ "$(uname -s)" = Linux ] && [ -z "${DISPLAY:-}" ] && [ -z "${WAYLAND_DISPLAY:-}" ]; then
    out=$called_from/firstslip-report
    say "There is no display here, so the pages are marked without a window."
    "$PYTHON" -m desktop report "${files[@]}" --out "$out"
    status=$?
    say "The report is in $out: open $out/index.html"
    exit $status
fi
exec "$PYTHON" -m desktop "${files[@]}"
