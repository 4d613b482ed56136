// Command page writes foamfield.html: the whole tool as one file for a browser. It
// builds the same command for the browser, packs it into the page, and beside it puts
// what gives it files in memory (disk.js), runs it off the page (worker.js) and talks to
// people (page.js).
//
//	go run ./cmd/page [OUT.html [LICENCES.txt]]
package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"errors"
	"fmt"
	"html/template"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"foamfield/plots/drawing"
	"foamfield/reports/html"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "page: "+err.Error())
		os.Exit(1)
	}
}

func run(args []string) error {
	out, licences := "foamfield.html", ""
	switch len(args) {
	case 2:
		licences = args[1]
		fallthrough
	case 1:
		out = args[0]
	case 0:
	default:
		return errors.New("type: go run ./cmd/page [OUT.html [LICENCES.txt]]")
	}
	p, err := build()
	if err != nil {
		return err
	}
	content, err := p.write()
	if err != nil {
		return err
	}
	if licences != "" {
		if err := os.WriteFile(licences, []byte(p.Licences), 0o666); err != nil {
			return err
		}
	}
	if err := os.WriteFile(out, content, 0o666); err != nil {
		return err
	}
	fmt.Printf("Written: %s, %.1f MB\n", out, float64(len(content))/1e6)
	return nil
}

var (
	//go:embed page.html
	pageSource string
	//go:embed page.css
	style string
	//go:embed page.js
	pageScript string
	//go:embed disk.js
	disk string
	//go:embed worker.js
	worker string

	shape = template.Must(template.New("page").Parse(pageSource))
)

// page is what the file is made of.
type page struct {
	Policy, Version, Licences string
	Style                     template.CSS
	Packed, Worker, Demo      template.HTML // not run: their elements hold text
	Script                    template.JS
}

// build makes everything that goes into the page.
func build() (*page, error) {
	root, err := goEnv("GOMOD")
	if err != nil {
		return nil, err
	}
	root = filepath.Dir(root)
	binary, err := compile(root)
	if err != nil {
		return nil, err
	}
	packed, err := pack(binary)
	if err != nil {
		return nil, err
	}
	runtime, err := goRuntime()
	if err != nil {
		return nil, err
	}
	demo, err := os.ReadFile(filepath.Join(root, "testdata", "demo", "week.xlsx"))
	if err != nil {
		return nil, err
	}
	licences, err := licences(root)
	if err != nil {
		return nil, err
	}
	return &page{
		Policy:   policy(pageScript),
		Version:  version(binary),
		Licences: licences,
		Style:    template.CSS(colours() + style),
		Packed:   template.HTML(packed),
		Worker:   template.HTML(disk + runtime + worker),
		Demo:     template.HTML(base64.StdEncoding.EncodeToString(demo)),
		Script:   template.JS(pageScript),
	}, nil
}

func (p *page) write() ([]byte, error) {
	for _, s := range []string{string(p.Worker), string(p.Script)} {
		if strings.Contains(strings.ToLower(s), "</script") || strings.Contains(s, "<!--") {
			return nil, errors.New("a script would end its own element")
		}
	}
	var b bytes.Buffer
	err := shape.Execute(&b, p)
	return b.Bytes(), err
}

// policy lets the page run this one script, the reports' own, the program and its
// worker, show what it made itself, and reach nothing else.
func policy(script string) string {
	sum := sha256.Sum256([]byte(script))
	return strings.Join([]string{
		"default-src 'none'",
		"script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "' '" + html.ScriptHash + "' 'wasm-unsafe-eval'",
		"worker-src blob:", "style-src 'unsafe-inline'", "img-src data: blob:", "connect-src 'none'", "base-uri 'none'", "form-action 'none'",
	}, "; ")
}

// compile builds the command for the browser.
func compile(root string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "foamfield-page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "foamfield.wasm")
	c := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid=", "-o", file, "./cmd/foamfield")
	c.Dir, c.Env = root, append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := c.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the program could not be built for the browser (%w):\n%s", err, said)
	}
	return os.ReadFile(file)
}

// pack zips and spells bytes as text.
func pack(binary []byte) (string, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err := z.Write(binary); err != nil {
		return "", err
	}
	if err := z.Close(); err != nil {
		return "", err
	}
	return base64.StdEncoding.EncodeToString(b.Bytes()), nil
}

// goRuntime is what runs a program of Go's in a browser, from the tool chain that
// built it: the two belong together.
func goRuntime() (string, error) {
	root, err := goEnv("GOROOT")
	if err != nil {
		return "", err
	}
	content, err := os.ReadFile(filepath.Join(root, "lib", "wasm", "wasm_exec.js"))
	return string(content), err
}

func goEnv(name string) (string, error) {
	out, err := exec.Command("go", "env", name).Output()
	if err != nil {
		return "", fmt.Errorf("go env %s: %w", name, err)
	}
	value := strings.TrimSpace(string(out))
	if value == "" || value == os.DevNull {
		return "", fmt.Errorf("go env %s says nothing: call this inside the project", name)
	}
	return value, nil
}

// version names the page's build by its bytes.
func version(binary []byte) string {
	sum := sha256.Sum256(binary)
	return fmt.Sprintf("build %x", sum[:4])
}

// colours are those of the figures, as in the reports.
func colours() string {
	vars := func(paper, ink, quiet, faint, accent, pale, warn string) string {
		return fmt.Sprintf("--paper:%s;--ink:%s;--quiet:%s;--faint:%s;--accent:%s;--pale:%s;--warn:%s", paper, ink, quiet, faint, accent, pale, warn)
	}
	return ":root{color-scheme:light dark;--sans:" + drawing.FontFamily + ";" + vars(drawing.Paper, drawing.Ink, drawing.Quiet, drawing.Faint, drawing.Accent, drawing.Pale, drawing.CloggedColour) + "}\n" +
		"@media screen and (prefers-color-scheme:dark){:root{" + vars(drawing.Ink, drawing.Pale, drawing.Faint, drawing.Quiet, drawing.Bands[4], "#273234", drawing.Faint) + "}}\n"
}
