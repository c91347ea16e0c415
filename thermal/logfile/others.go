package logfile

import "math"

// extremes are, for a row, the highest and lowest readings among the probes,
// and the second ones, so that any one probe can be left out.
type extremes struct {
	high, high2, low, low2 float64
	highAt, lowAt          int
	n                      int
}

// others gives the highest and lowest reading of the other probes in a row.
func (a *analysis) others(v *view, row, probe int) (highest, lowest float64, ok bool) {
	e := a.extremesOf(v, row)
	highest, lowest = e.high, e.low
	n := e.n
	if !a.tracks[probe].speaks(v.cols[probe][row]) {
		return highest, lowest, n > 0
	}
	if e.highAt == probe {
		highest = e.high2
	}
	if e.lowAt == probe {
		lowest = e.low2
	}
	return highest, lowest, n > 1
}

// extremesOf works a row's extremes out once.
func (a *analysis) extremesOf(v *view, row int) *extremes {
	for len(a.extremes) <= row {
		a.extremes = append(a.extremes, extremes{n: -1})
	}
	e := &a.extremes[row]
	if e.n >= 0 {
		return e
	}
	*e = extremes{high: math.Inf(-1), high2: math.Inf(-1), low: math.Inf(1), low2: math.Inf(1), highAt: -1, lowAt: -1}
	for p, t := range a.tracks {
		cell := v.cols[p][row]
		if !t.speaks(cell) {
			continue
		}
		e.n++
		c := t.unit.c(cell)
		if c > e.high {
			e.high, e.high2, e.highAt = c, e.high, p
		} else if c > e.high2 {
			e.high2 = c
		}
		if c < e.low {
			e.low, e.low2, e.lowAt = c, e.low, p
		} else if c < e.low2 {
			e.low2 = c
		}
	}
	return e
}

// speaks tells whether a reading says something about the process.
func (t *track) speaks(cell float64) bool {
	return t.role != Other && t.plausible(t.unit.c(cell))
}

// movedMeanwhile tells whether another probe moved the way of a step while this
// one stood still, by steps much smaller than it; since is how many of the rows
// passed before it moved.
func (a *analysis) movedMeanwhile(v *view, rows []int, probe int, step, beyondC float64) (since int, ok bool) {
	for p, t := range a.tracks {
		if p == probe {
			continue
		}
		if k, moved := t.moved(v.cols[p], rows, step, beyondC); moved && (!ok || k < since) {
			since, ok = k, true
		}
	}
	return since, ok
}

// moved tells whether this probe moved the way of a step in some rows, from the
// farthest it had been the other way.
func (t *track) moved(col []float64, rows []int, step, beyondC float64) (since int, ok bool) {
	sign := math.Copysign(1, step)
	start, last, largest := math.Inf(1), math.NaN(), 0.
	var began onset
	for k, row := range rows {
		if !t.speaks(col[row]) {
			continue
		}
		c := sign * t.unit.c(col[row])
		start = min(start, c)
		if last == last {
			largest = max(largest, math.Abs(c-last))
		}
		began.see(c-start, beyondC, k)
		last = c
	}
	return max(0, began.at()), last-start > max(beyondC, movedShare*math.Abs(step)) && math.Abs(step) > catchUpVsOthers*largest
}
