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

// AcidResult is the acid chemistry of one drink.
type AcidResult struct {
	Schema          string          `json:"schema"`
	Tool            Tool            `json:"tool"`
	Input           Input           `json:"input"`
	Drink           string          `json:"drink"`
	TempC           float64         `json:"temperature_c"`
	PH              *float64        `json:"ph"` // degassed
	PHLow           *float64        `json:"ph_low"`
	PHHigh          *float64        `json:"ph_high"`
	PHSlowNow       *float64        `json:"ph_slow_bases_undissolved"` // on the day of filling; nil without slow bases
	PHSlowEnd       *float64        `json:"ph_slow_bases_dissolved"`   // at the end of life
	PHCarbonated    *float64        `json:"ph_carbonated"`
	PHMeasured      *float64        `json:"ph_measured"`
	ProcessC        *float64        `json:"process_temperature_c"`
	PHProcess       *float64        `json:"ph_at_process_temperature"` // degassed
	PHProcessGas    *float64        `json:"ph_carbonated_at_process_temperature"`
	IonicStrength   *float64        `json:"ionic_strength_mol_per_kg"`
	TitratablePct   *float64        `json:"titratable_acidity_percent_citric"`
	MalicPct        *float64        `json:"titratable_acidity_percent_malic"`
	TartaricPct     *float64        `json:"titratable_acidity_percent_tartaric"`
	LacticPct       *float64        `json:"titratable_acidity_percent_lactic"`
	PhosphoricPct   *float64        `json:"titratable_acidity_percent_phosphoric"`
	AceticPct       *float64        `json:"titratable_acidity_percent_acetic"`
	TitrationEndPH  float64         `json:"titration_end_ph"`
	BenzoicMGPL     *float64        `json:"undissociated_benzoic_acid_mg_per_l"`     // at the pH that decides; nil where the drink has none
	BenzoicLowMGPL  *float64        `json:"undissociated_benzoic_acid_low_mg_per_l"` // at its upper end
	SorbicMGPL      *float64        `json:"undissociated_sorbic_acid_mg_per_l"`
	SorbicLowMGPL   *float64        `json:"undissociated_sorbic_acid_low_mg_per_l"`
	BufferCapacity  *float64        `json:"buffer_capacity_mmol_per_l_ph"`
	WaterActivity   *float64        `json:"water_activity"`
	Species         []SpeciesAmount `json:"species"`
	Curve           []CurvePoint    `json:"titration_curve"`
	Sensitivity     []Sensitivity   `json:"sensitivity"`
	Widths          []Width         `json:"interval_from"`
	Given           []Carried       `json:"given"`
	Bench           *BenchResult    `json:"bench"` // nil: no trials are given
	Dose            []DoseAmount    `json:"dose"`
	DoseTargetPH    *float64        `json:"dose_target_ph"`
	DosePH          *float64        `json:"dose_ph"` // of the dosed drink
	DosePHLow       *float64        `json:"dose_ph_low"`
	DosePHHigh      *float64        `json:"dose_ph_high"`
	DoseLotLow      *float64        `json:"dose_other_lot_ph_low"` // nil where the drink has no protein
	DoseLotHigh     *float64        `json:"dose_other_lot_ph_high"`
	DoseNote        string          `json:"dose_note"` // what a measured pH did to the dose; "" where none is given
	AcidClass       AcidClass       `json:"acid_class"`
	Missing         []string        `json:"missing"` // why figures are null
	Findings        []Finding       `json:"findings"`
	Cautions        []string        `json:"cautions"`
	AcidityAfterPct *float64        `json:"dose_titratable_acidity_percent_citric"`
}

// SpeciesAmount is one dissolved species at equilibrium.
type SpeciesAmount struct {
	Name     string  `json:"name"`
	Molality float64 `json:"molality"`
}

// CurvePoint is one point of the titration curve.
type CurvePoint struct {
	PH         float64 `json:"ph"`
	BaseMMolPL float64 `json:"base_mmol_per_l"`
	Buffer     float64 `json:"buffer_capacity_mmol_per_l_ph"` // there
}

// Sensitivity is how far one ingredient moves the pH when its amount grows by a tenth.
type Sensitivity struct {
	Ingredient  string  `json:"ingredient"`
	PHPerTenPct float64 `json:"ph_per_ten_percent"`
}

// Width is one thing that makes the interval of the predicted pH wide.
type Width struct {
	What string  `json:"what"`
	Low  float64 `json:"ph_low"` // what it does alone
	High float64 `json:"ph_high"`
}

// Carried is what an ingredient was given so that the figures it is known by come
// out.
type Carried struct {
	Ingredient string  `json:"ingredient"`
	KnownBy    string  `json:"known_by"`
	What       string  `json:"what"`
	MMolPerG   float64 `json:"mmol_per_g"` // of the ingredient as sold
	MMolPerL   float64 `json:"mmol_per_l"` // of the drink
}

