package heatpen

import (
	"fmt"
	"math"
)

// Worst is the container that none of those tested is slower than: the largest
// fh and jh, the lowest initial and retort temperature, the least cooling, each
// with the container it was taken from.
type Worst struct {
	Curve
	FhOf, JhOf, InitialOf, RetortOf string
}

// WorstOf joins the curves of several containers. It fails on none.
func WorstOf(curves []Curve) (Worst, error) {
	if len(curves) == 0 {
		return Worst{}, fmt.Errorf("heatpen: no heating curve to take the worst of; give one at least")
	}
	first := curves[0]
	w := Worst{Curve: Curve{
		Name: "worst of all", MediumC: first.MediumC, InitialC: first.InitialC, ComeUpMin: first.ComeUpMin,
		Cooled: true, FcMin: math.Inf(1), Jc: math.Inf(1), BreakMin: math.Inf(1), BreakC: math.Inf(1),
	}}
	w.FhOf, w.JhOf, w.InitialOf, w.RetortOf = first.Name, first.Name, first.Name, first.Name
	for _, c := range curves {
		w.take(c)
	}
	if !w.Broken {
		w.BreakMin, w.BreakC, w.F2Min = 0, 0, 0
	}
	if !w.Cooled {
		w.FcMin, w.Jc = 0, 0
	}
	return w, nil
}

func (w *Worst) take(c Curve) {
	if c.FhMin > w.FhMin {
		w.FhMin, w.FhOf = c.FhMin, c.Name
	}
	if c.Jh > w.Jh {
		w.Jh, w.JhOf = c.Jh, c.Name
	}
	if c.InitialC < w.InitialC {
		w.InitialC, w.InitialOf = c.InitialC, c.Name
	}
	if c.MediumC < w.MediumC {
		w.MediumC, w.RetortOf = c.MediumC, c.Name
	}
	w.ComeUpMin = min(w.ComeUpMin, c.ComeUpMin)
	w.Cooled = w.Cooled && c.Cooled
	// BallTime lets no pack cool slower than it heats; nor may a slower one's fh
	// let this one.
	w.FcMin, w.Jc = min(w.FcMin, c.FcMin, c.FhMin), min(w.Jc, c.Jc)
	// A container that heats evenly may still be slower than the second part of
	// another, so its fh counts for both parts.
	w.F2Min = max(w.F2Min, c.F2Min, c.FhMin)
	if c.Broken {
		w.Broken = true
		w.BreakMin, w.BreakC = min(w.BreakMin, c.BreakMin), min(w.BreakC, c.BreakC)
	}
}

// Study is what a set of tests says about a process: each container by both
// methods, and the worst.
type Study struct {
	Curves     []Curve
	Worst      Worst
	Ball       []ProcessTime // of each container
	WorstBall  ProcessTime   // of the joined one; no shorter than any of Ball
	General    []ProcessTime // of each container
	SlowestAt  int           // the container that General takes longest for
	MoreByBall float64       // minutes that WorstBall asks for over the slowest of General, both as CountMin; negative where less
	CountMin   float64       // the longer of the two
}

// StudyOf fits every test and works out the process time by both methods. It
// fails on the first test that is no heating curve.
func StudyOf(tests []Test, target Target, p Process) (Study, error) {
	var s Study
	for _, t := range tests {
		c, err := Fit(t)
		if err != nil {
			return Study{}, err
		}
		ball, err := c.BallTime(target, p)
		if err != nil {
			return Study{}, err
		}
		general, err := GeneralTime(t, c, target, p)
		if err != nil {
			return Study{}, err
		}
		s.Curves, s.Ball, s.General = append(s.Curves, c), append(s.Ball, ball), append(s.General, general)
		if general.CountMin > s.General[s.SlowestAt].CountMin {
			s.SlowestAt = len(s.General) - 1
		}
	}
	var err error
	if s.Worst, err = WorstOf(s.Curves); err != nil {
		return Study{}, err
	}
	if s.WorstBall, err = s.Worst.BallTime(target, p); err != nil {
		return Study{}, err
	}
	slowest := s.General[s.SlowestAt].CountMin
	s.MoreByBall, s.CountMin = s.WorstBall.CountMin-slowest, max(s.WorstBall.CountMin, slowest)
	return s, nil
}
