package logfile

type sharedTable struct{}

func (t *track) judgeSound(v *view, column int, o *order, from, to int) bool { return false }
