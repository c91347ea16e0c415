package protein

import "testing"

func TestAminoAcidsOfEveryProtein(t *testing.T) {
	for _, id := range IDs() {
		a, ok := composition(t, id).AminoAcids()
		holds(t, ok && a.Essential().Known() && a.Source.Text != "", "%s: amino acids unknown", id)
		factor, use, source, ok := composition(t, id).NitrogenFactor()
		holds(t, ok && use != "" && source.Text != "", "%s: nitrogen factor unknown", id)
		near(t, 6, factor, 0.5, id)
	}
}

// Collagen has no tryptophan, so its score is nothing.
func TestCollagenScoresNothing(t *testing.T) {
	a, _ := composition(t, "collagen").AminoAcids()
	score, ok := a.Score(AgeOver3)
	holds(t, ok, "no score")
	equal(t, 0, score.Value.High, "score")
	equal(t, "Trp", score.Limiting, "limiting")
}

func TestScoreOfAnUnknownPattern(t *testing.T) {
	a, _ := composition(t, "whey isolate").AminoAcids()
	_, ok := a.Score("dragons")
	equal(t, false, ok, "unknown age group")
	_, ok = AminoAcids{}.Score(AgeOver3)
	equal(t, false, ok, "unknown amino acids")
}
