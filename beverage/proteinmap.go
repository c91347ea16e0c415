package beverage

// ProteinMap is what the protein findings say over pH and one more input: the
// drink's own rules asked at every place, nothing interpolated between.
type ProteinMap struct {
	X          MapAxis      `json:"x"`
	Y          MapAxis      `json:"y"`
	Drink      MapPlace     `json:"drink"`
	Heat       string       `json:"heat"`       // what the drink is heated by at every place
	Everywhere []MapFinding `json:"everywhere"` // made at every place at one level, so in no cell
	Signs      []MapSign    `json:"signs"`
	Cells      []MapCell    `json:"cells"` // the first row of Y first, X rising
	Notes      []string     `json:"notes"`
	Sources    []string     `json:"sources"` // of the windows that speak in a cell
}

// MapAxis is the values at which an input was tried.
type MapAxis struct {
	Name   string    `json:"name"`
	Unit   string    `json:"unit"` // "" for a bare number
	Step   float64   `json:"step"`
	Values []float64 `json:"values"`
}

// MapPlace is where the drink itself stands; unknown figures are nil.
type MapPlace struct {
	X     *float64 `json:"x"`
	XLow  *float64 `json:"x_low"`
	XHigh *float64 `json:"x_high"`
	Y     *float64 `json:"y"`
}

// MapSign is the letter that stands for a finding.
type MapSign struct {
	Letter string `json:"letter"`
	ID     string `json:"id"`
	Title  string `json:"title"`
}

// MapFinding is a finding at a place, with the published window that speaks.
type MapFinding struct {
	ID     string `json:"id"`
	Level  Level  `json:"level"`
	Window string `json:"window"` // "" where no window decides
}

// MapCell is one place. Without a finding Level is nil: no rule speaks against
// it, which clears nothing.
type MapCell struct {
	X          float64      `json:"x"`
	Y          float64      `json:"y"`
	Level      *Level       `json:"level"` // of the gravest finding
	Findings   []MapFinding `json:"findings"`
	Looks      string       `json:"looks"` // clear | depends | cloudy | never clear | unknown, by published windows of the main protein alone
	Denatured  *float64     `json:"denatured_fraction"`
	CannotTell []string     `json:"cannot_tell"` // what lies outside the range of every source there
}
