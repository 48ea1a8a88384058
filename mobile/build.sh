#!/usr/bin/env bash
# From the sources to a signed package for a phone, with the vendors' own command-line tools and Tauri's.
# First everything that is needed is looked for, and all that is missing is said at once, each with what to type.
# How each of it comes to be there: fastlane-free-build.md. Works with the bash 3.2 that a Mac has.
set -euo pipefail

here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")
# Where `cargo tauri` and the Rust library of tauri agree: the same 2.x as in Cargo.lock.
TAURI=2.12
NDK=28.2.13676358
BUILD_TOOLS=36.0.0
PLATFORM=android-36
ANDROID_TARGETS='aarch64-linux-android armv7-linux-androideabi x86_64-linux-android'

usage() {
	cat <<'END'
mobile/build.sh android [--flavour offline|sync] [--check] [--unsigned]
    APK and AAB, signed and verified, in out/phones/android-FLAVOUR. offline (the default) has no permission to use the network.
    --check     looks whether everything needed is there, and builds nothing
    --unsigned  makes the APK alone, and leaves the signing to somebody else, as F-Droid does
mobile/build.sh ios [--check]
    An archive and an IPA, signed and verified, in out/phones/ios. A Mac only. iOS has no permission for the network, so no flavours.
mobile/build.sh compare A B
    Whether two packages (apk, aab, ipa) hold the same, signatures left out; lists what differs, and fails if anything does.

From the environment, or as lines NAME=VALUE of the file that SECUNDINE_SIGNING names (mobile/signing.properties, never committed):
    SECUNDINE_KEYSTORE, SECUNDINE_KEYSTORE_PASS, SECUNDINE_KEY_ALIAS (secundine)    Android
    APPLE_DEVELOPMENT_TEAM, SECUNDINE_EXPORT_METHOD (app-store-connect)             iOS
END
}

say() { printf '== %s\n' "$*"; }
fail() { printf '%s\n' "$*" >&2; exit 1; }

# --- what is needed -----------------------------------------------------------------------------------------------------

missing=''

