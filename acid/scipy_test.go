package acid

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
)

// scipyCase is one solution as testdata/independent.py reads it.
type scipyCase struct {
	Totals  [][2]any `json:"totals"`
	TempC   float64  `json:"temperature_c"`
	Protein float64  `json:"protein"` // g per kg of water
	A       float64  `json:"a"`
	PKW     float64  `json:"pkw"`

	solution Solution
}

func scipyCaseOf(s Solution, tC float64) scipyCase {
	c := scipyCase{TempC: tC, A: DebyeHueckelA(tC), PKW: WaterPK(tC), solution: s, Totals: [][2]any{}}
	for _, t := range s.Totals {
		c.Totals = append(c.Totals, [2]any{t.Component, t.Molality})
	}
	for _, m := range s.Poly {
		c.Protein += m.GramsPerKgWater
	}
	return c
}

// scipyCases are a drink of twelve components, with and without protein, over
// temperature, and drinks drawn at random.
func scipyCases() (list []scipyCase) {
	drink := twelve()
	drink.Poly = []Macro{{Poly: testProtein{}, GramsPerKgWater: 66}}
	for _, tC := range []float64{0, 25, 63, 100} {
		list = append(list, scipyCaseOf(twelve(), tC), scipyCaseOf(drink, tC))
	}
	r, all := rand.New(rand.NewPCG(3, 1)), Components()
	const drawn = 30
	for n := range drawn {
		var s Solution
		for _, i := range r.Perm(len(all))[:2+r.IntN(10)] {
			s.Totals = append(s.Totals, Total{all[i].Name, 0.3 * math.Pow(10, -4*r.Float64())})
		}
		if n%3 == 0 {
			s.Poly = []Macro{{Poly: testProtein{}, GramsPerKgWater: 150 * r.Float64()}}
		}
		list = append(list, scipyCaseOf(s, 100*r.Float64()))
	}
	return list
}

// withScipy is a python that has scipy, or "".
func withScipy() string {
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import scipy.optimize").Run() == nil {
			return python
		}
	}
	return ""
}

// The same equations solved by scipy agree to a millionth of a pH.
func TestAgainstScipy(t *testing.T) {
	python := withScipy()
	if python == "" {
		t.Skip("no python3 with scipy here: the cross-check by scipy is left out")
	}
	cases := scipyCases()
	var groups [][4]float64
	for _, g := range testGroups {
		groups = append(groups, [4]float64{g.mmol, g.pK, g.top, g.dh})
	}
	asked, err := json.Marshal(map[string]any{"folder": "data", "groups": groups, "cases": cases})
	noError(t, err)
	cmd := exec.Command(python, "testdata/independent.py")
	var told bytes.Buffer
	cmd.Stdin, cmd.Stderr = bytes.NewReader(asked), &told
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, told.String())
	}
	var answers []struct{ PH, Ionic float64 }
	noError(t, json.Unmarshal(out, &answers))
	if len(answers) != len(cases) {
		t.Fatalf("%d answers to %d cases", len(answers), len(cases))
	}
	worst := 0.0
	for i, c := range cases {
		got, err := Solve(c.solution, c.TempC)
		noError(t, err)
		what := fmt.Sprintf("case %d, %v at %.0f °C", i, c.Totals, c.TempC)
		near(t, what+": pH", got.PH, answers[i].PH, 1e-6)
		near(t, what+": ionic strength", got.IonicStrength, answers[i].Ionic, 1e-6)
		worst = math.Max(worst, math.Abs(got.PH-answers[i].PH))
	}
	t.Logf("%d solutions, worst difference %.1e pH", len(cases), worst)
}
