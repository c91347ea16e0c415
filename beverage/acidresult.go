package beverage

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
