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

// most is how many names are offered for one that is unknown.
const most = 8

// near returns the canonical names like the one asked for: first those of which it is
// the beginning, then those whose key is at an edit distance of at most a third of the
// longer, nearest first, those equally near in the order of the table.
func (t table) near(name string) []string {
	asked := []rune(key(name))
	var names []string
	best := map[string]int{} // by canonical name
	for _, title := range t.titles {
		k := []rune(title.key)
		d := distance(asked, k)
		begins := len(asked) > 1 && strings.HasPrefix(title.key, string(asked))
		if !begins && d > max(len(asked), len(k))/3 {
			continue
		}
		if begins {
			d -= len(k) // ahead of every distance
		}
		if before, seen := best[title.name]; !seen {
			names = append(names, title.name)
			best[title.name] = d
		} else {
			best[title.name] = min(before, d)
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return best[a] - best[b] })
	return names[:min(most, len(names))]
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
