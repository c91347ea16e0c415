package checkvalue

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// model recomputes one kind of published value.
type model struct {
	params  []param
	compute func(given) (float64, error)
}

// registry names what recomputes each model. The models of a package stand in the
// file that is named for it, with the unit of what they return.
var registry = join(thermalModels, heatingModels, holdtubeModels, acidModels, carbonationModels, proteinModels, lawModels, ingredientModels, factsModels)

func join(parts ...map[string]model) map[string]model {
	joined := map[string]model{}
	for _, p := range parts {
		maps.Copy(joined, p)
	}
	return joined
}

// param is something that a model is given. Its key in the data is the name with
// the suffix of the unit: t_c or t_f.
type param struct {
	name     string
	units    []unit // none: it is text
	list     bool
	optional bool
}

// unit turns a number as given into the first unit of its row below.
type unit struct {
	suffix, shown string
	add, times    float64 // (v + add) * times
}

const (
	freezingF = 32
	perF      = 1 / 1.8
)

var (
	plain       = []unit{{"", "", 0, 1}}
	celsius     = []unit{{"_c", "°C", 0, 1}, {"_f", "°F", -freezingF, perF}}
	differences = []unit{{"_c", "C°", 0, 1}, {"_f", "F°", 0, perF}}
	seconds     = []unit{{"_s", "s", 0, 1}, {"_min", "min", 0, 60}}
)

func text(name string) param        { return param{name: name} }
func number(name string) param      { return param{name: name, units: plain} }
func temperature(name string) param { return param{name: name, units: celsius} }
func difference(name string) param  { return param{name: name, units: differences} }
func duration(name string) param    { return param{name: name, units: seconds} }

// in is a number in the one unit that its suffix names.
func in(name, suffix, shown string) param {
	return param{name: name, units: []unit{{"_" + suffix, shown, 0, 1}}}
}

func listOf(p param) param   { p.list = true; return p }
func optional(p param) param { p.optional = true; return p }

// find returns the value given for p, its key and its unit.
func (p param) find(values map[string]any) (any, string, unit, bool) {
	if p.units == nil {
		v, ok := values[p.name]
		return v, p.name, unit{}, ok
	}
	for _, u := range p.units {
		if v, ok := values[p.name+u.suffix]; ok {
			return v, p.name + u.suffix, u, true
		}
	}
	return nil, p.name, unit{}, false
}

// check brings the value of p to float64, []float64 or string in place and returns
// its key.
func (p param) check(values map[string]any) (key string, err error) {
	v, key, _, ok := p.find(values)
	switch {
	case !ok && p.optional:
		return "", nil
	case !ok:
		return "", fmt.Errorf("%s is not given", p.keys())
	}
	clean, ok := p.clean(v)
	if !ok {
		return key, fmt.Errorf("%s is %v, which is not %s", key, v, p.kind())
	}
	values[key] = clean
	return key, nil
}

func (p param) clean(v any) (any, bool) {
	if p.units == nil {
		s, ok := v.(string)
		return s, ok && s != ""
	}
	if !p.list {
		return float(v)
	}
	items, ok := v.([]any)
	list := make([]float64, len(items))
	for i, item := range items {
		x, is := float(item)
		list[i], ok = x, ok && is
	}
	return list, ok && len(list) > 0
}

// float reads a number of TOML, or the text of one from a table.
func float(v any) (float64, bool) {
	x := math.NaN()
	switch v := v.(type) {
	case float64:
		x = v
	case int64:
		x = float64(v)
	case string:
		if n, err := strconv.ParseFloat(v, 64); err == nil {
			x = n
		}
	}
	return x, !math.IsNaN(x) && !math.IsInf(x, 0)
}

func (p param) kind() string {
	switch {
	case p.units == nil:
		return "text"
	case p.list:
		return "a list of numbers"
	}
	return "a number"
}

// keys names what p may be given as.
func (p param) keys() string {
	if p.units == nil {
		return p.name
	}
	var keys []string
	for _, u := range p.units {
		keys = append(keys, p.name+u.suffix)
	}
	return strings.Join(keys, " or ")
}

// checkGiven brings all that is given to the types of the parameters; what no
// parameter asks for is an error.
func (m model) checkGiven(values map[string]any) []error {
	var faults []error
	known := map[string]bool{}
	for _, p := range m.params {
		key, err := p.check(values)
		if err != nil {
			faults = append(faults, err)
		}
		known[key] = true
	}
	for _, key := range slices.Sorted(maps.Keys(values)) {
		if !known[key] {
			faults = append(faults, fmt.Errorf("%s is given, and the model has no use for it", key))
		}
	}
	return faults
}

// condition tells what is given, in the order of the parameters.
func (m model) condition(values map[string]any) string {
	var parts []string
	for _, p := range m.params {
		v, _, u, ok := p.find(values)
		if !ok {
			continue
		}
		said := words.Replace(p.name) + " " + say(v)
		if u.shown != "" {
			said += " " + u.shown
		}
		parts = append(parts, said)
	}
	return strings.Join(parts, ", ")
}

// words turns the name of a parameter into what a person reads.
var words = strings.NewReplacer("_", " ", "ph", "pH", "co2", "CO2")

const fewEnough = 4 // numbers of a list that are told one by one

func say(v any) string {
	switch v := v.(type) {
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case []float64:
		if len(v) > fewEnough {
			return fmt.Sprintf("%d from %s to %s", len(v), say(v[0]), say(v[len(v)-1]))
		}
		var items []string
		for _, x := range v {
			items = append(items, say(x))
		}
		return strings.Join(items, "; ")
	}
	return fmt.Sprint(v)
}
