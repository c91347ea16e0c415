package chart

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// some is a chart with one of everything.
func some() Chart {
	return Chart{
		Title: `Record of "run" <1>`, About: "Temperature & credit.", X: Axis{Title: "time, min"},
		Panels: []Panel{
			{Y: Axis{Title: "temperature, °C"}, Curves: []Curve{
				{Name: "1: Can 1", Style: 0, Points: []Point{{0, 20}, {5, 90.25}, Gap, {8, 121.1}, {20, 121.4}, {30, 40}}},
				{Name: "2: Retort", Style: 3, Points: []Point{{0, 25}, {4, 122}, {20, 122}, {22, 30}, {30, 28}}}},
				Spans: []Span{{Name: "no reading", From: 5, To: 8}}, Uprights: []Line{{Label: "steam off", At: 20}}},
			{Y: Axis{Title: "faults"}, Lanes: []Lane{{Label: "1", Spans: []Span{{Name: "no reading", From: 5, To: 8}}, Marks: []Mark{{Letter: "a", Name: "gap, row 12", X: 5}}},
				{Label: "2", Spans: []Span{{Name: "never credited", Hatch: 2, To: 30}}}}},
			{Y: Axis{Title: "credited, min"}, Height: 120, Curves: []Curve{{Name: "1: Can 1", Points: []Point{{0, 0}, {10, 1}, {20, 8}, {30, 8.5}}}},
				Levels: []Line{{Label: "target 6 min", Name: "as stated", At: 6}, {Label: "other", At: 6.2}, {Label: "far off", At: 99}},
				Marks:  []Mark{{Letter: "W", Name: "at its word", X: 30, Y: 9.1}}},
		},
	}
}

func TestChartIsAsItWasRead(t *testing.T) {
	path := filepath.Join("testdata", "some.svg")
	got := strings.ReplaceAll(some().SVG("p1"), "><", ">\n<") + "\n"
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), got); d != "" {
		t.Error(d)
	}
}

func TestChartHasNameAndDescription(t *testing.T) {
	s := some().SVG("p7")
	for _, want := range []string{`role="img" aria-labelledby="p7t" aria-describedby="p7d"`, `<title id="p7t">Record of &#34;run&#34; &lt;1&gt;</title>`, `<desc id="p7d">Temperature &amp; credit.</desc>`} {
		if !strings.Contains(s, want) {
			t.Errorf("lacks %s", want)
		}
	}
}

func TestLegendExplainsEachOnce(t *testing.T) {
	var got []string
	for _, e := range some().Legend() {
		got = append(got, e.Letter+" "+e.Text)
	}
	want := []string{" 1: Can 1", " 2: Retort", " no reading", " never credited", " target 6 min: as stated", "a gap, row 12", "W at its word"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestStylesDifferWithoutColour(t *testing.T) {
	shapes, hatches := map[string]bool{}, map[string]bool{}
	for i := range Styles {
		shapes[shape(i, 0, 0)] = true
	}
	for i := range Hatches {
		hatches[rules(i, 38, 14)] = true
	}
	if len(shapes) != Styles || len(hatches) != Hatches {
		t.Errorf("%d marks for %d styles, %d rules for %d hatches", len(shapes), Styles, len(hatches), Hatches)
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{0, 100, "0 20 40 60 80 100"}, {-3.1, 9.9, "-5 0 5 10"}, {0, 0.07, "0.00 0.02 0.04 0.06 0.08"}, {5, 5, "-5 0 5 10 15"},
		{0, 1e9, "0 200000000 400000000 600000000 800000000 1000000000"}, {math.Inf(1), math.Inf(-1), "0 0.2 0.4 0.6 0.8 1.0"},
	} {
		s := newScale(Axis{}, extent{c.low, c.high}, yTicks, 0, 100)
		var got []string
		for _, v := range s.ticks() {
			got = append(got, s.label(v))
		}
		if g := strings.Join(got, " "); g != strings.ReplaceAll(c.want, "0.00 ", "0 ") {
			t.Errorf("%v to %v: got %s, want %s", c.low, c.high, g, c.want)
		}
	}
}

func TestCoordinatesRoundAwayFromTies(t *testing.T) {
	for v, want := range map[float64]string{0: "0", -0.04: "0", 1.05: "1.1", 1.05 - 1e-12: "1.1", 12.34: "12.3", 640: "640", -3.26: "-3.3"} {
		if got := coordinate(v); got != want {
			t.Errorf("%v: got %s, want %s", v, got, want)
		}
	}
}

// figure is any float64, the odd ones often.
func figure() *rapid.Generator[float64] {
	return rapid.OneOf(rapid.Float64Range(-1e4, 1e4), rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, math.MaxFloat64, 1e-300}))
}

