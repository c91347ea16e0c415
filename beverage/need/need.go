// Package need says what target a process route would need for a drink: which
// organism or which published time and temperature decides, and by whose rule.
package need

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
	"posset/thermal"
)

// Need is the target a route would need, in words, with its source. It is what
// published figures ask at least; a process authority sets the real one.
type Need struct {
	Text  string
	RowID string
	hold  func(tC float64) (holdS float64) // nil: no figure in time and temperature
}

// Source is the row the need rests on.
func (n Need) Source() beverage.Source { return law.MustGet(n.RowID).Source() }

// For works out what the route of the facts would need.
func For(f *facts.Facts) Need {
	switch r := f.Process.Route; {
	case r.Sterilizes():
		return sterilizing(f)
	case r == beverage.HotFill:
		return hotFill(f)
	case r == beverage.HighPressure:
		return Need{Text: fmt.Sprintf("a validated reduction of %.0f log of the pertinent pathogen in this drink", law.JuiceReductions()), RowID: "juice-five-log.us"}
	case f.Process.Heats() && f.MayBeLowAcid() && !f.Cold():
		return notEnough()
	case r == beverage.ExtendedShelfLife:
		return extended()
	case f.Process.Heats():
		return pasteurizing(f)
	}
	return Need{Text: "no heat target", RowID: "us-acidified-thermal"}
}

// notEnough: no pasteurization holds a low-acid drink that is not kept cold.
func notEnough() Need {
	return Need{Text: fmt.Sprintf("a pH of %.1f or below, measured: no pasteurization holds a low-acid drink at ambient temperature", law.AcidPH()), RowID: "us-low-acid"}
}

// sterilizing: a drink that may be low-acid needs the botulinum figure; one
// that is surely acid may be filled aseptically after an acid process.
func sterilizing(f *facts.Facts) Need {
	if f.MayBeLowAcid() || f.Process.Route == beverage.RetortRoute {
		text := fmt.Sprintf("F0 of at least %.0f min (12 log of Clostridium botulinum take %.2f), in practice more against spoilage spores", law.BotulinumF0(), law.BotulinumFloorF0())
		return Need{text, "organism-target-low.botulinum", minutesAt(law.BotulinumF0(), thermal.F0)}
	}
	return pasteurizing(f)
}

func hotFill(f *facts.Facts) Need {
	band, ok := law.HotFill(f.PH.Decides.High)
	if !ok || !f.PH.Decides.Known() {
		return Need{Text: "a pH of 4.6 or below, measured", RowID: "us-acidified-thermal"}
	}
	text := fmt.Sprintf("F of %.2g min at %.1f °C, z %.1f C°, in the coldest place of the closed pack (5 log of pathogens, up to pH %.1f)", band.F, band.TrefC, band.ZC, band.PHHigh)
	if c := band.Commercial; c.TempC > 0 {
		text += fmt.Sprintf("; commercial fills are at %.0f °C", c.TempC)
		if c.HoldHighS > 0 {
			text += ", held " + spanWords(c.HoldLowS, c.HoldHighS)
		}
	}
	return Need{text, band.RowID, pathogens(band)}
}

func extended() Need {
	for _, s := range law.Schedules(law.FoodUltraPasteurize, beverage.US) {
		return Need{s.String() + " and a clean filler, kept cold to the end of life", s.RowID, stay(s)}
	}
	return Need{Text: "a heat process for long chilled life, kept cold", RowID: "us-ultra-pasteurized"}
}

// pasteurizing takes the hot-fill figure for acidified drinks, and the juice line
// for the rest; milk has lines of its own in each market, and a chilled drink that
// may be low-acid needs a control of spores beside whatever kills its cells.
func pasteurizing(f *facts.Facts) Need {
	n := cells(f)
	if f.MayBeLowAcid() && f.Cold() {
		n.Text += "; and against non-proteolytic Clostridium botulinum 90 °C for 10 min or its equal, or a life of at most 10 days at 8 °C"
		n.RowID, n.hold = "uk-chilled-botulinum", nil
	}
	return n
}

// cells is what kills the vegetative pathogens of the drink.
func cells(f *facts.Facts) Need {
	if n, ok := milk(f); ok {
		return n
	}
	if band, ok := law.HotFill(f.PH.Decides.High); ok && f.PH.Decides.Known() && f.Class != beverage.Acid {
		return Need{fmt.Sprintf("F of %.2g min at %.1f °C, z %.1f C° (5 log of pathogens, up to pH %.1f)", band.F, band.TrefC, band.ZC, band.PHHigh), band.RowID, pathogens(band)}
	}
	if f.HoldsJuice() && f.In(beverage.US) {
		return Need{Text: fmt.Sprintf("%.0f log of the pertinent pathogen in the plant that packs", law.JuiceReductions()), RowID: "juice-five-log.us"}
	}
	return Need{Text: fmt.Sprintf("%.0f log of the pertinent pathogen", law.JuiceReductions()), RowID: "five-log-vegetative.trade"}
}

// spanWords tells a hold in minutes where it is long, and once where both ends
// are equal.
func spanWords(lowS, highS float64) string {
	unit, per := "s", 1.0
	if lowS >= 120 {
		unit, per = "min", 60
	}
	if lowS == highS {
		return fmt.Sprintf("%.3g %s", lowS/per, unit)
	}
	return fmt.Sprintf("%.3g to %.3g %s", lowS/per, highS/per, unit)
}
