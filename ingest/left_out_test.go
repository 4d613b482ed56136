package ingest

import (
	"strings"
	"testing"
)

// TestLeftOutAsWeighed: a note that says what was left out is borne out by a cell of 0, and by no other.
func TestLeftOutAsWeighed(t *testing.T) {
	for note, used := range map[string]bool{
		"control, without emulsifier": true,
		"Kontrolle ohne Emulgator":    true,
		"témoin sans émulsifiant":     true,
		"without GMS":                 true,
		"sin GMS ni polisorbato":      true,
		"control with no emulsifier":  true,
		"no GMS, no PS80":             true,
		"without the butter":          false,
		"no GMS, other cream":         false,
		"ohne Wasser gemischt":        true, // of the foam, not of the mix
	} {
		log := mustRead(t, strings.ReplaceAll("no|butter g|water g|GMS g|PS80 g|held min|notes\n1|140|160|0|0|4|"+note+"\n2|140|157|2|1|12|\n3|141|157|1|1|14|", "|", ";"))
		if got := log.Trials[0].Used(); got != used {
			t.Errorf("%s: used %v; %v", note, got, kinds(log))
		}
	}
	log := mustRead(t, strings.ReplaceAll("no|butter g|water g|GMS g|PS80 g|held min|notes\n1|140|157|2|1|4|control, without GMS\n2|140|157|2|1|12|\n3|141|157|1|1|14|", "|", ";"))
	if log.Trials[0].Used() {
		t.Error("2 g of what was left out are counted")
	}
	log = mustRead(t, strings.ReplaceAll("Control|1: without emulsifier, 140 g of butter\n\nno|butter g|water g|GMS g|PS80 g|held min\n1|140|160|0|0|4\n2|140|157|2|1|12\n3|141|157|1|1|14", "|", ";"))
	if len(log.Trials) != 3 || !log.Trials[0].Used() {
		t.Errorf("a line that tells what the control is without sets it aside: %v", kinds(log))
	}
}

// TestLeftOutByALine: a line on a trial without emulsifier that says something else was left out is heard.
func TestLeftOutByALine(t *testing.T) {
	log := mustRead(t, "1: without the butter\n\nno;butter g;water g;GMS g;PS80 g;held min\n1;140;160;0;0;4\n2;140;157;2;1;12\n3;141;157;1;1;14")
	if log.Trials[0].Used() {
		t.Errorf("140 g of what was left out are counted: %v", kinds(log))
	}
}

// TestNoBlendToSpeakOf: whatever stands for the HLB of a mix without emulsifier is right; of another it is asked.
func TestNoBlendToSpeakOf(t *testing.T) {
	log := mustRead(t, "no;butter g;milk g;GMS g;PS80 g;HLB;held min\n1;130;266;0;0;does not apply;4\n2;130;262;2;1;not worked out;12\n3;131;262;1;1;9.4;14")
	var at []int
	for _, p := range log.Problems {
		if p.At.Col == 6 && p.Kind != "conflict" {
			at = append(at, p.At.Row)
		}
	}
	if len(at) != 1 || at[0] != 3 {
		t.Errorf("asked at rows %v: %v", at, kinds(log))
	}
}
