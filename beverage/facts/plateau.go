package facts

import (
	"math"

	"posset/beverage/protein"
)

// plateauC is how far below its hottest a drink still counts as held there: what
// the plateau of a record scatters by. Common practice, no source.
const plateauC = 2.0

// Plateau is the hold that the hottest history of the drink comes to: its hottest
// temperature in °C, and the seconds spent within 2 °C of it. False where nothing
// says how hot or how long.
func (f *Facts) Plateau() (tempC, timeS float64, ok bool) {
	tempC = math.Inf(-1)
	for _, history := range f.histories() {
		hot, held := plateau(history)
		if hot > tempC {
			tempC, timeS = hot, held
		}
	}
	return tempC, timeS, timeS > 0
}

func plateau(history []protein.TempPoint) (hotC, heldS float64) {
	hotC = math.Inf(-1)
	for _, p := range history {
		hotC = math.Max(hotC, p.TempC)
	}
	for i := 1; i < len(history); i++ {
		if math.Min(history[i-1].TempC, history[i].TempC) >= hotC-plateauC {
			heldS += math.Max(0, history[i].TimeS-history[i-1].TimeS)
		}
	}
	return hotC, heldS
}

// UnfoldedParts is the share of each heat-labile protein of a part that the hottest
// history of the drink unfolds; nothing where the constants do not hold or nothing
// says how hot the drink gets.
func (f *Facts) UnfoldedParts(part *ProteinPart) []protein.DenaturedPart {
	var worst []protein.DenaturedPart
	high := math.Inf(-1)
	for _, history := range f.histories() {
		d, valid := protein.NewDenaturer(part.Composition, f.heatConditions(part))
		if !valid.OK() {
			return nil
		}
		for _, h := range history {
			d.Add(h.TimeS, h.TempC)
		}
		if all := d.Fraction(); all.Known() && all.High > high {
			high, worst = all.High, d.Parts()
		}
	}
	return worst
}

// ProteinUntold lists what of the protein lies outside the range of every source
// where the drink stands: no rule can speak of it, for or against.
func (f *Facts) ProteinUntold() []string {
	list := []string{}
	for _, name := range f.Protein.Unmade() {
		list = append(list, "the protein of "+name+" is not known")
	}
	if !f.Process.Heats() {
		return list
	}
	u, why := f.unfolding()
	switch {
	case why != "" && f.Protein.HeatLabile():
		list = append(list, "how much whey protein unfolds: "+why)
	case why == "":
		list = append(list, u.extended(f)...)
	}
	return append(list, f.gelUntold()...)
}

// extended tells that the constants are used outside the temperatures at which
// they were measured.
func (u unfolding) extended(f *Facts) []string {
	for _, d := range u.parts {
		for _, h := range f.statedHeat() {
			d.Add(h.TimeS, h.TempC)
		}
		if text := d.Validity().Extended; text != "" {
			return []string{"how much whey protein unfolds: " + text}
		}
	}
	return nil
}

// gelUntold names the proteins about whose gelling on heating nothing is published
// at the drink's pH and salt.
func (f *Facts) gelUntold() []string {
	var list []string
	for _, family := range protein.Families {
		if f.Protein.Of(family).High < minorProteinG {
			continue
		}
		if _, _, ok := protein.GelLimit(family, f.PH.Decides, f.Ions.SaltMM, true); !ok {
			list = append(list, "whether "+string(family)+" protein gels when heated: nothing is published for this pH and salt")
		}
	}
	return list
}
