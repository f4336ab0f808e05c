# shellcheck shell=sh
# Sourced by the scripts: how they tell what they do, and how many jobs a build may take.

say() { printf '== %s\n' "$*"; }
fail() {
  printf 'error: %s\n' "$*" >&2
  exit 1
}

# As many jobs as there are processors, but no more than there is free memory for: a compiler on
# template-heavy code takes up to a gigabyte.
build_jobs() {
  processors=$(nproc 2>/dev/null || echo 1)
  free_gb=$(awk '/^MemAvailable:/ { print int($2 / 1048576) }' /proc/meminfo 2>/dev/null || echo 1)
  [ "${free_gb:-1}" -ge 1 ] || free_gb=1
  [ "$processors" -le "$free_gb" ] && echo "$processors" || echo "$free_gb"
}

# build PRESET: configures where that was not done yet or the presets have changed, and builds.
# Everything else that changes is noticed by the build itself.
build() {
  if [ -z "$(find "build/$1/build.ninja" -newer CMakePresets.json 2>/dev/null)" ]; then
    say "Configuring preset '$1'"
    cmake --preset "$1"
  fi
  jobs=$(build_jobs)
  say "Building preset '$1' with $jobs job(s)"
  cmake --build --preset "$1" -j "$jobs"
}
