package beverage

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
