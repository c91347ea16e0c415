package ingredient

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestLookup(t *testing.T) {
	for name, want := range map[string]string{
		// trade synonyms
		"WPI": "whey protein isolate", "wpc80": "whey protein concentrate 80", "WPC-80": "whey protein concentrate 80", "MCC": "micellar casein isolate",
		"MCI": "micellar casein isolate", "MPC 80": "milk protein concentrate 80", "MPC80": "milk protein concentrate 80", "MPC 85": "milk protein isolate",
		"SMP": "skim milk powder", "NFDM": "skim milk powder", "Non-fat dry milk": "skim milk powder", "CMC": "carboxymethyl cellulose", "HMP": "pectin, high methoxyl",
		"LBG": "locust bean gum", "HFCS": "high-fructose corn syrup", "dextrose": "glucose monohydrate", "vitamin C": "ascorbic acid", "GDL": "glucono-delta-lactone",
		"ACV": "cider vinegar", "GMP": "caseinomacropeptide isolate", "BLG": "beta-lactoglobulin isolate", "β-lactoglobulin": "beta-lactoglobulin isolate",
		"κ-carrageenan": "kappa-carrageenan", "κ carrageenan": "kappa-carrageenan", "Ace-K": "acesulfame potassium", "Reb A": "rebaudioside A", "stevia": "rebaudioside A",
		"DKP": "dipotassium phosphate", "SHMP": "sodium hexametaphosphate", "TSPP": "tetrasodium pyrophosphate", "KMBS": "potassium metabisulfite", "MCT": "medium-chain triglyceride oil",
		"gelatine": "gelatin", "soya protein isolate": "soy protein isolate", "whey permeate powder": "permeate powder, milk mineral", "DMDC": "dimethyl dicarbonate",
		"natural flavor": "flavour, liquid", "natural flavour": "flavour, liquid", "caramel color": "caramel colour class IV", "thiamine HCl": "thiamin hydrochloride",
		"table salt": "sodium chloride", "cream of tartar": "potassium hydrogen tartrate", "sulphur dioxide": "sulfur dioxide", "sodium metabisulphite": "sodium metabisulfite",
		// case, spacing, plural, order
		"  CITRIC   ACID ": "citric acid", "isolate whey proteins": "whey protein isolate", "acidified whey protein isolate": "whey protein isolate, acidified",
		"Whey Protein Isolate (acidified)": "whey protein isolate, acidified", "high-methoxyl pectin": "pectin, high methoxyl", "leucine": "L-leucine", "collagen peptide": "collagen peptides",
		"extensively hydrolyzed whey protein hydrolysate": "whey protein hydrolysate, extensively hydrolysed", "passion fruit juice": "passion-fruit juice",
		// E and INS numbers
		"E330": "citric acid", "E 330": "citric acid", "INS 330": "citric acid", "E338": "phosphoric acid", "E270": "lactic acid", "E202": "potassium sorbate", "E211": "sodium benzoate",
		"E212": "potassium benzoate", "E466": "carboxymethyl cellulose", "E 955": "sucralose", "E331(iii)": "sodium citrate", "E340(ii)": "dipotassium phosphate", "E 385": "calcium disodium EDTA",
		"E500(ii)": "sodium bicarbonate", "E260": "acetic acid", "E 960a": "rebaudioside A", "E290": "carbon dioxide", "E 150d": "caramel colour class IV",
		// hydrates: without one, the anhydrous substance
		"trisodium citrate": "sodium citrate", "sodium citrate dihydrate": "trisodium citrate dihydrate", "citric acid anhydrous": "citric acid", "anhydrous citric acid": "citric acid",
		"calcium chloride, anhydrous": "calcium chloride", "disodium phosphate anhydrous": "disodium phosphate", "trimagnesium citrate": "trimagnesium citrate, anhydrous",
		"sucrose anhydrous": "sucrose", "caffeine, anhydrous": "caffeine", "calcium lactate": "calcium lactate", "glucose": "glucose", "potassium citrate monohydrate": "tripotassium citrate monohydrate",
		// grades and forms
		"citric acid, USP": "citric acid", "Citric acid (food grade)": "citric acid", "citric acid powder": "citric acid", "granulated sucrose": "sucrose", "organic apple juice": "apple juice",
		"whey protein isolate, instantised": "whey protein isolate", "NFC orange juice": "orange juice", "apple juice from concentrate": "apple juice", "potassium sorbate granules": "potassium sorbate",
		"whey protein isolate 90": "whey protein isolate", "WPI 88 %": "whey protein isolate", "apple juice concentrate 70 Brix": "apple juice concentrate", "orange juice concentrate, 66 Brix": "orange juice concentrate",
		"phosphoric acid (85 %, food grade)": "phosphoric acid 85 %", "phosphoric acid 85.0 pct": "phosphoric acid 85 %", "lactic acid 88%": "lactic acid 88 %", "75 % phosphoric acid": "phosphoric acid 75 %",
	} {
		if got, ok := Default().Lookup(name); !ok || got.Name != want {
			t.Errorf("Lookup(%q) = %q, %v; want %q", name, got.Name, ok, want)
		}
	}
}

