package heatpen

import (
	"fmt"
	"slices"

	"posset/thermal"
)

// Medium is what the record of a retort probe says about a test.
type Medium struct {
	HoldC    float64 // median of the hold
	LowestC  float64 // of the hold
	HoldAtS  float64 // when the hold was reached
	CoolAtS  float64 // when it ended; 0 where the record ends before
	CoolingC float64 // coldest after that
}

// How the hold is told from come-up and cooling; choices of ours.
const (
	holdBandC     = 0.5  // below the hold, where it counts as reached
	leavesC       = 2.0  // below the hold, where it counts as left for good
	levelQuantile = 0.75 // of the hottest half: a level that overshoot does not reach
)

// MediumOf finds the hold in the record of a retort probe. It fails where there
// is none to be seen.
func MediumOf(points []thermal.Point) (Medium, error) {
	if len(points) < fewestReadings {
		return Medium{}, fmt.Errorf("heatpen: %d readings of the medium; give the whole of the test, %d at least", len(points), fewestReadings)
	}
	all := make([]float64, len(points))
	for i, p := range points {
		if !(p.TempC > coldestC && p.TempC < hottestC) {
			return Medium{}, fmt.Errorf("heatpen: reading %d of the medium: %g °C; give -10 to 200 °C", i+1, p.TempC)
		}
		all[i] = p.TempC
	}
	slices.Sort(all)
	level := all[int(levelQuantile*float64(len(all)-1))]
	hold := slices.DeleteFunc(all, func(c float64) bool { return c < level-leavesC })
	m := Medium{HoldC: hold[len(hold)/2]}
	m.span(points)
	if !(m.HoldAtS < m.CoolAtS) {
		return Medium{}, fmt.Errorf("heatpen: the medium holds no temperature: it is near %g °C for no more than a reading", m.HoldC)
	}
	m.rest(points)
	return m, nil
}

// span sets the first and last time the medium is at its hold.
func (m *Medium) span(points []thermal.Point) {
	first := slices.IndexFunc(points, func(p thermal.Point) bool { return p.TempC >= m.HoldC-holdBandC })
	m.HoldAtS, m.CoolAtS = points[first].TimeS, points[first].TimeS
	for _, p := range points[first:] {
		if p.TempC >= m.HoldC-leavesC {
			m.CoolAtS = p.TimeS
		}
	}
}

// rest sets the lowest of the hold and the coldest after it.
func (m *Medium) rest(points []thermal.Point) {
	m.LowestC, m.CoolingC = m.HoldC, m.HoldC
	for _, p := range points {
		switch {
		case p.TimeS >= m.HoldAtS && p.TimeS <= m.CoolAtS:
			m.LowestC = min(m.LowestC, p.TempC)
		case p.TimeS > m.CoolAtS:
			m.CoolingC = min(m.CoolingC, p.TempC)
		}
	}
	if m.CoolAtS == points[len(points)-1].TimeS {
		m.CoolAtS, m.CoolingC = 0, 0
	}
}
