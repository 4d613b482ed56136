package main

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"

	"foamfield/analysis"
	"foamfield/ingest"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/trial"
	"foamfield/reports"
	"foamfield/reports/cook"
	"foamfield/reports/document"
	"foamfield/reports/pdf"
	"foamfield/reports/text"
)

// usualSeed is the seed of every run that names none, so that runs agree.
const usualSeed = 1

// reporting is a report as it was called for.
type reporting struct {
	logs  []string
	out   string // "" = NAME-report in the current folder
	read  ingest.Options
	study analysis.Settings
	write map[string]bool
	paper pdf.Paper
	quiet bool
	// beside puts a report without a folder of its own beside its log; open shows it.
	beside, open bool
}

// report reads a log, analyses it and writes the report.
func report(c *call, args []string) error {
	r, err := parseReport(args)
	if errors.Is(err, flag.ErrHelp) {
		return help(c, []string{"report"})
	}
	if err != nil {
		return err
	}
	return r.run(c)
}

// run makes the report.
func (r *reporting) run(c *call) error {
	show := watch(c.stderr, r.quiet)
	defer show.done()

	show.step("reading " + text.OneLine(strings.Join(r.logs, ", ")))
	log, err := ingest.Read(r.logs, r.read)
	if err != nil {
		return err
	}
	target := r.out
	if target == "" {
		target = reportName(r.logs, log) + "-report"
		if r.beside {
			target = filepath.Join(beside(r.logs[0]), target)
		}
	}
	if parts := log.ByDish(); parts != nil {
		return r.eachDish(c, show, target, parts)
	}
	return r.one(c, show, target, log)
}

// eachDish reports a log of several dishes into a folder each.
func (r *reporting) eachDish(c *call, show *progress, target string, parts []trial.Part) error {
	folders := dishFolders(parts)
	for i, p := range parts {
		if !r.quiet {
			show.done()
			by := ""
			if p.Students > 0 {
				by = ", of " + count(p.Students, "student")
			}
			if _, err := fmt.Fprintf(c.stdout, "\n%s%s\n", dishName(p), by); err != nil {
				return err
			}
		}
		if err := r.one(c, show, target+"-"+folders[i], p.Log); err != nil {
			return err
		}
	}
	return nil
}

// longLog is the trials from which memory is short enough to be collected sooner.
const longLog = 10000

// longSpare is how much may be thrown away before it is collected then, in percent.
const longSpare = 80

// one analyses a log and writes its report.
func (r *reporting) one(c *call, show *progress, target string, log *trial.Log) error {
	dir, err := openFolder(target, r.logs)
	if err != nil {
		return err
	}
	show.step("fitting and searching")
	if len(log.Trials) > longLog {
		defer debug.SetGCPercent(debug.SetGCPercent(longSpare))
	}
	results, err := analysis.Run(log, r.study)
	if err != nil {
		return fmt.Errorf("the analysis of this log did not come to an end (%w): run foamfield check on it and mend what it names", err)
	}
	show.step("drawing and laying out")
	said := reports.Short(results)
	if laidOut(r.write) {
		said = reports.Build(results)
	}
	if r.study.Portions > 0 {
		said.Brief = slices.Insert(said.Brief, min(1, len(said.Brief)), cook.Unpriced(results)...)
	}
	files, err := render(c.ctx, log, results, said, r.write, r.paper)
	if err != nil {
		return err
	}
	return r.place(c, show, dir, target, files, said)
}

// place writes the files, and says and shows what they hold.
func (r *reporting) place(c *call, show *progress, dir *folder, target string, files []file, said document.Document) error {
	show.step("writing " + text.OneLine(target))
	placed, err := dir.write(c, files)
	if err != nil {
		return err
	}
	show.done()
	if !r.quiet {
		if _, err := fmt.Fprintln(c.stdout, text.Summary(said)); err != nil {
			return err
		}
		if err := placed.print(c.stdout); err != nil {
			return err
		}
	}
	if page := filepath.Join(placed.folder, "report.html"); r.open && slices.Contains(placed.files, "report.html") {
		return openPage(c, page)
	}
	return nil
}

func parseReport(args []string) (*reporting, error) { return parseReportAs("report", args) }

