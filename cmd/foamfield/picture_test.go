package main

import (
	"bytes"
	"image/png"
	"testing"

	"foamfield/analysis"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/plots"
)

// A picture is sharp in print and on a slide: at least 1 600 dots wide.
func TestPicturesAreWide(t *testing.T) {
	thorough.NotShort(t, "analyses a log")
	log, err := ingest.Read([]string{"../../testdata/demo/week.xlsx"}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(log, analysis.Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	b, err := plots.All(r)[0].PNG(pictureDPI)
	if err != nil {
		t.Fatal(err)
	}
	im, err := png.DecodeConfig(bytes.NewReader(b))
	if err != nil || im.Width < 1600 {
		t.Errorf("%d dots wide (%v)", im.Width, err)
	}
}
