package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"lapwing/pipeline/scenario"
)

func (a *app) demoCommand() *cobra.Command {
	return &cobra.Command{
		Use: "demo DIR", Short: "Write the sheets and settings of an invented district to try things on",
		Example: "  lapwing demo trial\n  cd trial\n  lapwing run",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := scenario.WriteDemo(args[0]); err != nil {
				return fmt.Errorf("writing the demo: %w", err)
			}
			a.say("The demo's sheets and settings are in %s. Next: cd %s && lapwing run", args[0], args[0])
			return a.asJSON(map[string]string{"dir": args[0]})
		},
	}
}
