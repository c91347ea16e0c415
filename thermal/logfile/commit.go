package logfile

import "math"

// integrate adds up the readings a to b: at the record's word, and credited.
func (t *track) integrate(a, b int, v *view, o *order) {
	s := &t.s
	from := a
	t.addWord(a, b, v)
	if t.spoilt {
		t.kept = nil
		t.run.before = nil
		t.retract(math.Inf(-1))
	}
	t.believed = t.believed[:0]
	for i := range s.c {
		c := s.c[i]
		if s.flag[i]&uncredited != 0 {
			c = math.NaN()
		}
		t.believed = append(t.believed, c)
	}
	if start := t.run.from; t.run.ongoing() && start >= a && start < b {
		t.credit(a, start+1, o)
		before := t.led.clone()
		t.run.before = &before
		a = start + 1
	}
	t.credit(a, b, o)
	t.keep(v)
	t.tellHistory(from, b, v)
}

// addWord integrates the record at its word, and counts its readings.
func (t *track) addWord(a, b int, v *view) {
	s := &t.s
	alt := s.alternatives()
	for i := a; i < b; i++ {
		t.samples++
		if t.samples == 1 {
			t.startS, t.endS, t.firstC = s.t[i], s.t[i], s.x[i]
		}
		t.startS, t.endS = min(t.startS, s.t[i]), max(t.endS, s.t[i])
		t.minC, t.maxC = min(t.minC, s.x[i]), max(t.maxC, s.x[i])
		t.lastLine = v.line[s.row[i]]
		if s.flag[i]&wordless != 0 {
			continue
		}
		t.wordPiece(s.t[i], s.x[i], s.flag[i]&brokenClock != 0)
		if alt == nil {
			continue
		}
		for _, x := range alt[i] {
			t.wordLast.c = x
		}
	}
}

func (s *series) alternatives() map[int][]float64 {
	if len(s.alt) == 0 {
		return nil
	}
	m := map[int][]float64{}
	for _, a := range s.alt {
		m[a.at] = append(m[a.at], a.x)
	}
	return m
}

func (t *track) wordPiece(at, x float64, broken bool) {
	last := &t.wordLast
	if last.have && !broken && at > last.t {
		for i := range t.bases {
			b := &t.bases[i]
			t.word[i] += b.word.pieceOf(b.Ref, at-last.t, last.c, x)
			if b.Bound != nil {
				t.most[i] += b.most(at-last.t, last.c, x)
			}
		}
		for i := range t.wordStay {
			t.wordStay[i].piece(at-last.t, last.c, x, t.a.o.StaysAtC[i])
		}
	} else {
		for i := range t.wordStay {
			t.wordStay[i].nowS = 0
		}
	}
	*last = lastReading{have: true, t: at, c: x}
}

// credit moves the ledger over the readings a to b.
func (t *track) credit(a, b int, o *order) {
	if a >= b {
		return
	}
	s := &t.s
	add := func(after, upTo int) {
		for i := after + 1; i <= upTo; i++ {
			prev := t.led.last
			if i > a {
				prev = lastReading{true, s.t[i-1], s.c[i-1], s.flag[i-1]}
			} else if out := i == 0 || s.t[i-1] != prev.t; out && !t.cad.allows(0, s.t[i]-prev.t, s.step(i+1)) {
				prev.have = false // the reading before is out of view
			}
			t.creditPiece(prev, i, o)
		}
	}
	t.led.phase.advance(s.t, t.believed, a, b, nil, t.a.mediumFor(t), t.led.credited, add)
	t.led.last = lastReading{true, s.t[b-1], s.c[b-1], s.flag[b-1]}
}

// creditPiece credits the piece from a reading to the one at i, or ends the
// stays there.
func (t *track) creditPiece(prev lastReading, i int, o *order) {
	s := &t.s
	if s.flag[i]&brokenClock != 0 {
		t.pass++
	}
	dt, c := s.t[i]-prev.t, s.c[i]
	ok := prev.have && dt > 0 && s.flag[i]&(brokenClock|tooFar|uncredited) == 0 && prev.flag&uncredited == 0
	if ok && o.ranTwice(prev.t, s.t[i]) {
		var low float64
		low, ok = s.lowestOfPasses(o, t.pass, prev.t, i)
		prev.c, c = min(prev.c, low), min(c, low)
	}
	if !ok {
		for k := range t.led.stays {
			t.led.stays[k].nowS = 0
		}
		return
	}
	for k := range t.bases {
		t.led.credited[k] += t.bases[k].piece(dt, prev.c, c)
	}
	for k := range t.led.stays {
		lower := t.bases[0].lowerC
		t.led.stays[k].piece(dt, prev.c-lower, c-lower, t.a.o.StaysAtC[k])
	}
}

// keptLedgers is how many earlier states are kept to go back to.
const keptLedgers = 64

// keep remembers the ledger, unless the file ends here. When there are too many
// every second one is dropped.
func (t *track) keep(v *view) {
	if v.last {
		return
	}
	if len(t.kept) == keptLedgers {
		for i := 0; i < keptLedgers/2; i++ {
			t.kept[i] = t.kept[2*i]
		}
		t.kept = t.kept[:keptLedgers/2]
	}
	t.kept = append(t.kept, t.led.clone())
}

// retract takes back what was credited from a moment on, as far as states kept
// allow: all of the stretch between two of them goes.
func (t *track) retract(fromS float64) {
	n := len(t.kept)
	for n > 0 && t.kept[n-1].last.t > fromS {
		n--
	}
	last := t.led.last
	turns := t.led.phase.turns
	t.led = newLedger(len(t.bases), len(t.led.stays))
	t.led.phase.turns = turns
	if n > 0 {
		t.led = t.kept[n-1].clone()
	}
	t.kept = t.kept[:n]
	t.led.last = last
	t.led.last.flag |= uncredited
}

// tellHistory hands the sound readings to the caller.
func (t *track) tellHistory(a, b int, v *view) {
	if !t.a.o.listens() {
		return
	}
	for i := a; i < b; i++ {
		if c := t.believed[i]; c == t.s.x[i] {
			t.tell(t.s.t[i], c, v.line[t.s.row[i]])
		}
	}
}

// tellSound hands the readings of a sound stretch to the caller.
func (t *track) tellSound(v *view, from, to int) {
	if !t.a.o.listens() {
		return
	}
	for i := from; i < to; i++ {
		t.tell(v.t[i], t.xC[i], v.line[i])
	}
}

// listens tells whether somebody wants to hear of each reading.
func (o *Options) listens() bool { return o.History != nil || o.Readings != nil }

// tell hands on one reading, unless the clock was there before.
func (t *track) tell(timeS, tempC float64, row int) {
	if t.told && timeS <= t.toldS {
		return
	}
	t.told, t.toldS = true, timeS
	if t.a.o.History != nil {
		t.a.o.History(t.at, timeS, tempC)
	}
	if t.a.o.Readings != nil {
		t.a.o.Readings(Reading{t.at, row, timeS, tempC})
	}
}
