#!/usr/bin/env bash
# Builds the core twice, in two folders with names of different lengths, and tells whether both came out alike:
# tests/supply/reproduce.sh [PACKAGE [FILE]]. Without arguments, what Kotlin and Swift call; what is committed is what is built.
set -euo pipefail
cd "$(dirname "$0")/../.."
package=${1:-secundine-bindings}
file=${2:-libsecundine_bindings.so}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cargo_home=${CARGO_HOME:-$HOME/.cargo}
# The time of the commit stands for now, and places on the disk are renamed.
SOURCE_DATE_EPOCH=$(git log -1 --format=%ct)
export SOURCE_DATE_EPOCH CARGO_INCREMENTAL=0
unset RUSTC_WORKSPACE_WRAPPER
for folder in "$work/a" "$work/another-place"; do
	mkdir -p "$folder"
	git archive HEAD | tar -x -C "$folder"
	mkdir -p "$folder/ui/dist"
	(
		cd "$folder"
		export RUSTFLAGS="--remap-path-prefix=$folder=/source --remap-path-prefix=$cargo_home=/cargo"
		export CFLAGS="-ffile-prefix-map=$folder=/source -ffile-prefix-map=$cargo_home=/cargo"
		CARGO_TARGET_DIR="$folder/target" cargo build --locked --profile "${PROFILE:-release}" --lib -p "$package"
	)
	find "$folder/target" -maxdepth 2 -name "$file" -exec sha256sum {} \;
done | tee "$work/hashes"
if [ "$(wc -l <"$work/hashes")" != 2 ] || [ "$(cut -d' ' -f1 "$work/hashes" | sort -u | wc -l)" != 1 ]; then
	echo "$file came out different: something of the place or the time got in"
	exit 1
fi
echo "$file came out alike twice"
