package sheet

import "fmt"

// Refusal is the one kind of error of Open: a file that cannot be read, what
// it is, and what to do instead.
type Refusal struct{ File, Reason, Cure string }

func (r *Refusal) Error() string {
	return fmt.Sprintf("%s %s: %s.", r.File, r.Reason, r.Cure)
}

// limits bound what a file may ask of the machine.
type limits struct {
	fileBytes     int64
	unzippedBytes int64
	rows          int
	cols          int // cells beyond are not kept, and said so
	cells         int // in the whole file
}

var standardLimits = limits{
	fileBytes:     100 << 20,
	unzippedBytes: 512 << 20,
	rows:          1 << 20,
	cols:          256,
	cells:         4_000_000,
}

// megabytes writes a byte count the way a file manager shows it.
func megabytes(n int64) string { return fmt.Sprintf("%d MB", n>>20) }

func tooBig(l limits) *Refusal {
	return &Refusal{
		Reason: "is larger than " + megabytes(l.fileBytes),
		Cure:   "save the sheets with the log in a file of their own, without pictures, and read that",
	}
}

func unpacksTooBig(l limits) *Refusal {
	return &Refusal{
		Reason: "unpacks to more than " + megabytes(l.unzippedBytes),
		Cure:   "copy the log's cells into a new workbook, save it as .xlsx and read that",
	}
}

func tooManyRows(l limits) *Refusal {
	return &Refusal{
		Reason: fmt.Sprintf("has more than %d rows", l.rows),
		Cure:   "split it into files of fewer rows, each with the header",
	}
}

func tooManyCells(l limits) *Refusal {
	return &Refusal{
		Reason: fmt.Sprintf("has more than %d filled cells", l.cells),
		Cure:   "save the sheets with the log in a file of their own and read that",
	}
}

var (
	damagedZip = Refusal{
		Reason: "is damaged or was only partly copied",
		Cure:   "open it in a spreadsheet program, save it again as .xlsx, or copy it anew from where it came",
	}
	damagedWorkbook = Refusal{
		Reason: "is a workbook whose list of sheets cannot be read",
		Cure:   "open it in a spreadsheet program, let it repair the file, and save it again as .xlsx",
	}
)
