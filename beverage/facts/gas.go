package facts

import (
	"strings"

	"posset/beverage"
	"posset/carbonation"
)

// Gas is the CO2 of the drink.
type Gas struct {
	Present     bool
	Volumes     beverage.Given[float64] // the unfavourable one where two are stated
	ByReading   beverage.Given[float64] // from temperature and pressure
	Conflict    bool                    // volumes and reading do not belong together
	Half        bool                    // only one of temperature and pressure is given
	Impossible  string                  // why the reading cannot be
	EndOfLife   beverage.Interval       // volumes left at the end of shelf life; unknown where it cannot be told
	LossPercent beverage.Interval       // a month
}

// readingsAgree is how far stated volumes and a pressure reading may lie apart,
// relatively, before one of them must be wrong: the spread of published
// solubility and of a shake test together. Common practice, no source.
const readingsAgree = 0.08

func gasOf(f *Facts) Gas {
	d := f.Drink
	g := Gas{Present: d.Carbonation != nil || f.has("carbon dioxide")}
	if d.Carbonation == nil {
		return g
	}
	c := d.Carbonation
	g.Half = c.TempC.Known != c.Pressure.Known
	g.ByReading, g.Impossible = volumesRead(d, f.liquid())
	g.Volumes = c.Volumes
	if g.ByReading.Known && (!c.Volumes.Known || g.ByReading.V > c.Volumes.V) {
		g.Volumes = g.ByReading
	}
	if g.ByReading.Known && c.Volumes.Known {
		lo, hi := min(g.ByReading.V, c.Volumes.V), max(g.ByReading.V, c.Volumes.V)
		g.Conflict = hi-lo > readingsAgree*hi
	}
	g.LossPercent, g.EndOfLife = lossOf(d, g.Volumes)
	return g
}

// volumesOf is what the drink holds as far as it can be told without a recipe.
func volumesOf(d *beverage.Drink) (float64, bool) {
	if d.Carbonation == nil {
		return 0, false
	}
	v := d.Carbonation.Volumes
	if r, _ := volumesRead(d, carbonation.Liquid{}); r.Known && (!v.Known || r.V > v.V) {
		v = r
	}
	return v.V, v.Known
}

// volumesRead turns temperature and pressure at equilibrium into volumes.
func volumesRead(d *beverage.Drink, l carbonation.Liquid) (beverage.Given[float64], string) {
	c := d.Carbonation
	if !c.TempC.Known || !c.Pressure.Known {
		return beverage.Given[float64]{}, ""
	}
	p, err := absolute(c.Pressure.V, d.Package.AltitudeM.Or(0))
	if err != nil {
		return beverage.Given[float64]{}, plainly(err)
	}
	v, err := l.Volumes(p, c.TempC.V)
	if err != nil {
		return beverage.Given[float64]{}, plainly(err)
	}
	return beverage.Given[float64]{V: v, Known: true, Place: c.Pressure.Place}, ""
}

// plainly is what the gas model objects to, for who never met the model.
func plainly(err error) string { return strings.TrimPrefix(err.Error(), "carbonation: ") }

func absolute(p beverage.Pressure, altitudeM float64) (carbonation.AbsoluteKPa, error) {
	if !p.Gauge {
		return carbonation.AbsoluteKPa(p.KPa), nil
	}
	ambient, err := carbonation.AmbientKPa(altitudeM)
	if err != nil {
		return 0, err
	}
	return carbonation.GaugeKPa(p.KPa).Absolute(ambient)
}

func gauge(p beverage.Pressure) float64 {
	if p.Gauge {
		return p.KPa
	}
	return float64(carbonation.AbsoluteKPa(p.KPa).Gauge(carbonation.StandardAtmosphere))
}

// lossOf is the loss a month, as given or as published for the pack, and what
// is left of the volumes at the end of shelf life.
func lossOf(d *beverage.Drink, volumes beverage.Given[float64]) (loss, left beverage.Interval) {
	c := d.Carbonation
	switch {
	case c.LossPerMonthPercent.Known:
		loss = beverage.Point(c.LossPerMonthPercent.V, beverage.Stated)
	case d.Package.BrimfulML.Known && d.Package.Type.Known && d.Storage.TempC.Known:
		m, ok := carbonation.MaterialOf(string(d.Package.Type.V))
		if !ok {
			return loss, left
		}
		s, err := m.LossPerMonth(d.Package.BrimfulML.V, d.Storage.TempC.V)
		if err != nil {
			return loss, left
		}
		loss = beverage.Interval{Low: s.Low, Mid: s.Nominal, High: s.High, Basis: beverage.Library}
	}
	if !loss.Known() || !volumes.Known || !d.Storage.ShelfLifeS.Known {
		return loss, left
	}
	return loss, leftAfter(volumes.V, loss, d.Storage.ShelfLifeS.V/secondsPerMonth)
}

const secondsPerMonth = 30.4375 * 86400

