//go:build unix

package spec_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"posset/beverage/spec"
)

// records makes a folder of specs that each name one record, beside a folder
// that they must not reach.
func records(t *testing.T) (dir string) {
	t.Helper()
	named := map[string]string{
		"inside": "logs/run.csv", "dot": "./logs/run.csv", "absent": "logs/none.csv", "folder": "logs", "up": "../out/run.csv", "round": "logs/../logs/run.csv",
		"absolute": "OUT/run.csv", "link": "link.csv", "linked-folder": "linked/run.csv", "inner-link": "inner.csv", "pipe": "pipe", "loop": "loop.csv", "spaced": " logs/run.csv ",
	}
	files := map[string]string{"in/logs/run.csv": "x", "out/run.csv": "x"}
	for name, log := range named {
		files["in/"+name+".toml"] = small + "[process]\nlog = \"" + log + "\"\n"
	}
	root := folder(t, files)
	dir = filepath.Join(root, "in")
	text := strings.ReplaceAll(files["in/absolute.toml"], "OUT", filepath.ToSlash(filepath.Join(root, "out")))
	if err := os.WriteFile(filepath.Join(dir, "absolute.toml"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	for link, to := range map[string]string{"link.csv": "../out/run.csv", "linked": "../out", "inner.csv": "logs/run.csv", "loop.csv": "loop.csv"} {
		if err := os.Symlink(to, filepath.Join(dir, link)); err != nil {
			t.Skip("no links here: ", err)
		}
	}
	if err := syscall.Mkfifo(filepath.Join(dir, "pipe"), 0o644); err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestRecordsStayInTheFolder(t *testing.T) {
	dir := records(t)
	leaves := " leaves the spec's folder; name a file inside it, or allow others with --allow-outside"
	outside := filepath.ToSlash(filepath.Join(filepath.Dir(dir), "out", "run.csv"))
	for name, want := range map[string]string{
		"inside":        "read",
		"dot":           "read",
		"spaced":        "read",
		"inner-link":    "read",
		"absent":        `absent.toml:4:7: process.log: "logs/none.csv" is not there; name a file that is, or leave the key out`,
		"folder":        `folder.toml:4:7: process.log: "logs" is a folder; name a file`,
		"up":            `up.toml:4:7: process.log: "../out/run.csv"` + leaves,
		"round":         `round.toml:4:7: process.log: "logs/../logs/run.csv"` + leaves,
		"absolute":      `absolute.toml:4:7: process.log: ` + quoted(outside) + leaves,
		"link":          `link.toml:4:7: process.log: "link.csv"` + leaves,
		"linked-folder": `linked-folder.toml:4:7: process.log: "linked/run.csv"` + leaves,
		"pipe":          `pipe.toml:4:7: process.log: "pipe" is not a plain file; name a file`,
		"loop":          `loop.toml:4:7: process.log: "loop.csv" cannot be read (too many levels of symbolic links); name a file that can`,
	} {
		if got := said(t, dir, name+".toml", spec.Options{}); got != want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, want)
		}
	}
}

func quoted(s string) string {
	if len(s) > 70 {
		return `"` + s[:70] + `"...`
	}
	return `"` + s + `"`
}

// What is allowed outside is found from the spec's folder, whatever the way it
// was named.
func TestRecordsOutside(t *testing.T) {
	dir := records(t)
	for _, name := range []string{"up", "round", "absolute", "link", "linked-folder", "inside"} {
		d, err := spec.Read(filepath.Join(dir, name+".toml"), spec.Options{AllowOutside: true})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if _, err := os.Stat(filepath.Join(d.Dir, d.Process.Records[0].File)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, want := range map[string]string{
		"absent": `absent.toml:4:7: process.log: "logs/none.csv" is not there; name a file that is, or leave the key out`,
		"pipe":   `pipe.toml:4:7: process.log: "pipe" is not a plain file; name a file`,
	} {
		if got := said(t, dir, name+".toml", spec.Options{AllowOutside: true}); got != want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, want)
		}
	}
}

func TestRecordNameIsCleaned(t *testing.T) {
	dir := records(t)
	for _, name := range []string{"dot", "spaced"} {
		d, err := spec.Read(filepath.Join(dir, name+".toml"), spec.Options{})
		if err != nil || d.Process.Records[0].File != filepath.FromSlash("logs/run.csv") {
			t.Errorf("%s: %+v %v", name, d, err)
		}
	}
}

func TestOwnIngredientFiles(t *testing.T) {
	dir := folder(t, map[string]string{
		"good.toml":   "[drink]\ningredient_files = [\"a.toml\"]\n",
		"bad.toml":    "[drink]\nserving = \"330\"\ningredient_files = [\"b.toml\", \"a.toml\", \"c.toml\", \"../a.toml\", \"utf16.toml\", \"none.toml\"]\n",
		"one.toml":    "[drink]\ningredient_files = \"a.toml\"\n",
		"a.toml":      "[[ingredient]]\nname = \"Barley base\"\nkind = \"extract\"\nprotein = \"2 %\"\n",
		"b.toml":      "[drink]\n[[ingredient]]\nname = \"x\"\namount = \"2 g/L\"\nprotien = \"3 %\"\n",
		"c.toml":      "[[ingredient]]\nname = \"barley  BASE\"\n",
		"utf16.toml":  inUTF16("[[ingredient]]", true),
		"list.toml":   "[drink]\ningredient_files = [[\"a.toml\"], 3]\n",
		"number.toml": "[drink]\ningredient_files = 3\n",
	})
	for name, want := range map[string]string{
		"good.toml": "read",
		"one.toml":  "read",
		"list.toml": `list.toml:2:1: drink.ingredient_files: is a list; write a text in quotes
list.toml:2:33: drink.ingredient_files: 3 is a number; write a text in quotes`,
		"number.toml": `number.toml:2:20: drink.ingredient_files: 3 is a number; write a text in quotes`,
		"bad.toml": `bad.toml:2:11: drink.serving: "330" has no unit; write "330 mL" or "330 fl oz"
bad.toml:3:51: drink.ingredient_files: "../a.toml" leaves the spec's folder; name a file inside it, or allow others with --allow-outside
bad.toml:3:78: drink.ingredient_files: "none.toml" is not there; name a file that is, or leave the key out
b.toml:1:2: drink: unknown table "drink"; write "ingredient"
b.toml:4:1: ingredient.amount: stands in a file of figures; write the amount in the drink's own file
b.toml:5:1: ingredient.protien: unknown key "protien"; write "protein"
c.toml:1: ingredient: "barley  BASE" is described twice, first at a.toml:1; keep one of them
utf16.toml: is UTF-16 or UTF-32, not UTF-8; save it as UTF-8`,
	} {
		if got := said(t, dir, name, spec.Options{}); got != want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, want)
		}
	}
}

func TestIngredientFile(t *testing.T) {
	list, err := spec.IngredientFile("ours.toml", []byte("[[ingredient]]\nname = \"Barley base\"\nprotein = \"2 %\"\n"))
	if err != nil || len(list) != 1 || list[0].Described.ProteinPercent.V != 2 || list[0].Place.Line != 1 || list[0].Amount.Known {
		t.Errorf("%+v %v", list, err)
	}
	_, err = spec.IngredientFile("ours.toml", []byte("[[ingredient]]\nprotein = 2\n"))
	if want := "ours.toml:1:3: ingredient: has no name; write name = \"whey protein isolate, acidified\"\nours.toml:2:11: ingredient.protein: \"2\" has no unit; write \"2 %\" or \"2 ppm\""; err == nil || err.Error() != want {
		t.Errorf("%v\nwant %s", err, want)
	}
	if list, err = spec.IngredientFile("empty.toml", nil); err != nil || len(list) != 0 {
		t.Errorf("%v %v", list, err)
	}
}
