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
		n.Text = fmt.Sprintf("%s: over hold and cooling %s gathers %s min at %.4g °C, z %.3g C°, the tolerance taken off; that %s the %s min for 5 log of vegetative pathogens. It is the coldest place only if the probe stood there, cap and headspace included, and the figures were measured in vegetables and sauces, not in protein drinks", run.Result.File, probe, quantity.Number(got, 3), band.TrefC, band.ZC, verb, quantity.Number(band.F, 3))
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
		if h.steps[i] > gapFactor*intervalS {
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
