package assess

import (
	"context"
	"fmt"
	"strings"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/heatpen"
	"posset/thermal/logfile"
)

// HeatingRecord is one record of a heat-penetration test as read.
type HeatingRecord struct {
	log        beverage.HeatingLog
	containers []beverage.HeatingContainer
	tests      []heatpen.Test
	usable     []int // the container of each test
	errs       []error
}

// mostHeatingReadings bounds what is kept of one column. A test has a few
// thousand readings.
const mostHeatingReadings = 1 << 17

// ReadHeating reads one record. What is wrong with it is kept with it, for the
// result: one unusable record does not end the others.
func (o HeatingOptions) ReadHeating(ctx context.Context, file string) HeatingRecord {
	rec := HeatingRecord{log: beverage.HeatingLog{File: file}}
	var history columns
	log, err := logfile.ReadFile(ctx, file, o.logOptions(history.add))
	switch {
	case err != nil:
		return rec.failed(err)
	case history.full:
		return rec.failed(fmt.Errorf("%s: more than %d readings of a column are no heat-penetration test; cut the test out of the record", file, mostHeatingReadings))
	}
	rec.log.SHA256 = log.SHA256
	at, err := o.mediumOf(log)
	if err != nil {
		return rec.failed(err)
	}
	rec.log.Medium = log.Probes[at].Name
	run, err := runOf(history.of(at))
	if err != nil {
		return rec.failed(fmt.Errorf("%s: %s: %w", file, rec.log.Medium, plainHeating(err)))
	}
	run.tell(&rec.log)
	rec.take(log, history, run)
	if len(rec.usable) == 0 && len(rec.errs) == 0 {
		return rec.failed(fmt.Errorf("%s: no column shows the product; name one with --role \"Can 1=product\"", file))
	}
	return rec
}

// columns keeps the sound readings of each probe.
type columns struct {
	points [][]thermal.Point
	full   bool
}

func (c *columns) add(probe int, timeS, tempC float64) {
	for len(c.points) <= probe {
		c.points = append(c.points, nil)
	}
	if len(c.points[probe]) >= mostHeatingReadings {
		c.full = true
		return
	}
	c.points[probe] = append(c.points[probe], thermal.Point{TimeS: timeS, TempC: tempC})
}

func (c *columns) of(probe int) []thermal.Point {
	if probe >= len(c.points) {
		return nil
	}
	return pointsOf(c.points[probe])
}

func (o HeatingOptions) logOptions(history func(int, float64, float64)) logfile.Options {
	opt := logfile.Options{
		Unit: o.Unit, Dates: o.Dates, Sheet: o.Sheet, ToleranceC: o.ToleranceC, Roles: map[string]logfile.Role{},
		Bases: []logfile.Basis{{Name: "F0", Ref: thermal.F0}}, History: history,
	}
	for heading, role := range o.Roles {
		opt.Roles[heading] = logfile.Role(role)
	}
	if o.Medium != "" {
		opt.Roles[o.Medium] = logfile.Retort
	}
	return opt
}

// mediumOf finds the column of the medium: the one named, or the only one that
// its heading tells.
func (o HeatingOptions) mediumOf(log *logfile.Log) (int, error) {
	var found, names = -1, []string{}
	for i, p := range log.Probes {
		if p.Role != logfile.Retort {
			continue
		}
		if o.Medium != "" && sameHeading(p.Name, o.Medium) {
			return i, nil
		}
		found, names = i, append(names, p.Name)
	}
	switch {
	case len(names) == 0:
		return 0, fmt.Errorf("%s: no column is told to be the heating medium; name it with --medium %q", log.File, "Retort")
	case len(names) > 1:
		return 0, fmt.Errorf("%s: %s are all said to be the heating medium; name one with --medium", log.File, strings.Join(names, ", "))
	}
	return found, nil
}

func sameHeading(a, b string) bool {
	plain := func(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), "")) }
	return plain(a) == plain(b)
}

func (rec HeatingRecord) failed(err error) HeatingRecord {
	text := err.Error()
	rec.log.Error = &text
	rec.errs = append(rec.errs, err)
	return rec
}

// read gives the containers, which of them each test is of, and every error.
func (rec HeatingRecord) read() ([]beverage.HeatingContainer, []int, []error) {
	return rec.containers, rec.usable, rec.errs
}

// take makes a test of every product column. A column that is no heating curve
// is named and left out, and never quietly.
func (rec *HeatingRecord) take(log *logfile.Log, history columns, run mediumRun) {
	for i, p := range log.Probes {
		if p.Role != logfile.Product {
			continue
		}
		c := beverage.HeatingContainer{File: rec.log.File, Name: p.Name, RoleBasis: string(p.RoleBasis), Faults: faultsOf(p), SlipsMinutes: []float64{}}
		test := run.test(p.Name, history.of(i))
		if _, err := heatpen.Fit(test); err != nil {
			text := plainHeating(err).Error()
			c.Error = &text
			rec.errs = append(rec.errs, fmt.Errorf("%s: %s", rec.log.File, text))
		} else {
			rec.tests, rec.usable = append(rec.tests, test), append(rec.usable, len(rec.containers))
		}
		rec.containers = append(rec.containers, c)
	}
}

func faultsOf(p logfile.Probe) []beverage.FaultResult {
	list := []beverage.FaultResult{}
	for _, x := range p.Faults {
		list = append(list, beverage.FaultResult{Kind: string(x.Kind), Row: x.Row, Time: x.Time, Detail: x.Detail})
	}
	return list
}

// mediumRun is what the medium did in a test.
type mediumRun struct {
	heatpen.Medium
	steamOnS float64
}

func runOf(points []thermal.Point) (mediumRun, error) {
	m, err := heatpen.MediumOf(points)
	if err != nil {
		return mediumRun{}, err
	}
	return mediumRun{Medium: m, steamOnS: steamOn(points, m)}, nil
}

// stirsC is how far the medium may move before steam is on: a choice of ours.
const stirsC = 1.0

// steamOn is the last reading before the hold at which the medium was still
// within stirsC of the coldest it had been.
func steamOn(points []thermal.Point, m heatpen.Medium) float64 {
	coldest := points[0].TempC
	for _, p := range points {
		if p.TimeS <= m.HoldAtS {
			coldest = min(coldest, p.TempC)
		}
	}
	at := points[0].TimeS
	for _, p := range points {
		if p.TimeS < m.HoldAtS && p.TempC <= coldest+stirsC {
			at = p.TimeS
		}
	}
	return at
}

func (r mediumRun) test(name string, points []thermal.Point) heatpen.Test {
	return heatpen.Test{
		Name: name, Points: points, SteamOnS: r.steamOnS, ComeUpS: r.HoldAtS - r.steamOnS, MediumC: r.HoldC,
		CoolAtS: r.CoolAtS, CoolingC: r.CoolingC,
	}
}

func (r mediumRun) tell(l *beverage.HeatingLog) {
	comeUp := (r.HoldAtS - r.steamOnS) / secondsPerMinute
	l.HoldC, l.LowestC, l.SteamOnS, l.ComeUpMinutes = &r.HoldC, &r.LowestC, &r.steamOnS, &comeUp
	if r.CoolAtS > 0 {
		l.CoolAtS, l.CoolingC = &r.CoolAtS, &r.CoolingC
	}
}
