package spec_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

const forms = `"F0 6 min", "F 12 min at 93.3 C, z 8.9 C", "15 PU", "15 s at 72 C" or "5 log Alicyclobacillus acidoterrestris"`

func TestParseTarget(t *testing.T) {
	for text, want := range map[string]beverage.Target{
		"F0 6 min":                               {Minutes: 6, TrefC: 121.1, ZC: 10},
		" F0  2.52 min ":                         {Text: "F0 2.52 min", Minutes: 2.52, TrefC: 121.1, ZC: 10},
		"F0 180 s":                               {Minutes: 3, TrefC: 121.1, ZC: 10},
		"F 12 min at 93.3 C, z 8.9 C":            {Minutes: 12, TrefC: 93.3, ZC: 8.9},
		"F 12 min at 212 F, z 18 F":              {Minutes: 12, TrefC: 100, ZC: 10},
		"F 1 h 30 min at 80 C z 10 C":            {Minutes: 90, TrefC: 80, ZC: 10},
		"15 PU":                                  {Minutes: 15, TrefC: 60, ZC: 7},
		"15PU":                                   {Minutes: 15, TrefC: 60, ZC: 7},
		"15 s at 72 C":                           {Kind: beverage.TargetStay, StayS: 15, TrefC: 72},
		"2 min at 185 F":                         {Kind: beverage.TargetStay, StayS: 120, TrefC: 85},
		"5 log Alicyclobacillus acidoterrestris": {Kind: beverage.TargetReductions, Logs: 5, Organism: "Alicyclobacillus acidoterrestris"},
		"5-log Listeria monocytogenes":           {Kind: beverage.TargetReductions, Logs: 5, Organism: "Listeria monocytogenes"},
	} {
		if want.Text == "" {
			want.Text = text
		}
		if got, err := spec.ParseTarget(text); err != nil || got != want {
			t.Errorf("%q: %+v (%v), want %+v", text, got, err, want)
		}
	}
}

func TestTargetErrors(t *testing.T) {
	written := "; a target is written " + forms
	for text, want := range map[string]string{
		"":                               `"" is not a target; write ` + forms,
		"6 min":                          `"6 min" is not a target; write ` + forms,
		"f0 6 min":                       `"f0 6 min" is not a target; write ` + forms,
		"F0":                             `"F0" is not a target; write ` + forms,
		"F121 6 min":                     `"F121 6 min" is not a target; write ` + forms,
		"F 12 min at 93.3 C":             `"F 12 min at 93.3 C" is not a target; write ` + forms,
		"F0 six min":                     `"F0 six min" is not a target: "six min" does not start with a number; write a time such as "15 s"` + written,
		"F0 6":                           `"F0 6" is not a target: "6" has no unit; write "6 s" or "6 min"` + written,
		"F0 6,5 min":                     `"F0 6,5 min" is not a target: "6,5 min" has a comma; write "6.5 min"` + written,
		"F 12 min at 93.3, z 8.9 C":      `"F 12 min at 93.3, z 8.9 C" is not a target: "93.3" has no unit; write "93.3 C" or "93.3 F"` + written,
		"F 12 min at 93.3 C, z 8.9":      `"F 12 min at 93.3 C, z 8.9" is not a target: "8.9" has no unit; write "8.9 C" or "8.9 F"` + written,
		"F 12 min at 93.3 C, z 0 C":      `"F 12 min at 93.3 C, z 0 C" has a basis out of range; write a temperature from -30 to 250 °C, and a z above 0`,
		"F 12 min at 93.3 C, z -8 C":     `"F 12 min at 93.3 C, z -8 C" has a basis out of range; write a temperature from -30 to 250 °C, and a z above 0`,
		"F0 0 min":                       `"F0 0 min" has a time out of range; write a time above 0`,
		"0 PU":                           `"0 PU" has a time out of range; write a time above 0`,
		"-3 PU":                          `"-3 PU" is not a target: "-3 min" is negative; write zero or more` + written,
		"15 s at 720 C":                  `"15 s at 720 C" has a time or temperature out of range; write a time above 0 and a temperature from -30 to 250 °C`,
		"0 s at 72 C":                    `"0 s at 72 C" has a time or temperature out of range; write a time above 0 and a temperature from -30 to 250 °C`,
		"15 s at 72":                     `"15 s at 72" is not a target: "72" has no unit; write "72 C" or "72 F"` + written,
		"15 g at 72 C":                   `"15 g at 72 C" is not a target: "15 g" is a mass; write a time such as "15 s"` + written,
		"0 log Listeria":                 `"0 log Listeria" has no number of decimal reductions that can be; write one above 0, such as "5 log Listeria"`,
		"five log Listeria":              `"five log Listeria" has no number of decimal reductions that can be; write one above 0, such as "5 log Listeria"`,
		"5 log":                          `"5 log" is not a target; write ` + forms,
		"F0 6 min\x07":                   `"F0 6 min\a" is not a target; write ` + forms,
		"F0 " + strings.Repeat("6", 300): `"F0 ` + strings.Repeat("6", 67) + `"... is not a target; write ` + forms,
	} {
		if got, err := spec.ParseTarget(text); err == nil || err.Error() != want {
			t.Errorf("%q: %+v\n got %v\nwant %s", text, got, err, want)
		}
	}
}

