// Package console is what stands between a command and the world: streams,
// colour, progress, results written whole or not at all, and the exit status.
package console

import (
	"io"
	"os"

	"posset/beverage/report"
)

// Console holds the streams of one run and what the user asked of its output.
type Console struct {
	In  io.Reader
	Out io.Writer
	Err io.Writer

	Format Format
	Path   string // --out; empty or "-" is standard output
	Units  report.Units
	Colour Colour
	Strict bool
	Quiet  bool

	read []string // files read, which --out must not overwrite
	env  func(string) string
}

// New is a console on three streams with the environment of the process.
func New(in io.Reader, out, err io.Writer) *Console {
	return &Console{In: in, Out: out, Err: err, env: os.Getenv}
}

// Reads notes files that the results are made from.
func (c *Console) Reads(files ...string) { c.read = append(c.read, files...) }

// ToFile tells whether results go to a file.
func (c *Console) ToFile() bool { return c.Path != "" && c.Path != "-" }

// Result is one result: what JSON prints, and how a reader is shown it.
type Result struct {
	Value any
	Doc   func(report.Units) report.Doc
}
