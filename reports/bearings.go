package reports

import (
	"sixlink/cases"
	"sixlink/loads"
)

// The bearings of the ends in the parts list. One that two legs share stands at both,
// and has its mass at the first.

func (r Report) hasBearings() bool {
	for i := range r.Corners {
		if len(r.EndBearings(i)) > 0 {
			return true
		}
	}
	return false
}

// bearingRows are the lines of the bearings of one member, in the columns of parts.
func bearingRows(corner, link int, bearings []cases.EndBearing) (out [][]any) {
	for _, b := range bearings {
		if b.Link != link {
			continue
		}
		mass, notes := given(b.Mass), "ratings: "+b.Source
		if b.Shares {
			mass, notes = given(0), "that of the "+words(loads.LinkNames[link-1])+", where its mass stands; "+notes
		}
		out = append(out, []any{
			words(cases.CornerNames[corner]), words(loads.LinkNames[link]) + ", " + cases.EndNames[b.End],
			b.Part, nil, nil, nil, nil, mass, notes,
		})
	}
	return out
}

// A jsonBearing is the bearing of an end; mass null: not given.
type jsonBearing struct {
	Corner string `json:"corner"`
	Member string `json:"member"`
	At     string `json:"at"`
	Part   string `json:"part"`
	Mass   number `json:"mass"`
	Shares bool   `json:"shared"` // it is that of the leg before, and counts there
	Source string `json:"source"`
}

func (r Report) toBearings(corner int) (out []jsonBearing) {
	for _, b := range r.EndBearings(corner) {
		out = append(out, jsonBearing{
			Corner: cases.CornerNames[corner], Member: loads.LinkNames[b.Link], At: cases.EndNames[b.End],
			Part: b.Part, Mass: number(given(b.Mass)), Shares: b.Shares, Source: b.Source,
		})
	}
	return out
}
