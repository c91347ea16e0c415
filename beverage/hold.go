package beverage

// HoldSchema names the result of a holding tube.
const HoldSchema = "posset/hold/1"

// HoldResult is how long a drink stays in a holding tube and what that is worth.
type HoldResult struct {
	Schema        string   `json:"schema"`
	Tool          Tool     `json:"tool"`
	Cautions      []string `json:"cautions"`
	TrefC         float64  `json:"tref_c"`
	ZC            float64  `json:"z_c"`
	Basis         string   `json:"basis,omitempty"`
	Target        string   `json:"target,omitempty"`
	TargetMinutes *float64 `json:"target_minutes"`
	Outcome       *Outcome `json:"outcome"`

	BoreMM     float64  `json:"bore_mm"`
	LengthM    *float64 `json:"length_m"`
	FlowLPerH  float64  `json:"flow_l_per_h"` // as metered
	TempC      float64  `json:"temperature_c"`
	ToleranceC float64  `json:"tolerance_c"`
	MeteredC   *float64 `json:"metered_at_c"`
	SteamFromC *float64 `json:"steam_before_c"`

	MeanS            *float64 `json:"mean_s"`
	FastestS         *float64 `json:"fastest_s"` // of the particle that decides
	Share            float64  `json:"fastest_over_mean"`
	ShareBasis       string   `json:"fastest_over_mean_basis"`
	Reynolds         *float64 `json:"reynolds"`
	Regime           string   `json:"regime"`
	VelocityMPerS    float64  `json:"velocity_m_per_s"`
	VolumeL          *float64 `json:"volume_l"`
	HotFlowLPerH     float64  `json:"hot_flow_l_per_h"`
	CondensateLPerH  float64  `json:"condensate_l_per_h"`
	Expansion        float64  `json:"expansion"`
	DensityKgPerM3   float64  `json:"density_kg_per_m3"`
	DensityBasis     string   `json:"density_basis"`
	ViscosityMPaS    *float64 `json:"viscosity_mpa_s"`
	ViscosityBasis   string   `json:"viscosity_basis"`
	FlowIndex        float64  `json:"flow_index"`
	LethalityMinutes *float64 `json:"lethality_minutes"` // at its word
	CreditedMinutes  *float64 `json:"credited_minutes"`
	LengthNeededM    *float64 `json:"length_needed_m"`
	LengthProblem    string   `json:"length_problem,omitempty"` // why there is none
	FlashAbsoluteKPa float64  `json:"flash_absolute_kpa"`
	FlashGaugeKPa    float64  `json:"flash_gauge_kpa"`
	Notes            []string `json:"notes"`
}
