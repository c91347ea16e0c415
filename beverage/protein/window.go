package protein

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"posset/beverage"
)

// Topic is what a window is about.
type Topic string

// The topics that have published windows.
const (
	TopicIsoelectric  Topic = "isoelectric"
	TopicClarity      Topic = "clarity"
	TopicSaltHaze     Topic = "salt haze"
	TopicGelation     Topic = "gelation"
	TopicColdGel      Topic = "cold gelation"
	TopicAcidCurd     Topic = "casein acid curd"
	TopicCaseinHeat   Topic = "casein heat"
	TopicCalcium      Topic = "calcium"
	TopicPHDrop       Topic = "ph drop on heating"
	TopicFouling      Topic = "fouling"
	TopicHaze         Topic = "polyphenol haze"
	TopicAnionicGum   Topic = "anionic gum"
	TopicViscosity    Topic = "viscosity"
	TopicAstringency  Topic = "astringency"
	TopicSediment     Topic = "sediment"
	TopicAgeGelation  Topic = "age gelation"
	TopicBrowning     Topic = "browning"
	TopicFoam         Topic = "foam"
	TopicBitterness   Topic = "bitterness"
	TopicLight        Topic = "light"
	TopicFiltration   Topic = "filtration"
	TopicPressure     Topic = "pressure"
	TopicDenaturation Topic = "denaturation temperature"
)

// Topics lists every topic in the order in which they are told.
var Topics = []Topic{TopicIsoelectric, TopicClarity, TopicSaltHaze, TopicGelation, TopicColdGel, TopicAcidCurd, TopicCaseinHeat, TopicCalcium, TopicPHDrop, TopicFouling, TopicHaze, TopicAnionicGum, TopicViscosity, TopicAstringency, TopicSediment, TopicAgeGelation, TopicBrowning, TopicFoam, TopicBitterness, TopicLight, TopicFiltration, TopicPressure, TopicDenaturation}

// Range is a stretch of a quantity, open where an end is infinite. The zero value
// is a point at 0; Any is the whole line.
type Range struct{ Low, High float64 }

// Any is every value: the source does not restrict the quantity.
var Any = Range{Low: math.Inf(-1), High: math.Inf(1)}

// Standing is where a drink stands against a range. The zero value is unknown.
type Standing int

// Straddles means that part of the drink's interval lies inside.
const (
	StandingUnknown Standing = iota
	Inside
	Straddles
	Out
)

func (s Standing) String() string {
	return [...]string{"unknown", "inside", "may be inside", "outside"}[s]
}

// MayBeInside is the cautious reading where being inside is a fault: true unless
// the whole of the drink's interval lies outside.
func (s Standing) MayBeInside() bool { return s != Out }

// SurelyInside is the cautious reading where being inside is a merit.
func (s Standing) SurelyInside() bool { return s == Inside }

// Stands tells where x stands. Ends belong to the range, but an interval that only
// touches an end lies outside.
func (r Range) Stands(x beverage.Interval) Standing {
	touches := x.Low < x.High && (x.High == r.Low || x.Low == r.High)
	switch {
	case !x.Known():
		return StandingUnknown
	case touches:
		return Out
	case x.Low >= r.Low && x.High <= r.High:
		return Inside
	case x.High < r.Low || x.Low > r.High:
		return Out
	}
	return Straddles
}

// Unbounded tells whether the range says nothing.
func (r Range) Unbounded() bool { return r == Any }

// Window is one published window.
type Window struct {
	ID         string
	Topic      Topic
	Families   []Family
	What       string // what happens inside it
	Span       Range  // the window itself, in Unit; Any where it is told in words only
	Unit       string
	PH         Range   // where the source speaks; Any: not restricted
	ProteinGL  Range   // g/L
	IonicMM    Range   // mmol/L
	TempC      Range   // °C, of the heat or the storage the topic is about
	Says       Clarity // topic clarity alone
	Conditions string  // of the source
	Moves      string  // what would move the drink
	Source     beverage.Source
	Confidence string // high | medium | low
}

