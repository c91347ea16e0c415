package facts

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// As P2O5, by molar masses: phosphoric acid of 85 % holds 0.616 g/g, dipotassium
// phosphate 0.4074, sodium hexametaphosphate 0.696. The minerals of milk protein
// are not added phosphate.
func TestAddedPhosphateCountsAsP2O5(t *testing.T) {
	for _, c := range []struct {
		recipe string
		high   float64 // mg/L
		some   bool
	}{
		{line("micellar casein", "60 g/L"), 0, false},
		{line("phosphoric acid 85 %", "1 g/L"), 616 * 1.02, true},
		{line("dipotassium phosphate", "2 g/L") + line("micellar casein", "60 g/L"), 815 * 1.02, true},
		{line("sodium hexametaphosphate", "0.5 g/L") + line("dipotassium phosphate", "2 g/L"), (348 + 815) * 1.02, true},
	} {
		a, some := factsOf(t, c.recipe).AddedPhosphate()
		assert.Equal(t, c.some, some, c.recipe)
		assert.InDelta(t, c.high, a.AsAdded.High, 0.005*c.high+1e-9, c.recipe)
	}
	a, _ := factsOf(t, line("dipotassium phosphate", "2 g/serving")).AddedPhosphate()
	assert.False(t, a.AsAdded.Known())
}
