package web

import (
	"strings"

	"posset/beverage"
)

// question asks for one key of a spec in plain words.
type question struct {
	Key     string
	Label   string
	Hint    string
	Units   []string // of a quantity; the first is offered
	Number  bool     // a bare number
	Choices []choice
	Several bool // more than one choice
	Example string
}

// choice is a word of the spec in plain words.
type choice struct{ Word, Label string }

// group is questions that belong together.
type group struct {
	Title     string
	Lead      string
	Recipe    bool // asks for the ingredients
	Questions []question
}

var yesNo = []choice{{"true", "yes"}, {"false", "no"}}

// groups are the questions in the order in which they are asked.
var groups = []group{
	{Title: "The drink", Questions: []question{
		{Key: "drink.name", Label: "What is it called?", Hint: "A working name will do.", Example: "Quince clear protein water"},
		{Key: "drink.serving", Label: "How much is one drink?", Units: []string{"mL", "fl oz"}, Example: "330"},
		{Key: "drink.base", Label: "What is it sold as?", Choices: []choice{{"water", "a flavoured or fortified water"}, {"juice", "a juice drink"}, {"tea", "a tea"},
			{"coffee", "a coffee"}, {"milk", "a milk drink"}, {"plant", "a plant drink: oat, soy, pea ..."}, {"fermented", "a fermented drink"}}},
		{Key: "drink.intended_for", Label: "Who is it for?", Choices: []choice{{"general", "anybody"}, {"infants", "infants or young children"}, {"medical", "people under medical care"}}},
		{Key: "drink.particles", Label: "Is there anything in it to chew?", Choices: []choice{{"none", "nothing"}, {"pulp", "fruit pulp"}, {"pieces", "pieces"}}},
		{Key: "drink.live_cultures", Label: "Are there living cultures in it?", Choices: yesNo},
		{Key: "drink.alcohol", Label: "The most alcohol it will ever have", Hint: "By volume. Leave it empty for none.", Units: []string{"%"}, Example: "0"},
	}},
	{Title: "What is in it", Recipe: true, Lead: "Every ingredient but water, protein and acids above all. An ingredient that nobody knows is told to you, not guessed at."},
	{Title: "How sour it is", Lead: "Only a reading of the finished drink counts. Without one the pH is worked out from the recipe, and marked so.", Questions: []question{
		{Key: "measured.ph", Label: "pH, if anybody has read it", Number: true, Example: "3.2"},
		{Key: "measured.ph_method", Label: "How was it read?", Choices: []choice{{"meter", "with a pH meter"}, {"paper", "with paper strips"}, {"titration", "by titration"}}},
		{Key: "measured.ph_equilibrated", Label: "How long had the drink stood before?", Units: []string{"h", "min", "days"}, Example: "24"},
		{Key: "measured.ph_degassed", Label: "If it is fizzy: had the gas been taken out?", Choices: yesNo},
	}},
	{Title: "Bubbles", Questions: []question{
		{Key: gasQuestion, Label: "Is it fizzy?", Choices: []choice{{"still", "no, still"}, {"sparkling", "yes"}}},
		{Key: "carbonation.volumes", Label: "How fizzy, in volumes of CO2?", Hint: "Lightly sparkling is about 1.5, a soft drink 3 to 4.", Number: true, Example: "2.6"},
	}},
	{Title: "The pack", Questions: []question{
		{Key: "package.type", Label: "What is it filled into?", Choices: packChoices()},
		{Key: "package.fill", Label: "How much goes in?", Units: []string{"mL", "fl oz"}, Example: "330"},
		{Key: "package.brimful", Label: "How much would it hold, filled to the brim?", Hint: "The pack maker's drawing says so.", Units: []string{"mL", "fl oz"}, Example: "352"},
		{Key: "package.pressure_rating", Label: "What pressure is it made for?", Hint: "Above the air outside; also on the drawing.", Units: []string{"barg", "psig", "kPag"}, Example: "6.2"},
		{Key: "package.headspace_gas", Label: "What is in the space above the drink?", Choices: []choice{{"air", "air"}, {"nitrogen", "nitrogen"}, {"CO2", "CO2"}, {"vacuum", "a vacuum"}}},
	}},
	{Title: "How it keeps", Lead: "Cold means cold all the way: store, truck, shop.", Questions: []question{
		{Key: "storage.distribution", Label: "How is it stored and sold?", Choices: []choice{{"ambient", "on the shelf, not cooled"}, {"refrigerated", "cold, all the way"}, {"frozen", "frozen"}}},
		{Key: "storage.temperature", Label: "The warmest it will get", Units: []string{"C", "F"}, Example: "30"},
		{Key: "storage.shelf_life", Label: "How long shall it keep?", Units: []string{"months", "weeks", "days"}, Example: "9"},
	}},
	{Title: "Where it is sold", Questions: []question{
		{Key: "market.jurisdiction", Label: "Markets", Several: true, Choices: []choice{{"US", "United States"}, {"CA", "Canada"}, {"EU", "European Union"}, {"UK", "United Kingdom"},
			{"ANZ", "Australia and New Zealand"}, {"Codex", "elsewhere (Codex Alimentarius)"}}},
	}},
	{Title: "How it is made to keep", Lead: "Leave it open if nobody has decided: which ways are left is what this page answers.", Questions: []question{
		{Key: "process.route", Label: "A way that somebody has in mind", Choices: routeChoices()},
	}},
}