// Speaks tells whether the window is about the family.
func (w Window) Speaks(f Family) bool { return slices.Contains(w.Families, f) }

// At is where a drink stands. What is unknown may lie anywhere.
type At struct {
	PH        beverage.Interval
	ProteinGL beverage.Interval // g/L, of the family
	IonicMM   beverage.Interval // mmol/L
	TempC     beverage.Interval // °C, of the heat or the storage the topic is about
}

// Applies tells whether the drink may lie where the window's source speaks.
func (w Window) Applies(at At) bool {
	return w.PH.Stands(at.PH).MayBeInside() && w.ProteinGL.Stands(at.ProteinGL).MayBeInside() &&
		w.IonicMM.Stands(at.IonicMM).MayBeInside() && w.TempC.Stands(at.TempC).MayBeInside()
}

var windows = sync.OnceValues(readWindows)

// Windows returns every window of a topic, in the order of the data.
func Windows(topic Topic) []Window {
	all, _ := windows()
	var of []Window
	for _, w := range all {
		if w.Topic == topic {
			of = append(of, w)
		}
	}
	return of
}

// WindowsFor returns the windows of a topic that speak of a family. The slice is
// everybody's: it is only to be read.
func WindowsFor(topic Topic, f Family) []Window { return windowsFor()[about{topic, f}] }

// about is what windows are asked for.
type about struct {
	topic  Topic
	family Family
}

// windowsFor sorts the windows once by what they are asked for.
var windowsFor = sync.OnceValue(func() map[about][]Window {
	all, _ := windows()
	sorted := map[about][]Window{}
	for _, w := range all {
		for _, f := range w.Families {
			sorted[about{w.Topic, f}] = append(sorted[about{w.Topic, f}], w)
		}
	}
	return sorted
})

// WindowByID finds one window.
func WindowByID(id string) (Window, bool) {
	all, _ := windows()
	i := slices.IndexFunc(all, func(w Window) bool { return w.ID == id })
	if i < 0 {
		return Window{}, false
	}
	return all[i], true
}

func readWindows() ([]Window, error) {
	rows, err := readTable("windows.csv")
	if err != nil {
		return nil, err
	}
	var all []Window
	for _, r := range rows {
		w, err := r.window()
		if err != nil {
			return nil, fmt.Errorf("windows.csv: %q: %w", r["id"], err)
		}
		all = append(all, w)
	}
	return all, nil
}

func (r row) window() (Window, error) {
	w := Window{ID: r["id"], Topic: Topic(r["topic"]), What: r["what"], Unit: r["unit"], Conditions: r["conditions"],
		Moves: r["moves"], Source: r.source(), Confidence: r["confidence"]}
	w.Says = clarities[r["says"]]
	if !slices.Contains(Topics, w.Topic) {
		return w, fmt.Errorf("topic %q is unknown", w.Topic)
	}
	for name := range strings.SplitSeq(r["families"], "|") {
		if !slices.Contains(Families, Family(name)) {
			return w, fmt.Errorf("family %q is unknown", name)
		}
		w.Families = append(w.Families, Family(name))
	}
	for prefix, into := range map[string]*Range{"": &w.Span, "ph_": &w.PH, "g_per_l_": &w.ProteinGL, "ionic_": &w.IonicMM, "c_": &w.TempC} {
		var err error
		if *into, err = r.reach(prefix); err != nil {
			return w, err
		}
	}
	return w, nil
}

// reach reads a low and a high that may be open.
func (r row) reach(prefix string) (Range, error) {
	low, err := r.numberOr(prefix+"low", math.Inf(-1))
	if err != nil {
		return Any, err
	}
	high, err := r.numberOr(prefix+"high", math.Inf(1))
	return Range{low, high}, err
}
