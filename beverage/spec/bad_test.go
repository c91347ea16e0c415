package spec_test

import (
	"os"
	"strings"
	"testing"

	"posset/beverage/spec"
)

// badCase is one block of testdata/bad.txt: a name after "#", the lines of
// sound.toml that go after "-", those that come after "+", and what is said of
// it, whole, after "!". Without "-" the new lines go to the end.
type badCase struct {
	name          string
	out, in, want []string
}

func (c badCase) spec(sound string) string {
	in := strings.Join(c.in, "\n") + "\n"
	if len(c.out) == 0 {
		return sound + in
	}
	return strings.Replace(sound, strings.Join(c.out, "\n")+"\n", in, 1)
}

func readBadCases(t *testing.T) (cases []badCase) {
	t.Helper()
	for _, block := range strings.Split(readText(t, "testdata/bad.txt"), "\n\n") {
		var c badCase
		for _, line := range strings.Split(block, "\n") {
			mark, rest, _ := strings.Cut(line, " ")
			switch mark {
			case "#":
				c.name = rest
			case "-":
				c.out = append(c.out, rest)
			case "+":
				c.in = append(c.in, rest)
			case "!":
				c.want = append(c.want, rest)
			}
		}
		if c.name != "" {
			cases = append(cases, c)
		}
	}
	return cases
}

func readText(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// What is said of each unusable spec is held whole; UPDATE=1 renews the file,
// to be read by eye before it is kept.
func TestBadSpecs(t *testing.T) {
	sound := readText(t, "testdata/sound.toml")
	if _, err := spec.Parse([]byte(sound), "sound.toml", "testdata", spec.Options{}); err != nil {
		t.Fatal(err)
	}
	var renewed strings.Builder
	for _, c := range readBadCases(t) {
		text := c.spec(sound)
		if text == sound {
			t.Errorf("%s: changes nothing", c.name)
		}
		_, err := spec.Parse([]byte(text), "bad.toml", "testdata", spec.Options{})
		got := "nothing"
		if err != nil {
			got = err.Error()
		}
		if want := strings.Join(c.want, "\n"); got != want && os.Getenv("UPDATE") == "" {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, want)
		}
		renewed.WriteString(c.block(got))
	}
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile("testdata/bad.txt", []byte(renewed.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func (c badCase) block(got string) string {
	marked := func(mark string, lines []string) (text string) {
		for _, l := range lines {
			text += mark + " " + l + "\n"
		}
		return text
	}
	return "# " + c.name + "\n" + marked("-", c.out) + marked("+", c.in) + marked("!", strings.Split(got, "\n")) + "\n"
}
