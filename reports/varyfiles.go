package reports

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"sixlink/cases/studies"
	"sixlink/loads"
)

// full writes a number so that it reads back as the same float64; nothing where there is
// no value.
func full(x studies.Number) string {
	f := float64(x)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return ""
	}
	return strconv.FormatFloat(f+0, 'g', -1, 64)
}

// remarks are the lines at the head of a CSV.
func (s Study) remarks(buf *bytes.Buffer, what string) {
	line := func(text string) { fmt.Fprintf(buf, "# %s\r\n", printable(text)) }
	r := s.head()
	line(r.title())
	line("car file " + r.File + ", SHA-256 " + r.SHA256)
	line(what)
	if text := s.state(); text != "" {
		line(text)
	}
	line(Caution)
	for _, n := range r.Notes {
		line(string(n.Severity) + ": " + n.Text)
	}
	for _, n := range r.NotChecked {
		line("not checked: " + n)
	}
}

// varyColumns are the columns of a table of points, with their units.
func (s Study) varyColumns() (out []Column) {
	for _, a := range s.Vary.Axes {
		out = append(out, axisHead(a))
	}
	out = append(
		out, Column{"lowest RF", "", Reserve}, Column{"of", "", Text}, Column{"check", "", Text}, Column{"case", "", Text},
		Column{"mass of members", "kg", Milli}, Column{"refused", "", Text},
	)
	for i, name := range partNames() {
		at := name[0] + "." + name[1]
		if i < len(studies.Point{}.Members) {
			out = append(out, Column{at + " tension", "N", Whole}, Column{at + " compression", "N", Whole})
			if s.Vary.Sized {
				out = append(out, Column{at + " od", "mm", Tenth}, Column{at + " wall", "mm", Tenth})
			}
		}
		out = append(out, Column{at + " RF", "", Reserve})
	}
	return out
}

// varyRow is the row of one point.
func (s Study) varyRow(p studies.Point) (out []any) {
	for _, x := range p.At {
		out = append(out, x)
	}
	out = append(out, float64(p.Lowest.Reserve), partName(p.Lowest.Member), p.Lowest.Check, s.caseOf(p.Lowest.Case), float64(p.Mass), p.Refused)
	for _, m := range p.Members {
		out = append(out, float64(m.Tension), float64(m.Compression))
		if s.Vary.Sized {
			od, wall := math.NaN(), math.NaN()
			if m.Tube != nil {
				od, wall = float64(m.Tube[0]), float64(m.Tube[1])
			}
			out = append(out, od, wall)
		}
		out = append(out, float64(m.Lowest.Reserve))
	}
	for _, r := range p.Rockers {
		out = append(out, float64(r.Reserve))
	}
	return out
}

func partName(i int) string {
	if i < 0 {
		return ""
	}
	name := partNames()[i]
	return name[0] + "." + name[1]
}

func (s Study) caseOf(k int) string {
	if k < 0 {
		return ""
	}
	return s.Head.Cases[k]
}

func (s Study) varyCSV() ([]byte, error) {
	var buf bytes.Buffer
	s.remarks(&buf, s.varied())
	rows := [][]any{}
	for _, p := range s.Vary.Points {
		rows = append(rows, s.varyRow(p))
	}
	return writeCSV(&buf, s.varyColumns(), rows)
}

