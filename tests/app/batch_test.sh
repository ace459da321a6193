#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# batch_test.sh PROGRAM SOURCE_DIR: the batch program from outside: exit codes, what goes where, whole files.
set -uo pipefail
program="$1"
samples=("$2"/samples/*.tapward)
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
failed=0

# expect CODE WHAT COMMAND...: runs, keeps stdout and stderr in $work/out and $work/err
expect() {
    local code="$1" what="$2"
    shift 2
    "$@" >"$work/out" 2>"$work/err"
    local got=$?
    if [[ $got -ne $code ]]; then
        echo "FAILED: $what: exit $got, expected $code"
        head -5 "$work/out" "$work/err"
        failed=1
    fi
}
must() {
    local what="$1"
    shift
    if ! "$@" >/dev/null; then
        echo "FAILED: $what"
        failed=1
    fi
}

[[ -f "${samples[0]}" ]] || { echo "FAILED: no samples"; exit 1; }
for sample in "${samples[@]}"; do
    name="$(basename "$sample")"
    expect 0 "predict $name" "$program" predict "$sample"
    must "$name: the table has answers" grep -q "Loop flow" "$work/out"
    must "$name: nothing to complain of" test ! -s "$work/err"
    expect 0 "predict $name --json" "$program" predict "$sample" --json
    must "$name: JSON says its format" grep -q '"format": "tapward-prediction"' "$work/out"
    cp "$work/out" "$work/once"
    expect 0 "predict $name --json again" "$program" predict "$sample" --json
    must "$name: same bytes twice" cmp "$work/once" "$work/out"
    expect 0 "sheet $name" "$program" sheet "$sample" -o "$work/page.pdf" --paper a4
    must "$name: a PDF" grep -qa '^%PDF-' "$work/page.pdf"
    must "$name: nothing on stdout" test ! -s "$work/out"
    expect 0 "parts $name --csv" "$program" parts "$sample" --csv
    must "$name: CSV header" grep -q '^Item,Quantity,Unit,Tags,' "$work/out"
done
sample="${samples[0]}"
case_name="$(grep -o '"name": "[^"]*"' "$work/once" | head -1 | cut -d'"' -f4)"
sample="${samples[-1]}"
expect 0 "predict one case as CSV" "$program" predict "$sample" --case "$case_name" --csv
must "CSV has time first" grep -q '^Time (s),' "$work/out"
expect 2 "CSV of several cases" "$program" predict "$sample" --csv
expect 2 "a case that is not there" "$program" predict "$sample" --case "no such case"
must "says which cases there are" grep -qF "$case_name" "$work/err"
expect 1 "a sample that runs three presses unprotected" "$program" check "${samples[0]}"
must "tells the danger" grep -q '^DANGER' "$work/out"
expect 2 "a file that is not there" "$program" predict "$work/none.tapward"
must "the message is on stderr" test -s "$work/err"
must "and stdout is empty" test ! -s "$work/out"
echo '{"format": "tapward", "version": 1, "parts": [' >"$work/half.tapward"
expect 2 "half a file" "$program" check "$work/half.tapward"
expect 2 "a page nobody can write" "$program" sheet "$sample" -o "$work/no/such/folder/page.pdf"
expect 2 "an unknown command" "$program" cook "$sample"
expect 2 "an unknown paper" "$program" sheet "$sample" -o "$work/page.pdf" --paper napkin
expect 0 "--help" "$program" --help
expect 0 "--version" "$program" --version
if [[ -w /dev/full ]]; then
    "$program" predict "$sample" >/dev/full 2>"$work/err"
    [[ $? -eq 2 ]] || { echo "FAILED: a full disk went unnoticed"; failed=1; }
fi
[[ $failed -eq 0 ]] && echo "batch program: all as expected"
exit $failed
