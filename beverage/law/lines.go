package law

// The figures that rules ask for by name, each from its row. They panic only
// where the table has lost the figure, which the tests find.

// LowAcidPH is the legal line: a food above it may be low-acid, pH.
func LowAcidPH() float64 { return figure("us-low-acid", "pH") }

// LowAcidWaterActivity is the line above which a food may be low-acid.
func LowAcidWaterActivity() float64 { return figure("us-low-acid", "water activity") }

// AcidPH is the highest pH of an acid or acidified food.
func AcidPH() float64 { return figure("us-acid-food", "pH") }

// TomatoPH is the line below which tomato products are not low-acid in the US.
func TomatoPH() float64 { return figure("us-tomato", "pH") }

// CanadaTomatoPH is the pH, after heating, at or below which Canada frees tomato
// products from commercial sterility.
func CanadaTomatoPH() float64 { return figure("ca-tomato", "pH") }

// UKLowAcidPH is the low-acid line of UK heat-preservation practice.
func UKLowAcidPH() float64 { return figure("uk-low-acid", "pH") }

// MeterPH is the pH above which the law asks for a meter.
func MeterPH() float64 { return figure("us-ph-method-above-4", "pH") }

// AlcoholPercent is the alcohol by volume from which the US calls a drink
// alcoholic.
func AlcoholPercent() float64 { return figure("us-alcohol-half-percent", "alcohol") }

// BotulinumF0 is the customary least botulinum cook, minutes at 121.1 °C.
func BotulinumF0() float64 { return figure("organism-target-low.botulinum", "F0") }

// BotulinumFloorF0 is the older least figure, twelve reductions at D 0.21
// minutes: below it the customary reckoning is not met by anybody's figure.
func BotulinumFloorF0() float64 { return figure("organism-target-low.botulinum", "F0 floor") }

// ProteinBotulinumPH is the pH above which toxin in anaerobic protein has been
// published although the drink is below the legal line.
func ProteinBotulinumPH() float64 { return figure("protein-acid-botulinum.science", "pH") }

// ProteinBotulinumPercent is the protein from which that is held against a
// drink, percent by mass.
func ProteinBotulinumPercent() float64 { return figure("protein-acid-botulinum.science", "protein") }

// ChilledMaxC is the warmest storage of a chilled low-acid drink, °C.
func ChilledMaxC() float64 { return figure("uk-chilled-botulinum", "storage") }

// ChilledMaxDays is the life beyond which a chilled low-acid drink needs a
// published control of non-proteolytic C. botulinum.
func ChilledMaxDays() float64 { return figure("uk-chilled-botulinum", "life") }

// BotulinumFloorC is the temperature below which non-proteolytic C. botulinum
// is not known to grow, °C.
func BotulinumFloorC() float64 { return figure("chilled-botulinum-growth.science", "growth minimum") }

// ProteolyticFloorC is the temperature below which proteolytic C. botulinum is
// not known to grow, °C.
func ProteolyticFloorC() float64 {
	return figure("chilled-botulinum-growth.science", "growth minimum, proteolytic")
}

// CanadaChilledC is what Canada calls refrigerated for a low-acid food, °C.
func CanadaChilledC() float64 { return figure("ca-low-acid", "refrigeration") }

// ListeriaPH is the pH at or below which ready-to-eat food is taken not to let
// Listeria grow.
func ListeriaPH() float64 { return figure("eu-listeria", "pH") }

// ListeriaWaterActivity is the water activity with the same effect.
func ListeriaWaterActivity() float64 { return figure("eu-listeria", "water activity") }

// ListeriaDays is the life below which the same holds, days.
func ListeriaDays() float64 { return figure("eu-listeria", "shelf life") }

// JuiceReductions is the log10 reduction of the pertinent pathogen in juice.
func JuiceReductions() float64 { return figure("juice-five-log.us", "reduction") }

// GradeAProteinPercent and GradeAMilkPercent are the two tests, both by mass,
// of a Grade A milk product.
func GradeAProteinPercent() float64 { return figure("milk-grade-a.us", "milk protein") }

// GradeAMilkPercent is the share of milk or milk products of the second test.
func GradeAMilkPercent() float64 { return figure("milk-grade-a.us", "milk or milk product") }

