package protein

import (
	"testing"

	"posset/beverage"
)

// Published drinks and what was seen of them after heating.
func TestClarityOfPublishedDrinks(t *testing.T) {
	const unsaid = -1
	for _, c := range []struct {
		what  string
		id    string
		pH    beverage.Interval
		ionic float64
		want  Clarity
	}{
		{"whey, no salt, pH 3.0-3.6 (LaClair & Etzel 2010)", "whey isolate", beverage.Span(3.0, 3.6, beverage.Measured), 20, Clear},
		{"whey, 50 mmol/L salt, pH 3.3 (LaClair & Etzel 2010)", "whey isolate", beverage.Around(3.3, 0.05, beverage.Measured), 55, Clear},
		{"whey, pH 3.8 (LaClair & Etzel 2010)", "whey isolate", beverage.Around(3.8, 0.05, beverage.Measured), 20, ClarityDepends},
		{"whey, pH 4.0 (Cornacchia et al. 2014)", "whey isolate", beverage.Around(4.0, 0.05, beverage.Measured), 20, Cloudy},
		{"whey, pH 4.5 (Cornacchia et al. 2014)", "whey isolate", beverage.Around(4.5, 0.05, beverage.Measured), 20, Cloudy},
		{"whey concentrate in a citrus drink, pH 3.5 (US patent 4 200 662)", "whey concentrate", beverage.Around(3.5, 0.05, beverage.Measured), 20, NeverClear},
		{"skim milk, pH 3.6 (US patent 3 800 052): white", "milk protein", beverage.Around(3.6, 0.05, beverage.Measured), 40, NeverClear},
		{"salt not known", "whey isolate", beverage.Around(3.3, 0.05, beverage.Measured), unsaid, ClarityDepends},
		{"pH not known", "whey isolate", beverage.Interval{}, 20, Cloudy},
		{"neutral beta-lactoglobulin without salt", "beta-lactoglobulin", beverage.Around(7, 0.1, beverage.Measured), 10, ClarityDepends},
		{"neutral beta-lactoglobulin with salt", "beta-lactoglobulin", beverage.Around(7, 0.1, beverage.Measured), 100, Cloudy},
		{"collagen peptides", "collagen", beverage.Around(3.5, 0.1, beverage.Measured), 20, Clear},
		{"soy", "soy", beverage.Around(7, 0.1, beverage.Measured), 20, Cloudy},
	} {
		ionic := beverage.Point(c.ionic, beverage.Predicted)
		if c.ionic == unsaid {
			ionic = beverage.Interval{}
		}
		got, w := composition(t, c.id).Clarity(c.pH, ionic)
		equal(t, c.want, got, c.what)
		holds(t, w.ID != "", "%s: no window named", c.what)
	}
	got, _ := (*Composition)(nil).Clarity(beverage.Point(3, beverage.Measured), beverage.Interval{})
	equal(t, ClarityUnknown, got, "unknown protein")
}

func TestCurdZone(t *testing.T) {
	cold, warm := beverage.Around(20, 2, beverage.Stated), beverage.Around(47, 1, beverage.Stated)
	for _, c := range []struct {
		what      string
		tempC     beverage.Interval
		preheated bool
		high      float64
	}{
		{"cold, unheated: 5.2 (Bringe & Kinsella 1993)", cold, false, 5.2},
		{"cold, preheated: 5.4", cold, true, 5.4},
		{"47 °C: 5.8", warm, false, 5.8},
		{"temperature not known: the widest", beverage.Interval{}, false, 5.8},
	} {
		zone, w, ok := CurdZone(FamilyCasein, c.tempC, c.preheated)
		holds(t, ok && w.ID != "", "%s: no zone", c.what)
		equal(t, Range{3.85, c.high}, zone, c.what)
	}
	_, _, ok := CurdZone(FamilyWhey, cold, false)
	equal(t, false, ok, "whey curds")
}
