package assess

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	windows "posset/beverage/protein"
)

// The pH between which the acid-binding of a protein is told: from where powders
// are dissolved to where clear drinks stand.
const (
	bindingFromPH = 7.0
	bindingToPH   = 3.0
)

// acidHeld is what all protein holds against the uncharged state, mmol/L; nil where
// the pH or a protein is not known.
func acidHeld(f *facts.Facts) *float64 {
	if !f.PH.Decides.Known() || len(f.Protein.Unmade()) > 0 {
		return nil
	}
	sum := 0.0
	for _, p := range f.Protein.Parts {
		if p.Composition == nil {
			continue
		}
		sum += p.Composition.ChargePerGram(f.PH.Decides.Mid, f.IonicStrength(), coolC) * p.GPerL.Mid
	}
	return &sum
}

// behaviour is one ingredient's protein.
func behaviour(f *facts.Facts, p *facts.ProteinPart) beverage.ProteinBehaviour {
	b := beverage.ProteinBehaviour{Name: p.Line.Line.Name, Proteins: []beverage.ProteinShare{}, Looks: windows.ClarityUnknown.String()}
	c := p.Composition
	if c == nil {
		return b
	}
	b.Kind, b.KindSource, b.KindBasis = c.ID(), c.Source().Text, c.Source().Basis
	at, salt := f.PH.Decides, f.IonicStrength()
	unfolded := f.UnfoldedParts(p)
	for _, one := range c.Parts() {
		b.Proteins = append(b.Proteins, shareOf(f, one, unfolded))
	}
	zone, hydrolysis := c.Isoelectric(), c.Hydrolysis()
	source, dispute := c.IsoelectricSource()
	b.IsoelectricLow, b.IsoelectricHigh, b.IsoelectricSource, b.IsoelectricBasis, b.Dispute = zone.LowOrNil(), zone.HighOrNil(), source.Text, source.Basis, dispute
	b.HydrolysisLow, b.HydrolysisHigh = hydrolysis.LowOrNil(), hydrolysis.HighOrNil()
	binding := c.ChargePerGram(bindingToPH, salt, coolC) - c.ChargePerGram(bindingFromPH, salt, coolC)
	b.AcidBinding = &binding
	if at.Known() {
		held := c.ChargePerGram(at.Mid, salt, coolC)
		b.AcidHeld = &held
	}
	if soluble, of, ok := c.Solubility(at); ok {
		b.SolubleLow, b.SolubleHigh, b.SolubleSource, b.SolubleBasis = soluble.LowOrNil(), soluble.HighOrNil(), of.Text, of.Basis
	}
	looks(f, c, &b)
	return b
}

// looks tells how the protein alone looks after heating, by which window.
func looks(f *facts.Facts, c *windows.Composition, b *beverage.ProteinBehaviour) {
	says, w := c.Clarity(f.PH.Decides, f.Ions.SaltMM)
	b.Looks = says.String()
	if w.ID == "" {
		return
	}
	b.LooksWhy, b.LooksSource, b.LooksBasis = w.What, w.Source.Text, w.Source.Basis
	if !w.Span.Unbounded() {
		b.LooksWhy += ", " + w.Unit + " " + rangeWords(w.Span)
	}
	if !w.IonicMM.Unbounded() {
		b.LooksWhy += ", ionic strength " + rangeWords(w.IonicMM) + " mmol/L"
	}
	if w.Conditions != "" {
		b.LooksWhy += " (" + w.Conditions + ")"
	}
	b.LooksWhy += "; the drink: " + standsAt(f) + "; what moves it: " + w.Moves
}

func rangeWords(r windows.Range) string {
	switch {
	case math.IsInf(r.Low, 0):
		return fmt.Sprintf("up to %.4g", r.High)
	case math.IsInf(r.High, 0):
		return fmt.Sprintf("%.4g and more", r.Low)
	}
	return fmt.Sprintf("%.4g to %.4g", r.Low, r.High)
}

// standsAt is where the drink stands for its looks.
func standsAt(f *facts.Facts) string {
	text := "pH not known"
	if p := f.PH.Decides; p.Known() {
		text = fmt.Sprintf("pH %.2f to %.2f", p.Low, p.High)
	}
	if s := f.Ions.SaltMM; s.Known() {
		return text + fmt.Sprintf(", ionic strength %.0f to %.0f mmol/L beside what balances the protein", s.Low, s.High)
	}
	return text + ", its salt not known"
}

func shareOf(f *facts.Facts, p windows.Part, unfolded []windows.DenaturedPart) beverage.ProteinShare {
	const percent = 100
	zone := p.Isoelectric()
	source, dispute := p.IsoelectricSource()
	s := beverage.ProteinShare{Name: p.Name, PercentLow: percent * p.Share.Low, Percent: percent * p.Share.Mid, PercentHigh: percent * p.Share.High,
		IsoelectricLow: zone.LowOrNil(), IsoelectricHigh: zone.HighOrNil(), IsoelectricSource: source.Text, Dispute: dispute}
	if f.PH.Decides.Known() {
		z := p.NetCharge(f.PH.Decides.Mid, f.IonicStrength(), coolC)
		s.NetCharge = &z
	}
	for _, u := range unfolded {
		if u.Part.ID == p.ID {
			s.DenaturedLow, s.Denatured, s.DenaturedHigh = u.Fraction.LowOrNil(), u.Fraction.MidOrNil(), u.Fraction.HighOrNil()
		}
	}
	return s
}

// heatPairs are the pairs of equal lethality of the picture, for whoever reads no
// picture.
func heatPairs(h beverage.HeatPicture) beverage.HeatPairs {
	p := beverage.HeatPairs{Why: h.Why, Pairs: []beverage.HeatPair{}, Notes: []string{}, Of: h.EqualTo, Source: h.Source}
	if h.Why != "" {
		return p
	}
	p.TrefC, p.ZC, p.LethalityMin = &h.TrefC, &h.ZC, &h.EqualMin
	p.Notes = append(p.Notes, h.Notes...)
	for _, e := range h.Equal {
		p.Pairs = append(p.Pairs, beverage.HeatPair{TempC: e.TempC, HoldS: e.HoldS, Denatured: e.Denatured.MidOrNil(), DenaturedLow: e.Denatured.LowOrNil(), DenaturedHigh: e.Denatured.HighOrNil()})
	}
	if len(p.Pairs) == 0 {
		p.Why = "no hold of equal lethality takes a time that a plant can hold"
	}
	return p
}
