package assess

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/heatpen"
)

// The can heats as a straight line in log10 by fh 8 min and jh 1.2, from the
// corrected zero: what comes out is what went in.
func TestHeatingFindsWhatARecordWasMadeOf(t *testing.T) {
	const fh, jh, retortC, initialC = 8.0, 1.2, 121.0, 60.0
	var b strings.Builder
	b.WriteString("Time (min),Retort (C),Can (C)\n")
	for m := 0; m <= 24; m++ {
		medium := min(retortC, 60+12.2*float64(m)) + 0.01*float64(m%3)
		can := retortC - min(retortC-initialC, jh*(retortC-initialC)*pow10(-(float64(m)-0.58*5)/fh))
		fmt.Fprintf(&b, "%d,%.3f,%.3f\n", m, medium, can+0.001*float64(m%2))
	}
	file := filepath.Join(t.TempDir(), "test.csv")
	require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o600))
	o := HeatingOptions{Target: beverage.Target{Text: "F0 6 min", Kind: beverage.TargetMinutes, Minutes: 6, TrefC: 121.1, ZC: 10},
		RetortC: 121.5, InitialC: 60.5, ToleranceC: 0.5, ComeUpS: beverage.Say(300.0)}
	r, errs := Heating(o, []HeatingRecord{o.ReadHeating(context.Background(), file)})
	require.Empty(t, errs)
	require.Len(t, r.Containers, 1)
	assert.InDelta(t, fh, *r.Containers[0].FhMinutes, 0.05)
	assert.InDelta(t, jh, *r.Containers[0].Jh, 0.03)
	assert.InDelta(t, 5, *r.Logs[0].ComeUpMinutes, 0.01)
	assert.Nil(t, r.Containers[0].FcMinutes, "no cooling was recorded")
	assert.Contains(t, r.Notes, "Can: no cooling was read off its record, and none is relied on")
	want, err := heatpen.Curve{FhMin: *r.Containers[0].FhMinutes, Jh: *r.Containers[0].Jh, ComeUpMin: 5}.BallTime(
		heatpen.Target{Minutes: 6, Basis: thermal.F0.Bound()}, heatpen.Process{RetortC: 121, InitialC: 60, ComeUpMin: 5})
	require.NoError(t, err)
	assert.InDelta(t, want.CountMin, r.BallMinutes, 1e-9)
	assert.GreaterOrEqual(t, r.CountMinutes, r.BallMinutes)
	assert.GreaterOrEqual(t, r.CountMinutes, r.GeneralMinutes)
	assert.Less(t, *r.AtItsWordMinutes, r.CountMinutes, "tolerance counts against the process")
}

func pow10(x float64) float64 { return thermal.Reference{TrefC: 0, ZC: 1}.LethalRate(x) }

func TestSteamIsOnWhereTheMediumBeginsToRise(t *testing.T) {
	at := func(temps ...float64) []thermal.Point {
		var ps []thermal.Point
		for i, c := range temps {
			ps = append(ps, thermal.Point{TimeS: float64(60 * i), TempC: c})
		}
		return ps
	}
	for _, c := range []struct {
		name   string
		points []thermal.Point
		hold   float64
		want   float64
	}{
		{"at once", at(30, 80, 121, 121), 120, 0},
		{"after waiting", at(30, 30.4, 29.8, 80, 121), 240, 120},
		{"a hot retort that is loaded first", at(95, 70, 60, 80, 121), 240, 120},
		{"cold water after the hold is not steam on", at(60, 121, 121, 20, 20), 60, 0},
	} {
		if got := steamOn(c.points, heatpen.Medium{HoldAtS: c.hold}); got != c.want {
			t.Errorf("%s: got %g s, want %g s", c.name, got, c.want)
		}
	}
}