func leftAfter(v float64, loss beverage.Interval, months float64) beverage.Interval {
	hi, err1 := carbonation.VolumesLeft(v, loss.Low, months)
	mid, err2 := carbonation.VolumesLeft(v, loss.Mid, months)
	lo, err3 := carbonation.VolumesLeft(v, loss.High, months)
	if err1 != nil || err2 != nil || err3 != nil {
		return beverage.Interval{}
	}
	return beverage.Interval{Low: lo, Mid: mid, High: hi, Basis: beverage.Predicted}
}

// GasLeaving is the volumes of CO2 that leave the drink when its pack is opened at
// tempC and stands until nothing more comes: what it holds less what it keeps under
// CO2 at one atmosphere. In the open all of it leaves in time. Unknown where the
// volumes are, and outside 0 to 100 °C.
func (f *Facts) GasLeaving(tempC float64) beverage.Interval {
	kept, err := f.liquid().Volumes(carbonation.StandardAtmosphere, tempC)
	if err != nil || !f.Gas.Volumes.Known {
		return beverage.Interval{}
	}
	return beverage.Point(max(0, f.Gas.Volumes.V-kept), beverage.Predicted)
}

// CounterPressure is the gauge pressure, kPa, that keeps the gas in the drink at the
// fill temperature: a filler must hold at least its high end. Unknown where volumes or
// fill temperature are.
func (f *Facts) CounterPressure() beverage.Interval {
	d := f.Drink
	ambient, err := carbonation.AmbientKPa(d.Package.AltitudeM.Or(0))
	if err != nil || !f.Gas.Volumes.Known || !d.Process.FillTempC.Known {
		return beverage.Interval{}
	}
	mid, errMid := f.liquid().Pressure(f.Gas.Volumes.V, d.Process.FillTempC.V)
	high, errHigh := f.heaviest().HighestPressure(f.Gas.Volumes.V, d.Process.FillTempC.V)
	if errMid != nil || errHigh != nil {
		return beverage.Interval{}
	}
	return beverage.Interval{Low: float64(mid.Gauge(ambient)), Mid: float64(mid.Gauge(ambient)), High: float64(high.Gauge(ambient)), Basis: beverage.Predicted}
}

// GasLiquid is the drink as the gas model sees it, for pictures.
func (f *Facts) GasLiquid() carbonation.Liquid { return f.liquid() }

func (f *Facts) liquid() carbonation.Liquid {
	return f.holding(func(i beverage.Interval) float64 { return i.Mid }, f.Recipe.SolidsGPerL)
}

// heaviest is the drink with the most in it that it may hold: it takes up the least
// gas and grows the most.
func (f *Facts) heaviest() carbonation.Liquid {
	solids := f.Recipe.SolidsGPerL
	if !solids.Known() {
		weighed := known(f.Recipe.Lines, Line.solids)
		solids = beverage.Point(min(weighed.High+heavySolidsGPerL, mostSolidsGPerL), beverage.Predicted)
	}
	return f.holding(func(i beverage.Interval) float64 { return i.High }, solids)
}

// heavySolidsGPerL stands in for what nobody weighed, beside what is: more than any
// but a syrup holds. mostSolidsGPerL is where the gas model ends. Common practice, no
// source.
const (
	heavySolidsGPerL = 300
	mostSolidsGPerL  = 400
)

func (f *Facts) holding(end func(beverage.Interval) float64, solids beverage.Interval) carbonation.Liquid {
	l := carbonation.Liquid{AlcoholFraction: f.Drink.AlcoholPercent.Or(0) / 100, IonsMolPerL: f.saltingOut()}
	if s := f.Recipe.SugarGPerL; s.Known() {
		l.SugarGPerL = end(s)
	}
	if solids.Known() && end(solids) > l.SugarGPerL {
		l.OtherGPerL = end(solids) - l.SugarGPerL
	}
	return l
}

// saltIons are the parts of the charge balance whose salting out of CO2 is published,
// as the gas model names them. Phosphate counts as its first ion, which acid drinks
// hold. Anions of organic acids have no published figure.
var saltIons = map[string]string{
	"sodium": "Na+", "potassium": "K+", "calcium": "Ca2+", "magnesium": "Mg2+", "ammonium": "NH4+",
	"chloride": "Cl-", "sulfate": "SO42-", "phosphoric": "H2PO4-",
}

// saltingOut is the ions of the drink, mol/L; nil where its chemistry is not known.
func (f *Facts) saltingOut() map[string]float64 {
	if f.PH.Chemistry == nil {
		return nil
	}
	s, ok := f.PH.Chemistry.Solution()
	if !ok {
		return nil
	}
	ions := map[string]float64{}
	for _, t := range s.Totals {
		if name, known := saltIons[t.Component]; known {
			ions[name] += t.Molality * f.PH.Chemistry.WaterKgPerL
		}
	}
	return ions
}

// has tells whether a library ingredient is in the recipe.
func (f *Facts) has(name string) bool {
	_, ok := f.Line(name)
	return ok
}

// Line returns the first line of the recipe that is the named library entry.
func (f *Facts) Line(name string) (Line, bool) {
	for _, l := range f.Recipe.Lines {
		if l.Found && l.Name == name {
			return l, true
		}
	}
	return Line{}, false
}
