package law

import (
	"sync"

	"posset/beverage"
)

// Trigger is what in a drink calls for a statement on the label.
type Trigger string

// The triggers. Where a Statement has a bound, it is on the amount named here.
const (
	TriggerSulfite         Trigger = "sulfite" // as SO2 in the finished drink
	TriggerCaffeine        Trigger = "caffeine"
	TriggerAddedCaffeine   Trigger = "added caffeine"
	TriggerGuarana         Trigger = "guarana"
	TriggerSweetener       Trigger = "sweetener"
	TriggerAspartame       Trigger = "aspartame"
	TriggerPolyol          Trigger = "polyol"
	TriggerSorbitol        Trigger = "sorbitol"
	TriggerJuice           Trigger = "juice"
	TriggerUntreatedJuice  Trigger = "untreated juice"
	TriggerPreservative    Trigger = "preservative"
	TriggerProteinEnergy   Trigger = "protein share of energy"
	TriggerHydrolysate     Trigger = "hydrolysed collagen, gelatin or casein"
	TriggerPlantProtein    Trigger = "low-protein plant drink" // its protein
	TriggerChilledLowAcid  Trigger = "chilled low-acid"
	TriggerChilledLowJuice Trigger = "chilled low-acid juice"
	TriggerAlcohol         Trigger = "alcohol"
)

// Statement is one thing a label has to say in a market.
type Statement struct {
	Market  beverage.Market
	Trigger Trigger
	Bound   Bound
	Says    string
	Unless  string // "" when nothing frees from it
	RowID   string
}

var statements = sync.OnceValues(func() ([]Statement, error) {
	return each("statements", func(rec record) (Statement, error) {
		b, err := rec.bound()
		return Statement{Market: beverage.Market(rec.text("market")), Trigger: Trigger(rec.text("trigger")),
			Bound: b, Says: rec.text("says"), Unless: rec.text("unless"), RowID: rec.text("row")}, err
	})
})

// Statements returns what labels have to say in a market. It is what was read
// or recalled, not all that the market asks for.
func Statements(m beverage.Market) []Statement {
	all, _ := statements()
	return keep(all, func(s Statement) bool { return s.Market == m })
}
