package report

import (
	"regexp"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"pgregory.net/rapid"

	"posset/beverage"
)

// neverSaid are words that would claim more than is known.
var neverSaid = regexp.MustCompile(`(?i)\b(safe|safely|pass|passes|passed|approved|compliant)\b|✓|✔|☑|✅`)

func TestNoRenderingClaimsMoreThanIsKnown(t *testing.T) {
	d := Assessment(quince(), Metric)
	for _, s := range []string{text(t, Style{}, d), sheet(t, d), jsonText(t, quince())} {
		if w := neverSaid.FindString(s); w != "" {
			t.Errorf("says %q", w)
		}
	}
}

func TestFirstLineTellsWhatIsOpen(t *testing.T) {
	for _, c := range []struct {
		levels []beverage.Level
		want   string
	}{
		{nil, "0 stops and 0 reviews open; not a scheduled process, not a release"},
		{[]beverage.Level{beverage.Stop, beverage.Review, beverage.Review, beverage.Note}, "1 stop and 2 reviews open; not a scheduled process, not a release"},
	} {
		a := quince()
		a.Findings = nil
		for _, l := range c.levels {
			a.Findings = append(a.Findings, beverage.Finding{ID: "x", Level: l, Title: "t"})
		}
		got, _, _ := strings.Cut(text(t, Style{}, Assessment(a, Metric)), "\n")
		if got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestMeetsIsNeverSaidAlone(t *testing.T) {
	a := quince()
	a.Lethality.Outcome = beverage.Meets
	if s := text(t, Style{Width: 1000}, Assessment(a, Metric)); !strings.Contains(strings.Join(strings.Fields(s), " "), "meets (the target you stated; whether it is adequate was not judged)") {
		t.Errorf("meets stands alone in:\n%s", s)
	}
}

func TestAnEmptyAssessmentStillAnswers(t *testing.T) {
	s := text(t, Style{}, Assessment(&beverage.Assessment{Cautions: testCautions}, Metric))
	for _, want := range []string{"0 stops and 0 reviews open", "undecided; pH not known", "no route", testCautions[0]} {
		if !strings.Contains(s, want) {
			t.Errorf("lacks %q in:\n%s", want, s)
		}
	}
}

func TestControlCharactersNeverReachTheTerminal(t *testing.T) {
	a := quince()
	a.Drink.Name = "Quince\x1b[31m\u009b2J\u202ewater\r\n\a"
	a.Findings[0].Detail = "read \x1b]0;x\a"
	a.Routes[0].Reasons[0].Text = "\x00\x7f"
	d := Assessment(a, Metric)
	for _, s := range []string{text(t, Style{}, d), sheet(t, d), jsonText(t, a)} {
		if i := strings.IndexFunc(s, func(r rune) bool { return r != '\n' && r < ' ' || r >= 0x7f && r < 0xa0 || r == '\u202e' }); i >= 0 {
			t.Errorf("control character at %d: %q", i, s[max(0, i-20):i+10])
		}
	}
}

func TestColourOnlyWhereAskedAndNeverAlone(t *testing.T) {
	d := Assessment(quince(), Metric)
	plain, coloured := text(t, Style{}, d), text(t, Style{Colour: true}, d)
	if strings.Contains(plain, "\x1b") {
		t.Error("escape sequence without colour")
	}
	if !strings.Contains(coloured, sgrRed+"STOP"+sgrReset) {
		t.Error("no coloured level")
	}
	if stripped := regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(coloured, ""); stripped != plain {
		t.Error("colour changes words")
	}
}

func TestLinesKeepToTheWidth(t *testing.T) {
	for _, w := range []int{100, 80, 60, 40, 30} {
		for _, l := range strings.Split(text(t, Style{Width: w}, Assessment(quince(), Metric)), "\n") {
			if width(l) > w {
				t.Errorf("width %d: %q", w, l)
			}
		}
	}
}

func TestASCIIStyleIsASCII(t *testing.T) {
	a := quince()
	a.Drink.Name = "Sanddorn-Quitte für 93 °C, 日本"
	for i, r := range text(t, Style{ASCII: true}, Assessment(a, Metric)) {
		if r > 0x7e {
			t.Errorf("%q at %d", r, i)
		}
	}
}

func TestWrapKeepsWordsAndWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, limit := printable(rapid.String().Draw(t, "s")), rapid.IntRange(2, 40).Draw(t, "limit")
		lines := wrap(s, limit)
		if got, want := strings.Join(strings.Fields(strings.Join(lines, "")), ""), strings.Join(strings.Fields(s), ""); got != want {
			t.Fatalf("wrapped to %q, was %q", got, want)
		}
		for _, l := range lines {
			if width(l) > limit && uniseg.GraphemeClusterCount(l) > 1 { // one character may be wider by itself
				t.Fatalf("%q is wider than %d", l, limit)
			}
		}
	})
}

func TestRangesRoundOutwards(t *testing.T) {
	f := Metric.between("pH", acidity, known(4.58), known(4.5549), known(4.6012))
	if got, want := f.number(), "4.58 (4.55 to 4.61)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	f = Metric.between("pH", acidity, known(4.5), known(4.4), known(4.6))
	if got, want := f.number(), "4.50 (4.40 to 4.60)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := credited(known(5.999)), "5.99"; got != want {
		t.Errorf("credited %q, want %q", got, want)
	}
}

func TestUnitsOfTheReader(t *testing.T) {
	for _, c := range []struct {
		u    Units
		m    measure
		v    float64
		want string
	}{
		{Metric, temperature, 121.1, "121.1 °C"},
		{US, temperature, 121.1, "250.0 °F"}, // 249.98
		{US, difference, 10, "18.0 F°"},
		{Metric, gauge, 240, "2.40 barg"},
		{US, gauge, 240, "34.8 psig"}, // 240/6.894757 = 34.809
		{US, volume, 330, "11.2 fl oz"},
		{Metric, minutes, 0.000012, "1.2e-05 min"},
		{Metric, minutes, -0.000, "0.00 min"},
		{Metric, minutes, 123456789012, "1.235e+11 min"},
	} {
		if got := c.u.text(c.m, c.v); got != c.want {
			t.Errorf("%v: got %q, want %q", c.v, got, c.want)
		}
	}
}
