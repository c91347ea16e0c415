package logfile

import "fmt"

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
	Rate              FaultKind = "rate"                // a change faster than a sensor in a liquid follows
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

// faultList collects a probe's faults in bounded space.
type faultList struct {
	shown  []Fault
	unseen int
}

func (l *faultList) add(f Fault) {
	if len(l.shown) >= maxFaults {
		l.unseen++
		return
	}
	l.shown = append(l.shown, f)
}

// list gives the faults with the count of those left out as the last one.
func (l *faultList) list() []Fault {
	if l.unseen == 0 {
		return l.shown
	}
	last := l.shown[len(l.shown)-1]
	last.Detail = fmt.Sprintf("%d more faults are not listed", l.unseen)
	return append(l.shown, last)
}
