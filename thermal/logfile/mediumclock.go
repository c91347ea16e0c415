package logfile

import "math"

// mediumClock tells when the medium was cooling: from the last time it stood
// near its peak until it heats again.
type mediumClock struct {
	turns []turn // in the order of the clock
}

type turn struct {
	t       float64
	cooling bool
}

func (m *mediumClock) add(t float64, cooling bool) {
	if m != nil {
		m.turns = append(m.turns, turn{t, cooling})
	}
}

// forget drops turns that no reading after t asks for.
func (m *mediumClock) forget(t float64) {
	for m != nil && len(m.turns) > 1 && m.turns[1].t <= t {
		m.turns = m.turns[1:]
	}
}

// cooling tells, as asked at a moment, from when on the medium cools and when it
// heats again: while it cools, always and the next time; while it does not, the
// next time and never. A log without a medium column never cools by it.
func (m *mediumClock) cooling(t float64) (coolS, heatS float64) {
	coolS, heatS = math.Inf(1), math.Inf(1)
	if m == nil {
		return coolS, math.Inf(-1)
	}
	for i := len(m.turns) - 1; i >= 0; i-- {
		turn := m.turns[i]
		switch {
		case turn.t <= t && turn.cooling:
			return math.Inf(-1), heatS
		case turn.t <= t:
			return coolS, math.Inf(-1)
		case turn.cooling:
			coolS = turn.t
		default:
			heatS = turn.t
		}
	}
	return coolS, math.Inf(-1)
}
