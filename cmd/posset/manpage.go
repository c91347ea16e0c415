package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// A page is written in the macros of man(7). Cobra's own writer goes by way of
// Markdown, which takes the underscores of our words for italics.

// manName is what a command's page is called.
func manName(c *cobra.Command) string { return strings.ReplaceAll(c.CommandPath(), " ", "-") }

// manPage is a command as a page of section 1. It has no date, so that one
// binary writes the same page every time.
func manPage(c *cobra.Command) string {
	p := &roff{}
	p.macro("TH", strings.ToUpper(manName(c)), "1", "", "posset "+version, "posset")
	p.section("NAME", manName(c)+` - `+c.Short)
	p.section("SYNOPSIS", synopsis(c))
	p.section("DESCRIPTION", c.Long)
	if c.HasAvailableSubCommands() {
		p.macro("SH", "COMMANDS")
		for _, s := range manned(c)[1:] {
			p.entry(manName(s)+"(1)", s.Short)
		}
	}
	p.options("OPTIONS", c.LocalFlags())
	p.options("OPTIONS OF EVERY COMMAND", c.InheritedFlags())
	if c.HasExample() {
		p.macro("SH", "EXAMPLES")
		p.verbatim(c.Example)
	}
	p.macro("SH", "EXIT STATUS")
	p.verbatim(exitCodes)
	if c.HasParent() {
		p.section("SEE ALSO", manName(c.Root())+"(1)")
	}
	return p.b.String()
}

func synopsis(c *cobra.Command) string {
	if c.HasAvailableSubCommands() {
		return c.CommandPath() + " COMMAND"
	}
	return c.UseLine()
}

// roff gathers the lines of a page.
type roff struct{ b strings.Builder }

// macro writes a request with its arguments in quotes.
func (r *roff) macro(name string, args ...string) {
	r.b.WriteString("." + name)
	for _, a := range args {
		r.b.WriteString(` "` + strings.ReplaceAll(escaped(a), `"`, `""`) + `"`)
	}
	r.b.WriteByte('\n')
}

// text writes lines of which none is taken for a request.
func (r *roff) text(s string) {
	for line := range strings.Lines(strings.TrimSpace(s)) {
		line = escaped(strings.TrimRight(line, " \n"))
		if strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
			line = `\&` + line
		}
		r.b.WriteString(line + "\n")
	}
}

func (r *roff) section(title, text string) {
	r.macro("SH", title)
	r.text(text)
}

func (r *roff) entry(term, text string) {
	r.b.WriteString(".TP\n")
	r.macro("B", term)
	r.text(text)
}

// verbatim keeps the lines and their indents as they are.
func (r *roff) verbatim(s string) {
	r.b.WriteString(".nf\n")
	for line := range strings.Lines(strings.Trim(s, "\n")) {
		r.b.WriteString(`\&` + escaped(strings.TrimRight(line, "\n")) + "\n")
	}
	r.b.WriteString(".fi\n")
}

func (r *roff) options(title string, flags *pflag.FlagSet) {
	if !flags.HasAvailableFlags() {
		return
	}
	r.macro("SH", title)
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		kind, usage := pflag.UnquoteUsage(f)
		term := "--" + f.Name
		if f.Shorthand != "" {
			term = "-" + f.Shorthand + ", " + term
		}
		r.entry(strings.TrimSpace(term+" "+kind), usage)
	})
}

// escaped keeps a backslash a backslash and a hyphen one that can be copied.
func escaped(s string) string {
	return strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s)
}
