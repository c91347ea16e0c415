package beverage

// ProbeHold is the longest stretch in which a probe stayed near its peak.
type ProbeHold struct {
	StartS  float64  `json:"start_s"` // since the first row of the record
	EndS    float64  `json:"end_s"`
	LengthS float64  `json:"length_s"`
	ComeUpS *float64 `json:"come_up_s"` // from the start of its heating to StartS; nil where it had cooled before
	PeakC   float64  `json:"peak_c"`
}

// TimeAbove is how long a probe was at or above a temperature.
type TimeAbove struct {
	AtC              float64  `json:"at_c"`
	TotalS           *float64 `json:"total_s"`   // the record at its word
	LongestS         *float64 `json:"longest_s"` // unbroken, at its word
	LongestCreditedS *float64 `json:"longest_credited_s"`
}

// Spread is how far the product probes of a record lie apart.
type Spread struct {
	Coldest        string  `json:"coldest"` // the probe with the least credit
	Warmest        string  `json:"warmest"`
	ColdestMinutes float64 `json:"coldest_credited_minutes"`
	WarmestMinutes float64 `json:"warmest_credited_minutes"`
	Minutes        float64 `json:"spread_minutes"`
}

// Understood is what a record was taken for when it was read.
type Understood struct {
	Format       string    `json:"format"`
	Sheet        string    `json:"sheet"`
	Encoding     string    `json:"encoding"`
	Separator    string    `json:"separator"`
	DecimalMark  string    `json:"decimal_mark"`
	HeadingRow   int       `json:"heading_row"` // from 1; 0 where there is none
	FirstRow     int       `json:"first_row"`
	Rows         int       `json:"rows"`
	TimeForm     string    `json:"time_form"`
	DateOrder    string    `json:"date_order"`
	DateBasis    string    `json:"date_basis"`
	IntervalS    float64   `json:"interval_s"`
	Unit         string    `json:"unit"`
	UnitBasis    string    `json:"unit_basis"`
	ResolutionC  float64   `json:"resolution_c"`
	NewestFirst  bool      `json:"newest_first"`
	SkippedRows  int       `json:"skipped_rows"`
	FirstSkipped int       `json:"first_skipped_row"`
	LeftOut      []LeftOut `json:"left_out"`
}

// LeftOut is a column that was not taken for a temperature.
type LeftOut struct {
	Name   string `json:"name"`
	Reason string `json:"reason"`
}
