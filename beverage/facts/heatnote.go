package facts

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/law"
	"posset/thermal"
	"posset/thermal/logfile"
)

// HeatNotes tells what the heat of a drink comes to beside published figures:
// the statutory pairs of its food and markets, the pathogen figures of its pH
// band, the pasteurization units of its tunnel. None of it is credited.
func (f *Facts) HeatNotes() []beverage.HeatNote {
	var notes []beverage.HeatNote
	for _, m := range f.Drink.Markets {
		for _, food := range f.scheduledFoods(m) {
			notes = append(notes, f.pairNote(m, food)...)
		}
	}
	notes = append(notes, f.hotFillNotes()...)
	return append(notes, f.tunnelNotes()...)
}

// scheduledFoods are the foods whose statutory pairs may speak of the drink, the
// stricter line where the text has two.
func (f *Facts) scheduledFoods(m beverage.Market) []string {
	var foods []string
	if f.Drink.Base.V == beverage.SoldAsMilk || f.holdsMilk() {
		foods = append(foods, firstWithLines(m, law.FoodRichMilk, law.FoodMilk))
	}
	if f.HoldsJuice() {
		foods = append(foods, firstWithLines(m, law.FoodAppleJuice, law.FoodJuice))
	}
	if f.Cold() && f.MayBeLowAcid() {
		foods = append(foods, law.FoodChilledLowAcid)
	}
	return foods
}

func firstWithLines(m beverage.Market, stricter, other string) string {
	if len(law.Schedules(stricter, m)) > 0 {
		return stricter
	}
	return other
}

// pairNote holds the stated hold against the pairs of a food.
func (f *Facts) pairNote(m beverage.Market, food string) []beverage.HeatNote {
	h, lines := f.Process.DrinkHeat, law.Schedules(food, m)
	if len(lines) == 0 || h.Medium || !h.TempC.Known || !h.TimeS.Known {
		return nil
	}
	n := beverage.HeatNote{What: "statutory pair, " + food, Market: m}
	hold := fmt.Sprintf("the stated hold of %.4g s at %.4g °C", h.TimeS.V, h.TempC.V)
	if s, ok := law.Covering(lines, h.TempC.V, h.TimeS.V); ok {
		n.Text, n.Source = hold+" reaches the pair of "+s.String()+": as stated, not as recorded, and for the food the text names", s.Cite()
		return []beverage.HeatNote{n}
	}
	n.Text, n.Source = fmt.Sprintf("%s reaches none of %d pairs of the text", hold, len(lines)), lines[0].Cite()
	return []beverage.HeatNote{n}
}

// hotFillNotes add up what each record of a hot fill is worth over hold and
// cooling against the pathogen figure of the pH band, at the coldest probe.
func (f *Facts) hotFillNotes() []beverage.HeatNote {
	if f.Process.Route != beverage.HotFill || !f.PH.Decides.Known() {
		return nil
	}
	band, ok := law.HotFill(f.PH.Decides.High)
	if !ok {
		return nil
	}
	row, _ := law.Get(band.RowID)
	var notes []beverage.HeatNote
	for i := range f.Records.Logs {
		run := &f.Records.Logs[i]
		got, probe, ok := run.leastOn(bandBound(band))
		n := beverage.HeatNote{What: "hot fill, pH up to " + fmt.Sprintf("%.4g", band.PHHigh), Source: row.Cite()}
		if !ok {
			n.Text = run.Result.File + " has no probe in the pack: nothing is known of its coldest place"
			notes = append(notes, n)
			continue
		}
		verb := "does not reach"
		if got >= band.F {
			verb = "reaches"
		}
		n.Text = fmt.Sprintf("%s: over hold and cooling %s gathers %.3g min at %.4g °C, z %.3g C°, the tolerance taken off; that %s the %.3g min for 5 log of vegetative pathogens. It is the coldest place only if the probe stood there, cap and headspace included, and the figures were measured in vegetables and sauces, not in protein drinks", run.Result.File, probe, got, band.TrefC, band.ZC, verb, band.F)
		notes = append(notes, n)
	}
	return notes
}

