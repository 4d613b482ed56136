package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// licences are the texts of the licences of everything that the program holds, ours
// first, then Go's, then each module's from the module cache.
func licences(root string) (string, error) {
	goRoot, err := goEnv("GOROOT")
	if err != nil {
		return "", err
	}
	modules, err := linked(root)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for _, m := range append([]module{{Path: "foamfield", Dir: root}, {Path: "Go", Dir: goRoot}}, modules...) {
		texts, err := texts(m.Dir)
		if err != nil {
			return "", err
		}
		if len(texts) == 0 {
			return "", fmt.Errorf("%s %s has no licence: it cannot be handed on", m.Path, m.Version)
		}
		fmt.Fprintf(&b, "%s\n\n%s\n\n", strings.TrimSpace(strings.Repeat("=", 72)+"\n"+m.Path+" "+m.Version), strings.Join(texts, "\n\n"))
	}
	return b.String(), nil
}

type module struct {
	Path, Version, Dir string
	Main               bool
}

// linked are the modules that the command is made of on any of its platforms.
func linked(root string) ([]module, error) {
	found := map[string]module{}
	for _, target := range []string{"js/wasm", "linux/amd64", "windows/amd64", "darwin/arm64"} {
		c := exec.Command("go", "list", "-deps", "-f", `{{with .Module}}{"Path":{{printf "%q" .Path}},"Version":{{printf "%q" .Version}},"Dir":{{printf "%q" .Dir}},"Main":{{.Main}}}{{end}}`, "./cmd/foamfield")
		system, processor, _ := strings.Cut(target, "/")
		c.Dir, c.Env = root, append(os.Environ(), "GOOS="+system, "GOARCH="+processor)
		out, err := c.Output()
		if err != nil {
			return nil, fmt.Errorf("go list: %w", err)
		}
		for line := range strings.Lines(string(out)) {
			var m module
			if strings.TrimSpace(line) == "" {
				continue
			}
			if err := json.Unmarshal([]byte(line), &m); err != nil {
				return nil, err
			}
			if !m.Main {
				found[m.Path] = m
			}
		}
	}
	var all []module
	for _, m := range found {
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.Path, b.Path) })
	return all, nil
}

// texts are the licences and notices at the top of a module.
func texts(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var out []string
	for _, e := range entries {
		name := strings.ToUpper(e.Name())
		if e.IsDir() || !strings.HasPrefix(name, "LICEN") && !strings.HasPrefix(name, "COPYING") && !strings.HasPrefix(name, "NOTICE") && !strings.HasPrefix(name, "PATENTS") {
			continue
		}
		content, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return nil, err
		}
		out = append(out, strings.TrimSpace(string(content)))
	}
	return out, nil
}
