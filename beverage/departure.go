package beverage

// Departure is one stretch in which a run left a limit of its scheduled process,
// or one figure that is outside of it or cannot be shown to be inside.
type Departure struct {
	File    string   `json:"file"` // the record, empty where the spec or nothing shows it
	What    string   `json:"what"`
	Limit   string   `json:"limit"`
	Column  string   `json:"column"`  // of the record
	StartS  *float64 `json:"start_s"` // since the first row of the record
	EndS    *float64 `json:"end_s"`
	LengthS *float64 `json:"length_s"`
	Worst   *float64 `json:"worst"` // in the unit of its limit
	Depth   *float64 `json:"depth"` // how far outside, in the same unit
	Unit    string   `json:"unit"`
	Outcome Outcome  `json:"outcome"` // falls short: by the record's word; cannot tell: within the tolerance, or not shown
	Why     string   `json:"why"`
	// What every container is credited with the departure at its worst.
	Credits []DepartureCredit `json:"credits"`
}

// DepartureCredit is the credit of one container, worked out again.
type DepartureCredit struct {
	Probe    string   `json:"probe"`
	Credited *float64 `json:"credited_minutes"`          // as the record has it
	AtWorst  *float64 `json:"credited_at_worst_minutes"` // the whole departure at the coldest of medium and container in it
	Without  *float64 `json:"credited_without_minutes"`  // nothing credited over it
	Outcome  *Outcome `json:"outcome"`                   // of the credit at worst; nil without a target in minutes
}

// Disposition is what a text asks for when a run departs from its scheduled
// process.
type Disposition struct {
	Market Market `json:"market"`
	Text   string `json:"text"`
	Source string `json:"source"`
	Basis  Basis  `json:"basis"`
}
