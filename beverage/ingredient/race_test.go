package ingredient

import (
	"sync"
	"testing"

	"posset/beverage"
)

// TestConcurrentUse: many specs at once share one library; run with -race.
func TestConcurrentUse(t *testing.T) {
	l, err := load()
	if err != nil {
		t.Fatal(err)
	}
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for _, name := range []string{"WPI", "phosphoric acid 80 %", "apple juice", "no such thing"} {
				r := l.Resolve([]beverage.Ingredient{line(name, beverage.Description{StrengthPercent: say(70.0)})}, nil)
				if len(r) != 1 {
					t.Error(len(r))
				}
			}
			l.All()
		})
	}
	wg.Wait()
}
