package rule_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/spec"
)

// cut is an ingredient with its degree of hydrolysis, at the end of a spec.
func cut(text, percent string) string { return text + "degree_of_hydrolysis = \"" + percent + " %\"\n" }

// Protein is judged by what it is: how far it is cut, what of it dissolves, whether
// it holds micelles, and whether it is heated at all.
func TestProteinIsJudgedByWhatItIs(t *testing.T) {
	gel, unfolds, sediment, haze, coagulates, thick := "protein-gel", "protein-denatures", "protein-sediment", "protein-polyphenol-haze", "protein-heat-coagulation", "thickening-changes-heating"
	hydrolysate := made("water", "6.8", aseptic, "whey protein hydrolysate: 60 g/L")
	judged(t, map[string]trial{
		"slightly cut whey is whey":       {cut(hydrolysate, "3"), []string{gel + " review", unfolds + " review", "protein-fouling"}, []string{"hydrolysate-bitter", "protein-unknown"}},
		"deeply cut whey is not":          {cut(hydrolysate, "15"), []string{"hydrolysate-bitter note"}, []string{gel, unfolds, "protein-fouling", "protein-unknown"}},
		"nobody says how far it is cut":   {hydrolysate, []string{"protein-unknown review", "hydrolysate-bitter note"}, nil},
		"slightly cut casein curds":       {cut(made("water", "4.6", hotFilled, "casein hydrolysate: 30 g/L"), "3"), []string{"casein-acid-curd stop"}, nil},
		"deeply cut casein does not":      {cut(made("water", "4.6", hotFilled, "casein hydrolysate: 30 g/L"), "20"), nil, []string{"casein-acid-curd"}},
		"whey at the edge of clarity":     {made("water", "3.8", hotFilled, "whey protein isolate: 30 g/L", "citric acid: 6 g/L"), []string{unfolds + " review", "protein-salt-haze note"}, []string{"casein-acid-curd"}},
		"macropeptide does not unfold":    {made("water", "3.8", hotFilled, "caseinomacropeptide isolate: 20 g/L", "citric acid: 2 g/L"), nil, []string{"protein-salt-haze", unfolds, gel}},
		"whey under pressure":             {made("water", "6.7", "[process]\nroute = \"high pressure\"\npressure = \"600 MPa\"\n", "whey protein isolate: 60 g/L"), []string{unfolds + " note"}, []string{"protein-salt-haze", gel}},
		"sour pea settles":                {made("water", "3.4", hotFilled, "pea protein isolate: 30 g/L", "citric acid: 6 g/L"), []string{sediment + " note"}, []string{haze, "casein-acid-curd"}},
		"rice settles, gum or none":       {made("plant", "6.8", aseptic, "rice protein isolate: 30 g/L"), []string{sediment + " note"}, []string{haze}},
		"gellan holds soy":                {made("plant", "7.1", aseptic, "soy protein isolate: 40 g/L", "gellan gum: 0.3 g/L"), nil, []string{sediment}},
		"native potato dissolves less":    {made("water", "3.0", hotFilled, "potato protein isolate: 30 g/L", "citric acid: 6 g/L"), []string{sediment + " note"}, []string{haze}},
		"micelles in a retort":            {made("milk", "6.85", retorted, "micellar casein isolate: 50 g/L"), []string{coagulates + " note"}, nil},
		"micelles in a retort, sour":      {made("milk", "6.4", retorted, "micellar casein isolate: 50 g/L"), []string{coagulates + " review"}, nil},
		"micelles in a tube":              {made("milk", "6.85", aseptic, "micellar casein isolate: 50 g/L"), nil, []string{coagulates}},
		"caseinate stands heat":           {made("milk", "6.85", retorted, "sodium caseinate: 30 g/L"), nil, []string{coagulates}},
		"oat flour thickens":              {made("plant", "6.6", aseptic, "oat flour: 60 g/L"), []string{thick + " review"}, nil},
		"a little oat flour does not":     {made("plant", "6.6", aseptic, "oat flour: 5 g/L"), nil, []string{thick}},
		"malt in milk is no tannin":       {made("milk", "6.8", aseptic, "micellar casein isolate: 50 g/L", "barley malt extract: 20 g/L"), nil, []string{haze}},
		"casein coffee above feathering":  {made("coffee", "6.8", aseptic, "micellar casein isolate: 50 g/L", "coffee extract: 12 g/L"), []string{haze + " note"}, []string{"casein-acid-curd"}},
		"egg white in acid sets":          {made("water", "3.4", tunnelled, "egg white powder: 40 g/L", "citric acid: 8 g/L"), []string{gel + " review", "protein-astringent note"}, []string{"casein-acid-curd"}},
		"concentrate is never clear":      {made("water", "3.2", hotFilled, "whey protein concentrate 80: 40 g/L", "citric acid: 9 g/L"), []string{unfolds + " note"}, []string{gel, "protein-isoelectric"}},
		"collagen with tea, warm":         {made("tea", "3.9", tunnelled, "collagen peptides: 30 g/L", "black tea extract: 2 g/L"), []string{haze + " review"}, []string{gel, "protein-cold-gel"}},
		"acid milk held by cellulose gum": {made("milk", "4.1", aseptic, "skim milk powder: 60 g/L", "carboxymethyl cellulose: 4 g/L"), []string{"casein-acid-curd review"}, []string{"protein-anionic-gum"}},
	})
}

// What nobody knows is never told as none.
func TestUnknownProteinIsNotNoWhey(t *testing.T) {
	d, err := spec.Parse([]byte(made("water", "3.4", hotFilled, "elderflower protein: 40 g/L")+"kind = \"protein\"\nprotein = \"80 %\"\n"), "trial.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	require.Equal(t, "the protein of elderflower protein is not known", f.Protein.DenatureNo)
	require.Equal(t, []string{"the protein of elderflower protein is not known"}, f.ProteinUntold())
}
