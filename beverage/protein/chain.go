package protein

import (
	"fmt"
	"math"
	"strings"

	"posset/beverage"
)

// Part is one protein of a composition.
type Part struct {
	ID        string
	Name      string
	Share     beverage.Interval // mass fraction of the protein, 0 to 1
	MolarMass float64           // g/mol; of the mean peptide after hydrolysis
	Labile    bool              // a whey protein that heat unfolds for good

	isoelectric isoelectric
	casein      bool
	share       float64 // Share.Mid over the sum of all, so that charges add up
	counts      counts
	groups      []group // counts without the zeros
	acidities   *acidities
	radiusNM    float64
	residues    float64          // per molecule
	letters     map[rune]float64 // of the uncut chain; nil where no sequence is known
	wholeMass   float64          // g/mol of the uncut chain

	mostPositive, mostNegative float64
}

// MassFraction is the middle share, scaled so that the shares of a composition add
// up to 1.
func (p Part) MassFraction() float64 { return p.share }

// Isoelectric returns the published pH of zero charge or least solubility.
func (p Part) Isoelectric() beverage.Interval { return p.isoelectric.interval() }

// IsoelectricSource says where that figure comes from and, where publications
// disagree, how.
func (p Part) IsoelectricSource() (source beverage.Source, dispute string) {
	return p.isoelectric.source()
}

// isoelectric are the keys of a published isoelectric pH in the data files.
type isoelectric struct {
	Low     float64        `toml:"pi_low"`
	Mid     float64        `toml:"pi_mid"`
	High    float64        `toml:"pi_high"`
	Source  string         `toml:"pi_source"`
	Basis   beverage.Basis `toml:"pi_basis"`
	Dispute string         `toml:"pi_dispute"`
}

func (i isoelectric) interval() beverage.Interval {
	if i.Basis == "" {
		return beverage.Interval{}
	}
	return beverage.Interval{Low: i.Low, Mid: i.Mid, High: i.High, Basis: beverage.Library}
}

func (i isoelectric) source() (beverage.Source, string) {
	return beverage.Source{Text: i.Source, Basis: i.Basis}, i.Dispute
}

// chainRow is one chain of chains.toml.
type chainRow struct {
	ID              string
	Name            string
	Accession       string
	Sequence        string
	Phosphoserines  float64
	Disulfides      float64
	BlockedNTerm    bool    `toml:"blocked_n_terminus"`
	MolarMass       float64 `toml:"molar_mass"`
	PKSet           string  `toml:"pk_set"`
	BuriedCarboxyls float64 `toml:"buried_carboxyls"`
	RadiusNM        float64 `toml:"radius_nm"`
	Labile          bool
	Casein          bool
	isoelectric
}

// mixtureRow is one protein of mixtures.toml.
type mixtureRow struct {
	ID               string
	Name             string
	NominalMolarMass float64            `toml:"nominal_molar_mass"`
	RadiusNM         float64            `toml:"radius_nm"`
	MmolPerG         map[string]float64 `toml:"mmol_per_g"`
	ResidueMass      float64            `toml:"residue_mass"`
	FittedPH         float64            `toml:"fitted_ph"`
	Source           string
	Basis            beverage.Basis
	isoelectric
}

// usualSet is the set of pK values of every protein that has none of its own.
const usualSet = "bjellqvist"

func readParts(sets map[string]*acidities) (map[string]Part, error) {
	var chains struct{ Chain []chainRow }
	if err := readTOML("chains.toml", &chains); err != nil {
		return nil, err
	}
	var mixtures struct{ Mixture []mixtureRow }
	if err := readTOML("mixtures.toml", &mixtures); err != nil {
		return nil, err
	}
	parts := map[string]Part{}
	for _, c := range chains.Chain {
		set, ok := sets[c.PKSet]
		if !ok {
			return nil, fmt.Errorf("chains.toml: %q: pk_set %q is unknown", c.ID, c.PKSet)
		}
		parts[c.ID] = c.part(set)
	}
	for _, m := range mixtures.Mixture {
		parts[m.ID] = m.part(sets[usualSet])
	}
	return parts, nil
}

func (c chainRow) part(set *acidities) Part {
	letters := map[rune]float64{}
	for _, letter := range c.Sequence {
		letters[letter]++
	}
	n := counts{
		siteNterm: 1, siteCterm: 1,
		siteHis: letters['H'], siteLys: letters['K'], siteArg: letters['R'],
		siteAsp: letters['D'], siteGlu: letters['E'] - c.BuriedCarboxyls, siteBuried: c.BuriedCarboxyls,
		siteCys: letters['C'] - 2*c.Disulfides, siteTyr: letters['Y'],
		siteSerP1: c.Phosphoserines, siteSerP2: c.Phosphoserines,
	}
	if c.BlockedNTerm {
		n[siteNterm] = 0
	}
	p := Part{ID: c.ID, Name: c.Name, MolarMass: c.MolarMass, Labile: c.Labile, casein: c.Casein, isoelectric: c.isoelectric,
		counts: n, acidities: set, radiusNM: c.RadiusNM, residues: float64(len(c.Sequence)), letters: letters, wholeMass: c.MolarMass}
	return p.finished()
}

func (m mixtureRow) part(set *acidities) Part {
	const milli = 1000
	n := counts{siteNterm: 1, siteCterm: 1}
	for i, name := range siteNames {
		n[i] += m.MmolPerG[name] * m.NominalMolarMass / milli
	}
	p := Part{ID: m.ID, Name: m.Name, MolarMass: m.NominalMolarMass, isoelectric: m.isoelectric,
		counts: n, acidities: set, radiusNM: m.RadiusNM, residues: m.NominalMolarMass / m.ResidueMass}
	return p.finished()
}

// finished fills what follows from the counts and the mass.
func (p Part) finished() Part {
	if p.radiusNM == 0 {
		p.radiusNM = compactRadiusNM(p.MolarMass)
	}
	p.mostPositive, p.mostNegative, p.groups = 0, 0, nil
	for i, n := range p.counts {
		if n == 0 {
			continue
		}
		p.groups = append(p.groups, group{site(i), n})
		if site(i).basic() {
			p.mostPositive += n
		} else {
			p.mostNegative -= n
		}
	}
	return p
}

// A compact protein takes 0.735 mL/g (handbooks; blg 0.75) and carries about
// 0.2 g/g of water (Tanford 1961).
const hydratedVolumeMLPerG = 0.735 + 0.2

// compactRadiusNM is the radius of the hydrated sphere of molarMass g/mol.
func compactRadiusNM(molarMass float64) float64 {
	const avogadroPerNM3 = 602.214076 // mL/mol per nm^3
	return math.Cbrt(3 * molarMass * hydratedVolumeMLPerG / (4 * math.Pi * avogadroPerNM3))
}

// cleaned is an id as it is looked up: lower case, single spaces.
func cleaned(id string) string { return strings.Join(strings.Fields(strings.ToLower(id)), " ") }
