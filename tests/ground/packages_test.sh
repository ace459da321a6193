#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# What .ci/packages takes for installed, asked of a made-up package list: packages_test.sh <source tree>
set -uo pipefail
source "$1/.ci/packages" || exit 1
box="$(mktemp -d)"
trap 'rm -rf -- "$box"' EXIT
failed=0

# The real dpkg-query on a made-up status file; stand-ins for what would change the system.
command -v dpkg-query >/dev/null || { echo "Not a Debian system: nothing to ask."; exit 77; }
mkdir -p "$box/dpkg/updates" "$box/dpkg/info"
package() {  # package <name> <status> [<what it provides>]
    printf 'Package: %s\nStatus: %s\nArchitecture: all\nVersion: 6.8\nMaintainer: nobody\nDescription: a stand-in\n' "$1" "$2"
    printf '%s\n' "${3:+Provides: $3}" | sed '/^$/d'
    echo
}
{
    package chart-dev "install ok installed"
    package window-dev "install ok installed" "gl-dev (= 6.8.2+dfsg-9), gl-abi-6"
    package compiler "install ok installed" "c-compiler, c++-compiler"
    package once-here-dev "deinstall ok config-files" "once-provided-dev (= 1)"
} >"$box/dpkg/status"
export DPKG_ADMINDIR="$box/dpkg"
cat >"$box/apt-get" <<END
#!/bin/bash
echo "apt-get \$*" >>"$box/log"
END
cat >"$box/sudo" <<END
#!/bin/bash
echo sudo >>"$box/log"
"\$@"
END
chmod -R a+rX "$box"
chmod a+x "$box/apt-get" "$box/sudo"
touch "$box/log"
chmod 666 "$box/log"
paths="$PATH"
export PATH="$box:$paths"

# expect <what> <status> <text on stdout and stderr> <lines in the log> <package...>
expect() {
    local what="$1" status="$2" text="$3" log="$4" got_status got_text
    shift 4
    : >"$box/log"
    got_text="$(need_packages "$@" 2>&1)"
    got_status=$?
    if [[ $got_status != "$status" || "$got_text" != "$text" || "$(<"$box/log")" != "$log" ]]; then
        printf 'FAILED: %s\n status %s, wanted %s\n text "%s", wanted "%s"\n log "%s", wanted "%s"\n' \
            "$what" "$got_status" "$status" "$got_text" "$text" "$(<"$box/log")" "$log" >&2
        failed=1
    fi
}

installs() {  # what the log holds once these were installed
    local sudo=()
    ((EUID == 0)) || sudo=(sudo)
    printf '%s\n' "${sudo[@]}" "apt-get update -qq" "${sudo[@]}" "apt-get install -y -qq --no-install-recommends $*" | sed '/^$/d'
}

expect "everything is there, by name or by what stands in for it" 0 "" "" \
    chart-dev window-dev gl-dev gl-abi-6 c++-compiler compiler
expect "a missing package is installed, and it alone" 0 "Installing font" "$(installs font)" chart-dev font gl-dev
expect "part of a name is not the name" 0 "Installing gl window dev c+" "$(installs gl window dev c+)" gl window dev c+
expect "a version is no name" 0 "Installing 6.8.2+dfsg-9 (=" "$(installs '6.8.2+dfsg-9 (=')" 6.8.2+dfsg-9 '(='
expect "removed is not installed, and stands in for nothing" 0 "Installing once-here-dev once-provided-dev" \
    "$(installs once-here-dev once-provided-dev)" once-here-dev once-provided-dev

# An ordinary user without sudo is told what to install, and needs nothing when all is there. (Root becomes nobody.)
rm "$box/sudo"
ordinary() {
    local as=()
    if ((EUID == 0)); then
        as=(setpriv --reuid=65534 --regid=65534 --clear-groups)
    elif command -v sudo >/dev/null; then
        return 0  # this user has one
    fi
    local out status
    out="$("${as[@]}" bash -c "$(declare -f installed_names need_packages)"'; need_packages "$@" 2>&1' _ "${@:3}")"
    status=$?
    [[ $status == "$1" && "$out" == "$2" ]] && return 0
    printf 'FAILED: as an ordinary user: status %s, "%s", wanted %s, "%s"\n' "$status" "$out" "$1" "$2" >&2
    failed=1
}
if ((EUID == 0)) && command -v sudo >/dev/null; then  # the system's own sudo is not to be found either
    for tool in bash sed grep dpkg-query setpriv; do
        ln -s "$(command -v "$tool")" "$box/$tool"
    done
    PATH="$box"
fi
ordinary 0 "" chart-dev gl-dev
ordinary 1 "Installing font
Please install as root: apt-get install -y --no-install-recommends font" chart-dev font gl-dev
PATH="$paths"
exit "$failed"
