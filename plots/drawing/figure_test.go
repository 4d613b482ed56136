package drawing

import (
	"strings"
	"testing"

	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
)

func TestDrawTurnsPanicIntoError(t *testing.T) {
	f := Figure{Name: "broken", Width: 100, Height: 100, Paint: func(draw.Canvas, *Names) { panic("no") }}
	if err := f.Draw(draw.NewCanvas(new(recorder.Canvas), 100, 100)); err == nil || !strings.Contains(err.Error(), "broken") {
		t.Errorf("error %v", err)
	}
	if err := (Figure{}).Draw(draw.Canvas{}); err == nil {
		t.Error("an empty figure draws")
	}
}
