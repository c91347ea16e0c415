package protein

import (
	"fmt"
	"math"
	"sync"

	"posset/beverage"
)

// branch is an Arrhenius line: ln k = lnK0 - eaOverR/T.
type branch struct{ lnK0, eaOverR float64 }

func (b branch) lnRate(inverseKelvin float64) float64 { return b.lnK0 - b.eaOverR*inverseKelvin }

// kinetics is the two-range kinetics of one protein: unfolding limits it below the
// break point, aggregation above, and the slower of the two decides.
type kinetics struct {
	order     float64
	low, high branch
	measuredC Range
	spread    float64 // factor on the rate, either way
}

// lnRate returns ln k, k in 1/s, at tC °C.
func (k *kinetics) lnRate(tC float64) float64 {
	inverseKelvin := 1 / (zeroC + tC)
	return min(k.low.lnRate(inverseKelvin), k.high.lnRate(inverseKelvin))
}

// left is the native share after dose, the integral of k over time.
//
//	(C/C0)^(1-n) = 1 + (n-1) dose, and exp(-dose) for n = 1
func (k *kinetics) left(dose float64) float64 {
	if k.order == 1 {
		return math.Exp(-dose)
	}
	return math.Pow(1+(k.order-1)*dose, 1/(1-k.order))
}

// heatData is what the data files say of heat.
type heatData struct {
	kinetics map[string]*kinetics
	limits   map[string]float64
	source   beverage.Source // of the rate constants
	measured Range           // °C
}

// RateConstants says where the rate constants of heat come from, and at which
// temperatures, in °C, they were measured.
func RateConstants() (source beverage.Source, measuredC Range) {
	d, err := heat()
	if err != nil {
		return beverage.Source{}, Any
	}
	return d.source, d.measured
}

var heat = sync.OnceValues(readHeat)

func readHeat() (heatData, error) {
	d := heatData{kinetics: map[string]*kinetics{}, limits: map[string]float64{}}
	rows, err := readTable("kinetics.csv")
	if err != nil {
		return d, err
	}
	for _, r := range rows {
		if d.kinetics[r["chain"]], err = r.kinetics(); err != nil {
			return d, fmt.Errorf("kinetics.csv: %q: %w", r["chain"], err)
		}
		d.source, d.measured = r.source(), d.kinetics[r["chain"]].measuredC
	}
	if rows, err = readTable("heat_limits.csv"); err != nil {
		return d, err
	}
	for _, r := range rows {
		if d.limits[r["name"]], err = r.number("value"); err != nil {
			return d, fmt.Errorf("heat_limits.csv: %q: %w", r["name"], err)
		}
	}
	return d, nil
}

func (r row) kinetics() (*kinetics, error) {
	var v [8]float64
	for i, heading := range []string{"order", "ln_k0_low", "ea_low_kj_mol", "ln_k0_high", "ea_high_kj_mol", "measured_from_c", "measured_to_c", "spread"} {
		n, err := r.number(heading)
		if err != nil {
			return nil, err
		}
		v[i] = n
	}
	const joules = 1000
	return &kinetics{order: v[0], low: branch{v[1], v[2] * joules / gasConstantJ},
		high: branch{v[3], v[4] * joules / gasConstantJ}, measuredC: Range{v[5], v[6]}, spread: v[7]}, nil
}
