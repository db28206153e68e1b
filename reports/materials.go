package reports

import (
	"strings"

	"sixlink/materials"
)

// A Listing shows rows of the table of materials: to choose from, or one material with
// all that is known of it.
type Listing struct {
	Version string // of the program
	Screen  Screen // on which the texts are shown
	Entries []materials.Entry
}

// roomTemperature goes with every listing.
const roomTemperature = "Strengths hold at room temperature: the table has no temperature factors, for it has no published ones. " +
	"They are those of the form and condition named; a weld, a bend or a heat treatment changes them."

// shortBasis are the bases as the table shows them.
var shortBasis = map[string]string{"specification minimum": "min", "characteristic": "char"}

func basisMark(basis string) string {
	if short := shortBasis[basis]; short != "" {
		return short
	}
	return basis
}

// Text returns one line for each row, for a terminal, with the caution.
func (l Listing) Text() ([]byte, error) {
	p := newPage(l.Screen)
	p.line("sixlink %s: table of materials, %d rows; MPa, kg/m³, walls in mm", l.Version, len(l.Entries))
	p.line("")
	cells := [][]string{{"material", "wall to", "Sy", "Su", "E", "density", "basis", "", "form"}}
	for _, e := range l.Entries {
		cells = append(cells, []string{
			e.Name, Full.number(given(e.WallTo)), Whole.number(given(e.Sy)), Whole.number(e.Su), Whole.number(e.E), Whole.number(e.Density),
			basisMark(e.Basis), memoryMark(e), e.Form,
		})
	}
	p.folded(cells)
	p.line("")
	l.bases(p, true)
	p.line("M: a strength is from memory; %s: the source gives no yield strength, and no member can be made of it", dash)
	p.line("sixlink materials NAME shows every value of a material with its source")
	l.caution(p)
	return p.Bytes(), nil
}

// memoryMark is M where a strength of a row is from memory.
func memoryMark(e materials.Entry) string {
	for _, v := range e.Values {
		if v.FromMemory && v.Symbol[0] == 'S' {
			return "M"
		}
	}
	return ""
}

// Detail returns every value of the rows, for a terminal, with sources, doubts and the
// caution.
func (l Listing) Detail() ([]byte, error) {
	p := newPage(l.Screen)
	for i, e := range l.Entries {
		if i == 0 || l.Entries[i-1].Name != e.Name {
			p.line("sixlink %s: %s", l.Version, e.Name)
			p.fold("also: ", "  ", strings.Join(e.Also, ", "))
		}
		p.line("")
		p.fold("form: ", "  ", e.Form)
		if wall := given(e.WallTo); wall > 0 {
			p.line("walls to %s mm", Full.number(wall))
		}
		l.values(p, e)
		p.fold("doubt: ", "  ", e.Doubt)
	}
	p.line("")
	l.bases(p, false)
	l.caution(p)
	return p.Bytes(), nil
}

// values writes the numbers of a row in the units of the program and as published.
func (l Listing) values(p *page, e materials.Entry) {
	letters := map[string]string{}
	var sources []string
	p.table(func(row func(cells ...string)) {
		row("", "value", "", "as published", "source", "")
		for _, v := range e.Values {
			if letters[v.Source] == "" {
				letters[v.Source] = letterOf(len(sources))
				sources = append(sources, v.Source)
			}
			memory := ""
			if v.FromMemory {
				memory = "from memory"
			}
			row(v.Symbol, strings.TrimSpace(Full.number(v.Value)+" "+v.Unit), v.What, v.Published, letters[v.Source], memory)
		}
	})
	p.fold("basis: ", "  ", e.Basis)
	for _, s := range sources {
		p.fold("source "+letters[s]+": ", "  ", s)
	}
	if e.Scy == 0 && e.Sy > 0 {
		p.fold("", "  ", "No compressive yield strength is given: Sy takes its place.")
	}
	if e.Sy == 0 {
		p.fold("", "  ", "No yield strength is given: a car file that names this material is refused.")
	}
}

// bases explains the bases that the rows have, by their marks in the table or in full.
func (l Listing) bases(p *page, table bool) {
	for _, b := range materials.Bases {
		for _, e := range l.Entries {
			if e.Basis == b.Name {
				lead := b.Name
				if short := shortBasis[b.Name]; short != "" && table {
					lead = short + ", " + b.Name
				}
				p.fold("basis ", "  ", lead+": "+b.Meaning)
				break
			}
		}
	}
}

func (l Listing) caution(p *page) {
	p.line("")
	p.fold("", "", roomTemperature)
	p.line("")
	p.fold("", "", Caution)
}

type (
	jsonListing struct {
		Format    string      `json:"format"`
		Program   jsonProgram `json:"program"`
		Caution   string      `json:"caution"`
		Remark    string      `json:"remark"`
		Materials []jsonEntry `json:"materials"`
	}
	jsonEntry struct {
		jsonMaterial
		Also   []string    `json:"also"`
		Values []jsonValue `json:"values"`
	}
	jsonValue struct {
		Symbol     string  `json:"symbol"`
		What       string  `json:"what"`
		Value      float64 `json:"value"`
		Unit       string  `json:"unit"`
		Published  string  `json:"published"`
		Source     string  `json:"source"`
		FromMemory bool    `json:"from_memory"`
	}
)

// JSON returns the rows for other programs, numbers at full precision.
func (l Listing) JSON() ([]byte, error) {
	out := jsonListing{
		Format: "sixlink-materials/1", Program: jsonProgram{"sixlink", l.Version},
		Caution: Caution, Remark: roomTemperature, Materials: []jsonEntry{},
	}
	for _, e := range l.Entries {
		entry := jsonEntry{jsonMaterial: toMaterial(e.Metal), Also: append([]string{}, e.Also...)}
		for _, v := range e.Values {
			entry.Values = append(entry.Values, jsonValue{v.Symbol, v.What, v.Value, v.Unit, v.Published, v.Source, v.FromMemory})
		}
		out.Materials = append(out.Materials, entry)
	}
	return encode(out)
}
