#!/bin/sh
# sh scripts/install.sh core|program|tests
# Installs the Debian packages that a build needs and that are not there yet. Each set holds the
# one before it. Asks the package index only when something is missing.
set -eu
cd "$(dirname "$0")/.."
. scripts/say.sh

core="g++ cmake ninja-build libboost1.81-dev nlohmann-json3-dev"
core_tests="libgtest-dev libgmock-dev"
# Qt Charts needs libqt6opengl6-dev without saying so. libopencv-imgproc-dev is all that is used of
# OpenCV: libopencv-dev would bring 340 packages more.
program="qt6-base-dev qt6-svg-dev qt6-charts-dev libqt6opengl6-dev libqt6sql6-sqlite qt6-l10n-tools qt6-translations-l10n libcli11-dev fonts-dejavu-core libopencv-imgproc-dev"
# The shelf that several stores share is tested against a server that the test starts.
tests="libgeos-dev librapidcheck-dev poppler-utils python3-jsonschema postgresql libqt6sql6-psql gettext"

case ${1:-program} in
  core) wanted="$core $core_tests" ;;
  program) wanted="$core $program" ;;
  tests) wanted="$core $core_tests $program $tests" ;;
  *) fail "unknown set of packages '$1'; expected core, program or tests" ;;
esac

command -v dpkg-query >/dev/null 2>&1 || {
  say "No Debian package manager here. Make sure that these are installed:" $wanted
  exit 0
}

installed=$(dpkg-query -W -f '${db:Status-Abbrev} ${Package}\n' $wanted 2>/dev/null |
  awk '$1 == "ii" { print $2 }') || true
missing=
for package in $wanted; do
  printf '%s\n' "$installed" | grep -qxF "$package" || missing="$missing $package"
done
[ -n "$missing" ] || {
  say "Packages: all $(printf '%s\n' $wanted | wc -l) are installed"
  exit 0
}

if [ "$(id -u)" -eq 0 ]; then
  as_root="env"
elif command -v sudo >/dev/null 2>&1; then
  as_root="sudo env"
else
  fail "these packages are missing, and neither root nor sudo is at hand to install them:$missing
As root, run: apt-get update && apt-get install --no-install-recommends$missing"
fi

say "Installing Debian packages:$missing"
$as_root DEBIAN_FRONTEND=noninteractive apt-get update -qq ||
  say "The package index could not be brought up to date; trying with the one at hand"
$as_root DEBIAN_FRONTEND=noninteractive apt-get install -y -q -o Dpkg::Use-Pty=0 --no-install-recommends $missing
