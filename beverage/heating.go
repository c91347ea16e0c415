package beverage

// HeatingSchema names the result of heat-penetration tests.
const HeatingSchema = "posset/heating/1"

// HeatingResult is what heat-penetration tests say about a process. It is read
// off the containers that were tested and holds for them alone.
type HeatingResult struct {
	Schema        string             `json:"schema"`
	Tool          Tool               `json:"tool"`
	Cautions      []string           `json:"cautions"`
	Target        string             `json:"target"`
	TargetMinutes float64            `json:"target_minutes"`
	TrefC         float64            `json:"tref_c"`
	ZC            float64            `json:"z_c"`
	RetortC       float64            `json:"retort_c"`  // as asked for
	InitialC      float64            `json:"initial_c"` // as asked for
	ToleranceC    float64            `json:"tolerance_c"`
	CoolingC      *float64           `json:"cooling_c"`
	ComeUpMin     *float64           `json:"come_up_minutes"`
	Criterion     string             `json:"criterion"`
	Logs          []HeatingLog       `json:"logs"`
	Containers    []HeatingContainer `json:"containers"`
	Worst         WorstContainer     `json:"worst"`
	// The two process times and what to rely on, minutes at the retort
	// temperature once the come-up is over, tolerance taken off.
	BallMinutes    float64 `json:"ball_minutes"`
	GeneralMinutes float64 `json:"general_minutes"`
	MoreByBallMin  float64 `json:"more_by_ball_minutes"`
	CountMinutes   float64 `json:"process_minutes"`
	// The longer of the two with the temperatures taken as they were asked for.
	AtItsWordMinutes *float64 `json:"process_minutes_without_tolerance"`
	Notes            []string `json:"notes"`
}

// HeatingLog is one record of a test, with what its medium did.
type HeatingLog struct {
	File          string   `json:"file"`
	SHA256        string   `json:"sha256"`
	Error         *string  `json:"error"`
	Medium        string   `json:"medium"`
	HoldC         *float64 `json:"medium_hold_c"`
	LowestC       *float64 `json:"medium_lowest_c"`
	SteamOnS      *float64 `json:"steam_on_s"`
	ComeUpMinutes *float64 `json:"come_up_minutes"`
	CoolAtS       *float64 `json:"cooling_at_s"`
	CoolingC      *float64 `json:"cooling_medium_c"`
}

// HeatingContainer is one container: how it heats and cools, and how long it
// takes by either method.
type HeatingContainer struct {
	File         string         `json:"file"`
	Name         string         `json:"name"`
	RoleBasis    string         `json:"role_basis"`
	Error        *string        `json:"error"` // why nothing was read off its record
	Faults       []FaultResult  `json:"faults"`
	InitialC     *float64       `json:"initial_c"`
	FhMinutes    *float64       `json:"fh_minutes"`
	Jh           *float64       `json:"jh"`
	Heating      *StraightPart  `json:"heating_line"`
	Broken       bool           `json:"broken"`
	BreakMinutes *float64       `json:"break_minutes"`
	BreakC       *float64       `json:"break_c"`
	F2Minutes    *float64       `json:"f2_minutes"`
	Second       *StraightPart  `json:"second_line"`
	FcMinutes    *float64       `json:"fc_minutes"`
	Jc           *float64       `json:"jc"`
	Cooling      *StraightPart  `json:"cooling_line"`
	SlipsMinutes []float64      `json:"slips_minutes"`
	Ball         *ProcessLength `json:"ball"`
	General      *ProcessLength `json:"general"`
}

// StraightPart is the straight part that factors were read from, with how well
// they are known: two-sided intervals of 95 %.
type StraightPart struct {
	FromMinutes  float64 `json:"from_minutes"` // from the zero of its line
	ToMinutes    float64 `json:"to_minutes"`
	FromC        float64 `json:"from_difference_c"` // to the medium
	ToC          float64 `json:"to_difference_c"`
	Readings     int     `json:"readings"`
	Independent  float64 `json:"independent_readings"`
	FLowMinutes  float64 `json:"f_low_minutes"`
	FHighMinutes float64 `json:"f_high_minutes"`
	JLow         float64 `json:"j_low"`
	JHigh        float64 `json:"j_high"`
	R2           float64 `json:"r2"`
	ResidualLog  float64 `json:"residual_log10"`
	WorstC       float64 `json:"worst_distance_c"`
	WorstMinutes float64 `json:"worst_at_minutes"`
}

// ProcessLength is a process time by one method.
type ProcessLength struct {
	FromZeroMinutes    float64 `json:"from_corrected_zero_minutes"`
	AfterComeUpMinutes float64 `json:"after_come_up_minutes"`
	HeatingOnlyMinutes float64 `json:"heating_only_minutes"`
	CountMinutes       float64 `json:"count_minutes"`
	ComeUpCreditMin    float64 `json:"come_up_credit_minutes"`
	EndC               float64 `json:"end_c"`
	HeatingLethality   float64 `json:"lethality_heating_minutes"`
	CoolingLethality   float64 `json:"lethality_cooling_minutes"`
	CoolingAssumed     bool    `json:"cooling_assumed"`
	Extended           bool    `json:"extended_beyond_test"`
}

// WorstContainer joins the worst of all containers, each with whose it is.
type WorstContainer struct {
	FhMinutes   float64  `json:"fh_minutes"`
	FhOf        string   `json:"fh_of"`
	Jh          float64  `json:"jh"`
	JhOf        string   `json:"jh_of"`
	InitialC    float64  `json:"initial_c"`
	InitialOf   string   `json:"initial_of"`
	RetortC     float64  `json:"retort_c"`
	RetortOf    string   `json:"retort_of"`
	Broken      bool     `json:"broken"`
	F2Minutes   *float64 `json:"f2_minutes"`
	FcMinutes   *float64 `json:"fc_minutes"`
	Jc          *float64 `json:"jc"`
	SlowestByGM string   `json:"slowest_by_general_method"`
}
