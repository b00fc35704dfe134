# Lapwing: what there is to do. `make help` lists it.
SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := help
BIN := bin/lapwing

.PHONY: help demo test check bench build tools clean

help: ## this list
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "make %-8s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

tools:
	@command -v go >/dev/null || { echo "Go is missing. Install Go 1.26 or newer (on Debian: see the Go project's download page), then try again."; exit 1; }
	@[ "$$(go env CGO_ENABLED)" = 1 ] && command -v "$$(go env CC | cut -d' ' -f1)" >/dev/null || { echo "A C compiler is missing; the database needs one. On Debian or Ubuntu: apt-get install gcc g++"; exit 1; }

build: tools ## build the program, bin/lapwing
	@echo "Building bin/lapwing (the first time takes a minute or two)."
	@go build -o $(BIN) ./cmd/lapwing

demo: build ## make the demo district, load its sheets, write its reports
	@rm -rf demo
	@$(BIN) demo demo --quiet
	@cd demo && ../$(BIN) run
	@echo
	@echo "Open for a first look (folder demo/reports):"
	@cd demo && ls -t reports/*.xlsx | grep -v -e -desk | sort -t_ -k2 -r | sed -n 1,3p | sed 's/^/  the board and results of a run:  demo\//'
	@cd demo && ls reports/*-desk.xlsx | sort -t_ -k2,2r -k1,1 | sed -n 1p | sed 's/^/  what the desk should check:      demo\//'
	@cd demo && ls -t reports/*.txt | sort -t_ -k2 -r | sed -n 1p | sed 's/^/  the write-up:                    demo\//'
	@echo "Then try:  cd demo && ../$(BIN) courses    or    ../$(BIN) standing \"a name from a report\""

test: tools ## all tests
	@command -v soffice >/dev/null || echo "NOTE: LibreOffice is not installed: the tests that open workbooks in it will be SKIPPED. On Debian: apt-get install libreoffice-calc poppler-utils"
	go test -timeout 30m ./...

check: tools ## format, module file, vet, lint, then all tests
	@test -z "$$(gofmt -l cmd pipeline sql reports)" || { gofmt -l cmd pipeline sql reports; echo "^ run gofmt -w on these"; exit 1; }
	go mod tidy -diff
	go vet ./...
	go tool staticcheck ./...
	$(MAKE) test

bench: build ## measure speed and memory against references (SIZE=small or full)
	SIZE=$${SIZE:-small} go run ./cmd/bench

clean: ## remove what was built and the demo
	rm -rf bin demo bench
