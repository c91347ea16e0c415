package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

// atMostOne refuses more than one name of what a command takes.
func atMostOne(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) > 1 {
			return usageError(cmd, fmt.Sprintf("takes one %s at most, and %d were given", what, len(args)))
		}
		return nil
	}
}

// some wants one name or more of what a command takes.
func some(what, example string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return usageError(cmd, "names no "+what+"; write "+cmd.CommandPath()+" "+example)
		}
		return nil
	}
}