func anyChart(t *rapid.T) Chart {
	word, style := rapid.String(), rapid.IntRange(0, 9)
	span := rapid.Custom(func(t *rapid.T) Span {
		return Span{word.Draw(t, "name"), style.Draw(t, "hatch"), figure().Draw(t, "from"), figure().Draw(t, "to")}
	})
	line := rapid.Custom(func(t *rapid.T) Line {
		return Line{word.Draw(t, "label"), word.Draw(t, "name"), figure().Draw(t, "at")}
	})
	mark := rapid.Custom(func(t *rapid.T) Mark {
		return Mark{word.Draw(t, "letter"), word.Draw(t, "name"), figure().Draw(t, "x"), figure().Draw(t, "y")}
	})
	point := rapid.Custom(func(t *rapid.T) Point { return Point{figure().Draw(t, "x"), figure().Draw(t, "y")} })
	curve := rapid.Custom(func(t *rapid.T) Curve {
		return Curve{word.Draw(t, "name"), style.Draw(t, "style"), rapid.SliceOfN(point, 0, 9).Draw(t, "points")}
	})
	lane := rapid.Custom(func(t *rapid.T) Lane {
		return Lane{word.Draw(t, "label"), word.Draw(t, "name"), rapid.SliceOfN(figure(), 0, 2).Draw(t, "ends"), rapid.SliceOfN(span, 0, 2).Draw(t, "spans"), rapid.SliceOfN(mark, 0, 2).Draw(t, "marks")}
	})
	cell := rapid.Custom(func(t *rapid.T) Cell {
		return Cell{figure().Draw(t, "x"), figure().Draw(t, "y"), style.Draw(t, "tone"), rapid.Bool().Draw(t, "hatched"), word.Draw(t, "mark"), word.Draw(t, "letters")}
	})
	field := rapid.Custom(func(t *rapid.T) *Field {
		return &Field{figure().Draw(t, "wide"), figure().Draw(t, "high"), rapid.SliceOfN(cell, 0, 6).Draw(t, "cells"), rapid.SliceOfN(word, 0, 4).Draw(t, "tones"), word.Draw(t, "hatch"), rapid.Bool().Draw(t, "large"), rapid.SliceOfN(mark, 0, 2).Draw(t, "signs")}
	})
	panel := rapid.Custom(func(t *rapid.T) Panel {
		return Panel{Axis{word.Draw(t, "title"), figure().Draw(t, "low"), figure().Draw(t, "high")}, rapid.Float64Range(0, 400).Draw(t, "height"),
			rapid.OneOf(rapid.Just((*Field)(nil)), field).Draw(t, "field"), rapid.SliceOfN(curve, 0, 3).Draw(t, "curves"), rapid.SliceOfN(line, 0, 3).Draw(t, "levels"), rapid.SliceOfN(line, 0, 2).Draw(t, "uprights"),
			rapid.SliceOfN(span, 0, 2).Draw(t, "spans"), rapid.SliceOfN(mark, 0, 3).Draw(t, "marks"), rapid.SliceOfN(lane, 0, 1).Draw(t, "lanes")}
	})
	return Chart{word.Draw(t, "title"), word.Draw(t, "about"), Axis{word.Draw(t, "x"), figure().Draw(t, "low"), figure().Draw(t, "high")}, rapid.SliceOfN(panel, 0, 3).Draw(t, "panels")}
}

var (
	written = regexp.MustCompile(` (?:x|y|cx|cy|width|height)="([^"]*)"`)
	drawn   = regexp.MustCompile(` d="([^"]*)"`)
	path    = regexp.MustCompile(`^[MLHVmhvlaz0-9 .-]*$`)
)

func TestAnyChartIsSoundSVG(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyChart(t)
		s := c.SVG("p1")
		if s != c.SVG("p1") {
			t.Fatal("drawn differently the second time")
		}
		wellFormed(t, s)
		for _, e := range c.Legend() {
			wellFormed(t, "<svg>"+e.Swatch+"</svg>")
		}
		for _, m := range written.FindAllStringSubmatch(s, -1) {
			if v, err := strconv.ParseFloat(m[1], 64); err != nil || !drawable(v) {
				t.Fatalf("a place of %q", m[1])
			}
		}
		for _, m := range drawn.FindAllStringSubmatch(s, -1) {
			if !path.MatchString(m[1]) {
				t.Fatalf("a path of %q", m[1])
			}
		}
	})
}

// wellFormed reads the picture as XML and looks for what a page's policy forbids.
func wellFormed(t *rapid.T, s string) {
	d := xml.NewDecoder(strings.NewReader(strings.ToValidUTF8(clean(s), "?")))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%v in %s", err, s)
		}
		if e, ok := token.(xml.StartElement); ok {
			allowed(t, e)
		}
	}
}

func allowed(t *rapid.T, e xml.StartElement) {
	if !strings.Contains(" svg title desc path text circle ", " "+e.Name.Local+" ") {
		t.Fatalf("element %s", e.Name.Local)
	}
	for _, a := range e.Attr {
		if a.Name.Local == "style" || strings.HasPrefix(a.Name.Local, "on") || strings.HasSuffix(a.Name.Local, "href") {
			t.Fatalf("attribute %s", a.Name.Local)
		}
	}
}

// clean drops controls that XML cannot hold; pages drop them before they draw.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xfffe || r == 0xffff {
			return ' '
		}
		return r
	}, s)
}

func BenchmarkSVG(b *testing.B) {
	c := some()
	for i := range 600 {
		c.Panels[0].Curves[0].Points = append(c.Panels[0].Curves[0].Points, Point{float64(i) / 20, 100 + math.Sin(float64(i))})
	}
	for b.Loop() {
		if c.SVG("p1") == "" {
			b.Fatal("nothing drawn")
		}
	}
}
