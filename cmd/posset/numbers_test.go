package main

import (
	"math"
	"testing"
)

func TestSugarAsTheTradeWritesIt(t *testing.T) {
	for _, c := range []struct {
		text          string
		want, allowed float64
	}{
		{"80 g/L", 80, 0},
		{"10 Brix", 103.81, 0.05}, // ICUMSA sucrose table, 1.0381 kg/L at 10 % and 20 °C; from memory
		{"10 %", 103.81, 0.05},
		{"0 Brix", 0, 0},
	} {
		got, err := sugarGPerL(c.text)
		if err != nil || !(math.Abs(got-c.want) <= c.allowed) {
			t.Errorf("%s: got %v, %v, want %v", c.text, got, err, c.want)
		}
	}
	if _, err := sugarGPerL("120 Brix"); err == nil || err.Error() != `"120 Brix" is more than all of it; write "80 g/L" or "8 Brix"` {
		t.Errorf("got %v", err)
	}
}

func TestBareNumbersAreHeldInTheirRange(t *testing.T) {
	read := bareNumber("a pH", leastPH, mostPH)
	for _, s := range []string{"", "NaN", "Inf", "-0.1", "14.1", "3,2", "3.2 pH"} {
		if v, err := read(s); err == nil {
			t.Errorf("%q became %v", s, v)
		}
	}
	if v, err := read(" 3.2 "); err != nil || v != 3.2 {
		t.Errorf("got %v, %v", v, err)
	}
}

func TestAHeadingMayHoldAnEqualsSign(t *testing.T) {
	got, err := rolesOf([]string{"T=1=Product", "Retort = retort"})
	if err != nil || got["T=1"] != "product" || got["Retort"] != "retort" || len(got) != 2 {
		t.Errorf("got %v, %v", got, err)
	}
	if _, err := rolesOf([]string{"A=product", "A=retort"}); err == nil || err.Error() != `--role: "A" is given two roles, product and retort` {
		t.Errorf("got %v", err)
	}
}
