package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage/copacker"
	"posset/beverage/spec"
)

// linesTopic lists the keys of a file of co-packers' lines only when it is asked
// for.
func linesTopic() *cobra.Command {
	cmd := &cobra.Command{Use: "lines", Short: "The file of co-packers' lines"}
	cmd.SetHelpFunc(func(cmd *cobra.Command, _ []string) { cmd.Println(linesHelp()) })
	return cmd
}

const linesIntro = `The file that posset match --lines reads: TOML, a [[line]] for each line of a
co-packer, and under it its processes and packs. What a line does not say counts
as missing. A range is written { at_least = "60 C", at_most = "98 C" }.
`

// Columns of the list of keys.
const (
	helpKeyColumns  = 20
	helpTextColumns = 60
)

// linesHelp is made from the declarations that read the file.
func linesHelp() string {
	var b strings.Builder
	b.WriteString(linesIntro)
	for _, doc := range copacker.Keys() {
		last := doc.Key[strings.LastIndexByte(doc.Key, '.')+1:]
		switch {
		case last == "at_least", last == "at_most":
		case doc.Form == spec.FormTables:
			fmt.Fprintf(&b, "\n[[%s]]\n", doc.Key)
			helpLines(&b, "", doc.Means)
		default:
			helpLines(&b, last, doc.Means, helpDetail(doc))
		}
	}
	return strings.TrimRight(b.String(), "\n")
}

// helpDetail is the words, the form or the example of a key.
func helpDetail(doc spec.KeyDoc) string {
	switch {
	case len(doc.Values) > 0:
		return strings.Join(doc.Values, " | ")
	case doc.Form == spec.FormTable:
		return "a range"
	}
	return "such as " + doc.Example
}

// helpLines writes a key with texts beside it, broken to the column.
func helpLines(b *strings.Builder, key string, texts ...string) {
	for _, text := range texts {
		line := ""
		for _, word := range strings.Fields(text) {
			if line != "" && len([]rune(line))+1+len([]rune(word)) > helpTextColumns {
				fmt.Fprintf(b, "  %-*s%s\n", helpKeyColumns-2, key, line)
				key, line = "", ""
			}
			line = strings.TrimPrefix(line+" "+word, " ")
		}
		fmt.Fprintf(b, "  %-*s%s\n", helpKeyColumns-2, key, line)
		key = ""
	}
}
