package ingredient

// traits are the words by which the table of names says what an ingredient is
// to the law and to the rules of the trade.
var traits = map[string]func(*Entry) *bool{
	"ascorbate":     func(e *Entry) *bool { return &e.AscorbateSource },
	"caffeine":      func(e *Entry) *bool { return &e.CaffeineSource },
	"carrot":        func(e *Entry) *bool { return &e.FromCarrot },
	"cocoa":         func(e *Entry) *bool { return &e.Cocoa },
	"coffee":        func(e *Entry) *bool { return &e.Coffee },
	"egg":           func(e *Entry) *bool { return &e.Egg },
	"juice":         func(e *Entry) *bool { return &e.Juice },
	"milk":          func(e *Entry) *bool { return &e.MilkProduct },
	"phenylalanine": func(e *Entry) *bool { return &e.PhenylalanineSource },
	"plant":         func(e *Entry) *bool { return &e.PlantBase },
	"polyol":        func(e *Entry) *bool { return &e.Polyol },
	"pre-acidified": func(e *Entry) *bool { return &e.PreAcidified },
	"slow-base":     func(e *Entry) *bool { return &e.SlowBase },
	"starch":        func(e *Entry) *bool { return &e.StarchSource },
	"sweetener":     func(e *Entry) *bool { return &e.Sweetener },
	"tea":           func(e *Entry) *bool { return &e.Tea },
	"thiamin":       func(e *Entry) *bool { return &e.ThiaminSource },
	"tomato":        func(e *Entry) *bool { return &e.Tomato },
}

// traitWords are words in the name of an ingredient that only its user
// described; what they tell counts as if the user had said so.
var traitWords = map[string][]string{
	"carrot": {"carrot"}, "tomato": {"tomato"}, "egg": {"egg"}, "tea": {"tea", "caffeine"}, "coffee": {"coffee", "caffeine"},
	"cocoa": {"cocoa", "caffeine"}, "chocolate": {"cocoa", "caffeine"}, "cacao": {"cocoa", "caffeine"},
	"guarana": {"caffeine"}, "mate": {"caffeine"}, "kola": {"caffeine"}, "cola": {"caffeine"}, "caffeine": {"caffeine"}, "yerba": {"caffeine"},
	"thiamin": {"thiamin"}, "thiamine": {"thiamin"}, "ascorbic": {"ascorbate"}, "ascorbate": {"ascorbate"},
	"whey": {"milk"}, "casein": {"milk"}, "caseinate": {"milk"}, "starch": {"starch"}, "flour": {"starch", "plant"}, "oat": {"starch", "plant"},
	"rice": {"starch", "plant"}, "barley": {"starch", "plant"}, "soy": {"plant"}, "soya": {"plant"}, "pea": {"plant"}, "almond": {"plant"},
	"aspartame": {"phenylalanine"},
}

// traitsFromName sets what the words of a described ingredient's name tell.
func (e *Entry) traitsFromName(name string) {
	for _, w := range words(name) {
		for _, t := range traitWords[w] {
			*traits[t](e) = true
		}
	}
}
