package report

import (
	"math"

	"posset/beverage"
)

func known(v float64) *float64 { return &v }

func said(o beverage.Outcome) *beverage.Outcome { return &o }

var tool = beverage.Tool{Name: "posset", Version: "0.1.0"}

var testCautions = []string{
	"A process authority decides; this is not a scheduled process and not a release.",
	"What nobody gave counts as unknown, and doubt counts against the drink.",
}

// quince is an assessment with something in every part of it.
func quince() *beverage.Assessment {
	return &beverage.Assessment{
		Schema: beverage.AssessmentSchema,
		Tool:   tool,
		Input:  beverage.Input{File: "quince.toml", SHA256: "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"},
		Drink: beverage.DrinkSummary{Name: "Quince clear protein water", ServingML: known(330), AlcoholPct: known(0), SoldAs: "water",
			IntendedFor: "general", Markets: []beverage.Market{beverage.US, beverage.EU}, Route: string(beverage.Tunnel),
			Distribution: string(beverage.Ambient), StorageC: known(38), PackType: string(beverage.Can)},
		AcidClass: beverage.AcidClass{Class: beverage.Acidified, PH: known(3.25), PHLow: known(3.2), PHHigh: known(3.3), PHBasis: beverage.Measured,
			PredictedPH: known(3.31), WaterActivity: known(0.99), Note: "a pre-acidified powder is taken as an acidified food: the cautious reading",
			RegulatedAs: []beverage.Regulated{{Market: beverage.US, Term: "acidified food", Rule: "21 CFR 114.3(b)", Argued: true}}},
		Carbonation: &beverage.CarbonationState{Volumes: known(1.6), GramsPerLitre: known(3.14159265), Outcome: beverage.FallsShort},
		Package: &beverage.PackState{RatingGaugeKPa: known(620), Outcome: beverage.FallsShort, Pressure: []beverage.PressureAt{
			{At: "storage", TempC: 38, GaugeKPa: known(301.4), GaugeKPaHigh: known(322.01), Headspace: known(5.4)},
			{At: "process", TempC: 63, GaugeKPa: known(612.3), GaugeKPaHigh: known(655.5), LiquidFull: true}}},
		Lethality: &beverage.Delivered{Target: "F 12 min at 93.3 C, z 8.9 C", Set: "as stated by the user", Outcome: beverage.CannotTell,
			Logs: []beverage.LogResult{{File: "logs/run-1.csv", SHA256: "00ff", Outcome: said(beverage.CannotTell), Aim: &beverage.Aim{TrefC: 93.3, ZC: 8.9, Minutes: known(12)},
				Probes: []beverage.ProbeResult{probeOne()}}}},
		Protein: &beverage.ProteinState{GPerL: known(58.74), GPerServing: known(19.38), NetCharge: known(17.2), IsoelectricPH: known(5.2),
			Flags:      []beverage.ProteinFlag{{ID: "protein-calcium", Level: beverage.Review, Text: "calcium may bring haze"}},
			Components: []beverage.ProteinComponent{{Name: "whey protein isolate, acidified", GPerL: known(58.74), NetCharge: known(17.2), IsoelectricPH: known(5.2)}},
			Serving:    beverage.ServingNutrition{ProteinG: known(19.38), LeucineG: known(2.1)}, Picture: proteinDrawn()},
		Routes: []beverage.RouteResult{
			{Route: beverage.Tunnel, Outcome: beverage.DoesNotFit, Needs: "15 PU", Reasons: []beverage.Reason{{ID: "package-pressure",
				Text: "at 63 °C the closed can may reach 6.6 barg; its rating is 6.2 barg", Source: "maker's rating"}}},
			{Route: beverage.Aseptic, Outcome: beverage.Fits, Needs: "F 12 min at 93.3 C, z 8.9 C"},
			{Route: beverage.HighPressure, Outcome: beverage.FitUnknown, Reasons: []beverage.Reason{{Text: "nothing published on this drink"}}},
		},
		Findings: []beverage.Finding{
			{ID: "package-pressure", Level: beverage.Stop, Title: "The pack may not hold the pressure", Markets: []beverage.Market{beverage.US, beverage.EU},
				Detail: "At 63 °C, in the hottest zone of the tunnel, the closed can may reach 6.6 barg; its rating is 6.2 barg. The headspace is gone by then.",
				Values: map[string]any{"gauge_kpa_high": 655.5, "liquid_full": true}, Source: "maker's rating", Basis: beverage.CommonPractice},
			{ID: "log-fault", Level: beverage.Review, Title: "The record has a fault", Detail: "A gap of 40 s.", Markets: []beverage.Market{beverage.US}, Source: "21 CFR 113.100", Basis: beverage.Memory},
			{ID: "protein-astringent", Level: beverage.Note, Title: "It may taste dry", Detail: "Whey at pH 3.25.", Basis: beverage.Seen},
		},
		Cautions: testCautions,
	}
}

