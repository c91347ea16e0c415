package assess

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"posset/acid"
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
)

// AcidOptions asks for the acid chemistry at a temperature and for a dose.
type AcidOptions struct {
	Options
	TempC    float64
	TargetPH *float64
	With     string // "citric acid", or a blend "citric acid:malic acid 3:1"
}

// Acid is the acid chemistry of a drink's recipe. What the recipe does not tell
// is null and named; a dose that cannot be worked out is an error.
func Acid(ctx context.Context, d *beverage.Drink, o AcidOptions) (*beverage.AcidResult, error) {
	f, err := factsOf(ctx, d)
	if err != nil {
		return nil, err
	}
	a := assessment(f, o.Options)
	r := &beverage.AcidResult{
		Schema: beverage.AcidSchema, Tool: a.Tool, Input: a.Input, Drink: a.Drink.Name, TempC: o.TempC,
		PHMeasured: f.PH.Measured.MidOrNil(), TitrationEndPH: acid.EndPointPH, WaterActivity: f.WaterActivity.MidOrNil(),
		Widths: []beverage.Width{}, Given: givenOf(f), Species: []beverage.SpeciesAmount{}, Curve: []beverage.CurvePoint{}, Sensitivity: []beverage.Sensitivity{}, Dose: []beverage.DoseAmount{},
		AcidClass: a.AcidClass, Missing: f.PH.Chemistry.Missing, Findings: about(a.Findings, aboutAcid), Cautions: a.Cautions,
	}
	if r.Missing == nil {
		r.Missing = []string{}
	}
	preserve(r, f)
	r.Bench = benchOf(f)
	t, err := f.Titrate(o.TempC)
	if err != nil {
		if len(r.Missing) == 0 {
			r.Missing = append(r.Missing, err.Error())
		}
	} else {
		fill(r, f, t, o.TempC)
	}
	if o.TargetPH != nil {
		return r, dose(r, f, o)
	}
	return r, nil
}

func fill(r *beverage.AcidResult, f *facts.Facts, t *facts.Titration, tC float64) {
	r.PH, r.PHLow, r.PHHigh, r.PHCarbonated = t.PH.MidOrNil(), t.PH.LowOrNil(), t.PH.HighOrNil(), t.Carbonated
	ionic := t.Equilibrium.IonicStrength
	r.IonicStrength, r.BufferCapacity = &ionic, t.Buffer
	r.TitratablePct, r.MalicPct, r.TartaricPct = t.Acidity.As("citric"), t.Acidity.As("malic"), t.Acidity.As("tartaric")
	r.LacticPct, r.PhosphoricPct, r.AceticPct = t.Acidity.As("lactic"), t.Acidity.As("phosphoric"), t.Acidity.As("acetic")
	if hold := f.Drink.Process.HoldTempC; hold.Known {
		r.ProcessC = &hold.V
		r.PHProcess, r.PHProcessGas = f.AtProcess(hold.V)
	}
	for _, s := range t.Equilibrium.Species {
		if s.Molality > 1e-9 {
			r.Species = append(r.Species, beverage.SpeciesAmount{Name: s.Name, Molality: s.Molality})
		}
	}
	for _, p := range t.Curve {
		r.Curve = append(r.Curve, beverage.CurvePoint{PH: p.PH, BaseMMolPL: p.MolOfBasePerKg * 1000 * t.WaterKgPerL, Buffer: p.MmolPerKgPH * t.WaterKgPerL})
	}
	if s := f.PH.Slow; s != nil {
		shift := *r.PH - f.PH.Predicted.Mid // of the temperature alone
		now, end := s.Now+shift, s.End+shift
		r.PHSlowNow, r.PHSlowEnd = &now, &end
	}
	for _, w := range f.Widths() {
		r.Widths = append(r.Widths, beverage.Width(w))
	}
	for _, s := range f.Sensitivities(tC) {
		r.Sensitivity = append(r.Sensitivity, beverage.Sensitivity{Ingredient: s.Name, PHPerTenPct: s.DPH})
	}
}

func dose(r *beverage.AcidResult, f *facts.Facts, o AcidOptions) error {
	names, parts, err := blend(o.With)
	if err != nil {
		return err
	}
	var lines []facts.Line
	lib := ingredient.Default()
	for _, n := range names {
		x := lib.Resolve([]beverage.Ingredient{asDescribed(f.Drink, n)}, f.Drink.Own)[0]
		if !x.Found && !x.Described {
			return fmt.Errorf("--with: %q is not in the library%s", n, nearest(x.Near))
		}
		lines = append(lines, facts.Line{Resolved: &x})
	}
	d, err := f.DoseTo(lib, facts.Dosing{PH: *o.TargetPH, TempC: o.TempC, Acids: lines, Parts: parts})
	if err != nil {
		return err
	}
	for i, g := range d.GPerL {
		a := beverage.DoseAmount{Ingredient: lines[i].Called(), GPerL: g, InAll: d.InAll[i]}
		if d.Lots != nil {
			a.LotLow, a.LotHigh = &d.Lots[0][i], &d.Lots[1][i]
		}
		r.Dose = append(r.Dose, a)
	}
	r.DoseTargetPH, r.AcidityAfterPct = o.TargetPH, d.Acidity.As("citric")
	r.DosePH, r.DosePHLow, r.DosePHHigh = d.PH.MidOrNil(), d.PH.LowOrNil(), d.PH.HighOrNil()
	if d.LotPH != nil {
		r.DoseLotLow, r.DoseLotHigh = &d.LotPH[0], &d.LotPH[1]
	}
	r.DoseNote = doseNote(d)
	return nil
}

