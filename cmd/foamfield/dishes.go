package main

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"foamfield/ingest/trial"
)

// dishName is what a part of a log is called.
func dishName(p trial.Part) string {
	if p.Dish == "" {
		return "dish not said"
	}
	return p.Dish
}

// dishFolders are the dishes' names as folders may be called, each its own.
func dishFolders(parts []trial.Part) (folders []string) {
	for _, p := range parts {
		name := strings.Trim(strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) || unicode.IsDigit(r) {
				return r
			}
			return '-'
		}, strings.ReplaceAll(strings.ToLower(dishName(p)), ", ", "-")), "-")
		folder := name
		for n := 2; folder == "" || slices.Contains(folders, folder); n++ {
			folder = strings.TrimPrefix(fmt.Sprintf("%s-%d", name, n), "-")
		}
		folders = append(folders, folder)
	}
	return folders
}

// oneDish is the refusal of a log of several dishes where only one can be told of.
func oneDish(log *trial.Log) error {
	parts := log.ByDish()
	if parts == nil || parts[0].Students > 0 {
		return nil
	}
	var names []string
	for _, p := range parts {
		names = append(names, dishName(p))
	}
	return fmt.Errorf("the log is of several dishes (%s), and what one shows says nothing of another: name one, for example --only %q", strings.Join(names, ", "), dishName(parts[0]))
}

// dishes says what a log of several holds, dish by dish.
func (a *account) dishes() {
	var lines []string
	for _, p := range a.log.ByDish() {
		used, students := 0, ""
		if p.Students > 0 {
			students = count(p.Students, "student") + ", "
		}
		for i := range p.Trials {
			if p.Trials[i].Used() {
				used++
			}
		}
		lines = append(lines, fmt.Sprintf("%s: %s%s, %d used", dishName(p), students, count(len(p.Trials), "trial"), used))
	}
	a.list("By dish: what one shows is no start for another", lines)
}
