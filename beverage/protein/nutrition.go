package protein

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"posset/beverage"
)

// AminoAcids are grams of free amino acid per gram of protein: their sum exceeds
// 1, since water is added when protein is split. What nobody analysed is unknown.
// The interval spans what analyses and sequences give.
type AminoAcids struct {
	His, Ile, Leu, Lys, Met, Phe, Thr, Trp, Val beverage.Interval // the nine essential
	Cys, Tyr                                    beverage.Interval
	Source                                      beverage.Source
}

// Essential is the sum of the nine essential amino acids, Cys and Tyr not counted.
func (a AminoAcids) Essential() beverage.Interval {
	return total(a.His, a.Ile, a.Leu, a.Lys, a.Met, a.Phe, a.Thr, a.Trp, a.Val)
}

// BranchedChain is the sum of leucine, isoleucine and valine.
func (a AminoAcids) BranchedChain() beverage.Interval { return total(a.Leu, a.Ile, a.Val) }

func total(all ...beverage.Interval) beverage.Interval {
	sum := beverage.Point(0, beverage.Library)
	for _, one := range all {
		sum = sum.Plus(one)
	}
	return sum
}

// of points at the amino acid by its three letters.
func (a *AminoAcids) of(name string) *beverage.Interval {
	switch name {
	case "His":
		return &a.His
	case "Ile":
		return &a.Ile
	case "Leu":
		return &a.Leu
	case "Lys":
		return &a.Lys
	case "Met":
		return &a.Met
	case "Phe":
		return &a.Phe
	case "Thr":
		return &a.Thr
	case "Trp":
		return &a.Trp
	case "Val":
		return &a.Val
	case "Cys":
		return &a.Cys
	case "Tyr":
		return &a.Tyr
	}
	return nil
}

// AminoAcids returns what a gram of the protein feeds, and false where neither an
// analysis nor a sequence is known.
func (c *Composition) AminoAcids() (AminoAcids, bool) {
	data, err := nutrition()
	if err != nil || c == nil {
		return AminoAcids{}, false
	}
	a := c.sequenceAminoAcids(data)
	known := a.Leu.Known()
	var sources []string
	if known {
		sources = append(sources, "computed from sequences")
	}
	for _, r := range data.analyses[c.recipe] {
		if into := a.of(r.amino); into != nil {
			*into, known = spanned(*into, r.gPerG), true
		}
		if !slices.Contains(sources, r.source.Text) {
			sources = append(sources, r.source.Text)
		}
	}
	a.Source = beverage.Source{Text: strings.Join(sources, "; "), Basis: data.basis(c.recipe)}
	return a, known
}

// spanned widens the interval to hold v; the middle becomes the middle of the ends.
func spanned(i beverage.Interval, v float64) beverage.Interval {
	if !i.Known() {
		return beverage.Point(v, beverage.Library)
	}
	return beverage.Span(min(i.Low, v), max(i.High, v), beverage.Library)
}

// sequenceAminoAcids is the mixture of the parts' sequences; unknown when any part
// has no sequence.
func (c *Composition) sequenceAminoAcids(data nutritionData) AminoAcids {
	var a AminoAcids
	for _, p := range c.parts {
		if p.letters == nil {
			return AminoAcids{}
		}
	}
	for letter, r := range data.residues {
		into := a.of(r.name)
		if into == nil {
			continue
		}
		sum := 0.0
		for _, p := range c.parts {
			sum += p.share * p.letters[letter] * (r.mass + waterGPerMol) / p.wholeMass
		}
		*into = beverage.Point(sum, beverage.Library)
	}
	return a
}

// NitrogenFactor returns the factor from nitrogen to protein that labels and
// standards use for the protein, g/g, with what it is used for. False: unknown.
func (c *Composition) NitrogenFactor() (factor float64, use string, source beverage.Source, ok bool) {
	data, err := nutrition()
	if err != nil || c == nil {
		return 0, "", beverage.Source{}, false
	}
	for _, r := range data.nitrogen {
		if r["recipes"] == c.id || slices.Contains(strings.Split(r["families"], "|"), string(c.family)) {
			factor, err = r.number("factor")
			return factor, r["use"], r.source(), err == nil
		}
	}
	return 0, "", beverage.Source{}, false
}

type residue struct {
	name string
	mass float64 // g/mol within a chain
}

type analysis struct {
	amino  string
	gPerG  float64
	source beverage.Source
}

type nutritionData struct {
	residues map[rune]residue
	analyses map[string][]analysis
	patterns map[string]map[string]float64
	nitrogen []row
}

// basis is the weakest basis of a recipe's analyses.
func (d nutritionData) basis(recipe string) beverage.Basis {
	basis := beverage.Computed
	for _, a := range d.analyses[recipe] {
		switch {
		case a.source.Basis == beverage.Memory:
			return beverage.Memory
		case a.source.Basis == beverage.Seen:
			basis = beverage.Seen
		}
	}
	return basis
}

var nutrition = sync.OnceValues(readNutrition)

func readNutrition() (nutritionData, error) {
	d := nutritionData{residues: map[rune]residue{}, analyses: map[string][]analysis{}, patterns: map[string]map[string]float64{}}
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
		d.residues[letter] = residue{name: r["name"], mass: mass}
	}
	return err
}

func (d nutritionData) takeAnalysis(r row) error {
	mg, err := r.number("mg_per_g")
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