// parseReportAs reads the flags of report for a command that studies a log as it does.
func parseReportAs(command string, args []string) (*reporting, error) {
	f := newFlags(command, "out", "kitchen", "hold", "drained", "drained-at", "chance", "batch", "scale-step",
		"portions", "canister", "only", "write", "seed", "paper", "trade-signs", "try")
	quiet := f.set.Bool("quiet", false, "")
	ounces := f.set.Bool("ounces", false, "")
	open := f.set.Bool("open", false, "")
	logs, err := f.parse(args)
	if err != nil {
		return nil, err
	}
	r := &reporting{
		logs: logs, quiet: *quiet, open: *open,
		out: f.text("out", "name the folder to write, for example --out tuesday"),
		read: ingest.Options{
			Kitchen: f.text("kitchen", "name the workbook with the kitchen sheets, for example --kitchen kitchen.xlsx"),
			Only:    f.text("only", "type part of the name of the dish, the sheet or the file"),
		},
		study: analysis.Settings{
			Hold:      f.number("hold", "min", math.Inf(1), "20"),
			Drained:   f.number("drained", "%", 100, "10"),
			DrainedAt: f.number("drained-at", "min", math.Inf(1), "20"),
			Chance:    f.chance("chance"),
			ScaleStep: f.number("scale-step", "g", math.Inf(1), "0.1"),
			Ounces:    *ounces,
			Seed:      f.seed("seed", usualSeed),
			Version:   version(),
		},
		write: f.some("write", outputs...),
	}
	r.service(f)
	if n := f.number("portions", "", 10_000, "8"); n != nil {
		if *n != math.Trunc(*n) {
			f.refuse("portions", "type a whole number, for example --portions 8")
		}
		r.study.Portions = int(*n)
	}
	if f.oneOf("paper", "a4", "letter") == "letter" {
		r.paper = pdf.Letter
	}
	if typed := f.text("try", `type a formula, for example --try "fat 52, emulsifier 2.4, hlb 8"`); typed != "" {
		tries, err := kitchen.ParseTries(typed)
		if err != nil {
			f.refuse("try", err.Error())
		}
		r.study.Tries = tries
	}
	r.study.FreeSigns = f.oneOf("trade-signs", "on", "off") == "off"
	if b, s := r.study.Batch, r.study.ScaleStep; b != nil && s != nil && *s >= *b {
		f.refuse("scale-step", "the step of the scale must be smaller than the batch")
	}
	if f.err != nil {
		return nil, f.err
	}
	if len(logs) == 0 {
		return nil, wrongCall{"no log was named; give a spreadsheet, a folder or a pattern, for example: foamfield " + command + " week.xlsx", command}
	}
	if m := r.study.DrainedAt; m != nil {
		r.read.DrainedAt = *m
	}
	if s := r.study.ScaleStep; s != nil {
		r.read.ScaleStep = *s
	}
	return r, nil
}

// service reads for which canisters the start is made, and how much: one batch, or so many
// of so many grams. A batch for service is not that of the trials.
func (r *reporting) service(f *flags) {
	batch, each, many := f.batch("batch")
	if typed := f.text("canister", `type the canisters you fill, for example --canister "1 L x 2, 0.5 L"`); typed != "" {
		canisters, err := kitchen.ParseCanisters(typed)
		if err != nil {
			f.refuse("canister", err.Error())
		}
		r.study.Service, r.study.ServiceBatch = canisters, batch
		if many > 1 && f.err == nil && many != len(canisters) {
			f.refuse("batch", fmt.Sprintf("that is %d canisters, and --canister names %d: name as many, or give --batch %g for them all", many, len(canisters), *batch))
		}
		if many > 1 {
			for i := range canisters {
				canisters[i].Grams = each
			}
		}
		return
	}
	if many > 1 {
		for range many {
			r.study.Service = append(r.study.Service, trial.Canister{Grams: each})
		}
		return
	}
	r.study.Batch = batch
}

// firstOfStory is the file that all others go on from: the only one that no later plan
// wrote. "" if the files tell no one story.
func firstOfStory(log *trial.Log) (first string) {
	if len(log.Inputs) < 2 {
		return ""
	}
	for _, in := range log.Inputs {
		if slices.ContainsFunc(log.Plans, func(p trial.Planned) bool { return p.File == in.File && p.Number > 1 }) {
			continue
		}
		if first != "" {
			return ""
		}
		first = in.File
	}
	return first
}

// reportName names a report after its log: the folder if one was named, else
// the first file. Weeks that a plan laid out after it belong to its story.
func reportName(logs []string, log *trial.Log) string {
	if len(logs) == 1 {
		if info, err := os.Stat(logs[0]); err == nil && info.IsDir() {
			if full, err := filepath.Abs(logs[0]); err == nil && filepath.Base(full) != string(filepath.Separator) {
				return filepath.Base(full)
			}
			return "logs"
		}
	}
	own := slices.Clone(log.Inputs)
	if first := firstOfStory(log); first != "" {
		own = slices.DeleteFunc(own, func(in trial.Input) bool { return in.File != first })
	}
	name := strings.TrimSuffix(own[0].File, filepath.Ext(own[0].File))
	if more := len(own) - 1; more > 0 {
		name += fmt.Sprintf("-and-%d-more", more)
	}
	return name
}
