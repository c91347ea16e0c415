package spec_test

import (
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	toml "github.com/pelletier/go-toml/v2"

	"posset/beverage"
	"posset/beverage/spec"
)

const catalogue = "testdata/catalogue/drink.toml"

func readCatalogue(t testing.TB) *beverage.Drink {
	t.Helper()
	d, err := spec.Read(catalogue, spec.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Each key of the catalogue lands in its field, in the field's unit.
func TestCatalogueNumbers(t *testing.T) {
	d := readCatalogue(t)
	whey, quince, acid, barley, guarana := d.Ingredients[0], d.Ingredients[1], d.Ingredients[2], d.Ingredients[3], d.Ingredients[4]
	for name, c := range map[string]struct {
		got  beverage.Given[float64]
		want float64
	}{
		"serving":               {d.ServingML, 330},
		"alcohol":               {d.AlcoholPercent, 0},
		"protein":               {whey.Described.ProteinPercent, 89},
		"fat":                   {whey.Described.FatPercent, 0.4},
		"sugars":                {whey.Described.SugarsPercent, 1},
		"lactose":               {whey.Described.LactosePercent, 0.5},
		"moisture":              {whey.Described.MoisturePercent, 4.5},
		"ash":                   {whey.Described.AshPercent, 2.2},
		"calcium":               {whey.Described.CalciumPercent, 0.1},
		"magnesium":             {whey.Described.MagnesiumPercent, 0.01},
		"phosphorus":            {whey.Described.PhosphorusPercent, 0.6},
		"sodium":                {whey.Described.SodiumPercent, 0.2},
		"potassium":             {whey.Described.PotassiumPercent, 0.1},
		"chloride":              {whey.Described.ChloridePercent, 0.05},
		"own ph":                {whey.Described.PH, 3.3},
		"ph_at":                 {whey.Described.PHAtPercent, 10},
		"own brix":              {quince.Described.Brix, 65},
		"own density":           {quince.Described.DensityGPerML, 1.32},
		"polyphenols":           {quince.Described.PolyphenolsPercent, 0.4},
		"strength":              {acid.Described.StrengthPercent, 85},
		"degree_of_hydrolysis":  {barley.Described.HydrolysisPercent, 28},
		"caffeine":              {guarana.Described.CaffeinePercent, 12},
		"ph":                    {d.Measured.PH, 3.25},
		"ph_tolerance":          {d.Measured.PHTolerance, 0.05},
		"ph_temperature":        {d.Measured.PHTempC, 25},
		"ph_equilibrated":       {d.Measured.PHEquilibratedS, 86400},
		"water_activity":        {d.Measured.WaterActivity, 0.99},
		"brix":                  {d.Measured.Brix, 8.4},
		"density":               {d.Measured.DensityGPerML, 1.022},
		"viscosity":             {d.Measured.ViscosityMilliPa, 1.6},
		"bench ph":              {d.Bench[1].PH, 3.41},
		"volumes":               {d.Carbonation.Volumes, 1.6},
		"carbonation at":        {d.Carbonation.TempC, 4},
		"loss_per_month":        {d.Carbonation.LossPerMonthPercent, 2},
		"fill":                  {d.Package.FillML, 330},
		"fill_tolerance":        {d.Package.FillToleranceML, 3},
		"brimful":               {d.Package.BrimfulML, 352},
		"liquid_nitrogen":       {d.Package.NitrogenG, 0},
		"altitude":              {d.Package.AltitudeM, 365.76},
		"hold_temperature":      {d.Process.HoldTempC, 63},
		"hold_time":             {d.Process.HoldS, 1200},
		"fill_temperature":      {d.Process.FillTempC, 20},
		"pack_hold_time":        {d.Process.PackHoldS, 120},
		"pack_hold_temperature": {d.Process.PackHoldC, 82},
		"initial_temperature":   {d.Process.InitialC, 20},
		"pressure":              {d.Process.PressureMPa, 600},
		"filter_pore":           {d.Process.FilterPoreUM, 0.2},
		"retort at least":       {d.Process.Critical[0].AtLeast, 62.5},
		"retort at most":        {d.Process.Critical[0].AtMost, 65},
		"pH at most":            {d.Process.Critical[1].AtMost, 3.5},
		"back pressure":         {d.Process.Critical[2].AtLeast, 20 * 6.894757293168361},
		"other":                 {d.Process.Critical[3].AtLeast, 12},
		"storage":               {d.Storage.TempC, 38},
		"shelf_life":            {d.Storage.ShelfLifeS, 9 * 365.25 / 12 * 86400},
	} {
		if !c.got.Known || !(math.Abs(c.got.V-c.want) <= 1e-12*math.Abs(c.want)) {
			t.Errorf("%s: %v (known %v), want %v", name, c.got.V, c.got.Known, c.want)
		}
	}
}

func TestCatalogueWords(t *testing.T) {
	d := readCatalogue(t)
	whey, quince := d.Ingredients[0], d.Ingredients[1]
	for name, c := range map[string]struct{ got, want any }{
		"name":           {d.Name, "Quince clear protein water"},
		"base":           {d.Base.V, beverage.SoldAsWater},
		"intended_for":   {d.IntendedFor.V, "general"},
		"particles":      {d.Particles.V, "none"},
		"live_cultures":  {d.LiveCultures.V, false},
		"amount":         {whey.Amount.V, beverage.Amount{Value: 66, Per: beverage.GramsPerLitre, Text: "66 g/L"}},
		"per serving":    {d.Ingredients[3].Amount.V, beverage.Amount{Value: 2, Per: beverage.GramsPerServing, Text: "2 g/serving"}},
		"by mass":        {d.Ingredients[4].Amount.V, beverage.Amount{Value: 0.05, Per: beverage.MassPercent, Text: "0.05 %"}},
		"tolerance":      {whey.TolerancePercent, 1.5},
		"no tolerance":   {quince.TolerancePercent, 2.0},
		"kind":           {whey.Described.Kind.V, beverage.KindProtein},
		"source":         {whey.Described.ProteinSourceOfKind.V, "whey"},
		"milk_product":   {whey.Described.MilkProduct.V, true},
		"own acidity":    {quince.Described.Acidity.V, beverage.Acidity{Percent: 6.5, As: "citric acid"}},
		"acid_food":      {quince.Described.AcidFood.V, true},
		"treatments":     {quince.Described.Treatments.V, []string{"pasteurized", "5-log juice"}},
		"has_particles":  {quince.Described.ParticlesInIt, beverage.Given[bool]{Known: true, Place: quince.Described.ParticlesInIt.Place}},
		"own figures":    {d.Own[0].Name, "barley protein hydrolysate"},
		"ph_method":      {d.Measured.PHMethod.V, "meter"},
		"ph_degassed":    {d.Measured.PHDegassed.V, true},
		"acidity":        {d.Measured.Acidity.V, beverage.Acidity{Percent: 4.6 / (10 * d.Measured.DensityGPerML.V), As: "citric acid"}},
		"bench amount":   {d.Bench[1].Amounts[0].Amount.V.Value, 0.6},
		"bench name":     {d.Bench[0].Amounts[0].Name, "phosphoric acid 85 %"},
		"gas pressure":   {d.Carbonation.Pressure.V, beverage.Pressure{KPa: 20, Gauge: true}},
		"type":           {d.Package.Type.V, beverage.Can},
		"rating":         {d.Package.Rating.V, beverage.Pressure{KPa: 620, Gauge: true}},
		"headspace_gas":  {d.Package.HeadspaceGas.V, beverage.CO2},
		"route":          {d.Process.Route.V, beverage.Tunnel},
		"target":         {d.Process.Target.V, beverage.Target{Text: "15 PU", Kind: beverage.TargetMinutes, Minutes: 15, TrefC: 60, ZC: 7}},
		"by":             {d.Process.Scheduled.By.V, "a process authority"},
		"dated":          {d.Process.Scheduled.Dated.V, "2026-03-02"},
		"reference":      {d.Process.Scheduled.Reference.V, "letter 17"},
		"short log":      {d.Process.Records[0].File, "logs/run-1.csv"},
		"record":         {d.Process.Records[1].File, "logs/run-2.csv"},
		"roles":          {d.Process.Records[1].Roles, map[string]string{"Can 1": "product", "Tunnel": "retort"}},
		"unit":           {d.Process.Records[1].Unit.V, "C"},
		"calibrated":     {d.Process.Records[1].Calibrated.V, "2026-01-15"},
		"retort":         {d.Process.Records[1].Retort.V, "3"},
		"batch":          {d.Process.Records[1].Batch.V, "Q-0417"},
		"zones":          {d.Process.Zones, []beverage.Zone{{TempC: 45, TimeS: 360}, {TempC: 63, TimeS: 720}}},
		"limit subject":  {d.Process.Critical[0].What, beverage.LimitSubject("retort temperature")},
		"limit text":     {d.Process.Critical[0].Text, "at least 62.5 C, at most 149 F"},
		"distribution":   {d.Storage.Distribution.V, beverage.Ambient},
		"markets":        {d.Markets, []beverage.Market{beverage.US, beverage.EU}},
		"market given":   {d.MarketGiven, true},
		"file":           {d.File, catalogue},
		"dir":            {d.Dir, "testdata/catalogue"},
		"length of hash": {len(d.SHA256), 64},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
}

// The catalogue is one of every key: a key that is declared stands in it.
func TestCatalogueHoldsEveryKey(t *testing.T) {
	data, err := os.ReadFile(catalogue)
	if err != nil {
		t.Fatal(err)
	}
	var all map[string]any
	if err := toml.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	for _, doc := range spec.Keys() {
		if !holds(all, strings.Split(doc.Key, ".")) {
			t.Errorf("the catalogue lacks %s", doc.Key)
		}
	}
}

func holds(in any, key []string) bool {
	if len(key) == 0 {
		return true
	}
	switch in := in.(type) {
	case map[string]any:
		inner, ok := in[key[0]]
		return ok && holds(inner, key[1:])
	case []any:
		for _, one := range in {
			if holds(one, key) {
				return true
			}
		}
	}
	return false
}

// Every value knows the line on which it was written.
func TestPlaces(t *testing.T) {
	d := readCatalogue(t)
	texts := map[string][]string{catalogue: linesOf(t, catalogue), "testdata/catalogue/ours.toml": linesOf(t, "testdata/catalogue/ours.toml")}
	places := placesOf(d)
	if len(places) < 100 {
		t.Errorf("only %d places", len(places))
	}
	for _, p := range places {
		_, key := splitLast(p.Key)
		lines := texts[p.File]
		if p.Line < 1 || p.Line > len(lines) || !strings.Contains(lines[p.Line-1], key) {
			t.Errorf("%v is not where it says", p)
		}
	}
}

func linesOf(t *testing.T, path string) []string {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(string(data), "\n")
}

func splitLast(key string) (home, last string) {
	if i := strings.LastIndexByte(key, '.'); i >= 0 {
		return key[:i], key[i+1:]
	}
	return "", key
}

// placesIn gathers the places of all that is known.
func placesIn(v reflect.Value) (all []beverage.Place) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			return placesIn(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			all = append(all, placesIn(v.Index(i))...)
		}
	case reflect.Struct:
		if known := v.FieldByName("Known"); known.IsValid() && !known.Bool() {
			return nil
		}
		if p, ok := v.Interface().(beverage.Place); ok {
			return []beverage.Place{p}
		}
		for i := range v.NumField() {
			all = append(all, placesIn(v.Field(i))...)
		}
	}
	return all
}

func placesOf(d *beverage.Drink) []beverage.Place { return placesIn(reflect.ValueOf(d)) }

func BenchmarkCatalogue(b *testing.B) {
	data, err := os.ReadFile(catalogue)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := spec.Parse(data, catalogue, "testdata/catalogue", spec.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBadSpec(b *testing.B) {
	data := []byte(strings.Repeat("[drnk]\nph = \"3,2\"\n", 100))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := spec.Parse(data, "bad.toml", ".", spec.Options{}); err == nil {
			b.Fatal("read")
		}
	}
}
