package ingredient

import (
	"fmt"
	"math"
	"slices"

	"posset/beverage"
)

// Problem is a figure of an ingredient that cannot be, in one lower-case line.
type Problem struct {
	Name string
	Text string
}

func (p Problem) String() string { return p.Name + ": " + p.Text }

// FromOwn turns the user's own descriptions into entries, each standing alone.
func FromOwn(own []beverage.Ingredient) []Entry {
	out := make([]Entry, 0, len(own))
	for _, o := range own {
		r := Resolved{Entry: Entry{Name: o.Name}}
		r.overlay(o.Described)
		out = append(out, r.Entry)
	}
	return out
}

var checks = []func(Entry) string{badRange, overWhole, metalOverAsh, chlorideUnbalanced, acidityAgainstPH, proteinOverDry}

// Check finds figures that cannot be: outside their range, parts above the
// whole, metals above the ash, chloride without a counter-ion, pH against
// acidity, and more protein than the nitrogen of the dry matter allows.
func Check(entries []Entry) []Problem {
	var out []Problem
	for _, e := range entries {
		for _, check := range checks {
			if text := check(e); text != "" {
				out = append(out, Problem{e.Name, text})
			}
		}
	}
	return out
}

func badRange(e Entry) string {
	for _, f := range fields {
		v := f.of(&e)
		if v.Known() && !(v.Low >= f.least && v.High <= f.most) {
			return fmt.Sprintf("%s %s is outside %g to %g", f.name, inWords(*v), f.least, f.most)
		}
	}
	return ""
}

// least is the low end of a figure, 0 where it is not known: what is surely there.
func least(i beverage.Interval) float64 {
	if !i.Known() {
		return 0
	}
	return i.Low
}

// roundingPercent is what the parts may exceed the whole by, because each is
// rounded or measured by itself.
const roundingPercent = 1.5

func overWhole(e Entry) string {
	if overDry(e) {
		return "" // said by itself
	}
	parts := least(e.Protein) + least(e.Fat) + least(e.Moisture) + least(e.Ash) + max(least(e.Sugars), least(e.Lactose))
	if parts > percent+roundingPercent {
		return fmt.Sprintf("protein, fat, sugars, moisture and ash make %.1f %%: no more than 100 %% can be", parts)
	}
	if e.Sugars.Known() && e.Lactose.Known() && e.Lactose.Low > e.Sugars.High+roundingPercent {
		return fmt.Sprintf("lactose %s %% is more than all sugars, %s %%", inWords(e.Lactose), inWords(e.Sugars))
	}
	if c, p := least(e.Caffeine), e.Polyphenols; p.Known() && c+p.Low > percent {
		return fmt.Sprintf("caffeine and polyphenols make %.1f %%: no more than 100 %% can be", c+p.Low)
	}
	return ""
}

// metalRoundingPercent is what metals may exceed the ash by.
const metalRoundingPercent = 0.5

func metalOverAsh(e Entry) string {
	if !e.Ash.Known() || e.Formula != "" {
		return ""
	}
	metals := least(e.Calcium) + least(e.Magnesium) + least(e.Sodium) + least(e.Potassium)
	if metals > e.Ash.High+metalRoundingPercent {
		return fmt.Sprintf("calcium, magnesium, sodium and potassium make %.2f %%, more than the ash of %s %%", metals, inWords(e.Ash))
	}
	return ""
}

// Equivalents of charge in a gram, as mmol, for one percent by mass: ten over
// the mass of one charge.
const (
	calciumPerPct   = 10 / 20.04
	magnesiumPerPct = 10 / 12.15
	sodiumPerPct    = 10 / 22.99
	potassiumPerPct = 10 / 39.10
	chloridePerPct  = 10 / 35.45
	// A gram of protein takes up 1.13 to 1.3 mmol of acid down to pH 2
	// (beta-lactoglobulin: Cannan, Palmer and Kibrick 1942, recalled).
	proteinTakesPerPct = 1.3 / percent
)

// chlorideUnbalanced: chloride that neither metal nor protein balances is free
// hydrochloric acid, and then the own pH cannot be above 2.5.
func chlorideUnbalanced(e Entry) string {
	const freeMMol, acidPH = 0.5, 2.5
	metals := []beverage.Interval{e.Calcium, e.Magnesium, e.Sodium, e.Potassium}
	if e.Formula != "" || !e.Chloride.Known() || !e.OwnPH.Known() || e.OwnPH.High <= acidPH || slices.ContainsFunc(metals, func(m beverage.Interval) bool { return !m.Known() }) {
		return ""
	}
	balanced := e.Calcium.High*calciumPerPct + e.Magnesium.High*magnesiumPerPct + e.Sodium.High*sodiumPerPct + e.Potassium.High*potassiumPerPct
	if e.Protein.Known() {
		balanced += e.Protein.High * proteinTakesPerPct
	}
	if free := e.Chloride.Low*chloridePerPct - balanced; free > freeMMol {
		return fmt.Sprintf("chloride %s %% is %.1f mmol/g more than calcium, magnesium, sodium, potassium and protein balance: the charge cannot balance at ph %s", inWords(e.Chloride), free, inWords(e.OwnPH))
	}
	return ""
}

// equivalentG is grams per mole of acid hydrogen of the acids that a titratable
// acidity is stated as.
var equivalentG = map[string]float64{
	"citric": 192.12 / 3, "malic": 134.09 / 2, "tartaric": 150.09 / 2, "lactic": 90.08, "acetic": 60.05, "phosphoric": 97.99 / 2, "gluconic": 196.16,
	"fumaric": 116.07 / 2, "oxalic": 90.03 / 2, "quinic": 192.17, "succinic": 118.09 / 2, "adipic": 146.14 / 2, "ascorbic": 176.12,
}

// acidityAgainstPH: free hydrogen ions are part of what titrates, so that an
// acidity below them cannot be; and what is titrated to 8.1 has none above it.
func acidityAgainstPH(e Entry) string {
	if !e.Acidity.Known() || !e.OwnPH.Known() || e.OwnPHAtPercent.Known() && e.OwnPHAtPercent.High < percent {
		return ""
	}
	const gPerKgPerPercent, endPointPH, real = 10, 8.1, 0.05
	if e.OwnPH.Low > endPointPH && e.Acidity.Low > real {
		return fmt.Sprintf("ph %s is above the end point of a titration, 8.1, yet the acidity is %s %%", inWords(e.OwnPH), inWords(e.Acidity))
	}
	g, ok := equivalentG[e.AcidityAs]
	if !ok {
		return ""
	}
	if free := math.Pow(10, -e.OwnPH.High); e.Acidity.High*gPerKgPerPercent/g < free {
		return fmt.Sprintf("ph %s has more free acid than the acidity of %s %% as %s acid", inWords(e.OwnPH), inWords(e.Acidity), e.AcidityAs)
	}
	return ""
}

// proteinOverDry: protein is reckoned from nitrogen, and with the wrong factor
// it comes out above all that is dry.
func proteinOverDry(e Entry) string {
	if !overDry(e) {
		return ""
	}
	return fmt.Sprintf("protein %s %% is more than the dry matter of %.1f %%: is the nitrogen factor right? 6.25 reads collagen and gelatin (5.55) 12.6 %% too high", inWords(e.Protein), percent-least(e.Moisture))
}

func overDry(e Entry) bool {
	return e.Protein.Known() && e.Protein.Low > percent-least(e.Moisture)+roundingPercent
}
