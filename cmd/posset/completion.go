package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage/ingredient"
	"posset/beverage/rule"
	"posset/beverage/starter"
	"posset/beverage/sweep"
	"posset/cmd/posset/internal/console"
	"posset/thermal"
)

// shells that completion can be written for.
var shells = []string{"bash", "zsh", "fish", "powershell"}

func completionCommand(con *console.Console) *cobra.Command {
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "What lets a shell complete commands, flags, findings and names",
		Long: `Writes what a shell needs to complete words of posset: commands, flags and their
words, ids of findings, kinds of drink, ingredients, organisms, keys to vary.`,
		Example: "  posset completion bash > ~/.local/share/bash-completion/completions/posset\n  posset completion zsh > \"${fpath[1]}/_posset\"\n" +
			"  posset completion fish > ~/.config/fish/completions/posset.fish\n  posset completion powershell >> $PROFILE",
		Args:      cobra.ArbitraryArgs,
		ValidArgs: shells,
		RunE: func(cmd *cobra.Command, names []string) error {
			if len(names) != 1 || !slices.Contains(shells, names[0]) {
				return usageError(cmd, "takes one shell; write "+strings.Join(shells, ", "))
			}
			return writeCompletion(cmd.Root(), con, names[0])
		},
	}
}

func writeCompletion(root *cobra.Command, con *console.Console, shell string) error {
	switch shell {
	case "bash":
		return root.GenBashCompletionV2(con.Out, true)
	case "zsh":
		return root.GenZshCompletion(con.Out)
	case "fish":
		return root.GenFishCompletion(con.Out, true)
	}
	return root.GenPowerShellCompletionWithDesc(con.Out)
}

// offered are what a flag or an argument may be, found only when they are asked for.
type offered func() []string

func fixed(list ...string) offered { return func() []string { return list } }

// flagWords are the words of flags, by name; what is no list of words is a file.
var flagWords = map[string]offered{
	"format": fixed("text", "json", "ndjson", "csv", "xlsx", "html"), "units": fixed("metric", "us"), "color": fixed("auto", "always", "never"),
	"kind": kindIDs, "unit": fixed("C", "F", "K"), "dates": fixed("dmy", "mdy", "ymd"), "organism": organismNames, "with": ingredientNames, "vary": varyKeys,
	"disclose": fixed("full", "classes", "none"),
}

// argumentWords are those of the arguments of commands.
var argumentWords = map[string]offered{"explain": findingIDs, "ingredients": ingredientNames}

// fileEndings are the files that a command takes. Folders are offered, too.
var fileEndings = map[string][]string{
	"check": {"toml"}, "acid": {"toml"}, "carbonation": {"toml"}, "protein": {"toml"}, "routes": {"toml"}, "match": {"toml"}, "brief": {"toml"}, "sweep": {"toml"}, "compare": {"toml"},
	"lethality": {"csv", "tsv", "txt", "log", "xlsx", "gz"}, "heating": {"csv", "tsv", "txt", "log", "xlsx", "gz"},
}

// bindCompletion tells the shell what may stand where.
func bindCompletion(root *cobra.Command) {
	for _, c := range append([]*cobra.Command{root}, root.Commands()...) {
		for name, of := range flagWords {
			if c.Flags().Lookup(name) != nil || c == root && root.PersistentFlags().Lookup(name) != nil {
				// It fails only where the flag is not there or has words already.
				_ = c.RegisterFlagCompletionFunc(name, offering(of, name == "vary"))
			}
		}
		if of, ok := argumentWords[c.Name()]; ok {
			c.ValidArgsFunction = firstOnly(offering(of, false))
		}
		if endings, ok := fileEndings[c.Name()]; ok {
			c.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				return endings, cobra.ShellCompDirectiveFilterFileExt
			}
		}
	}
}

// offering gives the words that begin as the user did; whole words, unless more
// is to be typed after them.
func offering(of offered, more bool) cobra.CompletionFunc {
	return func(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		var list []string
		for _, w := range of() {
			if strings.HasPrefix(strings.ToLower(w), strings.ToLower(begun)) {
				list = append(list, w)
			}
		}
		if more {
			return list, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
		}
		return list, cobra.ShellCompDirectiveNoFileComp
	}
}

func firstOnly(f cobra.CompletionFunc) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return f(cmd, args, begun)
	}
}

func findingIDs() []string {
	var ids []string
	for _, r := range rule.All() {
		ids = append(ids, r.ID+"\t"+r.Level.String()+": "+r.Title)
	}
	return ids
}

func kindIDs() []string {
	var ids []string
	for _, k := range starter.Kinds() {
		ids = append(ids, k.ID+"\t"+k.Title)
	}
	return ids
}

func organismNames() []string {
	var names []string
	for _, o := range thermal.Organisms() {
		names = append(names, o.Name)
	}
	return names
}

func ingredientNames() []string {
	var names []string
	for _, e := range ingredient.Default().All() {
		names = append(names, e.Name)
	}
	slices.Sort(names)
	return names
}

func varyKeys() []string {
	var keys []string
	for _, k := range sweep.Keys() {
		keys = append(keys, k+"=")
	}
	return keys
}
