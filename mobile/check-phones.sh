#!/usr/bin/env bash
# Type-checks all Rust that goes to phones, without the vendors' kits: the whole program for Android, the core and its
# bindings for iOS. Then it misspells a native call in a copy and wants to see that refused.
#
# What it shows: every line of Rust is right for those systems. What it does not: nothing is linked, no C is compiled, and
# nothing runs. C goes to a compiler that makes nothing; headers of this machine stand in for OpenSSL's; Tauri for iOS is left
# out, since its build compiles Swift with Xcode.
#
# No standard library of Rust for phones is at hand where only Debian is: it is built from Debian's own source, by the same
# compiler, which lies apart and touches no installed Rust.
set -euo pipefail

# The compiler that Debian 12 has for browsers, and its source; a later one needs the new number here, and nothing else.
RUST=1.96.0+dfsg1-1~deb12u2
PINNED=(rustc-web libstd-rust-web-1.96 libstd-rust-web-dev cargo-web rust-web-src)
BESIDE=(libllvm22 libgit2-1.5 libhttp-parser2.9 libmbedcrypto7 libmbedx509-1 libmbedtls14)

root=$(cd "$(dirname "$0")/.." && pwd)
work=${CARGO_TARGET_DIR:-$root/target}/phones
rust=$work/rust-$RUST
tools=$work/tools
# All, or one of: ios, android, misspelt.
only=${1:-all}

say() { printf '\n== %s\n' "$*"; }

get_rust() {
	[ -e "$rust/made" ] && return
	say "Debian's Rust $RUST, unpacked into $rust"
	rm -rf "$rust"
	mkdir -p "$rust/packages"
	cd "$rust/packages"
	if ! apt-get download -q "${PINNED[@]/%/=$RUST}" "${BESIDE[@]}"; then
		echo "Debian has another Rust now: see 'apt-cache policy rustc-web', and put its version into $0." >&2
		exit 1
	fi
	for package in *.deb; do dpkg -x "$package" "$rust"; done
	cd "$root"
	rm -r "$rust/packages"
	touch "$rust/made"
}

# Never under the names of the real ones, which build what runs here. A compiler for C that makes empty files, and reads headers where it is asked what stands in them.
make_tools() {
	mkdir -p "$tools"
	cat >"$tools/no-cc" <<'CC'
#!/usr/bin/env bash
out='' read='' keep=()
while [ $# -gt 0 ]; do
	case $1 in
	# Asked by the crate cc whether it takes what Microsoft's takes.
	-\?) exit 1 ;;
	-E) read=yes keep+=("$1") ;;
	-o) out=$2 keep+=("$1" "$2"); shift ;;
	--target=* | -m*-version-min=* | -mabi=* | -march=*) ;;
	-target | -isysroot | -arch) shift ;;
	*) keep+=("$1") ;;
	esac
	shift
done
[ -n "$read" ] && exec gcc "${keep[@]}"
[ -z "$out" ] || : >"$out"
CC
	cat >"$tools/no-ar" <<'AR'
#!/usr/bin/env bash
for word in "$@"; do case $word in *.a) printf '!<arch>\n' >"$word" ;; esac done
AR
	# Asked for the folder of Apple's kit.
	printf '#!/bin/sh\necho /\n' >"$tools/xcrun"
	chmod +x "$tools/no-cc" "$tools/no-ar" "$tools/xcrun"
}

# $1: the folder to check in; then the target, and what else cargo is told.
check() {
	local where=$1 target=$2
	shift 2
	local under=${target//-/_}
	local above=${under^^}
	(
		cd "$where"
		unset RUSTC_WORKSPACE_WRAPPER CLIPPY_ARGS RUSTFLAGS RUSTUP_TOOLCHAIN
		export LD_LIBRARY_PATH=$rust/usr/lib/x86_64-linux-gnu:$rust/usr/lib PATH=$tools:$rust/usr/bin:$PATH
		export RUSTC=$rust/usr/bin/rustc RUSTC_BOOTSTRAP=1 CARGO_TARGET_DIR=$work/target CARGO_INCREMENTAL=0
		export "CC_$under=$tools/no-cc" "CXX_$under=$tools/no-cc" "AR_$under=$tools/no-ar" "RANLIB_$under=true"
		export "${above}_OPENSSL_NO_VENDOR=1" "${above}_OPENSSL_LIB_DIR=/usr/lib" "${above}_OPENSSL_INCLUDE_DIR=/usr/include" "${above}_OPENSSL_STATIC=0"
		nice -n "${SECUNDINE_NICE:-0}" "$rust/usr/bin/cargo" check --locked -Zbuild-std=std,panic_abort --target "$target" --lib "$@"
	)
}

# A copy in which a call into Android's side is misspelt: the check has to see it, or it sees nothing.
misspell() {
	local copy=$work/misspelt call=register_android_plugin wrong=register_android_plugim crate file
	file=$(cd "$root" && grep -rl --include='*.rs' "$call(" mobile src-tauri/src | head -1)
	[ -n "$file" ] || { echo "nothing here calls $call: what is misspelt to try the check?" >&2; exit 1; }
	crate=${file%/src/*}
	rm -rf "$copy"
	mkdir -p "$copy/$(dirname "$crate")"
	ln -s "$root"/{Cargo.toml,Cargo.lock,core,tests,ui,src-tauri} "$copy/"
	for beside in "$root"/mobile/*; do [ "$beside" = "$root/$crate" ] || ln -s "$beside" "$copy/mobile/"; done
	cp -r "$root/$crate" "$copy/$crate"
	sed -i "s/$call(/$wrong(/" "$copy/$file"
	if (cd "$copy/$crate" && check . aarch64-linux-android) >"$work/misspelt.log" 2>&1; then
		echo "a misspelt call of $file was not seen" >&2
		exit 1
	fi
	grep -q "no method named \`$wrong\`" "$work/misspelt.log" || { cat "$work/misspelt.log" >&2; exit 1; }
	echo "seen: no method named $wrong"
}

get_rust
make_tools
mkdir -p "$root/ui/dist"

if [ "$only" = all ] || [ "$only" = ios ]; then
	say 'iOS: the core and its bindings'
	check "$root" aarch64-apple-ios -p secundine-bindings
fi
if [ "$only" = all ] || [ "$only" = android ]; then
	say 'Android: the whole program'
	check "$root" aarch64-linux-android -p secundine-app
fi
if [ "$only" = all ] || [ "$only" = misspelt ]; then
	say 'Android: a misspelt native call'
	misspell
fi
