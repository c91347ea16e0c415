package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/quantity"
)

func headspaceAnswer(f *facts.Facts) answer {
	p := f.Drink.Package
	if !p.FillML.Known || !p.BrimfulML.Known {
		return answer{}
	}
	return answer{text: quantity.Format(p.BrimfulML.V-p.FillML.V, quantity.Volume, digits, quantity.Metric) + " at the stated fill", from: p.BrimfulML.Place.String(), basis: beverage.Stated}
}

// pressureAnswer is the highest pressure that the pack may see where it is kept
// or, also in a retort, where it is heated.
func pressureAnswer(f *facts.Facts) answer {
	if full := f.Pack.FullAt; full != nil {
		return answer{text: "liquid-full at " + quantity.Format(full.TempC, quantity.Temperature, digits, quantity.Metric), from: byModel, basis: beverage.Predicted}
	}
	top := f.Pack.Worst
	if hot := f.Pack.AtProcess(); hot != nil && hot.HighKPa != nil && (top == nil || *hot.HighKPa > *top.HighKPa) {
		top = hot
	}
	if top == nil {
		return answer{}
	}
	text := fmt.Sprintf("up to %s at %s", quantity.FormatPressure(*top.HighKPa, true, 3, quantity.Metric), quantity.Format(top.TempC, quantity.Temperature, digits, quantity.Metric))
	return answer{text: text, from: byModel, basis: beverage.Predicted}
}

func ratingAnswer(f *facts.Facts) answer {
	r := f.Pack.Rating
	if !r.Known {
		return answer{}
	}
	return answer{text: quantity.FormatPressure(r.V, true, 3, quantity.Metric), from: r.Place.String(), basis: beverage.Stated}
}

func pressAnswer(f *facts.Facts) answer {
	g := f.Drink.Process.PressureMPa
	if !g.Known {
		return answer{}
	}
	return answer{text: quantity.Number(g.V, digits) + " MPa", from: g.Place.String(), basis: beverage.Stated}
}

func poreAnswer(f *facts.Facts) answer {
	g := f.Drink.Process.FilterPoreUM
	if !g.Known {
		return answer{}
	}
	return answer{text: quantity.Number(g.V, digits) + " µm", from: g.Place.String(), basis: beverage.Stated}
}

// holdTemperatureAnswer is the hold temperature, or the hottest zone of a tunnel.
func holdTemperatureAnswer(f *facts.Facts) answer {
	p := f.Drink.Process
	if p.HoldTempC.Known || len(p.Zones) == 0 {
		return figure(p.HoldTempC, quantity.Temperature)
	}
	hottest := slices.MaxFunc(p.Zones, func(a, b beverage.Zone) int { return cmp.Compare(a.TempC, b.TempC) })
	return answer{text: "hottest zone " + quantity.Format(hottest.TempC, quantity.Temperature, digits, quantity.Metric), from: p.Place.String(), basis: beverage.Stated}
}

// holdAnswer is the hold, or the zones of a tunnel in their order.
func holdAnswer(f *facts.Facts) answer {
	zones := f.Drink.Process.Zones
	if g := f.Drink.Process.HoldS; g.Known || len(zones) == 0 {
		return figure(g, quantity.Duration)
	}
	var said []string
	for _, z := range zones {
		said = append(said, quantity.Format(z.TempC, quantity.Temperature, digits, quantity.Metric)+" for "+quantity.Format(z.TimeS, quantity.Duration, digits, quantity.Metric))
	}
	return answer{text: "zones: " + strings.Join(said, ", "), from: f.Drink.Process.Place.String(), basis: beverage.Stated}
}

func targetAnswer(f *facts.Facts) answer {
	t := f.Drink.Process.Target
	if !t.Known {
		return answer{}
	}
	return answer{text: t.V.Text, from: t.Place.String(), basis: beverage.Stated}
}

// scheduledAnswer is who set the process and when; either alone is half of it.
func scheduledAnswer(f *facts.Facts) answer {
	s := f.Drink.Process.Scheduled
	if s == nil || !s.By.Known {
		return answer{}
	}
	a := answer{text: s.By.V, from: s.By.Place.String(), basis: beverage.Stated, short: !s.Dated.Known}
	if s.Dated.Known {
		a.text += ", " + s.Dated.V
	}
	return a
}

func referenceAnswer(f *facts.Facts) answer {
	if s := f.Drink.Process.Scheduled; s != nil {
		return word(s.Reference)
	}
	return answer{}
}

func criticalAnswer(f *facts.Facts) answer {
	var said []string
	for _, l := range f.Drink.Process.Critical {
		said = append(said, string(l.What)+" "+l.Text)
	}
	if len(said) == 0 {
		return answer{}
	}
	return answer{text: strings.Join(said, "; "), from: f.Drink.Process.Critical[0].Place.String(), basis: beverage.Stated}
}
