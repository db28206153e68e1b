package materials

import (
	"slices"
	"strings"
	"unicode"
)

// key is what two spellings of one name share: the letters, digits and other signs
// in lower case, without spaces, hyphens and dashes of any kind, underscores and
// plus signs.
func key(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || unicode.In(r, unicode.Pd) || strings.ContainsRune("\u2212_+", r) {
			return -1 // U+2212 is the minus sign, which some data sheets set for a hyphen
		}
		return unicode.ToLower(r)
	}, name)
}

// near returns the canonical names like the one asked for, nearest first, those
// equally near in the order of the table; all names if none is like it. Two names
// are alike where the edit distance of their keys is at most a third of the longer.
func (t table) near(name string) []string {
	const never = 1 << 30
	asked := []rune(key(name))
	var names []string
	best := map[string]int{} // by canonical name
	for _, title := range t.titles {
		if _, seen := best[title.name]; !seen {
			names = append(names, title.name)
			best[title.name] = never
		}
		k := []rune(title.key)
		if d := distance(asked, k); d <= max(len(asked), len(k))/3 {
			best[title.name] = min(best[title.name], d)
		}
	}
	alike := slices.DeleteFunc(slices.Clone(names), func(n string) bool { return best[n] == never })
	if len(alike) == 0 {
		return names
	}
	slices.SortStableFunc(alike, func(a, b string) int { return best[a] - best[b] })
	return alike
}

// distance is the edit distance: the least number of insertions, deletions and
// replacements of one letter that turn a into b.
//
//	V. I. Levenshtein, Soviet Physics Doklady 10 (1966) 707, from memory
func distance(a, b []rune) int {
	row := make([]int, len(b)+1) // from a[:i] to every b[:j]
	for j := range row {
		row[j] = j
	}
	for i, x := range a {
		diagonal := row[0] // from a[:i] to b[:j]
		row[0] = i + 1
		for j, y := range b {
			replaced := diagonal
			if x != y {
				replaced++
			}
			diagonal = row[j+1]
			row[j+1] = min(replaced, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
