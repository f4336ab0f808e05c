#!/bin/sh
# sh tests/run.sh [release|sanitize|core]
# Installs what is missing, builds, and runs the tests; ctest's summary comes last.
set -eu
cd "$(dirname "$0")/.."
. scripts/say.sh

preset=${1:-release}
case $preset in
  core) packages=core ;;
  release | sanitize) packages=tests ;;
  *) fail "unknown preset '$preset'; expected release, sanitize or core" ;;
esac
sh scripts/install.sh "$packages"
[ "$preset" = core ] || sh scripts/fhir_schema.sh
build "$preset"

# No window needs to appear: tests that want a real one start a display of their own.
export QT_QPA_PLATFORM="${QT_QPA_PLATFORM:-offscreen}"
# What Qt, fontconfig and the like never free is theirs; every other leak fails a test.
export LSAN_OPTIONS="suppressions=$PWD/tests/support/leaks.supp:print_suppressions=0"
export UBSAN_OPTIONS="print_stacktrace=1"

# The sanitized run leaves out the tests beside GEOS and OpenCV: they run the same code for minutes,
# and the release run has them.
say "Running the tests of preset '$preset'"
ctest --preset "$preset" -j "$(nproc 2>/dev/null || echo 1)"
