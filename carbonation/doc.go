// Package carbonation holds the physics of carbon dioxide in a drink and in its
// closed pack: solubility, the pressure above the liquid, the gas a pack keeps
// while its temperature moves, and what a plastic bottle loses on the shelf.
// It knows numbers, not drinks, and does no I/O.
//
// Conventions, used everywhere:
//
//   - A volume of CO2 is one litre of the gas at 0 °C and 1 atm, taken as real
//     (22.2605 L/mol), per litre of drink at 20 °C: 1.977 g/L. Old charts that
//     define it at 60 °F mean 5.4 % less gas by the same number.
//   - A litre or millilitre of drink is at 20 °C unless a name says otherwise;
//     a fill volume is at its fill temperature, a brimful volume at 20 °C.
//   - Pressures are kPa, gauge and absolute being two types. Water vapour is
//     counted; air is counted where a Pack says that there is some.
//   - Where a published figure is doubtful the unfavourable end is the one that
//     Worst uses; At gives the middle.
//
// Range: 0 to 150 °C. CO2 solubility is published and cross-checked from 0 to
// 80 °C and to about 12 bar; State.Extrapolated marks what lies beyond.
package carbonation
