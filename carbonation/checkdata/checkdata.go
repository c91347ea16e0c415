// Package checkdata holds the published figures that package carbonation is
// checked against, as CSV with a source on each row.
//
//	checks.csv   solubility, real gas, vapour, density, pressure
//	packs.csv    pressures of one closed pack at two temperatures
package checkdata

import "embed"

// Files holds the CSV files by their names.
//
//go:embed *.csv
var Files embed.FS
