package main

import "fmt"

const usage = `foamfield reads your spreadsheet log of whipped-foam trials and answers: what to
start from, how sure that is, how far the fat can go, and what to test next.

  foamfield report LOG...    read, analyse and write the report
  foamfield check LOG...     read and explain what was read; analyse nothing
  foamfield help COMMAND     more about a command
  foamfield version          which build this is

A LOG is an .xlsx or .csv file, a folder of them, or a pattern in quotes.

Start with:

  foamfield report week.xlsx
`

const reportUsage = `foamfield report LOG... [flags]

Reads one or several logs of foam trials, works out where the foam works, and
writes a report: report.html (open this first), report.pdf, report.xlsx,
results.json, the figures, and next-trials.xlsx to fill in. Your log is never
changed, and a next-trials.xlsx that is there already is never written over.

Flags may stand before or after the logs.

  --out DIR          the folder to write; NAME-report beside you unless set
  --write LIST       some of html,pdf,xlsx,json,figures; all unless set.
                     results.json is always written; next-trials comes with xlsx
  --only TEXT        only trials whose dish, sheet or file name contains TEXT
  --kitchen FILE     a workbook with your Targets, Ingredients, Columns, Method

What "works" means; these win over a Targets sheet in the log:

  --hold MIN         minutes the foam must hold its shape; 20 unless set
  --drained PERCENT  most it may drain, percent of the foam; 10 unless set
  --drained-at MIN   the minute at which drainage counts; 20 unless set
  --chance P         the chance of working you want: 0.8, 80 or 80%; 0.8 unless set

The formula:

  --batch G          grams to scale it to; your middle batch unless set
  --scale-step G     what your scale reads to; 0.1 unless set

  --paper a4|letter  pages of the PDF; a4 unless set
  --seed N           a whole number; the same seed gives the same report
  --quiet            print nothing but errors

For example, a foam that must hold half an hour, 9 times in 10:

  foamfield report week.xlsx --hold 30 --chance 90%
`

const checkUsage = `foamfield check LOG... [flags]

Reads one or several logs and says what it understood: which row is the header,
what each column was read as, which trials count and which were set aside and
why, which ingredient values were used and whose they are, and what to mend in
the log. Several files or a folder get a line each. Writes no file.

  --only TEXT        only trials whose dish, sheet or file name contains TEXT
  --kitchen FILE     a workbook with your Targets, Ingredients, Columns, Method

For example:

  foamfield check week.xlsx
`

// help prints a command's usage, or the program's.
func help(c *call, args []string) error {
	text := usage
	if len(args) > 0 {
		switch args[0] {
		case "report":
			text = reportUsage
		case "check":
			text = checkUsage
		case "help", "version":
		default:
			return wrongCall{fmt.Sprintf("there is no command %s; the commands are report, check and help", quoted(args[0])), ""}
		}
	}
	_, err := fmt.Fprint(c.stdout, text)
	return err
}
