#!/bin/sh
# Media that fill up, turn read-only or are pulled out, and two processes on one study, with the packaged program on real mounts.
# Needs root and mount: media.sh [LAUNCHER]. Prints one line a check; ends with 1 if one failed.
set -u
here=$(cd "$(dirname "$0")/../../.." && pwd)
coldproof=${1:-$here/target/coldproof/bin/coldproof}
work=$(mktemp -d)
medium=$work/medium
spare=$work/spare
mkdir "$medium" "$spare"
failed=0
if ! mount -t tmpfs -o size=256k tmpfs "$medium" 2>/dev/null; then
  echo "skipped: mounting is not allowed here"
  rm -rf "$work"
  exit 0
fi
trap 'umount -l "$medium" 2>/dev/null; rm -rf "$work"' EXIT

# check WHAT STATUS_EXPECTED STATUS PATTERN FILE
check() {
  if [ "$2" = "$3" ] && grep -q -- "$4" "$5" && ! grep -q 'Exception\|	at ' "$5"; then
    echo "ok    $1"
  else
    echo "FAIL  $1: status $3, expected $2 and \"$4\" in:"
    cat "$5"
    failed=1
  fi
}
trials() { "$coldproof" journal check "$1" --json | sed 's/.*"trials":\([0-9]*\).*/\1/'; }
count() {
  n=$(trials "$2")
  if [ "$n" = "$3" ]; then echo "ok    $1"; else echo "FAIL  $1: $n trials, expected $3"; failed=1; fi
}
study() {
  "$coldproof" plan new --from fan-alternating --study "$1" >/dev/null && "$coldproof" plan freeze --study "$1" >/dev/null
}

s=$medium/study
study "$s"
"$coldproof" record --study "$s" -- sleep 30 >/dev/null 2>&1 &
sleep 2
"$coldproof" record --study "$s" -- true >"$work/out" 2>&1
check "a second process is told who holds the study" 2 $? 'open in another process: process [0-9]* since' "$work/out"
holder=$(sed -n 's/.*process: process \([0-9]*\) since.*/\1/p' "$work/out")
kill -9 "$holder"
wait
"$coldproof" record --study "$s" -- true >"$work/out" 2>&1
check "the lock of a killed process opens by itself" 0 $? 'trial 1 of' "$work/out"

mount -o remount,ro "$medium"
"$coldproof" record --study "$s" -- true >"$work/out" 2>&1
check "a read-only medium is said" 2 $? 'medium is read-only' "$work/out"
"$coldproof" journal check "$s" >"$work/out" 2>&1
check "a read-only medium can be read" 0 $? 'sound. 4 entries, 1 trial' "$work/out"
"$coldproof" record --trials 2 --study "$s" --elsewhere "$spare/ro.jsonl" -- true >"$work/out" 2>&1
check "work goes on elsewhere" 0 $? 'trial 3 of' "$work/out"
"$coldproof" record --study "$s" --elsewhere "$spare/ro.jsonl" -- true >"$work/out" 2>&1
check "and goes on there next time" 0 $? 'trial 4 of' "$work/out"
mount -o remount,rw "$medium"
"$coldproof" record --study "$s" --elsewhere "$spare/ro.jsonl" -- true >"$work/out" 2>&1
check "what is elsewhere is to be brought in first" 2 $? 'journal merge' "$work/out"
"$coldproof" journal merge "$spare/ro.jsonl" --study "$s" >"$work/out" 2>&1
check "and is brought in" 0 $? 'sound' "$work/out"
count "nothing is lost or doubled by it" "$s" 4

dd if=/dev/zero of="$medium/filler" bs=1k count=1000 2>/dev/null
done=4 # the last page of the journal still has room for some entries
while "$coldproof" record --study "$s" -- true >"$work/out" 2>&1 && [ "$done" -lt 24 ]; do
  done=$((done + 1))
done
"$coldproof" record --study "$s" -- true >"$work/out" 2>&1
check "a full disk is said" 2 $? 'the disk is full' "$work/out"
grep -q 'its score was' "$work/out" || { echo "FAIL  the score is not said"; cat "$work/out"; failed=1; }
count "every acknowledged trial counts, nothing half written does" "$s" "$done"
"$coldproof" record --study "$s" --elsewhere "$spare/full.jsonl" -- true >"$work/out" 2>&1
check "a full disk sends the entry elsewhere" 0 $? 'Entries are in' "$work/out"
rm "$medium/filler"
"$coldproof" journal merge "$spare/full.jsonl" --study "$s" >"$work/out" 2>&1
check "and it is brought in once there is room" 0 $? 'sound' "$work/out"
count "once" "$s" $((done + 1))

"$coldproof" record --study "$s" -- umount -l "$medium" >"$work/out" 2>&1
check "a medium pulled out in the middle is said, with the score" 2 $? 'medium removed' "$work/out"
grep -q 'its score was' "$work/out" || { echo "FAIL  the score is not said"; cat "$work/out"; failed=1; }

study "$work/other"
mv "$work/other/journal.jsonl" "$spare/kept.jsonl"
"$coldproof" record --study "$work/other" -- true >"$work/out" 2>&1
check "a journal that went missing is not begun anew" 2 $? 'plan is not frozen' "$work/out"
exit $failed
