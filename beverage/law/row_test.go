package law

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"posset/beverage"
)

func TestCitations(t *testing.T) {
	for _, c := range []struct{ id, want string }{
		{"acidified-needs-scheduled-process.us", "21 CFR 114.3(b) (2015 text)"},
		{"us-k-benzoate", "no section; by analogy with 21 CFR 184.1733 (recalled, medium)"},
		{"ca-sulfite", "List of Permitted Preservatives, Part 2 items S.7-S.8 (recalled, low)"},
		{"hot-fill-too-cool.trade", "bottling practice (common practice, no source)"},
		{"eu-benzoate", "Regulation (EC) No 1333/2008 Annex II part E category 14.1.4, notes 1 and 2 (2026-08-18 text)"},
		{"anz-milk", "Standard 4.2.4 clause 15 (Australia only) (undated copy, read on a secondary page)"},
		{"uk-low-acid", "Department of Health, Guidelines for the Safe Production of Heat Preserved Foods (1994) (read on a secondary page)"},
		{"ca-low-acid", "Food and Drug Regulations B.27.001, B.27.002(1), (2) (2026-05 text)"},
		{"hot-fill-lethality-above-4.1", "Breidt et al., Food Protection Trends 34:132-138 (2014), Table 4"},
	} {
		if got := MustGet(c.id).Cite(); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.id, got, c.want)
		}
	}
	want := beverage.Source{Text: "21 CFR 182.3640 (2015 text)", Basis: beverage.Seen}
	if got := MustGet("us-sorbate").Source(); got != want {
		t.Errorf("source %+v, want %+v", got, want)
	}
}

func TestValues(t *testing.T) {
	r := MustGet("us-dmdc")
	if v, ok := r.Value("DMDC"); v != 250 || !ok {
		t.Errorf("DMDC: %v, %v", v, ok)
	}
	if v, ok := r.Value("sodium"); ok {
		t.Errorf("a range has no single value, got %v", v)
	}
	if q, ok := r.Quantity("sodium"); !ok || q.Low != 5 || q.High != 20 || q.Unit != "meq/L" {
		t.Errorf("sodium: %+v, %v", q, ok)
	}
	if _, ok := r.Value("lithium"); ok {
		t.Error("lithium has a value")
	}
}

func TestLookUps(t *testing.T) {
	if _, ok := Get("no-such-row"); ok {
		t.Error("a row that is not there was found")
	}
	rows := ByFinding("milk-grade-a")
	if len(rows) == 0 || rows[0].Finding != "milk-grade-a" {
		t.Errorf("rows of milk-grade-a: %v", rows)
	}
	first := slices.IndexFunc(rows, func(r Row) bool { return r.Finding != "milk-grade-a" })
	if first >= 0 && slices.ContainsFunc(rows[first:], func(r Row) bool { return r.Finding == "milk-grade-a" }) {
		t.Error("rows that feed a finding first do not stand first")
	}
	if rows := ByFinding(""); rows != nil {
		t.Errorf("no finding has rows: %v", rows)
	}
	if !slices.Contains(Topics(), "acid line") {
		t.Errorf("topics: %v", Topics())
	}
	Rows()[0].ID = "changed"
	if Rows()[0].ID == "changed" {
		t.Error("a caller's change reached the table")
	}
}

