#!/bin/sh
# sh app/run.sh [CASE]
# Installs what is missing, builds the programs, and opens the window on a demo case. Without a
# display it plans that case on the command line and leaves plan and pictures in build/demo.
set -eu
case ${1:-} in
  '') case_file=demo_cases/traced-150-points.json ;;
  /*) case_file=$1 ;;
  *) case_file=$PWD/$1 ;;
esac
cd "$(dirname "$0")/.."
. scripts/say.sh

sh scripts/install.sh program
build program
window=build/program/app/desktop/drapewright
batch=build/program/app/batch/drapewright-batch

# DISPLAY may name a server that is not there.
has_display() {
  [ -z "${WAYLAND_DISPLAY:-}" ] || return 0
  case ${DISPLAY:-} in
    '') return 1 ;;
    :*) number=${DISPLAY#:} && [ -S "/tmp/.X11-unix/X${number%%.*}" ] ;;
    *) return 0 ;;
  esac
}

if has_display; then
  say "Opening the window on $case_file"
  exec "$window" "$case_file"
fi

say "No display here: planning $case_file on the command line"
export QT_QPA_PLATFORM=offscreen
out=build/demo
mkdir -p "$out"
"$batch" plan "$case_file" --output "$out/plan.txt" --svg "$out/plan.svg" --png "$out/plan.png"
"$batch" plan "$case_file" --json --output "$out/plan.json"
cat "$out/plan.txt"
say "This summary, the plan as JSON, and its pictures are in $PWD/$out:"
ls -l "$out"
