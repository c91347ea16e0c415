package logfile

// SetWindowRows makes logs be judged in windows of so many rows, until the
// function it returns is called.
func SetWindowRows(rows int) (restore func()) {
	was := windowRows
	windowRows = rows
	return func() { windowRows = was }
}

// LongRowsOnly makes every row be read cell by cell, until the function it
// returns is called.
func LongRowsOnly() (restore func()) {
	longRowsOnly = true
	return func() { longRowsOnly = false }
}

// LongWayOnly makes every stretch be judged reading by reading, until the
// function it returns is called.
func LongWayOnly() (restore func()) {
	longWayOnly = true
	return func() { longWayOnly = false }
}
