package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage/starter"
	"posset/cmd/posset/internal/console"
)

const howToAnswer = `Enter takes what stands in brackets; "unknown" leaves it out, where that can be;
"?" tells more; "<" goes back. Nothing is written before the last answer.`

// asking is a dialogue on a terminal: questions go to the error stream, so that
// a spec can go to standard output.
type asking struct {
	con *console.Console
	in  *bufio.Scanner
	o   newFlags
	set func(name string) bool // whether a flag has answered already
}

// errBack is the wish to go back to the question before.
var errBack = errors.New("back")

func askNew(cmd *cobra.Command, con *console.Console, o newFlags) error {
	in := bufio.NewScanner(con.Input(cmd.Context()))
	a := asking{con: con, in: in, o: o, set: cmd.Flags().Changed}
	answers, err := a.all(cmd)
	if err != nil {
		return err
	}
	return o.write(cmd, con, answers)
}

// all asks for the kind, then for what it takes, then for the file. Back at the
// kind everything begins anew.
func (a *asking) all(cmd *cobra.Command) (*starter.Answers, error) {
	a.con.Say("A first spec of a drink, by questions.")
	for _, line := range strings.Split(howToAnswer, "\n") {
		a.con.Say(line)
	}
	for {
		k, err := a.kind()
		if err != nil {
			return nil, err
		}
		answers := starter.Of(k)
		if err := a.o.answer(cmd, answers); err != nil {
			return nil, err
		}
		err = a.questions(answers)
		if !errors.Is(err, errBack) {
			return answers, err
		}
	}
}

func (a *asking) kind() (starter.Kind, error) {
	for {
		a.con.Say("")
		for _, line := range strings.Split(strings.TrimRight(choices(), "\n"), "\n") {
			a.con.Say(line)
		}
		text, err := a.line("What kind of drink is it? ")
		if errors.Is(err, errBack) || text == "?" {
			continue
		}
		if err != nil {
			return starter.Kind{}, err
		}
		k, err := chosen(text)
		if err == nil {
			return k, nil
		}
		a.con.Say(err.Error())
	}
}

// questions asks one after the other; the last is where to write to.
func (a *asking) questions(answers *starter.Answers) error {
	var list []starter.Question
	for _, q := range starter.Questions() {
		if answers.Asked(q) && !a.set(q.Name) {
			list = append(list, q)
		}
	}
	for i := 0; i <= len(list); {
		var err error
		if i < len(list) {
			err = a.question(answers, list[i])
		} else {
			err = a.file(answers)
		}
		switch {
		case errors.Is(err, errBack) && i == 0:
			return errBack
		case errors.Is(err, errBack):
			i--
		case err != nil:
			return err
		default:
			i++
		}
	}
	return nil
}

// question asks until the answer can be; Enter keeps what stands in brackets.
func (a *asking) question(answers *starter.Answers, q starter.Question) error {
	for {
		text, err := a.line(fmt.Sprintf("%s [%s] ", q.Ask, answers.Current(q)))
		switch {
		case err != nil:
			return err
		case text == "?":
			a.con.Say(q.Help)
			continue
		case text == "":
			err = answers.Keep(q)
		default:
			err = answers.Say(q, text)
		}
		if err == nil {
			return nil
		}
		a.con.Say(err.Error())
	}
}

// file asks where to write to, unless --out has said.
func (a *asking) file(answers *starter.Answers) error {
	if err := answers.Again(); err != nil {
		a.con.Say(err.Error())
		return errBack
	}
	if a.con.Path != "" {
		return nil
	}
	usual := fileName(answers.Name())
	for {
		text, err := a.line(fmt.Sprintf("Which file shall it be written to? [%s] ", usual))
		switch {
		case err != nil:
			return err
		case text == "?":
			a.con.Say("The name of a file that is not there yet; - writes to the terminal.")
			continue
		case text == "":
			text = usual
		}
		if err := a.o.free(text); err != nil {
			a.con.Say(err.Error())
			continue
		}
		a.con.Path = text
		return nil
	}
}

// line reads one answer; "<" is the wish to go back.
func (a *asking) line(prompt string) (string, error) {
	fmt.Fprint(a.con.Err, prompt) // nowhere is left to tell of a failure
	if !a.in.Scan() {
		if err := a.in.Err(); err != nil && !errors.Is(err, io.EOF) {
			return "", err
		}
		a.con.Say("")
		return "", errEnded
	}
	text := strings.TrimSpace(a.in.Text())
	if text == "<" {
		return "", errBack
	}
	return text, nil
}
