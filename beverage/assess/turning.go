package assess

import (
	"fmt"
	"math"
	"strconv"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/thermal/logfile"
)

// hinge is a record with what its answer is looked at by.
type hinge struct {
	log     *logfile.Log
	result  *beverage.LogResult
	basis   logfile.Basis
	lowerC  float64 // the tolerance
	target  facts.Target
	cold    int                     // the product probe that decides
	reading *beverage.EvidenceProbe // what one reading of it is worth; nil where the readings were not looked at one by one
}

// hingeOf is false where no target was held against a product probe.
func (r *LogReader) hingeOf(log *logfile.Log, result *beverage.LogResult) (hinge, bool) {
	cold, mediumOnly := log.ColdestProduct(0)
	if r.target == nil || cold < 0 || mediumOnly || result.Outcome == nil {
		return hinge{}, false
	}
	return hinge{log: log, result: result, basis: r.opt.Bases[0], lowerC: r.opt.ToleranceC, target: *r.target, cold: cold}, true
}

// runTurning tells what the answer of a run of a drink hangs on. Its readings
// are not looked at one by one.
func runTurning(run *facts.Run, t *facts.Target) []beverage.Turning {
	cold, mediumOnly := run.Log.ColdestProduct(0)
	if t == nil || t.Problem != "" || cold < 0 || mediumOnly || run.Result.Outcome == nil {
		return nil
	}
	return hinge{log: run.Log, result: &run.Result, basis: t.Basis, lowerC: run.ToleranceC(), target: *t, cold: cold}.turning()
}

func (h hinge) probe() *logfile.Probe { return &h.log.Probes[h.cold] }

// credited is what the deciding probe is credited with, and what is needed.
func (h hinge) credited() (have *float64, need float64) {
	if len(h.probe().Results) == 0 {
		return nil, h.target.Minutes
	}
	return h.probe().Results[0].CreditedMin, h.target.Minutes
}

// turning tells what the answer hangs on.
func (h hinge) turning() []beverage.Turning {
	if h.target.IsStay() {
		return append(h.stayMargin(), h.withoutProbes()...)
	}
	have, need := h.credited()
	if have == nil {
		return []beverage.Turning{{What: "clock", Text: h.probe().Name + " has no credit that could be worked out: a usable clock would change the answer", Turns: true}}
	}
	list := []beverage.Turning{margin(*have, need), h.tolerated(*have, need), h.hanging(*have, need)}
	list = append(list, h.withoutProbes()...)
	return append(list, h.assumed(*have, need)...)
}

func margin(credited, target float64) beverage.Turning {
	return beverage.Turning{What: "target", Text: fmt.Sprintf("credited %s min against %.4g: a target of more than that is not met", roundedDown(credited), target)}
}

// creditDigits is to how many digits a credit is told.
const creditDigits = 4

