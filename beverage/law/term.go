package law

import "posset/beverage"

// Circumstances is what decides the word of a law beside the acid class. Zero
// values never soften a word: not refrigerated, not fermented, no tomato.
type Circumstances struct {
	PH                     beverage.Interval
	Refrigerated           bool                    // stored, shipped and sold cold or frozen, all three
	StoredC                beverage.Given[float64] // the warmest it is kept, °C
	Carbonated             bool
	Fermented              bool // its acidity comes from fermentation
	AcidAfterFermentation  bool // acid, or low-acid food, added later
	PreAcidifiedPowderOnly bool // its only low-acid food is a powder that its maker acidified
	TomatoOnly             bool // its only low-acid food is tomato
	Juice                  bool // juice sold as such
	Milk                   bool // a milk product
	Particles              bool // pulp, pieces, pearls, seeds
	SmallLowAcid           bool // an acid food with small amounts of low-acid food
	Alcoholic              bool // of 0.5 % by volume or more, or not known to be less
	WaterOnly              bool // nothing but water and gas
}

// Term says what a market's law calls a drink of that acid class, and whether
// that is argued. Rule is the citation.
func Term(m beverage.Market, class beverage.Class, c Circumstances) beverage.Regulated {
	w := wordFor(m, class, c)
	r := MustGet(w.row)
	return beverage.Regulated{Market: m, Term: w.term, Rule: r.Cite(), Argued: w.argued}
}

// word is a term with the row it rests on.
type word struct {
	term   string
	row    string
	argued bool
}

func wordFor(m beverage.Market, class beverage.Class, c Circumstances) word {
	switch m {
	case beverage.CA:
		return canadaWord(class, c)
	case beverage.EU:
		return euWord(c)
	case beverage.UK:
		return ukWord(class, c)
	case beverage.ANZ:
		return anzWord(class)
	case beverage.Codex:
		return codexWord(class)
	}
	return usWord(class, c)
}

func usWord(class beverage.Class, c Circumstances) word {
	switch class {
	case beverage.LowAcid:
		return usLowAcid(c)
	case beverage.Acidified:
		return usAcidified(c)
	case beverage.Acid:
		return usAcid(c)
	case beverage.Outside:
		return usOutside(c)
	}
	if c.tomatoBelow(TomatoPH()) {
		return usTomato
	}
	return word{"not decided: a low-acid food as long as pH 4.6 or below is not shown", "us-low-acid", false}
}

var usTomato = word{"tomato product below pH 4.7: not a low-acid food, still in need of a set process", "us-tomato", true}

// tomatoBelow is true where tomato is the only low-acid food and the whole pH
// interval lies below the line.
func (c Circumstances) tomatoBelow(line float64) bool {
	return c.TomatoOnly && c.PH.Known() && c.PH.High < line
}

func usLowAcid(c Circumstances) word {
	switch {
	case c.tomatoBelow(TomatoPH()):
		return usTomato
	case c.Refrigerated && c.Juice:
		return word{"refrigerated low-acid juice", "refrigerated-low-acid.us-juice", false}
	case c.Refrigerated:
		return word{"low-acid food kept cold: part 113 speaks of food that keeps without refrigeration", "us-commercial-sterility", true}
	case c.Carbonated:
		return word{"low-acid food: the carbonated exclusion is of the acidified rule, not of this one", "us-low-acid", false}
	}
	return word{"low-acid food", "us-low-acid", false}
}

func usAcidified(c Circumstances) word {
	switch {
	case c.Refrigerated:
		return word{"left out of the acidified rule while stored, distributed and sold cold", "us-acidified-exclusions", false}
	case c.Carbonated:
		return word{"acidified food, or left out of that rule as a carbonated beverage", "us-acidified-exclusions", true}
	case c.PreAcidifiedPowderOnly:
		return word{"acidified food; some authorities judge a powder acidified by its maker on its own pH", "us-preacidified-ingredient", true}
	case c.SmallLowAcid:
		return word{"acidified food, or an acid food with small amounts of low-acid food", "us-acidified-exclusions", true}
	case c.TomatoOnly:
		return word{"tomato product: not a low-acid food below pH 4.7, so acid added to it makes no acidified food of it", "us-tomato", true}
	}
	return word{"acidified food", "acidified-needs-scheduled-process.us", false}
}

