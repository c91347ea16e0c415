package facts

import (
	"fmt"
	"math"
)

// Conflict is two figures of the drink that cannot both be true.
type Conflict struct {
	What string
	Text string
}

// Conflicts holds readings against the recipe and against each other.
func (f *Facts) Conflicts() []Conflict {
	var list []Conflict
	add := func(fires bool, what, format string, args ...any) {
		if fires {
			list = append(list, Conflict{What: what, Text: fmt.Sprintf(format, args...)})
		}
	}
	m, p := f.PH.Measured, f.PH.Predicted
	low, high := p.Outward(2)
	add(m.Known() && p.Known() && (m.Low > p.High || m.High < p.Low), "pH",
		"pH %.2f is measured, the recipe gives %.2f to %.2f", m.Mid, low, high)
	add(f.PH.WarmOrCold, "pH temperature", "The pH was read at %.0f °C, outside 20 to 30 °C; 0.1 is added to its tolerance", f.Drink.Measured.PHTempC.V)
	g := f.Gas
	add(g.Conflict, "carbonation", "%.2f volumes are stated, temperature and pressure give %.2f; the larger counts", f.statedVolumes(), g.ByReading.V)
	if b := f.PH.Bench; b != nil {
		add(b.Contradiction != "", "bench", "%s; the prediction keeps the recipe's own interval and takes in what the trials say", b.Contradiction)
	}
	f.waterConflict(add)
	f.brixConflict(add)
	f.acidityConflict(add)
	return list
}

func (f *Facts) waterConflict(add func(bool, string, string, ...any)) {
	m, w := f.Drink.Measured.WaterActivity, f.Recipe.waterActivity()
	if !m.Known || !w.Known() {
		return
	}
	add(m.V < w.Low-waterActivityDoubt, "water activity",
		"a water activity of %.3f is measured, the recipe's solutes give no less than %.3f", m.V, w.Low)
	add(m.V > w.High+waterActivityDoubt, "water activity",
		"a water activity of %.3f is measured, the recipe's solutes leave no more than %.3f", m.V, w.High)
}

// What readings may differ by before one of them must be wrong; common
// practice, no source.
const (
	waterActivityDoubt = 0.02
	brixDoubt          = 2.0
	brixDoubtShare     = 0.25
	acidityDoubtShare  = 0.05 // of a titration, its end point and its titre
)

func (f *Facts) brixConflict(add func(bool, string, string, ...any)) {
	b, s, d := f.Drink.Measured.Brix, f.Recipe.SolidsGPerL, f.Recipe.DensityGPerML
	if !b.Known || !s.Known() || !d.Known() {
		return
	}
	recipe := s.Mid / (10 * d.Mid)
	add(math.Abs(recipe-b.V) > math.Max(brixDoubt, brixDoubtShare*recipe), "Brix",
		"%.1f °Brix is measured, the recipe's solids make about %.1f %%", b.V, recipe)
}

func (f *Facts) statedVolumes() float64 {
	if c := f.Drink.Carbonation; c != nil {
		return c.Volumes.V
	}
	return 0
}
