package carbonation_test

import (
	"fmt"

	"posset/carbonation"
)

// A drink of 2.6 volumes at the filler and in the warehouse.
func ExampleLiquid_Pressure() {
	for _, tC := range []float64{4, 20, 38} {
		p, err := carbonation.Liquid{}.Pressure(2.6, tC)
		fmt.Printf("%g °C: %.0f kPa absolute %v\n", tC, p, err)
	}
	// Output:
	// 4 °C: 182 kPa absolute <nil>
	// 20 °C: 312 kPa absolute <nil>
	// 38 °C: 497 kPa absolute <nil>
}

// A can in a tunnel pasteurizer, nominal and at its unfavourable end.
func ExamplePack() {
	wall, _ := carbonation.MaterialOf("can")
	pack := carbonation.Pack{
		BrimfulML: 349, FillML: 330, FillTempC: 4, Material: wall,
		HeadspaceGas: carbonation.GasCO2, Volumes: 3.4,
	}
	nominal, _ := pack.At(65)
	worst, _ := pack.Worst(3.3, 65)
	fmt.Printf("%.1f bar, at worst %.1f bar gauge\n", nominal.Gauge/100, worst.Gauge/100)
	// Output: 8.8 bar, at worst 9.5 bar gauge
}
