package guide

import (
	"fmt"
	"strings"

	"sixlink/cases/carfile"
)

// Reference returns a page in Markdown (CommonMark with tables) on every key of a car file.
func Reference(caution string) string {
	r := &reference{at: map[string]string{}}
	r.text.WriteString("# The keys of a car file, " + carfile.Format + "\n\n> " + caution + "\n\n" +
		"A path names the place of a key; `[]` is each entry of a list. A bare number is in the unit of its row; a text carries its own, such as `\"0.875 in\"`. Limits are in the unit of a bare number.\n")
	r.section("the top level", "", carfile.Keys(), "")
	r.names()
	r.text.WriteString("\n## Units\n\n| of | a bare number | other units |\n|---|---|---|\n")
	for d := carfile.Pure; d <= carfile.SectionModulus; d++ {
		r.units(d)
	}
	return r.text.String()
}

// A reference is a page that is being written.
type reference struct {
	text strings.Builder
	at   map[string]string // where a mapping is described, by what it says
}

// section describes the keys of one mapping, and then those of the mappings in it.
func (r *reference) section(title, about string, keys []carfile.Key, path string) {
	fmt.Fprintf(&r.text, "\n## %s\n\n", title)
	if about != "" {
		r.text.WriteString(cell(about) + "\n\n")
	}
	r.text.WriteString("| key | what it is | value | limits | there | left out |\n|---|---|---|---|---|---|\n")
	var inner []func()
	for i := range keys {
		k := &keys[i]
		place := strings.TrimPrefix(path+"."+k.Name, ".")
		if k.Kind == carfile.List {
			place += "[]"
		}
		value := kind(k)
		if len(k.Keys) > 0 {
			if first := r.at[say(k)]; first != "" {
				value += ", keys as in `" + first + "`"
			} else {
				r.at[say(k)] = place
				inner = append(inner, func() { r.section("`"+place+"`", k.Doc+choose(k), k.Keys, place) })
			}
		}
		fmt.Fprintf(&r.text, "| `%s` | %s | %s | %s | %s | %s |\n", k.Name, cell(k.Doc), cell(value), cell(span(k)), cell(k.Conditions()), cell(k.Without()))
	}
	for _, describe := range inner {
		describe()
	}
}

func choose(k *carfile.Key) string {
	if c := k.Choose(); c != "" {
		return "; " + c
	}
	return ""
}

// kind says what the value of a key is.
func kind(k *carfile.Key) string {
	unit := ""
	if b := k.Dimension.Bare(); b != "" {
		unit = ", " + b
	}
	switch k.Kind {
	case carfile.Number:
		if len(k.Keys) > 0 {
			return "number" + unit + ", or a mapping {" + k.Keys[0].Name + ": …}"
		}
		return "number" + unit
	case carfile.Numbers, carfile.Vector:
		return "[" + strings.Join(k.Parts, ", ") + "]" + unit
	case carfile.Choice:
		if len(k.Choices) > mostWords {
			return "a name of the table below"
		}
		return words(k)
	case carfile.Flag:
		return "true or false"
	case carfile.Mapping:
		return "mapping"
	case carfile.List:
		return fmt.Sprintf("list of mappings, %d at most", k.Longest())
	case carfile.Prose:
		return "text of any number of lines"
	}
	return "text"
}

// span says the limits of a number.
func span(k *carfile.Key) string {
	if k.Range == (carfile.Range{}) {
		return ""
	}
	if k.Dimension == carfile.Share {
		return k.Range.String() + " or in %"
	}
	return k.Range.String()
}

// mostWords is how many choices stand beside their key.
const mostWords = 8

// names lists what is chosen from the tables of the program.
func (r *reference) names() {
	r.text.WriteString("\n## Names of strength curves and surfaces\n\n| key | name | what it is | source |\n|---|---|---|---|\n")
	for _, n := range carfile.Names() {
		fmt.Fprintf(&r.text, "| %s | %s | %s | %s |\n", cell(n.Keys), cell(n.Name), cell(n.What), cell(n.Source))
	}
}

// units lists the units of a dimension.
func (r *reference) units(d carfile.Dimension) {
	var names []string
	for _, u := range carfile.Units() {
		if u.Dimension == d && u.Name != d.Bare() {
			names = append(names, u.Name)
		}
	}
	if len(names) > 0 {
		fmt.Fprintf(&r.text, "| %s | %s | %s |\n", d, d.Bare(), strings.Join(names, ", "))
	}
}

// cell keeps what would end a cell of a table or begin a mark from doing so.
func cell(s string) string {
	return strings.NewReplacer("|", `\|`, "*", `\*`, "_", `\_`, "<", `\<`, "[", `\[`).Replace(s)
}
