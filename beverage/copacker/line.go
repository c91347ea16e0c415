// Package copacker reads what co-packers say of their lines and holds a drink
// against them: for each line nothing is missing on paper, or what is missing,
// item by item, with the key that decides. What a line does not say is missing.
package copacker

import "posset/beverage"

// Line is one filling line as its owner describes it. What is not said is
// unknown, and counts as not there.
type Line struct {
	Place          beverage.Place
	Name           beverage.Given[string]
	Plant          beverage.Given[string]
	Markets        beverage.Given[[]beverage.Market]
	Distribution   beverage.Given[[]beverage.Distribution]
	Registrations  beverage.Given[[]string]
	DairyLicence   beverage.Given[bool]
	AlcoholLicence beverage.Given[bool]
	Allergens      beverage.Given[[]string]
	MinimumRunML   beverage.Given[float64]
	Carbonation    Range // volumes of CO2
	HeadspaceGas   beverage.Given[[]beverage.Gas]
	NitrogenDosing beverage.Given[bool]
	AsepticFiller  beverage.Given[bool]
	Particles      beverage.Given[string] // the coarsest: none | pulp | pieces
	ViscosityMPaS  beverage.Given[float64]
	Processes      []Process
	Packs          []Pack
}

// Range is from where to where a line can be set, both ends included.
type Range struct {
	AtLeast, AtMost beverage.Given[float64]
}

// Process is one way in which the line makes a drink keep. Temperatures and
// times are the drink's in a tube, and the medium's in a tunnel or a retort.
type Process struct {
	Place        beverage.Place
	Route        beverage.Given[beverage.Route]
	Classes      beverage.Given[[]string] // acid classes that it is set up and filed for
	HoldC        Range
	HoldS        Range
	FillC        Range
	PackHoldS    Range
	FlowLPerH    Range
	BackKPa      Range // gauge
	PressureMPa  Range
	FilterPoreUM beverage.Given[float64] // the finest
}

// Pack is one kind of pack with the volumes that the line fills into it.
type Pack struct {
	Place  beverage.Place
	Type   beverage.Given[beverage.PackType]
	FillML Range
}

// File is a file of lines.
type File struct {
	Name   string
	SHA256 string
	Lines  []Line
}
