package beverage

// AssessmentSchema names the form of an assessment.
const AssessmentSchema = "posset/assessment/1"

// Assessment is everything posset says of one drink. Field names end in their
// unit; what is unknown is nil and prints as null, never as 0.
type Assessment struct {
	Schema      string            `json:"schema"`
	Tool        Tool              `json:"tool"`
	Input       Input             `json:"input"`
	Drink       DrinkSummary      `json:"drink"`
	AcidClass   AcidClass         `json:"acid_class"`
	Carbonation *CarbonationState `json:"carbonation"`
	Package     *PackState        `json:"package"`
	Lethality   *Delivered        `json:"lethality"`
	Protein     *ProteinState     `json:"protein"`
	Routes      []RouteResult     `json:"routes"`
	Findings    []Finding         `json:"findings"`
	Cautions    []string          `json:"cautions"`
	Organisms   []OrganismLeft    `json:"organisms"` // what may remain and grow
	HeatNotes   []HeatNote        `json:"heat_notes,omitempty"`
}

// Tool names the program that made a result.
type Tool struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// Input is the file that was assessed.
type Input struct {
	File   string `json:"file"`
	SHA256 string `json:"sha256"`
}

// DrinkSummary repeats what the drink was said to be.
type DrinkSummary struct {
	Name         string   `json:"name"`
	ServingML    *float64 `json:"serving_ml"`
	AlcoholPct   *float64 `json:"alcohol_percent"`
	SoldAs       string   `json:"base,omitempty"`
	IntendedFor  string   `json:"intended_for"`
	Markets      []Market `json:"markets"`
	Route        string   `json:"route,omitempty"`
	Distribution string   `json:"distribution,omitempty"`
	StorageC     *float64 `json:"storage_c"`
	PackType     string   `json:"package_type,omitempty"`
	DensityGML   *float64 `json:"density_g_per_ml"`
}

// AcidClass is the class with the pH interval it rests on.
type AcidClass struct {
	Class         Class       `json:"class"`
	PH            *float64    `json:"ph"`
	PHLow         *float64    `json:"ph_low"`
	PHHigh        *float64    `json:"ph_high"`
	PHBasis       ValueBasis  `json:"ph_basis"`
	PredictedPH   *float64    `json:"ph_predicted"`
	WaterActivity *float64    `json:"water_activity"`
	Note          string      `json:"note"`
	RegulatedAs   []Regulated `json:"regulated_as"`
}

// Regulated is what a market's law calls the drink.
type Regulated struct {
	Market Market `json:"market"`
	Term   string `json:"term"`
	Rule   string `json:"rule"`
	Argued bool   `json:"argued"`
}

// PressureAt is the pressure in the closed pack at one temperature.
type PressureAt struct {
	At           string   `json:"at"` // fill | storage | process | table
	TempC        float64  `json:"temperature_c"`
	GaugeKPa     *float64 `json:"gauge_kpa"`
	GaugeKPaHigh *float64 `json:"gauge_kpa_high"`
	Headspace    *float64 `json:"headspace_percent"` // of the inside volume, nominal
	LiquidFull   bool     `json:"liquid_full"`
}

// CarbonationState is the gas in the drink and what it does to the pack.
type CarbonationState struct {
	Volumes       *float64     `json:"volumes"`
	GramsPerLitre *float64     `json:"grams_per_litre"`
	VolumesEnd    *float64     `json:"volumes_end_of_shelf_life"`
	Pressure      []PressureAt `json:"pressure"`
	Outcome       Outcome      `json:"outcome"`
}

// PackState is the closed pack, of still drinks too.
type PackState struct {
	Pressure       []PressureAt `json:"pressure"`
	RatingGaugeKPa *float64     `json:"rating_gauge_kpa"`
	Outcome        Outcome      `json:"outcome"`
}

// Delivered is what the records of a run show against the target.
type Delivered struct {
	Target  string      `json:"target"`
	Set     string      `json:"target_set_by"`
	Logs    []LogResult `json:"logs"`
	Outcome Outcome     `json:"outcome"`

	Departures   []Departure   `json:"departures,omitempty"`
	Dispositions []Disposition `json:"dispositions,omitempty"`
}

