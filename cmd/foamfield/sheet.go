package main

import (
	"errors"
	"flag"
	"fmt"

	"foamfield/reports/blank"
)

// sheet writes a blank log.
func sheet(c *call, args []string) error {
	names, err := newFlags("sheet").parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return help(c, []string{"sheet"})
	case err != nil:
		return err
	case len(names) == 0:
		return wrongCall{"no file was named; give the blank log a name, for example: foamfield sheet trials.xlsx", "sheet"}
	case len(names) > 1:
		return wrongCall{fmt.Sprintf("%d files were named; name the one to write, in quotes if its name has spaces", len(names)), "sheet"}
	}
	to, err := openNew(names[0])
	if err != nil {
		return err
	}
	content, err := blank.Log()
	if err != nil {
		return err
	}
	if err := to.write(c, content); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.stdout, "Written: %s. Its second sheet says how to fill it in.\n", oneLine(to.path))
	return err
}
