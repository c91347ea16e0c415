package logfile

import "fmt"

// cutShortShare is how far up from its start to its peak a probe may stand at
// the end of a record that is whole: common practice, no source.
const (
	cutShortShare = 0.6
	cutShortC     = 20.0 // C° a probe must have risen, for its end to be told from its beginning
)

func unitName(u string) string {
	if u == "K" {
		return "kelvin"
	}
	return "°" + u
}

// finish closes the books and writes the log down.
func (a *analysis) finish(r *rowReader) (*Log, error) {
	if r.rows < 2 {
		return nil, fmt.Errorf("%s: %s of readings; at least two are needed", r.name, plural(r.rows, "row"))
	}
	if r.skipped > r.rows {
		return nil, fmt.Errorf("%s:%d: %d of %d rows have no readable time", r.name, r.firstSkipped, r.skipped, r.skipped+r.rows)
	}
	l := &Log{}
	for _, t := range a.tracks {
		l.Probes = append(l.Probes, t.probe())
	}
	if !anySamples(l.Probes) {
		return nil, fmt.Errorf("%s: no reading can be a temperature", r.name)
	}
	l.Understood = a.understood(r)
	a.giveBack()
	return l, nil
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func anySamples(probes []Probe) bool {
	for _, p := range probes {
		if p.Samples > 0 {
			return true
		}
	}
	return false
}

func (t *track) probe() Probe {
	t.checkEnd()
	p := Probe{
		Name: t.name, Role: t.role, RoleBasis: t.basis, Unit: t.column.unit, ResolutionC: t.prof.resC,
		Samples: t.samples, StartS: t.startS, EndS: t.endS, LoweredC: t.excessC,
	}
	if t.samples > 0 {
		p.Start, p.End = t.a.clock.text(t.startS), t.a.clock.text(t.endS)
		p.MinC, p.MaxC = t.minC, t.maxC
	}
	ph := &t.led.phase
	if ph.started && !ph.cooling {
		ph.book()
	}
	if ph.started {
		p.PeakS = ph.topS
	}
	if ph.bestOK && ph.best.EndS > ph.best.StartS {
		hold := ph.best
		p.Hold = &hold
	}
	p.Results, p.Stays = t.results(), t.stays()
	p.Faults = t.faults.list()
	return p
}

// results writes lethality down; a probe without two readings, and credit for
// what is no product, stay unknown.
func (t *track) results() []Result {
	out := make([]Result, len(t.bases))
	for i := range out {
		if t.samples < 2 || t.endS <= t.startS {
			continue
		}
		word := t.word[i]
		out[i].LethalityMin = &word
		if most := max(word, t.most[i]); t.bases[i].Bound != nil {
			out[i].MostMin = &most
		}
		if t.role != Product {
			continue
		}
		credited, heating, hold := t.led.credited[i], t.led.phase.heating[i], t.led.phase.hold[i]
		before := heating + hold
		out[i].CreditedMin, out[i].CreditedBeforeCoolingMin = &credited, &before
		out[i].CreditedHeatingMin, out[i].CreditedHoldMin = &heating, &hold
	}
	return out
}

func (t *track) stays() []Stay {
	out := make([]Stay, len(t.wordStay))
	for i := range out {
		out[i].AtC = t.a.o.StaysAtC[i]
		if t.samples < 2 || t.endS <= t.startS {
			continue
		}
		word, total := t.wordStay[i].bestS, t.wordStay[i].totalS
		out[i].WordS, out[i].TotalS = &word, &total
		if t.role == Product {
			credited := t.led.stays[i].bestS
			out[i].CreditedS = &credited
		}
	}
	return out
}

// checkEnd notes a record that ends while the probe is hot.
func (t *track) checkEnd() {
	last := t.led.last
	if !last.have || t.role == Other {
		return
	}
	if rise := t.maxC - t.firstC; rise >= cutShortC && last.c > t.firstC+cutShortShare*rise {
		t.faults.note(CutShort, t.lastLine, t.a.clock.text(last.t), fmt.Sprintf("the record ends at %s, still hot; what came after is not known", degrees(last.c)))
	}
}

// understood tells what the file was taken for.
func (a *analysis) understood(r *rowReader) Understood {
	l := a.layout
	u := Understood{
		Separator: map[byte]string{',': "comma", ';': "semicolon", '\t': "tab"}[l.table.sep], DecimalMark: "point",
		HeadingRow: l.table.heading + 1, FirstRow: l.table.first + 1, Rows: r.rows,
		TimeForm: l.time.words(), DateOrder: string(l.time.order), DateBasis: l.time.orderBasis,
		IntervalS: a.seq.cad.usualS, UnitBasis: l.basis, NewestFirst: a.newestFirst,
		SkippedRows: r.skipped, FirstSkipped: r.firstSkipped, LeftOut: l.leftOut,
	}
	if l.table.mark == ',' {
		u.DecimalMark = "comma"
	}
	for i, t := range a.tracks {
		if i == 0 || t.prof.resC < u.ResolutionC {
			u.ResolutionC = t.prof.resC
		}
		switch u.Unit {
		case "", t.column.unit:
			u.Unit = t.column.unit
		default:
			u.Unit = "mixed"
		}
	}
	return u
}
