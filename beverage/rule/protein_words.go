package rule

import (
	"fmt"
	"math"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

// kept is what a drink holds of proteins that windows speak of alike.
type kept struct {
	family protein.Family
	gPerL  beverage.Interval
	names  []string
	parts  []*facts.ProteinPart
}

// families groups the known proteins of a drink; what nobody knows is for
// protein-unknown to tell.
func families(f *facts.Facts) []kept {
	var list []kept
	for _, family := range protein.Families {
		k := kept{family: family, gPerL: f.Protein.Of(family)}
		for i := range f.Protein.Parts {
			if p := &f.Protein.Parts[i]; p.Composition != nil && p.Composition.Family() == family {
				k.names, k.parts = append(k.names, p.Line.Line.Name), append(k.parts, p)
			}
		}
		if len(k.parts) > 0 {
			list = append(list, k)
		}
	}
	return list
}

// caseins joins what curds where casein does.
func caseins(f *facts.Facts) (kept, bool) {
	all := kept{family: protein.FamilyCasein, gPerL: beverage.Point(0, beverage.Predicted)}
	for _, k := range families(f) {
		if k.family.HoldsCasein() {
			all.gPerL = all.gPerL.Plus(k.gPerL)
			all.names, all.parts = append(all.names, k.names...), append(all.parts, k.parts...)
		}
	}
	return all, len(all.parts) > 0
}

// mayReach tells whether there may be protein enough of the family to speak of.
func (k kept) mayReach(gPerL float64) bool { return !k.gPerL.Known() || k.gPerL.High >= gPerL }

// words names the protein with its amount.
func (k kept) words() string {
	return fmt.Sprintf("%s, %.3g g/L protein", listWords(k.names), k.gPerL.Mid)
}

// windowed lets a published window be the source of a hit, with what it says and
// what would move the drink.
func windowed(w protein.Window, h Hit) Hit {
	h.Detail = fmt.Sprintf("%s; published for %s: %s", upper(h.Detail), spanWords(w), w.What)
	if w.Moves != "" {
		h.Detail += "; what moves it: " + w.Moves
	}
	h.Detail = strings.TrimRight(h.Detail, ".") + "."
	h.Source = w.Source
	if w.Source.Basis == beverage.Memory {
		h.Source.Text += fmt.Sprintf(" (recalled, %s)", w.Confidence)
	}
	if h.Values == nil {
		h.Values = Values{}
	}
	h.Values["window"] = w.ID
	return h
}

// spanWords is a window's span: "pH 4 to 6", "80 g/L and more".
func spanWords(w protein.Window) string {
	s := w.Span
	if s.Unbounded() || s == (protein.Range{}) {
		s, w.Unit = w.PH, "pH"
	}
	low, high := math.IsInf(s.Low, 0), math.IsInf(s.High, 0)
	number := fmt.Sprintf("%.4g to %.4g", s.Low, s.High)
	switch {
	case low && high:
		return "this protein"
	case low:
		number = fmt.Sprintf("below %.4g", s.High)
	case high:
		number = fmt.Sprintf("%.4g and more", s.Low)
	case s.Low == s.High:
		number = fmt.Sprintf("%.4g", s.Low)
	}
	switch {
	case w.Topic == protein.TopicPHDrop:
		return "a fall by " + number
	case w.Unit == "pH":
		return "pH " + number
	}
	return number + " " + w.Unit
}

// proteinValues are the figures behind a finding on one protein.
func proteinValues(f *facts.Facts, k kept) Values {
	v := phValues(f)
	v["protein_g_per_l"] = k.gPerL.MidOrNil()
	return v
}

// heatWords tells how hot the drink gets, or that nothing says so.
func heatWords(f *facts.Facts) string {
	t := f.HeatC()
	if !t.Known() {
		return routeWords(f) + ", hold not given"
	}
	return fmt.Sprintf("%s, up to %.4g °C", routeWords(f), t.High)
}

// mayReachC tells whether the drink is heated and may get as hot as this.
func mayReachC(f *facts.Facts, tempC float64) bool {
	t := f.HeatC()
	return f.Process.Heats() && (!t.Known() || t.High >= tempC)
}

// nearNeutral tells whether the drink may be near the pH of milk, where browning
// goes its faster way, rather than acid.
func nearNeutral(f *facts.Facts) bool {
	return windowOf("brown-neutral").PH.Stands(f.PH.Decides).MayBeInside()
}
