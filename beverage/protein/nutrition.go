package protein

import (
	"slices"
	"strings"

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

// Essentials points at the nine essential amino acids by their three letters.
func Essentials(a *AminoAcids) map[string]*beverage.Interval {
	all := map[string]*beverage.Interval{}
	for _, name := range []string{"His", "Ile", "Leu", "Lys", "Met", "Phe", "Thr", "Trp", "Val"} {
		all[name] = a.of(name)
	}
	return all
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

// Sum adds amino acids, each times its grams; what one of them does not tell is
// unknown in the sum. The lists are equally long.
func Sum(each []AminoAcids, grams []float64) AminoAcids {
	var sum AminoAcids
	var sources []string
	for name := range oneLetter {
		all := beverage.Point(0, beverage.Library)
		for i := range each {
			all = all.Plus(each[i].of(name).Scale(grams[i]))
		}
		*sum.of(name) = all
	}
	for i := range each {
		if !slices.Contains(sources, each[i].Source.Text) {
			sources = append(sources, each[i].Source.Text)
		}
		sum.Source.Basis = weaker(sum.Source.Basis, each[i].Source.Basis)
	}
	sum.Source.Text = strings.Join(sources, "; ")
	return sum
}

// Scale multiplies every amino acid by a factor of zero or more.
func (a AminoAcids) Scale(by float64) AminoAcids {
	for name := range oneLetter {
		one := a.of(name)
		*one = one.Scale(by)
	}
	return a
}

// oneLetter gives the letter of each amino acid that is told of.
var oneLetter = map[string]rune{"His": 'H', "Ile": 'I', "Leu": 'L', "Lys": 'K', "Met": 'M', "Phe": 'F',
	"Thr": 'T', "Trp": 'W', "Val": 'V', "Cys": 'C', "Tyr": 'Y'}

// of points at the amino acid by its three letters, one of oneLetter; nil for any
// other name.
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
// analysis nor a sequence is known. The interval holds every publication; a
// mixture of sequences is also spread by the shares of its proteins.
func (c *Composition) AminoAcids() (AminoAcids, bool) {
	var merged AminoAcids
	var sources []string
	for _, one := range c.Analyses() {
		for name := range oneLetter {
			*merged.of(name) = wider(*merged.of(name), *one.of(name))
		}
		sources = append(sources, one.Source.Text)
		merged.Source.Basis = weaker(merged.Source.Basis, one.Source.Basis)
	}
	merged.Source.Text = strings.Join(sources, "; ")
	return merged, len(sources) > 0
}

// Analyses returns the publications one by one, what is computed from sequences
// first: a claim that one protein has more of something than another holds only
// against a comparator that is named.
func (c *Composition) Analyses() []AminoAcids {
	data, err := nutrition()
	if err != nil || c == nil {
		return nil
	}
	var all []AminoAcids
	if a := c.bySequence(data); a.Leu.Known() {
		all = append(all, a)
	}
	at := map[string]int{}
	for _, r := range data.analyses[c.recipe] {
		i, seen := at[r.source.Text]
		if !seen {
			i = len(all)
			at[r.source.Text] = i
			all = append(all, AminoAcids{Source: r.source})
		}
		*all[i].of(r.amino) = beverage.Point(r.gPerG, beverage.Library)
	}
	return all
}

// weaker is the basis that a figure from both rests on.
func weaker(a, b beverage.Basis) beverage.Basis {
	for _, basis := range []beverage.Basis{beverage.Memory, beverage.Seen, beverage.Computed} {
		if a == basis || b == basis {
			return basis
		}
	}
	return b
}

// wider holds both intervals; the middle becomes the middle of the ends.
func wider(a, b beverage.Interval) beverage.Interval {
	switch {
	case !a.Known():
		return b
	case !b.Known():
		return a
	}
	return beverage.Span(min(a.Low, b.Low), max(a.High, b.High), beverage.Library)
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
