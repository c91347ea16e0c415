package spec

import (
	"posset/beverage"
	"posset/beverage/quantity"
)

// roles are what a column of a record can be.
var roles = []string{"product", "retort", "reference", "other", "ignore"}

// units are those that readings are written in.
var units = []string{"C", "F", "K"}

var record = table[beverage.Record]{
	check: func(r *reader, n *node, rec *beverage.Record) { rec.Place = r.place(n) },
	fields: []field[beverage.Record]{
		{
			KeyDoc: KeyDoc{Key: "file", Form: FormText, Type: "a file inside this file's folder", Required: true,
				Means: "The recorder's file.", Example: `"logs/run-1.csv"`},
			read: func(r *reader, n *node, rec *beverage.Record) { rec.File, _ = r.fileOf(n) },
		},
		{
			KeyDoc: KeyDoc{Key: "roles", Form: FormMap, Type: "a table of heading = role", Values: roles,
				Means: "What each column is.", Example: `{ "Can 1" = "product", "Retort" = "retort" }`},
			read: func(r *reader, n *node, rec *beverage.Record) { rec.Roles = r.rolesOf(n) },
		},
		word("unit", units, "The unit of its readings, where the file does not tell; C also settles a doubt whether readings headed °C are °F.",
			func(rec *beverage.Record) *beverage.Given[string] { return &rec.Unit }),
		date("calibrated", "When its sensors were last calibrated.", "2026-01-15", func(rec *beverage.Record) *beverage.Given[string] { return &rec.Calibrated }),
		text("retort", "Which retort.", "3", func(rec *beverage.Record) *beverage.Given[string] { return &rec.Retort }),
		text("batch", "Which batch.", "Q-0417", func(rec *beverage.Record) *beverage.Given[string] { return &rec.Batch }),
	},
}

func addRecord(_ *reader, _ *node, p *beverage.Process, rec beverage.Record) {
	if rec.File != "" {
		p.Records = append(p.Records, rec)
	}
}

func (r *reader) rolesOf(n *node) map[string]string {
	if n.shape != isTable {
		r.wrong(n, "is "+n.shape.String(), `write { "Can 1" = "product" }`)
		return nil
	}
	named := make(map[string]string)
	for _, k := range n.keys {
		if len(named) == mostRoles {
			r.wrongKey(k, "is one more than "+itoa(mostRoles), "write fewer")
			break
		}
		role, ok := r.wordOf(k, roles)
		if ok && r.nameFits(k) {
			named[k.name] = role
		}
	}
	return named
}

// logs declares the short form of records: a file, or a list of files.
func logs(key, means, example string) field[beverage.Process] {
	return field[beverage.Process]{
		KeyDoc: KeyDoc{Key: key, Form: FormTexts, Type: "a file inside this file's folder, or a list of them", Means: means, Example: `"` + example + `"`},
		read: func(r *reader, n *node, p *beverage.Process) {
			for _, item := range r.list(n, mostRecords) {
				if name, ok := r.fileOf(item); ok {
					p.Records = append(p.Records, beverage.Record{Place: r.place(item), File: name})
				}
			}
		},
	}
}

// recordsOnce refuses a record named twice: it would count as two runs.
func (r *reader) recordsOnce(records []beverage.Record) {
	seen := make(map[string]beverage.Place)
	for _, rec := range records {
		if first, twice := seen[rec.File]; twice {
			r.add(Problem{Place: rec.Place, Read: quantity.Quote(rec.File) + " is named twice, first in line " + itoa(first.Line), Help: "keep one of them"})
			continue
		}
		seen[rec.File] = rec.Place
	}
}
