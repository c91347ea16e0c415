package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/token"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"posset/beverage/quantity"
	"posset/beverage/spec"
	"posset/cmd/posset/internal/console"
)

const docs = "../../docs/"

// The reference of the spec is written from the declarations that read it.
func TestDocsSpec(t *testing.T) { holdPage(t, docs+"spec.md", specPage(), "Docs") }

const specHead = `# The spec file

Written from the declarations that read a spec; ` + "`UPDATE=1 go test ./cmd/posset -run Docs`" + ` renews it. The same
stands as JSON Schema in [schema/spec-1.json](schema/spec-1.json), for editors that check and complete TOML by one.

One drink is one [TOML](https://toml.io) file; a folder may hold many. Nothing but ` + "`[drink]`" + ` has to be there.

- **A quantity is a number and a unit in one string**: ` + "`\"330 mL\"`, `\"199 °F\"`, `\"2.4 barg\"`" + `. Only pH, water activity, Brix and
  volumes of CO2 are bare numbers. [commands.md](commands.md#units) lists the units.
- **What is left out is unknown**, never assumed in the drink's favour, save where a default stands below.
- **Keys are spelt exactly.** An unknown key is an error that offers the nearest one. All problems of a file are told at
  once, each with file, line and key.
- **A percentage** is by mass of the finished drink; of alcohol by volume; of a property of an ingredient by mass of that
  ingredient as sold.
- **Files are looked for inside the spec's own folder**, unless ` + "`--allow-outside`" + ` is given.
- **An ingredient** is found in the library by its name (` + "`posset ingredients`" + `) or described by the properties below. A property
  given here overrides the library; where that would help the drink, it raises ` + "`ingredient-override`" + ` and the stricter
  value decides.

The drinks under [testdata/drinks](../testdata/drinks) are whole examples, all of them invented.

`

func specPage() string {
	var b strings.Builder
	b.WriteString(specHead)
	all := spec.Keys()
	for _, k := range all {
		if k.Form != spec.FormTable && k.Form != spec.FormTables {
			continue
		}
		heading := "[" + k.Key + "]"
		if k.Form == spec.FormTables {
			heading = "[" + heading + "]"
		}
		fmt.Fprintf(&b, "## `%s`\n\n%s", heading, k.Means)
		if k.Form == spec.FormTables {
			b.WriteString(" As many as there are, " + strings.TrimPrefix(k.Type, "tables, ") + ".")
		}
		b.WriteString("\n\n| key | value | unsaid | meaning | example |\n| --- | --- | --- | --- | --- |\n")
		for _, in := range all {
			if dot := strings.LastIndexByte(in.Key, '.'); dot < 0 || in.Key[:dot] != k.Key || in.Form == spec.FormTable || in.Form == spec.FormTables {
				continue
			}
			b.WriteString(tableRow("`"+in.Key[len(k.Key)+1:]+"`", formWords(in), unsaid(in), in.Means, "`"+in.Example+"`"))
		}
		b.WriteString("\n")
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func formWords(k spec.KeyDoc) string {
	if len(k.Values) == 0 {
		return k.Type
	}
	words := make([]string, len(k.Values))
	for i, v := range k.Values {
		words[i] = "`" + v + "`"
	}
	return k.Type + ": " + strings.Join(words, ", ")
}

func unsaid(k spec.KeyDoc) string {
	switch {
	case k.Required:
		return "must be given"
	case k.Default != "":
		return "`" + k.Default + "`"
	}
	return "unknown"
}

// tableRow is a row of a Markdown table.
func tableRow(cells ...string) string {
	for i, c := range cells {
		cells[i] = strings.ReplaceAll(strings.ReplaceAll(c, "\n", " "), "|", "\\|")
	}
	return "| " + strings.Join(cells, " | ") + " |\n"
}

// The reference of the commands is written from the commands.
func TestDocsCommands(t *testing.T) { holdPage(t, docs+"commands.md", commandsPage(t), "Docs") }

const commandsHead = `# Commands

Written from the commands themselves; ` + "`UPDATE=1 go test ./cmd/posset -run Docs`" + ` renews it. ` + "`posset help COMMAND`" + ` says the same.

Results go to standard output, progress and errors to standard error. A lone ` + "`-`" + ` reads standard input. ` + "`--out`" + ` writes a
file whole or not at all. [json.md](json.md) tells how to read the JSON.

`

func commandsPage(t *testing.T) string {
	root := newRoot(console.New(strings.NewReader(""), io.Discard, io.Discard))
	var b strings.Builder
	b.WriteString(commandsHead + "| command | does |\n| --- | --- |\n")
	var commands []*cobra.Command
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() && c.Name() != "help" && c.Name() != "completion" {
			commands = append(commands, c)
			b.WriteString(tableRow(fmt.Sprintf("[`%s`](#posset-%s)", useOf(c), c.Name()), c.Short))
		}
	}
	b.WriteString("\n")
	for _, c := range commands {
		writeCommand(&b, c)
	}
	b.WriteString("## Flags of every command\n\n" + flagTable(root.PersistentFlags()))
	for _, c := range root.Commands() {
		if c.IsAdditionalHelpTopicCommand() && c.Name() != "organisms" { // they stand in models.md
			fmt.Fprintf(&b, "\n## %s\n\n%s; the same as `posset help %s`.\n\n```text\n%s\n```\n", c.Name(), c.Short, c.Name(), helpOn(t, c.Name()))
		}
	}
	b.WriteString("\n## Units in full\n\n" + unitTable(t))
	return b.String()
}

// helpOn is what posset help prints of a topic.
func helpOn(t *testing.T, topic string) string {
	var out, errs bytes.Buffer
	require.Equal(t, 0, run([]string{"help", topic}, strings.NewReader(""), &out, &errs))
	return strings.TrimSpace(out.String() + errs.String())
}

func writeCommand(b *strings.Builder, c *cobra.Command) {
	fmt.Fprintf(b, "## posset %s\n\n%s.\n\n```text\n%s\n```\n\n%s\n\n", c.Name(), strings.TrimSuffix(c.Short, "."), useOf(c), strings.TrimSpace(c.Long))
	if c.Example != "" {
		fmt.Fprintf(b, "```sh\n%s\n```\n\n", unindented(c.Example))
	}
	if own := c.NonInheritedFlags(); own.HasAvailableFlags() {
		b.WriteString(flagTable(own) + "\n")
	}
}

func useOf(c *cobra.Command) string { return strings.TrimSuffix(c.UseLine(), " [flags]") }

func unindented(s string) string {
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		lines[i] = strings.TrimSpace(l)
	}
	return strings.Join(lines, "\n")
}

