// Command lapwing turns the result sheets of weekly community timed runs into
// a trustworthy record and into spreadsheets that people read.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:], calledAs(os.Stdout, os.Args[0]), os.Stderr)
	stop()
	os.Exit(code)
}
