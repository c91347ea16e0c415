package assess

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/thermal"
)

// Above its reference temperature an organism is credited by the larger of its
// published z-values, and never beyond the range it was measured in.
func TestAnOrganismIsCreditedByTheUnfavourableZ(t *testing.T) {
	file := filepath.Join(t.TempDir(), "hot.csv")
	require.NoError(t, os.WriteFile(file, []byte("time_s,Can (°C)\n0,95\n60,95\n120,95\n180,95\n"), 0o600))
	o, ok := thermal.FindOrganism("Salmonella enterica")
	require.True(t, ok)
	r, err := NewLogReader(LogOptions{Organism: o.Name, ToleranceC: 0.5})
	require.NoError(t, err)
	log, err := r.Read(context.Background(), file)
	require.NoError(t, err)
	want := 3 * (thermal.Reference{TrefC: o.TrefC, ZC: o.ZHigh}).LethalRate(o.MaxC)
	require.InDelta(t, want, *log.Probes[0].CreditedMinutes, 1e-6)
}