func flagTable(flags *pflag.FlagSet) string {
	var b strings.Builder
	b.WriteString("| flag | meaning | unsaid |\n| --- | --- | --- |\n")
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden || f.Name == "help" {
			return
		}
		kind, use := pflag.UnquoteUsage(f)
		def := f.DefValue
		if def == "false" || def == "[]" {
			def = ""
		}
		if def != "" {
			def = "`" + def + "`"
		}
		b.WriteString(tableRow("`"+strings.TrimSpace("--"+f.Name+" "+kind)+"`", strings.TrimPrefix(use, kind+": "), def))
	})
	return b.String()
}

// unitTable lists every unit that is read, by what it is a unit of.
func unitTable(t *testing.T) string {
	var b strings.Builder
	b.WriteString("Every unit that is read, with its other spellings; the first is how it is printed.\n\n| of | such as | units |\n| --- | --- | --- |\n")
	by := map[quantity.Dimension][]string{}
	for _, u := range unitsRead(t) {
		q, err := quantity.Parse("1 " + u[0])
		if err != nil { // of a pressure that is neither gauge nor absolute
			q, err = quantity.Parse("1 " + u[0] + "g")
			u = []string{u[0] + "g", u[0] + "a"}
		}
		require.NoError(t, err, "%q is listed and not read", u[0])
		by[q.Dim] = append(by[q.Dim], "`"+strings.Join(u, "` `")+"`")
	}
	for d := quantity.Temperature; d <= quantity.Sugar; d++ {
		if len(by[d]) > 0 {
			b.WriteString(tableRow(strings.TrimPrefix(d.String(), "a "), "`"+d.Example()+"`", strings.Join(by[d], "; ")))
		}
	}
	return b.String()
}

// unitsRead are the units that quantity knows, each with its other spellings.
func unitsRead(t *testing.T) (units [][]string) {
	for _, f := range parsed(t, "../../beverage/quantity") {
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok || lit.Type != nil || len(lit.Elts) < 2 || keyOf(lit.Elts[1]) != "dim" {
				return true
			}
			units = append(units, textsIn(lit))
			return false
		})
	}
	require.Greater(t, len(units), 80)
	return units
}

func keyOf(e ast.Expr) string {
	if kv, ok := e.(*ast.KeyValueExpr); ok {
		if key, ok := kv.Key.(*ast.Ident); ok {
			return key.Name
		}
	}
	return ""
}

// textsIn are the texts of an expression, in order.
func textsIn(n ast.Node) (texts []string) {
	ast.Inspect(n, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if text, err := strconv.Unquote(lit.Value); err == nil {
				texts = append(texts, text)
			}
		}
		return true
	})
	return texts
}
