package quantity_test

import (
	"strings"
	"testing"

	"posset/beverage/quantity"
)

func TestErrors(t *testing.T) {
	amount := []quantity.Dimension{quantity.Concentration, quantity.Fraction, quantity.PerServing, quantity.PerVolume, quantity.Molar}
	volume, temperature, pressure := quantity.Volume, quantity.Temperature, quantity.Pressure
	for _, c := range []struct {
		text string
		dims []quantity.Dimension
		want string
	}{
		{"", nil, `"" is empty; write a number and a unit, such as "330 mL"`},
		{"2.4 bar", []quantity.Dimension{pressure}, `"2.4 bar" is neither gauge nor absolute; write "2.4 barg" or "2.4 bara"`},
		{"90 psi", nil, `"90 psi" is neither gauge nor absolute; write "90 psig" or "90 psia"`},
		{"2,5 g/L", amount, `"2,5 g/L" has a comma; write "2.5 g/L"`},
		{"1,000 mg/L", amount, `"1,000 mg/L" has a comma; write "1000 mg/L" or "1.000 mg/L"`},
		{"1.000,5 mL", nil, `"1.000,5 mL" has a comma; write "1000.5 mL"`},
		{"1,000.5 mL", nil, `"1,000.5 mL" has a comma; write "1000.5 mL"`},
		{"1,234,567 mg/L", nil, `"1,234,567 mg/L" has a comma; write "1234567 mg/L"`},
		{",5 g/L", amount, `",5 g/L" has a comma; write ".5 g/L"`},
		{"g, about 5", amount, `"g, about 5" has a comma; write it as "2.8 g/L", "0.9 %" or "12 g/serving", with a point`},
		{"330", []quantity.Dimension{volume}, `"330" has no unit; write "330 mL" or "330 fl oz"`},
		{"93", []quantity.Dimension{temperature}, `"93" has no unit; write "93 C" or "93 F"`},
		{"2.4", []quantity.Dimension{pressure}, `"2.4" has no unit; write "2.4 barg" or "2.4 psig"`},
		{"66", amount, `"66" has no unit; write "66 g/L", "66 %" or "66 g/serving"`},
		{"5", nil, `"5" has no unit; write the unit too, such as "5 mL"`},
		{"330 g", []quantity.Dimension{volume}, `"330 g" is a mass; write a volume such as "330 mL"`},
		{"12 oz", []quantity.Dimension{volume}, `"12 oz" is a mass; write "12 fl oz" if that is meant`},
		{"66 g", amount, `"66 g" is a mass; write per what it is: "66 g/L" or "66 g/serving"`},
		{"2 mL", amount, `"2 mL" is a volume; write per what it is: "2 mL/L"`},
		{"20 meq/L", amount, `"20 meq/L" is a concentration of charge; write it in mmol/L or g/L, for the charge of what is weighed in is not known`},
		{"-5 g/L", amount, `"-5 g/L" is negative; write zero or more`},
		{"-300 C", nil, `"-300 C" is below absolute zero (-273.15 C); write a temperature that can be, such as "4 C"`},
		{"-2 barg", nil, `"-2 barg" is below vacuum; write a gauge pressure above -1.01325 barg`},
		{"-2 bara", nil, `"-2 bara" is negative; write zero or more`},
		{"nan C", []quantity.Dimension{temperature}, `"nan C" is not a finite number; write a temperature such as "93 C"`},
		{"-Inf mL", []quantity.Dimension{volume}, `"-Inf mL" is not a finite number; write a volume such as "330 mL"`},
		{"1e400 mL", nil, `"1e400 mL" is too large a number; write one below 1e12`},
		{"1e12 mL", nil, `"1e12 mL" is too large a number; write one below 1e12`},
		{"1e-400 mL", nil, `"1e-400 mL" is too small a number; write 0, or one above 1e-12`},
		{"0x10 mL", []quantity.Dimension{volume}, `"0x10 mL" has the unknown unit "x10 mL"; write a volume such as "330 mL"`},
		{"1_000 mL", []quantity.Dimension{volume}, `"1_000 mL" has the unknown unit "_000 mL"; write a volume such as "330 mL"`},
		{"1 000 mL", []quantity.Dimension{volume}, `"1 000 mL" has a space inside the number; write "1000 mL"`},
		{"2-3 g/L", amount, `"2-3 g/L" is a range; write one number and its unit`},
		{"2 – 3 g/L", amount, `"2 – 3 g/L" is a range; write one number and its unit`},
		{"93 c", []quantity.Dimension{temperature}, `"93 c" has the unknown unit "c"; write "93 C"`},
		{"2 gl", amount, `"2 gl" has the unknown unit "gl"; write "2 g/L"`},
		{"15 secnds", []quantity.Dimension{quantity.Duration}, `"15 secnds" has the unknown unit "secnds"; write "15 seconds"`},
		{"5 furlong", []quantity.Dimension{volume}, `"5 furlong" has the unknown unit "furlong"; write a volume such as "330 mL"`},
		{"warm", []quantity.Dimension{temperature}, `"warm" does not start with a number; write a temperature such as "93 C"`},
		{"5 \x1b[31mmL", []quantity.Dimension{volume}, `"5 \x1b[31mmL" has the unknown unit "\x1b[31mmL"; write a volume such as "330 mL"`},
		{strings.Repeat("9", 300) + " mL", []quantity.Dimension{volume}, `"` + strings.Repeat("9", 70) + `"... is too long for a quantity; write a volume such as "330 mL"`},
	} {
		_, err := quantity.ParseAs(c.text, c.dims...)
		if err == nil {
			t.Errorf("%q must be refused", c.text)
		} else if err.Error() != c.want {
			t.Errorf("%q\n got %s\nwant %s", c.text, err, c.want)
		}
	}
}

func TestQuoteStaysOnOneShortLine(t *testing.T) {
	for text, want := range map[string]string{
		"a\nb":                  `"a\nb"`,
		"\xff":                  `"\xff"`,
		"\u202e" + "x":          `"\u202ex"`,
		strings.Repeat("é", 99): `"` + strings.Repeat("é", 35) + `"...`,
	} {
		if got := quantity.Quote(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

func TestNearest(t *testing.T) {
	packs := []string{"can", "steel can", "PET bottle", "heat-set PET bottle", "keg"}
	for written, want := range map[string]string{
		"pet bottle":              "PET bottle",
		"PET":                     "",
		"steel":                   "steel can",
		"KEG":                     "keg",
		"cna":                     "can",
		"heatset PET bottle":      "PET bottle|heat-set PET bottle",
		"tin":                     "",
		"tetrahedron":             "",
		"can":                     "", // it is known: nothing nearer to offer
		strings.Repeat("x", 1000): "",
	} {
		if got := strings.Join(quantity.Nearest(written, packs), "|"); got != want {
			t.Errorf("%q: %q, want %q", written, got, want)
		}
	}
}
