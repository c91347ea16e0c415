package main

import (
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/carbonation"
	"posset/cmd/posset/internal/console"
)

type carbonationFlags struct {
	outside                                             bool
	volumes, co2, tempC, sugar, salt, alcohol, altitude beverage.Given[float64]
	air, headspace                                      beverage.Given[float64]
	pressure                                            pressureFlag
}

func carbonationCommand(con *console.Console) *cobra.Command {
	var o carbonationFlags
	cmd := &cobra.Command{
		Use:   "carbonation [SPEC]",
		Short: "Volumes of CO2 and pressure, of a liquid or of a closed pack",
		Long: `Without a spec: the pressure from --volumes or --co2, or the volumes from
--pressure, in equilibrium with the liquid at --temperature, and the same over
temperature. Of a shaken sample --air and --headspace take the air off. With a
spec: the pressure of its closed pack over temperature, against the pack's rating.`,
		Example: "  posset carbonation --volumes 2.6 --temperature 4C\n  posset carbonation --pressure \"2.4 barg\" --temperature 20C --sugar \"80 g/L\"\n  posset carbonation --pressure \"2.4 barg\" --temperature 20C --air \"2 mL\" --headspace \"20 mL\"\n  posset carbonation soda.toml",
		Args:    atMostOne("spec"),
		RunE: func(cmd *cobra.Command, specs []string) error {
			if len(specs) == 1 {
				return runPackGas(cmd, con, specs[0], o)
			}
			return runGas(cmd, con, o)
		},
	}
	f := cmd.Flags()
	f.Var(&quantityFlag{at: &o.volumes, read: bareNumber("volumes of CO2", 0, mostVolumes), kind: "NUMBER"}, "volumes", "volumes of CO2")
	f.Var(&quantityFlag{at: &o.co2, read: concentration, kind: "CONCENTRATION"}, "co2", "CO2 by mass, such as \"5 g/L\", in place of --volumes")
	f.Var(&o.pressure, "pressure", "pressure at equilibrium, such as \"2.4 barg\" or \"35 psig\"")
	f.Var(&quantityFlag{at: &o.tempC, read: quantity.ParseTemperature, kind: "TEMPERATURE"}, "temperature", "temperature at equilibrium")
	f.Var(&quantityFlag{at: &o.air, read: quantity.ParseVolume, kind: "VOLUME"}, "air", "air found in the headspace of the sample, at the pressure of the place, such as \"2 mL\"")
	f.Var(&quantityFlag{at: &o.headspace, read: quantity.ParseVolume, kind: "VOLUME"}, "headspace", "headspace of that sample, such as \"20 mL\"")
	f.Var(&quantityFlag{at: &o.sugar, read: sugarGPerL, kind: "SUGAR"}, "sugar", "sugar, such as \"80 g/L\" or \"8 Brix\"")
	f.Var(&quantityFlag{at: &o.salt, read: concentration, kind: "CONCENTRATION"}, "salt", "salt as sodium chloride, such as \"2 g/L\"")
	f.Var(&quantityFlag{at: &o.alcohol, read: quantity.ParseAlcohol, kind: "PERCENT"}, "alcohol", "alcohol by volume, such as \"5 %\"")
	f.Var(&quantityFlag{at: &o.altitude, read: quantity.ParseLength, kind: "LENGTH"}, "altitude", "of the place that gauge pressures are read at, such as \"800 m\"")
	bindOutside(cmd, &o.outside)
	return cmd
}

func runGas(cmd *cobra.Command, con *console.Console, o carbonationFlags) error {
	if err := o.fault(cmd); err != nil {
		return err
	}
	want := assess.GasOptions{Options: pictured(con), TempC: o.tempC.V, SugarGPerL: o.sugar.Or(0), SaltGPerL: o.salt.Or(0), AlcoholPercent: o.alcohol.Or(0), AltitudeM: o.altitude.Or(0)}
	switch {
	case o.volumes.Known:
		want.Volumes = &o.volumes.V
	case o.co2.Known:
		v := carbonation.VolumesOf(o.co2.V)
		want.Volumes = &v
	default:
		want.Pressure = &o.pressure.given.V
	}
	if o.air.Known {
		want.Air = &assess.AirInSample{AirML: o.air.V, HeadspaceML: o.headspace.V}
	}
	r, err := assess.Gas(want)
	if err != nil {
		return usageError(cmd, strings.TrimPrefix(err.Error(), "carbonation: "))
	}
	return emitOne(con, r, func(u report.Units) report.Doc { return report.Carbonation(r, u) }, false)
}

// fault is what keeps the flags from being one question.
func (o carbonationFlags) fault(cmd *cobra.Command) error {
	asked := 0
	for _, known := range []bool{o.volumes.Known, o.co2.Known, o.pressure.given.Known} {
		if known {
			asked++
		}
	}
	switch {
	case asked != 1:
		return usageError(cmd, "needs a spec, or --temperature with one of --volumes, --co2 and --pressure")
	case !o.tempC.Known:
		return usageError(cmd, "needs --temperature, such as --temperature 4C")
	case o.air.Known != o.headspace.Known:
		return usageError(cmd, "needs --air and --headspace together")
	case o.air.Known && !o.pressure.given.Known:
		return usageError(cmd, "takes air off a --pressure that was read, not off volumes")
	}
	return nil
}

func (o carbonationFlags) any() bool {
	for _, g := range []beverage.Given[float64]{o.volumes, o.co2, o.tempC, o.sugar, o.salt, o.alcohol, o.altitude, o.air, o.headspace} {
		if g.Known {
			return true
		}
	}
	return o.pressure.given.Known
}

func runPackGas(cmd *cobra.Command, con *console.Console, name string, o carbonationFlags) error {
	if o.any() {
		return usageError(cmd, "takes a spec or figures, not both: what the spec says of its gas stands in it")
	}
	d, err := readSpec(cmd, con, name, o.outside)
	if err != nil {
		return err
	}
	r, err := assess.PackGas(cmd.Context(), d, pictured(con))
	if err != nil {
		return naming(name, err)
	}
	return emitOne(con, r, func(u report.Units) report.Doc { return report.Carbonation(r, u) }, isOpen(con, r.Findings))
}

// pressureFlag keeps whether a pressure is gauge or absolute.
type pressureFlag struct {
	given beverage.Given[beverage.Pressure]
	text  string
}

func (p *pressureFlag) String() string { return p.text }

func (p *pressureFlag) Type() string { return "PRESSURE" }

func (p *pressureFlag) Set(s string) error {
	kPa, gauge, err := quantity.ParsePressure(s)
	if err == nil {
		p.given, p.text = beverage.Say(beverage.Pressure{KPa: kPa, Gauge: gauge}), s
	}
	return err
}
