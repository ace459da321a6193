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
    expect 0 "predict $name --quick" "$program" predict "$sample" --quick
    must "$name: the table has answers" grep -q "Loop flow" "$work/out"
    must "$name: and says that it does not know all" grep -q "Hottest at a tap .*at least" "$work/out"
    must "$name: nothing to complain of" test ! -s "$work/err"
    expect 0 "predict $name --json" "$program" predict "$sample" --json
    must "$name: JSON says its format" grep -q '"format": "tapward-prediction"' "$work/out"
    cp "$work/out" "$work/once"
    expect 0 "predict $name --json again" "$program" predict "$sample" --json
    must "$name: same bytes twice" cmp "$work/once" "$work/out"
    expect 0 "parts $name --csv" "$program" parts "$sample" --csv
    must "$name: CSV header" grep -q '^Item,Quantity,Unit,Tags,' "$work/out"
done
# One figure for one question, whoever is asked. (Where the search is the strongest there is.)
expect 1 "check ${samples[0]}" "$program" check "${samples[0]}"
must "tells the danger" grep -q '^DANGER' "$work/out"
checked="$(sed -n 's/^DANGER [^ ]*: Water at \([^ ]*\) reaches \([0-9]* °F\).*/\1 \2/p' "$work/out")"
expect 0 "predict ${samples[0]}" "$program" predict "${samples[0]}"
predicted="$(sed -n 's/^ *Hottest at a tap  *\([0-9]* °F\)  \([^:]*\):.*/\2 \1/p' "$work/out")"
expect 0 "study ${samples[0]}" "$program" study --presses "${samples[0]}"
studied="$(sed -n 's/^ *\([^ ,]*\), hot  *\([0-9]* °F\).*/\1 \2/p' "$work/out" | head -1)"
[[ -n "$checked" && "$checked" == "$predicted" && "$checked" == "$studied" ]] ||
    { echo "FAILED: check says '$checked', predict '$predicted', study '$studied'"; failed=1; }
expect 0 "sheet ${samples[0]}" "$program" sheet "${samples[0]}" -o "$work/page.pdf" --paper a4
must "a PDF" grep -qa '^%PDF-' "$work/page.pdf"
must "nothing on stdout" test ! -s "$work/out"
if command -v pdftotext >/dev/null; then
    pdftotext "$work/page.pdf" "$work/page.txt"
    must "the page says the same" grep -qF "${checked#* }" "$work/page.txt"
fi

sample="${samples[0]}"
case_name="$(grep -o '"name": "[^"]*"' "$work/once" | head -1 | cut -d'"' -f4)"
sample="${samples[-1]}"
expect 0 "predict one case as CSV" "$program" predict "$sample" --case "$case_name" --csv
must "CSV has time first" grep -q '^Time (s),' "$work/out"
expect 2 "CSV of several cases" "$program" predict "$sample" --csv
expect 2 "a case that is not there" "$program" predict "$sample" --case "no such case"
must "says which cases there are" grep -qF "$case_name" "$work/err"
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
# A coach without a loop: nothing to search, so that the rest is quick.
sample="$2/resources/templates/small_travel_trailer.tapward"
expect 0 "a page of it" "$program" sheet "$sample" -o "$work/page.pdf"
# Files that may not grow past 1 KiB: as on a full disk.
(trap '' XFSZ; ulimit -f 1; exec "$program" predict "$sample" >"$work/small" 2>/dev/null)
[[ $? -eq 2 ]] || { echo "FAILED: a full disk went unnoticed"; failed=1; }
(trap '' XFSZ; ulimit -f 1; exec "$program" sheet "$sample" -o "$work/page.pdf" >/dev/null 2>&1)
[[ $? -eq 2 ]] || { echo "FAILED: a full disk went unnoticed by sheet"; failed=1; }
must "the page that was there is whole" grep -qa '^%%EOF' "$work/page.pdf"

# What is no file is written to or read from, and is there afterwards.
mkfifo "$work/pipe"
cat "$work/pipe" >"$work/piped.pdf" &
expect 0 "sheet into a pipe" timeout 60 "$program" sheet "$sample" -o "$work/pipe"
must "the pipe is still a pipe" test -p "$work/pipe"
[[ -p "$work/pipe" ]] && wait $!
must "the page went through it" grep -qa '^%%EOF' "$work/piped.pdf"
expect 0 "sheet to standard output" "$program" sheet "$sample" -o -
must "the page is there" grep -qa '^%%EOF' "$work/out"
ln -s /proc/self/fd/1 "$work/stdout"
echo "before" >"$work/both"
"$program" sheet "$sample" -o "$work/stdout" >>"$work/both" 2>"$work/err"
must "a name for standard output is still a link" test -L "$work/stdout"
must "what was there comes first" grep -qax 'before' "$work/both"
must "then the page" grep -qa '^%%EOF' "$work/both"
expect 0 "the drawing from standard input" "$program" parts - <"$sample"
cp "$work/out" "$work/once"
cat "$sample" >"$work/pipe" &
expect 0 "the drawing from a pipe" timeout 60 "$program" parts "$work/pipe"
must "the same list" cmp "$work/once" "$work/out"
yes '{' 2>/dev/null | timeout 60 "$program" check - >"$work/out" 2>"$work/err"
[[ ${PIPESTATUS[1]} -eq 2 ]] || { echo "FAILED: input without end was not refused"; failed=1; }
expect 2 "a folder is no drawing" "$program" check "$work"
[[ $failed -eq 0 ]] && echo "batch program: all as expected"
exit $failed
