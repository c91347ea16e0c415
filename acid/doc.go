// Package acid computes the equilibrium of acids, bases, salts, minerals and
// proteins in water: pH, species, buffer capacity, titration and dosing. It
// knows components and molalities, not drinks, and does no I/O.
//
// # Model
//
// Molalities in mol per kg of water. Every ion has the activity coefficient
//
//	log10 g = -A z² √I / (1 + 1.5 √I)
//
// (Guggenheim 1935; the form in which the primary pH standards are defined),
// neutral species have 1, water has activity 1. Acid constants move with
// temperature by enthalpy and heat capacity or by a published function. Calcium
// and magnesium form complexes; sodium and potassium form none, since the
// activity form already holds what their pairs would count. pH is -log10 of the
// activity of the hydrogen ion.
//
// # Why it converges
//
// At a given pH and ionic strength the free metals are the lowest point of a
// strictly convex function of their logarithms, found by Newton steps that never
// pass the lowest point along their line. The ionic strength is the root of a
// continuous function, bracketed from both sides. The net charge falls with pH, so
// the pH is the one root between two bounds and is bracketed to the end. Newton's
// method for all of these together is a short cut that is taken when it arrives;
// what it accepts satisfies the same equations.
//
// # Range
//
// 0 to 100 °C; from pure water to saturated solutions. The activity form is good
// to an ionic strength of about 0.3; beyond it claim no better than 0.15 pH.
//
// References: Guggenheim 1935 Phil. Mag. 19:588; Bates 1973 Determination of pH;
// Goldberg, Kishore & Lennen 2002 J. Phys. Chem. Ref. Data 31:231. The source of
// each constant stands on its row in data/.
package acid
