package report

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func line(t *testing.T, v any) string {
	t.Helper()
	var b strings.Builder
	if err := NDJSON(&b, v); err != nil {
		t.Fatal(err)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func TestJSONOfFigures(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{
		{0.1 + 0.2, "0.3"}, {3.14159265, "3.14159"}, {123456789, "123457000"}, {math.Copysign(0, -1), "0"}, {1e-9, "1e-09"}, {4.6, "4.6"},
		{math.NaN(), "null"}, {math.Inf(1), "null"}, {math.Inf(-1), "null"}, {math.MaxFloat64, "1.79769e+308"},
	} {
		if got := line(t, c.v); got != c.want {
			t.Errorf("%v: got %s, want %s", c.v, got, c.want)
		}
	}
}

func TestJSONOfWhatIsUnknown(t *testing.T) {
	got := line(t, beverage.AcidClass{PH: known(math.NaN())})
	want := `{"class":"undecided","ph":null,"ph_low":null,"ph_high":null,"ph_basis":null,"ph_predicted":null,"water_activity":null,"note":"","regulated_as":[]}`
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if got := line(t, beverage.Finding{ID: "x"}); !strings.Contains(got, `"markets":[],"values":{},`) {
		t.Errorf("lists and maps are missing in %s", got)
	}
}

func TestJSONEscapesWhatATerminalObeys(t *testing.T) {
	if got, want := line(t, "a<b>\x1b\u009b\u202e\U000e0001\xff"), `"a<b>\u001b\u009b\u202e\udb40\udc01\ufffd"`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestJSONRefusesWhatIsNoResult(t *testing.T) {
	type ring struct {
		Next any `json:"next"`
	}
	loop := &ring{}
	loop.Next = loop
	for _, c := range []struct {
		v    any
		want string
	}{
		{make(chan int), "a result cannot hold a chan"},
		{map[int]int{1: 1}, "a result cannot hold a map by int"},
		{loop, "result nests deeper than 64"},
	} {
		if err := NDJSON(&strings.Builder{}, c.v); err == nil || err.Error() != c.want {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
}

// A result without floats reads back as encoding/json would have written it.
func TestJSONAgreesWithEncodingJSON(t *testing.T) {
	v := beverage.ProteinResult{Schema: beverage.ProteinSchema, Behaviour: []beverage.ProteinBehaviour{}, Heat: beverage.HeatPairs{Pairs: []beverage.HeatPair{}, Notes: []string{}}, Missing: []string{"<&>"}, Cautions: []string{"x"},
		ProteinState: beverage.ProteinState{GPerL: known(12.5), Flags: []beverage.ProteinFlag{{ID: "a", Level: beverage.Review, Text: "t", Source: "s", Basis: beverage.Seen}},
			Components: []beverage.ProteinComponent{}}, ChargeCurve: []beverage.ChargePoint{{PH: 3, NetCharge: -2}}}
	theirs, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var want, got any
	if err := json.Unmarshal(theirs, &want); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(line(t, v)), &got); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %v\nwant %v", got, want)
	}
}

func TestFiguresReadBackToSixDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, s := rapid.Float64().Draw(t, "f"), rapid.String().Draw(t, "s")
		var b strings.Builder
		if err := JSON(&b, map[string]any{"f": f, s: s}); err != nil {
			t.Fatal(err)
		}
		var back map[string]any
		if err := json.Unmarshal([]byte(b.String()), &back); err != nil {
			t.Fatalf("%v in %s", err, b.String())
		}
		if g, ok := back["f"].(float64); s != "f" && (!ok || math.Abs(g-f) > 5e-6*math.Abs(f)+math.SmallestNonzeroFloat64) {
			t.Fatalf("%v became %v", f, back["f"])
		}
	})
}
