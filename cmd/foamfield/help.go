package main

import "fmt"

const usage = `foamfield reads your spreadsheet log of whipped-foam trials and answers: what to
start from, how sure that is, how far the fat can go, and what to test next.

  foamfield report LOG...    read, analyse and write the report
  foamfield trend LOG...     many weeks: steady? what changed it? does the optimum move?
  foamfield check LOG...     read and explain what was read; analyse nothing
  foamfield sheet NEW.xlsx   write a blank log to fill in
  foamfield plan NEW.xlsx    lay out trials to make: a week before any log, or the next
  foamfield blend            emulsifiers and HLB to grams and back; stand-ins
  foamfield grade FOLDER     check a class of hand-ins; marks by your own weights
  foamfield help COMMAND     more about a command
  foamfield version          which build this is
  foamfield LOG...           a log dropped on the program: report beside it, opened

A LOG is an .xlsx or .csv file, a folder of them, or a pattern in quotes.

Start with:

  foamfield report week.xlsx
`

const reportUsage = `foamfield report LOG... [flags]

Reads one or several logs of foam trials, works out where the foam works, and
writes a report: report.html (open this first), report.pdf, report.xlsx,
results.json, the figures, and next-trials.xlsx to fill in. What the keys of
results.json are stands beside it: results-keys.csv for people,
results.schema.json for programs. Your log is never changed, and a
next-trials.xlsx that is there already is never written over.

Flags may stand before or after the logs.

  --out DIR          the folder to write; NAME-report beside you unless set
  --write LIST       some of html,pdf,xlsx,json,figures; all unless set.
                     results.json and the two that explain it are always
                     written; next-trials comes with xlsx
  --only TEXT        only trials whose dish, sheet or file name contains TEXT
  --kitchen FILE     a workbook with your Targets, Ingredients, Columns, Method, Try, Plan

What "works" means; these win over a Targets sheet in the log:

  --hold MIN         minutes the foam must hold its shape; 20 unless set
  --drained PERCENT  most it may drain, percent of the foam; 10 unless set
  --drained-at MIN   the minute at which drainage counts; the one minute the log always reads at, else 20
  --chance P         the chance of working you want: 0.8, 80 or 80%; 0.8 unless set

A Targets sheet can also ask for a score or another result of the log, by its
header and a range: taste | 4 to 6, or overrun % | at least 150.

The formula:

  --batch G          grams to scale it to, 500 or 2kg; your middle batch unless set.
                     4x400 is for service: four canisters of 400 g
  --canister LIST    canisters to fill for service, "1 L x 2, 0.5 L": the batch is
                     split over them by size; trials keep their own batch. A
                     Targets sheet can say it too: canisters | 1 L x 2, 0.5 L
  --scale-step G     what your scale reads to; 0.1 unless set
  --ounces           avoirdupois ounces beside the grams
  --portions N       that a batch, or what is made for service, gives, to say what one
                     costs; needs Prices on an Ingredients sheet, such as 12.50 (a
                     kilogram) or 3 per 250 g

  --try FORMULA      also say how likely a formula of yours is to work, for example
                     --try "fat 52, emulsifier 2.4, hlb 8", or by your own names
                     "olive oil 220, GMS 4.2"; what you leave out is set to the
                     best for the rest. Several with ; between, or a Try sheet in
                     the log: Fat % | Emulsifier % | HLB
  --trade-signs on|off
                     whether to assume that richer mixes clog and split no less,
                     whatever a few trials say; on unless set
  --paper a4|letter  pages of the PDF; a4 unless set
  --seed N           a whole number; the same seed gives the same report
  --open             open report.html once it is written
  --quiet            print nothing but errors

For example, a foam that must hold half an hour, 9 times in 10:

  foamfield report week.xlsx --hold 30 --chance 90%
`

