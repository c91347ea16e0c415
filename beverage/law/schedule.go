package law

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"posset/beverage"
)

// Foods that statutory and published schedules are written for.
const (
	FoodMilk            = "milk"
	FoodRichMilk        = "milk, sweetened or fat 10 % or more" // every line raised
	FoodEggnog          = "eggnog or frozen dessert mix"
	FoodUltraPasteurize = "ultra-pasteurized milk"
	FoodUHTMilk         = "UHT milk"
	FoodJuice           = "juice"
	FoodAppleJuice      = "apple juice or cider"
	FoodChilledLowAcid  = "chilled low-acid"
)

// Schedule is a temperature and a time that a text accepts for a food. TempC in
// °C, the lowest; TimeS in seconds, the shortest. TimeS 0 means that the text
// asks for "a suitable time" and names none: such a line covers nothing.
type Schedule struct {
	ID         string
	Market     beverage.Market // "" for science
	Food       string
	TempC      float64
	TimeS      float64
	Conditions string
	RowID      string
}

// Cite names the schedule's source.
func (s Schedule) Cite() string {
	r, _ := Get(s.RowID)
	return r.Cite()
}

var schedules = sync.OnceValues(func() ([]Schedule, error) {
	return each("schedules", func(rec record) (s Schedule, err error) {
		s = Schedule{ID: rec.text("id"), Market: beverage.Market(rec.text("market")), Food: rec.text("food"),
			Conditions: rec.text("conditions"), RowID: rec.text("row")}
		if s.TempC, err = rec.number("temp_c"); err != nil {
			return s, err
		}
		s.TimeS, err = rec.number("time_s")
		return s, err
	})
})

// Schedules returns the lines that a market's texts hold for a food, coldest
// first; market "" gives those of published science.
func Schedules(food string, m beverage.Market) []Schedule {
	all, _ := schedules()
	out := keep(all, func(s Schedule) bool { return s.Food == food && s.Market == m })
	slices.SortStableFunc(out, func(a, b Schedule) int { return cmp.Compare(a.TempC, b.TempC) })
	return out
}

// Covering returns a line whose temperature and time a hold reaches: tC is the
// coldest the food has at the end of the hold in °C, holdS the time of its
// fastest part in seconds. Lines without a stated time cover nothing, and
// between two lines nothing is interpolated.
func Covering(lines []Schedule, tC, holdS float64) (Schedule, bool) {
	for _, s := range lines {
		if s.TimeS > 0 && tC >= s.TempC && holdS >= s.TimeS {
			return s, true
		}
	}
	return Schedule{}, false
}

// String gives the line as a person writes it: "72 C for 15 s".
func (s Schedule) String() string {
	if s.TimeS <= 0 {
		return fmt.Sprintf("%g C for a suitable time", s.TempC)
	}
	return fmt.Sprintf("%g C for %g s", s.TempC, s.TimeS)
}