# lacks WHAT, WHAT TO TYPE
lacks() { missing="$missing
  $1
      $2"; }

# need WHAT, WHAT TO TYPE, COMMAND…: the command says by its status whether it is there.
need() {
	local what=$1 how=$2
	shift 2
	"$@" >/dev/null 2>&1 || lacks "$what" "$how"
}

on_path() { command -v "$1"; }
# at_least VERSION LEAST: by its first two numbers.
at_least() {
	local have=${1%%[!0-9.]*} least=$2 major minor
	major=${have%%.*}
	minor=${have#*.}
	minor=${minor%%.*}
	[ "${major:-0}" -gt "${least%%.*}" ] || { [ "${major:-0}" -eq "${least%%.*}" ] && [ "${minor:-0}" -ge "${least#*.}" ]; }
}
node_there() { at_least "$(node --version | tr -d v)" 20.19; }
rust_there() { at_least "$(rustc --version | cut -d' ' -f2)" 1.92; }
tauri_there() { cargo tauri --version | grep -q "^tauri-cli $TAURI\."; }
java_there() { at_least "$(javac -version 2>&1 | cut -d' ' -f2).0" 17.0; }
target_there() { [ -d "$(rustc --print target-libdir --target "$1")" ]; }

needs_of_both() {
	need 'Rust 1.92 or newer' 'curl --proto =https --tlsv1.2 -sSf https://sh.rustup.rs | sh' rust_there
	need 'Node 20.19 or newer' 'install it from https://nodejs.org, or: nvm install 22' node_there
	need 'npm' 'comes with Node' on_path npm
	need "cargo tauri $TAURI" "cargo install tauri-cli --locked --version '~$TAURI'" tauri_there
	need 'unzip' 'sudo apt-get install unzip' on_path unzip
}

needs_of_android() {
	needs_of_both
	local target
	for target in $ANDROID_TARGETS; do
		need "Rust for $target" "rustup target add $target" target_there "$target"
	done
	need 'a JDK of 17 or newer (javac)' 'sudo apt-get install openjdk-17-jdk-headless' java_there
	need 'perl, for OpenSSL' 'sudo apt-get install perl' on_path perl
	need 'make, for OpenSSL' 'sudo apt-get install make' on_path make
	local home=${ANDROID_HOME:-/nowhere} tool
	need 'ANDROID_HOME, the folder of the Android SDK' 'export ANDROID_HOME=~/android; the guide says how it is filled' test -d "$home"
	need "the platform $PLATFORM" "sdkmanager 'platforms;$PLATFORM'" test -d "$home/platforms/$PLATFORM"
	need "the NDK $NDK" "sdkmanager 'ndk;$NDK'" test -f "$home/ndk/$NDK/source.properties"
	for tool in apksigner zipalign aapt2; do
		need "$tool of the build tools $BUILD_TOOLS" "sdkmanager 'build-tools;$BUILD_TOOLS'" \
			test -x "$home/build-tools/$BUILD_TOOLS/$tool"
	done
	need 'the licences of the SDK, accepted' 'sdkmanager --licenses' test -d "$home/licenses"
	[ -n "$signed" ] || return 0
	need 'jarsigner' 'comes with the JDK' on_path jarsigner
	need 'bundletool' 'brew install bundletool, or a script of that name around bundletool-all-….jar' on_path bundletool
	if [ -z "${SECUNDINE_KEYSTORE:-}" ] || [ ! -f "$SECUNDINE_KEYSTORE" ]; then
		lacks 'SECUNDINE_KEYSTORE, the file with the key' \
			'keytool -genkeypair -v -keystore secundine.jks -alias secundine -keyalg RSA -keysize 4096 -validity 10000'
	fi
	need 'SECUNDINE_KEYSTORE_PASS, its passphrase' 'read -rs SECUNDINE_KEYSTORE_PASS; export SECUNDINE_KEYSTORE_PASS' \
		test -n "${SECUNDINE_KEYSTORE_PASS:-}"
}

is_mac() { [ "$(uname -s)" = Darwin ]; }
xcode_there() { at_least "$(xcodebuild -version | sed -n 's/^Xcode //p').0" 16.0; }
identity_there() { security find-identity -v -p codesigning | grep -Eq '^ +[1-9][0-9]*\) '; }

needs_of_ios() {
	needs_of_both
	need 'a Mac: Xcode runs nowhere else' 'go on there' is_mac
	need 'Rust for aarch64-apple-ios' 'rustup target add aarch64-apple-ios' target_there aarch64-apple-ios
	need 'Xcode 16 or newer' 'from the App Store; then: sudo xcode-select -s /Applications/Xcode.app && sudo xcodebuild -license accept' xcode_there
	need 'xcodegen' 'brew install xcodegen' on_path xcodegen
	need 'APPLE_DEVELOPMENT_TEAM, ten letters and digits' 'export APPLE_DEVELOPMENT_TEAM=…, from https://developer.apple.com/account' \
		test -n "${APPLE_DEVELOPMENT_TEAM:-}"
	need 'an identity to sign with' 'Xcode, Settings, Accounts, Manage Certificates, +' identity_there
}

all_there() {
	if [ -n "$missing" ]; then
		fail "Missing, each with what to type:$missing"
	fi
	say 'Everything needed is there.'
}

# What is not in the environment is taken from the file of names and values.
signing_file() {
	local file=${SECUNDINE_SIGNING:-$here/signing.properties} name value
	[ -f "$file" ] || return 0
	while IFS='=' read -r name value; do
		case $name in
		SECUNDINE_KEYSTORE | SECUNDINE_KEYSTORE_PASS | SECUNDINE_KEY_ALIAS | APPLE_DEVELOPMENT_TEAM | SECUNDINE_EXPORT_METHOD)
			[ -n "${!name:-}" ] || export "$name=$value"
			;;
		esac
	done <"$file"
}

# --- building -----------------------------------------------------------------------------------------------------------

page() {
	say 'The page'
	(cd "$root/ui" && npm ci --no-audit --no-fund && npm run build)
}

# The same sources give the same bytes: no folder of this machine and no hour of this day stands in them.
reproducible() {
	SOURCE_DATE_EPOCH=$(git -C "$root" log -1 --format=%ct)
	export SOURCE_DATE_EPOCH
	export RUSTFLAGS="--remap-path-prefix=$root=/secundine --remap-path-prefix=${CARGO_HOME:-$HOME/.cargo}=/cargo $*"
	export CARGO_INCREMENTAL=0 LC_ALL=C TZ=UTC
}

android() {
	local outputs=$root/src-tauri/gen/android/app/build/outputs out=$root/out/phones/android-$flavour
	local tools=$ANDROID_HOME/build-tools/$BUILD_TOOLS name=secundine-$flavour
	export NDK_HOME=$ANDROID_HOME/ndk/$NDK SECUNDINE_FLAVOUR=$flavour
	page
	# The first three are what Tauri would give, which these flags take the place of; the last is for pages of 16 KiB.
	reproducible -Clink-arg=-landroid -Clink-arg=-llog -Clink-arg=-lOpenSLES -Clink-arg=-Wl,-z,max-page-size=16384
	say "The program, $flavour"
	(cd "$root/src-tauri" && cargo tauri android build --ci --apk ${signed:+--aab} --target aarch64 armv7 x86_64)
	rm -rf "$out"
	mkdir -p "$out"
	local camel
	camel=$(printf '%s' "$flavour" | cut -c1 | tr '[:lower:]' '[:upper:]')${flavour#?}
	cp "$outputs/apk/universal$camel/release/app-universal-$flavour-release-unsigned.apk" "$out/$name-unsigned.apk"
	[ -z "$signed" ] || cp "$outputs/bundle/universal${camel}Release/app-universal-$flavour-release.aab" "$out/$name.aab"

	say 'What the package may do'
	look_at "$tools/aapt2" "$out/$name-unsigned.apk"
	"$tools/zipalign" -c -P 16 4 "$out/$name-unsigned.apk" || fail 'The package is not aligned to pages of 16 KiB.'

	if [ -n "$signed" ]; then
		bundletool validate --bundle="$out/$name.aab" >/dev/null
		say 'Signing'
		# By name of a variable, so that the passphrase stands in no list of processes.
		export SECUNDINE_KEYSTORE_PASS
		"$tools/apksigner" sign --ks "$SECUNDINE_KEYSTORE" --ks-key-alias "${SECUNDINE_KEY_ALIAS:-secundine}" \
			--ks-pass env:SECUNDINE_KEYSTORE_PASS --out "$out/$name.apk" "$out/$name-unsigned.apk"
		jarsigner -keystore "$SECUNDINE_KEYSTORE" -storepass:env SECUNDINE_KEYSTORE_PASS -sigalg SHA256withRSA -digestalg SHA-256 \
			"$out/$name.aab" "${SECUNDINE_KEY_ALIAS:-secundine}"
		"$tools/apksigner" verify --print-certs "$out/$name.apk"
		jarsigner -verify -strict "$out/$name.aab" >/dev/null || say 'The bundle is signed by a key that no authority vouches for, as usual.'
	fi
	say "Done: $out"
}

# The last word is what the finished package says of itself, libraries and all.
look_at() {
	local asked said
	asked=$("$1" dump permissions "$2")
	printf '%s\n' "$asked"
	case $flavour in
	offline) ! grep -q 'android.permission.INTERNET' <<<"$asked" || fail 'The offline flavour asks for the network.' ;;
	sync) grep -q 'android.permission.INTERNET' <<<"$asked" || fail 'The sync flavour does not ask for the network.' ;;
	esac
	said=$("$1" dump xmltree --file AndroidManifest.xml "$2")
	grep -q 'allowBackup([0-9a-fx]*)=false' <<<"$said" || fail 'The package lets itself be backed up.'
	! grep -q 'debuggable([0-9a-fx]*)=true' <<<"$said" || fail 'The package lets itself be looked into.'
}

