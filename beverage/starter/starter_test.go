package starter_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/spec"
	"posset/beverage/starter"
)

func question(t require.TestingT, name string) starter.Question {
	list := starter.Questions()
	i := slices.IndexFunc(list, func(q starter.Question) bool { return q.Name == name })
	require.GreaterOrEqual(t, i, 0, name)
	return list[i]
}

func answers(t require.TestingT, kind string, said ...string) *starter.Answers {
	k, err := starter.Find(kind)
	require.NoError(t, err)
	a := starter.Of(k)
	for i := 0; i < len(said); i += 2 {
		require.NoError(t, a.Say(question(t, said[i]), said[i+1]))
	}
	return a
}

func written(t require.TestingT, a *starter.Answers) (string, *beverage.Drink) {
	text, err := starter.Write(a, "test")
	require.NoError(t, err)
	d, err := spec.Parse(text, "starter.toml", ".", spec.Options{})
	require.NoError(t, err, "%s", text)
	return string(text), d
}

// Every kind gives a spec that can be read and assessed, with every ingredient in
// the library.
func TestEveryKindCanBeChecked(t *testing.T) {
	require.Len(t, starter.Kinds(), 14)
	for _, k := range starter.Kinds() {
		text, d := written(t, starter.Of(k))
		a, err := assess.Drink(context.Background(), d, assess.Options{})
		require.NoError(t, err, k.ID)
		for _, f := range a.Findings {
			require.NotEqual(t, "unknown-ingredient", f.ID, k.ID)
			require.NotEqual(t, "base-unknown", f.ID, k.ID)
		}
		require.NotEmpty(t, k.Title)
		require.Contains(t, text, "# to be found out: ")
		require.NotNil(t, a.AcidClass.PH, "%s: %v", k.ID, a.AcidClass.Note)
		require.False(t, d.Measured.PH.Known || d.Process.Route.Known || d.Package.BrimfulML.Known, "%s says what nobody said", k.ID)
	}
}

// Whatever is answered, what is written can be read; and what was not known does
// not stand in it.
func TestAnyAnswersCanBeRead(t *testing.T) {
	ids := []string{}
	for _, k := range starter.Kinds() {
		ids = append(ids, k.ID)
	}
	choices := map[string][]string{
		"name": {"", "Quince \"water\" \\ trial", "Größe ☕"}, "serving": {"", "100 mL", "12 fl oz", "0.5 L"}, "protein": {"", "5 g", "20 g", "1 oz"}, "caffeine": {"", "0 mg", "80 mg"},
		"volumes": {"", "unknown", "0", "3.2"}, "pack": {"", "unknown", "glass bottle", "can"}, "fill": {"", "unknown", "250 mL"}, "distribution": {"", "unknown", "frozen"},
		"shelf-life": {"", "Unknown", "6 weeks"}, "market": {"", "EU", "US, CA,UK"}, "ph": {"", "unknown", "3.4", "6.8"}, "route": {"", "unknown", "aseptic", "none"},
	}
	rapid.Check(t, func(t *rapid.T) {
		a := answers(t, rapid.SampledFrom(ids).Draw(t, "kind"))
		unknown := map[string]bool{}
		for _, q := range starter.Questions() {
			text := rapid.SampledFrom(choices[q.Name]).Draw(t, q.Name)
			if !a.Asked(q) || a.Say(q, text) != nil {
				continue
			}
			unknown[q.Name] = strings.EqualFold(text, starter.Unknown)
		}
		if a.Again() != nil {
			return
		}
		_, d := written(t, a)
		for name, gone := range map[string]bool{
			"pack": !d.Package.Type.Known, "fill": !d.Package.FillML.Known, "distribution": !d.Storage.Distribution.Known, "shelf-life": !d.Storage.ShelfLifeS.Known,
			"ph": !d.Measured.PH.Known, "route": !d.Process.Route.Known, "volumes": d.Carbonation == nil || !d.Carbonation.Volumes.Known,
		} {
			if unknown[name] && !gone {
				t.Fatalf("%s is not known and stands in the spec", name)
			}
		}
	})
}

