#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# no_display_test.sh PROGRAM SOURCE_DIR: the window program where there is no display: answers what needs none, else says
# what to do instead and ends in order.
set -uo pipefail
program="$1"
sample="$2/samples/long_hall_coach.tapward"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
failed=0

# expect CODE WORDS ARGUMENTS...: without any display, or with a name of one that is not there
expect() {
    local code="$1" words="$2"
    shift 2
    for display in "-u DISPLAY" "DISPLAY=:42424"; do
        # shellcheck disable=SC2086
        env -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM $display HOME="$work" XDG_CONFIG_HOME="$work" XDG_STATE_HOME="$work" \
            LC_ALL=C.UTF-8 timeout 60 "$program" "$@" >"$work/out" 2>&1
        local got=$?
        if [[ $got -ne $code ]] || ! grep -q -- "$words" "$work/out"; then
            echo "FAILED: tapward $* (env $display): exit $got, expected $code and '$words'"
            head -5 "$work/out"
            failed=1
        fi
    done
}

expect 0 "^Usage" --help
expect 0 "\[FILE\]" -h
expect 0 "^tapward [0-9]" --version
expect 0 "^tapward [0-9]" -v "$sample"
expect 2 "tapward-batch predict" "$sample"
expect 2 "tapward-batch sheet"
[[ $failed -eq 0 ]] && echo "window program without a display: all as expected"
exit $failed
