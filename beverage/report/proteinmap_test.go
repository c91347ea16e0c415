package report

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The map tells by letters and hatches what it tells by colour, and marks the drink.
func TestMapPictureTellsWithoutColour(t *testing.T) {
	s := page1(t, Protein(someProtein(), US))
	for part, want := range map[string]int{
		`class="cell" text-anchor="middle"`:                         2, // !!Cia, !I
		`class="tone3" d="M`:                                        2, // the cell, the legend
		`<circle class="spot"`:                                      1,
		"C</b> <span>casein-acid-curd: Casein curds in acid</span>": 1,
		"the drink, its pH from 4.80 to 5.00":                       1,
		">temperature of the hold, °F<":                             2, // of the map, of equal holds
	} {
		if got := strings.Count(s, part); got != want {
			t.Errorf("%s: %d times, want %d", part, got, want)
		}
	}
	if !strings.Contains(s, `<path class="faint"`) {
		t.Error("nothing is hatched")
	}
}

func TestCellWordsFit(t *testing.T) {
	m := someMap()
	var got []string
	for i := range m.Cells {
		got = append(got, cellWords(m, i, nearest(m)))
	}
	if d := cmp.Diff([]string{"!!CIA", "-?", "!I", "-*"}, each(got, strings.ToUpper)); d != "" {
		t.Error(d)
	}
	m.Cells[0].CannotTell = []string{"x"}
	for len(m.Cells[0].Findings) < 9 {
		id := string(rune('a' + len(m.Cells[0].Findings)))
		f := m.Cells[0].Findings[0]
		f.ID = id
		m.Cells[0].Findings = append(m.Cells[0].Findings, f)
		s := m.Signs[0]
		s.ID, s.Letter = id, strings.ToUpper(id)
		m.Signs = append(m.Signs, s)
	}
	if w := cellWords(m, 0, 0); len(w) != widestCell || !strings.HasSuffix(w, "+?*") {
		t.Errorf("got %q", w)
	}
}
