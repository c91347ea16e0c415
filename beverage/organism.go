package beverage

// OrganismLeft is a group of organisms that the process as described may leave,
// or let back in, and that could grow in the drink or outlast in it.
type OrganismLeft struct {
	Name     string   `json:"name"`
	Remains  string   `json:"remains"`   // why the process leaves it
	Grows    string   `json:"grows"`     // between which ends it grows
	HeldBack []string `json:"held_back"` // what of the drink holds it back and does not rule it out
	Control  string   `json:"control"`
	Source   string   `json:"source"`
	Basis    Basis    `json:"basis"`
}
