package reports

import (
	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
)

// The form of a life, version 1.
type (
	jsonLife struct {
		Format     string        `json:"format"`
		Program    jsonProgram   `json:"program"`
		Input      jsonInput     `json:"input"`
		Car        string        `json:"car"`
		Revision   string        `json:"revision"`
		Pass       bool          `json:"pass"`
		Caution    string        `json:"caution"`
		LapLength  float64       `json:"lap_length"`
		Wanted     *float64      `json:"wanted"`
		LifeFactor float64       `json:"life_factor"`
		LoadFactor float64       `json:"load_factor"`
		Inspection float64       `json:"inspection"`
		Details    []jsonDetail  `json:"details"`
		Histories  []jsonLog     `json:"histories"`
		CarPasses  bool          `json:"car_passes_check"`
		Peaks      []jsonLogPeak `json:"peaks"`
		Parts      []jsonMileage `json:"parts,omitempty"`
		NotJudged  []string      `json:"not_judged"`
		Notes      []jsonNote    `json:"notes"`
	}
	jsonDetail struct {
		Corner     string        `json:"corner"`
		Member     string        `json:"member"`
		Part       string        `json:"part,omitempty"`
		Detail     string        `json:"detail"`
		At         string        `json:"at"`
		Curve      string        `json:"curve"`
		Source     string        `json:"source"`
		Survival   string        `json:"survival"`
		Range      number        `json:"largest_range"`
		Damage     number        `json:"damage_per_lap"`
		Laps       number        `json:"laps"`
		Distance   number        `json:"distance"`
		Inspection number        `json:"inspect_every"`
		Endless    bool          `json:"no_damage"`
		Highest    number        `json:"highest_stress"`
		Unloaded   bool          `json:"no_load"`
		Broken     string        `json:"past_strength,omitempty"`
		Pass       bool          `json:"pass"`
		Events     []jsonEvent   `json:"events"`
		Thicker    *jsonThicker  `json:"thicker"`
		Doubts     []string      `json:"doubts"`
		Spectrum   *jsonSpectrum `json:"spectrum"`
	}
	jsonEvent struct {
		Event string `json:"event"`
		Share number `json:"share"`
	}
	jsonThicker struct {
		Tube     string `json:"tube"`
		Damage   number `json:"damage_per_lap"`
		Distance number `json:"distance"`
	}
	jsonLog struct {
		Name    string `json:"name"`
		File    string `json:"file"`
		Rows    int64  `json:"rows"`
		From    number `json:"from"`
		To      number `json:"to"`
		Longest number `json:"longest_step"`
		Allowed number `json:"longest_step_allowed"`
		Bad     int    `json:"rows_left_out"`
	}
	jsonLogPeak struct {
		History  string `json:"history"`
		Time     number `json:"time"`
		Corner   string `json:"corner"`
		Member   string `json:"member"`
		Check    string `json:"check"`
		Demand   number `json:"demand"`
		Capacity number `json:"capacity"`
		Unit     string `json:"unit"`
		Reserve  number `json:"reserve_factor"`
		Source   string `json:"source"`
		Pass     bool   `json:"pass"`
	}
	jsonMileage struct {
		Part     string `json:"part"`
		Last     string `json:"last_entry"`
		Run      number `json:"run"`
		Since    number `json:"since_inspection"`
		Released number `json:"released"`
		Left     number `json:"left"`
		Due      string `json:"due"`
	}
)

// JSON returns the lives for other programs: km, MPa, numbers at full precision.
func (l Life) JSON() ([]byte, error) {
	r, d := l.head(), &l.Life.Duty
	out := jsonLife{
		Format: duty.Format, Program: jsonProgram{"sixlink", r.Version}, Input: r.input(),
		Car: r.Car.Name, Revision: r.Car.Revision, Pass: l.Pass(), Caution: Caution, LapLength: d.LapLength, LifeFactor: d.LifeFactor,
		LoadFactor: d.LoadFactor, Inspection: d.Inspection, Details: []jsonDetail{}, Histories: []jsonLog{}, CarPasses: l.Life.CarPasses, Peaks: []jsonLogPeak{}, NotJudged: r.NotChecked, Notes: toNotes(r.Notes),
	}
	if d.Wanted > 0 {
		out.Wanted = &d.Wanted
	}
	for _, x := range l.Life.Rows {
		out.Details = append(out.Details, toDetail(x))
	}
	for _, g := range l.Life.Logs {
		out.Histories = append(out.Histories, jsonLog{g.Name, g.File, g.Rows, number(g.Start), number(g.End), number(g.Longest), number(g.Allowed), g.Bad})
	}
	for i := range l.Life.Peaks {
		p := &l.Life.Peaks[i]
		out.Peaks = append(out.Peaks, jsonLogPeak{
			p.History, number(p.Time), cases.CornerNames[p.Corner], cases.MemberNames[p.Member], p.Title(),
			number(p.Demand), number(p.Capacity), p.Unit, number(p.Reserve), p.Source, p.Passes(),
		})
	}
	for _, m := range l.Mileage {
		out.Parts = append(out.Parts, jsonMileage{m.Part, m.Last, number(m.Run), number(m.Since), number(m.Released), number(m.Left), string(m.Due)})
	}
	return encode(out)
}

func toDetail(r duty.Row) jsonDetail {
	out := jsonDetail{
		Corner: cases.CornerNames[r.Corner], Member: loads.LinkNames[r.Link], Part: r.Part, Detail: r.Detail, At: r.Place,
		Curve: r.Curve.Name, Source: r.Curve.Source, Survival: r.Curve.Survival, Range: number(r.Widest), Damage: number(r.Damage),
		Laps: number(r.Laps), Distance: number(r.Distance), Inspection: number(r.Inspection), Endless: r.Damage == 0 && !r.Unloaded && r.Broken == "",
		Highest: number(r.Highest), Unloaded: r.Unloaded, Broken: r.Broken, Pass: r.Pass,
		Events: []jsonEvent{}, Doubts: r.Doubts, Spectrum: toSpectrum(&r.Spectrum),
	}
	for _, e := range r.Events {
		out.Events = append(out.Events, jsonEvent{e.What, number(e.Share)})
	}
	if x := r.Thicker; x != nil {
		out.Thicker = &jsonThicker{x.Tube, number(x.Damage), number(x.Distance)}
	}
	return out
}
