package carbonation

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"strings"
	"testing"
)

// agreement is how far the two solutions may lie apart, relatively: what the solvers
// leave, nothing else, since both start from the same published equations.
const agreement = 1e-6

var independentTempsC = []float64{0, 4, 20, 38, 62, 65, 80}

// independentPacks are packs of each kind: under CO2, air and nitrogen, with and
// without a dose, filled cold and hot, carried up, of soft and of stiff walls.
func independentPacks(t *testing.T) map[string]Pack {
	wall := func(name string) Material { return packOf(t, name) }
	return map[string]Pack{
		"can under CO2":              {BrimfulML: 349, FillML: 330, FillTempC: 4, Material: wall("can"), HeadspaceGas: GasCO2, Volumes: 2.5},
		"can, air shut in":           {BrimfulML: 346, FillML: 330, FillTempC: 15, Material: wall("can"), HeadspaceGas: GasAir, Volumes: 2.5},
		"can, nothing said":          {BrimfulML: 371, FillML: 355, FillTempC: 8, Material: wall("can"), Volumes: 3.2},
		"can of protein":             {BrimfulML: 352, FillML: 330, FillTempC: 4, Material: wall("can"), HeadspaceGas: GasNitrogen, Volumes: 1.6, Liquid: Liquid{OtherGPerL: 70}},
		"nitro coffee":               {BrimfulML: 268, FillML: 240, FillTempC: 5, Material: wall("can"), HeadspaceGas: GasNitrogen, NitrogenG: 0.35},
		"bottle, no give":            {BrimfulML: 345, FillML: 330, FillTempC: 2, HeadspaceGas: GasCO2, Volumes: 2.8},
		"glass, up the hill":         {BrimfulML: 350, FillML: 330, FillTempC: 10, Material: wall("glass bottle"), HeadspaceGas: GasAir, Volumes: 2.2, AltitudeM: 2400},
		"PET":                        {BrimfulML: 525, FillML: 500, FillTempC: 4, Material: wall("PET bottle"), HeadspaceGas: GasCO2, Volumes: 4},
		"keg, much headspace":        {BrimfulML: 30000, FillML: 22000, FillTempC: 3, Material: wall("keg"), HeadspaceGas: GasCO2, Volumes: 2.4},
		"hot-filled PET":             {BrimfulML: 525, FillML: 500, FillTempC: 85, Material: wall("heat-set PET bottle"), HeadspaceGas: GasAir},
		"hot-filled PET, dosed":      {BrimfulML: 525, FillML: 500, FillTempC: 85, Material: wall("heat-set PET bottle"), HeadspaceGas: GasAir, NitrogenG: 0.1},
		"still, deaerated, under N2": {BrimfulML: 525, FillML: 500, FillTempC: 20, HeadspaceGas: GasNitrogen, Deaerated: true},
		"still under CO2":            {BrimfulML: 525, FillML: 500, FillTempC: 20, Material: wall("PET bottle"), HeadspaceGas: GasCO2, Deaerated: true},
		"overfilled":                 {BrimfulML: 334, FillML: 330, FillTempC: 4, Material: wall("can"), HeadspaceGas: GasCO2, Volumes: 2},
	}
}

// TestIndependentSolution holds every pack against scipy's solution of the same
// balances in another formulation (testdata/closed_pack.py).
func TestIndependentSolution(t *testing.T) {
	packs := independentPacks(t)
	var names []string
	var asked []map[string]any
	for name, p := range packs {
		names, asked = append(names, name), append(asked, plain(t, p))
	}
	theirs := solvedByScipy(t, asked)
	worst, where := 0.0, ""
	for i, name := range names {
		for j, tC := range independentTempsC {
			s, err := packs[name].At(tC)
			must(t, s, err)
			apart := apartFrom(s, theirs[i][j])
			if !(apart <= agreement) {
				t.Errorf("%s at %g °C: %v kPa, scipy has %v", name, tC, s.Absolute, shownKPa(theirs[i][j]))
			}
			if apart > worst {
				worst, where = apart, fmt.Sprintf("%s at %g °C", name, tC)
			}
		}
	}
	t.Logf("%d packs at %d temperatures; furthest apart by %.1g of the pressure: %s", len(packs), len(independentTempsC), worst, where)
}

// apartFrom is the relative distance; a pack that is full for one of the two only is
// infinitely far.
func apartFrom(s State, theirs *float64) float64 {
	switch {
	case s.LiquidFull && theirs == nil:
		return 0
	case s.LiquidFull || theirs == nil:
		return math.Inf(1)
	}
	return math.Abs(float64(s.Absolute)/(*theirs) - 1)
}

func shownKPa(v *float64) string {
	if v == nil {
		return "liquid-full"
	}
	return fmt.Sprint(*v)
}

// plain is a pack in numbers, for whoever knows nothing of this package.
func plain(t *testing.T, p Pack) map[string]any {
	place, err := AmbientKPa(p.AltitudeM)
	must(t, place, err)
	return map[string]any{
		"brimful_l": p.BrimfulML / 1000, "fill_l": p.FillML / 1000, "fill_c": p.FillTempC, "gas": p.HeadspaceGas,
		"nitrogen_g": p.NitrogenG, "volumes": p.Volumes, "deaerated": p.Deaerated, "other_kg_per_l": p.Liquid.OtherGPerL / 1000,
		"expansion_per_k": p.Material.ExpansionPerK, "give_per_bar": p.Material.GivePerBar.Nominal,
		"sealing_kpa": max(place, StandardAtmosphere), "standing_kpa": min(place, StandardAtmosphere), "temps_c": independentTempsC,
	}
}

// pythonWithScipy skips the test where there is none. The system's own python often
// has scipy where one that stands before it on the path has not.
func pythonWithScipy(t *testing.T) string {
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import scipy.optimize").Run() == nil {
			return python
		}
	}
	t.Skip("needs python3 with scipy: not on this machine")
	return ""
}

func solvedByScipy(t *testing.T, asked []map[string]any) [][]*float64 {
	in, err := json.Marshal(asked)
	must(t, in, err)
	cmd := exec.Command(pythonWithScipy(t), "testdata/closed_pack.py")
	var stderr strings.Builder
	cmd.Stdin, cmd.Stderr = bytes.NewReader(in), &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("closed_pack.py: %v: %s", err, stderr.String())
	}
	var solved [][]*float64
	if err := json.Unmarshal(out, &solved); err != nil {
		t.Fatalf("closed_pack.py wrote no list: %v", err)
	}
	return solved
}
