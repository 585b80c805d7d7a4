#!/usr/bin/env bash
# Runs tests of today on files of an earlier version, to show a defect that was there:
#   tests/faults/on-version.sh COMMIT 'PATHS' VITEST-ARGUMENTS
set -euo pipefail
root="$(git rev-parse --show-toplevel)"
commit="$1" paths="$2"
shift 2
place="$(mktemp -d)"
trap 'rm -rf "$place"' EXIT
git -C "$root" archive HEAD | tar -x -C "$place"
# shellcheck disable=SC2086
git -C "$root" archive "$commit" $paths | tar -x -C "$place"
ln -s "$root/node_modules" "$place/node_modules"
cd "$place"
npx vitest run --config tests/config/vitest.config.ts "$@"
