package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"posset/cmd/posset/internal/console"
	"posset/cmd/posset/internal/web"
)

// usualPort is one that no service is registered for.
const usualPort = 8617

func serveCommand(con *console.Console) *cobra.Command {
	var port int
	var host string
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "The local web page",
		Long: `Opens a page on this machine: a drink described in plain words, a spec assessed
as it is written, and records read. It answers this machine only, fetches
nothing, and keeps nothing. Ctrl-C ends it.`,
		Example: "  posset serve\n  posset serve --port 9000",
		Args:    cobra.NoArgs,
		RunE:    func(cmd *cobra.Command, _ []string) error { return runServe(cmd, con, host, port) },
	}
	cmd.Flags().IntVar(&port, "port", usualPort, "`PORT` to answer on; 0 takes a free one")
	cmd.Flags().StringVar(&host, "host", "127.0.0.1", "`NAME`: this machine and no other, so 127.0.0.1, ::1 or localhost")
	return cmd
}

func runServe(cmd *cobra.Command, con *console.Console, host string, port int) error {
	if !slices.Contains([]string{"127.0.0.1", "::1", "localhost"}, host) {
		return usageError(cmd, fmt.Sprintf("--host: %q is not this machine alone; leave --host out", host))
	}
	if port < 0 || port > 65535 {
		return usageError(cmd, fmt.Sprintf("--port: %d is no port; write one from 1024 to 65535, or 0 for a free one", port))
	}
	listeners, err := web.Listen(port)
	if err != nil {
		return fmt.Errorf("posset serve: port %d cannot be used: %w; write --port 0 for a free one", port, err)
	}
	site, err := web.New(options())
	if err != nil {
		return err
	}
	defer site.Close()
	con.Sayf("posset serve: open http://%s in a browser; Ctrl-C ends it", listeners[0].Addr())
	return site.Serve(cmd.Context(), listeners)
}
