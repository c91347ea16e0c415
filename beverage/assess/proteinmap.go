package assess

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"slices"

	"golang.org/x/sync/errgroup"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	windows "posset/beverage/protein"
	"posset/beverage/rule"
)

// MapOver is what a map of the protein has beside pH.
type MapOver string

// The inputs that a map can have beside pH.
const (
	MapTemperature   MapOver = "temperature"
	MapConcentration MapOver = "concentration"
)

// The places of a map: the pH of drinks, the heat of every route, the contents of
// drinks and shots.
const (
	mapFromPH, mapToPH, mapStepPH = 2.0, 8.0, 0.25
	mapFromC, mapToC, mapStepC    = 60.0, 140.0, 10.0
	mapRows                       = 9
	mapStepG                      = 10.0 // g/L, or as many times it as brings the drink onto the map
)

// ProteinMap asks the protein rules at every pH and at every temperature of the
// hold or content of protein. It fails where a record cannot be used, and where
// the drink does not say what such a map needs. holdS, in seconds, is put in place of
// the hold that the drink states, where it is known.
func ProteinMap(ctx context.Context, d *beverage.Drink, over MapOver, holdS beverage.Given[float64]) (*beverage.ProteinMap, error) {
	f, err := factsOf(ctx, d)
	if err != nil {
		return nil, err
	}
	v, err := newMapped(f, over, holdS)
	if err != nil {
		return nil, err
	}
	m := &beverage.ProteinMap{
		X: beverage.MapAxis{Name: "pH", Step: mapStepPH, Values: steps(mapFromPH, mapToPH, mapStepPH)}, Y: v.axis,
		Drink: placeOf(f, v.here), Heat: v.heatWords(), Notes: v.notes,
	}
	if m.Cells, err = v.cells(ctx, m.X.Values); err != nil {
		return nil, err
	}
	explain(m, v.sources())
	return m, nil
}

func steps(from, to, step float64) []float64 {
	var list []float64
	for i := 0.0; from+i*step <= to+step/2; i++ {
		list = append(list, from+i*step)
	}
	return list
}

func placeOf(f *facts.Facts, y *float64) beverage.MapPlace {
	pH := f.PH.Decides
	return beverage.MapPlace{X: pH.MidOrNil(), XLow: pH.LowOrNil(), XHigh: pH.HighOrNil(), Y: y}
}

// mapped is a drink made ready to be tried at other places.
type mapped struct {
	base  *beverage.Drink
	over  MapOver
	axis  beverage.MapAxis
	here  *float64 // where the drink stands on the axis
	holdC float64
	holdS float64
	hot   bool // whether anything says how hot the drink gets
	scale func(d *beverage.Drink, gPerL float64)
	notes []string
	heats bool
	lib   *ingredient.Library
}

func newMapped(f *facts.Facts, over MapOver, holdS beverage.Given[float64]) (*mapped, error) {
	if len(f.Protein.Parts) == 0 {
		return nil, errors.New("no protein whose amount is known, so there is no map of it")
	}
	v := &mapped{base: mapBase(f.Drink), over: over, lib: ingredient.Default(), heats: f.Process.Heats(), notes: []string{}}
	var held bool
	v.holdC, v.holdS, held = f.Plateau()
	v.hot = held
	if holdS.Known {
		v.holdS, held = holdS.V, true
	}
	if over == MapConcentration {
		return v, v.overConcentration(f, held)
	}
	return v, v.overTemperature(f, held)
}

// mapBase is the drink without what was read in it as it is made: at another
// place it would read otherwise.
func mapBase(d *beverage.Drink) *beverage.Drink {
	c := *d
	c.Measured = beverage.Readings{PHTolerance: beverage.Say(mapStepPH / 2), PHDegassed: beverage.Say(true), PHTempC: beverage.Say(coolC)}
	c.Bench = nil
	c.Ingredients = slices.Clone(d.Ingredients)
	return &c
}

func (v *mapped) overTemperature(f *facts.Facts, held bool) error {
	if !held {
		return errors.New("says neither how hot nor how long the drink is held, so there is no map over temperature; give process.hold_temperature and process.hold_time, zones or a record, or --hold-time, or map over concentration")
	}
	v.axis = beverage.MapAxis{Name: "temperature of the hold", Unit: "°C", Step: mapStepC, Values: steps(mapFromC, mapToC, mapStepC)}
	if v.hot {
		v.here = &v.holdC
	}
	if !v.heats {
		v.base.Process.Route = beverage.Say(beverage.Flash)
		v.notes = append(v.notes, fmt.Sprintf("%s: drawn as if the drink were held in a tube", unheatedWords(f.Process.Route)))
	}
	v.heats = true
	v.plainHold(f)
	return nil
}

func unheatedWords(r beverage.Route) string {
	if r == "" {
		return "the spec states no route"
	}
	return fmt.Sprintf("the route, %s, does not heat", r)
}

