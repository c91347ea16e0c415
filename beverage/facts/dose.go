package facts

import (
	"fmt"
	"math"

	"posset/acid"
	"posset/beverage"
	"posset/beverage/ingredient"
)

// Dosing asks for an acid, or a blend, that brings a drink to a pH.
type Dosing struct {
	PH    float64 // what the upper end of the prediction shall come to
	TempC float64
	Acids []Line    // as the library or the drink's own files have them
	Parts []float64 // by mass, one for each acid
}

// Dosed is an acid or a blend added to reach a pH.
type Dosed struct {
	GPerL []float64 // to add of each acid as sold, in the order asked for; zeros where none is needed
	InAll []float64 // of each with what the recipe already holds of it
	// PH is the prediction of the dosed drink at the temperature asked for, degassed.
	PH      beverage.Interval
	Acidity Acidity // after
	// Anchored: the measured pH of the drink as it is counts as a trial of it.
	// Doubtful: it does not fit the recipe, and what it reads higher is added.
	Anchored, Doubtful bool
	// Lots is the dose with the proteins' own pH at either end of what lots of
	// one maker differ by, LotPH the pH with one dose for all; nil where the drink
	// has no protein or a lot cannot be brought there.
	Lots  *[2][]float64
	LotPH *[2]float64
}

// Called is the line's name in the library, or else as it was written.
func (l Line) Called() string {
	if l.Found {
		return l.Name
	}
	return l.Line.Name
}

// DoseTo finds how much of a blend brings the unfavourable, upper end of the
// predicted pH to what is asked for: the drink is predicted anew with each dose,
// as if the dose stood in its recipe. It fails where the recipe does not tell,
// where an acid has no make-up, and where the blend cannot reach the pH.
func (f *Facts) DoseTo(lib *ingredient.Library, ask Dosing) (*Dosed, error) {
	blend, err := blendOf(ask.Acids, ask.Parts)
	if err != nil {
		return nil, err
	}
	s := &search{f: f, lib: lib, ask: ask, blend: blend}
	x, err := s.find()
	if err != nil {
		return nil, err
	}
	d := &Dosed{GPerL: split(x.grams, ask.Parts), InAll: s.inAll(x.grams), PH: x.pH, Acidity: x.acidity, Anchored: x.anchored, Doubtful: x.doubtful}
	s.lots(d, x)
	return d, nil
}

// search is the way to a dose.
type search struct {
	f     *Facts
	lib   *ingredient.Library
	ask   Dosing
	blend contribution
	none  foretold // without any dose
}

// closePH is how near the upper end comes to what is asked for, and mostTries how
// often the dose is tried: both ample for a slope that hardly changes.
const (
	closePH   = 0.002
	mostTries = 40
)

// mostGPerL is more than a litre of any drink weighs.
const mostGPerL = 2000

// find brackets the dose from a first guess and closes in on it, ending with the
// upper end at or below the pH asked for.
func (s *search) find() (step, error) {
	none, err := s.try(0)
	if err != nil {
		return none, err
	}
	s.none = none.foretold
	try, err := s.guess()
	switch {
	case err != nil && none.over <= 0 && s.lowers():
		return none, nil
	case err != nil:
		return none, s.outOfReach()
	}
	before, after := none, none
	for ; after.over > 0 == (none.over > 0); try *= 2 {
		before = after
		if after, err = s.try(try); err != nil || try > mostGPerL {
			return none, s.outOfReach()
		}
	}
	if after.over > 0 {
		before, after = after, before
	}
	return s.close(before, after)
}

// step is a dose and how far the upper end then lies over what is asked for.
type step struct {
	foretold
	grams, over float64
}

func (s *search) try(grams float64) (step, error) {
	here, err := s.f.foretell(s.lib, s.ask, grams)
	return step{here, grams, here.pH.High - s.ask.PH}, err
}

// close cuts the way between a dose with the upper end above what is asked for and
// one with it below, and takes one that is below.
func (s *search) close(above, below step) (step, error) {
	const least, third = 0.02, 3 // of the way a cut leaves; how often it is the half
	for n := 1; below.over < -closePH && n <= mostTries; n++ {
		part := (above.over + closePH/2) / (above.over - below.over)
		if part = math.Max(least, math.Min(1-least, part)); n%third == 0 {
			part = 0.5
		}
		next, err := s.try(above.grams + part*(below.grams-above.grams))
		switch {
		case err != nil:
			return below, s.outOfReach()
		case next.over > 0:
			above = next
		default:
			below = next
		}
	}
	return below, nil
}

// guess is the dose that brings the middle as far below what is asked for as the
// upper end lies above it, g/L.
func (s *search) guess() (float64, error) {
	m, _ := s.none.chem.middle()
	aim := s.ask.PH - (s.none.pH.High - s.none.pH.Mid)
	grams, err := m.dose(s.blend, s.ask.TempC, math.Max(0, math.Min(14, aim)))
	if err == nil && !(grams > 0) {
		err = s.outOfReach()
	}
	return grams * s.none.chem.WaterKgPerL, err
}

// lowers tells whether the blend makes the drink more acid.
func (s *search) lowers() bool {
	m, _ := s.none.chem.middle()
	before, err1 := m.pHAt(s.ask.TempC)
	after, err2 := m.and(&s.blend, 1).pHAt(s.ask.TempC)
	return err1 == nil && err2 == nil && after < before
}

func (s *search) outOfReach() error {
	name := s.ask.Acids[0].Called()
	if len(s.ask.Acids) > 1 {
		name = "the blend"
	}
	_, high := s.none.pH.Outward(2)
	if over := s.none.pH.High > s.ask.PH; over != s.lowers() {
		way := map[bool]string{true: "raises", false: "lowers"}[over]
		return fmt.Errorf("--target-ph: %s %s the pH, and the upper end of this drink lies at %.2f without it; ask for a pH on the other side, or dose with something else", name, way, high)
	}
	return fmt.Errorf("--target-ph: no dose of %s that leaves a drink of it brings the upper end from %.2f to %.2f; ask for less or take a stronger one", name, high, s.ask.PH)
}

// dose is how many grams of a blend, in a kilogram of water, bring a mixture to a
// pH at tC.
func (m mixture) dose(blend contribution, tC, aim float64) (float64, error) {
	return acid.Dose(m.at(aim), blend.totals, tC, aim) // of what is dissolved once it is there
}

// and is the mixture with grams of something more in a kilogram of water.
func (m mixture) and(c *contribution, grams float64) mixture {
	m.parts = append(m.parts[:len(m.parts):len(m.parts)], scaled{c, grams})
	return m
}

// split is so much of a blend as its acids.
func split(grams float64, parts []float64) []float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	var list []float64
	for _, p := range parts {
		list = append(list, grams*p/sum)
	}
	return list
}
