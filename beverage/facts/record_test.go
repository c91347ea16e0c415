package facts

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"posset/beverage"
	"posset/thermal/logfile"
)

// An organism's record falls short only where it does by every published z.
func TestFallsShortByEveryZ(t *testing.T) {
	target := TargetOf(beverage.Target{Kind: beverage.TargetReductions, Logs: 5, Organism: "Alicyclobacillus acidoterrestris"})
	for minutes, want := range map[int]beverage.Outcome{600: beverage.FallsShort, 1200: beverage.CannotTell, 4000: beverage.Meets} {
		var text strings.Builder
		text.WriteString("time (min),Can 1 (°C)\n0,20.0\n10,86.0\n")
		for m := 20; m <= minutes; m += 10 {
			fmt.Fprintf(&text, "%d,%.1f\n", m, 86+float64(m%20)/100)
		}
		fmt.Fprintf(&text, "%d,40.0\n%d,20.0\n", minutes+10, minutes+20)
		opt := logfile.Options{ToleranceC: sensorToleranceC, Bases: []logfile.Basis{target.Basis}}
		log, err := logfile.Read(context.Background(), strings.NewReader(text.String()), "run.csv", opt)
		if err != nil {
			t.Fatal(err)
		}
		if r := LogResultOf(log, opt.Bases, &target); *r.Outcome != want {
			t.Errorf("%d min at 86 °C: %v, want %v", minutes, r.Outcome, want)
		}
	}
}
