package facts

import (
	"errors"
	"math"
	"slices"

	"posset/beverage"
	"posset/carbonation"
)

// Pack is the closed pack over temperature.
type Pack struct {
	States    []PackAt
	Rating    beverage.Given[float64] // kPa gauge
	Outcome   beverage.Outcome        // pressure against the rating
	Missing   []string                // what keeps the pressure from being worked out
	Worst     *PackAt                 // of those the rating is held against: the highest
	FullAt    *PackAt                 // the coolest state at which the pack is liquid-full
	DeepKPa   beverage.Interval       // lowest gauge pressure on cooling to chill
	WarmGuess bool                    // no storage temperature is given
	Cannot    string                  // why the pack cannot be as it is described, such as one filled boiling
}

// PackAt is the pack at one temperature. Where it is liquid-full the pressure
// is no gas pressure and none is told.
type PackAt struct {
	At        string // fill | storage | process | table
	TempC     float64
	GaugeKPa  *float64
	Headspace *float64 // percent of the inside volume, nominal
	HighKPa   *float64 // at the unfavourable end of the fill tolerance and of what is published
	Full      bool
}

// What stands in where nothing is said, each the unfavourable end of what is
// usual; common practice, no source.
const (
	warmestUsualC    = 40.0 // a truck or a sunlit shelf
	coldestFillC     = 0.0  // the colder the fill, the less headspace when warm
	fillTolerancePct = 1.0  // the contract's default, of the fill
	hottestModelC    = 150.0
)

var tableC = []float64{0, 4, 10, 20, 30, 40, 50, 60, 65, 70}

func packOf(f *Facts) Pack {
	d := f.Drink
	var p Pack
	if d.Package.Rating.Known {
		p.Rating = beverage.Given[float64]{V: gauge(d.Package.Rating.V), Known: true, Place: d.Package.Rating.Place}
	}
	pack, missing := closedPack(f)
	p.Missing = missing
	if len(missing) > 0 {
		return p
	}
	heavy := pack
	heavy.Liquid = f.heaviest()
	tol := f.fillToleranceML()
	p.Cannot = cannotBe(pack)
	for _, t := range p.temperatures(f) {
		p.States = append(p.States, stateAt(pack, heavy, tol, t))
	}
	if low, err := pack.Lowest(tol, chillC); err == nil && !low.LiquidFull {
		p.DeepKPa = beverage.Point(float64(low.Gauge), beverage.Predicted)
	}
	p.judge(f)
	return p
}

// cannotBe is why a pack cannot be as it is described; too much pressure and too
// little headspace are told otherwise.
func cannotBe(p carbonation.Pack) string {
	_, err := p.At(p.FillTempC)
	if err == nil || errors.Is(err, carbonation.ErrAboveGasLimit) || errors.Is(err, carbonation.ErrNoHeadspace) {
		return ""
	}
	return plainly(err)
}

// chillC is a refrigerator's temperature, where a vacuum is deepest in practice.
const chillC = 4

func (f *Facts) fillToleranceML() float64 {
	p := f.Drink.Package
	return p.FillToleranceML.Or(p.FillML.V * fillTolerancePct / 100)
}

// NitrogenDose is what keeps a pack from a vacuum.
type NitrogenDose struct {
	Grams  float64 // in the closed pack; what leaves the nozzle must be more by what boils off before the seam
	HotKPa float64 // the highest gauge pressure it then makes where the pack is hottest
	HotC   float64
}

// DoseAgainstVacuum is the nitrogen that the closed pack must hold in all so that it
// does not fall below ambient when cold, at the unfavourable end of the fill tolerance.
// ok is false where the pack is not known or no dose does it.
func (f *Facts) DoseAgainstVacuum() (n NitrogenDose, ok bool) {
	pack, missing := closedPack(f)
	if len(missing) > 0 {
		return n, false
	}
	tol := f.fillToleranceML()
	grams, err := pack.NitrogenFor(0, tol, chillC)
	if err != nil {
		return n, false
	}
	pack.NitrogenG, pack.Liquid = grams, f.heaviest()
	n = NitrogenDose{Grams: grams, HotC: max(pack.FillTempC, f.Process.HottestC.Or(0), f.Drink.Storage.TempC.Or(0))}
	hot, err := pack.Worst(tol, n.HotC)
	n.HotKPa = float64(hot.Gauge)
	return n, err == nil && !hot.LiquidFull
}

// closedPack describes the pack to the gas model, or says what is missing.
func closedPack(f *Facts) (carbonation.Pack, []string) {
	d := f.Drink
	var missing []string
	need := func(known bool, what string) {
		if !known {
			missing = append(missing, what)
		}
	}
	need(d.Package.FillML.Known, "package.fill")
	need(d.Package.BrimfulML.Known, "package.brimful")
	if f.Gas.Present {
		need(f.Gas.Volumes.Known, "carbonation.volumes")
	}
	if len(missing) > 0 {
		return carbonation.Pack{}, missing
	}
	material, _ := carbonation.MaterialOf(string(d.Package.Type.V))
	return carbonation.Pack{
		BrimfulML: d.Package.BrimfulML.V, FillML: d.Package.FillML.V,
		FillTempC: d.Process.FillTempC.Or(coldestFillC),
		Material:  material, HeadspaceGas: string(d.Package.HeadspaceGas.V),
		NitrogenG: d.Package.NitrogenG.Or(0), Volumes: f.Gas.Volumes.Or(0),
		Liquid: f.liquid(), AltitudeM: d.Package.AltitudeM.Or(0),
	}, nil
}

