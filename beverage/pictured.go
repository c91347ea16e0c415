package beverage

// What stands here is drawn, and is no part of a result: it is worked out only
// where pictures are wanted, and JSON never holds it.

// Trace is a probe's record made small enough to draw: its sound readings in
// slots of time, of each the coldest and the hottest.
type Trace struct {
	Slots []TraceSlot
	Holes []TraceHole // where no sound reading supports any credit
	SlotS float64     // how long a slot is
	From  float64     // seconds from the first row of the record to Start of the probe
}

// TraceSlot is the readings of one slot, and what was credited up to its end.
type TraceSlot struct {
	LowS, LowC   float64 // the coldest, and when
	HighS, HighC float64
	EndS         float64 // of its last reading
	CreditedMin  float64 // on the basis of the target, up to EndS
}

// TraceHole is a stretch between two sound readings that are too far apart.
type TraceHole struct{ FromS, ToS float64 }

// Aim is what a record is held against, for its picture.
type Aim struct {
	TrefC, ZC float64
	Minutes   *float64 // at that basis; nil without a target in minutes
	StayC     *float64 // the temperature of an unbroken stay, where that is the target
	StayS     *float64
}

// ProteinPicture is what is drawn of the drink's main protein.
type ProteinPicture struct {
	PH          Interval // of the drink
	Isoelectric Interval // published pH of zero charge
	Charge      []ChargePoint
	Heat        HeatPicture
}

// HeatPicture holds lethality against the whey protein that the same heat
// unfolds. Where the constants do not hold it has Why and nothing else.
type HeatPicture struct {
	Why       string
	TrefC, ZC float64     // what lethality is stated on
	Of        string      // what the history is: a record's name, or what the spec states
	Path      []HeatPoint // over the process
	Equal     []EqualHold // holds worth the same lethality
	EqualMin  float64     // that lethality, minutes
	EqualTo   string      // what it is that of: the target, the process
	Notes     []string
	Source    string
}

// HeatPoint is one moment of a process: lethality by the cold end of the
// sensor's tolerance, damage by its hot end.
type HeatPoint struct {
	TimeS, TempC float64
	LethalityMin float64
	Denatured    Interval // 0 to 1
}

// EqualHold is a hold at one temperature, without time to warm up or cool down.
type EqualHold struct {
	TempC, HoldS float64
	Denatured    Interval // 0 to 1
}

// GasChart is the pressure that so many volumes make in a liquid at each
// temperature; NaN where none is known.
type GasChart struct {
	TempsC   []float64
	Volumes  []float64
	GaugeKPa [][]float64 // by volumes, then temperature
}