// writeCSV writes a table at full precision.
func writeCSV(buf *bytes.Buffer, columns []Column, rows [][]any) ([]byte, error) {
	w := csv.NewWriter(buf)
	w.UseCRLF = true
	var head []string
	for _, c := range columns {
		text := c.Head
		if c.Unit != "" {
			text += ", " + c.Unit
		}
		head = append(head, printable(text))
	}
	if err := w.Write(head); err != nil {
		return nil, err
	}
	for _, row := range rows {
		var cells []string
		for _, v := range row {
			switch x := v.(type) {
			case float64:
				cells = append(cells, full(studies.Number(x)))
			case string:
				cells = append(cells, printable(x))
			default:
				cells = append(cells, fmt.Sprint(x))
			}
		}
		if err := w.Write(cells); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return buf.Bytes(), w.Error()
}

// The form of a range, version 1.
type (
	jsonStudy struct {
		Format        string      `json:"format"`
		Program       jsonProgram `json:"program"`
		Input         jsonInput   `json:"input"`
		Car           string      `json:"car"`
		Revision      string      `json:"revision"`
		Caution       string      `json:"caution"`
		Complete      bool        `json:"complete"`
		DesignFactors jsonFactors `json:"design_factors"`
	}
	jsonVary struct {
		jsonStudy
		Axes       []jsonAxis  `json:"axes"`
		Sized      bool        `json:"sized"`
		Points     []jsonVaryP `json:"points"`
		NotChecked []string    `json:"not_checked"`
		Notes      []jsonNote  `json:"notes"`
	}
	jsonAxis struct {
		Name   string    `json:"name"`
		What   string    `json:"what,omitempty"`
		Unit   string    `json:"unit"`
		Values []float64 `json:"values"`
	}
	jsonVaryP struct {
		At      []float64       `json:"at"`
		Refused string          `json:"refused,omitempty"`
		Lowest  *jsonLowest     `json:"lowest"`
		Mass    studies.Number  `json:"mass"`
		Members []jsonVariedM   `json:"members,omitempty"`
		Rockers []jsonVariedRkr `json:"rockers,omitempty"`
	}
	jsonLowest struct {
		Corner  string         `json:"corner,omitempty"`
		Member  string         `json:"member,omitempty"`
		Reserve studies.Number `json:"reserve_factor"`
		Check   string         `json:"check"`
		Case    string         `json:"case"`
	}
	jsonVariedM struct {
		Corner      string             `json:"corner"`
		Member      string             `json:"member"`
		Tension     studies.Number     `json:"tension"`
		Compression studies.Number     `json:"compression"`
		Tube        *[2]studies.Number `json:"tube"`
		Mass        studies.Number     `json:"mass"`
		Governing   *jsonLowest        `json:"governing"`
	}
	jsonVariedRkr struct {
		Corner    string      `json:"corner"`
		Governing *jsonLowest `json:"governing"`
	}
)

// top is what the JSON of every study begins with.
func (s Study) top(format string) jsonStudy {
	h, f := s.Head, s.Head.Factors
	return jsonStudy{
		Format: format, Program: jsonProgram{"sixlink", h.Version}, Input: jsonInput{h.File, h.SHA256},
		Car: h.Car, Revision: h.Revision, Caution: Caution, Complete: s.Complete && s.Shard.N <= 1,
		DesignFactors: jsonFactors{Yield: f.Yield, Ultimate: f.Ultimate, Buckling: f.Buckling},
	}
}

func (s Study) notes() []jsonNote {
	out := []jsonNote{}
	for _, n := range s.Head.Notes {
		out = append(out, jsonNote{string(n.Severity), n.Text})
	}
	return out
}

func (s Study) lowest(l studies.Lowest, named bool) *jsonLowest {
	if l.Case < 0 {
		return nil
	}
	out := &jsonLowest{Reserve: l.Reserve, Check: l.Check, Case: s.caseOf(l.Case)}
	if named && l.Member >= 0 {
		name := partNames()[l.Member]
		out.Corner, out.Member = name[0], name[1]
	}
	return out
}

func (s Study) varyJSON() ([]byte, error) {
	out := jsonVary{jsonStudy: s.top("sixlink-vary/1"), Sized: s.Vary.Sized, Points: []jsonVaryP{}, NotChecked: s.Head.NotChecked, Notes: s.notes()}
	for _, a := range s.Vary.Axes {
		out.Axes = append(out.Axes, jsonAxis{a.Name, strings.TrimPrefix(moved(a), ", "), a.Unit, a.Values})
	}
	names := partNames()
	for _, p := range s.Vary.Points {
		x := jsonVaryP{At: p.At, Refused: p.Refused, Lowest: s.lowest(p.Lowest, true), Mass: p.Mass}
		for i, m := range p.Members {
			if p.Refused == "" {
				x.Members = append(x.Members, jsonVariedM{names[i][0], names[i][1], m.Tension, m.Compression, m.Tube, m.Mass, s.lowest(m.Lowest, false)})
			}
		}
		for i, r := range p.Rockers {
			if r.Case >= 0 {
				x.Rockers = append(x.Rockers, jsonVariedRkr{names[4*loads.NumLinks+i][0], s.lowest(r, false)})
			}
		}
		out.Points = append(out.Points, x)
	}
	return encode(out)
}

// encode writes JSON as every report does.
func encode(v any) ([]byte, error) {
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	err := enc.Encode(v)
	return buf.Bytes(), err
}
