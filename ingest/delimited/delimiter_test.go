package delimited

import "testing"

func TestFindDelimiter(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       byte
	}{
		{"commas", "id,fat,hlb\n1,30,8\n", ','},
		{"semicolons with decimal commas", "id;fat;hlb\n1;30,5;8,2\n2;31,5;8,2\n", ';'},
		{"decimal commas in each column", "a;b;c\n1,5;2,3;4,1\n1,5;2,3;4,1\n1,5;2,3;4,1\n", ';'},
		{"decimal commas without header", "1,5;2,3;4,1\n1,5;2,3;4,1\n", ';'},
		{"one decimal column and ragged rows", "id;fat;hold;note\n1;30,5\n2;31,5;20;ok\n3;32,5\n4;30,1;;\n", ';'},
		{"tabs with sentences", "id\tnote\n1\tstiff, sweet, cold\n2\tfine, really\n", '\t'},
		{"bars", "id|fat|note\n1|30|good; cold\n", '|'},
		{"semicolons in each note", "id,fat,hlb,note\n1,30,8,good; cold\n2,31,8,good; warm\n3,32,8,bad; hot\n", ','},
		{"title with a comma", "Foam trials, week twelve\n\nid;fat;hlb;hold\n1;30;8;20\n", ';'},
		{"title with padding", "Foam trials;;;\n;;;\nid;fat;hlb;hold\n1;30,5;8;20\n", ';'},
		{"commas in quotes", "\"a,b\";\"c,d\"\n\"1,2\";\"3,4\"\n", ';'},
		{"semicolons in the lines above, the last comma left out", "Aim: a foam; stable\nMethod: warm; blend; chill\nSafety: goggles; gloves\n\nno,date_1,fat_g,water_g,gms_g,hold,note\n1,3.4.,100,200,3,12\n2,3.4.,110,190,3,14\n3,4.4.,120,180,3,15,best\n4,4.4.,130,170,3,9\n", ','},
		{"one column of decimals", "minutes\n12,5\n13,5\n", noDelimiter},
		{"two columns of whole numbers", "30,12\n31,15\n", ','},
		{"one column", "minutes\n12\n", noDelimiter},
		{"thousands in quotes", "name,g\ncream,\"1,200\"\nmilk,300\n", ','},
	} {
		if got := findDelimiter(c.text); got != c.want {
			t.Errorf("%s: found %q, want %q", c.name, got, c.want)
		}
	}
}
