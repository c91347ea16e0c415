package assess

import (
	"cmp"
	"slices"

	"posset/beverage"
	"posset/beverage/rule"
)

// letters stand for the protein findings on a map, in the order in which they are
// told where several of one level meet.
var letters = []struct{ id, letter string }{
	{"protein-unknown", "W"}, {"casein-acid-curd", "C"}, {"protein-isoelectric", "I"}, {"protein-gel", "G"}, {"protein-denatures", "D"},
	{"protein-salt-haze", "S"}, {"protein-polyphenol-haze", "H"}, {"protein-anionic-gum", "U"}, {"protein-calcium", "K"}, {"protein-fouling", "F"},
	{"ph-drop-on-heat", "P"}, {"protein-heat-coagulation", "R"}, {"protein-cold-gel", "L"}, {"protein-viscosity", "V"}, {"protein-sediment", "Z"}, {"protein-age-gelation", "E"},
	{"protein-astringent", "A"}, {"hydrolysate-bitter", "N"}, {"protein-browning", "B"}, {"carbonated-protein-foam", "O"}, {"flavour-light", "Q"},
	{"sterile-filtration-protein", "X"}, {"thickening-changes-heating", "T"},
}

// orderOf is the place of a finding among the letters; what has none comes last.
func orderOf(id string) int {
	for i, l := range letters {
		if l.id == id {
			return i
		}
	}
	return len(letters)
}

// explain takes out of the cells what is found at every place, gives each cell the
// level of its gravest finding, and names what the letters and windows are.
func explain(m *beverage.ProteinMap, source func(window string) string) {
	m.Everywhere, m.Signs, m.Sources = everywhere(m.Cells), []beverage.MapSign{}, []string{}
	for i := range m.Cells {
		c := &m.Cells[i]
		c.Findings = slices.DeleteFunc(c.Findings, func(f beverage.MapFinding) bool { return slices.Contains(m.Everywhere, f) })
		slices.SortStableFunc(c.Findings, func(a, b beverage.MapFinding) int {
			return cmp.Or(cmp.Compare(a.Level, b.Level), cmp.Compare(orderOf(a.ID), orderOf(b.ID)))
		})
		for _, f := range c.Findings {
			if c.Level == nil || f.Level < *c.Level {
				c.Level = &f.Level
			}
			sign(m, f.ID)
			if s := source(f.Window); s != "" && !slices.Contains(m.Sources, s) {
				m.Sources = append(m.Sources, s)
			}
		}
	}
	slices.SortFunc(m.Signs, func(a, b beverage.MapSign) int { return cmp.Compare(orderOf(a.ID), orderOf(b.ID)) })
}

// everywhere is what is found at every place, at one level and by one window.
func everywhere(cells []beverage.MapCell) []beverage.MapFinding {
	list := []beverage.MapFinding{}
	if len(cells) == 0 {
		return list
	}
	for _, f := range cells[0].Findings {
		if !slices.ContainsFunc(cells, func(c beverage.MapCell) bool { return !slices.Contains(c.Findings, f) }) {
			list = append(list, f)
		}
	}
	return list
}

func sign(m *beverage.ProteinMap, id string) {
	if slices.ContainsFunc(m.Signs, func(s beverage.MapSign) bool { return s.ID == id }) {
		return
	}
	s := beverage.MapSign{Letter: "?", ID: id}
	if i := orderOf(id); i < len(letters) {
		s.Letter = letters[i].letter
	}
	if r, ok := rule.Find(id); ok {
		s.Title = r.Title
	}
	m.Signs = append(m.Signs, s)
}
