package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"posset/cmd/posset/internal/console"
)

func manCommand(con *console.Console) *cobra.Command {
	return &cobra.Command{
		Use:     "man FOLDER",
		Short:   "Manual pages of every command, into a folder",
		Long:    "Writes a manual page of each command into a folder, which is made where it is not\nthere. Pages that are there are written anew.",
		Example: "  posset man ~/.local/share/man/man1\n  man posset-check",
		Args:    cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, folders []string) error {
			if len(folders) != 1 {
				return usageError(cmd, "takes one folder; write posset man man1")
			}
			return writeMan(cmd.Root(), con, folders[0])
		},
	}
}

const (
	folderMode = 0o777 // less the umask
	pageMode   = 0o666
)

func writeMan(root *cobra.Command, con *console.Console, folder string) error {
	if err := os.MkdirAll(folder, folderMode); err != nil {
		return folderError(folder, err)
	}
	pages := manned(root)
	for _, c := range pages {
		if err := os.WriteFile(filepath.Join(folder, manName(c)+".1"), []byte(manPage(c)), pageMode); err != nil {
			return folderError(folder, err)
		}
	}
	if !con.Quiet {
		con.Sayf("wrote %d pages into %s; man -l %s shows the first", len(pages), folder, filepath.Join(folder, "posset.1"))
	}
	return nil
}

// manned are the commands that have a page: the whole first.
func manned(root *cobra.Command) []*cobra.Command {
	list := []*cobra.Command{root}
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() && c.Name() != "help" {
			list = append(list, c)
		}
	}
	return list
}

func folderError(folder string, err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		err = pe.Err
	}
	return fmt.Errorf("%s: cannot be written into: %w; name another folder", folder, err)
}
