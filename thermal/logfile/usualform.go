package logfile

import "encoding/binary"

// maxUsualBehind is how many digits behind the mark leave room for a separator
// in eight characters.
const maxUsualBehind = 3

// form is how a number of some digits stands in eight characters with the mark
// and the separator that follows, the first character lowest.
type form struct {
	where, amid, last uint64  // of mark and separator; how they look within a row and at its end
	whole, behind     uint64  // the digits; those behind the mark once it is shifted out
	shift             int     // that brings the last digit to the top
	step              int     // characters, the separator counted
	unit              float64 // 10 to the digits behind the mark
}

// usualForms are those of numbers with two and three digits before the mark, by
// the digits behind it.
func usualForms(mark, sep byte) (f [maxUsualBehind + 1][2]form) {
	for behind := 1; behind <= maxUsualBehind; behind++ {
		f[behind] = [2]form{formOf(2, behind, mark, sep), formOf(3, behind, mark, sep)}
	}
	return f
}

func formOf(before, behind int, mark, sep byte) form {
	at := 8 * (before + 1 + behind) // bits up to the separator
	f := form{whole: 1<<(8*before) - 1, shift: 64 - 8*(before+behind), step: before + behind + 2, unit: pow10[behind]}
	f.behind = (1<<(8*behind) - 1) << (8 * before)
	f.where = 0xff<<(8*before) | 0xff<<at
	f.amid = uint64(mark)<<(8*before) | uint64(sep)<<at
	f.last = uint64(mark)<<(8*before) | '\n'<<at
	return f
}

// read reads numbers of this form, a stride apart, until one is different or the
// row ends. It returns how many they were and the place after them, which is the
// line feed where the row ended.
func (f *form) read(cells []float64, stride, most int, text []byte, at int) (n, next int, ended bool) {
	for to := 0; n < most && at+8 <= len(text); to += stride {
		chars := binary.LittleEndian.Uint64(text[at : at+8 : at+8])
		if chars&f.where != f.amid {
			break
		}
		digits, ok := f.digits(chars)
		if !ok {
			return n, at, false
		}
		cells[to] = float64(int64(eightDigits(digits))) / f.unit
		n++
		at += f.step
	}
	if n < most && at+8 <= len(text) {
		chars := binary.LittleEndian.Uint64(text[at : at+8 : at+8])
		if digits, ok := f.digits(chars); ok && chars&f.where == f.last {
			cells[n*stride] = float64(int64(eightDigits(digits))) / f.unit
			return n + 1, at + f.step - 1, true
		}
	}
	return n, at, false
}

// digits closes up the digits of eight characters; ok is false where they are
// none.
func (f *form) digits(chars uint64) (digits uint64, ok bool) {
	d := chars ^ eightZeros
	d = (d&f.whole | d>>8&f.behind) << (f.shift & 63)
	return d, ((d+tenUp)|d)&highBits == 0
}
