// Kitchens writes the demo logs and prints what the simulated kitchens are like.
//
//	kitchens demo [FOLDER]   write week.xlsx and five-columns.csv (testdata/demo)
//	kitchens truths          how the two families of truths are spread
//	kitchens table [N]       what the starts truly do, N kitchens a row (40)
//	kitchens trend [N]       what is found in N histories of four weeks a row (100), and what is not there
//	kitchens follow [N]      what making our next trials gives, N kitchens a family (40)
//	kitchens plan [N]        what weeks laid out by plan give, N kitchens a family (40)
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

const usage = `kitchens demo [FOLDER]   write the demo logs (into testdata/demo unless named)
kitchens truths          print how the two families of simulated kitchens are spread
kitchens table [N]       log, read and analyse N kitchens a row (40): what the starts truly do
kitchens trend [N [ROW [FIRST]]]
                         simulate N histories of four weeks a row (100), or for rows of that name, or others than
                         the table's, from that number on: what is found, and what is not there
kitchens follow [N]      make the next trials of N kitchens a family (40), beside scattered ones
kitchens plan [N [ROW]]  make weeks laid out by plan in N kitchens a family (40), beside others, or for rows
                         of that name
`

var errUsage = errors.New("kitchens: say demo, truths, table, trend, follow or plan")

// run does one command and gives the exit code: 0 done, 1 failed, 2 wrong call.
func run(args []string, out, errOut io.Writer) int {
	err := command(args, out)
	switch {
	case errors.Is(err, errUsage):
		fmt.Fprint(errOut, usage)
		return 2
	case err != nil:
		fmt.Fprintln(errOut, err)
		return 1
	}
	return 0
}

func command(args []string, out io.Writer) error {
	switch {
	case len(args) == 1 && args[0] == "demo":
		return demo("testdata/demo", out)
	case len(args) == 1 && args[0] == "truths":
		return truths(out)
	case len(args) == 1 && args[0] == "table":
		return table(out, tableSeed, 40, []int{24})
	case len(args) == 2 && args[0] == "table":
		n, err := strconv.Atoi(args[1])
		if err != nil || n < 1 {
			return errUsage
		}
		return table(out, tableSeed, n, []int{12, 24, 40, 80})
	case len(args) == 1 && args[0] == "trend":
		return trends(out, tableSeed, 100)
	case len(args) >= 2 && len(args) <= 4 && args[0] == "trend":
		n, err := strconv.Atoi(args[1])
		if err != nil || n < 1 {
			return errUsage
		}
		first := uint64(tableSeed)
		if len(args) == 4 {
			if first, err = strconv.ParseUint(args[3], 10, 32); err != nil {
				return errUsage
			}
		}
		return trends(out, first, n, args[2:min(3, len(args))]...)
	case len(args) == 1 && args[0] == "follow":
		return follow(out, tableSeed, 40)
	case len(args) == 2 && args[0] == "follow":
		n, err := strconv.Atoi(args[1])
		if err != nil || n < 1 {
			return errUsage
		}
		return follow(out, tableSeed, n)
	case len(args) == 1 && args[0] == "plan":
		return plans(out, planSeed, 40)
	case (len(args) == 2 || len(args) == 3) && args[0] == "plan":
		n, err := strconv.Atoi(args[1])
		if err != nil || n < 1 {
			return errUsage
		}
		return plans(out, planSeed, n, args[2:]...)
	case len(args) == 2 && args[0] == "demo":
		return demo(args[1], out)
	}
	return errUsage
}
