package heatpen

import (
	"math"

	"posset/thermal"
)

// medium is a retort programme: come-up in a straight line, hold, then cooling
// water at once.
type medium struct {
	fromC, retortC, coolingC, comeUpS, coolAtS float64
}

func (m medium) at(tS float64) float64 {
	switch {
	case tS >= m.coolAtS:
		return m.coolingC
	case tS < m.comeUpS:
		return m.fromC + (m.retortC-m.fromC)*tS/m.comeUpS
	}
	return m.retortC
}

// can is a finite cylinder of one material that only conducts.
type can struct {
	radiusM, halfM, diffusivity float64
}

// halfLitreCan has fh near 50 min: 0.398/((1/a² + 0.427/b²) α), Ball and Olson
// 1957 (recalled).
var halfLitreCan = can{radiusM: 0.0365, halfM: 0.054, diffusivity: 1.6e-7}

func (c can) theoryFhMin() float64 {
	return 0.398 / ((1/(c.radiusM*c.radiusM) + 0.427/(c.halfM*c.halfM)) * c.diffusivity) / 60
}

// simulate solves the heat equation by finite differences over a quarter of the
// can and returns the centre, a reading every stepS.
func (c can) simulate(m medium, initialC, forS, stepS float64) []thermal.Point {
	const n = 20 // cells along radius and half height
	dr, dz := c.radiusM/n, c.halfM/n
	dt := 0.2 * dr * dr / c.diffusivity
	steps := int(math.Ceil(stepS / dt))
	dt = stepS / float64(steps)
	var now, next [n + 1][n + 1]float64 // [radius][height], last ones on the surface
	for i := range now {
		for j := range now[i] {
			now[i][j] = initialC
		}
	}
	points := []thermal.Point{{TimeS: 0, TempC: initialC}}
	for k := 1; float64(k)*stepS <= forS; k++ {
		for s := range steps {
			surface := m.at(float64(k-1)*stepS + float64(s+1)*dt)
			for i := range n {
				for j := range n {
					r := float64(i)
					left, below := now[max(i-1, 0)][j], now[i][max(j-1, 0)]
					radial := (now[i+1][j] - 2*now[i][j] + left) / (dr * dr)
					if i == 0 {
						radial = 4 * (now[1][j] - now[0][j]) / (dr * dr)
					} else {
						radial += (now[i+1][j] - left) / (2 * r * dr * dr)
					}
					axial := (now[i][j+1] - 2*now[i][j] + below) / (dz * dz)
					if j == 0 {
						axial = 2 * (now[i][1] - now[i][0]) / (dz * dz)
					}
					next[i][j] = now[i][j] + dt*c.diffusivity*(radial+axial)
				}
			}
			for i := range next {
				next[i][n], next[n][i] = surface, surface
			}
			now = next
		}
		points = append(points, thermal.Point{TimeS: float64(k) * stepS, TempC: now[0][0]})
	}
	return points
}

// lumped is a stirred liquid: one temperature, one time constant, which may
// grow when the drink thickens.
type lumped struct {
	fMin, f2Min, breakS float64
}

func (l lumped) simulate(m medium, initialC, forS, stepS float64) []thermal.Point {
	const substeps = 200
	points := []thermal.Point{{TimeS: 0, TempC: initialC}}
	c := initialC
	for k := 1; float64(k)*stepS <= forS; k++ {
		for s := range substeps {
			at := float64(k-1)*stepS + float64(s)*stepS/substeps
			f := l.fMin
			if l.breakS > 0 && at >= l.breakS {
				f = l.f2Min
			}
			around := m.at(at + stepS/substeps/2)
			c = around + (c-around)*math.Pow(10, -stepS/substeps/60/f)
		}
		points = append(points, thermal.Point{TimeS: float64(k) * stepS, TempC: c})
	}
	return points
}

// simulator is either of them.
type simulator interface {
	simulate(m medium, initialC, forS, stepS float64) []thermal.Point
}

// testOf is the record of a heat-penetration test.
func testOf(name string, s simulator, m medium, initialC, forS, stepS float64) Test {
	t := Test{Name: name, Points: s.simulate(m, initialC, forS, stepS), ComeUpS: m.comeUpS, MediumC: m.retortC, CoolingC: m.coolingC}
	if m.coolAtS < forS {
		t.CoolAtS = m.coolAtS
	}
	return t
}

// delivered is the lethality of a process of the length that a method asks for.
func delivered(s simulator, p Process, basis thermal.Bound, afterComeUpMin float64) float64 {
	comeUpS := p.ComeUpMin * 60
	m := medium{fromC: p.InitialC, retortC: p.RetortC, coolingC: p.CoolingC, comeUpS: comeUpS, coolAtS: comeUpS + afterComeUpMin*60}
	points := s.simulate(m, p.InitialC, m.coolAtS+7200, 5)
	var sum float64
	for i := 1; i < len(points); i++ {
		sum += basis.Piece(5./60, points[i-1].TempC, points[i].TempC)
	}
	return sum
}
