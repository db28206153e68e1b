package carfile

import (
	"slices"
	"strings"
	"sync"
)

// A hint is the answer to an unknown key.
type hint struct {
	key    string // the key that is probably meant; empty: none
	remedy string
}

// suggest answers an unknown key of a mapping with the keys that are still free there.
func (k *Key) suggest(unknown string, used map[string]bool) hint {
	if name := k.like(unknown, used); name != "" {
		return hint{key: name, remedy: "perhaps " + name + " is meant"}
	}
	if where := homes(unknown); len(where) > 0 && len([]rune(unknown)) > 1 {
		return hint{remedy: "it belongs " + alternatives(where)}
	}
	var all []string
	for _, o := range k.Keys {
		all = append(all, o.Name)
	}
	return hint{remedy: "take it out; the keys here are " + together(all)}
}

// like returns the free key that is most like the unknown one; empty if none is.
func (k *Key) like(unknown string, used map[string]bool) string {
	asked := plainName(unknown)
	best, nearest := "", 0
	for _, o := range k.Keys {
		if used[o.Name] {
			continue
		}
		if slices.ContainsFunc(append(slices.Clone(o.Also), o.Name), func(n string) bool { return plainName(n) == asked }) ||
			plainName(inWordOrder(unknown)) == plainName(inWordOrder(o.Name)) {
			return o.Name
		}
		name := plainName(o.Name)
		d := distance(asked, name)
		if d <= max(1, len(name)/3) && d < len(name) && (best == "" || d < nearest) {
			best, nearest = o.Name, d
		}
	}
	return best
}

// homes says where keys of that name belong, at most three places.
func homes(name string) []string {
	paths := allHomes()[plainName(name)]
	return paths[:min(len(paths), 3)]
}

// allHomes are the places of all keys, by their plain names.
var allHomes = sync.OnceValue(func() map[string][]string {
	paths := map[string][]string{}
	var search func(k *Key, path string)
	search = func(k *Key, path string) {
		for i := range k.Keys {
			o := &k.Keys[i]
			if o.Name == "right" {
				continue // the rows of the axle again
			}
			inner := o.Name
			if path != "" {
				inner = path + "." + o.Name
			}
			home := "in " + path
			if path == "" {
				home = "at the top level"
			}
			paths[plainName(o.Name)] = append(paths[plainName(o.Name)], home)
			search(o, inner)
		}
	}
	search(&car, "")
	return paths
})

// spellings are those of other English and of hurried writing.
var spellings = strings.NewReplacer(
	"_", "", "-", "", " ", "", "center", "centre", "tire", "tyre",
)

// plainName is what two spellings of one key share.
func plainName(name string) string {
	if len(name) > quotedRunes {
		name = name[:quotedRunes]
	}
	return spellings.Replace(strings.ToLower(name))
}

// inWordOrder sorts the words of a name.
func inWordOrder(name string) string {
	words := strings.FieldsFunc(name, func(r rune) bool { return strings.ContainsRune("_- ", r) })
	slices.Sort(words)
	return strings.Join(words, "_")
}

// distance is the least number of letters to insert, drop, replace or exchange with
// their neighbour that turns a into b: the restricted edit distance.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	d := make([][]int, len(x)+1)
	for i := range d {
		d[i] = make([]int, len(y)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(x); i++ {
		for j := 1; j <= len(y); j++ {
			replaced := d[i-1][j-1]
			if x[i-1] != y[j-1] {
				replaced++
			}
			d[i][j] = min(replaced, d[i-1][j]+1, d[i][j-1]+1)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(x)][len(y)]
}
