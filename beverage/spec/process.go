package spec

import (
	"posset/beverage"
	"posset/beverage/quantity"
)

type proc = beverage.Process

var process = table[proc]{
	check: func(r *reader, n *node, p *proc) {
		p.Place = r.place(n)
		r.recordsOnce(p.Records)
	},
	fields: []field[proc]{
		word("route", beverage.Routes, "Way of making the drink keep.", func(p *proc) *beverage.Given[beverage.Route] { return &p.Route }),
		measure("hold_temperature", quantity.Temperature, processRange,
			"Of the drink in the tube; for tunnel and retort of the heating medium: shown as an estimate, never credited to the drink.", "63 C",
			func(p *proc) *beverage.Given[float64] { return &p.HoldTempC }),
		measure("hold_time", quantity.Duration, holdRange, "In the tube, the tunnel's hot zone, the retort, or under high pressure.", "20 min",
			func(p *proc) *beverage.Given[float64] { return &p.HoldS }),
		measure("fill_temperature", quantity.Temperature, processRange, "Of the drink at the filler.", "20 C",
			func(p *proc) *beverage.Given[float64] { return &p.FillTempC }),
		measure("pack_hold_time", quantity.Duration, holdRange, "Hot fill: closed, before cooling.", "2 min",
			func(p *proc) *beverage.Given[float64] { return &p.PackHoldS }),
		measure("pack_hold_temperature", quantity.Temperature, processRange, "Hot fill: coldest place of the closed pack at the end of that.", "82 C",
			func(p *proc) *beverage.Given[float64] { return &p.PackHoldC }),
		measure("initial_temperature", quantity.Temperature, processRange, "Of the drink when heating starts.", "20 C",
			func(p *proc) *beverage.Given[float64] { return &p.InitialC }),
		measure("pressure", quantity.Pressure, highRange, "High pressure only.", "600 MPa",
			func(p *proc) *beverage.Given[float64] { return &p.PressureMPa }),
		measure("filter_pore", quantity.Length, poreRange, "Sterile filtration only.", "0.2 µm",
			func(p *proc) *beverage.Given[float64] { return &p.FilterPoreUM }),
		logs("log", "Record of the real run, inside this file's folder; or a list of them: the short form of [[process.record]].", "logs/run-1.csv"),
		target("target", "What the process shall deliver: "+targetForms+".", "F0 6 min"),
		schedule("scheduled", "Who set the target; without it the target is as stated by the user."),
		several("record", mostRecords, "The record of the real run.", record, addRecord),
		several("zone", mostZones, "Tunnel: medium temperatures and times, in order.", zone,
			func(_ *reader, _ *node, p *proc, z zoneGiven) {
				p.Zones = append(p.Zones, beverage.Zone{TempC: z.TempC.V, TimeS: z.TimeS.V})
			}),
		several("critical", mostLimits, "Limits that the scheduled process states; each held against record, spec or measured value.", critical,
			func(r *reader, n *node, p *proc, l limitGiven) {
				if c, ok := r.limit(n, l); ok {
					p.Critical = append(p.Critical, c)
				}
			}),
	},
}

// schedule declares the table that says whose the target is.
func schedule(key, means string) field[proc] {
	return field[proc]{
		KeyDoc: KeyDoc{Key: key, Form: FormTable, Type: "a table", Means: means},
		inner:  func() []KeyDoc { return scheduled.docs("") },
		read: func(r *reader, n *node, p *proc) {
			p.Scheduled = &beverage.Scheduled{}
			scheduled.into(r, n, p.Scheduled)
		},
	}
}

var scheduled = table[beverage.Scheduled]{fields: []field[beverage.Scheduled]{
	text("by", "The process authority's name.", "process authority's name", func(s *beverage.Scheduled) *beverage.Given[string] { return &s.By }),
	date("dated", "Date of the scheduled process.", "2026-03-02", func(s *beverage.Scheduled) *beverage.Given[string] { return &s.Dated }),
	text("reference", "Where it stands.", "letter 17", func(s *beverage.Scheduled) *beverage.Given[string] { return &s.Reference }),
}}

// zoneGiven is a zone while it is read.
type zoneGiven struct {
	TempC, TimeS beverage.Given[float64]
}

var zone = table[zoneGiven]{fields: []field[zoneGiven]{
	measure("temperature", quantity.Temperature, processRange, "Of the medium.", "63 C",
		func(z *zoneGiven) *beverage.Given[float64] { return &z.TempC }).must(),
	measure("time", quantity.Duration, stayRange, "In the zone.", "12 min",
		func(z *zoneGiven) *beverage.Given[float64] { return &z.TimeS }).must(),
}}

// target declares the key that holds a target.
func target(key, means, example string) field[proc] {
	return field[proc]{
		KeyDoc: KeyDoc{Key: key, Form: FormText, Type: "a target", Means: means, Example: `"` + example + `"`},
		read: func(r *reader, n *node, p *proc) {
			if n.shape != isText {
				r.wrong(n, "is "+n.shape.String(), "write "+targetForms)
				return
			}
			t, err := ParseTarget(n.text)
			if err != nil {
				r.wrongQuantity(n, err)
				return
			}
			p.Target = given(r, n, t)
		},
	}
}
