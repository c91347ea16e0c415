package beverage

// Drink is a drink as its spec describes it, in the units that the names say.
// What nobody gave is unknown (a Given that is not Known), never zero.
type Drink struct {
	File   string // as named by the user; "-" for standard input
	Dir    string // folder that named records are read from
	SHA256 string // of the spec's bytes

	Name           string
	ServingML      Given[float64]
	AlcoholPercent Given[float64] // by volume, the most it will ever be
	Base           Given[SoldAs]
	IntendedFor    Given[string] // general | infants | medical
	Particles      Given[string] // none | pulp | pieces
	LiveCultures   Given[bool]

	Ingredients []Ingredient
	Own         []Ingredient // descriptions from the user's own files, without amount

	Measured    Readings
	Bench       []Bench
	Carbonation *Gassing // nil: still
	Package     Package
	Process     Process
	Storage     Storage
	Markets     []Market // never empty
	MarketGiven bool
}

// Ingredient is one line of the recipe, or a description in the user's own file.
type Ingredient struct {
	Name             string
	Place            Place
	Amount           Given[Amount]
	TolerancePercent float64 // relative
	Described        Description
}

// AmountPer says what an amount is an amount of and per.
type AmountPer string

// Every amount ends as grams per litre of drink; the last three need more than
// the number: density, serving or molar mass.
const (
	GramsPerLitre      AmountPer = "g/L"
	MillilitrePerLitre AmountPer = "mL/L" // needs the ingredient's density
	MassPercent        AmountPer = "%"    // mass per mass of finished drink
	GramsPerServing    AmountPer = "g/serving"
	MillimolePerLitre  AmountPer = "mmol/L" // needs the molar mass
)

// Amount is how much of an ingredient is in the drink.
type Amount struct {
	Value float64
	Per   AmountPer
	Text  string // as written
}

// Acidity is a titratable acidity: percent by mass, as the acid named.
type Acidity struct {
	Percent float64
	As      string
}

// Description is what a spec or an own file says of an ingredient; it overrides
// the library. Percentages are mass per mass of the ingredient as sold.
type Description struct {
	Kind                Given[Kind]
	PH                  Given[float64] // own pH
	PHAtPercent         Given[float64] // strength of the solution that pH was read in
	Acidity             Given[Acidity]
	Brix                Given[float64]
	AcidFood            Given[bool]
	Treatments          Given[[]string] // 5-log juice | pasteurized | sterilized
	StrengthPercent     Given[float64]  // of a liquid acid
	HydrolysisPercent   Given[float64]  // degree of hydrolysis
	DensityGPerML       Given[float64]
	ProteinPercent      Given[float64]
	FatPercent          Given[float64]
	SugarsPercent       Given[float64]
	LactosePercent      Given[float64]
	MoisturePercent     Given[float64]
	AshPercent          Given[float64]
	CalciumPercent      Given[float64]
	MagnesiumPercent    Given[float64]
	PhosphorusPercent   Given[float64]
	SodiumPercent       Given[float64]
	PotassiumPercent    Given[float64]
	ChloridePercent     Given[float64]
	CaffeinePercent     Given[float64]
	PolyphenolsPercent  Given[float64]
	MilkProduct         Given[bool]
	ParticlesInIt       Given[bool]
	ProteinSourceOfKind Given[string] // whey | casein | milk | collagen | soy | pea | oat | rice | egg | potato
}

// Readings are measurements of the finished, equilibrated drink.
type Readings struct {
	PH               Given[float64]
	PHTolerance      Given[float64]
	PHMethod         Given[string] // meter | paper | titration
	PHTempC          Given[float64]
	PHEquilibratedS  Given[float64]
	PHDegassed       Given[bool]
	WaterActivity    Given[float64]
	Brix             Given[float64]
	Acidity          Given[Acidity]
	DensityGPerML    Given[float64]
	ViscosityMilliPa Given[float64] // mPa·s
}

// Bench is one of the developer's own trials: amounts that differ from the
// recipe, and the pH that was read.
type Bench struct {
	Place   Place
	Amounts []Ingredient // name and amount only
	PH      Given[float64]
}

// Gassing is the CO2 of the drink: volumes, or temperature and pressure.
type Gassing struct {
	Place               Place
	Volumes             Given[float64]
	TempC               Given[float64]
	Pressure            Given[Pressure]
	LossPerMonthPercent Given[float64]
}

// Pressure keeps whether it was written as gauge or absolute.
type Pressure struct {
	KPa   float64
	Gauge bool
}

// Package is the closed pack.
type Package struct {
	Type            Given[PackType]
	FillML          Given[float64] // at the fill temperature
	FillToleranceML Given[float64]
	BrimfulML       Given[float64]
	Rating          Given[Pressure]
	HeadspaceGas    Given[Gas]
	NitrogenG       Given[float64]
	AltitudeM       Given[float64]
}

// Process is what is done to make the drink keep.
type Process struct {
	Place        Place
	Route        Given[Route]
	HoldTempC    Given[float64]
	HoldS        Given[float64]
	FillTempC    Given[float64]
	PackHoldS    Given[float64]
	PackHoldC    Given[float64]
	InitialC     Given[float64]
	PressureMPa  Given[float64] // high pressure only
	FilterPoreUM Given[float64]
	Records      []Record
	Target       Given[Target]
	Scheduled    *Scheduled // nil: the target is as stated by the user
	Zones        []Zone
	Critical     []CriticalLimit
}

// Record is the record of a real run.
type Record struct {
	Place      Place
	File       string            // inside Dir, cleaned
	Roles      map[string]string // heading -> role
	Unit       Given[string]     // of its readings: "C", "F" or "K"
	Calibrated Given[string]     // date, yyyy-mm-dd
	Retort     Given[string]
	Batch      Given[string]
}

// TargetKind is the form of a target.
type TargetKind int

// A target in minutes at a basis, one unbroken stay, or decimal reductions.
const (
	TargetMinutes TargetKind = iota
	TargetStay
	TargetReductions
)

// Target is what the process shall deliver.
type Target struct {
	Text     string
	Kind     TargetKind
	Minutes  float64 // TargetMinutes
	TrefC    float64 // TargetMinutes; TargetStay: the temperature to stay at or above
	ZC       float64
	StayS    float64
	Logs     float64
	Organism string // TargetReductions, as written
}

// Scheduled says who set the target.
type Scheduled struct {
	By        Given[string]
	Dated     Given[string]
	Reference Given[string]
}

// Zone is one zone of a tunnel: the medium's temperature, and the time in it.
type Zone struct {
	TempC float64
	TimeS float64
}

// LimitSubject is what a critical limit is about.
type LimitSubject string

// CriticalLimit is a limit that the scheduled process states, in base units of
// its subject: °C, seconds, mL, kPa gauge, mPa·s, L/h, or a bare number.
type CriticalLimit struct {
	Place   Place
	What    LimitSubject
	AtLeast Given[float64]
	AtMost  Given[float64]
	Text    string // both bounds as written
}

// Storage is how the pack is kept.
type Storage struct {
	Distribution Given[Distribution]
	TempC        Given[float64] // warmest the pack will see
	ShelfLifeS   Given[float64]
}
