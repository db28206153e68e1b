package sheets

import (
	"strings"

	"sixlink/cases/carfile"
)

// headings are those of a sheet, as they are written.
func (l layout) headings() (out []string) {
	if len(l.columns) == 0 {
		return []string{keyHead, valueHead, unitHead, aboutHead}
	}
	for _, lead := range l.lead {
		out = append(out, lead.name)
	}
	for _, c := range l.columns {
		out = append(out, c.heading())
	}
	return out
}

// names are those of the headings, without units.
func (l layout) names() (out []string) {
	if len(l.columns) == 0 {
		return l.headings()
	}
	for _, lead := range l.lead {
		out = append(out, lead.name)
	}
	for _, c := range l.columns {
		out = append(out, c.name)
	}
	return out
}

// plain is what two spellings of a heading share.
func plain(name string) string {
	return strings.NewReplacer(" ", "", "_", "", "-", "").Replace(strings.ToLower(name))
}

// known returns the name of a heading as the sheet has it; empty: it has none like it.
func (l layout) known(name string) string {
	want := plain(name)
	for _, n := range l.names() {
		if plain(n) == want {
			return n
		}
	}
	for _, c := range l.columns {
		if plain(c.path) == want {
			return c.name
		}
	}
	return ""
}

// column returns the column of a name; nil for one that is no value.
func (l layout) column(name string) *column {
	for i := range l.columns {
		if l.columns[i].name == name {
			return &l.columns[i]
		}
	}
	return nil
}

// suggest says what may be meant by a heading.
func (l layout) suggest(name string) string {
	if len(l.columns) == 0 {
		return "the headings of this sheet are " + strings.Join(l.headings(), ", ")
	}
	return "perhaps " + carfile.Near(name, l.names()) + "; a value that has no column goes into the sheet " + moreSheet + ", by its path"
}