// TestLookupAsks: what could mean several entries, or none, is not resolved;
// the choices are offered, these ones among the first five.
func TestLookupAsks(t *testing.T) {
	for name, offers := range map[string][]string{
		"whey protein concentrate":        {"whey protein concentrate 34", "whey protein concentrate 80"},
		"whey protein concentrate 60":     {"whey protein concentrate 34", "whey protein concentrate 80"},
		"E331":                            {"sodium citrate", "trisodium citrate dihydrate", "monosodium citrate"},
		"E340":                            {"dipotassium phosphate", "monopotassium phosphate", "tripotassium phosphate"},
		"E407":                            {"iota-carrageenan", "kappa-carrageenan"},
		"carrageenan":                     {"iota-carrageenan", "kappa-carrageenan"},
		"pectin":                          {"pectin, high methoxyl", "pectin, low methoxyl"},
		"caseinate":                       {"sodium caseinate", "calcium caseinate"},
		"sodium phosphate":                {"monosodium phosphate", "disodium phosphate", "trisodium phosphate"},
		"disodium phosphate heptahydrate": {"disodium phosphate", "disodium phosphate dihydrate"},
		"citrc acid":                      {"citric acid", "citric acid monohydrate"},
		"potasium sorbate":                {"potassium sorbate"},
		"aple juice":                      {"apple juice"},
		"quince puree":                    {"quince juice"},
		"apple juice powder":              {"apple juice", "apple juice concentrate"},
		"spray dried whole milk":          {"whole milk"},
		"gelatin type C":                  {"gelatin", "gelatin type A", "gelatin type B"},
	} {
		if e, ok := Default().Lookup(name); ok {
			t.Errorf("Lookup(%q) = %q; want a question", name, e.Name)
		}
		near := Default().Near(name, 5)
		for _, o := range offers {
			if !slices.Contains(near, o) {
				t.Errorf("Near(%q) = %q; want %q among them", name, near, o)
			}
		}
	}
	for _, name := range []string{"", " ", "%", "?!", "zzz", "mustard", "the"} {
		if e, ok := Default().Lookup(name); ok {
			t.Errorf("Lookup(%q) = %q", name, e.Name)
		}
	}
	if got := Default().Near("dragonscale", 5); len(got) > 0 {
		t.Errorf("Near of what is like nothing = %q", got)
	}
	if got := Default().Near("citric acid", 0); got != nil {
		t.Errorf("Near 0 = %q", got)
	}
}

// TestLookupAtStrength: a strength in the name is the strength, and the figures
// follow it.
func TestLookupAtStrength(t *testing.T) {
	for name, want := range map[string]struct {
		entry             string
		strength, element float64 // percent; of P, Na or K
	}{
		"phosphoric acid 80 %":     {"phosphoric acid", 80, 80 * 30.974 / 97.995},
		"sodium hydroxide 50 %":    {"sodium hydroxide", 50, 50 * 22.990 / 39.997},
		"potassium sorbate 20 %":   {"potassium sorbate", 20, 20 * 39.098 / 150.22},
		"lactic acid 50":           {"lactic acid", 50, 0},
		"hydrochloric acid, 37 %":  {"hydrochloric acid", 37, 0},
		"citric acid solution 50%": {},
	} {
		e, ok := Default().Lookup(name)
		if want.entry == "" {
			if ok {
				t.Errorf("%q resolves to %q", name, e.Name)
			}
			continue
		}
		if !ok || e.Name != want.entry || e.StrengthPercent.Low != want.strength || e.StrengthPercent.High != want.strength {
			t.Errorf("%q: %q at %v", name, e.Name, e.StrengthPercent)
		}
		if got := e.Phosphorus.Mid + e.Sodium.Mid + e.Potassium.Mid; !near(got, want.element, 2e-3*want.element+1e-9) {
			t.Errorf("%q: %g %% of its element, want %g", name, got, want.element)
		}
		if e.Moisture.Known() && !near(e.Moisture.Mid, 100-want.strength, 1e-9) {
			t.Errorf("%q: moisture %v", name, e.Moisture)
		}
	}
	half, _ := Default().Lookup("potassium sorbate 20 %")
	if !near(half.ActiveFraction, 0.2*0.7464, 1e-3) {
		t.Errorf("active part of a 20 %% sorbate %g", half.ActiveFraction)
	}
	whole, _ := Default().Lookup("potassium sorbate")
	if !near(whole.ActiveFraction, 0.7464, 1e-3) || whole.StrengthPercent.Mid != 100 {
		t.Errorf("a diluted copy changed the library: %g, %v", whole.ActiveFraction, whole.StrengthPercent)
	}
}

