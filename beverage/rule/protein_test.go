package rule_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/rule"
	"posset/beverage/spec"
)

// Processes, packs and stores of the drinks below.
const (
	hotFilled = `[process]
route = "hot fill"
hold_temperature = "92 C"
hold_time = "30 s"
fill_temperature = "88 C"
pack_hold_time = "3 min"
pack_hold_temperature = "84 C"
` + ambient
	tunnelled = "[process]\nroute = \"tunnel pasteurization\"\nhold_temperature = \"65 C\"\nhold_time = \"12 min\"\nfill_temperature = \"4 C\"\n" + ambient
	aseptic   = "[process]\nroute = \"aseptic\"\nhold_temperature = \"139 C\"\nhold_time = \"4 s\"\nfill_temperature = \"22 C\"\n" + ambient
	retorted  = "[process]\nroute = \"retort\"\nhold_temperature = \"121.1 C\"\nhold_time = \"20 min\"\nfill_temperature = \"70 C\"\n" + ambient
	coldFill  = "[process]\nroute = \"cold fill\"\nfill_temperature = \"4 C\"\n" + ambient
	chilled   = "[process]\nroute = \"flash pasteurization\"\nhold_temperature = \"73 C\"\nhold_time = \"15 s\"\nfill_temperature = \"4 C\"\n[storage]\ndistribution = \"refrigerated\"\ntemperature = \"6 C\"\nshelf_life = \"40 days\"\n"
	unheated  = "[process]\nroute = \"none\"\n[storage]\ndistribution = \"refrigerated\"\ntemperature = \"6 C\"\nshelf_life = \"30 days\"\n"
	ambient   = "[storage]\ndistribution = \"ambient\"\ntemperature = \"30 C\"\nshelf_life = \"9 months\"\n"
	bubbles   = "[carbonation]\nvolumes = 2.2\n"
)

// made puts a spec together: base, measured pH ("" for none), the rest, and
// ingredients as "name: amount".
func made(base, pH, rest string, ingredients ...string) string {
	text := "[drink]\nname = \"trial\"\nbase = \"" + base + "\"\n"
	if pH != "" {
		text += "[measured]\nph = " + pH + "\nph_tolerance = 0.05\nph_temperature = \"25 C\"\nph_degassed = true\n"
	}
	text += rest
	for _, i := range ingredients {
		name, amount, _ := strings.Cut(i, ": ")
		text += "[[ingredient]]\nname = \"" + name + "\"\namount = \"" + amount + "\"\n"
	}
	return text
}

