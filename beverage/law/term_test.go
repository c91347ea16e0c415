package law

import (
	"testing"

	"posset/beverage"
)

func ph(low, high float64) beverage.Interval { return beverage.Span(low, high, beverage.Measured) }

func TestTermsOfTheUnitedStates(t *testing.T) {
	for _, c := range []struct {
		what   string
		class  beverage.Class
		c      Circumstances
		term   string
		rule   string
		argued bool
	}{
		{"carrot juice on the shelf", beverage.LowAcid, Circumstances{PH: ph(6.1, 6.3), Juice: true},
			"low-acid food", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", false},
		{"carrot juice kept cold", beverage.LowAcid, Circumstances{PH: ph(6.1, 6.3), Juice: true, Refrigerated: true},
			"refrigerated low-acid juice",
			"FDA Guidance for Industry: Refrigerated Carrot Juice and Other Refrigerated Low-Acid Juices, June 2007", false},
		{"carbonated milk tea", beverage.LowAcid, Circumstances{PH: ph(6, 6.2), Carbonated: true},
			"low-acid food: the carbonated exclusion is of the acidified rule, not of this one", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", false},
		{"clear whey water", beverage.Acidified, Circumstances{PH: ph(3.1, 3.3)},
			"acidified food", "21 CFR 114.3(b) (2015 text)", false},
		{"clear whey water of a powder acidified by its maker", beverage.Acidified, Circumstances{PH: ph(3.1, 3.3), PreAcidifiedPowderOnly: true},
			"acidified food; some authorities judge a powder acidified by its maker on its own pH",
			"no section; reading of 21 CFR 114.3(b) (undated copy, read on a secondary page)", true},
		{"the same with bubbles", beverage.Acidified, Circumstances{PH: ph(3.1, 3.3), PreAcidifiedPowderOnly: true, Carbonated: true},
			"acidified food, or left out of that rule as a carbonated beverage", "21 CFR 114.3(b) (2015 text)", true},
		{"the same kept cold", beverage.Acidified, Circumstances{PH: ph(3.1, 3.3), Carbonated: true, Refrigerated: true},
			"left out of the acidified rule while stored, distributed and sold cold", "21 CFR 114.3(b) (2015 text)", false},
		{"tomato drink", beverage.LowAcid, Circumstances{PH: ph(4.61, 4.69), TomatoOnly: true},
			"tomato product below pH 4.7: not a low-acid food, still in need of a set process", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", true},
		{"tomato drink that may reach 4.7", beverage.LowAcid, Circumstances{PH: ph(4.61, 4.7), TomatoOnly: true},
			"low-acid food", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", false},
		{"tomato drink of unknown pH", beverage.Undecided, Circumstances{TomatoOnly: true},
			"not decided: a low-acid food as long as pH 4.6 or below is not shown", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", false},
		{"kombucha", beverage.Acid, Circumstances{PH: ph(3, 3.2), Fermented: true},
			"fermented food", "practice under 21 CFR 114.3; extension guidance FST-64NP (Virginia, 2012)", false},
		{"kombucha with lemon", beverage.Acid, Circumstances{PH: ph(3, 3.2), Fermented: true, AcidAfterFermentation: true},
			"fermented food, or acidified because of what was added after fermentation",
			"practice under 21 CFR 114.3; extension guidance FST-64NP (Virginia, 2012)", true},
		{"apple juice", beverage.Acid, Circumstances{PH: ph(3.4, 3.6), Juice: true},
			"acid food; juice under the juice HACCP rule", "21 CFR 120.1(a) (2015 text)", false},
		{"water", beverage.Outside, Circumstances{WaterOnly: true},
			"bottled water: by practice not treated as low-acid", "practice beside 21 CFR 113.3(n) and part 129 (recalled, medium)", true},
		{"cider", beverage.Outside, Circumstances{Alcoholic: true},
			"alcoholic beverage: outside the low-acid and acidified definitions", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", false},
		{"syrup", beverage.Outside, Circumstances{},
			"not low-acid: water activity at or below 0.85", "21 CFR 113.3(n); 21 CFR 114.3(d) (2015 text)", false},
	} {
		want := beverage.Regulated{Market: beverage.US, Term: c.term, Rule: c.rule, Argued: c.argued}
		if got := Term(beverage.US, c.class, c.c); got != want {
			t.Errorf("%s:\n got %+v\nwant %+v", c.what, got, want)
		}
	}
}

func TestTermsOfOtherMarkets(t *testing.T) {
	for _, c := range []struct {
		market beverage.Market
		class  beverage.Class
		c      Circumstances
		term   string
		argued bool
	}{
		{beverage.UK, beverage.Acidified, Circumstances{PH: ph(4.35, 4.45)}, "high-acid by UK practice (pH 4.5 or below)", false},
		{beverage.UK, beverage.Acidified, Circumstances{PH: ph(4.45, 4.55)}, "may be low-acid by UK practice, which draws the line at pH 4.5", true},
		{beverage.UK, beverage.Acidified, Circumstances{PH: ph(4.51, 4.59)}, "low-acid by UK practice, which draws the line at pH 4.5", false},
		{beverage.UK, beverage.Undecided, Circumstances{}, "may be low-acid by UK practice, which draws the line at pH 4.5", true},
		{beverage.UK, beverage.Outside, Circumstances{}, "outside the guidance on heat-preserved low-acid food", false},
		{beverage.EU, beverage.LowAcid, Circumstances{}, "no acid class in EU law: food in a hermetically sealed container", false},
		{beverage.EU, beverage.Acidified, Circumstances{Milk: true}, "made with milk: a dairy product is heat-treated by Annex III; no acid class in EU law", false},
		{beverage.CA, beverage.LowAcid, Circumstances{}, "low-acid food: commercially sterile in a sealed pack, or refrigerated or frozen", false},
		{beverage.CA, beverage.LowAcid, Circumstances{Refrigerated: true}, "low-acid food, freed from commercial sterility only while at 4 C or below, or frozen, and labelled so", false},
		{beverage.CA, beverage.LowAcid, Circumstances{Refrigerated: true, StoredC: beverage.Say(4.0)}, "low-acid food, freed from commercial sterility only while at 4 C or below, or frozen, and labelled so", false},
		{beverage.CA, beverage.LowAcid, Circumstances{Refrigerated: true, StoredC: beverage.Say(4.1)}, "low-acid food not kept at 4 C or below: commercially sterile in a sealed pack", false},
		{beverage.CA, beverage.LowAcid, Circumstances{PH: ph(4.65, 4.7), TomatoOnly: true}, "tomato product at pH 4.7 or below after heating: need not be commercially sterile", false},
		{beverage.CA, beverage.Acidified, Circumstances{Particles: true}, "low-acid food if any component, a piece or seed too, is above pH 4.6", true},
		{beverage.CA, beverage.Acid, Circumstances{}, "not a low-acid food: every component at pH 4.6 or below", false},
		{beverage.CA, beverage.Undecided, Circumstances{}, "not decided: a low-acid food as long as pH 4.6 or below is not shown of every component", false},
		{beverage.CA, beverage.Outside, Circumstances{Alcoholic: true}, "alcoholic beverage, when at 1.1 % by volume or more", true},
		{beverage.CA, beverage.Outside, Circumstances{WaterOnly: true}, "not a low-acid food: water activity at or below 0.85, or nothing in it to be low-acid", true},
		{beverage.ANZ, beverage.LowAcid, Circumstances{}, "low-acid by Australian guidance: 121 C for 3 min or equal when canned", false},
		{beverage.ANZ, beverage.Acid, Circumstances{}, "not low-acid by Australian guidance (pH 4.6 or below)", false},
		{beverage.Codex, beverage.Acidified, Circumstances{}, "acidified low-acid food", false},
		{beverage.Codex, beverage.Undecided, Circumstances{}, "not decided: a low-acid food as long as pH 4.6 or below is not shown", false},
	} {
		got := Term(c.market, c.class, c.c)
		if got.Term != c.term || got.Argued != c.argued {
			t.Errorf("%s, %s, %+v:\n got %q argued %v\nwant %q argued %v", c.market, c.class, c.c, got.Term, got.Argued, c.term, c.argued)
		}
	}
}

func TestEveryClassHasAWordInEveryMarket(t *testing.T) {
	classes := []beverage.Class{beverage.Undecided, beverage.LowAcid, beverage.Acidified, beverage.Acid, beverage.Outside}
	for _, m := range append([]beverage.Market{"elsewhere"}, beverage.Markets...) {
		for _, class := range classes {
			if got := Term(m, class, Circumstances{}); got.Term == "" || got.Rule == "" || got.Market != m {
				t.Errorf("%s, %s: %+v", m, class, got)
			}
		}
	}
}
