package law

import (
	"math"
	"sync"
)

// HotFillBand is what published figures ask of a hot-filled drink whose pH is
// at most PHHigh. The bands were measured in vegetables and sauces, never in
// protein drinks.
type HotFillBand struct {
	PHLow, PHHigh float64 // of the pathogen figures
	F             float64 // minutes at TrefC for 5 log of vegetative pathogens
	TrefC         float64 // °C
	ZC            float64 // C°, at and above TrefC
	ZBelowC       float64 // C°, below TrefC, where the printed table asks for more
	MinC, MaxC    float64 // °C: the range of the printed table
	Pathogen      Hold    // the coldest line of the table: below TempC nothing is published
	Commercial    Fill
	RowID         string // of the pathogen figures

	sterility []heatLine
}

// Hold is a temperature in °C, and the time in seconds it is kept.
type Hold struct {
	TempC float64
	HoldS float64
}

// Fill is what commercial guidance asks for at the band's pH. A field without a
// published figure at that pH is NaN.
type Fill struct {
	TempC       float64 // °C: the higher of the two fill temperatures below
	TableC      float64 // °C, by pH, without a hold
	GuidanceC   float64 // °C, of the guidance that names a hold too
	HoldLowS    float64 // seconds in the closed pack: the shortest of the guidance
	HoldHighS   float64 // and the longest, which alone is beyond doubt
	TableRow    string
	GuidanceRow string
}

// heatLine is one published pair of F and z, with the pH it holds for.
type heatLine struct {
	kind          string
	phLow, phHigh float64
	f, trefC      float64
	zC, zBelowC   float64
	fromC, toC    float64
	fillC         float64
	low, high     float64
	row           string
}

// holdS is the time in seconds that the line asks for at tC in °C.
func (h heatLine) holdS(tC float64) float64 {
	z := h.zC
	if tC < h.trefC {
		z = h.zBelowC
	}
	return secondsPerMinute * h.f * math.Pow(10, (h.trefC-tC)/z)
}

const secondsPerMinute = 60

var heatLines = sync.OnceValues(func() ([]heatLine, error) { return each("hot_fill", readHeatLine) })

func readHeatLine(rec record) (heatLine, error) {
	h := heatLine{kind: rec.text("kind"), row: rec.text("row")}
	for col, to := range map[string]*float64{
		"ph_low": &h.phLow, "ph_high": &h.phHigh, "f_min": &h.f, "tref_c": &h.trefC, "z_c": &h.zC,
		"z_below_c": &h.zBelowC, "from_c": &h.fromC, "to_c": &h.toC, "fill_c": &h.fillC,
		"hold_low_s": &h.low, "hold_high_s": &h.high,
	} {
		var err error
		if *to, err = rec.numberOrNaN(col); err != nil {
			return h, err
		}
	}
	return h, nil
}

// HotFill returns the figures for a drink whose pH is at most phHigh, the
// unfavourable end of its interval. There is none above the last published
// band (pH 4.6), nor for a pH that is no number.
func HotFill(phHigh float64) (HotFillBand, bool) {
	lines, _ := heatLines()
	p, ok := bandAt(lines, kindPathogen, phHigh)
	if !ok {
		return HotFillBand{}, false
	}
	return HotFillBand{
		PHLow: p.phLow, PHHigh: p.phHigh, F: p.f, TrefC: p.trefC, ZC: p.zC, ZBelowC: p.zBelowC,
		MinC: p.fromC, MaxC: p.toC, RowID: p.row,
		Pathogen:   Hold{TempC: p.fromC, HoldS: p.holdS(p.fromC)},
		Commercial: fillAt(lines, phHigh),
		sterility:  sterilityUpTo(lines, phHigh),
	}, true
}

// The kinds of line in the hot-fill table.
const (
	kindPathogen  = "pathogen"
	kindSterility = "sterility"
	kindFill      = "fill"
	kindGuidance  = "guidance"
)

// bandAt is the first line of a kind whose upper pH is not below ph.
func bandAt(lines []heatLine, kind string, ph float64) (heatLine, bool) {
	for _, h := range lines {
		if h.kind == kind && ph <= h.phHigh {
			return h, true
		}
	}
	return heatLine{}, false
}

func fillAt(lines []heatLine, ph float64) Fill {
	f := Fill{TableC: math.NaN(), GuidanceC: math.NaN(), HoldLowS: math.NaN(), HoldHighS: math.NaN()}
	if h, ok := bandAt(lines, kindFill, ph); ok {
		f.TableC, f.TableRow = h.fillC, h.row
	}
	if h, ok := bandAt(lines, kindGuidance, ph); ok {
		f.GuidanceC, f.HoldLowS, f.HoldHighS, f.GuidanceRow = h.fillC, h.low, h.high, h.row
	}
	f.TempC = math.Max(f.TableC, f.GuidanceC) // NaN when either is missing: no figure is no comfort
	return f
}

// sterilityUpTo is every sterility line that a drink of at most ph may need:
// those of lower pH too, since the published lines cross one another.
func sterilityUpTo(lines []heatLine, ph float64) []heatLine {
	own, ok := bandAt(lines, kindSterility, ph)
	if !ok {
		return nil
	}
	var out []heatLine
	for _, h := range lines {
		if h.kind == kindSterility && h.phHigh <= own.phHigh {
			out = append(out, h)
		}
	}
	return out
}

// PathogenHoldS is the time in seconds for 5 log of vegetative pathogens at tC
// in °C, worked out from F and z. Below the printed table's range there is no
// figure; above it the hold of its hottest line is asked for, no less.
func (b HotFillBand) PathogenHoldS(tC float64) (float64, bool) {
	if !(tC >= b.MinC) {
		return math.NaN(), false
	}
	h := heatLine{f: b.F, trefC: b.TrefC, zC: b.ZC, zBelowC: b.ZBelowC}
	return h.holdS(math.Min(tC, b.MaxC)), true
}

// SterilityHoldS is the time in seconds that the published figures for
// commercial sterility ask for at tC in °C: the longest over all lines up to
// the band's pH. False where no line speaks.
func (b HotFillBand) SterilityHoldS(tC float64) (float64, bool) {
	if len(b.sterility) == 0 || math.IsNaN(tC) {
		return math.NaN(), false
	}
	longest := 0.0
	for _, h := range b.sterility {
		longest = math.Max(longest, h.holdS(tC))
	}
	return longest, true
}
