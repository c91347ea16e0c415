package sweep

import "posset/beverage"

// setting is a key of the spec that can be varied: where its figure stands in a
// drink. The spec's own reader says what the figure may be.
type setting struct {
	key string
	at  func(d *beverage.Drink) *beverage.Given[float64]
	// reading is true of what was read in the drink as it is made, which no
	// longer holds when the recipe is varied.
	reading bool
}

var settings = []setting{
	{key: "drink.serving", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.ServingML }},
	{key: "drink.alcohol", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.AlcoholPercent }},
	{key: "measured.ph", reading: true, at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.PH }},
	{key: "measured.ph_tolerance", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.PHTolerance }},
	{key: "measured.water_activity", reading: true, at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.WaterActivity }},
	{key: "measured.brix", reading: true, at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.Brix }},
	{key: "measured.density", reading: true, at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.DensityGPerML }},
	{key: "measured.viscosity", reading: true, at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Measured.ViscosityMilliPa }},
	{key: "carbonation.volumes", at: func(d *beverage.Drink) *beverage.Given[float64] { return &gassed(d).Volumes }},
	{key: "carbonation.loss_per_month", at: func(d *beverage.Drink) *beverage.Given[float64] { return &gassed(d).LossPerMonthPercent }},
	{key: "package.fill", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.FillML }},
	{key: "package.fill_tolerance", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.FillToleranceML }},
	{key: "package.brimful", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.BrimfulML }},
	{key: "package.liquid_nitrogen", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.NitrogenG }},
	{key: "package.altitude", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Package.AltitudeM }},
	{key: "process.hold_temperature", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.HoldTempC }},
	{key: "process.hold_time", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.HoldS }},
	{key: "process.fill_temperature", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.FillTempC }},
	{key: "process.pack_hold_time", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.PackHoldS }},
	{key: "process.pack_hold_temperature", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.PackHoldC }},
	{key: "process.initial_temperature", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.InitialC }},
	{key: "process.pressure", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.PressureMPa }},
	{key: "process.filter_pore", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Process.FilterPoreUM }},
	{key: "storage.temperature", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Storage.TempC }},
	{key: "storage.shelf_life", at: func(d *beverage.Drink) *beverage.Given[float64] { return &d.Storage.ShelfLifeS }},
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