// roundedDown tells a credit by no more than it is: rounded to the nearest it
// might read as the target that it misses.
func roundedDown(v float64) string {
	if !(v > 0) {
		return "0"
	}
	step := math.Pow(10, math.Floor(math.Log10(v))-creditDigits+1)
	if low := math.Floor(v/step) * step; low > 0 && low <= v {
		return strconv.FormatFloat(low, 'g', creditDigits, 64)
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// stayMargin is how long the unbroken stay was against what is asked for.
func (h hinge) stayMargin() []beverage.Turning {
	if len(h.probe().Stays) == 0 || h.probe().Stays[0].CreditedS == nil {
		return []beverage.Turning{{What: "clock", Text: h.probe().Name + " has no stay that could be worked out: a usable clock would change the answer", Turns: true}}
	}
	s := h.probe().Stays[0]
	list := []beverage.Turning{{What: "target", Text: fmt.Sprintf("credited %s s unbroken at %.4g °C against %.4g s", roundedDown(*s.CreditedS), s.AtC, h.target.Stated.StayS)}}
	if *s.CreditedS < h.target.Stated.StayS && s.WordS != nil && *s.WordS >= h.target.Stated.StayS {
		list = append(list, beverage.Turning{What: "tolerance and faults", Text: fmt.Sprintf("stand between the stay at its word, %.4g s, and the target", *s.WordS), Turns: true})
	}
	return list
}

// tolerated is the tolerance at which the credit would come to the target: each
// C° more takes the same share off, as long as one reference holds at every
// temperature.
func (h hinge) tolerated(credited, target float64) beverage.Turning {
	t := beverage.Turning{What: "sensor tolerance"}
	ref, plain := facts.BoundOf(h.basis).Plain()
	if !plain || !(credited > 0) {
		t.Text = "cannot be told for a basis that holds only above a temperature, or without credit"
		return t
	}
	at := h.lowerC + ref.ZC*math.Log10(credited/target)
	switch {
	case at < 0:
		t.Text = fmt.Sprintf("not even a tolerance of 0 meets the target: the readings are %.3g C° too low", -at)
	case credited >= target:
		t.Turns, t.Text = at <= nearTolerance*h.lowerC, fmt.Sprintf("the target is met up to a tolerance of %.3g C°; %.3g was counted", at, h.lowerC)
	default:
		t.Turns, t.Text = true, fmt.Sprintf("a tolerance of %.3g C° or less would meet the target; %.3g was counted", at, h.lowerC)
	}
	return t
}

// nearTolerance is up to how many times the tolerance counted another is one that
// a thermometer may really have (a margin of ours).
const nearTolerance = 2

// withoutProbes tells whose removal would change the answer.
func (h hinge) withoutProbes() []beverage.Turning {
	var list []beverage.Turning
	for i, p := range h.log.Probes {
		if p.Role != logfile.Product {
			continue
		}
		rest, n := beverage.Meets, 0
		for k, q := range h.result.Probes {
			if k != i && h.log.Probes[k].Role == logfile.Product && q.Outcome != nil {
				rest, n = rest.Worse(*q.Outcome), n+1
			}
		}
		if n > 0 && rest != *h.result.Outcome {
			list = append(list, beverage.Turning{What: "probe", Text: fmt.Sprintf("without %s the outcome would be %q: it stands for the coldest packs and stays in", p.Name, rest), Turns: true})
		}
	}
	if list == nil {
		list = append(list, beverage.Turning{What: "probe", Text: "no single probe turns the outcome of the others"})
	}
	return list
}

// mostSteps is the longest that the credit of one reading can reach, in usual
// steps: a piece on each side of it, none of them longer than a gap.
const mostSteps = 2 * gapFactor

// mostOfOne is more than any one reading of the deciding probe can be worth.
func (h hinge) mostOfOne() float64 {
	p := h.probe()
	return facts.BoundOf(h.basis).LethalRate(p.MaxC-h.lowerC-p.LoweredC) * mostSteps * h.log.Understood.IntervalS / secondsPerMinute
}

// hangsOnOne tells whether the readings must be looked at one by one: a target
// that is met, and by no more than one reading may be worth.
func (h hinge) hangsOnOne() bool {
	have, need := h.credited()
	return have != nil && !h.target.IsStay() && *have >= need && *have-h.mostOfOne() < need
}

func (h hinge) hanging(credited, target float64) beverage.Turning {
	t := beverage.Turning{What: "reading"}
	switch {
	case h.reading == nil && h.hangsOnOne():
		t.Turns, t.Text = true, fmt.Sprintf("one reading of %s may be worth up to %.3g min, more than stands between the credit and the target; posset lethality --evidence tells", h.probe().Name, h.mostOfOne())
		return t
	case h.reading == nil:
		t.Text = fmt.Sprintf("no single reading of %s is worth more than %.3g min", h.probe().Name, h.mostOfOne())
		return t
	}
	t.Text = fmt.Sprintf("of %s most hangs on the reading at %.6g s: %.4g min with the pieces on both sides of it", h.reading.Name, h.reading.TopS, h.reading.TopMinutes)
	if credited >= target && credited-h.reading.TopMinutes < target {
		t.Turns, t.Text = true, t.Text+"; without them the target is not met"
	}
	return t
}

// assumed tells which assumptions the answer hangs on.
func (h hinge) assumed(credited, target float64) []beverage.Turning {
	var list []beverage.Turning
	p, c, u := h.probe(), h.probe().Results[0], h.log.Understood
	if p.RoleBasis == logfile.Assumed {
		list = append(list, beverage.Turning{What: "role", Text: p.Name + " is only assumed to be a probe in the product; were it not, nothing would be credited", Turns: credited >= target})
	}
	if u.UnitBasis == "declared" {
		list = append(list, beverage.Turning{What: "unit", Text: "the file names no unit; " + u.Unit + " was stated for it", Turns: true})
	}
	if b := c.CreditedBeforeCoolingMin; credited >= target && (b == nil || *b < target) {
		list = append(list, beverage.Turning{What: "cooling", Text: "the target is reached only by counting the cooling", Turns: true})
	}
	if p.LoweredC > 0 {
		list = append(list, beverage.Turning{What: "reference", Text: fmt.Sprintf("%.3g C° were taken off %s beside the tolerance, by which it stood above medium or reference thermometer", p.LoweredC, p.Name)})
	}
	if n := len(p.Faults); n > 0 && credited < target && c.LethalityMin != nil && *c.LethalityMin >= target {
		list = append(list, beverage.Turning{What: "faults", Text: fmt.Sprintf("%d faults of %s and the tolerance stand between its record at its word, %.4g min, and the target", n, p.Name, *c.LethalityMin), Turns: true})
	}
	return list
}
