package reports

import (
	"bytes"
	"strings"

	"sixlink/cases/studies"
	"sixlink/loads"
)

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
		Format: format, Program: jsonProgram{"sixlink", h.Version}, Input: s.head().input(),
		Car: h.Car, Revision: h.Revision, Caution: Caution, Complete: s.Complete && s.Shard.N <= 1,
		DesignFactors: jsonFactors{Yield: f.Yield, Ultimate: f.Ultimate, Buckling: f.Buckling},
	}
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
	out := jsonVary{jsonStudy: s.top("sixlink-vary/1"), Sized: s.Vary.Sized, Points: []jsonVaryP{}, NotChecked: s.Head.NotChecked, Notes: toNotes(s.Head.Notes)}
	for _, a := range s.Vary.Axes {
		out.Axes = append(out.Axes, jsonAxis{a.Name, strings.TrimPrefix(moved(a), ", "), a.Unit, a.Values})
	}
	text, err := encode(out)
	if err != nil {
		return nil, err
	}
	return s.withPoints(text)
}

// withPoints puts the points into the JSON of a range that has none yet, one at a time:
// together they would take several times their length in memory.
func (s Study) withPoints(text []byte) ([]byte, error) {
	const none = "\"points\": []"
	if len(s.Vary.Points) == 0 {
		return text, nil
	}
	at := bytes.Index(text, []byte("\n "+none)) + len("\n "+none) - 1
	var buf bytes.Buffer
	buf.Write(text[:at])
	for i, p := range s.Vary.Points {
		point, err := encodeAt("  ", s.jsonPoint(p))
		if err != nil {
			return nil, err
		}
		if i == 0 { // the others are as long, nearly
			buf.Grow((len(point)+200)*len(s.Vary.Points) + len(text))
		} else {
			buf.WriteByte(',')
		}
		buf.WriteString("\n  ")
		buf.Write(bytes.TrimRight(point, "\n"))
	}
	buf.WriteString("\n ")
	buf.Write(text[at:])
	return buf.Bytes(), nil
}

func (s Study) jsonPoint(p studies.Point) jsonVaryP {
	names := partNames()
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
	return x
}