func TestMustGetSaysWhatIsMissing(t *testing.T) {
	for want, call := range map[string]func(){
		"law: no row us-nothing":                              func() { MustGet("us-nothing") },
		"law: row us-dmdc has no single figure sodium":        func() { figure("us-dmdc", "sodium") },
		"law: row us-sorbate has no single figure potassium?": func() { figure("us-sorbate", "potassium?") },
	} {
		if got := said(call); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func said(call func()) (what string) {
	defer func() { what = fmt.Sprint(recover()) }()
	call()
	return ""
}

func TestSideBySide(t *testing.T) {
	got := SideBySide("acid line", []beverage.Market{beverage.EU, beverage.UK})
	if len(got) != 3 || got[0].Market != beverage.EU || got[1].Rows[0].ID != "uk-low-acid" || got[2].Market != "" || len(got[2].Rows) == 0 {
		t.Errorf("%+v", got)
	}
}

// Each figure that rules ask for by name, with the place it stands.
func TestLines(t *testing.T) {
	for name, c := range map[string]struct {
		got    float64
		want   float64
		source string
	}{
		"LowAcidPH":               {LowAcidPH(), 4.6, "21 CFR 113.3(n)"},
		"LowAcidWaterActivity":    {LowAcidWaterActivity(), 0.85, "21 CFR 113.3(n)"},
		"AcidPH":                  {AcidPH(), 4.6, "21 CFR 114.3(a)"},
		"TomatoPH":                {TomatoPH(), 4.7, "21 CFR 113.3(n)"},
		"CanadaTomatoPH":          {CanadaTomatoPH(), 4.7, "B.27.002(3)"},
		"UKLowAcidPH":             {UKLowAcidPH(), 4.5, "UK guidelines of 1994"},
		"MeterPH":                 {MeterPH(), 4.0, "21 CFR 114.80(a)(2)"},
		"AlcoholPercent":          {AlcoholPercent(), 0.5, "TTB G 2010-3A"},
		"BotulinumF0":             {BotulinumF0(), 3, "custom"},
		"BotulinumFloorF0":        {BotulinumFloorF0(), 2.52, "12 x 0.21"},
		"SpoilageF0":              {SpoilageF0(), 5, "custom"},
		"ProteinBotulinumPH":      {ProteinBotulinumPH(), 4.0, "Young-Perkins and Merson 1987: 4.07"},
		"ProteinBotulinumPercent": {ProteinBotulinumPercent(), 1, "Wong et al. 1988"},
		"ChilledMaxC":             {ChilledMaxC(), 8, "UK chilled guidance"},
		"ChilledMaxDays":          {ChilledMaxDays(), 10, "UK chilled guidance"},
		"ChilledPH":               {ChilledPH(), 5, "UK chilled guidance"},
		"ChilledWaterActivity":    {ChilledWaterActivity(), 0.97, "UK chilled guidance"},
		"ChilledSaltPercent":      {ChilledSaltPercent(), 3.5, "UK chilled guidance"},
		"BotulinumFloorC":         {BotulinumFloorC(), 3, "Graham et al. 1997"},
		"ProteolyticFloorC":       {ProteolyticFloorC(), 10, "FDA guidance 2022, table A-1"},
		"CanadaChilledC":          {CanadaChilledC(), 4, "B.27.001"},
		"JuiceReductions":         {JuiceReductions(), 5, "21 CFR 120.24(a)"},
		"GradeAProteinPercent":    {GradeAProteinPercent(), 2, "PMO definition"},
		"GradeAMilkPercent":       {GradeAMilkPercent(), 65, "PMO definition"},
		"SensorToleranceC":        {SensorToleranceC(), 0.5, "21 CFR 113.40(a)(1)"},
		"ThermometerTestYears":    {ThermometerTestYears(), 1, "21 CFR 113.40(a)(1)"},
		"ThermophileC":            {ThermophileC(), 43, "recalled"},
		"AcidSpoilerC":            {AcidSpoilerC(), 25, "Kakagianni et al. 2018"},
		"NearLimitPH":             {NearLimitPH(), 4.4, "margin, common practice"},
		"AcidKillPH":              {AcidKillPH(), 3.3, "Breidt et al. 2007"},
		"SulfiteDeclared":         {SulfiteDeclared(), 10, "21 CFR 101.100(a)(4)"},
		"HeatSetPETC":             {HeatSetPETC(), 93, "bottle makers"},
		"PETSoftensC":             {PETSoftensC(), 76, "bottle makers"},
		"SporeKillC":              {SporeKillC(), 100, "ours, on Odlaug and Pflug 1977"},
		"HotFillPracticeC":        {HotFillPracticeC(), 85, "common practice"},
		"BenzoateCeilingPH":       {BenzoateCeilingPH(), 4.5, "custom"},
		"SorbateCeilingPH":        {SorbateCeilingPH(), 6.0, "the lower of 6.0 and 6.5"},
		"BenzoicPKa":              {BenzoicPKa(), 4.20, "handbook"},
		"SorbicPKa":               {SorbicPKa(), 4.76, "handbook"},
		"EquilibrationHours":      {EquilibrationHours(), 24, "Pennsylvania guidance 2023"},
		"MeterLowC":               {MeterLowC(), 20, "21 CFR 114.90(a)(3)(ii)"},
		"MeterHighC":              {MeterHighC(), 30, "21 CFR 114.90(a)(3)(ii)"},
		"SterileFilterUM":         {SterileFilterUM(), 0.22, "filtration practice"},
		"ProteinEnergyPercent":    {ProteinEnergyPercent(), 50, "21 CFR 101.17(d)"},
		"SweetGPerL":              {SweetGPerL(), 400, "common practice"},
	} {
		if c.got != c.want {
			t.Errorf("%s is %v, want %v (%s)", name, c.got, c.want, c.source)
		}
	}
}

func TestTargets(t *testing.T) {
	for _, c := range []DesignTarget{
		{"organism-target-low.botulinum", 3, 121.1, 10, 10, 12},
		{"uk-chilled-botulinum", 10, 90, 10, 9, 6},
		{"butyric-anaerobe.trade", 5, 93.3, 8.3, 8.3, 6},
		{"hot-fill-lethality.trade", 1.2, 71.1, 10.83, 10.83, 5},
		{"hot-fill-lethality-above-4.1", 5.6, 71.1, 9.28, 9.28, 5},
	} {
		if got, ok := TargetOf(c.RowID); !ok || got != c {
			t.Errorf("got %+v, %v; want %+v", got, ok, c)
		}
	}
	for _, id := range []string{"us-sorbate", "pasteurization-unit.trade", "nothing"} {
		if got, ok := TargetOf(id); ok {
			t.Errorf("%s has a target: %+v", id, got)
		}
	}
	if got := len(DesignTargets()); got != 5 {
		t.Errorf("%d rows have a target, want 5", got)
	}
}

// Half the last digit of the shortest lines, printed to a tenth of a minute.
const halfDigitS = 3

// The printed table of equals of 90 °C for 10 minutes follows its own z values.
func TestChilledEqualsFollowTheirTarget(t *testing.T) {
	target, _ := TargetOf("uk-chilled-botulinum")
	for _, s := range Schedules(FoodChilledLowAcid, beverage.UK) {
		z := target.ZC
		if s.TempC < target.TrefC {
			z = target.ZBelowC
		}
		want := secondsPerMinute * target.Minutes * math.Pow(10, (target.TrefC-s.TempC)/z)
		if allow := max(halfDigitS, 0.03*want); !(math.Abs(s.TimeS-want) <= allow) {
			t.Errorf("%s: the target asks for %.0f s", s, want)
		}
	}
}

// The number of a regulation is no date of its text.
func TestNumberIsNoDate(t *testing.T) {
	for section, want := range map[string]bool{
		"FDA recall notice, September 2017": true, "guidance (2017, revised 2020)": true, "Regulation (EC) No 1333/2017": false, "Regulation (EU) 2017/2895": false,
		"Regulation (EU) 2017/98 as of 2017": true, "no year": false,
	} {
		if got := namesYear(section, "2017"); got != want {
			t.Errorf("%q: %v", section, got)
		}
	}
}
