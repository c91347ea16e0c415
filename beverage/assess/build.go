package assess

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
	"posset/carbonation"
)

func known[T any](g beverage.Given[T]) *T {
	if !g.Known {
		return nil
	}
	v := g.V
	return &v
}

func summary(f *facts.Facts) beverage.DrinkSummary {
	d := f.Drink
	return beverage.DrinkSummary{
		Name: d.Name, ServingML: known(d.ServingML), AlcoholPct: alcohol(d), SoldAs: string(d.Base.V),
		IntendedFor: d.IntendedFor.Or("general"), Markets: d.Markets, Route: string(d.Process.Route.V),
		Distribution: string(d.Storage.Distribution.V), StorageC: known(d.Storage.TempC),
		PackType: string(d.Package.Type.V), DensityGML: f.Recipe.DensityGPerML.MidOrNil(),
	}
}

// alcohol is what the spec says, or the contract's default of none.
func alcohol(d *beverage.Drink) *float64 {
	v := d.AlcoholPercent.Or(0)
	return &v
}

func acidClass(f *facts.Facts) beverage.AcidClass {
	p := f.PH.Decides
	c := beverage.AcidClass{
		Class: f.Class, PH: p.MidOrNil(), PHLow: p.LowOrNil(), PHHigh: p.HighOrNil(), PHBasis: p.Basis,
		PredictedPH: f.PH.Predicted.MidOrNil(), WaterActivity: f.WaterActivity.MidOrNil(), Note: f.ClassNote,
		RegulatedAs: []beverage.Regulated{},
	}
	for _, m := range f.Drink.Markets {
		c.RegulatedAs = append(c.RegulatedAs, law.Term(m, f.Class, f.Circumstances()))
	}
	return c
}

func gas(f *facts.Facts) *beverage.CarbonationState {
	if !f.Gas.Present {
		return nil
	}
	s := &beverage.CarbonationState{Volumes: known(f.Gas.Volumes), VolumesEnd: f.Gas.EndOfLife.LowOrNil(), Pressure: pressures(f.Pack), Outcome: f.Pack.Outcome}
	if f.Gas.Volumes.Known {
		g := carbonation.GramsPerLitre(f.Gas.Volumes.V)
		s.GramsPerLitre = &g
	}
	return s
}

func pack(f *facts.Facts) *beverage.PackState {
	if len(f.Pack.States) == 0 && !f.Pack.Rating.Known {
		return nil
	}
	return &beverage.PackState{Pressure: pressures(f.Pack), RatingGaugeKPa: known(f.Pack.Rating), Outcome: f.Pack.Outcome}
}

func pressures(p facts.Pack) []beverage.PressureAt {
	list := []beverage.PressureAt{}
	for _, s := range p.States {
		list = append(list, beverage.PressureAt{At: s.At, TempC: s.TempC, GaugeKPa: s.GaugeKPa, GaugeKPaHigh: s.HighKPa, Headspace: s.Headspace, LiquidFull: s.Full})
	}
	return list
}

func delivered(f *facts.Facts) *beverage.Delivered {
	r := f.Records
	if r.Target == nil && len(r.Logs) == 0 {
		return nil
	}
	d := &beverage.Delivered{Logs: []beverage.LogResult{}, Outcome: r.Outcome, Set: "as stated by the user"}
	if r.Target != nil {
		d.Target = r.Target.Stated.Text
	}
	if s := f.Drink.Process.Scheduled; s != nil && s.By.Known {
		d.Set = s.By.V
	}
	for i := range r.Logs {
		result := r.Logs[i].Result
		result.Turning = runTurning(&r.Logs[i], r.Target)
		d.Logs = append(d.Logs, result)
	}
	if d.Departures = departures(f); len(d.Departures) > 0 {
		d.Dispositions = dispositions(f.Class, f.Process.Route)
	}
	return d
}

// protein is nil only where the drink surely holds none.
func protein(f *facts.Facts, findings []beverage.Finding) *beverage.ProteinState {
	p := f.Protein
	if len(p.Parts) == 0 && len(p.Unknown) == 0 {
		return nil
	}
	s := &beverage.ProteinState{
		GPerL: p.GPerL.MidOrNil(), GPerServing: f.PerServing(p.GPerL).MidOrNil(), DenaturedFraction: p.Denatured.MidOrNil(),
		Flags: flags(findings), Components: []beverage.ProteinComponent{}, Serving: f.Serving(),
	}
	for i := range p.Parts {
		s.Components = append(s.Components, component(f, &p.Parts[i]))
	}
	if p.Main != nil {
		s.NetCharge, s.IsoelectricPH = f.Charge(p.Main), f.Isoelectric(p.Main)
	}
	return s
}

func component(f *facts.Facts, p *facts.ProteinPart) beverage.ProteinComponent {
	return beverage.ProteinComponent{
		Name: p.Line.Line.Name, GPerL: p.GPerL.MidOrNil(), NetCharge: f.Charge(p), IsoelectricPH: f.Isoelectric(p),
		DenaturedFraction: p.Denatured.MidOrNil(),
	}
}

// flags repeats the findings that speak of the protein.
func flags(findings []beverage.Finding) []beverage.ProteinFlag {
	list := []beverage.ProteinFlag{}
	for _, x := range findings {
		if facts.AboutProtein(x.ID) {
			list = append(list, beverage.ProteinFlag{ID: x.ID, Level: x.Level, Text: x.Title + ": " + x.Detail, Source: x.Source, Basis: x.Basis})
		}
	}
	return list
}
