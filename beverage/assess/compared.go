package assess

import (
	"strconv"
	"strings"

	"posset/beverage"
)

// answer-in-words and figure of an assessment, in the order in which they are
// told; a name that two assessments share is compared.
type (
	namedAnswer struct{ what, is string }
	namedFigure struct {
		what string
		is   *float64
	}
)

func answersOf(a *beverage.Assessment) []namedAnswer {
	list := []namedAnswer{
		{"class", a.AcidClass.Class.String()},
		{"pH basis", string(a.AcidClass.PHBasis)},
		{"exit status of posset check", strconv.Itoa(ExitStatus(a, false))},
		{"route stated", a.Drink.Route},
		{"stated route needs", neededBy(a)},
		{"what may remain and grow", organismNames(a)},
	}
	for _, r := range a.AcidClass.RegulatedAs {
		list = append(list, namedAnswer{"regulated as, " + string(r.Market), r.Term})
	}
	if a.Package != nil {
		list = append(list, namedAnswer{"pressure against the rating", a.Package.Outcome.String()})
	}
	if a.Lethality != nil {
		list = append(list, namedAnswer{"target", a.Lethality.Target}, namedAnswer{"target delivered", a.Lethality.Outcome.String()})
		for _, l := range a.Lethality.Logs {
			list = append(list, namedAnswer{"record " + l.File + ", sha256", l.SHA256})
		}
	}
	return list
}

func organismNames(a *beverage.Assessment) string {
	var names []string
	for _, o := range a.Organisms {
		names = append(names, o.Name)
	}
	return strings.Join(names, "; ")
}

func neededBy(a *beverage.Assessment) string {
	for _, r := range a.Routes {
		if string(r.Route) == a.Drink.Route {
			return r.Needs
		}
	}
	return ""
}

func routesOf(a *beverage.Assessment) []namedAnswer {
	var list []namedAnswer
	for _, r := range a.Routes {
		list = append(list, namedAnswer{string(r.Route), r.Outcome.String()})
	}
	return list
}

func figuresOf(a *beverage.Assessment) []namedFigure {
	list := []namedFigure{
		{"ph", a.AcidClass.PH}, {"ph_low", a.AcidClass.PHLow}, {"ph_high", a.AcidClass.PHHigh}, {"ph_predicted", a.AcidClass.PredictedPH},
		{"water_activity", a.AcidClass.WaterActivity}, {"density_g_per_ml", a.Drink.DensityGML},
	}
	if g := a.Carbonation; g != nil {
		list = append(list, namedFigure{"volumes", g.Volumes}, namedFigure{"volumes_end_of_shelf_life", g.VolumesEnd})
	}
	if p := a.Package; p != nil {
		list = append(list, namedFigure{"rating_gauge_kpa", p.RatingGaugeKPa})
		for _, s := range p.Pressure {
			if s.At != "table" {
				list = append(list, namedFigure{s.At + "_gauge_kpa_high", s.GaugeKPaHigh})
			}
		}
	}
	list = append(list, proteinFigures(a.Protein)...)
	if a.Lethality != nil {
		for _, l := range a.Lethality.Logs {
			list = append(list, namedFigure{l.File + ": credited_minutes", slowestCredit(l)})
		}
	}
	return list
}

func proteinFigures(p *beverage.ProteinState) []namedFigure {
	if p == nil {
		return nil
	}
	s := p.Serving
	return []namedFigure{
		{"protein_g_per_l", p.GPerL}, {"protein_g_per_serving", p.GPerServing}, {"net_charge", p.NetCharge}, {"denatured_fraction", p.DenaturedFraction},
		{"calcium_mg", s.CalciumMG}, {"leucine_g", s.LeucineG}, {"essential_amino_acids_g", s.EssentialAminoG}, {"caffeine_mg", s.CaffeineMG},
	}
}

// slowestCredit is the least that a product probe of a record is credited; nil
// where one is not known.
func slowestCredit(l beverage.LogResult) *float64 {
	var least *float64
	for _, p := range l.Probes {
		switch {
		case p.Role != "product":
		case p.CreditedMinutes == nil:
			return nil
		case least == nil || *p.CreditedMinutes < *least:
			least = p.CreditedMinutes
		}
	}
	return least
}

// answerChanges are the answers that differ; one that only one side has is empty
// on the other.
func answerChanges(before, after []namedAnswer) []AnswerChange {
	list := []AnswerChange{}
	now := map[string]string{}
	for _, x := range after {
		now[x.what] = x.is
	}
	was := map[string]bool{}
	for _, x := range before {
		was[x.what] = true
		if now[x.what] != x.is {
			list = append(list, AnswerChange{x.what, beverage.Text(x.is), beverage.Text(now[x.what])})
		}
	}
	for _, x := range after {
		if !was[x.what] && x.is != "" {
			list = append(list, AnswerChange{x.what, "", beverage.Text(x.is)})
		}
	}
	return list
}

func figureChanges(before, after []namedFigure) []FigureChange {
	list := []FigureChange{}
	now := map[string]*float64{}
	for _, x := range after {
		now[x.what] = x.is
	}
	was := map[string]bool{}
	for _, x := range before {
		was[x.what] = true
		if y := now[x.what]; !sameFigure(x.is, y) {
			list = append(list, FigureChange{x.what, x.is, y})
		}
	}
	for _, x := range after {
		if !was[x.what] && x.is != nil {
			list = append(list, FigureChange{x.what, nil, x.is})
		}
	}
	return list
}

func sameFigure(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}
