package protein

import (
	"math"

	"posset/beverage"
)

// Age is the age group of a scoring pattern.
type Age string

// The age groups of the FAO's pattern of 2013.
const (
	AgeOver3     Age = "over 3 years"
	AgeToddler   Age = "6 months to 3 years"
	AgeUnder6Mon Age = "under 6 months"
)

// Score is an amino acid score: the share of the pattern that the scarcest
// essential amino acid reaches, 1 being all of it; not cut off at 1 and not
// corrected for digestibility, which is not known here.
type Score struct {
	Value    beverage.Interval
	Limiting string // the scarcest: three letters, Met+Cys or Phe+Tyr
}

// sums are the pattern's rows that are two amino acids.
var sums = map[string]string{"SAA": "Met+Cys", "AAA": "Phe+Tyr"}

// Score holds the amino acids against the FAO's pattern of 2013 for an age group,
// and returns false while any amino acid of the pattern is unknown.
func (a AminoAcids) Score(age Age) (Score, bool) {
	data, err := nutrition()
	pattern := data.patterns[string(age)]
	if err != nil || len(pattern) == 0 {
		return Score{}, false
	}
	worst := Score{Value: beverage.Interval{Low: math.Inf(1), Mid: math.Inf(1), High: math.Inf(1), Basis: beverage.Library}}
	const milli = 1000
	for name, mgPerG := range pattern {
		have := a.scored(name)
		if !have.Known() {
			return Score{}, false
		}
		share := have.Scale(milli / mgPerG)
		if share.Mid < worst.Value.Mid || share.Mid == worst.Value.Mid && name < worst.Limiting {
			worst.Limiting = name
		}
		worst.Value = lesser(worst.Value, share)
	}
	if both, ok := sums[worst.Limiting]; ok {
		worst.Limiting = both
	}
	return worst, true
}

func (a AminoAcids) scored(name string) beverage.Interval {
	switch name {
	case "SAA":
		return a.Met.Plus(a.Cys)
	case "AAA":
		return a.Phe.Plus(a.Tyr)
	}
	if one := a.of(name); one != nil {
		return *one
	}
	return beverage.Interval{}
}

// lesser is the interval of the smaller of two figures.
func lesser(a, b beverage.Interval) beverage.Interval {
	return beverage.Interval{Low: min(a.Low, b.Low), Mid: min(a.Mid, b.Mid), High: min(a.High, b.High), Basis: a.Basis}
}
