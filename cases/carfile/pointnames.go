package carfile

import (
	"maps"
	"slices"
	"strings"
	"sync"
	"unicode"

	"sixlink/cases"
)

// pointNames are the paths of all points that a car file can have, and what they may be
// called in a list of points.
type pointNames struct {
	paths []string            // in the order of the table
	plain map[string]string   // by path: its words without those that say nothing, as one
	of    map[string][]string // the paths that go by a name
	words []string            // of all names
}

// namesOfPoints are made once, of the table of keys.
var namesOfPoints = sync.OnceValue(func() *pointNames {
	n := &pointNames{plain: map[string]string{}, of: map[string][]string{}, words: slices.Concat(cases.AxleNames[:], silent, slices.Sorted(maps.Keys(shortened)))}
	for _, axle := range cases.AxleNames {
		n.collect(car.find(axle), axle, []string{axle}, axle)
	}
	return n
})

// collect adds the points at and below a row; said are the names by which the row goes,
// plain is that of them which suggestions are measured by.
func (n *pointNames) collect(k *Key, path string, said []string, plain string) {
	if k.Point() {
		n.paths, n.plain[path] = append(n.paths, path), plain
		for _, s := range said {
			if !slices.Contains(n.of[s], path) {
				n.of[s] = append(n.of[s], path)
			}
		}
		return
	}
	if k.Kind != Mapping {
		return
	}
	for i := range k.Keys {
		o := &k.Keys[i]
		n.learn(o)
		var next []string
		for _, head := range said {
			for _, tail := range o.said() {
				next = append(next, head+tail)
			}
		}
		n.collect(o, inside(path, o.Name), next, plain+o.said()[0])
	}
}

// learn takes in the words of the names of a row.
func (n *pointNames) learn(k *Key) {
	for _, name := range k.names() {
		for _, w := range wordsOf(name) {
			if len(w) > 1 && !slices.Contains(n.words, w) {
				n.words = append(n.words, w)
			}
		}
	}
}

// Point tells whether a row is that of a hardpoint.
func (k *Key) Point() bool { return k.Kind == Vector && k.Dimension == Length }

// names are the name of a row and others that people write for it.
func (k *Key) names() []string { return append([]string{k.Name}, k.Also...) }

// said are the names of a row as parts of the name of a point: its own first.
func (k *Key) said() (out []string) {
	add := func(s string) {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	for _, name := range k.names() {
		words := wordsOf(name)
		add(strings.Join(telling(words), ""))
		add(strings.Join(words, ""))
	}
	if k.Name == "rocker" && k.Kind == Mapping {
		add("") // its points go without it, such as front spring chassis
	}
	return out
}

// shortened are abbreviations of the trade (common practice, no published source).
var shortened = map[string][]string{
	"fl": {"front"}, "fr": {"front", "right"}, "rl": {"rear"}, "rr": {"rear", "right"},
	"rh": {"right"}, "rhs": {"right"}, "frt": {"front"}, "fwd": {"front"}, "aft": {"rear"},
	"upr": {"upper"}, "lwr": {"lower"}, "uca": {"upper"}, "lca": {"lower"}, "ubj": {"upper", "outer"}, "lbj": {"lower", "outer"},
	"center": {"centre"}, "inboard": {"inner"}, "outboard": {"outer"},
}

// silent are words that tell no point from another.
var silent = []string{
	"left", "lh", "lhs", "side", "hand", "axle", "suspension", "tyre", "tire", "wishbone", "arm", "control", "wheel",
	"point", "joint", "hardpoint", "pick", "up", "pickup", "pt", "of", "the", "on", "at", "to",
}

// wordsOf splits a name at what is neither letter nor digit, and before a capital behind a
// small letter.
func wordsOf(name string) (out []string) {
	var b strings.Builder
	end := func() {
		if b.Len() > 0 {
			out = append(out, b.String())
		}
		b.Reset()
	}
	last := ' '
	for _, r := range name {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) || unicode.IsUpper(r) && unicode.IsLower(last) {
			end()
		}
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			b.WriteRune(unicode.ToLower(r))
		}
		last = r
	}
	end()
	return out
}

// telling writes abbreviations out, leaves out the words that tell nothing, and puts the
// right-hand side behind the axle, as a path has it.
func telling(words []string) (out []string) {
	right := false
	for _, w := range words {
		whole := shortened[w]
		if whole == nil {
			whole = []string{w}
		}
		for _, x := range whole {
			switch {
			case x == "right":
				right = true
			case !slices.Contains(silent, x):
				out = append(out, x)
			}
		}
	}
	if right {
		out = slices.Insert(out, min(1, len(out)), "right")
	}
	return out
}

// A match is what a name of a list stands for.
type match struct {
	path string   // empty: for no point, or for several
	near []string // paths that may be meant
}

// find returns the point that goes by a name.
func (n *pointNames) find(name string) match {
	if _, own := n.plain[name]; own {
		return match{path: name}
	}
	words := wordsOf(name)
	for _, s := range []string{strings.Join(telling(words), ""), strings.Join(words, "")} {
		switch found := n.of[s]; len(found) {
		case 0:
		case 1:
			return match{path: found[0]}
		default:
			return match{near: found}
		}
	}
	return match{}
}

// nearest returns up to three of the points, most like first, that an unknown name may
// mean; taken are given already.
func (n *pointNames) nearest(name string, taken map[string]bool) (out []string) {
	words := telling(n.spelt(wordsOf(cutRunes(name, quotedRunes))))
	if m := n.find(strings.Join(words, " ")); m.path != "" && !taken[m.path] {
		return []string{m.path}
	}
	asked, sorted := strings.Join(words, ""), sortedWords(words)
	least := map[string]int{}
	for _, path := range n.paths {
		d := distance(asked, n.plain[path])
		if sortedWords(telling(wordsOf(path))) == sorted {
			d = 0
		}
		if d <= max(2, len(n.plain[path])/4) && !taken[path] {
			least[path] = d
			out = append(out, path)
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return least[a] - least[b] })
	return out[:min(3, len(out))]
}

// spelt puts the words of names in the place of those that are nearly one.
func (n *pointNames) spelt(words []string) []string {
	out := slices.Clone(words)
	for i, w := range words {
		if slices.Contains(n.words, w) {
			continue
		}
		least := max(1, len(w)/3) + 1
		for _, known := range n.words {
			if d := distance(w, known); d < least {
				out[i], least = known, d
			}
		}
	}
	return out
}

func sortedWords(words []string) string {
	words = slices.Clone(words)
	slices.Sort(words)
	return strings.Join(words, " ")
}

// cutRunes ends a text after so many characters.
func cutRunes(s string, n int) string {
	for i := range s {
		if n == 0 {
			return s[:i]
		}
		n--
	}
	return s
}
