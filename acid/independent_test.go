package acid

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The independent solution: its own reading of the data files, constants by van
// 't Hoff's equation as textbooks write it, plain substitution for ionic strength
// and metals, halving for the pH. It shares A and the ion product of water with
// the package; those have their own tests.

type plainLigand struct {
	charge  float64
	k       func(tK float64) float64         // dissociation to the next species, 0 for the last
	complex [metals]func(tK float64) float64 // nil for none
}

type plainData struct {
	families map[string][]plainLigand
	ions     map[string]float64
	oh       [metals]func(tK float64) float64
}

func csvRows(t checker, path string) []checkRow {
	t.Helper()
	f, err := os.Open(path)
	noError(t, err)
	defer f.Close()
	reader := csv.NewReader(f)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	noError(t, err)
	var rows []checkRow
	for _, line := range lines[1:] {
		r := checkRow{}
		for i, name := range lines[0] {
			r[name] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}

func readPlain(t checker) plainData {
	d := plainData{families: map[string][]plainLigand{}, ions: map[string]float64{}}
	names := map[string][]string{}
	for _, r := range csvRows(t, "data/components.csv") {
		names[r["name"]] = strings.Fields(r["species"])
		for j := range names[r["name"]] {
			d.families[r["name"]] = append(d.families[r["name"]], plainLigand{charge: cell(t, r, "top_charge") - float64(j)})
		}
		if len(names[r["name"]]) == 1 {
			d.ions[r["name"]] = cell(t, r, "top_charge")
			delete(d.families, r["name"])
		}
	}
	for _, r := range csvRows(t, "data/dissociation.csv") {
		pK, dh, dcp := cell(t, r, "pk_25c"), cell(t, r, "dh_kj_per_mol")*1000, cell(t, r, "dcp_j_per_mol_k")
		d.families[r["component"]][int(cell(t, r, "step"))-1].k = textbook(-pK, dh, dcp)
	}
	for _, r := range csvRows(t, "data/functions.csv") {
		a, b, c, dd, e := cell(t, r, "a"), cell(t, r, "b"), cell(t, r, "c"), cell(t, r, "d"), cell(t, r, "e")
		d.families[r["component"]][int(cell(t, r, "step"))-1].k = func(T float64) float64 {
			if r["logarithm"] == "ln" {
				return math.Exp(a + b/T + c*math.Log(T) + dd*T + e/T/T)
			}
			return math.Pow(10, a+b/T+c*math.Log10(T)+dd*T+e/T/T)
		}
	}
	for _, r := range csvRows(t, "data/complexes.csv") {
		m := map[string]int{"calcium": 0, "magnesium": 1}[r["metal"]]
		k := textbook(cell(t, r, "log10k_25c"), cell(t, r, "dh_kj_per_mol")*1000, 0)
		if r["component"] == "hydroxide" {
			d.oh[m] = k
		}
		for j, name := range names[r["component"]] {
			if name == r["ligand"] {
				d.families[r["component"]][j].complex[m] = k
			}
		}
	}
	return d
}

func cell(t checker, r checkRow, name string) float64 {
	v, err := strconv.ParseFloat(r[name], 64)
	noError(t, err)
	return v
}

// textbook is ln K = ln K0 - dH/R (1/T - 1/T0) + dCp/R (T0/T - 1 + ln T/T0).
func textbook(log10K0, dh, dcp float64) func(float64) float64 {
	return func(T float64) float64 {
		const R, T0 = 8.314463, 298.15
		return math.Exp(log10K0*math.Ln10 - dh/R*(1/T-1/T0) + dcp/R*(T0/T-1+math.Log(T/T0)))
	}
}

// plainPH solves s by halving the pH.
func (d plainData) plainPH(s Solution, tC float64) (pH, ionic float64) {
	low, high := -2.0, 16.0
	for range 60 {
		pH = (low + high) / 2
		var q float64
		q, ionic = d.plainCharge(s, tC, pH)
		if q > 0 {
			low = pH
		} else {
			high = pH
		}
	}
	return pH, ionic
}

// plainCharge substitutes ionic strength and free metals until they stand.
func (d plainData) plainCharge(s Solution, tC, pH float64) (q, ionic float64) {
	T, aH := tC+273.15, math.Pow(10, -pH)
	A, kw := DebyeHueckelA(tC), math.Pow(10, -WaterPK(tC))
	ionic = 0.01
	free := [metals]float64{1e-3, 1e-3}
	for range 400 {
		root := math.Sqrt(ionic)
		g := func(z float64) float64 { return math.Pow(10, -A*z*z*root/(1+1.5*root)) }
		h, oh := aH/g(1), kw/aH/g(1)
		q = h - oh
		twoI := h + oh
		var total, bound [metals]float64
		for _, t := range s.Totals {
			if z, ok := d.ions[t.Component]; ok {
				switch t.Component {
				case "calcium":
					total[0] += t.Molality
				case "magnesium":
					total[1] += t.Molality
				default:
					q += z * t.Molality
					twoI += z * z * t.Molality
				}
			}
		}
		for m, f := range free {
			if total[m] == 0 {
				free[m], f = 0, 0
			}
			x := d.oh[m](T) * g(2) * f * oh // g(1)/g(1) cancels
			q += 2*f + x
			twoI += 4*f + x
			bound[m] += x
		}
		for _, t := range s.Totals {
			if family, ok := d.families[t.Component]; ok && t.Molality > 0 {
				d.plainFamily(family, t.Molality, T, aH, free, g, func(z, amount float64) {
					q += z * amount
					twoI += z * z * amount
				}, &bound)
			}
		}
		for _, m := range s.Poly {
			q += m.Poly.ChargePerGram(pH, ionic, tC) * m.GramsPerKgWater / 1000
		}
		still := true
		next := twoI / 2
		still = still && math.Abs(next-ionic) < 1e-13*ionic
		ionic = next
		for m := range free {
			if total[m] > 0 {
				next := total[m] / (1 + bound[m]/free[m])
				next = math.Sqrt(next * free[m]) // damped
				still = still && math.Abs(next-free[m]) < 1e-13*free[m]
				free[m] = next
			}
		}
		if still {
			break
		}
	}
	return q, ionic
}

func (d plainData) plainFamily(family []plainLigand, total, T, aH float64, free [metals]float64,
	g func(float64) float64, take func(z, amount float64), bound *[metals]float64) {
	type part struct {
		z, w  float64
		metal int
	}
	var parts []part
	activity, sum := 1.0, 0.0
	for _, l := range family {
		w := activity / g(l.charge)
		parts = append(parts, part{l.charge, w, -1})
		sum += w
		for m, k := range l.complex {
			if k != nil && free[m] > 0 {
				c := k(T) * activity * free[m] * g(2) / g(l.charge+2)
				parts = append(parts, part{l.charge + 2, c, m})
				sum += c
			}
		}
		if l.k != nil {
			activity *= l.k(T) / aH
		}
	}
	for _, p := range parts {
		amount := total * p.w / sum
		take(p.z, amount)
		if p.metal >= 0 {
			bound[p.metal] += amount
		}
	}
}

func TestAgainstIndependentSolution(t *testing.T) {
	d := readPlain(t)
	check := func(t checker, s Solution, tC float64) {
		t.Helper()
		got, err := Solve(s, tC)
		noError(t, err)
		want, ionic := d.plainPH(s, tC)
		near(t, "pH", got.PH, want, 1e-6)
		near(t, "ionic strength", got.IonicStrength, ionic, 1e-6)
	}
	check(t, Solution{}, 25)
	check(t, twelve(), 25)
	drink := twelve()
	drink.Poly = []Macro{{Poly: testProtein{}, GramsPerKgWater: 66}}
	for _, tC := range []float64{0, 25, 63, 100} {
		check(t, drink, tC)
	}
	rapid.Check(t, func(t *rapid.T) {
		check(t, drawSolution(t, 0.2), rapid.Float64Range(0, 100).Draw(t, "temperature"))
	})
}

// drawSolution draws up to a dozen components, each up to most mol/kg, and a
// protein in one of three.
func drawSolution(t *rapid.T, most float64) Solution {
	var names []string
	for _, c := range Components() {
		names = append(names, c.Name)
	}
	var s Solution
	for _, name := range rapid.SliceOfNDistinct(rapid.SampledFrom(names), 0, 12, rapid.ID[string]).Draw(t, "components") {
		amount := math.Pow(10, rapid.Float64Range(-6, 0).Draw(t, name)) * most
		s.Totals = append(s.Totals, Total{Component: name, Molality: amount})
	}
	if rapid.IntRange(0, 2).Draw(t, "protein") == 0 {
		s.Poly = []Macro{{Poly: testProtein{}, GramsPerKgWater: rapid.Float64Range(0, 200).Draw(t, "g/kg")}}
	}
	return s
}
