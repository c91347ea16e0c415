package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/report/chart"
)

// addHeatPictures appends lethality against the protein that the same heat
// unfolds, or the words why that cannot be drawn.
func (d *Doc) addHeatPictures(p *beverage.ProteinState, u Units) {
	if p == nil || p.Picture == nil {
		return
	}
	const title = "Lethality against protein unfolded"
	h := p.Picture.Heat
	if h.Why != "" {
		d.add(title, Picture{Why: h.Why})
		return
	}
	d.add(title, pathPicture(h, u), equalPicture(h, u))
}

func heatFoot(h beverage.HeatPicture) string {
	return sentences(append([]string{h.Source}, h.Notes...))
}

// sentences joins what was said piece by piece.
func sentences(parts []string) string {
	var out []string
	for _, p := range parts {
		if p = strings.TrimSuffix(strings.TrimSpace(p), "."); p != "" {
			out = append(out, strings.ToUpper(p[:1])+p[1:]+".")
		}
	}
	return strings.Join(out, " ")
}

// unfoldedTitle is the axis of damage, in percent.
const unfoldedTitle = "heat-labile whey protein unfolded, %"

// unfoldedCurves are the middle of a share and its two ends, over x.
func unfoldedCurves(n int, at func(i int) (x float64, share beverage.Interval)) []chart.Curve {
	mid, low, high := chart.Curve{Name: "middle of what is published", Style: plainStyle}, chart.Curve{Name: "its ends", Style: doubtStyle}, chart.Curve{Name: "its ends", Style: doubtStyle}
	for i := range n {
		x, s := at(i)
		if !s.Known() {
			continue
		}
		mid.Points = append(mid.Points, chart.Point{X: x, Y: percentOfOne * s.Mid})
		low.Points = append(low.Points, chart.Point{X: x, Y: percentOfOne * s.Low})
		high.Points = append(high.Points, chart.Point{X: x, Y: percentOfOne * s.High})
	}
	return []chart.Curve{mid, low, high}
}

func (u Units) basis(trefC, zC float64) string {
	t, z := temperature.in(u), difference.in(u)
	return fmt.Sprintf("min at %s %s, z %s %s", decimal(*t.of(&trefC), t.decimals), t.unit, decimal(*z.of(&zC), z.decimals), z.unit)
}

// pathPicture follows one process: what it has delivered, what it has unfolded.
func pathPicture(h beverage.HeatPicture, u Units) Picture {
	t := temperature.in(u)
	data := Table{Columns: numbers(columns("time", "temperature, "+t.unit, "lethality, min", "unfolded, %"), 0, 4)}
	for _, p := range h.Path {
		data.Rows = append(data.Rows, []string{durationWords(p.TimeS), u.cell(temperature, &p.TempC), decimal(p.LethalityMin, 3), shareCell(p.Denatured)})
	}
	panel := chart.Panel{Y: chart.Axis{Title: unfoldedTitle}, Curves: unfoldedCurves(len(h.Path), func(i int) (float64, beverage.Interval) { return h.Path[i].LethalityMin, h.Path[i].Denatured })}
	return Picture{Data: data, Chart: chart.Chart{Title: "Lethality gained against protein unfolded, over the process",
		About:  "From left to right one process goes on: " + h.Of + ". " + heatFoot(h),
		X:      chart.Axis{Title: "lethality, " + u.basis(h.TrefC, h.ZC)},
		Panels: []chart.Panel{panel}}}
}

func shareCell(s beverage.Interval) string {
	if !s.Known() {
		return "-"
	}
	of := func(v float64) string { return fixed(percentOfOne*v, 1) }
	if s.Low == s.High {
		return of(s.Mid)
	}
	return of(s.Mid) + " (" + of(s.Low) + " to " + of(s.High) + ")"
}

// equalPicture compares holds that are worth the same lethality.
func equalPicture(h beverage.HeatPicture, u Units) Picture {
	if len(h.Equal) < 2 {
		return Picture{}
	}
	t := temperature.in(u)
	data := Table{Columns: numbers(columns("hold at, "+t.unit, "for", "unfolded, %"), 0, 3)}
	for _, e := range h.Equal {
		data.Rows = append(data.Rows, []string{u.cell(temperature, &e.TempC), durationWords(e.HoldS), shareCell(e.Denatured)})
	}
	panel := chart.Panel{Y: chart.Axis{Title: unfoldedTitle, High: percentOfOne}, Curves: unfoldedCurves(len(h.Equal), func(i int) (float64, beverage.Interval) { return *t.of(&h.Equal[i].TempC), h.Equal[i].Denatured })}
	about := fmt.Sprintf("Each point is a hold at one temperature, as long as is worth %s %s (%s); warming up and cooling down, which cost protein too, are left out.",
		decimal(h.EqualMin, 2), u.basis(h.TrefC, h.ZC), h.EqualTo)
	if len(h.Path) == 0 {
		about += " " + heatFoot(h)
	} else {
		hottest := slices.MaxFunc(h.Path, func(a, b beverage.HeatPoint) int { return cmp.Compare(a.TempC, b.TempC) }).TempC
		panel.Uprights = []chart.Line{{Label: "process", Name: "the hottest of the process, " + u.text(temperature, hottest), At: *t.of(&hottest)}}
	}
	return Picture{Data: data, Chart: chart.Chart{Title: "Protein unfolded by holds of equal lethality", About: about,
		X: chart.Axis{Title: "temperature of the hold, " + t.unit}, Panels: []chart.Panel{panel}}}
}

// durationWords is a time in the unit that suits it.
func durationWords(s float64) string {
	switch {
	case s < 90:
		return decimal(s, 1) + " s"
	case s < 5400:
		return decimal(s/60, 1) + " min"
	}
	return decimal(s/3600, 1) + " h"
}
