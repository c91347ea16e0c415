package main

import (
	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

type holdFlags struct {
	boreM, lengthM, flow, tempC, meteredC, steamC, toleranceC beverage.Given[float64]
	viscosity, density, index, brix, share, altitudeM         beverage.Given[float64]
	trefC, zC                                                 beverage.Given[float64]
	target                                                    string
}

// Ranges of the bare numbers of a tube.
const (
	mostBrix              = 80
	leastIndex, mostIndex = 0.05, 3
)

func holdCommand(con *console.Console) *cobra.Command {
	var o holdFlags
	cmd := &cobra.Command{
		Use:   "hold",
		Short: "Residence time and lethality of a holding tube",
		Long: `Works out how long a drink stays in a holding tube, on average and its fastest
particle, which decides, and what that is worth at the temperature of the
tube's outlet. What is not given counts against the drink: no viscosity is
laminar flow, no temperature at the meter is a drink metered ice cold.`,
		Example: "  posset hold --bore 47.5mm --length 18m --flow \"5000 L/h\" --temperature 138C --brix 8 --target \"F0 6 min\"\n" +
			"  posset hold --bore 38mm --flow \"3000 L/h\" --temperature 72.5C --viscosity \"2 mPa·s\" --metered-at 5C --target \"15 s at 72 C\"",
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return runHold(cmd, con, &o) },
	}
	f := cmd.Flags()
	add := func(at *beverage.Given[float64], read func(string) (float64, error), kind, name, use string) {
		f.Var(&quantityFlag{at: at, read: read, kind: kind}, name, use)
	}
	add(&o.boreM, quantity.ParseLength, "LENGTH", "bore", "inside diameter of the tube")
	add(&o.lengthM, quantity.ParseLength, "LENGTH", "length", "of the tube; without it only the length needed is told")
	add(&o.flow, quantity.ParseFlow, "FLOW", "flow", "of the drink as metered, such as \"5000 L/h\"")
	add(&o.tempC, quantity.ParseTemperature, "TEMPERATURE", "temperature", "at the outlet of the tube")
	add(&o.toleranceC, quantity.ParseTemperatureDifference, "DIFFERENCE", "tolerance", "of the thermometer there (0.5 C unless said)")
	add(&o.meteredC, quantity.ParseTemperature, "TEMPERATURE", "metered-at", "of the drink at the flow meter")
	add(&o.steamC, quantity.ParseTemperature, "TEMPERATURE", "steam-before", "of the drink before direct steam; leave out without it")
	add(&o.viscosity, quantity.ParseViscosity, "VISCOSITY", "viscosity", "at the temperature of the hold; of a power-law drink its consistency")
	add(&o.index, bareNumber("a flow index", leastIndex, mostIndex), "NUMBER", "flow-index", "n of a power-law drink (1 unless said)")
	add(&o.density, quantity.ParseDensity, "DENSITY", "density", "at the temperature of the hold")
	add(&o.brix, bareNumber("Brix", 0, mostBrix), "NUMBER", "brix", "stands in for viscosity and density that are not given")
	add(&o.share, bareNumber("a share of the mean time", 0, 1), "NUMBER", "tested-share", "fastest over mean time by a residence-time test of this drink in this tube")
	add(&o.altitudeM, quantity.ParseLength, "LENGTH", "altitude", "of the plant, for the flash pressure on a gauge")
	add(&o.trefC, quantity.ParseTemperature, "TEMPERATURE", "tref", "reference temperature (121.1 C unless said)")
	add(&o.zC, quantity.ParseTemperatureDifference, "DIFFERENCE", "z", "z value (10 C unless said)")
	f.StringVar(&o.target, "target", "", "`TARGET`: \"6 min\", \"F0 6 min\", \"15 PU\", \"15 s at 72 C\", \"5 log NAME\"")
	return cmd
}

func runHold(cmd *cobra.Command, con *console.Console, o *holdFlags) error {
	want := assess.HoldOptions{Options: options(), TrefC: o.trefC.Or(usualTrefC), ZC: o.zC.Or(usualZC), BoreM: o.boreM.V, LengthM: o.lengthM,
		FlowLPerH: o.flow.V, TempC: o.tempC.V, ToleranceC: o.toleranceC.Or(usualToleranceC), MeteredC: o.meteredC, SteamFromC: o.steamC,
		ViscosityMPS: o.viscosity, DensityGML: o.density, FlowIndex: o.index, Brix: o.brix, TestedShare: o.share, AltitudeM: o.altitudeM.Or(0)}
	switch {
	case !o.boreM.Known || !o.flow.Known || !o.tempC.Known:
		return usageError(cmd, `needs --bore, --flow and --temperature, such as --bore 47.5mm --flow "5000 L/h" --temperature 138C`)
	case !o.lengthM.Known && o.target == "":
		return usageError(cmd, "needs --length, or a --target to work the length out for")
	case want.ToleranceC < 0:
		return usageError(cmd, "--tolerance: a tolerance is not negative; write 0.5C")
	}
	if o.target != "" {
		t, err := targetAt(o.target, o.trefC, o.zC)
		if err != nil {
			return usageError(cmd, err.Error())
		}
		want.Target = &t
	}
	r, err := assess.Hold(want)
	if err != nil {
		return usageError(cmd, err.Error())
	}
	open := r.Outcome != nil && *r.Outcome != beverage.Meets
	return emitOne(con, r, func(u report.Units) report.Doc { return report.Hold(r, u) }, open)
}
