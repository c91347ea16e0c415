package beverage

// HeatNote is what a stated or recorded heat comes to beside published figures.
// It is a figure to look at and clears nothing.
type HeatNote struct {
	What   string `json:"what"`
	Market Market `json:"market,omitempty"`
	Text   string `json:"text"`
	Source string `json:"source"`
}