func probeOne() beverage.ProbeResult {
	return beverage.ProbeResult{Name: "Can 1", Role: "product", RoleBasis: "declared", Samples: 481, Start: "2026-03-02T08:00:00", End: "2026-03-02T09:20:00",
		MinC: known(20.1), MaxC: known(95.04), LethalityMinutes: known(12.004), CreditedMinutes: known(11.999), CreditedBeforeCoolingMn: known(10.2),
		Outcome: said(beverage.CannotTell), Trace: traceOne(),
		Faults: []beverage.FaultResult{{Kind: "gap", Row: 212, Time: "2026-03-02T08:35:10", Detail: "40 s without a reading"}},
		More:   []beverage.BasisResult{{Basis: "F0", TrefC: 121.1, ZC: 10, LethalityMinutes: known(0.0012), CreditedMinutes: known(0.0011)}}}
}

// traceOne is a record of eighty minutes in slots of ten, with a gap in it.
func traceOne() *beverage.Trace {
	t := &beverage.Trace{SlotS: 600, Holes: []beverage.TraceHole{{FromS: 2110, ToS: 2150}}}
	for i, c := range []float64{20.1, 60, 90, 94.8, 95.04, 94, 60, 30} {
		at := 600 * float64(i)
		t.Slots = append(t.Slots, beverage.TraceSlot{LowS: at, LowC: c - 0.3, HighS: at + 590, HighC: c, EndS: at + 590, CreditedMin: min(3*float64(i), 13)})
	}
	return t
}

func proteinDrawn() *beverage.ProteinPicture {
	return &beverage.ProteinPicture{PH: beverage.Around(3.25, 0.05, beverage.Measured), Isoelectric: beverage.Span(4.5, 5.3, beverage.Library),
		Charge: []beverage.ChargePoint{{PH: 3, NetCharge: 19.1}, {PH: 5.2, NetCharge: -0.04}}, Heat: heatDrawn()}
}

func heatDrawn() beverage.HeatPicture {
	return beverage.HeatPicture{TrefC: 121.1, ZC: 10, Of: "logs/run-1.csv, Can 1", EqualMin: 6, EqualTo: "the target that was stated", Source: "rate constants of milk", Notes: []string{"the pH is a little outside that of milk"},
		Path:  []beverage.HeatPoint{{TempC: 60, Denatured: beverage.Point(0, beverage.Predicted)}, {TimeS: 60, TempC: 121.1, LethalityMin: 1, Denatured: beverage.Span(0.5, 0.9, beverage.Predicted)}},
		Equal: []beverage.EqualHold{{TempC: 121.1, HoldS: 360, Denatured: beverage.Point(1, beverage.Predicted)}, {TempC: 140, HoldS: 4.6, Denatured: beverage.Span(0.3, 0.6, beverage.Predicted)}}}
}

func gasDrawn() *beverage.GasResult {
	return &beverage.GasResult{Schema: beverage.CarbonationSchema, Tool: tool, Volumes: known(2.6), GramsPerLitre: known(5.14), TempC: known(4), GaugeKPa: known(81), AbsoluteKPa: known(182.3),
		Convention: "a volume is one litre of CO2 at 0 °C and 1 atm per litre of drink", Cautions: testCautions,
		Chart: &beverage.GasChart{TempsC: []float64{0, 20}, Volumes: []float64{2.6, 4}, GaugeKPa: [][]float64{{54, 200}, {139, math.NaN()}}}}
}