// SensorToleranceC is the accuracy that low-acid rules ask of the thermometer.
func SensorToleranceC() float64 { return figure("us-thermometer", "accuracy") }

// ThermophileC is the storage temperature from which thermophiles matter, °C.
func ThermophileC() float64 { return figure("thermophile.trade", "warm storage") }

// SpoilageF0 is the commercial F0 customary against spoilage, minutes.
func SpoilageF0() float64 { return figure("organism-target-low.botulinum", "spoilage F0") }

// AcidSpoilerC is the storage temperature from which Alicyclobacillus grows.
func AcidSpoilerC() float64 { return figure("acid-spore-former.trade", "growth temperature") }

// ButyricPH is the pH from which butyric anaerobes grow in acid food.
func ButyricPH() float64 { return figure("butyric-anaerobe.trade", "pH") }

// NearLimitPH is the pH from which a drink that relies on acid counts as near
// the legal line.
func NearLimitPH() float64 { return figure("ph-near-limit.trade", "pH") }

// AcidKillPH is the pH at or below which vegetative pathogens have been shown to
// die in acid alone, given time.
func AcidKillPH() float64 { return figure("acid-kill.science", "pH") }

// SulfiteDeclared is the sulfite, mg/kg as SO2, from which it is declared.
func SulfiteDeclared() float64 { return figure("us-sulfite-label", "sulfite in the finished food") }

// HeatSetPETC is what a heat-set bottle is rated for, °C.
func HeatSetPETC() float64 { return figure("hot-fill-package.trade", "heat-set limit high") }

// PETSoftensC is where ordinary PET softens, °C.
func PETSoftensC() float64 { return figure("hot-fill-package.trade", "glass transition") }

// SporeKillC is the reference temperature below which no target speaks of the
// spores of a low-acid drink, °C.
func SporeKillC() float64 { return figure("target-basis.science", "spore reference temperature") }

// HotFillPracticeC is the low end of the customary fill temperature, °C: custom
// without a source.
func HotFillPracticeC() float64 { return figure("hot-fill-too-cool.trade", "fill temperature low") }

// BenzoateCeilingPH is the pH above which benzoate hardly preserves.
func BenzoateCeilingPH() float64 {
	return figure("preservative-ph.trade", "usual ceiling for benzoate")
}

// SorbateCeilingPH is the same of sorbate; of two published figures the lower.
func SorbateCeilingPH() float64 {
	return figure("preservative-ph.trade", "stricter ceiling for sorbate")
}

// BenzoicPKa and SorbicPKa give the undissociated share of the two acids.
func BenzoicPKa() float64 { return figure("preservative-ph.trade", "pKa benzoic") }

// SorbicPKa is the pKa of sorbic acid.
func SorbicPKa() float64 { return figure("preservative-ph.trade", "pKa sorbic") }

// EquilibrationHours is the customary wait before the pH is read, hours.
func EquilibrationHours() float64 { return figure("ph-24h.trade", "wait") }

// MeterLowC and MeterHighC bound the temperature at which a pH is read, °C.
func MeterLowC() float64 { return figure("us-ph-measurement", "temperature low") }

// MeterHighC is the upper of the two.
func MeterHighC() float64 { return figure("us-ph-measurement", "temperature high") }

// ThermometerTestYears is the longest time between tests of the thermometer.
func ThermometerTestYears() float64 { return figure("us-thermometer", "test interval") }

// SterileFilterUM is the coarsest pore of a sterilizing filter, µm.
func SterileFilterUM() float64 {
	return figure("sterile-filtration-protein.trade", "sterilizing grade")
}

// ProteinEnergyPercent is the share of energy from protein above which the US
// asks for a statement on drinks for weight loss or supplementation.
func ProteinEnergyPercent() float64 {
	return figure("us-protein-label", "share of energy from protein")
}

// SweetGPerL is the sugar, g/L, from which osmotolerant yeasts have the field to
// themselves.
func SweetGPerL() float64 { return figure("sweet.trade", "sugars") }

// figure is the single figure of a row that is always there.
func figure(row, name string) float64 {
	v, ok := MustGet(row).Value(name)
	if !ok {
		panic("law: row " + row + " has no single figure " + name)
	}
	return v
}