// said is what the rules say of a drink: the worst level of each finding.
func said(t require.TestingT, text string) map[string]string {
	d, err := spec.Parse([]byte(text), "trial.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	said := map[string]string{}
	for _, x := range rule.Findings(f) {
		if _, ok := said[x.ID]; !ok {
			said[x.ID] = x.Level.String()
		}
	}
	return said
}

// What somebody who makes such drinks would say of them.
func TestProteinDrinksAsAPractitionerSeesThem(t *testing.T) {
	curd, gel, zone, haze, gum := "casein-acid-curd", "protein-gel", "protein-isoelectric", "protein-polyphenol-haze", "protein-anionic-gum"
	judged(t, map[string]trial{
		"clear acid whey, still": {made("water", "3.1", hotFilled, "whey protein isolate, acidified: 70 g/L", "citric acid: 1.2 g/L", "sucralose: 0.1 g/L"),
			[]string{"protein-astringent note", "protein-denatures note"}, []string{gel, zone, curd, "protein-unknown", "protein-calcium", "protein-fouling", "thickening-changes-heating", "protein-cold-gel", "protein-salt-haze", "protein-browning"}},
		"clear acid whey in an aseptic line": {made("water", "3.1", aseptic, "whey protein isolate, acidified: 70 g/L"),
			[]string{"protein-denatures note"}, []string{gel, zone, "protein-fouling", "thickening-changes-heating"}},
		"clear acid whey, sparkling, tunnel": {made("water", "3.1", bubbles+tunnelled, "whey protein isolate, acidified: 66 g/L", "sea buckthorn juice: 20 g/L"),
			[]string{"carbonated-protein-foam note"}, []string{gel, zone, curd, haze}},
		"neutral clear whey at 139 °C": {made("water", "6.8", aseptic, "whey protein isolate: 55 g/L"),
			[]string{"protein-denatures review", gel + " review", "protein-calcium review"}, []string{curd, zone, "protein-astringent"}},
		"neutral beta-lactoglobulin, poor in salt": {made("water", "7.0", aseptic, "beta-lactoglobulin isolate: 68 g/L"),
			[]string{"protein-denatures review"}, []string{curd, zone, gel, "protein-calcium"}},
		"dense acid shot": {made("water", "3.2", hotFilled, "whey protein isolate, acidified: 235 g/L"),
			[]string{gel + " review", "protein-viscosity note"}, []string{zone, curd}},
		"collagen shot": {made("water", "4.0", hotFilled, "collagen peptides: 220 g/L", "citric acid: 6 g/L"),
			nil, []string{gel, zone, curd, "protein-cold-gel", "protein-denatures"}},
		"micellar casein, retorted, with phosphate": {made("milk", "6.75", retorted, "micellar casein isolate: 67 g/L", "dipotassium phosphate: 1.5 g/L"),
			[]string{"ph-drop-on-heat review", "protein-calcium note", "protein-age-gelation note", "protein-sediment note"}, []string{curd, zone, gel, "protein-fouling", "thickening-changes-heating"}},
		"micellar casein, aseptic, none added": {made("milk", "6.5", aseptic, "micellar casein isolate: 75 g/L"),
			[]string{"protein-calcium review", "protein-fouling review", "ph-drop-on-heat note", "protein-age-gelation note"}, []string{curd, gel}},
		"casein coffee": {made("coffee", "6.75", retorted, "micellar casein isolate: 67 g/L", "coffee extract: 12 g/L", "dipotassium phosphate: 1.5 g/L"),
			[]string{haze + " note", "ph-drop-on-heat"}, []string{curd, zone, "protein-unknown"}},
		"milk in sour coffee, retorted": {made("coffee", "5.4", retorted, "skim milk: 500 g/L", "coffee extract: 20 g/L"),
			[]string{curd + " stop", haze + " review"}, []string{"protein-unknown"}},
		"hydrolysed whey, sparkling, cold filled": {made("water", "3.4", bubbles+coldFill, "whey protein hydrolysate, extensively hydrolysed: 43 g/L", "citric acid: 8 g/L", "phosphoric acid: 3 g/L"),
			[]string{"carbonated-protein-foam note", "hydrolysate-bitter note"}, []string{gel, zone, curd, "protein-denatures", "protein-salt-haze"}},
		"hydrolysed whey near pH 4.5": {made("water", "4.4", hotFilled, "whey protein hydrolysate: 40 g/L", "citric acid: 5 g/L"),
			[]string{zone + " note"}, []string{gel, "protein-denatures"}},
		"caseinate in acid": {made("juice", "4.2", chilled, "sodium caseinate: 25 g/L", "rhubarb juice: 120 g/L"),
			[]string{curd + " stop", zone + " review"}, []string{"protein-sediment"}},
		"caseinate near neutral":    {made("milk", "6.9", chilled, "sodium caseinate: 25 g/L"), nil, []string{curd, zone, gel}},
		"casein far below its zone": {made("water", "3.2", hotFilled, "micellar casein isolate: 20 g/L", "phosphoric acid: 6 g/L"), []string{curd + " stop"}, []string{zone}},
		"collagen water":            {made("water", "3.6", hotFilled, "collagen peptides: 22 g/L", "citric acid: 3 g/L"), nil, []string{gel, zone, haze, gum, "protein-denatures", "protein-unknown"}},
		"gelatin":                   {made("water", "3.4", hotFilled, "gelatin: 12 g/L", "citric acid: 3 g/L"), []string{"protein-cold-gel note"}, []string{gel, zone}},
		"pea in juice":              {made("juice", "4.4", coldFill, "pea protein isolate: 30 g/L", "apple juice: 500 g/L"), []string{zone + " review"}, []string{curd, "protein-unknown"}},
		"oat near its zone":         {made("plant", "4.6", chilled, "oat drink base: 700 g/L", "citric acid: 3 g/L"), []string{zone + " review"}, []string{curd}},
		"oat coffee":                {made("plant", "6.1", aseptic, "oat drink base: 700 g/L", "coffee extract: 15 g/L"), nil, []string{gel, zone, "thickening-changes-heating", "protein-unknown"}},
		"soy near neutral, calcium that stays solid": {made("plant", "7.0", chilled, "soy protein isolate: 32 g/L", "sucrose: 30 g/L", "calcium carbonate: 1.2 g/L"),
			[]string{"protein-sediment note"}, []string{zone, curd, gel, "protein-calcium"}},
		"soy near neutral, calcium that dissolves": {made("plant", "7.0", chilled, "soy protein isolate: 32 g/L", "calcium chloride: 0.8 g/L"), []string{"protein-calcium review"}, []string{zone}},
		"acid milk with pectin": {made("milk", "4.0", chilled, "whole milk: 760 g/L", "citric acid: 8 g/L", "sucrose: 60 g/L", "pectin, high methoxyl: 4 g/L"),
			[]string{curd + " review"}, []string{gum, "protein-unknown"}},
		"acid milk with too little pectin": {made("milk", "4.0", chilled, "whole milk: 760 g/L", "pectin, high methoxyl: 2 g/L"), []string{curd + " stop", gum + " review"}, nil},
		"acid milk with soybean polysaccharide": {made("milk", "3.7", chilled, "skim milk: 700 g/L", "citric acid: 9 g/L", "soybean soluble polysaccharide: 4 g/L"),
			[]string{curd + " review"}, []string{gum}},
		"kefir":                   {made("fermented", "4.4", unheated, "skim milk: 950 g/L"), []string{curd + " review"}, []string{"protein-unknown"}},
		"kefir, heated after":     {made("fermented", "4.4", chilled, "skim milk: 950 g/L"), []string{curd + " stop"}, nil},
		"whey at pH 4.45":         {made("water", "4.45", hotFilled, "whey protein isolate: 20 g/L", "citric acid: 1.2 g/L"), []string{zone + " review", "protein-denatures review"}, []string{curd}},
		"plain juice":             {made("juice", "3.6", hotFilled, "orange juice: 900 g/L", "apple juice: 100 g/L"), nil, []string{zone, gel, haze, "protein-unknown", "protein-denatures", "protein-browning", "protein-astringent"}},
		"sparkling juice":         {made("juice", "3.4", bubbles+tunnelled, "orange juice: 400 g/L"), nil, []string{"carbonated-protein-foam"}},
		"plain tea":               {made("tea", "4.2", hotFilled, "black tea extract: 2 g/L", "citric acid: 1 g/L"), nil, []string{zone, haze, "protein-unknown"}},
		"milk tea":                {made("tea", "6.7", retorted, "whole milk: 250 g/L", "black tea extract: 2 g/L"), []string{haze + " note"}, []string{curd, zone, "protein-unknown", "protein-calcium"}},
		"plain UHT milk":          {made("milk", "6.7", aseptic, "skim milk: 950 g/L"), nil, []string{curd, zone, gel, "protein-calcium", "protein-fouling", "protein-denatures", "protein-unknown"}},
		"collagen with green tea": {made("tea", "3.9", hotFilled, "collagen peptides: 20 g/L", "green tea extract: 2 g/L"), []string{haze + " review"}, []string{zone}},
		"acid whey with xanthan":  {made("water", "3.1", hotFilled, "whey protein isolate, acidified: 66 g/L", "xanthan gum: 0.8 g/L"), []string{gum + " review"}, []string{zone}},
		"neutral milk and gellan": {made("milk", "6.8", aseptic, "skim milk: 900 g/L", "gellan gum: 0.3 g/L"), nil, []string{gum, curd}},
		"sparkling casein":        {made("milk", "6.7", bubbles+tunnelled, "micellar casein isolate: 40 g/L"), []string{"carbonated-protein-foam"}, []string{gel}},
		"egg white, pasteurized":  {made("water", "7.2", chilled, "egg white powder: 30 g/L"), []string{gel + " review"}, []string{curd}},
		"thick as measured":       {made("plant", "6.9", "viscosity = \"120 mPa·s\"\n"+retorted, "oat drink base: 700 g/L"), []string{"thickening-changes-heating review"}, []string{gel}},
		"nothing measured, sure of it": {made("water", "", hotFilled, "whey protein isolate, acidified: 66 g/L", "phosphoric acid: 0.5 g/L"),
			nil, []string{zone, gel, curd}},
		"no recipe figure, no pH": {made("milk", "", aseptic, "micellar casein isolate: 60 g/L", "quillwort essence: 2 g/L"), []string{curd + " review", zone + " review"}, nil},
	})
}

// trial is a drink with what must and must not be said of it: "id" alone is any
// level, "id stop" that level.
type trial struct {
	spec      string
	must, not []string
}

func judged(t *testing.T, trials map[string]trial) {
	t.Helper()
	for name, c := range trials {
		t.Run(name, func(t *testing.T) {
			got := said(t, c.spec)
			for _, m := range c.must {
				id, level, any := strings.Cut(m, " ")
				assert.Contains(t, got, id)
				if any {
					assert.Equal(t, level, got[id], id)
				}
			}
			for _, id := range c.not {
				assert.NotContains(t, got, id)
			}
		})
	}
}

// Of a protein that nobody names no route that could gel or filter it is left
// standing.
func TestUnknownProteinLeavesRoutesOpen(t *testing.T) {
	d, err := spec.Parse([]byte(made("plant", "7.0", chilled, "lupin protein powder: 40 g/L")+"kind = \"protein\"\nprotein = \"82 %\"\n"), "trial.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	for _, r := range []beverage.Route{beverage.Aseptic, beverage.RetortRoute, beverage.SterileFiltration} {
		fit, reasons := rule.OnRoute(f.WithRoute(r))
		assert.NotEqual(t, beverage.Fits, fit, r)
		assert.NotEmpty(t, reasons, r)
	}
}

// A hold that is not given is said by the finding on the protein itself, on any
// route that heats.
func TestHoldNotGivenIsSaid(t *testing.T) {
	for _, route := range []string{"hot fill", "tunnel pasteurization", "flash pasteurization", "extended shelf life", "aseptic", "retort"} {
		for _, hold := range []string{"", "hold_time = \"15 s\"\n", "hold_temperature = \"73 C\"\n"} {
			got := said(t, made("water", "6.8", "[process]\nroute = \""+route+"\"\n"+hold, "whey protein isolate: 40 g/L"))
			assert.Equal(t, "review", got["protein-denatures"], "%s, %q", route, hold)
		}
	}
}

// Every window and figure that a rule names is there.
func TestFiguresOfProteinRulesAreThere(t *testing.T) {
	assert.NotPanics(t, func() {
		for _, x := range []string{"whey protein isolate", "micellar casein isolate", "skim milk", "gelatin", "pea protein isolate", "egg white powder", "collagen peptides", "whey protein hydrolysate"} {
			for _, route := range []string{hotFilled, aseptic, retorted, "[process]\nroute = \"sterile filtration\"\n", "[process]\nroute = \"high pressure\"\n"} {
				for _, pH := range []string{"", "3.1", "4.4", "6.7"} {
					said(t, made("milk", pH, bubbles+route, x+": 60 g/L", "green tea extract: 3 g/L", "xanthan gum: 2 g/L", "calcium lactate: 2 g/L", "glucose monohydrate: 30 g/L"))
				}
			}
		}
	})
}
