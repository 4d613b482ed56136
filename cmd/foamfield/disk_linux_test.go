package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"syscall"
	"testing"

	"foamfield/ingest/thorough"
)

// A disk that fills up, at whatever moment, leaves what was there, and no half report;
// so does one that cannot be written to.
func TestFullDisk(t *testing.T) {
	thorough.Only(t, "makes a dozen reports on a small disk")
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=6m"); err != nil {
		t.Skipf("a small disk cannot be mounted here (%v): a full one is not tried", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(disk, 0); err != nil {
			t.Error(err)
		}
	})
	log, out, fill := filepath.Join("..", "..", "testdata", "demo", "week.xlsx"), filepath.Join(disk, "r"), filepath.Join(disk, "fill")
	refused := func(folder, cause string, more ...string) {
		t.Helper()
		before := everything(t, disk)
		var stdout, stderr bytes.Buffer
		code := run(append([]string{"report", log, "--out", folder}, more...), &stdout, &stderr)
		if code != exitBadInput || strings.Count(stderr.String(), "\n") != 1 || !strings.Contains(stderr.String(), cause) || stdout.Len() > 0 {
			t.Errorf("exit code %d, %q, %q", code, stdout.String(), stderr.String())
		}
		if after := everything(t, disk); !reflect.DeepEqual(before, after) {
			t.Errorf("%s: there were %d files, and are %d, or others", cause, len(before), len(after))
		}
	}
	var stderr bytes.Buffer
	if code := run([]string{"report", log, "--out", out, "--quiet"}, &stderr, &stderr); code != exitDone {
		t.Fatal(stderr.String())
	}
	whole := 0
	for _, content := range everything(t, disk) {
		whole += len(content)
	}
	// Room for less than the new report, and for it but not for the old one beside it.
	for _, room := range []int{whole / 2, whole * 9 / 10, whole + 30_000} {
		var s syscall.Statfs_t
		if err := syscall.Statfs(disk, &s); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(fill, make([]byte, int(s.Bavail)*int(s.Bsize)-room), 0o666); err != nil {
			t.Fatal(err)
		}
		refused(out, "make room on that disk", "--batch", "500")
		if room < whole {
			refused(filepath.Join(disk, "a", "new", "one"), "make room on that disk")
		}
		if err := os.Remove(fill); err != nil {
			t.Fatal(err)
		}
	}
	if err := syscall.Mount("", disk, "", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
		t.Fatal(err)
	}
	refused(out, "read-only file system")
	refused(filepath.Join(disk, "new"), "read-only file system")
	for _, args := range [][]string{{"sheet", filepath.Join(disk, "new.xlsx")}, {"check", log, "--marked-copy", filepath.Join(disk, "new.xlsx")}} {
		stderr.Reset()
		if code := run(args, &bytes.Buffer{}, &stderr); code != exitBadInput || !strings.Contains(stderr.String(), "(read-only file system): choose another place\n") {
			t.Errorf("%s: exit code %d, %q", args[0], code, stderr.String())
		}
	}
}

// everything is the content of every file below a folder.
func everything(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	if err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			out[path] = ""
			return err
		}
		b, err := os.ReadFile(path)
		out[path] = string(b)
		return err
	}); err != nil {
		t.Fatal(err)
	}
	return out
}
