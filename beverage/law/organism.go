package law

import (
	"math"
	"sync"
)

// OrganismForm is what an organism is as it stands before the process: what outlasts
// what.
type OrganismForm string

// The forms.
const (
	Spore     OrganismForm = "spore"
	MildSpore OrganismForm = "mild spore" // 90 °C for 10 min and more kill it
	HardSpore OrganismForm = "hard spore" // outlasts an F0 set for Clostridium botulinum
	AcidSpore OrganismForm = "acid spore"
	Ascospore OrganismForm = "ascospore"
	Cell      OrganismForm = "cell"
)

// Carriers are what of a drink brings an organism.
type Carriers string

// The carriers.
const (
	ByAnything Carriers = "any"
	ByFood     Carriers = "food"
	ByPlant    Carriers = "plant"
	ByFruit    Carriers = "fruit"
	ByProtein  Carriers = "protein"
	ByPathogen Carriers = "pathogen"
)

// Organism is a group of organisms that may grow in drinks, with the ends between
// which it is known to.
type Organism struct {
	ID, Name   string
	Form       OrganismForm
	PHLow      float64
	PHHigh     float64 // +Inf where no upper end matters for a drink
	AwLow      float64
	FromC      float64 // °C
	NeedsAir   bool
	HeldByGas  bool // CO2 holds it back
	HeldByAcid bool // benzoate and sorbate hold it back
	Carriers   Carriers
	Grows      string // a word on its growth
	Control    string
	RowID      string
}

var organisms = sync.OnceValues(func() ([]Organism, error) {
	return each("organisms", func(rec record) (Organism, error) {
		o := Organism{
			ID: rec.text("id"), Name: rec.text("name"), Form: OrganismForm(rec.text("form")), Carriers: Carriers(rec.text("carriers")),
			NeedsAir: rec.text("air") == "needs", HeldByGas: rec.text("gas") == "held", HeldByAcid: rec.text("preserved") == "held",
			Grows: rec.text("grows"), Control: rec.text("control"), RowID: rec.text("row"),
		}
		for col, to := range map[string]*float64{"ph_low": &o.PHLow, "ph_high": &o.PHHigh, "aw_low": &o.AwLow, "from_c": &o.FromC} {
			var err error
			if *to, err = rec.numberOrNaN(col); err != nil {
				return o, err
			}
		}
		if math.IsNaN(o.PHHigh) {
			o.PHHigh = math.Inf(1)
		}
		return o, nil
	})
})

// Organisms returns the groups in the order of the table.
func Organisms() []Organism {
	all, _ := organisms()
	return all
}