// asDescribed is an ingredient by its name, as the drink's own recipe describes it.
func asDescribed(d *beverage.Drink, name string) beverage.Ingredient {
	for _, x := range d.Ingredients {
		if strings.EqualFold(strings.TrimSpace(x.Name), name) {
			return beverage.Ingredient{Name: x.Name, Described: x.Described}
		}
	}
	return beverage.Ingredient{Name: name}
}

// doseNote says what the measured pH did to a dose.
func doseNote(d *facts.Dosed) string {
	switch {
	case len(d.GPerL) > 0 && !slices.ContainsFunc(d.GPerL, func(g float64) bool { return g > 0 }):
		return "the upper end of the drink as it is lies there or below it: nothing is needed"
	case d.Anchored:
		return "the measured pH counts as a trial of the recipe as it is"
	case d.Doubtful:
		return "the measured pH and the recipe contradict each other: one of them is wrong, and what the reading lies higher is added to the upper end"
	}
	return ""
}

// givenOf is what the ingredients were given.
func givenOf(f *facts.Facts) []beverage.Carried {
	list := []beverage.Carried{}
	for _, g := range f.Given() {
		list = append(list, beverage.Carried(g))
	}
	return list
}

// preserve tells how much of the preservative acids is whole.
func preserve(r *beverage.AcidResult, f *facts.Facts) {
	benzoic, sorbic := f.Undissociated("benzoic"), f.Undissociated("sorbic")
	r.BenzoicMGPL, r.BenzoicLowMGPL = benzoic.MidOrNil(), benzoic.LowOrNil()
	r.SorbicMGPL, r.SorbicLowMGPL = sorbic.MidOrNil(), sorbic.LowOrNil()
}

// benchOf is what the trials did; nil where none is given.
func benchOf(f *facts.Facts) *beverage.BenchResult {
	b := f.PH.Bench
	if b == nil {
		return nil
	}
	r := &beverage.BenchResult{
		Trials: []beverage.BenchTrial{}, Fitted: []beverage.BenchFigure{}, LeftoverMMolPL: b.LeftoverMM,
		PHLowBefore: b.Before.LowOrNil(), PHHighBefore: b.Before.HighOrNil(), Contradiction: b.Contradiction,
	}
	for _, t := range b.Trials {
		x := beverage.BenchTrial{At: t.Place.String(), PHRead: t.Read, Off: t.Off, Unused: t.Why}
		if t.Why == "" {
			residual := t.Residual()
			x.PHBefore, x.PHAfter, x.Residual = &t.Before, &t.After, &residual
		}
		r.Trials = append(r.Trials, x)
	}
	for _, p := range b.Fitted {
		r.Fitted = append(r.Fitted, beverage.BenchFigure{
			Ingredient: p.Ingredient, Figure: p.Figure, Low: p.Before.Low, High: p.Before.High, Before: p.Before.Mid, After: p.After,
		})
	}
	return r
}

func nearest(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return "; did you mean " + strings.Join(near, " or ") + "?"
}

// blend reads "citric acid" or "citric acid:malic acid 3:1".
func blend(with string) (names []string, parts []float64, err error) {
	if strings.TrimSpace(with) == "" {
		return nil, nil, fmt.Errorf(`a target pH needs --with an acid or a blend: "citric acid" or "citric acid:malic acid 3:1"`)
	}
	head, ratio := with, ""
	if i := strings.LastIndexByte(with, ' '); i > 0 && strings.Contains(with[i:], ":") && strings.Trim(with[i+1:], "0123456789.:") == "" {
		head, ratio = with[:i], with[i+1:]
	}
	for _, n := range strings.Split(head, ":") {
		names = append(names, strings.TrimSpace(n))
		parts = append(parts, 1)
	}
	if ratio == "" {
		return names, parts, nil
	}
	shares := strings.Split(ratio, ":")
	if len(shares) != len(names) {
		return nil, nil, fmt.Errorf("--with: %q names %s and %d parts; write one part for each, such as \"citric acid:malic acid 3:1\"", with, counted(len(names), "acid"), len(shares))
	}
	for i, s := range shares {
		if parts[i], err = strconv.ParseFloat(s, 64); err != nil || !(parts[i] > 0) || parts[i] > 1e6 {
			return nil, nil, fmt.Errorf("--with: %q is no part of a blend; write it as 3:1", s)
		}
	}
	return names, parts, nil
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// aboutAcid names the findings that speak of the pH.
var aboutAcid = map[string]bool{
	"ph-above-limit": true, "ph-near-limit": true, "ph-predicted-only": true, "ph-not-equilibrated": true, "ph-slow-base": true,
	"ph-reading-incomplete": true, "measurement-implausible": true, "unknown-ingredient": true, "protein-acid-botulinum": true,
	"acidified-needs-scheduled-process": true,
}
