package beverage

// EvidenceRow is one reading of a probe with what it was credited, so that
// somebody else can work it out again by hand.
type EvidenceRow struct {
	Probe    string
	Row      int     // of the file or sheet, as it counts them
	TimeS    float64 // since the first row of the record
	TempC    float64 // as read
	LoweredC float64 // less the tolerance and what else was taken off the probe
	Rate     float64 // lethal rate at LoweredC
	PieceMin float64 // of the straight line from the reading before
	SumMin   float64
	Note     string // why a piece is not counted
}

// Evidence tells where the rows were written and how they add up.
type Evidence struct {
	File   string          `json:"file"`
	Rule   string          `json:"rule"` // how a row follows from the one before it
	Rows   int             `json:"rows"`
	Probes []EvidenceProbe `json:"probes"`
}

// EvidenceProbe is the sum of one probe's rows beside what was credited.
type EvidenceProbe struct {
	Name            string   `json:"name"`
	Readings        int      `json:"readings"`
	SumMinutes      float64  `json:"sum_minutes"`
	CreditedMinutes *float64 `json:"credited_minutes"`
	UncountedS      float64  `json:"uncounted_s"` // between sound readings that are too far apart
	TopMinutes      float64  `json:"top_reading_minutes"`
	TopS            float64  `json:"top_reading_s"` // the reading that most hangs on, and the pieces on both sides of it
}

// Turning is one thing that the answer hangs on, and whether it alone turns it.
type Turning struct {
	What  string `json:"what"`
	Text  string `json:"text"`
	Turns bool   `json:"turns"`
}
