package main

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/trial"
)

// task is what several students made of one dish.
type task struct {
	dish     string
	students int
	log      *trial.Log // with its trials only
}

// tasksOf parts the log of a class by dish: one student's mix of another dish is no
// start for the class. It is nil for fewer than three students or two dishes: then the
// log is a kitchen's, or one.
func tasksOf(log *trial.Log) (out []task) {
	students := map[string]bool{}
	by := map[string][]int{}
	var order []string
	for i := range log.Trials {
		t := &log.Trials[i]
		if t.Student != "" {
			students[t.Student] = true
		}
		d := t.Dish()
		if by[d] == nil {
			order = append(order, d)
		}
		by[d] = append(by[d], i)
	}
	if len(students) < 3 || len(order) < 2 {
		return nil
	}
	for _, d := range order {
		part := *log
		part.Trials = nil
		who := map[string]bool{}
		for _, i := range by[d] {
			part.Trials = append(part.Trials, log.Trials[i])
			if s := log.Trials[i].Student; s != "" {
				who[s] = true
			}
		}
		out = append(out, task{d, len(who), &part})
	}
	slices.SortStableFunc(out, func(a, b task) int { return len(b.log.Trials) - len(a.log.Trials) })
	return out
}

// name is what a task is called.
func (t task) name() string {
	if t.dish == "" {
		return "dish not said"
	}
	return t.dish
}

// slug is a task's name as a folder may be called.
func (t task) slug() string {
	return strings.Trim(strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 127:
			return r
		}
		return '-'
	}, strings.ReplaceAll(strings.ToLower(t.name()), ", ", "-")), "-")
}

// tasks says what a class made, dish by dish.
func (a *account) tasks() {
	var lines []string
	for _, t := range tasksOf(a.log) {
		used := 0
		for i := range t.log.Trials {
			if t.log.Trials[i].Used() {
				used++
			}
		}
		lines = append(lines, fmt.Sprintf("%s: %s, %s, %d used", t.name(), count(t.students, "student"), count(len(t.log.Trials), "trial"), used))
	}
	a.list("By dish: what one shows is no start for another", lines)
}