func TestParseTargetAt(t *testing.T) {
	bare, err := spec.ParseTargetAt(" 6 min", 93.3, 8.9)
	if want := (beverage.Target{Text: "6 min", Minutes: 6, TrefC: 93.3, ZC: 8.9}); err != nil || bare != want {
		t.Errorf("%+v %v", bare, err)
	}
	whole, err := spec.ParseTargetAt("15 PU", 93.3, 8.9)
	if err != nil || whole.TrefC != 60 {
		t.Errorf("%+v %v", whole, err)
	}
	for text, want := range map[string]string{
		"6":       `"6" is not a target: "6" has no unit; write "6 s" or "6 min"; a target is written "6 min" or ` + forms,
		"6,5 min": `"6,5 min" is not a target: "6,5 min" has a comma; write "6.5 min"; a target is written "6 min" or ` + forms,
		"0 min":   `"0 min" has a time out of range; write a time above 0`,
		"6 g":     `"6 g" is not a target: "6 g" is a mass; write a time such as "15 s"; a target is written "6 min" or ` + forms,
		"F0 x":    `"F0 x" is not a target: "x" does not start with a number; write a time such as "15 s"; a target is written ` + forms,
		"soon":    `"soon" is not a target; write ` + forms,
	} {
		if got, err := spec.ParseTargetAt(text, 121.1, 10); err == nil || err.Error() != want {
			t.Errorf("%q: %+v\n got %v\nwant %s", text, got, err, want)
		}
	}
}

// A basis written in Fahrenheit is the same target as in Celsius.
func TestTargetInFahrenheit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minutes := rapid.Float64Range(0.01, 1000).Draw(t, "minutes")
		trefC := rapid.Float64Range(50, 150).Draw(t, "tref")
		zC := rapid.Float64Range(3, 30).Draw(t, "z")
		n := func(v float64) string { return quantity.Number(v, 0) }
		metric, err1 := spec.ParseTarget("F " + n(minutes) + " min at " + n(trefC) + " C, z " + n(zC) + " C")
		us, err2 := spec.ParseTarget("F " + n(minutes) + " min at " + n(trefC*1.8+32) + " F, z " + n(zC*1.8) + " F")
		if err1 != nil || err2 != nil || math.Abs(metric.TrefC-us.TrefC) > 1e-9 || math.Abs(metric.ZC-us.ZC) > 1e-9 || metric.Minutes != us.Minutes {
			t.Fatalf("%+v and %+v (%v, %v)", metric, us, err1, err2)
		}
	})
}
