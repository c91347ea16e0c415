package checkvalue

// given is what a model is given, checked against its parameters: what they ask
// for is there, and 0 or "" stands only for what is optional.
type given map[string]any

func (g given) text(name string) string {
	s, _ := g[name].(string)
	return s
}

func (g given) number(name string) float64 { return g.one(name, plain) }
func (g given) in(name, suffix string) float64 {
	return g.one(name, []unit{{suffix: "_" + suffix, times: 1}})
}
func (g given) celsius(name string) float64       { return g.one(name, celsius) }
func (g given) difference(name string) float64    { return g.one(name, differences) }
func (g given) seconds(name string) float64       { return g.one(name, seconds) }
func (g given) celsiusEach(name string) []float64 { return g.each(name, celsius) }
func (g given) secondsEach(name string) []float64 { return g.each(name, seconds) }
func (g given) numberEach(name string) []float64  { return g.each(name, plain) }

// asGiven is the number in whatever unit it is given in.
func (g given) asGiven(name string, units []unit) float64 {
	v, _, _, _ := param{name: name, units: units}.find(g)
	x, _ := v.(float64)
	return x
}

func (g given) one(name string, units []unit) float64 {
	v, _, u, _ := param{name: name, units: units}.find(g)
	x, ok := v.(float64)
	if !ok {
		return 0
	}
	return (x + u.add) * u.times
}

func (g given) each(name string, units []unit) []float64 {
	v, _, u, _ := param{name: name, units: units}.find(g)
	list, _ := v.([]float64)
	out := make([]float64, len(list))
	for i, x := range list {
		out[i] = (x + u.add) * u.times
	}
	return out
}
