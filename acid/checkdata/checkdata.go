// Package checkdata holds the published figures that package acid is checked
// against, as CSV with a header of comments and a source on each row or in that
// header. Compositions are pairs of component and mol per kg of water.
//
//	ph_standards.csv          primary and secondary pH standards, 0 to 50 °C
//	mixtures.csv              measured pH of mixtures and of single acids
//	ideal_malate.csv          charge balance with all activity coefficients 1
//	water.csv                 Debye-Hückel slope and ion product of water
//	water_activity.csv        sugars and salt in water
//	carbonic.csv              pH of water with CO2, with and without calcite
//	saturation.csv            solutions in equilibrium with a solid
//	titratable_examples.csv   acidity by the formula of AOAC 942.15
//	titratable_factors.csv    its grams of acid per milliequivalent of base
//	undissociated.csv         share of uncharged benzoic and sorbic acid
package checkdata

import "embed"

// Files holds the CSV files by their names.
//
//go:embed *.csv
var Files embed.FS
