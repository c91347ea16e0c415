package holdtube

const (
	// leastDryness of steam that is worth calling so.
	leastDryness = 0.5
	// assumedDryness of steam of which nothing is known; a margin of ours.
	assumedDryness = 0.95
)

// perLitre is the condensate in litres that a litre of drink takes up on its way
// to holdC, both at holdC. The drink's heat is that of as much water, the
// largest, and the steam's that of saturated steam at holdC, the least that any
// hotter steam brings.
func (s Steam) perLitre(holdC float64) float64 {
	if s.DrinkBeforeC == 0 {
		return 0
	}
	dryness := s.Dryness
	if dryness == 0 {
		dryness = assumedDryness
	}
	return (waterKJKg(holdC) - waterKJKg(s.DrinkBeforeC)) / (dryness * (steamKJKg(holdC) - waterKJKg(holdC)))
}