// TestEveryNameResolvesHoweverWritten: for every entry, each of its names finds
// it in upper case, with other spacing, reversed, and in the plural.
func TestEveryNameResolvesHoweverWritten(t *testing.T) {
	all := Default().names
	rapid.Check(t, func(t *rapid.T) {
		e := all[rapid.IntRange(0, len(all)-1).Draw(t, "entry")]
		names := e.names()
		n := names[rapid.IntRange(0, len(names)-1).Draw(t, "name")]
		ws := strings.Fields(n)
		switch rapid.IntRange(0, 4).Draw(t, "how") {
		case 0:
			n = strings.ToUpper(n)
		case 1:
			n = "\t" + strings.Join(ws, "   ") + "  "
		case 2:
			slices.Reverse(ws)
			n = strings.Join(ws, " ")
		case 3:
			n = strings.ReplaceAll(n, "-", " ")
		case 4:
			word := ws[len(ws)-1] // a formula such as NH4Cl has no plural
			if last := n[len(n)-1]; last >= 'a' && last <= 'r' && last != 'i' && len(word) > 3 && !strings.ContainsAny(word, "0123456789") {
				n += "s"
			}
		}
		if got, ok := Default().Lookup(n); !ok || got.Name != e.Name {
			t.Fatalf("%q finds %q, %v; want %q", n, got.Name, ok, e.Name)
		}
	})
}

// TestEntriesAreCopies: what a caller does to an entry stays with the caller.
func TestEntriesAreCopies(t *testing.T) {
	a, _ := Default().Lookup("sucrose")
	a.Figures[0].Source.Text = "changed"
	a.Name = "changed"
	if b, _ := Default().Lookup("sucrose"); b.Name != "sucrose" || b.Figures[0].Source.Text == "changed" {
		t.Error("a caller's change reached the library")
	}
}

func TestSearch(t *testing.T) {
	for text, want := range map[string][]string{
		"quince":             {"quince juice"},
		"WHEY isolates":      {"alpha-lactalbumin-enriched whey protein", "native whey protein isolate", "whey protein hydrolysate", "whey protein isolate", "whey protein isolate, acidified", "whey protein isolate, ion exchange"},
		"preservative benzo": {"benzoic acid", "potassium benzoate", "potassium benzoate trihydrate", "sodium benzoate"},
		"no such thing":      nil,
		"":                   nil,
	} {
		var got []string
		for _, e := range Default().Search(text) {
			got = append(got, e.Name)
		}
		if !slices.Equal(got, want) {
			t.Errorf("Search(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestEmptyLibraryKnowsNothing(t *testing.T) {
	l := &Library{}
	if _, ok := l.Lookup("citric acid"); ok || len(l.All())+len(l.Near("citric acid", 3)) > 0 {
		t.Error("an empty library knows something")
	}
}

// FuzzLookup: no name, however hostile, makes a panic, a long wait or an answer
// that is not an entry's.
func FuzzLookup(f *testing.F) {
	for _, s := range []string{"", "%", "E", "E 33", "INS", "1e308 % citric acid", "NaN % phosphoric acid", "-5 % lactic acid", "whey protein isolate 90 90", "0 % phosphoric acid",
		"citric acid 1e-320 %", strings.Repeat("whey ", 4000), "\xff\xfe", "phosphoric acid 999999999999999999999 %", "水", "β", "a.b.c...", "5.5.5 % lactic acid", "food grade", "anhydrous", "powder"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, name string) {
		e, ok := Default().Lookup(name)
		if ok && (e.Name == "" || !utf8.ValidString(e.Name)) {
			t.Errorf("%q found %q", name, e.Name)
		}
		if s := e.StrengthPercent; ok && s.Known() && !(s.Low >= 0 && s.Low <= s.Mid && s.Mid <= s.High && s.High <= 100) {
			t.Errorf("%q: strength %v", name, s)
		}
		if n := Default().Near(name, 5); len(n) > 5 {
			t.Errorf("%d near names", len(n))
		}
		Default().Search(name)
	})
}
