package protein

import (
	"fmt"
	"math"
	"slices"

	"posset/beverage"
)

// Conditions is the drink that is heated.
type Conditions struct {
	PH           beverage.Interval
	SugarGPerL   float64 // sugars and lactose; 0 takes no credit for any
	CalciumMM    float64 // dissolved calcium, mmol/L
	ProteinGPerL float64 // all protein; 0 is unknown
}

// Validity says whether published rate constants hold for a drink. The zero value
// is that they do not.
type Validity struct {
	Why   string   // why they do not hold: print null and this; "" where they do
	Notes []string // what makes the interval wide, where they do
	// Extended says that the heat lies outside the temperatures at which the
	// constants were measured; "" where it does not. It stands among the notes too.
	Extended string
	holds    bool
}

// OK tells whether the constants hold.
func (v Validity) OK() bool { return v.holds }

// refuse keeps the first reason.
func (v *Validity) refuse(reason string) {
	if v.holds || v.Why == "" {
		v.Why = reason
	}
	v.holds = false
}

func (v *Validity) extend(text string) {
	v.Extended = text
	v.note(text)
}

func (v *Validity) note(text string) {
	if !slices.Contains(v.Notes, text) {
		v.Notes = append(v.Notes, text)
	}
}

// NewDenaturer prepares to follow the whey proteins of c through heat. The
// Validity says whether the published constants, measured in skim milk of pH 6.7,
// may be used for these conditions; where they may not, every fraction is unknown.
func NewDenaturer(c *Composition, cond Conditions) (*Denaturer, Validity) {
	d := &Denaturer{}
	data, err := heat()
	switch {
	case err != nil:
		d.validity.refuse("the rate constants could not be read: " + err.Error())
	case c == nil:
		d.validity.refuse("the protein is unknown")
	case c.HeatLabileFraction() == 0:
		d.validity.refuse("there is no heat-labile whey protein")
	default:
		d.validity = cond.validity(data)
		d.labile = labileParts(c, cond, data)
		if !c.micelles {
			d.validity.note("the constants were measured in milk; without micelles and milk salts the rates differ, so the interval is wide")
		}
	}
	return d, d.validity
}

func (cond Conditions) validity(data heatData) Validity {
	v := Validity{holds: true}
	lowest, highest, never := data.limits["ph_low"], data.limits["ph_high"], data.limits["ph_never"]
	switch {
	case !cond.PH.Known():
		v.refuse("the pH is unknown")
	case cond.PH.Low < never:
		v.refuse(fmt.Sprintf("published rate constants are for milk near pH 6.7 and never hold below pH %.1f", never))
	case cond.PH.Low < lowest || cond.PH.High > highest:
		v.refuse(fmt.Sprintf("published rate constants are for milk near pH 6.7; outside pH %.1f to %.1f they do not hold", lowest, highest))
	}
	if !(cond.ProteinGPerL > 0) {
		v.refuse("the protein content is unknown, and the rate depends on it")
	}
	if cond.PH.Known() && (cond.PH.Low < data.limits["ph_milk_low"] || cond.PH.High > data.limits["ph_milk_high"]) {
		v.note("the pH is a little outside that of milk: rates rise with it, by how much was not read")
	}
	if cond.CalciumMM > data.limits["milk_serum_calcium"] {
		v.note("more dissolved calcium than in milk: proteins aggregate at lower temperatures, by how much is not published")
	}
	return v
}

// albumin has no constants of its own; the order in which proteins unfold puts it
// beyond beta-lactoglobulin B.
const (
	albumin       = "bsa"
	lessThanAlbum = "blg_b"
)

func labileParts(c *Composition, cond Conditions, data heatData) []labilePart {
	var all []labilePart
	for i := range c.parts {
		p := &c.parts[i]
		if !p.Labile {
			continue
		}
		l := labilePart{part: p, lowest: 1, middle: 1, highest: 1, shiftC: cond.sugarShiftC(data)}
		l.kinetics = data.kinetics[p.ID]
		if p.ID == albumin {
			l.kinetics = data.kinetics[lessThanAlbum]
			l.highest = data.limits["albumin_rate"]
			l.middle = math.Sqrt(l.highest)
		} else {
			l.concentrate(cond.ProteinGPerL*p.share, data)
		}
		l.lowest, l.highest = l.lowest/l.kinetics.spread, l.highest*l.kinetics.spread
		all = append(all, l)
	}
	return all
}

// concentrate allows for the protein's own concentration, g/L. Whether a rate of
// order 1.5 grows with the root of it is disputed (no change in reconstituted
// milk, a rise in concentrates), and so is the unit the constants are printed in:
// the interval covers all three readings.
func (l *labilePart) concentrate(gPerL float64, data heatData) {
	if l.kinetics.order == 1 {
		return
	}
	power := l.kinetics.order - 1
	asInMilk := math.Pow(gPerL/data.limits["milk_blg_variant"], power)
	asPrinted := math.Pow(gPerL, power)
	l.lowest, l.middle, l.highest = min(1, asInMilk, asPrinted), asInMilk, max(1, asInMilk, asPrinted)
}

// sugarShiftC is how many degrees sugar may protect by, taken for the low end only.
func (cond Conditions) sugarShiftC(data heatData) float64 {
	const per = 100.0 // g/L
	return math.Max(cond.SugarGPerL, 0) / per * data.limits["sugar_shift"]
}
