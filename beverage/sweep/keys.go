package sweep

import "posset/beverage"

// setting is a key of the spec that can be varied: how its figure stands in a
// drink. The spec's own reader says what the figure may be.
type setting struct {
	key string
	get func(d *beverage.Drink) (v float64, known bool)
	set func(d *beverage.Drink, v float64)
	// clear takes the figure out, of what was read in the drink as it is made and
	// no longer holds when the recipe is varied; nil of every other.
	clear func(d *beverage.Drink)
}

// figure is a key that holds one figure.
func figure(key string, at func(d *beverage.Drink) *beverage.Given[float64]) setting {
	return setting{
		key: key,
		get: func(d *beverage.Drink) (float64, bool) { g := at(d); return g.V, g.Known },
		set: func(d *beverage.Drink, v float64) { g := at(d); g.V, g.Known = v, true },
	}
}

// reading is a key that holds what was read in the finished drink.
func reading(key string, at func(d *beverage.Drink) *beverage.Given[float64]) setting {
	s := figure(key, at)
	s.clear = func(d *beverage.Drink) { *at(d) = beverage.Given[float64]{} }
	return s
}

// rating is that of the pack, as a gauge pressure.
func rating() setting {
	return setting{
		key: "package.pressure_rating",
		get: func(d *beverage.Drink) (float64, bool) { return d.Package.Rating.V.KPa, d.Package.Rating.Known },
		set: func(d *beverage.Drink, v float64) {
			d.Package.Rating.V, d.Package.Rating.Known = beverage.Pressure{KPa: v, Gauge: true}, true
		},
	}
}

var settings = []setting{
	figure("drink.serving", func(d *beverage.Drink) *beverage.Given[float64] { return &d.ServingML }),
	figure("drink.alcohol", func(d *beverage.Drink) *beverage.Given[float64] { return &d.AlcoholPercent }),
	reading("measured.ph", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.PH }),
	figure("measured.ph_tolerance", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.PHTolerance }),
	reading("measured.water_activity", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.WaterActivity }),
	reading("measured.brix", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.Brix }),
	reading("measured.density", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.DensityGPerML }),
	reading("measured.viscosity", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.ViscosityMilliPa }),
	figure("carbonation.volumes", func(d *beverage.Drink) *beverage.Given[float64] { return &gassed(d).Volumes }),
	figure("carbonation.loss_per_month", func(d *beverage.Drink) *beverage.Given[float64] { return &gassed(d).LossPerMonthPercent }),
	figure("package.fill", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.FillML }),
	figure("package.fill_tolerance", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.FillToleranceML }),
	figure("package.brimful", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.BrimfulML }),
	rating(),
	figure("package.liquid_nitrogen", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.NitrogenG }),
	figure("package.altitude", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.AltitudeM }),
	figure("process.hold_temperature", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.HoldTempC }),
	figure("process.hold_time", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.HoldS }),
	figure("process.fill_temperature", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.FillTempC }),
	figure("process.pack_hold_time", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.PackHoldS }),
	figure("process.pack_hold_temperature", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.PackHoldC }),
	figure("process.initial_temperature", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.InitialC }),
	figure("process.pressure", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.PressureMPa }),
	figure("process.filter_pore", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.FilterPoreUM }),
	figure("storage.temperature", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Storage.TempC }),
	figure("storage.shelf_life", func(d *beverage.Drink) *beverage.Given[float64] { return &d.Storage.ShelfLifeS }),
}

// gassed is the gas of a drink, made where it had none. It is the drink's own: a
// copied drink must not share it.
func gassed(d *beverage.Drink) *beverage.Gassing {
	if d.Carbonation == nil {
		d.Carbonation = &beverage.Gassing{}
	}
	return d.Carbonation
}

func find(key string) (setting, bool) {
	for _, s := range settings {
		if s.key == key {
			return s, true
		}
	}
	return setting{}, false
}

// Keys are the keys that can be varied.
func Keys() []string {
	keys := make([]string, len(settings))
	for i, s := range settings {
		keys[i] = s.key
	}
	return keys
}

// own is a copy of a drink whose figures can be set without touching the first.
func own(d *beverage.Drink) *beverage.Drink {
	c := *d
	if d.Carbonation != nil {
		gas := *d.Carbonation
		c.Carbonation = &gas
	}
	c.Ingredients = append([]beverage.Ingredient(nil), d.Ingredients...)
	return &c
}
