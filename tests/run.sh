#!/bin/sh
set -eu
preset=${1:-release}
cmake --preset "$preset" && cmake --build --preset "$preset" && ctest --preset "$preset"
