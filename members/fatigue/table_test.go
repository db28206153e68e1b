package fatigue

import (
	"strings"
	"testing"
)

// A row that cannot be is refused with its name and what is wrong with it.
func TestTablesRefuse(t *testing.T) {
	const (
		detailHead = "name,what,stress,category,slope,wall_over,wall_to,size_over,size_exponent,source,from_memory,remark\n"
		strainHead = "name,ultimate,e,sf,b,ef,c,h,n,source,from_memory,remark\n"
	)
	details := strings.Split(strings.TrimSuffix(strings.SplitN(detailHead, ",source", 2)[0], "\n"), ",")
	strain := strings.Split(strings.SplitN(strainHead, ",source", 2)[0], ",")
	for _, tt := range []struct{ row, want string }{
		{"a,b,direct,71,3,,,,,,yes,", "source is empty"},
		{"a,b,direct,71,3,,,,,s,,", "from_memory is empty"},
		{"a,b,direct,71,3,,,,,s,perhaps,", "write yes or no"},
		{"a,b,direct,72,3,,,,,s,no,", "none of the standard's"},
		{"a,b,direct,71,4,,,,,s,no,", "none of the standard's"},
		{"a,b,shear,80,3,,,,,s,no,", "none of the standard's"},
		{"a,b,bending,71,3,,,,,s,no,", "write direct or shear"},
		{"a,b,direct,NaN,3,,,,,s,no,", "no finite number"},
		{"a,,direct,71,3,,,,,s,no,", "what is empty"},
	} {
		_, err := readTable(detailHead+tt.row, details, readDetail)
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasPrefix(err.Error(), "a: ") {
			t.Errorf("%s: error %v, want %q", tt.row, err, tt.want)
		}
	}
	for _, tt := range []struct{ row, want string }{
		{"a,,0,1000,-0.1,1,-0.6,,,s,no,", "not above 0"},
		{"a,,2e5,1000,0.1,1,-0.6,,,s,no,", "not below 0"},
		{"a,,2e5,1000,-0.1,1,-0.6,900,,s,no,", "give both"},
		{"a,,2e5,1000,-0.1,1,-0.6,900,1.5,s,no,", "n below 1"},
	} {
		_, err := readTable(strainHead+tt.row, strain, readStrain)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q", tt.row, err, tt.want)
		}
	}
	for _, text := range []string{"", detailHead, "name\na\n", detailHead + "a,b\n", strainHead + "a\n"} {
		if _, err := readTable(text, details, readDetail); err == nil {
			t.Errorf("%q is taken", text)
		}
	}
}
