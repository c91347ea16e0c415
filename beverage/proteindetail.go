package beverage

// ProteinResult is the protein object with its header, as `posset protein` prints it.
type ProteinResult struct {
	Schema string `json:"schema"`
	Tool   Tool   `json:"tool"`
	Input  Input  `json:"input"`
	Drink  string `json:"drink"`
	ProteinState
	AcidHeld    *float64           `json:"acid_held_mmol_per_l"` // by all protein, at the drink's pH
	Behaviour   []ProteinBehaviour `json:"behaviour"`
	Nutrition   *ProteinNutrition  `json:"nutrition"` // nil where the drink holds no protein
	Heat        HeatPairs          `json:"heat"`
	ChargeCurve []ChargePoint      `json:"charge_curve"`
	Map         *ProteinMap        `json:"map"` // nil unless it was asked for
	Missing     []string           `json:"missing"`
	Cautions    []string           `json:"cautions"`
}

// ChargePoint is the net charge of the main protein at one pH: at the drink's ionic
// strength and 25 °C, and with one of the two changed.
type ChargePoint struct {
	PH        float64 `json:"ph"`
	NetCharge float64 `json:"net_charge"`
	NoSalt    float64 `json:"net_charge_no_salt"`
	Salted    float64 `json:"net_charge_100_mmol_salt"`
	Hot       float64 `json:"net_charge_90_c"`
	AcidHeld  float64 `json:"acid_held_mmol_per_g"` // by the main ingredient's protein
}

// ProteinBehaviour is one protein ingredient: what it consists of, and where it
// stands in what is published of it.
type ProteinBehaviour struct {
	Name              string         `json:"name"`
	Kind              string         `json:"kind"` // "" where nobody says what it is of
	KindSource        string         `json:"kind_source"`
	KindBasis         Basis          `json:"kind_basis"`
	Proteins          []ProteinShare `json:"proteins"`
	IsoelectricLow    *float64       `json:"isoelectric_low"`
	IsoelectricHigh   *float64       `json:"isoelectric_high"`
	IsoelectricSource string         `json:"isoelectric_source"`
	IsoelectricBasis  Basis          `json:"isoelectric_basis"`
	Dispute           string         `json:"isoelectric_dispute"` // "" where publications agree
	HydrolysisLow     *float64       `json:"degree_of_hydrolysis_low_percent"`
	HydrolysisHigh    *float64       `json:"degree_of_hydrolysis_high_percent"`
	AcidHeld          *float64       `json:"acid_held_mmol_per_g"`    // against the uncharged protein, at the drink's pH
	AcidBinding       *float64       `json:"acid_binding_mmol_per_g"` // from pH 7 to pH 3
	SolubleLow        *float64       `json:"soluble_low_percent"`     // before heating
	SolubleHigh       *float64       `json:"soluble_high_percent"`
	SolubleSource     string         `json:"soluble_source"`
	SolubleBasis      Basis          `json:"soluble_basis"`
	Looks             string         `json:"looks"`
	LooksWhy          string         `json:"looks_why"` // the window, where the drink stands, what would move it
	LooksSource       string         `json:"looks_source"`
	LooksBasis        Basis          `json:"looks_basis"`
}

// ProteinShare is one protein of an ingredient.
type ProteinShare struct {
	Name              string   `json:"name"`
	PercentLow        float64  `json:"percent_low"`
	Percent           float64  `json:"percent"`
	PercentHigh       float64  `json:"percent_high"`
	NetCharge         *float64 `json:"net_charge"`
	IsoelectricLow    *float64 `json:"isoelectric_low"`
	IsoelectricHigh   *float64 `json:"isoelectric_high"`
	IsoelectricSource string   `json:"isoelectric_source"`
	Dispute           string   `json:"isoelectric_dispute"`
	DenaturedLow      *float64 `json:"denatured_fraction_low"` // nil where heat does not unfold it, or nobody can tell
	Denatured         *float64 `json:"denatured_fraction"`
	DenaturedHigh     *float64 `json:"denatured_fraction_high"`
}

// ProteinNutrition is what a serving feeds and what labels hold it against.
type ProteinNutrition struct {
	NitrogenFactors []NitrogenFactor  `json:"nitrogen_factors"`
	Daily           []DailyShare      `json:"daily_values"`
	AminoAcids      *AminoAcidFigures `json:"amino_acids"` // nil where they are not known
	LeftOut         []string          `json:"amino_acids_left_out"`
	Comparisons     []AminoComparison `json:"comparisons"`
	Caffeine        []string          `json:"caffeine"` // what markets say of it
}

// NitrogenFactor turns nitrogen into protein.
type NitrogenFactor struct {
	Name   string  `json:"name"`
	Factor float64 `json:"factor"`
	Use    string  `json:"use"`
	Source string  `json:"source"`
	Basis  Basis   `json:"basis"`
}

// DailyShare is a serving against one market's daily reference value.
type DailyShare struct {
	Market   Market   `json:"market"`
	Nutrient string   `json:"nutrient"`
	Amount   *float64 `json:"amount"`
	Unit     string   `json:"unit"`
	Value    float64  `json:"daily_value"`
	Percent  *float64 `json:"percent"`
	Note     string   `json:"note"`
	Source   string   `json:"source"`
	Basis    Basis    `json:"basis"`
}

// AminoAcidFigures are those of a serving, and the score of the protein.
type AminoAcidFigures struct {
	LeucineLow    *float64 `json:"leucine_low_g"`
	LeucineHigh   *float64 `json:"leucine_high_g"`
	BranchedLow   *float64 `json:"branched_chain_low_g"`
	BranchedHigh  *float64 `json:"branched_chain_high_g"`
	EssentialLow  *float64 `json:"essential_low_g"`
	EssentialHigh *float64 `json:"essential_high_g"`
	Score         *float64 `json:"score"` // nil where an amino acid of the pattern is unknown
	ScoreLow      *float64 `json:"score_low"`
	ScoreHigh     *float64 `json:"score_high"`
	Limiting      string   `json:"limiting"`
	Pattern       string   `json:"pattern"`
	Source        string   `json:"source"`
	Basis         Basis    `json:"basis"`
}

// AminoComparison is how much more of amino acids a protein has than another, by
// one publication of the other.
type AminoComparison struct {
	Name      string   `json:"name"`
	Than      string   `json:"than"`
	Leucine   *float64 `json:"leucine_percent_more"`
	Branched  *float64 `json:"branched_chain_percent_more"`
	Essential *float64 `json:"essential_percent_more"`
	Without   []string `json:"without"` // amino acids that the other's analysis lacks, left out of both
}

// HeatPairs are holds of equal lethality with what each unfolds.
type HeatPairs struct {
	Why          string     `json:"why"` // why there are none; "" where there are
	TrefC        *float64   `json:"tref_c"`
	ZC           *float64   `json:"z_c"`
	LethalityMin *float64   `json:"lethality_minutes"`
	Of           string     `json:"lethality_of"` // the target, or the process
	Pairs        []HeatPair `json:"pairs"`
	Notes        []string   `json:"notes"`
	Source       string     `json:"source"`
}

// HeatPair is one hold.
type HeatPair struct {
	TempC         float64  `json:"temperature_c"`
	HoldS         float64  `json:"hold_s"`
	Denatured     *float64 `json:"denatured_fraction"`
	DenaturedLow  *float64 `json:"denatured_fraction_low"`
	DenaturedHigh *float64 `json:"denatured_fraction_high"`
}
