package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"posset/acid"
	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

// roomC is the temperature that acid chemistry is told at unless asked.
const roomC = 25

type acidFlags struct {
	outside  bool
	tempC    beverage.Given[float64]
	targetPH beverage.Given[float64]
	with     string
}

func acidCommand(con *console.Console) *cobra.Command {
	var o acidFlags
	cmd := &cobra.Command{
		Use:   "acid SPEC",
		Short: "pH, acidity, buffering and dosing of one drink",
		Long: `The acid chemistry of a drink's recipe: pH with its interval and what makes it
wide, titratable acidity, buffer capacity, titration curve, what each ingredient
does to the pH and was given so that its own figures come out, and the acid class.
--target-ph doses an acid, or a blend by mass, until the high end of the dosed
drink's own interval lies at that pH; a measured pH of the drink as it is counts.`,
		Example: "  posset acid quince.toml\n  posset acid quince.toml --temperature 4C\n  posset acid quince.toml --target-ph 3.2 --with \"citric acid:malic acid 3:1\"",
		Args:    one,
		RunE:    func(cmd *cobra.Command, specs []string) error { return runAcid(cmd, con, specs[0], o) },
	}
	f := cmd.Flags()
	f.Var(&quantityFlag{at: &o.tempC, read: quantity.ParseTemperature, kind: "TEMPERATURE"}, "temperature", "temperature of the figures (25 C unless said)")
	f.Var(&quantityFlag{at: &o.targetPH, read: bareNumber("a pH", leastPH, mostPH), kind: "PH"}, "target-ph", "pH to dose to")
	f.StringVar(&o.with, "with", "", "`ACID` to dose with, or a blend by mass such as \"citric acid:malic acid 3:1\"")
	bindOutside(cmd, &o.outside)
	return cmd
}

func runAcid(cmd *cobra.Command, con *console.Console, name string, o acidFlags) error {
	switch {
	case o.targetPH.Known && o.with == "":
		return usageError(cmd, `--target-ph needs --with, such as --with "citric acid"`)
	case o.with != "" && !o.targetPH.Known:
		return usageError(cmd, "--with needs --target-ph, such as --target-ph 3.2")
	}
	if t := o.tempC; t.Known && (t.V < acid.MinTempC || t.V > acid.MaxTempC) {
		return usageError(cmd, fmt.Sprintf("--temperature: %.4g °C is outside what the constants hold for; write one from %d to %d °C", t.V, acid.MinTempC, acid.MaxTempC))
	}
	d, err := readSpec(cmd, con, name, o.outside)
	if err != nil {
		return err
	}
	want := assess.AcidOptions{Options: options(), TempC: o.tempC.Or(roomC), With: o.with}
	if o.targetPH.Known {
		want.TargetPH = &o.targetPH.V
	}
	r, err := assess.Acid(cmd.Context(), d, want)
	if err != nil {
		return naming(name, err)
	}
	open := r.AcidClass.Class == beverage.Undecided || isOpen(con, r.Findings)
	return emitOne(con, r, func(u report.Units) report.Doc { return report.Acid(r, u) }, open)
}
