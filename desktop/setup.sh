# Sourced by desktop/run.sh and tests/run.sh: installs what is missing, then leaves $PYTHON set.
# EXTRA may name an extra of pyproject.toml, for example "test".
cd "$(dirname "${BASH_SOURCE[0]}")/.." || exit 1
ROOT=$PWD

say() { printf '%s\n' "$*" >&2; }

# Run apt-get, through sudo when not root; print the one line to type when neither is possible.
apt_install() {
    if ! command -v apt-get >/dev/null 2>&1; then
        say "These packages are missing and there is no apt-get here: $*"
        return 1
    fi
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if command -v sudo >/dev/null 2>&1 && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
            as_root=(sudo)
        else
            say "Please install what is missing with this line, then run this command again:"
            say "    apt-get update && apt-get install -y $*     (as root)"
            return 1
        fi
    fi
    say "Installing: $*"
    "${as_root[@]}" apt-get update -qq >&2 &&
        "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >&2
}

good_python() { "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; }

find_python() {
    local name
    for name in python3 python3.14 python3.13 python3.12 python3.11; do
        if command -v "$name" >/dev/null 2>&1 && good_python "$name"; then
            command -v "$name"
            return 0
        fi
    done
    return 1
}

# Shared libraries that Qt and OpenCV load, each with the Debian package that brings it.
system_packages() {
    local libraries pair
    libraries=$( (ldconfig -p 2>/dev/null || /sbin/ldconfig -p 2>/dev/null) || true)
    for pair in libEGL.so.1=libegl1 libGL.so.1=libgl1 libxkbcommon.so.0=libxkbcommon0 libdbus-1.so.3=libdbus-1-3 \
        libfontconfig.so.1=libfontconfig1 libglib-2.0.so.0=libglib2.0-0 libxkbcommon-x11.so.0=libxkbcommon-x11-0 \
        libxcb-cursor.so.0=libxcb-cursor0 libxcb-icccm.so.4=libxcb-icccm4 libxcb-image.so.0=libxcb-image0 \
        libxcb-keysyms.so.1=libxcb-keysyms1 libxcb-randr.so.0=libxcb-randr0 \
        libxcb-render-util.so.0=libxcb-render-util0 libxcb-shape.so.0=libxcb-shape0 \
        libxcb-xkb.so.1=libxcb-xkb1 libX11-xcb.so.1=libx11-xcb1; do
        case $libraries in
        *"${pair%%=*} "*) ;;
        *) printf '%s ' "${pair##*=}" ;;
        esac
    done
    if [ -z "$(find /usr/share/fonts "$HOME/.fonts" "$HOME/.local/share/fonts" -name '*.[to]tf' -print -quit 2>/dev/null)" ]; then
        printf 'fonts-dejavu-core '
    fi
    if [ "${EXTRA:-}" = test ] && ! command -v Xvfb >/dev/null 2>&1; then
        printf 'xvfb '
    fi
}

if [ "$(uname -s)" = Linux ]; then
    missing=$(system_packages)
    # shellcheck disable=SC2086
    if [ -n "$missing" ]; then apt_install $missing || exit 1; fi
fi

PYTHON=$ROOT/.venv/bin/python
wanted="$(cksum <pyproject.toml) $ROOT ${EXTRA:-}"
if ! "$PYTHON" -c 'pass' 2>/dev/null || ! grep -qxF "$wanted" .venv/installed 2>/dev/null; then
    if ! "$PYTHON" -m pip --version >/dev/null 2>&1; then
        base=$(find_python) || { apt_install python3 python3-venv && base=$(find_python); } ||
            { say "Firstslip needs Python 3.11 or newer; install it and run this command again."; exit 1; }
        rm -rf .venv
        if ! "$base" -m venv .venv >/dev/null 2>&1; then
            apt_install python3-venv "$(basename "$(readlink -f "$base")")-venv" || apt_install python3-venv || exit 1
            rm -rf .venv
            "$base" -m venv .venv || exit 1
        fi
    fi
    say "Installing Firstslip into .venv (once; some minutes)"
    "$PYTHON" -m pip install --quiet --disable-pip-version-check --editable ".${EXTRA:+[$EXTRA]}" >&2 ||
        { say "Installing failed: look at the lines above, check the network, and run this command again."; exit 1; }
    touch .venv/installed
    grep -qxF "$wanted" .venv/installed || printf '%s\n' "$wanted" >>.venv/installed
    if [ "${EXTRA:-}" = test ]; then printf '%s\n' "$(cksum <pyproject.toml) $ROOT " >>.venv/installed; fi
fi
