package spec_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/spec"
)

var (
	keyLine      = regexp.MustCompile(`^([a-z_]+) = `)
	quantityLine = regexp.MustCompile(`^[a-z_]+ = "[0-9.]+ [^"]+"$`)
)

func catalogueLines(t testing.TB) []string {
	return strings.Split(readText(t, catalogue), "\n")
}

func parseLines(lines []string) (*beverage.Drink, error) {
	return spec.Parse([]byte(strings.Join(lines, "\n")), "drink.toml", "testdata/catalogue", spec.Options{})
}

func pick(t *rapid.T, lines []string, like *regexp.Regexp) int {
	var at []int
	for i, l := range lines {
		if like.MatchString(l) {
			at = append(at, i)
		}
	}
	return rapid.SampledFrom(at).Draw(t, "line")
}

// A key that is not spelt exactly is named with its line, whichever it is and
// however it is misspelt.
func TestMisspeltKeysAreNamed(t *testing.T) {
	lines := catalogueLines(t)
	rapid.Check(t, func(t *rapid.T) {
		at := pick(t, lines, keyLine)
		key := keyLine.FindStringSubmatch(lines[at])[1]
		i := rapid.IntRange(0, len(key)-1).Draw(t, "letter")
		wrong := rapid.SampledFrom([]string{
			key[:i] + strings.ToUpper(key[i:]), key[:i] + key[i:i+1] + key[i:], key[:i] + "q" + key[i+1:],
		}).Draw(t, "misspelt")
		changed := append([]string(nil), lines...)
		changed[at] = wrong + strings.TrimPrefix(lines[at], key)
		_, err := parseLines(changed)
		if wrong == key {
			return
		}
		if err == nil || !strings.Contains(err.Error(), "drink.toml:"+strconv.Itoa(at+1)+":1: ") || !strings.Contains(err.Error(), `unknown key "`+wrong+`"`) {
			t.Fatalf("%s: %v", changed[at], err)
		}
	})
}

// Every quantity of the catalogue is refused, in its line, without its unit,
// with a comma, and as something that it is not.
func TestWrongQuantitiesAreNamed(t *testing.T) {
	lines := catalogueLines(t)
	rapid.Check(t, func(t *rapid.T) {
		at := pick(t, lines, quantityLine)
		key, value, _ := strings.Cut(lines[at], " = ")
		number, _, _ := strings.Cut(strings.Trim(value, `"`), " ")
		wrong := rapid.SampledFrom([]string{number, strconv.Quote(number), `"` + number + ` lumens"`, `"1,5 mL"`, `"nan g/L"`, `"1e400 C"`, `"-1e9 %"`, "[1]", "true", `""`}).Draw(t, "value")
		changed := append([]string(nil), lines...)
		changed[at] = key + " = " + wrong
		_, err := parseLines(changed)
		if err == nil || !strings.Contains(err.Error(), "drink.toml:"+strconv.Itoa(at+1)+":") {
			t.Fatalf("%s: %v", changed[at], err)
		}
	})
}

// Leaving a key out leaves its value unknown, and everything else as it was: no
// default is made up.
func TestAbsentKeysAreUnknown(t *testing.T) {
	lines := catalogueLines(t)
	whole := known(t, lines)
	rapid.Check(t, func(rt *rapid.T) {
		at := pick(rt, lines, keyLine)
		changed := append([]string(nil), lines...)
		changed[at] = ""
		d, err := parseLines(changed)
		if err != nil {
			required := strings.Contains(err.Error(), " has no ") || strings.Contains(err.Error(), "has neither") || strings.Contains(err.Error(), "write density too")
			if !required {
				rt.Fatalf("without %s: %v", lines[at], err)
			}
			return
		}
		if fewer := len(placesOf(d)); fewer > whole {
			rt.Fatalf("without %s more is known: %d, not %d", lines[at], fewer, whole)
		}
		for _, p := range placesOf(d) {
			if p.File == "drink.toml" && p.Line == at+1 {
				rt.Fatalf("without %s something still stands in line %d", lines[at], at+1)
			}
		}
	})
}

func known(t *testing.T, lines []string) int {
	d, err := parseLines(lines)
	if err != nil {
		t.Fatal(err)
	}
	return len(placesOf(d))
}

// FuzzSpec: no bytes make the parser panic, and whatever it says is at most
// eleven clean lines that name the file.
func FuzzSpec(f *testing.F) {
	seeds, err := filepath.Glob("testdata/*.toml")
	if err != nil {
		f.Fatal(err)
	}
	for _, path := range append(seeds, catalogue) {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, text := range []string{"[drink]\nph = 3,2\n[[drink]]", "drink.a.b = 1\n[drink]", "[[process.critical]]\nwhat=\"other\"\nat_least=1\nat_most=\"2 C\"", "[process]\nlog=[\"a\"]\ntarget=\"F0\"", "x = \"\"\"", "\xff\xfe", "[drink]\n'' = 1"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := spec.Parse(data, "drink.toml", "testdata/catalogue", spec.Options{})
		if (d == nil) == (err == nil) {
			t.Fatal("a drink or an error, never both or neither")
		}
		if err != nil {
			clean(t, err.Error())
		}
		if _, err := spec.IngredientFile("drink.toml", data); err != nil {
			clean(t, err.Error())
		}
	})
}

func clean(t *testing.T, text string) {
	lines := strings.Split(text, "\n")
	if len(lines) > 11 {
		t.Fatalf("%d lines", len(lines))
	}
	for _, line := range lines {
		if len([]rune(line)) > 1000 || strings.ContainsFunc(line, unicode.IsControl) || !strings.Contains(line, "drink.toml") && !strings.Contains(line, "testdata") {
			t.Fatalf("not a clean line: %q", line)
		}
	}
}
