package facts

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/law"
	"posset/beverage/quantity"
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
			notes = append(notes, f.recordedPairs(m, food)...)
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

// inPack tells whether a route heats the drink in its closed pack.
func inPack(r beverage.Route) bool {
	return r == beverage.HotFill || r == beverage.Tunnel || r == beverage.RetortRoute
}

// recordedPairs holds each record of a process in the closed pack against the
// pairs of a food: all product probes have to stay, unbroken and with the
// tolerance off. The record of a tube's outlet shows no drink's stay.
func (f *Facts) recordedPairs(m beverage.Market, food string) []beverage.HeatNote {
	lines := law.Schedules(food, m)
	if len(lines) == 0 || !inPack(f.Process.Route) {
		return nil
	}
	var notes []beverage.HeatNote
	for i := range f.Records.Logs {
		run := &f.Records.Logs[i]
		n := beverage.HeatNote{What: "statutory pair by the record, " + food, Market: m, Source: lines[0].Cite()}
		n.Text = fmt.Sprintf("%s reaches none of %d pairs of the text at its coldest product probe", run.Result.File, len(lines))
		for _, s := range lines {
			if s.TimeS > 0 && run.leastStayS(s.TempC) >= s.TimeS {
				n.Text, n.Source = run.Result.File+" reaches the pair of "+s.String()+" at its coldest product probe, unbroken and with the tolerance off, if the probe stood in the coldest place; for the food the text names", s.Cite()
				break
			}
		}
		notes = append(notes, n)
	}
	return notes
}

// leastStayS is the longest unbroken stay at or above a temperature of the
// product probe that stayed least, with all that was taken off; 0 without one.
func (r *Run) leastStayS(atC float64) float64 {
	least := math.Inf(1)
	for i, p := range r.Log.Probes {
		if p.Role != logfile.Product {
			continue
		}
		if i >= len(r.heat) {
			return 0
		}
		least = math.Min(least, r.heat[i].stay(atC, r.toleranceC()+p.LoweredC, r.Log.Understood.IntervalS, "").found.Low)
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
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
	n.Text = fmt.Sprintf("the %d zones would give %s to %s PU in a pack that comes tenfold nearer to the spray in %g to %g min; an estimate from the spec, never credited: a probe in the slowest pack tells", len(zones), quantity.Number(slow, 3), quantity.Number(quick, 3), packLagsMin[0], packLagsMin[1])
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
