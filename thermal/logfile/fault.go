package logfile

import (
	"cmp"
	"fmt"
	"slices"
)

// FaultKind names what is wrong at a place of the record.
type FaultKind string

const (
	Gap               FaultKind = "gap"                 // no rows for longer than the log's own interval
	Dropout           FaultKind = "dropout"             // rows without a value for this probe
	Repeat            FaultKind = "repeat"              // the same time with the same value again
	Conflict          FaultKind = "conflict"            // the same time with another value
	Disorder          FaultKind = "disorder"            // rows that stand later than their time
	ClockBack         FaultKind = "clock-back"          // the clock runs over the same hours twice
	Spike             FaultKind = "spike"               // a reading its neighbours do not support
	Stuck             FaultKind = "stuck"               // a reading that does not move though it should
	Code              FaultKind = "code"                // a recorder's error code in place of a value
	Range             FaultKind = "range"               // a value no drink and no medium can have
	Rate              FaultKind = "rate"                // a change faster than a sensor in a liquid follows, or a step that one probe alone makes
	UnitDoubt         FaultKind = "unit-doubt"          // the values look like another unit
	AboveMedium       FaultKind = "above-medium"        // hotter than what heats it
	ReferenceDisagree FaultKind = "reference-disagrees" // recorder above the reference thermometer
	CutShort          FaultKind = "cut-short"           // the record ends while hot
)

// Fault is one thing wrong with the record of a probe.
type Fault struct {
	Kind   FaultKind
	Row    int    // 1-based line of the file (row of the sheet)
	Time   string // clock text, or elapsed seconds
	Detail string // a sentence
}

// maxFaults bounds the list of one probe; one more tells how many are not shown.
const maxFaults = 200

// mergeLines is how far apart lines may be for their faults to be told as one.
const mergeLines = 2

// faultBook collects a probe's faults in bounded space. Faults of one kind on
// line after line become one that names the first line and how many they are.
type faultBook struct {
	shown  []Fault
	count  []int
	open   map[FaultKind]openFault
	unseen int
}

// openFault is the latest fault of a kind; at is -1 when it is not shown.
type openFault struct{ at, line int }

func (b *faultBook) note(kind FaultKind, line int, time, detail string) {
	if b.open == nil {
		b.open = map[FaultKind]openFault{}
	}
	if last, ok := b.open[kind]; ok && line >= last.line && line <= last.line+mergeLines {
		if last.at >= 0 {
			b.count[last.at]++
		}
		b.open[kind] = openFault{last.at, line}
		return
	}
	if len(b.shown) == maxFaults {
		b.unseen++
		b.open[kind] = openFault{-1, line}
		return
	}
	b.open[kind] = openFault{len(b.shown), line}
	b.shown = append(b.shown, Fault{Kind: kind, Row: line, Time: time, Detail: detail})
	b.count = append(b.count, 1)
}

// list gives the faults by row, with the count of those left out as the last.
func (b *faultBook) list() []Fault {
	out := slices.Clone(b.shown)
	for i, n := range b.count {
		if n > 1 {
			out[i].Detail += fmt.Sprintf(" (%d on end)", n)
		}
	}
	slices.SortStableFunc(out, func(x, y Fault) int { return cmp.Compare(x.Row, y.Row) })
	if b.unseen > 0 {
		last := out[len(out)-1]
		last.Detail = fmt.Sprintf("%d more faults are not listed", b.unseen)
		out = append(out, last)
	}
	return out
}