// LogResult is one record.
type LogResult struct {
	File    string        `json:"file"`
	SHA256  string        `json:"sha256"`
	Outcome *Outcome      `json:"outcome"`
	Error   *string       `json:"error"`
	Retort  string        `json:"retort,omitempty"`
	Batch   string        `json:"batch,omitempty"`
	Probes  []ProbeResult `json:"probes"`
	Aim     *Aim          `json:"-"`

	Calibrated string      `json:"calibrated,omitempty"` // date, yyyy-mm-dd
	Coldest    string      `json:"coldest_probe"`        // the product probe that decides, empty where there is none
	Spread     *Spread     `json:"spread"`               // nil with fewer than two product probes
	Departures []Departure `json:"departures,omitempty"` // from limits it was held against by itself
	Evidence   *Evidence   `json:"evidence,omitempty"`
	Understood *Understood `json:"understood,omitempty"`
	Turning    []Turning   `json:"would_change_the_answer,omitempty"`
}

// ProbeResult is one temperature column of a record.
type ProbeResult struct {
	Name                    string        `json:"name"`
	Role                    string        `json:"role"`
	RoleBasis               string        `json:"role_basis"`
	Samples                 int           `json:"samples"`
	Start                   string        `json:"start"`
	End                     string        `json:"end"`
	MinC                    *float64      `json:"min_c"`
	MaxC                    *float64      `json:"max_c"`
	LethalityMinutes        *float64      `json:"lethality_minutes"`
	LethalityMostMinutes    *float64      `json:"lethality_minutes_at_most,omitempty"` // by all published z of an organism; nil elsewhere
	CreditedMinutes         *float64      `json:"credited_minutes"`
	CreditedBeforeCoolingMn *float64      `json:"credited_before_cooling_minutes"`
	Outcome                 *Outcome      `json:"outcome"`
	Faults                  []FaultResult `json:"faults"`
	More                    []BasisResult `json:"more"`
	Trace                   *Trace        `json:"-"`

	PeakS               *float64    `json:"peak_s"` // since the first row of the record
	Hold                *ProbeHold  `json:"hold"`
	CreditedHeatingMins *float64    `json:"credited_heating_minutes"` // of the credit, what the way up to the hold earned
	CreditedHoldMinutes *float64    `json:"credited_hold_minutes"`
	CreditedCoolingMins *float64    `json:"credited_cooling_minutes"`
	Above               []TimeAbove `json:"times_above,omitempty"`
}

// FaultResult is one fault of a record.
type FaultResult struct {
	Kind   string `json:"kind"`
	Row    int    `json:"row"`
	Time   string `json:"time"`
	Detail string `json:"detail"`
}

// BasisResult is the lethality of a probe on a further basis.
type BasisResult struct {
	Basis            string   `json:"basis"`
	TrefC            float64  `json:"tref_c"`
	ZC               float64  `json:"z_c"`
	LethalityMinutes *float64 `json:"lethality_minutes"`
	CreditedMinutes  *float64 `json:"credited_minutes"`
	Outcome          *Outcome `json:"outcome"`

	Units         string   `json:"units,omitempty"` // what Value counts: the index itself, or decimal reductions of an organism
	Value         *float64 `json:"value,omitempty"` // the record at its word
	CreditedValue *float64 `json:"credited_value,omitempty"`
}

// ProteinState is the protein of the drink and what may become of it.
type ProteinState struct {
	GPerL             *float64           `json:"protein_g_per_l"`
	GPerServing       *float64           `json:"protein_g_per_serving"`
	NetCharge         *float64           `json:"net_charge"`
	IsoelectricPH     *float64           `json:"isoelectric_ph"`
	DenaturedFraction *float64           `json:"denatured_fraction"`
	Flags             []ProteinFlag      `json:"flags"`
	Components        []ProteinComponent `json:"components"`
	Serving           ServingNutrition   `json:"serving"`
	Picture           *ProteinPicture    `json:"-"`
}

// ProteinFlag is a finding about the protein, repeated where the protein is told.
type ProteinFlag struct {
	ID     string `json:"id"`
	Level  Level  `json:"level"`
	Text   string `json:"text"`
	Source string `json:"source"`
	Basis  Basis  `json:"basis"`
}

// ProteinComponent is one protein of the drink.
type ProteinComponent struct {
	Name              string   `json:"name"`
	GPerL             *float64 `json:"g_per_l"`
	NetCharge         *float64 `json:"net_charge"`
	IsoelectricPH     *float64 `json:"isoelectric_ph"`
	DenaturedFraction *float64 `json:"denatured_fraction"`
}

// ServingNutrition is what a serving holds.
type ServingNutrition struct {
	ProteinG        *float64 `json:"protein_g"`
	CalciumMG       *float64 `json:"calcium_mg"`
	LeucineG        *float64 `json:"leucine_g"`
	BranchedChainG  *float64 `json:"branched_chain_g"`
	EssentialAminoG *float64 `json:"essential_amino_acids_g"`
	CaffeineMG      *float64 `json:"caffeine_mg"`
}
