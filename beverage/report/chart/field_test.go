package chart

import (
	"strings"
	"testing"
)

func fieldOf(cells ...Cell) Chart {
	return Chart{X: Axis{Low: 0, High: 4}, Panels: []Panel{{Y: Axis{Low: 0, High: 2}, Field: &Field{XStep: 1, YStep: 1, Cells: cells, Tones: []string{"bare", "", "some"}, Hatched: "cannot tell"}}}}
}

// Neighbours that are told alike carry their words once and have no line between
// them; what differs is parted.
func TestFieldTellsARegionOnce(t *testing.T) {
	alike := fieldOf(Cell{X: 0.5, Y: 0.5, Tone: 2, Letters: "AB"}, Cell{X: 1.5, Y: 0.5, Tone: 2, Letters: "AB"}, Cell{X: 1.5, Y: 1.5, Tone: 2, Letters: "AB"})
	s := alike.SVG("p")
	if n := strings.Count(s, ">AB</text>"); n != 1 {
		t.Errorf("told %d times", n)
	}
	if strings.Contains(s, `class="edge"`) {
		t.Error("a line within a region")
	}
	s = fieldOf(Cell{X: 0.5, Y: 0.5, Tone: 2, Letters: "AB"}, Cell{X: 1.5, Y: 0.5, Tone: 2, Letters: "AB", Hatched: true}).SVG("p")
	if n := strings.Count(s, ">AB</text>"); n != 2 {
		t.Errorf("told %d times", n)
	}
	for _, part := range []string{`class="edge"`, `class="faint"`} {
		if !strings.Contains(s, part) {
			t.Errorf("lacks %s", part)
		}
	}
}

func TestFieldBreaksWordsToTheRoom(t *testing.T) {
	for want, got := range map[string][]string{
		"!ABC":      broken([]string{"!", "ABC"}, 4),
		"!|ABC|D":   broken([]string{"!", "ABCD"}, 3),
		"":          broken([]string{"", ""}, 3),
		"AB":        broken([]string{"", "AB"}, 2),
		"!|!|A|B|C": broken([]string{"!!", "ABC"}, 1),
	} {
		if s := strings.Join(got, "|"); s != want {
			t.Errorf("got %q, want %q", s, want)
		}
	}
}
