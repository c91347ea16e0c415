package protein

import (
	"fmt"
	"strings"
	"sync"

	"posset/beverage"
)

// bySequence is the mixture of the parts' sequences; unknown when any part has no
// sequence.
func (c *Composition) bySequence(data nutritionData) AminoAcids {
	a := AminoAcids{Source: beverage.Source{Text: "computed from sequences", Basis: beverage.Computed}}
	for _, p := range c.parts {
		if p.letters == nil {
			return AminoAcids{}
		}
	}
	for name, letter := range oneLetter {
		freeMass := data.residueMass[letter] + waterGPerMol
		*a.of(name) = c.spread(func(p Part) float64 { return p.letters[letter] * freeMass / p.wholeMass })
	}
	return a
}

// spread is the mass-weighted mean of a figure over the parts. Its ends come from
// moving each share to its own low and high in turn, the others filling up.
func (c *Composition) spread(figure func(Part) float64) beverage.Interval {
	mean := 0.0
	for _, p := range c.parts {
		mean += p.share * figure(p)
	}
	out := beverage.Point(mean, beverage.Library)
	for _, p := range c.parts {
		if p.share >= 1 {
			continue
		}
		others := (mean - p.share*figure(p)) / (1 - p.share)
		for _, share := range []float64{p.Share.Low, min(p.Share.High, 1)} {
			v := share*figure(p) + (1-share)*others
			out.Low, out.High = min(out.Low, v), max(out.High, v)
		}
	}
	return out
}

type analysis struct {
	amino  string
	gPerG  float64
	source beverage.Source
}

type nutritionData struct {
	residueMass map[rune]float64 // g/mol within a chain
	analyses    map[string][]analysis
	patterns    map[string]map[string]float64
	nitrogen    []row
}

var nutrition = sync.OnceValues(readNutrition)

func readNutrition() (nutritionData, error) {
	d := nutritionData{residueMass: map[rune]float64{}, analyses: map[string][]analysis{}, patterns: map[string]map[string]float64{}}
	for name, take := range map[string]func(row) error{
		"residues.csv": d.takeResidue, "amino_acids.csv": d.takeAnalysis, "scoring.csv": d.takePattern,
	} {
		rows, err := readTable(name)
		if err != nil {
			return d, err
		}
		for _, r := range rows {
			if err := take(r); err != nil {
				return d, fmt.Errorf("%s: %w", name, err)
			}
		}
	}
	var err error
	d.nitrogen, err = readTable("nitrogen.csv")
	return d, err
}

func (d nutritionData) takeResidue(r row) error {
	mass, err := r.number("residue_g_mol")
	for _, letter := range r["letter"] {
		d.residueMass[letter] = mass
	}
	return err
}

func (d nutritionData) takeAnalysis(r row) error {
	mg, err := r.number("mg_per_g")
	if _, ok := oneLetter[r["amino"]]; !ok {
		return fmt.Errorf("amino acid %q is unknown", r["amino"])
	}
	const milli = 1000
	for recipe := range strings.SplitSeq(r["recipes"], "|") {
		d.analyses[recipe] = append(d.analyses[recipe], analysis{amino: r["amino"], gPerG: mg / milli, source: r.source()})
	}
	return err
}

func (d nutritionData) takePattern(r row) error {
	mg, err := r.number("mg_per_g")
	if d.patterns[r["age"]] == nil {
		d.patterns[r["age"]] = map[string]float64{}
	}
	d.patterns[r["age"]][r["amino"]] = mg
	return err
}
