package thermal_test

import (
	"fmt"

	"posset/thermal"
)

// Lethal rates by decades, as the lecture on thermal process calculation,
// www.scribd.com/document/637547421, prints them: one z is a factor of ten.
func ExampleReference_LethalRate() {
	for _, tC := range []float64{101.1, 111.1, 121.1, 131.1} {
		fmt.Printf("%.1f °C: %.4g\n", tC, thermal.F0.LethalRate(tC))
	}
	// Output:
	// 101.1 °C: 0.01
	// 111.1 °C: 0.1
	// 121.1 °C: 1
	// 131.1 °C: 10
}

// Four isothermal stays of a UHT plant, its ramps neglected: seminar sheet on
// lethality, es.scribd.com/document/437890704, problem 2, prints 24.55, 246.05,
// 232.87 and 31.05 s, together 534.52 s.
func ExampleReference_Piece() {
	total := 0.0
	for _, stay := range []struct{ tC, holdS float64 }{{135, 1}, {142, 2}, {140, 3}, {130, 4}} {
		worth := thermal.F0.Piece(stay.holdS, stay.tC, stay.tC)
		total += worth
		fmt.Printf("%g s at %g °C: %.2f s\n", stay.holdS, stay.tC, worth)
	}
	fmt.Printf("together %.2f s\n", total)
	// Output:
	// 1 s at 135 °C: 24.55 s
	// 2 s at 142 °C: 246.05 s
	// 3 s at 140 °C: 232.87 s
	// 4 s at 130 °C: 31.05 s
	// together 534.52 s
}

// Readings every five minutes: course exercise on lethality,
// es.scribd.com/document/423874786, adds up the rates at each and prints F0
// 21.69 min. Straight lines between the readings give 3 % less: what the steps
// across the cooling drop had added.
func ExampleReference_Lethality() {
	readingsF := []float64{140, 140, 140, 140, 163, 185, 201, 213, 224, 229.4, 234.5, 238, 241, 243.5, 245, 246.3, 247.3, 247, 245.2, 223.5, 175, 153}
	celsius := func(tF float64) float64 { return (tF - 32) / 1.8 }
	basis, err := thermal.NewReference(celsius(250), 18/1.8)
	if err != nil {
		fmt.Println(err)
		return
	}
	const stepMin = 5
	var points []thermal.Point
	sum := 0.0
	for i, tF := range readingsF {
		points = append(points, thermal.Point{TimeS: float64(i) * stepMin * 60, TempC: celsius(tF)})
		sum += stepMin * basis.LethalRate(celsius(tF))
	}
	fmt.Printf("sum of rates %.2f min, integral %.2f min\n", sum, basis.Lethality(points))
	// Output: sum of rates 21.69 min, integral 20.98 min
}

// Twelve decimal reductions of Clostridium botulinum at D 0.21 min: Teixeira,
// lecture slides on thermal processing, 2.52 min.
func ExampleOrganism_MinutesFor() {
	o, _ := thermal.FindOrganism("Clostridium botulinum")
	fmt.Printf("F0 %.2f min\n", o.MinutesFor(12))
	// Output: F0 2.52 min
}

// 10 s at 135 °C on the scales of UHT milk: B* of at least 1 and C* of at most 1
// are asked for (Kessler 1981, from memory).
func ExampleFindIndex() {
	stay := []thermal.Point{{TimeS: 0, TempC: 135}, {TimeS: 10, TempC: 135}}
	for _, name := range []string{"F0", "B*", "C*"} {
		i, _ := thermal.FindIndex(name)
		fmt.Printf("%s %.3f\n", name, i.Of(i.Reference.Lethality(stay)))
	}
	// Output:
	// F0 4.091
	// B* 0.990
	// C* 0.328
}