func (v *mapped) overConcentration(f *facts.Facts, held bool) error {
	g := f.Protein.GPerL
	if !g.Known() || !(f.Protein.Main.GPerL.Mid > 0) {
		return errors.New("the protein of an ingredient is not known, so there is no map over concentration")
	}
	step := mapStepG * math.Max(1, math.Ceil(g.Mid/(mapStepG*(mapRows-1))))
	v.axis = beverage.MapAxis{Name: "protein", Unit: "g/L", Step: step, Values: steps(step, step*mapRows, step)}
	v.here = &g.Mid
	v.scale = scaling(f)
	if held && v.hot {
		v.plainHold(f)
	}
	return nil
}

// plainHold puts one hold in place of records and zones, since a record of one run
// says nothing of another drink.
func (v *mapped) plainHold(f *facts.Facts) {
	p := &v.base.Process
	if len(p.Records) > 0 || len(p.Zones) > 0 {
		v.notes = append(v.notes, "the record or the zones stand as one hold: the time spent within 2 °C of the hottest")
	}
	p.Records, p.Zones, p.Critical = nil, nil, nil
	p.HoldTempC, p.HoldS = beverage.Say(v.holdC), beverage.Say(v.holdS)
}

// scaling changes the amounts of what is sold as protein, and leaves what protein
// the rest brings.
func scaling(f *facts.Facts) func(d *beverage.Drink, gPerL float64) {
	places, scaled := map[beverage.Place]bool{}, 0.0
	for i := range f.Protein.Parts {
		p := &f.Protein.Parts[i]
		if p == f.Protein.Main || p.Line.Kind == beverage.KindProtein {
			places[p.Line.Line.Place], scaled = true, scaled+p.GPerL.Mid
		}
	}
	rest := f.Protein.GPerL.Mid - scaled
	return func(d *beverage.Drink, gPerL float64) {
		by := math.Max(0, gPerL-rest) / scaled
		for i := range d.Ingredients {
			if a := &d.Ingredients[i].Amount; a.Known && places[d.Ingredients[i].Place] {
				a.V.Value *= by
			}
		}
	}
}

func (v *mapped) heatWords() string {
	switch {
	case !v.heats:
		return "no heat"
	case v.over == MapTemperature:
		return fmt.Sprintf("held for %.4g s at each temperature", v.holdS)
	case v.holdS > 0 && v.hot:
		return fmt.Sprintf("held at %.4g °C for %.4g s", v.holdC, v.holdS)
	}
	return "heated, nobody says how hot or how long"
}

// at is the drink at a place.
func (v *mapped) at(pH, y float64) *facts.Facts {
	d := mapBase(v.base)
	d.Measured.PH = beverage.Say(pH)
	switch v.over {
	case MapTemperature:
		d.Process.HoldTempC = beverage.Say(y)
		if c := &d.Process.PackHoldC; c.Known {
			c.V = math.Min(c.V, y)
		}
		if c := &d.Process.FillTempC; c.Known {
			c.V = math.Min(c.V, y)
		}
	case MapConcentration:
		v.scale(d, y)
	}
	return (&facts.Facts{}).Varied(d, v.lib)
}

// cells asks at every place, several at a time.
func (v *mapped) cells(ctx context.Context, pHs []float64) ([]beverage.MapCell, error) {
	cells := make([]beverage.MapCell, len(pHs)*len(v.axis.Values))
	g := errgroup.Group{}
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range cells {
		g.Go(func() error {
			if ctx.Err() == nil {
				cells[i] = v.cell(pHs[i%len(pHs)], v.axis.Values[i/len(pHs)])
			}
			return ctx.Err()
		})
	}
	return cells, g.Wait()
}

func (v *mapped) cell(pH, y float64) beverage.MapCell {
	f := v.at(pH, y)
	c := beverage.MapCell{X: pH, Y: y, Findings: []beverage.MapFinding{}, Denatured: f.Protein.Denatured.MidOrNil(), CannotTell: f.ProteinUntold()}
	for _, x := range rule.About(f, facts.AboutProtein) {
		window, _ := x.Values["window"].(string)
		one := beverage.MapFinding{ID: x.ID, Level: x.Level, Window: window}
		if !slices.Contains(c.Findings, one) {
			c.Findings = append(c.Findings, one)
		}
	}
	looks, _ := f.Protein.Main.Composition.Clarity(f.PH.Decides, f.Ions.SaltMM)
	c.Looks = looks.String()
	return c
}

// sources are the windows by id, for who wants to know what they rest on.
func (v *mapped) sources() func(window string) string {
	return func(id string) string {
		w, ok := windows.WindowByID(id)
		if !ok {
			return ""
		}
		return fmt.Sprintf("%s (%s): %s", w.What, w.ID, w.Source.Text)
	}
}