ios() {
	local project=$root/src-tauri/gen/apple out=$root/out/phones/ios
	local archive=$project/build/secundine-app_iOS.xcarchive
	export APPLE_DEVELOPMENT_TEAM
	page
	reproducible
	say 'The Xcode project'
	(cd "$project" && mkdir -p Externals assets && xcodegen generate --spec project.yml)
	say 'The archive'
	(cd "$root/src-tauri" && cargo tauri ios build --ci --archive-only --target aarch64)
	say 'The package'
	rm -rf "$out"
	mkdir -p "$out"
	sed "s/<string>app-store-connect</<string>${SECUNDINE_EXPORT_METHOD:-app-store-connect}</" "$project/ExportOptions.plist" >"$out/ExportOptions.plist"
	xcodebuild -exportArchive -allowProvisioningUpdates -archivePath "$archive" -exportPath "$out" \
		-exportOptionsPlist "$out/ExportOptions.plist"
	say 'What the package may do'
	(cd "$out" && unzip -q Secundine.ipa -d unpacked)
	codesign --verify --deep --strict "$out/unpacked/Payload/Secundine.app"
	codesign -d --entitlements - --xml "$out/unpacked/Payload/Secundine.app" >"$out/entitlements.xml"
	grep -q NSFileProtectionCompleteUnlessOpen "$out/entitlements.xml" || fail 'The profile does not protect the files: switch Data Protection on for the App ID.'
	rm -r "$out/unpacked"
	say "Done: $out"
}