// at is a temperature with why it is asked for.
type at struct {
	why   string
	tempC float64
}

func (p *Pack) temperatures(f *Facts) []at {
	d := f.Drink
	var list []at
	for _, t := range tableC {
		list = append(list, at{"table", t})
	}
	if d.Process.FillTempC.Known {
		list = append(list, at{"fill", d.Process.FillTempC.V})
	}
	p.WarmGuess = !d.Storage.TempC.Known
	list = append(list, at{"storage", d.Storage.TempC.Or(warmestUsualC)})
	if h := f.Process.HottestC; h.Known {
		list = append(list, at{"process", h.V})
	}
	list = slices.DeleteFunc(list, func(a at) bool { return !(a.tempC >= 0 && a.tempC <= hottestModelC) })
	slices.SortStableFunc(list, func(a, b at) int {
		switch {
		case a.tempC < b.tempC:
			return -1
		case a.tempC > b.tempC:
			return 1
		}
		return 0
	})
	return list
}

// stateAt takes the nominal state of pack, and the worst of heavy, which holds the
// most solids that the drink may have.
func stateAt(pack, heavy carbonation.Pack, toleranceML float64, a at) PackAt {
	s := PackAt{At: a.why, TempC: a.tempC}
	if mid, err := pack.At(a.tempC); err == nil && !mid.LiquidFull {
		s.GaugeKPa, s.Headspace = ptr(nothingIsZero(float64(mid.Gauge))), ptr(100*(1-mid.FillFraction))
	}
	worst, err := heavy.Worst(toleranceML, a.tempC)
	switch {
	case errors.Is(err, carbonation.ErrAboveGasLimit):
		s.HighKPa = ptr(beyondModelKPa)
	case errors.Is(err, carbonation.ErrNoHeadspace):
		s.Full = true
	case err != nil:
	case worst.LiquidFull:
		s.Full = true
	default:
		s.HighKPa = ptr(nothingIsZero(float64(worst.Gauge)))
	}
	return s
}

// beyondModelKPa stands for a pressure above what the gas model holds for, 40
// bar: above the rating of any drinks pack.
const beyondModelKPa = 4000

// nothingIsZero takes what a solver leaves of a pressure of nothing for nothing.
func nothingIsZero(gaugeKPa float64) float64 {
	if math.Abs(gaugeKPa) < 1e-3 {
		return 0
	}
	return gaugeKPa
}

func ptr(v float64) *float64 { return &v }

// judge holds storage and process temperatures against the rating. In a retort
// the chamber's own pressure stands against the pack, and nobody has said what
// it is: that state is told, and not held against the rating.
func (p *Pack) judge(f *Facts) {
	p.Outcome = beverage.Meets
	decided := false
	for i := range p.States {
		s := &p.States[i]
		if s.Full && (s.At == "storage" || s.At == "process") && p.FullAt == nil {
			p.FullAt = s
		}
		if s.At != "storage" && (s.At != "process" || f.Process.Route == beverage.RetortRoute) {
			continue
		}
		decided = true
		p.Outcome = p.Outcome.Worse(p.against(s))
		if s.HighKPa != nil && (p.Worst == nil || *s.HighKPa > *p.Worst.HighKPa) {
			p.Worst = s
		}
	}
	if !decided || !p.Rating.Known {
		p.Outcome = min(p.Outcome, beverage.CannotTell)
	}
	if p.FullAt != nil {
		p.Outcome = beverage.FallsShort
	}
}

func (p *Pack) against(s *PackAt) beverage.Outcome {
	switch {
	case s.Full:
		return beverage.FallsShort
	case s.HighKPa == nil || !p.Rating.Known:
		return beverage.CannotTell
	case *s.HighKPa <= p.Rating.V:
		return beverage.Meets
	case s.GaugeKPa != nil && *s.GaugeKPa > p.Rating.V:
		return beverage.FallsShort
	}
	return beverage.CannotTell
}

// unprocessed is the pack without the states of the stated process: what is left
// to say of it on a route whose temperatures nobody gave.
func (p Pack) unprocessed(f *Facts) Pack {
	p.States = slices.DeleteFunc(slices.Clone(p.States), func(s PackAt) bool { return s.At == "process" || s.At == "fill" })
	p.Worst, p.FullAt, p.Outcome = nil, nil, beverage.CannotTell
	if len(p.States) > 0 {
		p.judge(f)
	}
	return p
}

// slackKPa is the gauge pressure below which a pack is hardly pressed on: weather
// and a hill do as much. Common practice, no source.
const slackKPa = 10

// Pressed tells whether the pack may see a pressure worth a rating.
func (p Pack) Pressed() bool { return p.Worst != nil && *p.Worst.HighKPa > slackKPa }

// Over is the state above the rating at its unfavourable end, or nil: doubt
// counts against the pack.
func (p Pack) Over() *PackAt {
	if !p.Rating.Known || p.Worst == nil || *p.Worst.HighKPa <= p.Rating.V {
		return nil
	}
	return p.Worst
}
