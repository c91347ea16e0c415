package logfile

import (
	"fmt"
	"math"
)

const (
	aboveMediumC  = 1.0 // C°, twice the accuracy that low-acid rules ask of a thermometer
	firstReadings = 5   // that tell how warm the product came in
	steadyRows    = 10  // rows over which recorder and thermometer must stand still to be compared
	steadyC       = 0.5 // C° they may move in that time
	hotShare      = 0.8 // of the way up to its peak where they are compared
	leastExcessC  = 0.2 // C°, finer than which no thermometer is read
)

// mediumFor gives the cooling clock for a product; the medium itself and logs
// without one have none.
func (a *analysis) mediumFor(t *track) *mediumClock {
	if t.role != Product || a.medium == nil {
		return nil
	}
	return a.medium
}

// setBounds works out, row by row, how hot the medium has been at most so far.
// Nothing it heats can be hotter.
func (a *analysis) setBounds(v *view, o *order) {
	a.bounds = a.bounds[:0]
	if !a.hasMedium {
		return
	}
	from := v.done
	for len(a.bounds) < len(v.t) {
		a.bounds = append(a.bounds, a.boundC)
	}
	top := a.boundC
	for seq, row := range o.rows {
		for p, t := range a.tracks {
			if cell := v.cols[p][row]; t.isMedium(a) && t.plausible(t.unit.c(cell)) {
				top = max(top, t.unit.c(cell))
			}
		}
		a.bounds[row] = top
		if seq >= from && (v.last || seq < len(o.rows)-lookahead) {
			a.boundC = top
		}
	}
}

// isMedium tells the columns that show what heats: the retort's own, or without
// one the reference thermometer.
func (t *track) isMedium(a *analysis) bool {
	return t.role == Retort || t.role == ReferenceThermometer && !a.hasRetort
}

// findAboveMedium notes product readings hotter than what heats them. Nothing
// is credited on them, and all readings of the probe are lowered by as much.
func (t *track) findAboveMedium(a, b int, v *view) {
	s := &t.s
	if !t.a.hasMedium || t.role != Product {
		return
	}
	excess := 0.0
	for i := a; i < b; i++ {
		if t.samples+i-a < firstReadings {
			t.startC = max(t.startC, s.c[i])
		}
		bound := max(t.a.bounds[s.row[i]], t.startC) + aboveMediumC + t.prof.resC
		if s.c[i] <= bound || s.flag[i]&uncredited != 0 || !t.aboveBeside(i, bound) {
			continue
		}
		s.flag[i] |= uncredited
		excess = max(excess, s.c[i]-bound+aboveMediumC)
		t.note(v, AboveMedium, s.row[i], fmt.Sprintf("%s, but the medium had been no hotter than %s; not credited, and all readings of this probe are lowered by the excess",
			degrees(s.x[i]), degrees(bound-aboveMediumC-t.prof.resC)))
	}
	t.aboveC = max(t.aboveC, excess)
	t.lower()
}

// aboveBeside asks a neighbour too, so that one reading alone is left to be a
// spike.
func (t *track) aboveBeside(i int, bound float64) bool {
	s := &t.s
	return i > 0 && s.c[i-1] > bound || i+1 < s.len() && s.c[i+1] > bound
}

// lower takes the excess over medium and reference thermometer off every
// reading of the probe, those credited before too.
func (t *track) lower() {
	more := t.aboveC + t.a.referenceC - t.excessC
	if t.role != Product || more <= 0 {
		return
	}
	t.excessC += more
	factors := make([]float64, len(t.bases))
	for i := range t.bases {
		t.bases[i].lowerC += more
		if t.bases[i].MinC == 0 {
			factors[i] = math.Exp(-more * math.Ln10 / t.bases[i].Ref.ZC)
		}
	}
	t.led.scale(factors)
	for i := range t.kept {
		t.kept[i].scale(factors)
	}
	if t.run.before != nil {
		t.run.before.scale(factors)
	}
}

// scale multiplies all credit, basis by basis; stays cannot be scaled and begin
// anew.
func (l *ledger) scale(factors []float64) {
	p := &l.phase
	all := [][]float64{l.credited, p.heating, p.hold, p.held.credited, p.begin.credited}
	for i := range p.passed {
		all = append(all, p.passed[i].credited)
	}
	for _, credited := range all {
		for i := range credited {
			credited[i] *= factors[i]
		}
	}
	for i := range l.stays {
		l.stays[i] = stayCount{}
	}
}

// compareReference finds how far the recorder reads above the reference
// thermometer while both stand still and hot.
func (a *analysis) compareReference(v *view, o *order) {
	if !a.hasRetort || a.reference < 0 {
		return
	}
	ref := a.tracks[a.reference]
	for p, t := range a.tracks {
		if t.role != Retort {
			continue
		}
		excess, row := steadyExcess(v, o, v.cols[p], v.cols[a.reference], t, ref)
		if row < 0 || excess <= max(leastExcessC, t.prof.resC+ref.prof.resC, a.referenceC) {
			continue
		}
		t.note(v, ReferenceDisagree, row, fmt.Sprintf("the recorder stands %s C° above the reference thermometer; all product readings are lowered by as much", trim(excess)))
		a.referenceC = max(a.referenceC, excess)
	}
}

// steadyExcess is the median difference over the steady hot rows, with the
// first of them; row is -1 when there are none.
func steadyExcess(v *view, o *order, col, refCol []float64, t, ref *track) (excess float64, row int) {
	top := math.Inf(-1)
	for _, r := range o.rows {
		if c := ref.unit.c(refCol[r]); ref.plausible(c) {
			top = max(top, c)
		}
	}
	var differences []float64
	row = -1
	for k := v.done; k < len(o.rows); k++ {
		if k < steadyRows || !steady(col, o.rows[k-steadyRows:k+1], t) || !steady(refCol, o.rows[k-steadyRows:k+1], ref) {
			continue
		}
		c, r := t.unit.c(col[o.rows[k]]), ref.unit.c(refCol[o.rows[k]])
		if r < hotShare*top {
			continue
		}
		if row < 0 {
			row = o.rows[k]
		}
		differences = append(differences, c-r)
	}
	return quantile(differences, 0.5), row
}

// steady tells whether a column stands still over some rows.
func steady(col []float64, rows []int, t *track) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range rows {
		c := t.unit.c(col[r])
		if !t.plausible(c) {
			return false
		}
		low, high = min(low, c), max(high, c)
	}
	return high-low <= max(steadyC, t.beyondC())
}