// gasQuestion is no key of a spec: a sparkling drink has a table for it.
const gasQuestion = "bubbles"

// plainRoutes tell a route to who has never seen a plant.
var plainRoutes = map[beverage.Route]string{
	beverage.HotFill:           "filled hot, and the heat of the drink treats the pack",
	beverage.Tunnel:            "filled and closed, then warmed in its pack under hot water",
	beverage.Flash:             "heated for seconds, cooled, then filled",
	beverage.ExtendedShelfLife: "heated strongly, filled very cleanly, sold cold",
	beverage.Aseptic:           "sterilized, then filled in sterile surroundings into a sterile pack",
	beverage.RetortRoute:       "filled and closed, then sterilized in its pack under pressure",
	beverage.HighPressure:      "closed, then put under very high pressure",
	beverage.ColdFill:          "filled cold, kept by its acid and preservatives",
	beverage.SterileFiltration: "filtered so finely that microbes stay behind",
	beverage.NoProcess:         "nothing at all is done",
}

// plainClasses tell a class to who has never heard of it.
var plainClasses = map[beverage.Class]string{
	beverage.Acid:      "sour by nature, or nothing in it that is not",
	beverage.Acidified: "something that is not sour by nature, brought to a pH of 4.6 or below: that holds back some microbes, not all, and the law asks for a process of its own",
	beverage.LowAcid:   "not sour: the microbe of botulism could grow, so that strong heat or unbroken cold must keep it",
	beverage.Undecided: "what was said does not settle it, so that the stricter reading counts",
	beverage.Outside:   "outside these classes, by its alcohol or its dryness; that clears no hazard",
}

func routeChoices() []choice {
	var list []choice
	for _, r := range beverage.Routes {
		list = append(list, choice{string(r), string(r) + ": " + plainRoutes[r]})
	}
	return list
}

func packChoices() []choice {
	var list []choice
	for _, p := range beverage.PackTypes {
		list = append(list, choice{string(p), string(p)})
	}
	return list
}

// ID is what the question is called within a page.
func (q question) ID() string { return "q-" + strings.ReplaceAll(q.Key, ".", "-") }

// labelOf is the question behind a key.
func labelOf(key string) string {
	for _, g := range groups {
		for _, q := range g.Questions {
			if q.Key == key {
				return q.Label
			}
		}
	}
	return key
}
