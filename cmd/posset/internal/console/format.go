package console

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"posset/beverage/quantity"
	"posset/beverage/report"
)

// Format is the form that results are written in.
type Format string

// Text is the form used unless told.
const (
	Text   Format = "text"
	JSON   Format = "json"
	NDJSON Format = "ndjson"
	CSV    Format = "csv"
	XLSX   Format = "xlsx"
	HTML   Format = "html"
)

// FormatByName takes the form from how the name of --out ends, for a user who
// named no form: nobody wants text in a file called report.html.
func (c *Console) FormatByName() {
	switch ending := Format(strings.TrimPrefix(strings.ToLower(filepath.Ext(c.Path)), ".")); ending {
	case JSON, NDJSON, CSV, XLSX, HTML:
		c.Format = ending
	}
}

// Colour says when text is coloured.
type Colour string

// Auto colours only a terminal that wants it.
const (
	Auto   Colour = "auto"
	Always Colour = "always"
	Never  Colour = "never"
)

// choice is a flag that takes one of a few words. It is a pflag.Value.
type choice[T comparable] struct {
	at    *T
	words []string
	means []T
}

func (c choice[T]) String() string {
	if c.at == nil {
		return ""
	}
	if i := slices.Index(c.means, *c.at); i >= 0 {
		return c.words[i]
	}
	return ""
}

func (c choice[T]) Set(s string) error {
	i := slices.Index(c.words, s)
	if i < 0 {
		return fmt.Errorf("%s is none of its words; write %s", quantity.Quote(s), quantity.Either(c.words))
	}
	*c.at = c.means[i]
	return nil
}

func (c choice[T]) Type() string { return strings.Join(c.words, "|") }

// Flag is a flag's value, as pflag wants it.
type Flag interface {
	String() string
	Set(string) error
	Type() string
}

// FormatFlag, UnitsFlag and ColourFlag set what the console writes.
func (c *Console) FormatFlag() Flag {
	c.Format = Text
	return choice[Format]{&c.Format, []string{"text", "json", "ndjson", "csv", "xlsx", "html"}, []Format{Text, JSON, NDJSON, CSV, XLSX, HTML}}
}

// UnitsFlag is --units.
func (c *Console) UnitsFlag() Flag {
	return choice[report.Units]{&c.Units, []string{"metric", "us"}, []report.Units{report.Metric, report.US}}
}

// ColourFlag is --color.
func (c *Console) ColourFlag() Flag {
	c.Colour = Auto
	return choice[Colour]{&c.Colour, []string{"auto", "always", "never"}, []Colour{Auto, Always, Never}}
}
