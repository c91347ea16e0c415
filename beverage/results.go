package beverage

// The schema names of the results that single commands print.
const (
	LethalitySchema   = "posset/lethality/1"
	AcidSchema        = "posset/acid/1"
	CarbonationSchema = "posset/carbonation/1"
	ProteinSchema     = "posset/protein/1"
	RoutesSchema      = "posset/routes/1"
	BriefSchema       = "posset/brief/1"
	VerifySchema      = "posset/verify/1"
)

// LethalityResult is what logs alone show.
type LethalityResult struct {
	Schema        string      `json:"schema"`
	Tool          Tool        `json:"tool"`
	Cautions      []string    `json:"cautions"`
	TrefC         float64     `json:"tref_c"`
	ZC            float64     `json:"z_c"`
	Basis         string      `json:"basis,omitempty"` // organism, where one was named
	ToleranceC    float64     `json:"tolerance_c"`
	TargetMinutes *float64    `json:"target_minutes"`
	Target        string      `json:"target,omitempty"`
	Logs          []LogResult `json:"logs"`

	Limits       []string      `json:"limits,omitempty"`
	Dispositions []Disposition `json:"dispositions,omitempty"`

	ShowUnderstood bool `json:"-"` // whether a person is told what each record was taken for
}

// GasResult is CO2 in a liquid or a closed pack.
type GasResult struct {
	Schema        string       `json:"schema"`
	Tool          Tool         `json:"tool"`
	Input         *Input       `json:"input,omitempty"`
	Drink         string       `json:"drink,omitempty"`
	Volumes       *float64     `json:"volumes"`
	GramsPerLitre *float64     `json:"grams_per_litre"`
	TempC         *float64     `json:"temperature_c"`
	GaugeKPa      *float64     `json:"gauge_kpa"`
	GaugeKPaHigh  *float64     `json:"gauge_kpa_high"`
	AbsoluteKPa   *float64     `json:"absolute_kpa"`
	AirKPa        *float64     `json:"air_kpa"`
	Table         []GasAt      `json:"table"`
	VolumesEnd    *float64     `json:"volumes_end_of_shelf_life"`
	VolumesEndMid *float64     `json:"volumes_end_of_shelf_life_nominal"`
	CounterKPa    *float64     `json:"counter_pressure_gauge_kpa"`
	Pressure      []PressureAt `json:"pressure"`
	RatingKPa     *float64     `json:"rating_gauge_kpa"`
	Outcome       *Outcome     `json:"outcome"`
	Convention    string       `json:"convention"`
	Solutes       string       `json:"solutes"`
	Findings      []Finding    `json:"findings"`
	Cautions      []string     `json:"cautions"`
	Chart         *GasChart    `json:"-"`
	Still         bool         `json:"-"` // of a spec: no carbonation in it
}

// GasAt is one temperature of a liquid: the pressure that its gas makes there, and
// what it would hold there under the pressure asked about; null where that cannot be.
type GasAt struct {
	TempC             float64  `json:"temperature_c"`
	GaugeKPa          *float64 `json:"gauge_kpa"`
	GaugeKPaHigh      *float64 `json:"gauge_kpa_high"`
	AbsoluteKPa       *float64 `json:"absolute_kpa"`
	VolumesAtPressure *float64 `json:"volumes_at_pressure"`
}

// RoutesResult is every route of one drink.
type RoutesResult struct {
	Schema   string        `json:"schema"`
	Tool     Tool          `json:"tool"`
	Input    Input         `json:"input"`
	Drink    string        `json:"drink"`
	Class    AcidClass     `json:"acid_class"`
	Routes   []RouteResult `json:"routes"`
	Left     RoutesLeft    `json:"left"`
	Cautions []string      `json:"cautions"`
}

// VerifyResult is the table of published check values.
type VerifyResult struct {
	Schema string     `json:"schema"`
	Tool   Tool       `json:"tool"`
	Checks []Verified `json:"checks"`
	Out    int        `json:"out_of_tolerance"`
}

// Verified is one published value, recomputed.
type Verified struct {
	ID         string  `json:"id"`
	Model      string  `json:"model"`
	Condition  string  `json:"condition"`
	Published  float64 `json:"published"`
	Ours       float64 `json:"ours"`
	Difference float64 `json:"difference"`
	Allowed    float64 `json:"allowed_difference"`
	Why        string  `json:"why_allowed"`
	Source     string  `json:"source"`
	Basis      Basis   `json:"basis"`
	Holds      bool    `json:"holds"`
}
