package rule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

// OrganismsLeft lists what the process as described may leave, or let in after
// it, and what could then grow in the drink by its pH, water activity and storage.
// What is not known rules nothing out; gas, little air and preservatives hold
// back and rule nothing out either.
func OrganismsLeft(f *facts.Facts) []beverage.OrganismLeft {
	list := []beverage.OrganismLeft{}
	if f.OnlyWater() {
		return list
	}
	for _, o := range law.Organisms() {
		why := remains(f, o.Form)
		if why == "" || !carried(f, o.Carriers) || !couldGrow(f, o) {
			continue
		}
		source := law.MustGet(o.RowID).Source()
		list = append(list, beverage.OrganismLeft{
			Name: o.Name, Remains: why, Grows: growsWords(o), HeldBack: heldBack(f, o), Control: o.Control, Source: source.Text, Basis: source.Basis,
		})
	}
	return list
}

// remains says why the route leaves a form, or nothing where it does not.
func remains(f *facts.Facts, form law.OrganismForm) string {
	p := f.Process
	sterile := p.Route == beverage.RetortRoute || p.Route == beverage.Aseptic && f.MayBeLowAcid()
	short := f.Records.Target != nil && len(f.Records.Logs) > 0 && f.Records.Outcome != beverage.Meets
	switch {
	case sterile && short && form != law.Cell:
		return "the record does not show the target of the process that would kill it"
	case sterile && form != law.HardSpore:
		return ""
	case sterile:
		return "outlasts a process set against botulinum"
	case form == law.MildSpore && f.ChillControl():
		return ""
	case form != law.Cell:
		return sporeRemains(p)
	case p.KillsInPack(), p.Route == beverage.Aseptic, p.Route == beverage.HighPressure:
		return ""
	case p.Treats():
		return "killed or held by the step, and may come back at a filler or in a pack that is not sterile"
	}
	return "no step of the route kills it"
}

func sporeRemains(p facts.Process) string {
	switch {
	case p.Route == beverage.SterileFiltration:
		return "held by a whole filter, and may come back behind it"
	case p.Route == beverage.HighPressure:
		return "its spores stand the press"
	case p.Heats():
		return "its spores outlast the heat of this route"
	}
	return "no step of the route kills it"
}

func carried(f *facts.Facts, by law.Carriers) bool {
	switch by {
	case law.ByFood:
		return len(f.PathogenCarriers()) > 0 || len(f.PlantMaterial()) > 0
	case law.ByPlant:
		return len(f.PlantMaterial()) > 0
	case law.ByFruit:
		return f.HoldsJuice() || len(f.Recipe.Unknown) > 0
	case law.ByProtein:
		return f.Protein.AtLeast(law.ProteinBotulinumPercent() * 10)
	case law.ByPathogen:
		return len(f.PathogenCarriers()) > 0
	}
	return true
}

// couldGrow is true unless pH, water activity or storage surely lie outside of
// what the group grows in.
func couldGrow(f *facts.Facts, o law.Organism) bool {
	pH, aw, kept := f.PH.Decides, f.WaterActivity, f.Drink.Storage
	switch {
	case pH.Known() && (pH.High < o.PHLow || pH.Low > o.PHHigh):
		return false
	case aw.Known() && aw.High < o.AwLow:
		return false
	case kept.Distribution.V == beverage.Frozen, o.Form == law.HardSpore && f.Cold():
		return false
	}
	return !kept.TempC.Known || kept.TempC.V >= o.FromC
}

func growsWords(o law.Organism) string {
	words := fmt.Sprintf("from pH %.3g", o.PHLow)
	switch {
	case o.PHLow <= 0:
		words = "at any pH"
	case !math.IsInf(o.PHHigh, 1):
		words = fmt.Sprintf("pH %.3g to %.3g", o.PHLow, o.PHHigh)
	}
	words += fmt.Sprintf(", water activity from %.3g", o.AwLow)
	if o.FromC > 0 {
		words += fmt.Sprintf(", from %.3g °C", o.FromC)
	}
	if o.NeedsAir {
		words += ", with air"
	}
	if o.Grows != "" {
		words += "; " + o.Grows
	}
	return words
}

// heldBack tells what of the drink holds a group back: gas, little air, a
// preservative at a pH at which it works.
func heldBack(f *facts.Facts, o law.Organism) []string {
	list := []string{}
	if o.HeldByGas && f.Carbonated() {
		list = append(list, "CO2")
	}
	gas := f.Drink.Package.HeadspaceGas
	if o.NeedsAir && gas.Known && gas.V != beverage.Air {
		list = append(list, "little air under "+string(gas.V))
	}
	if o.HeldByAcid {
		list = append(list, workingPreservatives(f)...)
	}
	return list
}

// workingPreservatives are benzoate and sorbate where the pH surely lies below
// the one above which they hardly work.
func workingPreservatives(f *facts.Facts) []string {
	var names []string
	for substance, ceiling := range map[string]float64{law.Benzoate: law.BenzoateCeilingPH(), law.Sorbate: law.SorbateCeilingPH()} {
		if f.Preserved(substance) && f.PH.Decides.SurelyBelow(ceiling) {
			names = append(names, substance)
		}
	}
	slices.SortFunc(names, strings.Compare)
	return names
}
