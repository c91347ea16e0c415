package facts

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage/facts/checkdata"
)

// published is one drink or solution whose pH was published with its make-up.
type published struct {
	id, kind, source string
	allowed          float64 // as posset verify allows it
	pH               float64 // on the modern scale
	rough            float64 // half of the 95 % interval of the printed reading
	predicted        *Titration
	up, down         float64 // half widths without the margin
	unit             float64 // and what the margin adds to either for each 1 of it
}

// marginFor is the row of data/model_error.csv that a kind's margin stands on.
var marginFor = map[string]string{"acids and salts": "salts", "juices and extracts": "juice", "milk": "micelles", "protein": "protein"}

// rowsOf reads a data file by the names of its columns.
func rowsOf(t testing.TB, file string) []map[string]string {
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	reader := csv.NewReader(f)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	require.NoError(t, err)
	var list []map[string]string
	for _, row := range rows[1:] {
		r := map[string]string{}
		for i, h := range rows[0] {
			r[h] = row[i]
		}
		list = append(list, r)
	}
	return list
}

func number(t testing.TB, r map[string]string, column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "%v: %s", r, column)
	return v
}

func publishedDrinks(t testing.TB) []published {
	var list []published
	for _, r := range rowsOf(t, "checkdata/published_ph.csv") {
		p := published{id: r["id"], kind: r["kind"], source: r["source"], pH: number(t, r, "ph") + number(t, r, "scale"), rough: number(t, r, "rough"), allowed: number(t, r, "allowed")}
		f := factsOf(t, checkdata.Recipe(r["recipe"], r["tolerance_percent"], r["water"]))
		var err error
		p.predicted, err = f.Titrate(number(t, r, "temperature_c"))
		require.NoError(t, err, p.id)
		p.split(f.PH.Chemistry.doubts)
		list = append(list, p)
	}
	return list
}

// split parts what the margin of the row's kind adds from all other doubt.
func (p *published) split(doubts []doubt) {
	margin := marginOf(marginFor[p.kind])
	var rest []doubt
	for _, d := range doubts {
		own := d.cause == ofModel && (d.part == wholeDrink) == (p.kind == "acids and salts")
		if p.kind == "milk" || p.kind == "protein" {
			own = d.cause == ofFigure && d.figure == buffering
		}
		if own {
			p.unit = math.Hypot(p.unit, d.signed()/margin)
			continue
		}
		rest = append(rest, d)
	}
	p.up, p.down = spread(rest)
}

// needs is the least margin with which the reading is covered, its own
// roughness allowed for.
func (p *published) needs() float64 {
	miss := p.pH - p.predicted.PH.Mid
	side := p.up
	if miss < 0 {
		side = p.down
	}
	return math.Sqrt(math.Max(0, miss*miss-side*side-p.rough*p.rough)) / p.unit
}

// margin is the rule by which the margins are set.
func margin(list []published, floor float64) float64 {
	needed, sources := 0.0, map[string]bool{}
	for i := range list {
		needed = math.Max(needed, list[i].needs())
		sources[list[i].source] = true
	}
	n := float64(len(sources))
	return math.Max(floor, needed*(n+1)/n)
}

// What posset verify allows each reading is what the prediction states and the
// reading's own roughness, as squares: no more.
func TestVerifyAllowsWhatIsStated(t *testing.T) {
	for _, p := range publishedDrinks(t) {
		assert.InDelta(t, math.Hypot(half(p.predicted.PH), p.rough), p.allowed, 0.01, p.id)
	}
}

// The stated 95 % interval covers at least 95 % of the published readings of each
// kind, each with the margin that the other sources alone would have set.
func TestPublishedDrinksAreCovered(t *testing.T) {
	all := publishedDrinks(t)
	rows := rowsOf(t, "data/model_error.csv")
	t.Logf("%-20s %4s %7s %9s %8s %8s %8s", "kind", "n", "sources", "as stated", "printed", "left out", "width")
	for _, kind := range []string{"acids and salts", "juices and extracts", "milk", "protein"} {
		list := slices.DeleteFunc(slices.Clone(all), func(p published) bool { return p.kind != kind })
		i := slices.IndexFunc(rows, func(r map[string]string) bool { return r["name"] == marginFor[kind] })
		floor, value := number(t, rows[i], "floor"), number(t, rows[i], "value")
		sources := map[string]bool{}
		covered, printed, leftOut, width := 0, 0, 0, 0.0
		for _, p := range list {
			sources[p.source] = true
			rest := slices.DeleteFunc(slices.Clone(list), func(o published) bool { return o.source == p.source })
			if p.needs() <= margin(rest, floor) {
				leftOut++
			} else {
				t.Logf("without %q the interval of %s misses %.3f: it needs %.3g, the others give %.3g", p.source, p.id, p.pH, p.needs(), margin(rest, floor))
			}
			if p.needs() <= value {
				covered++
			}
			i := p.predicted.PH
			if p.pH >= i.Low && p.pH <= i.High {
				printed++
			}
			width += (i.High - i.Low) / 2 / float64(len(list))
		}
		n := len(list)
		t.Logf("%-20s %4d %7d %9d %8d %8d %8.2f", kind, n, len(sources), covered, printed, leftOut, width)
		assert.GreaterOrEqual(t, float64(leftOut), 0.95*float64(n), "%s: left out", kind)
		assert.GreaterOrEqual(t, float64(covered), 0.95*float64(n), "%s: as stated", kind)
		assert.Equal(t, float64(n), number(t, rows[i], "n"), "%s: n of the data file", kind)
		assert.Equal(t, float64(len(sources)), number(t, rows[i], "sources"), "%s: sources of the data file", kind)
		set := margin(list, floor)
		assert.InDelta(t, set, value, math.Max(0.01, 0.05*set), "%s: the margin is neither narrower nor wider than its rule", kind)
	}
}