func usAcid(c Circumstances) word {
	switch {
	case c.Fermented && c.AcidAfterFermentation:
		return word{"fermented food, or acidified because of what was added after fermentation", "us-fermented", true}
	case c.Fermented:
		return word{"fermented food", "us-fermented", false}
	case c.SmallLowAcid:
		return word{"acid food with small amounts of low-acid food, or acidified food", "us-acidified-exclusions", true}
	case c.Juice:
		return word{"acid food; juice under the juice HACCP rule", "us-juice-scope", false}
	}
	return word{"acid food", "us-acid-food", false}
}

func usOutside(c Circumstances) word {
	switch {
	case c.Alcoholic:
		return word{"alcoholic beverage: outside the low-acid and acidified definitions", "alcohol-outside.us", false}
	case c.WaterOnly:
		return word{"bottled water: by practice not treated as low-acid", "us-water-practice", true}
	}
	return word{"not low-acid: water activity at or below 0.85", "us-low-acid", false}
}

func canadaWord(class beverage.Class, c Circumstances) word {
	switch {
	case class == beverage.Outside && c.Alcoholic:
		return word{"alcoholic beverage, when at 1.1 % by volume or more", "ca-alcohol", true}
	case class != beverage.Outside && c.TomatoOnly && c.PH.SurelyBelow(CanadaTomatoPH()):
		return word{"tomato product at pH 4.7 or below after heating: need not be commercially sterile", "ca-tomato", false}
	case class == beverage.Outside:
		return word{"not a low-acid food: water activity at or below 0.85, or nothing in it to be low-acid", "ca-low-acid", c.WaterOnly}
	case class == beverage.LowAcid && c.Refrigerated && c.StoredC.Known && c.StoredC.V > CanadaChilledC():
		return word{"low-acid food not kept at 4 C or below: commercially sterile in a sealed pack", "ca-low-acid", false}
	case class == beverage.LowAcid && c.Refrigerated:
		return word{"low-acid food, freed from commercial sterility only while at 4 C or below, or frozen, and labelled so", "ca-low-acid", false}
	case class == beverage.LowAcid:
		return word{"low-acid food: commercially sterile in a sealed pack, or refrigerated or frozen", "ca-low-acid", false}
	case class == beverage.Undecided:
		return word{"not decided: a low-acid food as long as pH 4.6 or below is not shown of every component", "ca-low-acid", false}
	case c.Particles:
		return word{"low-acid food if any component, a piece or seed too, is above pH 4.6", "ca-low-acid", true}
	}
	return word{"not a low-acid food: every component at pH 4.6 or below", "ca-low-acid", false}
}

func euWord(c Circumstances) word {
	if c.Milk {
		return word{"made with milk: a dairy product is heat-treated by Annex III; no acid class in EU law", "eu-milk-uht", false}
	}
	return word{"no acid class in EU law: food in a hermetically sealed container", "eu-heat-treatment", false}
}

// ukWord uses the whole interval: UK practice draws its line a tenth lower than
// the acid class does.
func ukWord(class beverage.Class, c Circumstances) word {
	switch {
	case class == beverage.Outside:
		return word{"outside the guidance on heat-preserved low-acid food", "uk-low-acid", false}
	case class == beverage.LowAcid || c.PH.SurelyAbove(UKLowAcidPH()):
		return word{"low-acid by UK practice, which draws the line at pH 4.5", "uk-low-acid", false}
	case c.PH.MayExceed(UKLowAcidPH()):
		return word{"may be low-acid by UK practice, which draws the line at pH 4.5", "uk-low-acid", true}
	}
	return word{"high-acid by UK practice (pH 4.5 or below)", "uk-low-acid", false}
}

func anzWord(class beverage.Class) word {
	switch class {
	case beverage.LowAcid:
		return word{"low-acid by Australian guidance: 121 C for 3 min or equal when canned", "anz-canned", false}
	case beverage.Outside:
		return word{"outside the guidance on canned low-acid food", "anz-canned", false}
	case beverage.Undecided:
		return word{"not decided: low-acid as long as pH 4.6 or below is not shown", "anz-canned", false}
	}
	return word{"not low-acid by Australian guidance (pH 4.6 or below)", "anz-canned", false}
}

func codexWord(class beverage.Class) word {
	switch class {
	case beverage.LowAcid:
		return word{"low-acid food", "codex-low-acid", false}
	case beverage.Acidified:
		return word{"acidified low-acid food", "codex-low-acid", false}
	case beverage.Acid:
		return word{"acid food", "codex-low-acid", false}
	case beverage.Outside:
		return word{"outside the code for low-acid canned food", "codex-low-acid", false}
	}
	return word{"not decided: a low-acid food as long as pH 4.6 or below is not shown", "codex-low-acid", false}
}
