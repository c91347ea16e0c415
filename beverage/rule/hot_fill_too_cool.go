package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
	"posset/beverage/quantity"
)

var _ = declare(Rule{
	ID: "hot-fill-too-cool", Level: review, OnRoutes: true,
	Title: "The hot fill is cooler or shorter than published figures ask",
	Means: "In a hot fill the drink heats its own pack. Below the published minimum for its pH the vegetative pathogens are not shown to be killed; below the figures for commercial sterility spoilage is likely. Those figures were measured in vegetables, not in protein drinks.",
	Clear: "Fill hotter or hold longer before cooling, measured at the coldest place of the closed pack, cap and headspace included, as a process authority sets it.",
	Law:   []string{"hot-fill-too-cool.trade", "hot-fill-lethality.trade", "hot-fill-lethality-above-4.1", "hot-fill-fill-temperature", "hot-fill-short-hold.trade", "hot-fill-batch.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route != beverage.HotFill {
			return nil
		}
		band, ok := hotFillBand(f)
		if !ok {
			return nil
		}
		t, known := f.ColdestHotC()
		switch {
		case !known:
			if !f.HotFillStated() {
				return nil
			}
			return []Hit{{Detail: "Neither process.fill_temperature nor process.pack_hold_temperature is given."}}
		case tooCoolForPathogens(f, band, t):
			return []Hit{{Level: at(stop), Row: band.RowID, Route: RulesOut, Detail: pathogenHoldWords(f, band, t),
				Values: Values{"coldest_c": t, "band_ph_high": band.PHHigh}}}
		}
		return belowGuidance(f, band)
	},
})

// belowGuidance holds the filler against the temperature that guidance fills at,
// and the coldest place of the closed pack against the one it is held at.
func belowGuidance(f *facts.Facts, band law.HotFillBand) (hits []Hit) {
	c, p := band.Commercial, f.Drink.Process
	if f.PH.Decides.Known() && f.PH.Decides.High > law.AcidPH() {
		return []Hit{{Detail: fmt.Sprintf("No hot fill is published for a drink above pH %.1f; %s.", law.AcidPH(), phWords(f)), Row: band.RowID}}
	}
	if fill := p.FillTempC; fill.Known && !(fill.V >= c.TempC) {
		row := c.GuidanceRow
		if !(c.GuidanceC >= c.TableC) {
			row = c.TableRow
		}
		hits = append(hits, guidanceHit(f, "filled at", fill.V, c.TempC, row))
	}
	if place := p.PackHoldC; place.Known && !(place.V >= c.GuidanceC) {
		hits = append(hits, guidanceHit(f, "the coldest place of the closed pack at", place.V, c.GuidanceC, c.GuidanceRow))
	}
	if len(hits) == 0 && !p.FillTempC.Known {
		hits = []Hit{{Detail: "No process.fill_temperature is given.", Values: Values{"coldest_c": p.PackHoldC.V}}}
	}
	return hits
}

func guidanceHit(f *facts.Facts, what string, tempC, wantC float64, row string) Hit {
	at, want := "at a pH that is not known", "has no figure"
	if f.PH.Decides.Known() {
		at = fmt.Sprintf("at up to pH %.2f", f.PH.Decides.High)
	}
	if wantC > 0 {
		want = fmt.Sprintf("asks for %.1f °C", wantC)
	}
	return Hit{
		Detail: fmt.Sprintf("%s %.1f °C; guidance for shelf-stable drinks %s %s.", upper(what), tempC, at, want),
		Values: Values{"coldest_c": tempC}, Row: row,
	}
}

// hotFillBand is the band of the upper end of the pH. Above the last one that is
// published, where acid does not hold the drink at all, and where the pH is not
// known, the last one still counts.
func hotFillBand(f *facts.Facts) (law.HotFillBand, bool) {
	high := law.AcidPH()
	if f.PH.Decides.Known() {
		high = min(high, f.PH.Decides.High)
	}
	return law.HotFill(high)
}

// tooCoolForPathogens compares with the published 5-log line where a hold is
// given; without a hold only a temperature below the whole table decides.
func tooCoolForPathogens(f *facts.Facts, band law.HotFillBand, t float64) bool {
	need, published := band.PathogenHoldS(t)
	hold := f.Drink.Process.PackHoldS
	return !published || hold.Known && hold.V < need
}

func pathogenHoldWords(f *facts.Facts, band law.HotFillBand, t float64) string {
	need, published := band.PathogenHoldS(t)
	if !published {
		return fmt.Sprintf("%.1f °C is below the coolest published hot fill, %.1f °C, for up to pH %.1f.", t, band.MinC, band.PHHigh)
	}
	return fmt.Sprintf("%.1f °C held for %s s; 5 log of pathogens at up to pH %.1f takes %s s there.", t, quantity.Number(f.Drink.Process.PackHoldS.V, 3), band.PHHigh, quantity.Number(need, 3))
}