const trendUsage = `foamfield trend LOG... [flags]

Reads the logs of many weeks as one history, in the order of their dates, and
says whether the kitchen is steady, what changed it (a lot, a cook, a canister,
a supplier), and whether the mix that holds longest moves. Give it one book a
week, a folder of them, or one log with dates. Weeks, days and lots are taken
from columns (date, week, butter lot, supplier, cook, canister no), else from
the names of sheets and files. It writes NAME-trend beside you: report.html
(open this first), report.pdf, report.xlsx, trend.json (every number),
tidy.csv (a row an observation, for R and spreadsheets), the figures, and
results.json, where all weeks are taken for one.

Four words say what was found: shown, suggested, not shown, not tested.

  --out DIR, --write LIST, --only TEXT, --kitchen FILE, --hold MIN,
  --drained PERCENT, --drained-at MIN, --chance P, --batch G, --scale-step G,
  --try FORMULA, --trade-signs on|off, --paper a4|letter, --seed N, --ounces, --open,
  --quiet            as for report; see foamfield help report

For example:

  foamfield trend books/
`

const checkUsage = `foamfield check LOG... [flags]

Reads one or several logs and says what it understood: which row is the header,
what each column was read as, which trials count and which were set aside and
why, which ingredient values were used and whose they are, and what to mend in
the log. Several files or a folder get a line each. Writes no file, unless a
marked copy is asked for; your log is never changed.

  --only TEXT          only trials whose dish, sheet or file name contains TEXT
  --kitchen FILE       a workbook with your Targets, Ingredients, Columns, Method, Try, Plan
  --marked-copy FILE   also write a copy of the log, an .xlsx, in which every cell
                       with a problem is coloured and says what was read and what
                       to do, and every header what it was read as. One log at a
                       time, up to 200000 cells; a FILE that exists is left alone
  --json               print the same for programs, by the keys of results.json

For example:

  foamfield check week.xlsx --marked-copy week-marked.xlsx
`

const sheetUsage = `foamfield sheet NEW.xlsx [--answers FILE.csv]

Writes a blank log to fill in, and never over a file that exists. It has

  Log                  one row a trial, with lists to choose from, checks of what
                       is typed, and a comment on every header: what ends hold,
                       when drainage is read
  How to fill this in  the same in words, an example, and what keeps you safe
  Targets              what you call a success; empty ones keep the usual values
  Ingredients          what the program may not know of yours
  Columns              what a header of yours means
  Method               how you make and test a foam
  Try                  formulas of yours to be judged
  Plan                 what a plan of trials is to be like (foamfield plan)

The headers are the program's own words; type your ingredients over the examples.

  --criteria         write a teacher's criteria instead: points, rules, class list
  --for CRITERIA     write the log of a class that has these criteria: with columns
                     for what students work out, and a sheet for the conclusion
  --answers FILE.csv   write a kitchen workbook instead: Targets, Ingredients and
                       Columns with these rows typed in, for --kitchen. Each line
                       of FILE is the name of the sheet, then the cells of a row:
                       Ingredients,White flakes A,emulsifier,3.8

For example:

  foamfield sheet trials.xlsx
`

const gradeUsage = `foamfield grade HANDINS [flags]

Checks a class: a folder with a file a student, a file with a sheet a student or
a column that names the student. Each mistake is found at its cell, with what was
typed, what it should be and how it came about. What is not certain is a question
for the student and costs nothing. Points are taken off only by your own criteria
workbook; without one there are findings and no mark. Luck costs nobody a point.

Writes, into HANDINS-grades/ beside you:

  class.xlsx    a row a student, a column a criterion: the points proposed, and
                yours, which win; the evidence, what to ask, rows alike between
                students, and what could not be read
  marked/       a copy of each hand-in with its findings at the cells; formulas
                stay
  students/     a page each to print or mail; students.pdf has them all
  class.html    the class as a whole, without names
  grade.json    everything, for programs

  --criteria FILE   your criteria, rules and class list: write a blank one with
                    foamfield sheet --criteria NEW.xlsx
  --out DIR         the folder to write
  --again           grade anew: what you typed in class.xlsx is kept, and what
                    changed is shown
  --anonymous       codes for names everywhere, in file names too
  --paper a4|letter pages of the PDF; a4 unless set
  --quiet           print nothing but errors

For example:

  foamfield grade handins --criteria criteria.xlsx
`