func TestAnswersReachTheSpec(t *testing.T) {
	text, d := written(t, answers(t, "clear-acid-whey", "name", "Barley brook", "serving", "12 fl oz", "protein", "25 g", "pack", "glass bottle", "fill", "355 mL",
		"distribution", "refrigerated", "shelf-life", "60 days", "market", "US, EU", "ph", "3.1", "route", "hot fill"))
	require.Equal(t, "Barley brook", d.Name)
	require.InDelta(t, 354.9, d.ServingML.V, 0.1)
	require.Equal(t, beverage.Glass, d.Package.Type.V)
	require.Equal(t, 355.0, d.Package.FillML.V)
	require.Equal(t, beverage.Refrigerated, d.Storage.Distribution.V)
	require.Equal(t, []beverage.Market{beverage.US, beverage.EU}, d.Markets)
	require.Equal(t, 3.1, d.Measured.PH.V)
	require.Equal(t, beverage.HotFill, d.Process.Route.V)
	a, err := assess.Drink(context.Background(), d, assess.Options{})
	require.NoError(t, err)
	require.InDelta(t, 25, *a.Protein.GPerServing, 0.1)
	require.Contains(t, text, "# to be found out: the temperature of the sample when its pH was read (measured.ph_temperature), by whoever read it\n")
	require.NotContains(t, text, "(measured.ph), by")
	require.NotContains(t, text, "(process.route), by")
	require.NotContains(t, text, "(package.type), by")
}

func TestWhatIsUnknownIsListed(t *testing.T) {
	text, d := written(t, answers(t, "sparkling-whey", "pack", "unknown", "volumes", "unknown", "distribution", "unknown"))
	require.NotNil(t, d.Carbonation)
	for _, want := range []string{
		"# to be found out: how much gas the drink holds (carbonation.volumes), by the co-packer\n",
		"# to be found out: the pack (package.type), by you and the co-packer\n",
		"# to be found out: whether it is kept and sold cold or at room temperature (storage.distribution), by you\n",
		"# to be found out: the pH of the finished drink, read with a meter at least a day after mixing (measured.ph), by you or a laboratory\n",
		"# to be found out: the process that makes it keep; posset routes tells which are left (process.route), by a process authority with the co-packer\n",
	} {
		require.Contains(t, text, want)
	}
}

func TestCaffeineIsSetByTheServing(t *testing.T) {
	_, none := written(t, answers(t, "energy", "caffeine", "0 mg"))
	require.False(t, slices.ContainsFunc(none.Ingredients, func(i beverage.Ingredient) bool { return i.Name == "caffeine" }))
	_, some := written(t, answers(t, "casein-coffee", "caffeine", "120 mg"))
	last := some.Ingredients[len(some.Ingredients)-1]
	require.Equal(t, "caffeine", last.Name)
	require.Equal(t, "120 mg/serving", last.Amount.V.Text)
}

func TestAnswersThatCannotBe(t *testing.T) {
	for _, c := range [][4]string{
		{"shot", "serving", "100", `"100" has no unit; write "100 mL" or "100 fl oz"`},
		{"shot", "protein", "90 g", "90 g in 100 mL is more than a liquid drink holds; write 40 g at most"},
		{"shot", "protein", "20 mL", `"20 mL" is a volume; write a mass such as "12 g"`},
		{"shot", "protein", "unknown", "a starter cannot be without it; take what is usual, 19 g"},
		{"plant", "protein", "0 g", "0 g in 250 mL is less than the rest of the recipe brings; write more"},
		{"shot", "pack", "jar", `"jar" is unknown; write one of "can", "steel can", "aluminium bottle", "glass bottle", "PET bottle", "heat-set PET bottle", "PP bottle", "HDPE bottle", "carton", "pouch", "cup" or "keg"`},
		{"shot", "ph", "15", "15 is outside 0 to 14; write a bare number from 0 to 14"},
		{"shot", "volumes", "2", "volumes is not asked of a drink of kind shot"},
		{"juice", "protein", "2 g", "protein is not asked of a drink of kind juice"},
	} {
		require.EqualError(t, answers(t, c[0]).Say(question(t, c[1]), c[2]), c[3])
	}
	_, err := starter.Find("clear-acid-wey")
	require.EqualError(t, err, `"clear-acid-wey" is no kind of drink; did you mean "clear-acid-whey"?`)
	_, err = starter.Find("wine")
	require.ErrorContains(t, err, `"wine" is no kind of drink; write "clear-acid-whey", `)
}

// An answer that another one makes impossible is named when the spec is written.
func TestAnswersAreHeldAgainstEachOther(t *testing.T) {
	a := answers(t, "clear-acid-whey", "protein", "40 g")
	require.NoError(t, a.Say(question(t, "serving"), "60 mL"))
	_, err := starter.Write(a, "test")
	require.EqualError(t, err, "protein: 40 g in 60 mL is more than a liquid drink holds; write 24 g at most")
}
