package report

import (
	"strings"
	"testing"

	"posset/beverage"
)

// Trials, acids and preservatives are shown where the result holds them, and
// nothing is where it does not.
func TestAcidShowsTrialsAndOtherAcids(t *testing.T) {
	r := someAcid()
	plain := text(t, Style{Width: 100}, Acid(r, Metric))
	for _, absent := range []string{"Your own trials", "The same as malic acid", "Undissociated", "Process temperature"} {
		if strings.Contains(plain, absent) {
			t.Errorf("%q is shown without a figure", absent)
		}
	}
	r.MalicPct, r.BenzoicMGPL, r.BenzoicLowMGPL = known(0.473), known(131), known(118)
	r.ProcessC, r.PHProcess = known(66), known(3.35)
	r.Dose[0].LotLow, r.Dose[0].LotHigh = known(2.61), known(3.07)
	r.Bench = &beverage.BenchResult{PHLowBefore: known(3.05), PHHighBefore: known(3.57), LeftoverMMolPL: -0.4, Contradiction: "one of them is off",
		Trials: []beverage.BenchTrial{
			{At: "quince.toml:31", PHRead: 3.41, PHBefore: known(3.31), PHAfter: known(3.39), Residual: known(0.02)},
			{At: "quince.toml:34", PHRead: 3.9, Unused: "no amount is given"},
		},
		Fitted: []beverage.BenchFigure{{Ingredient: "whey", Figure: "own pH", Low: 2.9, High: 3.4, Before: 3.2, After: 3.27}}}
	d := Acid(r, Metric)
	got := text(t, Style{Width: 100}, d)
	for _, want := range []string{"The same as malic acid", "0.473 %", "Undissociated benzoic acid", "118 at its upper end", "pH there, degassed",
		"2.61 to 3.07 to add with other lots", "Your own trials", "The trials were not followed: one of them is off.", "3.05 to 3.57", "quince.toml:31", "3.39", "no amount is given", "2.90 to 3.40"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	rows := 0
	for _, row := range d.Sheet.Rows {
		if row[2] == "trial" || row[2] == "fitted by trials" {
			rows++
		}
	}
	if rows != 4 {
		t.Errorf("%d rows of trials in the sheet, want 4", rows)
	}
}
