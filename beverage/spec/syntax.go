package spec

import (
	"regexp"
	"strconv"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
)

func itoa(n int) string { return strconv.Itoa(n) }

// notTOML tells what is wrong with a line, with what would do where the slip is
// a common one.
func (d *document) notTOML(line, column int, message string) *Problem {
	source := d.source(line)
	p := &Problem{Place: beverage.Place{File: d.file, Line: line}, Column: column}
	p.Read = "is not TOML (" + plainMessage(message) + ")"
	if source != "" {
		p.Read = quantity.Quote(source) + " " + p.Read
	}
	p.Help = hint(source)
	return p
}

// plainMessage brings the parser's words into ours.
func plainMessage(message string) string {
	message = strings.TrimPrefix(message, "toml: ")
	if codePoint.MatchString(message) {
		message = codePoint.ReplaceAllString(message, "")
	}
	return printable(message)
}

var codePoint = regexp.MustCompile(`:? ?(but got )?U\+[0-9A-F]{4,}( '.*')?`)

// slip is a common mistake: what it looks like, and what to write.
type slip struct {
	looks *regexp.Regexp
	write func(parts []string) string
}

const keyThen = `^([A-Za-z0-9_.-]+)\s*`

var slips = []slip{
	{regexp.MustCompile(`[“”„‘’«»]`), func([]string) string { return `write straight quotes (")` }},
	{regexp.MustCompile(keyThen + `=\s*\d{1,2}[./-]\d{1,2}[./-]\d{2,4}\s*(#.*)?$`), func(p []string) string {
		return "write the date as year-month-day, " + p[1] + " = 2026-03-02"
	}},
	{regexp.MustCompile(keyThen + `=\s*([+-]?\d+),(\d+)\s*(#.*)?$`), func(p []string) string {
		return "write " + p[1] + " = " + p[2] + "." + p[3] + ", with a point"
	}},
	{regexp.MustCompile(keyThen + `=\s*([+-]?\.\d+|[+-]?\d+\.)\s*(#.*)?$`), func(p []string) string {
		return "write the number with digits on both sides of its point"
	}},
	{regexp.MustCompile(keyThen + `=\s*([+-]?[\d.,]+\s*[\pL%°][^"'#]*?)\s*(#.*)?$`), func(p []string) string {
		return "write " + p[1] + " = " + quantity.Quote(p[2]) + ", in quotes"
	}},
	{regexp.MustCompile(keyThen + `=\s*(?i:(true|yes)|(false|no))\s*(#.*)?$`), func(p []string) string {
		return "write " + p[1] + " = " + map[bool]string{true: "true", false: "false"}[p[2] != ""]
	}},
	{regexp.MustCompile(keyThen + `=\s*([A-Za-z][^"'#=]*?)\s*(#.*)?$`), func(p []string) string {
		return "write " + p[1] + " = " + quantity.Quote(p[2]) + ", in quotes"
	}},
	{regexp.MustCompile(keyThen + `=\s*(#.*)?$`), func(p []string) string { return "write a value after " + p[1] + " =, or leave the line out" }},
	{regexp.MustCompile(`^([A-Za-z0-9_-]+(?: [A-Za-z0-9_-]+)+)\s*=`), func(p []string) string {
		return "write " + strings.ReplaceAll(p[1], " ", "_") + " ="
	}},
	{regexp.MustCompile(keyThen + `:`), func(p []string) string { return "write " + p[1] + " = ..." }},
	{regexp.MustCompile(`^(\[\[?)([A-Za-z.]+)(\]?\]?)$`), func(p []string) string {
		return "write [" + p[2] + "], or [[" + p[2] + "]] where there may be several"
	}},
	{regexp.MustCompile(`=\s*"[^"]*$`), func([]string) string { return `close the text with "` }},
	{regexp.MustCompile(`=\s*"[^"]*\\`), func([]string) string { return `write "/" instead of a backslash` }},
}

func hint(source string) string {
	if strings.Contains(source, "\r") {
		return "end lines with a line feed, as every editor can"
	}
	for _, s := range slips {
		if parts := s.looks.FindStringSubmatch(source); parts != nil && len(source) <= longestPrinted {
			return s.write(parts)
		}
	}
	return `write tables as [drink] and keys as name = "value"`
}
