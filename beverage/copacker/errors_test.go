package copacker_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage/copacker"
)

// What is said of each unusable file of lines is held whole.
func TestUnusableFiles(t *testing.T) {
	const head = "[[line]]\nname = \"A\"\nplant = \"B\"\n"
	for name, c := range map[string]struct{ text, want string }{
		"empty":             {"", `lines.toml: has no [[line]] table; write [[line]], and under it name and plant; posset help lines lists every key`},
		"no plant":          {"[[line]]\nname = \"A\"\n", `lines.toml:1:3: line: has no plant; write plant = "Fernhollow Beverages, plant A"`},
		"unknown key":       {head + "allergen = \"milk\"\n", `lines.toml:4:1: line.allergen: unknown key "allergen"; write "allergens"`},
		"strayed key":       {head + "hold_time = \"3 s\"\n", `lines.toml:4:1: line.hold_time: unknown key "hold_time" here; it belongs in [[line.process]]`},
		"unknown word":      {head + "markets = [\"USA\"]\n", `lines.toml:4:12: line.markets: "USA" is unknown; write "US"`},
		"no unit":           {head + "minimum_run = \"20000\"\n", `lines.toml:4:15: line.minimum_run: "20000" has no unit; write "20000 L"`},
		"a comma":           {head + "minimum_run = \"20,000 L\"\n", `lines.toml:4:15: line.minimum_run: "20,000 L" has a comma; write "20000 L" or "20.000 L"`},
		"no range":          {head + "[[line.process]]\nroute = \"hot fill\"\nhold_time = \"30 s\"\n", `lines.toml:6:13: line.process.hold_time: "30 s" is a text; write one table [line.process.hold_time]`},
		"crossed range":     {head + "carbonation = { at_least = 4, at_most = 2 }\n", `lines.toml:4: line.carbonation.at_most: is below at_least; write an at_most that is not below it`},
		"crossed heat":      {head + "[[line.process]]\nroute = \"hot fill\"\nfill_temperature = { at_least = \"90 C\", at_most = \"80 C\" }\n", `lines.toml:6: line.process.fill_temperature.at_most: is below at_least; write an at_most that is not below it`},
		"absolute":          {head + "[[line.process]]\nroute = \"retort\"\nback_pressure = { at_most = \"2 bara\" }\n", `lines.toml:6:29: line.process.back_pressure.at_most: "2 bara" is absolute; write the gauge pressure, such as "1.5 barg"`},
		"no route":          {head + "[[line.process]]\nclasses = \"acid\"\n", `lines.toml:4:8: line.process: has no route; write route = "hot fill"`},
		"told twice":        {head + head, `lines.toml:5: line.name: "A" of this plant is told twice, first in line 1; keep one of them, or give it another name`},
		"a pack of no kind": {head + "[[line.pack]]\ntype = \"jar\"\n", `lines.toml:5:8: line.pack.type: "jar" is unknown; write one of "can", "steel can", "aluminium bottle", "glass bottle", "PET bottle", "heat-set PET bottle", "PP bottle", "HDPE bottle", "carton", "pouch", "cup" or "keg"`},
		"two at once":       {"[[line]]\nname = 3\nplant = \"B\"\nmarket = \"US\"\n", "lines.toml:2:8: line.name: 3 is a number; write a text in quotes\n" + `lines.toml:4:1: line.market: unknown key "market"; write "markets"`},
		"not TOML":          {"[[line]]\nname = A\n", `lines.toml:2:8: "name = A" is not TOML (unexpected character at start of value); write name = "A", in quotes`},
	} {
		_, err := copacker.Parse([]byte(c.text), "lines.toml")
		if err == nil || err.Error() != c.want {
			t.Errorf("%s:\n got %v\nwant %s", name, err, c.want)
		}
	}
}

func TestReadNamesTheFile(t *testing.T) {
	_, err := copacker.Read("testdata/none.toml", nil)
	require.EqualError(t, err, "testdata/none.toml: is not there; check the name and the folder")
	f, err := copacker.Read("-", strings.NewReader("[[line]]\nname = \"A\"\nplant = \"B\"\n"))
	require.NoError(t, err)
	require.Equal(t, "-", f.Name)
	require.Len(t, f.SHA256, 64)
}

// Every key is told in a sentence and with an example that can be read.
func TestKeysAreTold(t *testing.T) {
	seen := map[string]bool{}
	for _, doc := range copacker.Keys() {
		require.False(t, seen[doc.Key], doc.Key)
		seen[doc.Key] = true
		require.True(t, strings.HasSuffix(doc.Means, "."), "%s: %q", doc.Key, doc.Means)
	}
	require.True(t, seen["line.process.hold_temperature.at_most"] && seen["line.pack.fill.at_least"])
}

// FuzzLines: no bytes make the reader panic, and what it says names the file in
// every line.
func FuzzLines(f *testing.F) {
	f.Add([]byte(soundLine))
	for _, text := range []string{"[[line]]", "[[line]]\n[[line.process]]\nroute=1", "line = 3", "[line]\nname='a'", "[[line]]\nname='a'\nplant='b'\ncarbonation={at_most=1e400}", "\xff", "[[line]]\nname=\"\"\"\n"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := copacker.Parse(data, "lines.toml")
		if (file == nil) == (err == nil) {
			t.Fatal("a file or an error, never both or neither")
		}
		if err == nil {
			return
		}
		lines := strings.Split(err.Error(), "\n")
		for _, l := range lines {
			if !strings.HasPrefix(l, "lines.toml") || len(lines) > 11 {
				t.Fatalf("not a clean line: %q", l)
			}
		}
	})
}
