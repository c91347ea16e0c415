package facts

import (
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/law"
)

// antifoamEntry is the library's entry; whatever silicone goes by another name
// resolves to it or shows it by one of the stems.
const antifoamEntry = "silicone antifoam"

var antifoamStems = []string{"antifoam", "anti-foam", "defoam", "siloxane", "simethicone", "silicone"}

// Antifoam is the dimethylpolysiloxane of the drink over all antifoams in it, and
// whether there is one. A preparation without a stated strength counts as pure,
// since nobody said that it is not; it is told in unsaid.
func (f *Facts) Antifoam() (a Additive, unsaid, found bool) {
	sum := beverage.Point(0, beverage.Predicted)
	a.Substance = law.Antifoam
	for _, l := range f.Recipe.Lines {
		if !isAntifoam(l) {
			continue
		}
		strength := l.StrengthPercent
		if !strength.Known() {
			strength, unsaid = pureSilicone, true
		}
		a.Names = append(a.Names, l.Line.Name)
		sum = sum.Plus(l.Share(strength).Scale(1000))
	}
	a.AsAdded, a.AsAcid = sum, sum
	return a, unsaid, len(a.Names) > 0
}

// pureSilicone stands in for a strength: emulsions are sold at 10 to 30 %, oils
// and compounds at 100 % (trade, from memory).
var pureSilicone = beverage.Interval{Low: 10, Mid: 100, High: 100, Basis: beverage.Library}

func isAntifoam(l Line) bool {
	if l.Found {
		return l.Name == antifoamEntry
	}
	name := strings.ToLower(l.Line.Name)
	return slices.ContainsFunc(antifoamStems, func(stem string) bool { return strings.Contains(name, stem) })
}
