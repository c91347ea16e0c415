package facts

import (
	"context"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"posset/beverage"
	"posset/thermal/logfile"
)

// A record that may be in °C or °F counts as told only where the spec says which.
func TestUnitOfARecordSettlesItsDoubt(t *testing.T) {
	dir := t.TempDir()
	rows := []string{"Time (s),Hold tube outlet (°C)"}
	for _, step := range []struct {
		c    string
		rows int
	}{{"78.0", 1}, {"100.0", 1}, {"125.0", 1}, {"139.0", 40}, {"120.0", 1}, {"100.0", 1}, {"80.0", 1}} {
		for range step.rows {
			rows = append(rows, strconv.Itoa(20*(len(rows)-1))+","+step.c)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "run.csv"), []byte(strings.Join(rows, "\n")), 0o600); err != nil {
		t.Fatal(err)
	}
	for unit, doubted := range map[string]bool{"": true, "C": false} {
		d := &beverage.Drink{Dir: dir}
		rec := beverage.Record{File: "run.csv"}
		rec.Unit.V, rec.Unit.Known = unit, unit != ""
		d.Process.Records = []beverage.Record{rec}
		r, err := recordsOf(context.Background(), d)
		if err != nil {
			t.Fatal(err)
		}
		p := r.Logs[0].Log.Probes[0]
		has := false
		for _, f := range p.Faults {
			has = has || f.Kind == logfile.UnitDoubt
		}
		if has != doubted {
			t.Errorf("unit %q: doubted %v, want %v: %v", unit, has, doubted, p.Faults)
		}
		if credited := *p.Results[0].CreditedMin > 1; credited == doubted {
			t.Errorf("unit %q: credited %g min", unit, *p.Results[0].CreditedMin)
		}
	}
}
