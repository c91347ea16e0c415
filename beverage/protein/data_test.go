package protein

import "testing"

// Rows and a column's sum of each table: a figure lost or changed by accident
// shows here; one changed on purpose is entered here too.
func TestDataFilesAreWhole(t *testing.T) {
	for _, c := range []struct {
		file, column string
		rows         int
		sum          float64
	}{
		{"pk.csv", "glu", 2, 9.14},
		{"enthalpy.csv", "kj_per_mol", 12, 242},
		{"residues.csv", "residue_g_mol", 20, 2377.7206},
		{"kinetics.csv", "ea_low_kj_mol", 3, 813.73},
		{"heat_limits.csv", "value", 9, 54.6},
		{"colloid.csv", "calcium_mid", 7, 3.39},
		{"particles.csv", "high", 2, 2.39},
		{"viscosity.csv", "high", 9, 100.65},
		{"solubility.csv", "high", 59, 4250},
		{"intakes.csv", "value", 11, 6250},
		{"scoring.csv", "mg_per_g", 27, 1111.1},
		{"amino_acids.csv", "mg_per_g", 198, 7591.6},
		{"nitrogen.csv", "factor", 5, 30.68},
	} {
		rows, err := readTable(c.file)
		works(t, err)
		equal(t, c.rows, len(rows), c.file+": rows")
		sum := 0.0
		for _, r := range rows {
			v, err := r.number(c.column)
			works(t, err)
			sum += v
		}
		near(t, c.sum, sum, 0.01, c.file+": sum of "+c.column)
	}
}

func TestSharesAddUp(t *testing.T) {
	for _, id := range IDs() {
		low, mid, high, of := 0.0, 0.0, 0.0, 0.0
		for _, p := range composition(t, id).Parts() {
			holds(t, p.Share.Low <= p.Share.Mid && p.Share.Mid <= p.Share.High, "%s: share %v", p.Name, p.Share)
			low, mid, high, of = low+p.Share.Low, mid+p.Share.Mid, high+p.Share.High, of+p.MassFraction()
		}
		near(t, 1, mid, 0.001, id+": middle shares")
		near(t, 1, of, 1e-9, id+": mass fractions")
		holds(t, low <= 1 && high >= 1, "%s: shares from %g to %g cannot make a whole", id, low, high)
	}
}

// An unknown protein has no figure that could be taken for a good one.
func TestUnknownProteinFlattersNothing(t *testing.T) {
	var c *Composition
	equal(t, FamilyUnknown, c.Family(), "family")
	equal(t, FamilyUnknown, c.Origin(), "origin")
	equal(t, "", c.ID()+c.Source().Text, "words")
	equal(t, 0, len(c.Parts()), "parts")
	equal(t, false, c.Isoelectric().Known(), "isoelectric pH")
	equal(t, false, c.Main().Isoelectric().Known(), "isoelectric pH of the main protein")
	equal(t, false, c.Hydrolysis().Known(), "hydrolysis")
	holds(t, c.HeatLabileFraction() != c.HeatLabileFraction(), "labile share %v", c.HeatLabileFraction())
	charge := c.Main().NetCharge(3, 0.1, 25)
	holds(t, charge != charge, "charge %v", charge)
	_, ok := c.AminoAcids()
	equal(t, false, ok, "amino acids")
	_, _, _, ok = c.NitrogenFactor()
	equal(t, false, ok, "nitrogen factor")
	_, ok = c.Colloid(6.7)
	equal(t, false, ok, "colloid")
	equal(t, 0, len(WindowsFor(TopicGelation, c.Family())), "gel windows")
}
