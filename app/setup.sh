# Sourced by app/start.sh and tests/run.sh: installs what is missing, configures and builds.
# Everything goes to .build/ in the project's folder; words about progress go to standard error.

say() { printf '%s\n' "$*" >&2; }

# need_packages PACKAGE...: installs the Debian packages that are not there yet.
need_packages() {
    missing=""
    for package in "$@"; do
        case "$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null)" in
            "install ok installed") ;;
            *) missing="$missing $package" ;;
        esac
    done
    [ -n "$missing" ] || return 0
    if [ "$(id -u)" -eq 0 ]; then as_root=""
    elif command -v sudo >/dev/null 2>&1; then as_root="sudo"
    else
        say "These Debian packages are missing:$missing"
        say "Install them as root (apt-get install$missing), or install sudo, then run this again."
        return 1
    fi
    say "Installing:$missing"
    setup_log=$(mktemp)
    if ! { $as_root apt-get update && $as_root env DEBIAN_FRONTEND=noninteractive \
               apt-get install -y --no-install-recommends $missing; } >"$setup_log" 2>&1 </dev/null; then
        tail -n 20 "$setup_log" >&2
        say "Installing packages failed; the lines above say why."
        return 1
    fi
    rm -f "$setup_log"
}

build_packages="g++ cmake ninja-build ccache libeigen3-dev libsqlite3-dev nettle-dev nlohmann-json3-dev libcli11-dev \
qt6-base-dev qt6-3d-dev libqt6opengl6-dev qt6-svg-dev qt6-tools-dev qt6-l10n-tools libgl1-mesa-dri libqt6svg6 fonts-dejavu-core"
test_packages="catch2 liborocos-kdl-dev libfcl-dev python3 python3-jsonschema \
xvfb xdotool openbox dbus at-spi2-core python3-pyatspi gir1.2-atspi-2.0 python3-gi"

# build_in FOLDER TARGET [CMAKE OPTION...]: configures .build/FOLDER once and builds TARGET ("all" for all).
build_in() {
    folder="$root/.build/$1"; target="$2"; shift 2
    mkdir -p "$folder"
    log="$folder/build.log"
    if [ ! -f "$folder/build.ninja" ]; then
        say "Configuring $folder"
        if ! cmake -S "$root" -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release "$@" >"$log" 2>&1; then
            cat "$log" >&2; rm -f "$folder/build.ninja"; return 1
        fi
        say "Building (a few minutes the first time)"
    fi
    if ! cmake --build "$folder" --target "$target" >"$log" 2>&1; then
        grep -E 'error|FAILED|Error' -A 6 "$log" | head -n 60 >&2
        say "The build failed; all of it is in $log"
        return 1
    fi
}
