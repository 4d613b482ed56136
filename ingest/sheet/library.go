package sheet

import "github.com/xuri/excelize/v2"

// WithLibrary opens a workbook by the library and lends it to use. It reports whether all of that
// went well: the library meets files it did not foresee.
func WithLibrary(path string, use func(*excelize.File)) (ok bool) {
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	file, err := excelize.OpenFile(path, excelize.Options{UnzipXMLSizeLimit: 16 << 20})
	if err != nil {
		return false
	}
	defer file.Close()
	use(file)
	return true
}
