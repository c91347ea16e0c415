package copacker

import (
	"fmt"
	"slices"

	"posset/beverage"
)

// gas asks for carbonation, nitrogen and what fills the headspace.
func (j *judge) gas(l *Line) {
	if j.f.Carbonated() {
		j.carbonation(l)
	}
	p := j.f.Drink.Package
	if g := p.NitrogenG; g.Or(0) > 0 && !l.NitrogenDosing.Or(false) {
		j.line("nitrogen", "line.nitrogen_dosing", l.NitrogenDosing.Place, l.Place, fmt.Sprintf("liquid nitrogen of %s a pack is asked%s", grams(g.V), canNot(l.NitrogenDosing)))
	}
	h := p.HeadspaceGas
	if !h.Known || h.V == beverage.Air || h.V == beverage.CO2 && j.f.Carbonated() {
		return
	}
	doses := h.V == beverage.Nitrogen && l.NitrogenDosing.Or(false)
	switch {
	case slices.Contains(l.HeadspaceGas.V, h.V) || doses:
	case !l.HeadspaceGas.Known:
		j.line("headspace", "line.headspace_gas", beverage.Place{}, l.Place, fmt.Sprintf("%s in the headspace is asked, and the line does not say what it can put there", h.V))
	default:
		j.line("headspace", "line.headspace_gas", l.HeadspaceGas.Place, l.Place, fmt.Sprintf("%s in the headspace is asked, and the line puts %s there", h.V, listed(l.HeadspaceGas.V)))
	}
}

func canNot(g beverage.Given[bool]) string {
	if g.Known {
		return ", and the line cannot dose it"
	}
	return ", and the line does not say that it can dose it"
}

func (j *judge) carbonation(l *Line) {
	v := j.f.Gas.Volumes
	if !v.Known {
		at := beverage.Place{}
		if c := j.f.Drink.Carbonation; c != nil {
			at = c.Place
		}
		j.spec("carbonation", "carbonation.volumes", at, "the drink is carbonated, and how much is not known", "carbonation-unmeasured")
		return
	}
	j.within(exactly("carbonation", v.V, volumes), l.Carbonation, "line.carbonation", l.Place)
}

// body asks for what floats in the drink and how thick it is.
func (j *judge) body(l *Line) {
	coarse := j.f.Drink.Particles.Or(none)
	if coarse == none && j.f.HoldsParticles() {
		coarse = "pulp" // of an ingredient: pieces would be said
	}
	size := func(word string) int { return slices.Index(particleWords, word) }
	switch {
	case coarse == none:
	case !l.Particles.Known:
		j.line("particles", "line.particles", beverage.Place{}, l.Place, coarse+" is in the drink, and the line does not say that it can run it")
	case size(l.Particles.V) < size(coarse):
		j.line("particles", "line.particles", l.Particles.Place, l.Place, fmt.Sprintf("%s is in the drink, and the coarsest that the line can run is %s", coarse, l.Particles.V))
	}
	v, most := j.f.Drink.Measured.ViscosityMilliPa, l.ViscosityMPaS
	switch {
	case !v.Known:
	case !most.Known:
		j.line("viscosity", "line.viscosity_at_most", beverage.Place{}, l.Place, fmt.Sprintf("the drink has %s, and the line does not say how thick it can run", viscous(v.V)))
	case v.V > most.V:
		j.line("viscosity", "line.viscosity_at_most", most.Place, l.Place, fmt.Sprintf("the drink has %s, and the line runs up to %s", viscous(v.V), viscous(most.V)))
	}
}

// packs takes the pack of the line that misses least.
func (j *judge) packs(l *Line) {
	t := j.f.Drink.Package.Type
	if !t.Known {
		j.spec("pack", "package.type", t.Place, "the spec does not say what the pack is", "package-unknown")
		return
	}
	if len(l.Packs) == 0 {
		j.line("pack", "line.pack", beverage.Place{}, l.Place, fmt.Sprintf("a %s is asked, and the line does not say what it packs into", t.V))
		j.fill(nil, l.Place)
		return
	}
	var best []Missing
	for i := range l.Packs {
		one := judge{f: j.f, o: j.o}
		one.pack(&l.Packs[i])
		if i == 0 || len(one.missing) < len(best) {
			best = one.missing
		}
	}
	j.missing = append(j.missing, best...)
}

// pack holds one pack against the drink's. What fills one of another type fills
// nothing that was asked.
func (j *judge) pack(k *Pack) {
	t := j.f.Drink.Package.Type
	if k.Type.V == t.V {
		j.fill(&k.FillML, k.Place)
		return
	}
	j.line("pack", "line.pack.type", k.Type.Place, k.Place, fmt.Sprintf("a %s is asked, and the line does not pack into one", t.V))
	j.fill(nil, k.Place)
}

// fill holds the volume that is asked against the volumes of a pack; nil where
// the line has no such pack.
func (j *judge) fill(r *Range, at beverage.Place) {
	p := j.f.Drink.Package
	switch {
	case !p.FillML.Known:
		j.spec("fill", "package.fill", p.Type.Place, "the spec does not say how much is filled", "")
	case r == nil:
		j.line("fill", "line.pack.fill", beverage.Place{}, at, fmt.Sprintf("%s in a %s is asked", fills(p.FillML.V), p.Type.V))
	default:
		j.within(exactly("fill", p.FillML.V, fills), *r, "line.pack.fill", at)
	}
}
