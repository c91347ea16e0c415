package acid

import "math"

// point is an argument and the value of a function there.
type point struct{ x, y float64 }

// root returns where f is 0 between a and b, whose values differ in sign, to a
// part in 10^12: false position, in which the end that stays has its value halved
// so that both ends close in (the Illinois rule; Dowell & Jarratt 1971 BIT
// 11:168).
func root(f func(float64) (float64, error), a, b point) (float64, error) {
	const rounds, fine = 300, 1e-12
	for range rounds {
		if b.y == 0 || math.Abs(b.x-a.x) <= fine*math.Abs(b.x) {
			return b.x, nil
		}
		x := inside(b.x-b.y*(b.x-a.x)/(b.y-a.y), math.Min(a.x, b.x), math.Max(a.x, b.x))
		y, err := f(x)
		if err != nil {
			return math.NaN(), err
		}
		if y*b.y <= 0 {
			a = b
		} else {
			a.y /= 2
		}
		if math.Abs(x-b.x) <= fine*math.Abs(x) {
			return x, nil
		}
		b = point{x, y}
	}
	return b.x, nil
}
