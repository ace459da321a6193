#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# What a release was hardened with, read back out of what was built: hardened_test.sh <build tree> <program...>
set -uo pipefail
build="$1"
shift
failed=0
lacks() {
    echo "LACKS $*" >&2
    failed=1
}

for program in "$@"; do
    name="${program##*/}"
    headers="$(readelf -Wl "$program")" || lacks "$name: cannot be read"
    dynamic="$(readelf -Wd "$program")"
    symbols="$(readelf -W --dyn-syms "$program")"
    flags="$(grep '(FLAGS_1)' <<<"$dynamic")"
    grep -q 'Elf file type is DYN' <<<"$headers" && grep -qw PIE <<<"$flags" || lacks "$name: position independence"
    grep -q 'GNU_RELRO' <<<"$headers" && grep -qw NOW <<<"$flags" || lacks "$name: full RELRO"
    # GNU_STACK <offset> <two addresses> <two sizes> <flags> <alignment>: readable and writable, not to be run
    grep -Eq 'GNU_STACK( +0x[0-9a-f]+){5} RW +0x' <<<"$headers" || lacks "$name: a stack that cannot be run"
    grep -Eq ' RWE ' <<<"$headers" && lacks "$name: a segment that is not both written and run"
    grep -q '(TEXTREL)' <<<"$dynamic" && lacks "$name: code that the loader leaves alone"
    grep -q 'UND __stack_chk_fail' <<<"$symbols" || lacks "$name: stack protector"
    grep -Eq 'UND __(mem|str|stp|v?s?n?printf|read|f?gets)[a-z]*_chk' <<<"$symbols" || lacks "$name: fortified calls"
done

# CET stands in a note of every object of ours; the linker keeps it only if the C runtime's own start files have it too
# (Debian 12's do not). -D_FORTIFY_SOURCE leaves no note: every file of ours was compiled with it, and optimised.
objects=()
while IFS= read -r -d '' object; do
    objects+=("$object")
done < <(find "$build/core" "$build/app" -name '*.o' -print0)
((${#objects[@]} > 50)) || lacks "objects to read: ${#objects[@]} below $build"
if readelf -h "$1" | grep -Eq 'Machine: .*(X86-64|80386)'; then
    marked="$(readelf -Wn "${objects[@]}" 2>/dev/null | grep -c 'x86 feature: IBT, SHSTK')"
    ((marked == ${#objects[@]})) || lacks "CET: $marked of ${#objects[@]} objects have it"
    start="$(g++ -print-file-name=Scrt1.o 2>/dev/null)"
    if [[ -f "$start" ]] && readelf -Wn "$start" | grep -q 'x86 feature: .*IBT'; then
        for program in "$@"; do
            readelf -Wn "$program" | grep -q 'x86 feature: IBT, SHSTK' || lacks "${program##*/}: CET"
        done
    fi
fi
plain="$(grep '"command"' "$build/compile_commands.json" | grep -E ' -c [^ ]*/(core|app)/' |
    grep -Ev -- ' -D_FORTIFY_SOURCE=[23] .*-fstack-protector-strong ' | sed 's/.* -c \([^ "]*\).*/\1/')"
[[ -z "$plain" ]] || lacks "flags when these were compiled:" $plain
grep -Eq -- ' -O[123] .*-D_FORTIFY_SOURCE' "$build/compile_commands.json" || lacks "optimisation, without which nothing is fortified"

((failed)) || echo "hardened: $*; ${#objects[@]} objects"
exit "$failed"
