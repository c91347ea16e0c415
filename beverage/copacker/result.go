package copacker

import "posset/beverage"

// Schema names the form of a match.
const Schema = "posset/match/1"

// Result is a drink held against every line of a file: the lines on which
// nothing is missing on paper first, then those whose route is not ruled out, each
// with the least missing first.
type Result struct {
	Schema    string             `json:"schema"`
	Tool      beverage.Tool      `json:"tool"`
	Input     beverage.Input     `json:"input"`
	LinesFile beverage.Input     `json:"lines_file"`
	Drink     string             `json:"drink"`
	Class     beverage.AcidClass `json:"acid_class"`
	Stops     []string           `json:"stops"`   // findings at level stop, open whatever the line
	Reviews   []string           `json:"reviews"` // and those at level review
	RunL      *float64           `json:"run_l"`   // the run that was asked for; nil: none was
	Lines     []LineResult       `json:"lines"`
	Cautions  []string           `json:"cautions"`
}

// LineResult is one line. Missing holds what is missing of the line and of the
// process that misses least; nothing in it is "nothing missing on paper".
type LineResult struct {
	Line           string            `json:"line"`
	Plant          string            `json:"plant"`
	At             string            `json:"at"` // file and line where it is told
	Markets        []beverage.Market `json:"markets"`
	MinimumRunL    *float64          `json:"minimum_run_l"`
	NothingMissing bool              `json:"nothing_missing_on_paper"`
	By             beverage.Route    `json:"by_route"` // "" where the line tells of no process
	Outcome        beverage.Fit      `json:"route_outcome"`
	Missing        []Missing         `json:"missing"`
	Others         []ProcessResult   `json:"other_processes"`
	Notes          []string          `json:"notes"`
}

// ProcessResult is a further process of a line, with what is missing of it alone.
type ProcessResult struct {
	Route   beverage.Route `json:"route"`
	Outcome beverage.Fit   `json:"outcome"`
	At      string         `json:"at"`
	Missing []Missing      `json:"missing"`
}

// Missing is one thing that is missing or not known, and the key that decides.
type Missing struct {
	What    string        `json:"what"`
	Text    string        `json:"text"`
	Side    Side          `json:"decides"` // whose key it is
	Key     string        `json:"key"`
	At      beverage.Text `json:"at"`      // file and line of the key, or of the table that lacks it
	Finding beverage.Text `json:"finding"` // id of the finding that speaks
}

// Side says whose file holds the key that decides.
type Side string

// A key is the line's, the drink's, or that of the question asked.
const (
	OfLine    Side = "line"
	OfSpec    Side = "spec"
	OfRequest Side = "request"
)

// NothingMissing is what is said of a line that has all that was asked of it.
const NothingMissing = "nothing missing on paper"
