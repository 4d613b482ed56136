package cook

import "testing"

func TestArticle(t *testing.T) {
	for word, want := range map[string]string{"taste": "a", "overrun": "an", "Overall": "an", "": "a", "écart": "a"} {
		if got := article(word); got != want {
			t.Errorf("%q: %s, want %s", word, got, want)
		}
	}
	if got := wanted(0.1).Text + ", " + wanted(0.8).Text; got != "once in 10, 8 times in 10" {
		t.Error(got)
	}
}