// bandBound credits the smaller of both published z at each temperature, and
// only within the range of the printed table.
func bandBound(b law.HotFillBand) thermal.Bound {
	z := b.ZBelowC
	if !(z > 0) {
		z = b.ZC
	}
	return thermal.Bound{Below: thermal.Reference{TrefC: b.TrefC, ZC: z}, Above: thermal.Reference{TrefC: b.TrefC, ZC: b.ZC}, MinC: b.MinC, MaxC: b.MaxC}
}

// leastOn is the least lethality of a run's product probes, from the coolest
// reading of each stretch less the tolerance; time that no sound reading covers
// earns nothing.
func (r *Run) leastOn(b thermal.Bound) (least float64, probe string, ok bool) {
	least = math.Inf(1)
	for i, p := range r.Log.Probes {
		if p.Role != logfile.Product {
			continue
		}
		sum := 0.0
		if i < len(r.heat) {
			sum = r.heat[i].least(b, r.toleranceC()+p.LoweredC, r.Log.Understood.IntervalS)
		}
		if sum < least {
			least, probe = sum, p.Name
		}
	}
	return least, probe, probe != ""
}

// gapFactor is how many usual steps two readings may be apart before nothing is
// counted between them, as the reader of records has it.
const gapFactor = 1.5

func (h *heatHistory) least(b thermal.Bound, lowerC, intervalS float64) float64 {
	sum := 0.0
	for i := 1; i < len(h.points); i++ {
		dt := h.points[i].TimeS - h.points[i-1].TimeS
		if dt > gapFactor*intervalS*float64(h.stride) {
			continue
		}
		low := math.Min(h.lows[i-1], h.lows[i])
		if h.stride == 1 {
			sum += b.Piece(dt/secondsPerMinute, h.lows[i-1]-lowerC, h.lows[i]-lowerC)
		} else {
			sum += b.LethalRate(low-lowerC) * dt / secondsPerMinute
		}
	}
	return sum
}

// packLagsMin are the slowest and the quickest tenfold approach of a closed pack
// to a tunnel's spray that an estimate is told for: common practice for bottles
// and cans of 0.2 to 1 L, no source.
var packLagsMin = [2]float64{20, 7}

// tunnelNotes estimate pasteurization units from the zones of a tunnel, each
// pack following the spray as one lag. They are for planning and credit nothing.
func (f *Facts) tunnelNotes() []beverage.HeatNote {
	zones := f.Process.Stated.Zones
	if f.Process.Route != beverage.Tunnel || len(zones) == 0 {
		return nil
	}
	start := f.Process.Stated.InitialC
	if !start.Known {
		start = f.Process.Stated.FillTempC
	}
	n := beverage.HeatNote{What: "tunnel, estimate", Source: "first-order response of the pack, common practice, no source"}
	if !start.Known {
		n.Text = "the pasteurization units of the zones cannot be estimated without process.initial_temperature"
		return []beverage.HeatNote{n}
	}
	slow, quick := zoneUnits(zones, start.V, packLagsMin[0]), zoneUnits(zones, start.V, packLagsMin[1])
	n.Text = fmt.Sprintf("the %d zones would give %.3g to %.3g PU in a pack that comes tenfold nearer to the spray in %g to %g min; an estimate from the spec, never credited: a probe in the slowest pack tells", len(zones), slow, quick, packLagsMin[0], packLagsMin[1])
	return []beverage.HeatNote{n}
}

// zonePieces is into how many straight lines the approach in one zone is cut.
const zonePieces = 200

// zoneUnits is the PU of a pack that lags the spray by fMin.
func zoneUnits(zones []beverage.Zone, tC, fMin float64) float64 {
	sum := 0.0
	for _, z := range zones {
		dt := z.TimeS / zonePieces / secondsPerMinute
		for range zonePieces {
			next := z.TempC + (tC-z.TempC)*math.Pow(10, -dt/fMin)
			sum += thermal.PU.Piece(dt, tC, next)
			tC = next
		}
	}
	return sum
}
