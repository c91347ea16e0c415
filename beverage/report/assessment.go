package report

import (
	"slices"
	"strings"

	"posset/beverage"
)

// Assessment is the whole assessment of one drink.
func Assessment(a *beverage.Assessment, u Units) Doc {
	d := Doc{Title: titleOf(a.Drink.Name), Headline: headline(a.Findings), Tool: a.Tool, Inputs: []beverage.Input{a.Input}, Cautions: a.Cautions}
	d.add("Answer", answer(a, u))
	d.addFindings(a.Findings)
	d.add("Drink as described", described(a.Drink, u))
	d.add("Acid class", acidFigures(a.AcidClass, u), regulated(a.AcidClass))
	d.addGas(a.Carbonation, a.Package, u)
	d.addDelivered(a.Lethality, u)
	d.add("What may remain and grow", organismItems(a.Organisms), organismsMean(a.Organisms))
	d.add("What the heat comes to", heatNoteItems(a.HeatNotes), heatNoteMeans(a.HeatNotes))
	d.addProtein(a.Protein, u)
	d.addProteinPictures(a.Protein, u)
	d.add("Routes", routeTable(a.Routes), Para(besideFits+". In full: posset routes"))
	d.Sheet = assessmentSheet(a, u)
	return d
}

func titleOf(name string) string {
	if strings.TrimSpace(name) == "" {
		return "a drink without a name"
	}
	return name
}

// answer is what a reader wants first: class, process, what stops it.
func answer(a *beverage.Assessment, u Units) Figures {
	fs := Figures{
		classFigure(a.AcidClass, u),
		{Name: "Stopped by", Words: orNone(ids(a.Findings, beverage.Stop), "nothing at level stop in what was given")},
		{Name: "Process given", Words: processGiven(a)},
		{Name: "Not ruled out", Words: notRuledOut(a.Routes)},
	}
	if a.Lethality != nil {
		fs = append(fs, Figure{Name: "Target", Words: targetWords(a.Lethality), Note: judged(a.Lethality.Outcome)})
	}
	return fs
}

func classFigure(c beverage.AcidClass, u Units) Figure {
	if c.PH == nil {
		return Figure{Name: "Class", Words: c.Class.String(), Note: "pH not known"}
	}
	f := u.between("Class", acidity, c.PH, c.PHLow, c.PHHigh)
	f.Words = c.Class.String() + ", pH"
	f.Note = string(c.PHBasis)
	return f
}

func orUnknown(s string) string {
	if s == "" {
		return "not known"
	}
	return s
}

func processGiven(a *beverage.Assessment) string {
	if a.Drink.Route == "" {
		return "not stated"
	}
	for _, r := range a.Routes {
		if string(r.Route) == a.Drink.Route {
			return a.Drink.Route + ": " + r.Outcome.String() + needs(r.Needs)
		}
	}
	return a.Drink.Route
}

func needs(what string) string {
	if what == "" {
		return ""
	}
	return " (needs " + what + ")"
}

// notRuledOut names the routes that what was given leaves open; what each needs
// stands in the table of routes.
func notRuledOut(rs []beverage.RouteResult) string {
	s := "no route"
	if open := routesWith(rs, beverage.Fits); len(open) > 0 {
		s = strings.Join(open, ", ")
	}
	if unknown := routesWith(rs, beverage.FitUnknown); len(unknown) > 0 {
		s += ". Cannot tell: " + strings.Join(unknown, ", ")
	}
	return s
}

func routesWith(rs []beverage.RouteResult, o beverage.Fit) []string {
	var names []string
	for _, r := range rs {
		if r.Outcome == o {
			names = append(names, string(r.Route))
		}
	}
	return names
}

func targetWords(l *beverage.Delivered) string {
	if l.Target == "" {
		return "none stated"
	}
	return join(", ", l.Target, l.Set)
}

func described(s beverage.DrinkSummary, u Units) Figures {
	fs := Figures{
		u.figure("Serving", volume, s.ServingML),
		u.figure("Alcohol by volume", percent, s.AlcoholPct),
		u.figure("Density", densityUnit, s.DensityGML),
		{Name: "Sold as", Words: orUnknown(s.SoldAs)},
		{Name: "Intended for", Words: orUnknown(s.IntendedFor)},
		{Name: "Pack", Words: orUnknown(s.PackType)},
		{Name: "Distribution", Words: orUnknown(s.Distribution)},
		u.figure("Warmest storage", temperature, s.StorageC),
		{Name: "Markets", Words: listed(s.Markets)},
	}
	return fs
}

func acidFigures(c beverage.AcidClass, u Units) Figures {
	ph := u.between("pH", acidity, c.PH, c.PHLow, c.PHHigh)
	ph.Note = string(c.PHBasis)
	fs := Figures{{Name: "Class", Words: c.Class.String(), Note: c.Note}, ph}
	if c.PredictedPH != nil {
		fs = append(fs, u.figure("pH predicted from the recipe", acidity, c.PredictedPH))
	}
	return append(fs, u.figure("Water activity", same("", 3), c.WaterActivity))
}

func regulated(c beverage.AcidClass) Table {
	t := Table{Columns: columns("market", "its law calls it", "by", "settled")}
	for _, r := range c.RegulatedAs {
		t.Rows = append(t.Rows, []string{string(r.Market), r.Term, r.Rule, settled(r.Argued)})
	}
	return t
}

func settled(argued bool) string {
	if argued {
		return "argued: for the authority to say"
	}
	return "as the text reads"
}

// routeTable names the findings behind each outcome; their words stand in the
// list of one route.
func routeTable(rs []beverage.RouteResult) Table {
	t := Table{Columns: columns("route", "outcome", "because of", "needs")}
	for _, r := range rs {
		t.Rows = append(t.Rows, []string{string(r.Route), r.Outcome.String(), orDash(because(r.Reasons)), orDash(r.Needs)})
	}
	return t
}

func because(rs []beverage.Reason) string {
	var out []string
	for _, r := range rs {
		s := r.ID
		if s == "" {
			s = r.Text
		}
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return strings.Join(out, ", ")
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

func assessmentSheet(a *beverage.Assessment, u Units) Table {
	l := newLedger(a.Input, a.Drink.Name)
	o := Count(a.Findings)
	l.count("stops", o.Stops)
	l.count("reviews", o.Reviews)
	l.figures("answer", answer(a, u)[1:])
	l.figures("drink", described(a.Drink, u))
	l.figures("acid class", acidFigures(a.AcidClass, u))
	for _, r := range a.AcidClass.RegulatedAs {
		l.put(entry{part: "regulated as", name: string(r.Market), answer: r.Term, text: settled(r.Argued), markets: string(r.Market), source: r.Rule})
	}
	l.findings(a.Findings)
	l.gas(a.Carbonation, a.Package, u)
	l.delivered(a.Lethality, u)
	l.protein(a.Protein, u)
	l.routes(a.Routes)
	return l.t
}
