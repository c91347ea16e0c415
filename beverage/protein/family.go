package protein

// Family is the kind of protein a stability window speaks of. The zero value is
// an unknown protein, about which no window says anything.
type Family string

// The families. A hydrolysate keeps the family of what it was cut from as Origin.
const (
	FamilyUnknown     Family = ""
	FamilyWhey        Family = "whey"
	FamilyCasein      Family = "casein"
	FamilyMilk        Family = "milk" // casein and whey as in milk
	FamilyHydrolysate Family = "hydrolysate"
	FamilyCollagen    Family = "collagen" // peptides: no gel
	FamilyGelatin     Family = "gelatin"  // gels cold
	FamilyPlant       Family = "plant"
	FamilyEgg         Family = "egg"
)

// Families lists every known family.
var Families = []Family{FamilyWhey, FamilyCasein, FamilyMilk, FamilyHydrolysate, FamilyCollagen, FamilyGelatin, FamilyPlant, FamilyEgg}

// HoldsCasein tells whether the family curds where casein does.
func (f Family) HoldsCasein() bool { return f == FamilyCasein || f == FamilyMilk }
