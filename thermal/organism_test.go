package thermal

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOrganismsAreWhole(t *testing.T) {
	list, err := readOrganisms(organismsCSV)
	require.NoError(t, err)
	require.Len(t, list, 24)
	var sum Organism
	for _, o := range list {
		sum.TrefC, sum.DLow, sum.DHigh = sum.TrefC+o.TrefC, sum.DLow+o.DLow, sum.DHigh+o.DHigh
		sum.ZLow, sum.ZHigh, sum.MinC, sum.MaxC = sum.ZLow+o.ZLow, sum.ZHigh+o.ZHigh, sum.MinC+o.MinC, sum.MaxC+o.MaxC
		assert.Contains(t, []string{"hazard", "spoilage", "indicator"}, o.Class, o.Name)
		for _, basis := range []string{o.Basis, o.ZBasis, o.RangeBasis} {
			assert.Contains(t, []string{"seen", "memory", "computed", "assumed"}, basis, o.Name)
		}
	}
	want := Organism{TrefC: 2179.8, DLow: 89.9302, DHigh: 484.9552, ZLow: 161.74, ZHigh: 241.22, MinC: 1961.6, MaxC: 2359}
	for _, c := range [][2]float64{
		{sum.TrefC, want.TrefC}, {sum.DLow, want.DLow}, {sum.DHigh, want.DHigh}, {sum.ZLow, want.ZLow},
		{sum.ZHigh, want.ZHigh}, {sum.MinC, want.MinC}, {sum.MaxC, want.MaxC},
	} {
		assert.InDelta(t, c[1], c[0], 1e-9)
	}
}

// published is one figure as its source gives it; 0 where it gives none.
type published struct {
	organism, basis              string
	tC, dLow, dHigh, zLow, zHigh float64
}

func readPublished(t *testing.T) []published {
	file, err := os.Open("testdata/published.csv")
	require.NoError(t, err)
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Len(t, lines, 95)
	var list []published
	for _, l := range lines[1:] {
		p := published{organism: l[0], basis: l[8]}
		for i, v := range []*float64{&p.tC, &p.dLow, &p.dHigh, &p.zLow, &p.zHigh} {
			if l[1+i] != "" {
				*v, err = strconv.ParseFloat(l[1+i], 64)
				require.NoError(t, err)
			}
		}
		list = append(list, p)
	}
	return list
}

// TestNoPublishedSurvivorIsMoreResistant holds every published D and z against
// the spread its organism is credited by: inside the range that is credited, no
// source may give a longer D than the bound implies.
func TestNoPublishedSurvivorIsMoreResistant(t *testing.T) {
	const rounding = 0.005 // a printed D of three digits
	for _, p := range readPublished(t) {
		o, ok := FindOrganism(p.organism)
		require.True(t, ok, p.organism)
		if p.zLow > 0 {
			assert.GreaterOrEqual(t, p.zLow, o.ZLow, p.organism)
			assert.LessOrEqual(t, p.zHigh, o.ZHigh, p.organism)
		}
		if rate := o.Bound().LethalRate(p.tC); p.dHigh > 0 && rate > 0 {
			assert.LessOrEqual(t, p.dHigh*(1-rounding), o.DHigh/rate, "%s at %g °C", p.organism, p.tC)
		}
	}
}

// TestSpreadsArePublished holds each end that claims to be seen against the
// figures of the sources.
func TestSpreadsArePublished(t *testing.T) {
	list := readPublished(t)
	has := func(o Organism, v float64, of func(published) []float64) bool {
		for _, p := range list {
			if p.organism == o.Name && p.basis == "seen" {
				for _, f := range of(p) {
					if math.Abs(f-v) < 1e-9 {
						return true
					}
				}
			}
		}
		return false
	}
	for _, o := range Organisms() {
		for _, d := range []float64{o.DLow, o.DHigh} {
			if o.Basis == "seen" {
				assert.True(t, has(o, d, func(p published) []float64 {
					if math.Abs(p.tC-o.TrefC) > 0.1 {
						return nil
					}
					return []float64{p.dLow, p.dHigh}
				}), "%s: D %g min", o.Name, d)
			}
		}
		for _, z := range []float64{o.ZLow, o.ZHigh} {
			if o.ZBasis == "seen" {
				assert.True(t, has(o, z, func(p published) []float64 { return []float64{p.zLow, p.zHigh} }), "%s: z %g C°", o.Name, z)
			}
		}
	}
}

