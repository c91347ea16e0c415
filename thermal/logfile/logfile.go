// Package logfile reads a recorder's time-temperature file as recorders really
// write them, finds the faults of the record, and credits lethality from it:
// only what the record supports once the sensor tolerance and every fault are
// counted against the process.
//
// It reads; it never writes. Memory does not grow with the length of a text
// file.
package logfile

import "posset/thermal"

// Role says what a temperature column measures.
type Role string

const (
	Product              Role = "product"   // the drink; the coldest one decides
	Retort               Role = "retort"    // the heating medium: reported, never credited
	ReferenceThermometer Role = "reference" // the thermometer the recorder is held against
	Other                Role = "other"     // a temperature that is neither (room, condensate)
	Ignore               Role = "ignore"    // left out, and named among the columns left out
)

// RoleBasis says how a role was found.
type RoleBasis string

const (
	Declared RoleBasis = "declared" // the caller said so
	Heading  RoleBasis = "heading"  // a word of the column heading said so
	Assumed  RoleBasis = "assumed"  // the heading tells nothing: taken as product
)

// Basis is one reference to integrate on.
type Basis struct {
	Name string
	Ref  thermal.Reference
	// Bound, when not nil, is what credit is taken by in place of Ref: an organism
	// whose published z spread, and that was measured in a range.
	Bound *thermal.Bound
	MinC  float64 // °C; below it no credit (the range the organism was measured in). 0 means none
}

// Options says what the file itself does not.
type Options struct {
	Unit       string          // "C", "F", "K", or "" to take it from heading, unit row or preamble
	Dates      string          // "dmy", "mdy", "ymd", or "" to take it from the dates themselves
	Roles      map[string]Role // by heading, case and spacing aside; an unknown heading is an error
	ToleranceC float64         // C°, taken off each reading for credit; finite, not negative
	Bases      []Basis         // at least one; the first is the primary one
	StaysAtC   []float64       // °C; thresholds for which the longest unbroken stay is wanted
	Sheet      string          // of a workbook; "" takes the only sheet that holds a log

	// History, when not nil, is called in the order of the clock with each
	// sound reading; repeats are told once. probe is its place in Log.Probes.
	History func(probe int, timeS, tempC float64)

	// Readings, when not nil, is called as History is, and is told where in the
	// file the reading stands.
	Readings func(Reading)
}

// Reading is one sound reading of a record.
type Reading struct {
	Probe        int     // place in Log.Probes
	Row          int     // 1-based line of the file (row of the sheet)
	TimeS, TempC float64 // seconds since the first row; °C
}

// Log is one file as read and judged.
type Log struct {
	File, SHA256 string // SHA-256 of the bytes as stored, in hexadecimal
	Understood   Understood
	Probes       []Probe // every temperature column in file order, medium and reference too
}

// Understood is what the reader took the file for.
type Understood struct {
	Format       string  // "text" or "xlsx", with " in gzip" when so packed
	Sheet        string  // of a workbook
	Encoding     string  // "UTF-8", "UTF-16LE", "UTF-16BE", "Windows-1252"
	Separator    string  // "comma", "semicolon", "tab", "bar", "space"
	DecimalMark  string  // "point" or "comma"
	HeadingRow   int     // 1-based line, 0 when there is none
	FirstRow     int     // 1-based line of the first reading
	Rows         int     // readings' rows read
	TimeForm     string  // in words, with the columns it stands in
	DateOrder    string  // "ymd", "dmy", "mdy" or "" when there is no date
	DateBasis    string  // "declared", "dates", "convention"
	IntervalS    float64 // the usual time between two rows
	Unit         string  // "C", "F", "K" or "mixed"
	UnitBasis    string  // "heading", "unit row", "preamble", "cells", "declared", or the first two with " and declared", which may have settled a doubt
	ResolutionC  float64 // C°, the finest step any temperature column shows
	NewestFirst  bool    // rows run from newest to oldest and were turned round
	SkippedRows  int     // rows without a readable time
	FirstSkipped int     // 1-based line of the first of them
	LeftOut      []LeftOut
}

// LeftOut is a column that was not taken as a temperature.
type LeftOut struct{ Name, Reason string }

// Probe is one temperature column.
type Probe struct {
	Name         string
	Role         Role
	RoleBasis    RoleBasis
	Unit         string  // as written in the file: "C", "F" or "K"
	ResolutionC  float64 // C°, the step of its own readings
	Samples      int     // readings that can be temperatures, repeats once
	Start, End   string  // of its readings, as clock text, or "0 s" for an elapsed clock
	StartS, EndS float64 // seconds since the first row
	MinC, MaxC   float64
	Results      []Result // one for each Options.Bases, in that order
	Stays        []Stay   // one for each Options.StaysAtC
	Faults       []Fault

	PeakS    float64 // when the highest believed reading was first reached, seconds since the first row
	Hold     *Hold   // the longest hold found; nil when the probe never held
	LoweredC float64 // C° taken off beside the tolerance: excess over medium or reference thermometer
}

// Result is lethality on one basis; nil is unknown (no usable clock, or not a
// product).
type Result struct {
	LethalityMin             *float64 // the record at its word, by Ref
	MostMin                  *float64 // the record at its word by all that Bound's references allow; nil without Bound
	CreditedMin              *float64 // after tolerance and faults
	CreditedBeforeCoolingMin *float64 // the part of it won before cooling began
	CreditedHeatingMin       *float64 // of the part before cooling, that before the hold
	CreditedHoldMin          *float64 // of the part before cooling, that during the hold
}

// Stay is the longest unbroken time at or above a temperature.
type Stay struct {
	AtC       float64
	WordS     *float64 // the record at its word
	CreditedS *float64 // lowered by the tolerance, broken by any fault
	TotalS    *float64 // all the time at or above, the record at its word
}

// Hold is the stretch in which a probe stayed within HoldBandC of its peak.
type Hold struct {
	StartS, EndS float64 // seconds since the first row
	ComeUpS      float64 // from the start of its heating to the start of the hold
	PeakC        float64
}

// HoldBandC is how far below its peak a probe may be and still count as
// holding: common practice, no source.
const HoldBandC = 1.0

// ColdestProduct gives the product probe with the lowest credit on a basis. A
// product whose credit is unknown counts as the coldest. Without product probes
// the index is -1, and mediumOnly tells that the log shows something else.
func (l *Log) ColdestProduct(basis int) (index int, mediumOnly bool) {
	index = -1
	var least float64
	for i, p := range l.Probes {
		if p.Role != Product {
			continue
		}
		if basis < 0 || basis >= len(p.Results) || p.Results[basis].CreditedMin == nil {
			return i, false
		}
		if v := *p.Results[basis].CreditedMin; index < 0 || v < least {
			index, least = i, v
		}
	}
	return index, index < 0 && len(l.Probes) > 0
}
