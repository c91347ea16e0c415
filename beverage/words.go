// Package beverage is posset's vocabulary: the drink as somebody described it,
// the intervals its figures travel in, and the words an assessment may use. It
// decides nothing; zero values are always the ones that do not flatter a drink.
package beverage

import "fmt"

// Outcome is the answer to "was the target delivered".
type Outcome int

const (
	CannotTell Outcome = iota // a path that forgets to decide lands here
	FallsShort                // even the record taken at its word is below the target
	Meets                     // the credited value is at or above the target
)

// Against holds a credited value and the value taken at its word against a
// target, all in one unit. An unknown value (nil) never decides for the drink.
func Against(word, credited *float64, target float64) Outcome {
	switch {
	case credited != nil && *credited >= target:
		return Meets
	case word != nil && *word < target:
		return FallsShort
	}
	return CannotTell
}

// Worse returns the outcome that counts when both were reached: any shortfall
// decides, then any doubt.
func (o Outcome) Worse(p Outcome) Outcome {
	if o == FallsShort || p == FallsShort {
		return FallsShort
	}
	return min(o, p)
}

func (o Outcome) String() string {
	return [...]string{"cannot tell", "falls short", "meets"}[o]
}

// MarshalText writes the outcome's words.
func (o Outcome) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// Fit says whether a process route is ruled out for a drink.
type Fit int

const (
	FitUnknown Fit = iota
	DoesNotFit
	Fits // only: not ruled out by what was given
)

func (f Fit) String() string {
	return [...]string{"cannot tell", "does not fit", "fits"}[f]
}

// MarshalText writes the fit's words.
func (f Fit) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// Level is how much a finding asks of the reader.
type Level int

const (
	Stop   Level = iota // do not make or ship as described
	Review              // a qualified person must look
	Note
)

func (l Level) String() string {
	return [...]string{"stop", "review", "note"}[l]
}

// MarshalText writes the level's word.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// Class is the acid class, which is chemistry: the line is 4.6 in every market.
type Class int

const (
	Undecided Class = iota
	LowAcid
	Acidified
	Acid
	Outside // alcohol, low water activity, or nothing but water and gas
)

func (c Class) String() string {
	return [...]string{"undecided", "low-acid", "acidified", "acid", "outside"}[c]
}

// MarshalText writes the class's word.
func (c Class) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// Basis says how well a figure or a rule is known.
type Basis string

const (
	Seen           Basis = "seen"            // stood in a text that was read
	Memory         Basis = "memory"          // recalled, not checked
	CommonPractice Basis = "common practice" // a fact of the trade without source
	Computed       Basis = "computed"        // worked out from other figures
)

// Market is a jurisdiction whose rules speak.
type Market string

// The markets whose rules are held.
const (
	US    Market = "US"
	CA    Market = "CA"
	EU    Market = "EU"
	UK    Market = "UK"
	ANZ   Market = "ANZ"
	Codex Market = "Codex"
)

// Markets lists every market in the order in which they are told.
var Markets = []Market{US, CA, EU, UK, ANZ, Codex}

// Route is a way of making the drink keep.
type Route string

// The routes of the trade.
const (
	HotFill           Route = "hot fill"
	Tunnel            Route = "tunnel pasteurization"
	Flash             Route = "flash pasteurization"
	ExtendedShelfLife Route = "extended shelf life"
	Aseptic           Route = "aseptic"
	RetortRoute       Route = "retort"
	HighPressure      Route = "high pressure"
	ColdFill          Route = "cold fill"
	SterileFiltration Route = "sterile filtration"
	NoProcess         Route = "none"
)

// Routes lists every route in the order in which they are told.
var Routes = []Route{HotFill, Tunnel, Flash, ExtendedShelfLife, Aseptic, RetortRoute, HighPressure, ColdFill, SterileFiltration, NoProcess}

// Sterilizes tells whether the route is one that can make a low-acid drink
// commercially sterile. The unknown route does not.
func (r Route) Sterilizes() bool { return r == Aseptic || r == RetortRoute }

// Distribution is how the pack travels and is sold.
type Distribution string

// Refrigerated means stored, shipped and sold cold; all else counts as warm.
const (
	Ambient      Distribution = "ambient"
	Refrigerated Distribution = "refrigerated"
	Frozen       Distribution = "frozen"
)

// PackType is a kind of pack.
type PackType string

// The packs of the trade.
const (
	Can             PackType = "can"
	SteelCan        PackType = "steel can"
	AluminiumBottle PackType = "aluminium bottle"
	Glass           PackType = "glass bottle"
	PET             PackType = "PET bottle"
	HeatSetPET      PackType = "heat-set PET bottle"
	PP              PackType = "PP bottle"
	HDPE            PackType = "HDPE bottle"
	Carton          PackType = "carton"
	Pouch           PackType = "pouch"
	Cup             PackType = "cup"
	Keg             PackType = "keg"
)

// PackTypes lists every pack.
var PackTypes = []PackType{Can, SteelCan, AluminiumBottle, Glass, PET, HeatSetPET, PP, HDPE, Carton, Pouch, Cup, Keg}

// Gas is what fills the headspace.
type Gas string

// The gases of the trade.
const (
	Air      Gas = "air"
	Nitrogen Gas = "nitrogen"
	CO2      Gas = "CO2"
	Vacuum   Gas = "vacuum"
)

// SoldAs is how the drink is sold.
type SoldAs string

// Rules take the stricter of this and the ingredients.
const (
	SoldAsWater     SoldAs = "water"
	SoldAsJuice     SoldAs = "juice"
	SoldAsTea       SoldAs = "tea"
	SoldAsCoffee    SoldAs = "coffee"
	SoldAsMilk      SoldAs = "milk"
	SoldAsPlant     SoldAs = "plant"
	SoldAsFermented SoldAs = "fermented"
)

// Kind is what an ingredient is for.
type Kind string

// The kinds an ingredient may have.
const (
	KindProtein      Kind = "protein"
	KindAcid         Kind = "acid"
	KindSalt         Kind = "salt"
	KindSugar        Kind = "sugar"
	KindPolyol       Kind = "polyol"
	KindSweetener    Kind = "sweetener"
	KindJuice        Kind = "juice"
	KindFibre        Kind = "fibre"
	KindGum          Kind = "gum"
	KindStabilizer   Kind = "stabilizer"
	KindPreservative Kind = "preservative"
	KindMineral      Kind = "mineral"
	KindVitamin      Kind = "vitamin"
	KindExtract      Kind = "extract"
	KindActive       Kind = "active"
	KindFlavour      Kind = "flavour"
	KindColour       Kind = "colour"
	KindFat          Kind = "fat"
	KindEmulsifier   Kind = "emulsifier"
	KindAid          Kind = "aid"
	KindOther        Kind = "other"
)

// Kinds lists every kind.
var Kinds = []Kind{KindProtein, KindAcid, KindSalt, KindSugar, KindPolyol, KindSweetener, KindJuice, KindFibre, KindGum, KindStabilizer, KindPreservative, KindMineral, KindVitamin, KindExtract, KindActive, KindFlavour, KindColour, KindFat, KindEmulsifier, KindAid, KindOther}

// Place is where a value was written: file, line (0 unknown) and key.
type Place struct {
	File string
	Line int
	Key  string
}

func (p Place) String() string {
	switch {
	case p.Line > 0 && p.Key != "":
		return fmt.Sprintf("%s:%d: %s", p.File, p.Line, p.Key)
	case p.Key != "":
		return fmt.Sprintf("%s: %s", p.File, p.Key)
	}
	return p.File
}
