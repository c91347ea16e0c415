package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/thermal/logfile"
)

var _ = declare(Rule{
	ID: "log-role-assumed", Level: review,
	Title: "A column of the record is taken as the product without being told so",
	Means: "A probe in the medium reads hotter than the drink. Where the heading tells nothing, taking the column as the product may credit heat that the drink never had.",
	Clear: "Say which column is what, in roles of [[process.record]] or with --role.",
	Law:   []string{"record-roles.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, run := range f.Records.Logs {
			if names := assumed(run); len(names) > 0 {
				hits = append(hits, Hit{
					Detail: fmt.Sprintf("%s: %s taken as product probes.", run.Result.File, listWords(names)),
					Values: Values{"file": run.Result.File, "columns": names},
				})
			}
		}
		return hits
	},
})

func assumed(run facts.Run) []string {
	var names []string
	for _, p := range run.Log.Probes {
		if p.Role == logfile.Product && p.RoleBasis == "assumed" {
			names = append(names, p.Name)
		}
	}
	return names
}
