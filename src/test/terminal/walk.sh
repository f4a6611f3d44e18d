#!/usr/bin/env bash
# Drives the packaged program in a real pseudo-terminal (tmux), from guided planning to the verdict, at 80x24 and at 60x24: Ctrl-C, a resize, a
# kill -9 in the middle of a session, and going on after it. Saves every screen under target/screens, to be looked at.
# Usage: mvn package, then src/test/terminal/walk.sh. Needs tmux. Ends with 0 when every expected text was on its screen.
set -u
cd "$(dirname "$0")/../../.." || exit 1
program=$PWD/target/coldproof/bin/coldproof
screens=$PWD/target/screens
socket=coldproof-walk-$$
work=$(mktemp -d)
failed=0
trap 'tmux -L "$socket" kill-server 2>/dev/null; rm -rf "$work"' EXIT

type_keys() { tmux -L "$socket" send-keys -t walk "$@"; }
line() { type_keys -l -- "$1"; type_keys Enter; }
picture() { tmux -L "$socket" capture-pane -t walk -p > "$screens/$size-$1.txt"; }

# Waits until the screen shows a text, then keeps the screen under a name.
expect() {
  local name=$1 text=$2 tries=0
  until tmux -L "$socket" capture-pane -t walk -p | grep -qF -- "$text"; do
    tries=$((tries + 1))
    if [ "$tries" -gt 150 ]; then
      echo "FAILED at $size-$name: never saw: $text" >&2
      failed=1
      picture "$name-FAILED"
      return 1
    fi
    sleep 0.2
  done
  picture "$name"
}

fits() {
  LC_ALL=C.UTF-8 grep -E ".{$(($1 + 1))}" "$screens/$size"-*.txt || return 0
  echo "FAILED: a line is wider than $1" >&2
  failed=1
}

walk() {
  local columns=$1 rows=$2
  size=${columns}x${rows}
  study=$work/study-$size
  mkdir -p "$study"
  tmux -L "$socket" new-session -d -s walk -x "$columns" -y "$rows" "env PS1='shell> ' bash --norc"
  expect 00-shell 'shell>'
  line "cd $study && clear && $program"
  expect 01-no-study 'coldproof>'
  line guided
  expect 02-factor 'what is changed ['; line fan
  expect 03-baseline 'as it is now ['; line auto
  expect 04-against 'changed [maximum'; line back
  expect 05-back 'as it is now ['; line auto
  expect 06-against 'changed [maximum'; line maximum
  expect 07-change 'y or n'; line y
  expect 08-metric 'what is measured ['; line 'render rate'
  expect 09-unit 'unit>'; line frames/s
  expect 10-better 'higher or lower ['; line ''
  expect 11-matters 'change that matters ['; line '3 %'
  expect 12-claim 'gain or same ['; line ''
  expect 13-noise 'not known>'; line '1,0 %'
  expect 14-trial 'time of a run ['; line '4 min'
  expect 15-soak 'time to settle ['; line '1 s'
  expect 16-draw 'mean power, W>'; line '30 W'
  expect 17-size 'size ['; line 4
  expect 18-device 'device ['; line 'ridge desktop (invented)'
  expect 19-title 'title ['; line ''
  expect 20-summary 'Enter to write it>'; line ''
  expect 21-planned 'written, not frozen yet'
  line 'plan check'
  expect 22-checked 'The plan is consistent: 8 trials'
  line 'plan freeze'
  expect 23-frozen 'Frozen. The digest'
  line log
  expect 24-open 'Enter to begin the session>'; type_keys Enter
  expect 25-soak 'Enter when it has settled>'; sleep 1.5
  expect 26-soaked 'SETTLED'; type_keys Enter
  expect 27-first 'render rate, frames/s>'; line '61.2'
  expect 28-recorded 'Trial 1: 61.200 frames/s. Recorded.'
  type_keys -l '63'; type_keys C-c
  expect 29-interrupted 'Nothing is lost'
  type_keys Enter
  expect 30-second 'Trial 2: 63.000 frames/s. Recorded.'
  line '612'
  expect 31-doubt 'y, or the score again>'; line '63.1'
  expect 32-third 'Trial 3: 63.100 frames/s. Recorded.'
  type_keys u
  expect 33-undone 'Trial 3 (63.100 frames/s) is taken back'
  line '62.9 63.2 63.1'
  expect 34-loops '3 loops, mean 63.067'
  tmux -L "$socket" resize-window -t walk -x 100 -y 40
  sleep 1
  tmux -L "$socket" resize-window -t walk -x "$columns" -y "$rows"
  expect 35-resized 'render rate, frames/s>'
  kill -9 "$(pgrep -f "^[^ ]*java .*$PWD/target/coldproof/lib/coldproof.jar" -P "$(tmux -L "$socket" display-message -t walk -p '#{pane_pid}')")"
  sleep 1
  line 'stty sane; clear'
  line "$program"
  expect 36-after-kill '3 recorded, 5 to come'
  line log
  expect 37-resumed 'TRIAL 4 of 8'
  for score in 61.02 61.11 63.33 63.24 61.35; do
    line "$score"
    sleep 0.6
    tmux -L "$socket" capture-pane -t walk -p | grep -qF 'y, or the score again>' && line y
    expect "38-score-$score" "$score"
  done
  expect 39-last 'Enter to end the session>'; type_keys Enter
  expect 40-all-run 'Nothing is left to run'; type_keys Enter
  expect 40-home 'Next: judge the change'
  type_keys Enter
  expect 41-verdict 'render rate'
  sleep 1
  picture 42-verdict
  line quit
  expect 43-left 'shell>'
  line 'echo back in the shell'
  expect 44-echo 'back in the shell'
  fits "$columns"
  tmux -L "$socket" kill-session -t walk
}

rm -rf "$screens"
mkdir -p "$screens"
walk 80 24
walk 60 24
[ "$failed" = 0 ] && echo "every screen came; look at them in target/screens"
exit "$failed"
