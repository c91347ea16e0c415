package carbonation

// balance is a closed pack at one temperature, ready to be solved for pressure.
// Pressures are kPa absolute.
type balance struct {
	gas                           realGas
	vapour                        float64
	liquidL, insideL              float64 // without pressure
	givePerKPa, ambient           float64
	co2, n2, o2                   float64 // mol in the pack
	co2PerKPa, n2PerKPa, o2PerKPa float64 // mol that the drink takes up
}

func (c *closed) balanceAt(i *isotherm) balance {
	solvent := c.solvent(i)
	return balance{
		gas: i.gas, vapour: i.vapour,
		liquidL: c.litresAt20 * i.expansion, insideL: c.pack.BrimfulML / 1000 * c.pack.growth(i.tC),
		givePerKPa: c.as.givePerBar / kPaPerBar, ambient: float64(c.as.standing),
		co2: c.co2, n2: c.n2, o2: c.o2,
		co2PerKPa: solvent * i.uptake(&c.as).co2PerKgKPa, n2PerKPa: solvent * i.n2PerKgKPa, o2PerKPa: solvent * i.o2PerKgKPa,
	}
}

// room is the headspace in L at a total pressure. A pack below ambient is taken
// as rigid: that keeps the vacuum at its deepest.
func (b *balance) room(pKPa float64) float64 {
	return b.insideL*(1+b.givePerKPa*max(0, pKPa-b.ambient)) - b.liquidL
}

// airKPa is the pressure of nitrogen and oxygen at a total pressure, as ideal gases.
func (b *balance) airKPa(pKPa float64) float64 {
	if b.n2 == 0 && b.o2 == 0 {
		return 0
	}
	gaseous := b.room(pKPa) / b.gas.rt
	return b.n2/(b.n2PerKPa+gaseous) + b.o2/(b.o2PerKPa+gaseous)
}

// co2KPa is what a total pressure leaves for CO2.
func (b *balance) co2KPa(pKPa float64) float64 { return pKPa - b.vapour - b.airKPa(pKPa) }

// co2Fugacity includes the effect of pressure on the liquid.
func (b *balance) co2Fugacity(pKPa float64) float64 {
	part := b.co2KPa(pKPa)
	return part * b.gas.fugacityFactor(pKPa, max(0, part/pKPa))
}

// co2InHeadspace in mol at a total pressure.
func (b *balance) co2InHeadspace(pKPa float64) float64 {
	part := b.co2KPa(pKPa)
	return part * b.room(pKPa) / (b.gas.compressibility(pKPa, max(0, part/pKPa)) * b.gas.rt)
}

// pressure is what the gas kept in the pack exerts when real-gas terms, give and
// headspace are taken at pKPa; the state of the pack is where both are the same.
func (b *balance) pressure(pKPa float64) float64 {
	other := b.vapour + b.airKPa(pKPa)
	if b.co2 == 0 {
		return other
	}
	share := max(0, 1-other/pKPa)
	dissolved := b.co2PerKPa * b.gas.fugacityFactor(pKPa, share)
	gaseous := b.room(pKPa) / (b.gas.compressibility(pKPa, share) * b.gas.rt)
	return other + b.co2/(dissolved+gaseous)
}