const planUsage = `foamfield plan NEW.xlsx --of NAMES [flags]
foamfield plan NEW.xlsx --after LOG... [flags]

Lays out trials and writes them as a log to fill in, never over a file that exists.
Before any log: mixes over the ranges, in grams of your ingredients, without the
richest third and the quarter of least emulsifier, where foams seldom work. Each day
has a control without emulsifier, and each day after the first a repeat. The first day
is shorter and has thin mixes only; the thicker ones come later. It says which trials
to leave out once one clogs, what the trials will and will not tell, and what they
take. After logs: the next trials as their report has them, to go on with the log; with
--trials N, N trials to make before any of them is looked at: those clog more seldom,
so they may be other mixes.

  --of NAMES            what you use: "clarified butter, cider, GMS, sucrose ester 15";
                        unless set, what the Ingredients sheet of --kitchen has
  --fat RANGE           percent of the mix; 30-60 unless set, as far as these reach
  --emulsifier RANGE    percent of the mix; 0.5-5 unless set
  --hlb RANGE           blend HLB; 5-13 unless set, as far as these reach
  --trials N            12 unless set, or 6 a day; after logs as the report has
  --days N|NAMES        3, or "Mon, Tue, Thu"; unless set one for 6 trials; a day
                        holds 12 at most. After logs "Thu, Fri"; unless set the day
                        after the last that is counted
  --cooks NAMES         one a day, by turns; after logs of one cook that one unless set
  --batch G             grams of a trial; unless set grams are for 100 g of mix, and
                        batch, fill and chargers go by your canister's marking
  --canister TEXT       as marked, for the log
  --chargers TEXT       as you use them, for the log
  --scale-step G        what your scale reads to; 0.1 unless set
  --stock AMOUNTS       what is at hand: "butter 2kg, GMS 40"; says if it is too little
  --layout NAME         cover, scattered, corners, sharp or even; cover unless set, as
                        it did best on simulated kitchens
  --seed N              the same seed gives the same plan
  --kitchen FILE        a workbook with your Ingredients, and a Plan sheet that sets any
                        of these: Setting | Value, such as Fat % | 35 to 55
  --after LOG...        the logs to go on from; then --hold, --drained, --drained-at,
                        --chance, --only and --kitchen are as in report
  --json FILE           the plan for programs too
  --quiet               print nothing but errors

For example:

  foamfield plan week1.xlsx --of "clarified butter, cider, GMS, sucrose ester 15" --batch 300
  foamfield plan week2.xlsx --after week1.xlsx --trials 8
`

const blendUsage = `foamfield blend MIX [flags]
foamfield blend --of NAMES --emulsifier PERCENT --hlb HLB [flags]
foamfield blend MIX --replace NAMES --with NAMES [flags]

What emulsifiers come to, and back. A MIX is names with grams (or percents of the
mix, or parts): percent of the mix, of the fat part and of the water part, the
blend HLB with its range, what your scale does to them, how to weigh what is too
little for it, and use limits on file.

  --of NAMES            emulsifiers at hand, two or more: finds their grams. With
                        fats and a water part among them, and --fat, all grams
  --emulsifier PERCENT  of the whole mix
  --hlb HLB             the blend HLB wanted; out of reach is refused with the range
  --fat PERCENT         of the whole mix
  --replace NAMES       emulsifiers of the mix to do without ...
  --with NAMES          ... and what is to stand in for them: what matches, what
                        does not, and trials to find out
  --batch G             grams of the whole mix, where it is not all named
  --scale-step G        what your scale reads to; 0.1 unless set
  --kitchen FILE        a workbook with your Ingredients sheet

For example:

  foamfield blend "butter 120, cider 174, GMS 4.2, sucrose ester 15: 1.8"
  foamfield blend --of "GMS, sucrose ester 15" --hlb 8 --emulsifier 2 --batch 300
  foamfield blend "GMS 4.2, sucrose ester 15: 1.8" --batch 300 --replace GMS --with "sorbitan monostearate"
`

// help prints a command's usage, or the program's.
func help(c *call, args []string) error {
	text := usage
	if len(args) > 0 {
		switch args[0] {
		case "report":
			text = reportUsage
		case "trend":
			text = trendUsage
		case "check":
			text = checkUsage
		case "sheet":
			text = sheetUsage
		case "plan":
			text = planUsage
		case "blend":
			text = blendUsage
		case "grade":
			text = gradeUsage
		case "help", "version":
		default:
			return wrongCall{noCommand(args[0]), ""}
		}
	}
	_, err := fmt.Fprint(c.stdout, toType(text))
	return err
}

func noCommand(name string) string {
	return fmt.Sprintf("there is no command %s; the commands are report, trend, check, sheet, plan, blend, grade, version and help", quoted(name))
}
