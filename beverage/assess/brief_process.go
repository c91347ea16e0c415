package assess

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/need"
	"posset/beverage/route"
)

// processKeys are the figures of a process, in the order in which they are told.
var processKeys = []struct{ name, key string }{
	{"initial temperature", "process.initial_temperature"}, {"hold temperature", "process.hold_temperature"}, {"hold time", "process.hold_time"},
	{"filling temperature", "process.fill_temperature"}, {"time the closed pack stays hot", "process.pack_hold_time"},
	{"coldest place of the closed pack", "process.pack_hold_temperature"}, {"pressure", "process.pressure"}, {"filter", "process.filter_pore"},
}

// process tells the proposed process, what such a route needs, the target and
// whose it is, what records show, and the routes that are left.
func process(f *facts.Facts, a *beverage.Assessment) []string {
	var lines []string
	switch r := f.Process.Route; r {
	case "":
		lines = append(lines, "No route is proposed.")
	default:
		n := need.For(f)
		lines = append(lines, fmt.Sprintf("Proposed: %s.%s", r, figuresWords(f)), fmt.Sprintf("By published figures such a route needs %s (%s).", n.Text, n.Source().Text))
	}
	lines = append(lines, targetWords(f, a.Lethality))
	return append(lines, otherRoutes(f, a.Routes)...)
}

func figuresWords(f *facts.Facts) string {
	var said []string
	for _, k := range processKeys {
		if x := answerTo(f, k.key); x.text != "" {
			said = append(said, k.name+" "+x.text)
		}
	}
	if len(said) == 0 {
		return ""
	}
	return " As the spec states it, not recorded: " + strings.Join(said, ", ") + "."
}

// targetWords tells the target, who set it and what records show against it.
func targetWords(f *facts.Facts, d *beverage.Delivered) string {
	if d == nil || d.Target == "" {
		return "No target is stated: the process authority sets it."
	}
	text := fmt.Sprintf("Target: %s, %s.", d.Target, d.Set)
	if f.Drink.Process.Scheduled != nil {
		text = fmt.Sprintf("Target: %s, set by %s.", d.Target, d.Set)
	}
	if len(d.Logs) == 0 {
		return text + " No record shows it."
	}
	return text + fmt.Sprintf(" Records against it: %s. That is the target you stated; whether it is adequate was not judged.", d.Outcome)
}

// otherRoutes are those that nothing given rules out, beside the proposed one,
// and what their order rests on.
func otherRoutes(f *facts.Facts, all []beverage.RouteResult) []string {
	var names []string
	left := route.Left(f, all)
	for _, r := range left.Routes {
		if r.Route != f.Process.Route && r.Route != beverage.NoProcess {
			names = append(names, fmt.Sprintf("%s (%s)", r.Route, fitWords(r.Outcome)))
		}
	}
	switch len(names) {
	case 0:
		return []string{"No other route is left by what was given."}
	case 1:
		return []string{"Other routes: " + names[0] + "."}
	}
	return []string{"Other routes: " + strings.Join(names, ", ") + ". Their order: " + left.Order + "."}
}

func fitWords(x beverage.Fit) string {
	if x == beverage.Fits {
		return "not ruled out by what was given"
	}
	return x.String()
}