// TestCarriedFigures recomputes the D-values that are marked computed, and the
// one z, from the published figures that their notes name.
func TestCarriedFigures(t *testing.T) {
	carried := func(d, z, from, to float64) float64 { return d * math.Pow(10, (from-to)/z) }
	for name, c := range map[string]struct{ got, want float64 }{
		"Weizmannia coagulans":                carry(t, "Weizmannia coagulans", carried(2, 10.2, 111, 121.1)),
		"Bacillus subtilis":                   carry(t, "Bacillus subtilis", carried(15.8, 14, 95, 90)),
		"Saccharomyces cerevisiae ascospores": carry(t, "Saccharomyces cerevisiae ascospores", carried(34.2, 14.3, 55, 60)),
	} {
		assert.InEpsilon(t, c.want, c.got, 0.005, name)
	}
	o, _ := FindOrganism("Bacillus licheniformis")
	assert.InEpsilon(t, carried(4.5, 15, 93.3, 90), o.DLow, 0.005)
	o, _ = FindOrganism("Byssochlamys fulva")
	assert.InEpsilon(t, 3/math.Log10(3.62/1.81), o.ZHigh, 0.001)
}

func carry(t *testing.T, name string, want float64) struct{ got, want float64 } {
	o, ok := FindOrganism(name)
	require.True(t, ok)
	return struct{ got, want float64 }{o.DHigh, want}
}

func TestOrganismIsFoundByOtherNames(t *testing.T) {
	for name, want := range map[string]string{
		"c. botulinum": "Clostridium botulinum (proteolytic)", " Neosartorya  Fischeri ": "Aspergillus fischeri",
		"Alicyclobacillus": "Alicyclobacillus acidoterrestris", "listeria": "Listeria monocytogenes",
	} {
		o, ok := FindOrganism(name)
		assert.True(t, ok, name)
		assert.Equal(t, want, o.Name)
	}
	for _, name := range []string{"", " ", "Clostridium"} {
		_, ok := FindOrganism(name)
		assert.False(t, ok, name)
	}
	seen := map[string]string{}
	for _, o := range Organisms() {
		for _, n := range append([]string{o.Name}, o.Also...) {
			assert.Empty(t, seen[plain(n)], "%s names two organisms", n)
			seen[plain(n)] = o.Name
		}
	}
}

// TestTwelveReductions is 12 × 0.21 min at 121.1 °C (Teixeira, lecture slides).
func TestTwelveReductions(t *testing.T) {
	o, _ := FindOrganism("Clostridium botulinum")
	assert.InDelta(t, 2.52, o.MinutesFor(12), 1e-12)
	assert.Equal(t, Bound{Below: F0, Above: F0, MinC: 104.4, MaxC: 140}, o.Bound())
	assert.Equal(t, F0, o.Reference())
}

// TestNonProteolyticTable: 129 min at 80 °C and 1.0 min at 100 °C are worth the
// 10 min at 90 °C of the published table (UK Food Standards Agency), by the z
// it was made with; ours credits no more.
func TestNonProteolyticTable(t *testing.T) {
	o, _ := FindOrganism("Clostridium botulinum (non-proteolytic)")
	assert.InEpsilon(t, 10, 1.0*o.Bound().LethalRate(100), 1e-9)
	assert.Less(t, 129*o.Bound().LethalRate(80), 10.)
}

func TestBrokenOrganismTables(t *testing.T) {
	const head = "name,also,class,tref_c,d_low_min,d_high_min,z_low_c,z_high_c,min_c,max_c,medium,ph,source,basis,z_basis,range_basis,note\n"
	for text, want := range map[string]string{
		"":                    "thermal: organisms: no table",
		"name,class\nx,\"y\n": `thermal: organisms: parse error on line 2, column 6: extraneous or missing " in quoted-field`,
		head + "x,,hazard,NaN,1,2,7,10,80,100,,,s,seen,seen,seen,\n": `thermal: organisms: x: tref_c is "NaN", not a number above 0`,
		head + "x,,hazard,90,1,2,7,10,80,100,,,,seen,seen,seen,\n":   "thermal: organisms: x: source is empty",
		head + "x,,hazard,90,1,2,10,7,80,100,,,s,seen,seen,seen,\n":  "thermal: organisms: x: a low end stands above its high end",
	} {
		_, err := readOrganisms(text)
		assert.EqualError(t, err, want)
	}
}