# --- comparing ----------------------------------------------------------------------------------------------------------

sums() { (cd "$1" && find . -type f -print0 | LC_ALL=C sort -z | xargs -0 shasum -a 256); }

# In an IPA the signature lies inside each binary too; only a Mac can take it out of there.
without_signatures() {
	find "$1" \( -path '*/META-INF/*.SF' -o -path '*/META-INF/*.RSA' -o -path '*/META-INF/*.EC' -o -path '*/META-INF/*.DSA' \
		-o -path '*/META-INF/MANIFEST.MF' -o -path '*/_CodeSignature/*' -o -name embedded.mobileprovision \) -type f -delete
	if command -v codesign >/dev/null; then
		find "$1" \( -name '*.app' -o -name '*.appex' \) -prune -exec codesign --remove-signature {} \;
	fi
}

compare() {
	[ -f "$1" ] || fail "$1 is not there."
	[ -f "$2" ] || fail "$2 is not there."
	need 'unzip' 'sudo apt-get install unzip' on_path unzip
	need 'shasum' 'sudo apt-get install perl' on_path shasum
	all_there >/dev/null
	local work status=0
	work=$(mktemp -d)
	mkdir "$work/a" "$work/b"
	unzip -qo "$1" -d "$work/a"
	unzip -qo "$2" -d "$work/b"
	without_signatures "$work/a"
	without_signatures "$work/b"
	sums "$work/a" >"$work/a.sums"
	sums "$work/b" >"$work/b.sums"
	diff "$work/a.sums" "$work/b.sums" | sed -n 's/^\([<>]\) [0-9a-f]*  /\1 /p' >"$work/differs" || true
	if [ -s "$work/differs" ]; then
		printf 'They differ (< %s, > %s):\n' "$1" "$2"
		cat "$work/differs"
		status=1
	else
		say "The same, signatures left out: $(wc -l <"$work/a.sums" | tr -d ' ') files."
	fi
	rm -r "$work"
	return $status
}

# --- what was asked -----------------------------------------------------------------------------------------------------

what=${1:-}
[ $# -eq 0 ] || shift
flavour=offline check='' signed=yes chosen=''
case $what in
compare)
	[ $# -eq 2 ] || { usage >&2; exit 2; }
	compare "$1" "$2"
	exit
	;;
android | ios) ;;
-h | --help) usage; exit ;;
*) usage >&2; exit 2 ;;
esac
while [ $# -gt 0 ]; do
	case $1 in
	--flavour) flavour=${2:-} chosen=yes; shift ;;
	--check) check=yes ;;
	--unsigned) signed='' chosen=yes ;;
	*) usage >&2; exit 2 ;;
	esac
	[ $# -eq 0 ] || shift
done
case $flavour in
offline | sync) ;;
*) fail "There is no flavour '$flavour': offline or sync." ;;
esac
[ "$what" = android ] || [ -z "$chosen" ] || fail 'Flavours and --unsigned are Android'\''s: iOS has no permission that keeps a program off the network.'

signing_file
"needs_of_$what"
all_there
[ -n "$check" ] || "$what"