// DoseAmount is how much of an acid reaches the pH asked for, and between what
// the next lot of the drink's protein may move it.
type DoseAmount struct {
	Ingredient string   `json:"ingredient"`
	GPerL      float64  `json:"grams_per_litre"`               // to add
	InAll      float64  `json:"in_all_grams_per_litre"`        // with what the recipe holds of it
	LotLow     *float64 `json:"other_lot_low_grams_per_litre"` // nil where the drink has no protein
	LotHigh    *float64 `json:"other_lot_high_grams_per_litre"`
}

// BenchResult is what the developer's own trials did to the prediction.
type BenchResult struct {
	Trials         []BenchTrial  `json:"trials"`
	Fitted         []BenchFigure `json:"fitted"`
	LeftoverMMolPL float64       `json:"unexplained_base_mmol_per_l"` // strong base beside the figures fitted; acid where negative
	PHLowBefore    *float64      `json:"ph_low_before"`
	PHHighBefore   *float64      `json:"ph_high_before"`
	Contradiction  string        `json:"contradiction"` // why the trials were not followed; "" where they agree
}

// BenchTrial is one trial against the recipe.
type BenchTrial struct {
	At       string   `json:"at"` // file and line
	PHRead   float64  `json:"ph_read"`
	PHBefore *float64 `json:"ph_predicted"` // by the recipe alone; nil where the trial tells nothing
	PHAfter  *float64 `json:"ph_fitted"`
	Residual *float64 `json:"residual_ph"` // read less fitted
	Off      bool     `json:"off"`         // further off than every doubt together
	Unused   string   `json:"unused"`      // why the trial tells nothing
}

// BenchFigure is a figure of an ingredient as the trials move it.
type BenchFigure struct {
	Ingredient string  `json:"ingredient"`
	Figure     string  `json:"figure"` // with its unit
	Low        float64 `json:"low"`    // what was known of it
	High       float64 `json:"high"`
	Before     float64 `json:"before"`
	After      float64 `json:"after"`
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

// Brief is what a developer sends to a co-packer and a process authority.
type Brief struct {
	Schema     string          `json:"schema"`
	Tool       Tool            `json:"tool"`
	Input      Input           `json:"input"`
	Standing   string          `json:"standing"` // what the paper is and what it is not; stands on top
	Drink      DrinkSummary    `json:"drink"`
	Disclosure string          `json:"disclosure"` // full | classes | none
	Formula    []FormulaLine   `json:"formula"`
	Allergens  []string        `json:"allergens"` // told at every disclosure
	Class      AcidClass       `json:"acid_class"`
	Figures    []BriefFigure   `json:"figures"`
	Process    []string        `json:"process"`
	Critical   []CriticalPoint `json:"critical_factors"`
	Routes     []RouteResult   `json:"routes"`
	Missing    []Gap           `json:"missing"`
	Plant      []string        `json:"plant_questions"`
	CoPacker   []string        `json:"co_packer_questions"`
	Authority  []string        `json:"authority_questions"`
	Filings    []FilingField   `json:"filings"`
	Organisms  []OrganismLeft  `json:"organisms"` // what may remain after the process and grow
	Findings   []Finding       `json:"findings"`
	Cautions   []string        `json:"cautions"`
	Assessment *Assessment     `json:"-"` // nil where the formula is not disclosed in full
}

// BriefFigure is one figure of the drink, and whether it was measured.
type BriefFigure struct {
	What  string `json:"figure"`
	Value Text   `json:"value"`
	Basis string `json:"basis"` // measured | predicted | stated | not given
}

// FormulaLine is one ingredient at the disclosure that was asked for.
type FormulaLine struct {
	Name  string   `json:"name"`
	Kind  Kind     `json:"kind"`
	GPerL *float64 `json:"g_per_l"`
}

// CriticalPoint is a factor that the process hangs on, and how it is measured.
type CriticalPoint struct {
	What     string `json:"what"`
	Value    Text   `json:"value"`
	Limit    string `json:"limit"`
	Measured string `json:"how_measured"`
	Basis    string `json:"basis"`
}

// Gap is something nobody gave, and the test that settles it.
type Gap struct {
	What string `json:"what"`
	Test string `json:"test"`
}

// FilingField is one field of a filing, in the order in which the form asks.
type FilingField struct {
	Market  Market `json:"market"`
	Form    Text   `json:"form"` // number of the form, unknown for a duty without one
	Section Text   `json:"section"`
	Field   string `json:"field"`
	Value   Text   `json:"value"`
	From    string `json:"value_from"`   // where the value was written, or who must give it
	Source  string `json:"source"`       // the law that asks
	Basis   Basis  `json:"source_basis"` // whether the field was seen on the form or is recalled
	Missing bool   `json:"missing"`
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
