package reports

import (
	"math"

	"sixlink/members/sizing"
	"sixlink/members/stock"
)

// nan is a number without a value.
var nan = math.NaN()

type (
	jsonRod struct {
		Format        string         `json:"format"`
		Program       jsonProgram    `json:"program"`
		Caution       string         `json:"caution"`
		Length        number         `json:"length"`
		Compression   number         `json:"compression"`
		Tension       number         `json:"tension"`
		DesignFactors jsonFactors    `json:"design_factors"`
		Target        number         `json:"target"`
		Stock         jsonStock      `json:"stock"`
		Pass          bool           `json:"pass"`
		Materials     []jsonMaterial `json:"materials"`
		Answers       []jsonAnswer   `json:"answers"`
		Lengths       []jsonAtLength `json:"lengths"`
		NotChecked    []string       `json:"not_checked"`
		Notes         []string       `json:"notes"`
	}
	jsonStock struct {
		Name      string    `json:"name"`
		Sizes     int       `json:"sizes"`
		OD        [2]number `json:"od_limit"`
		Wall      [2]number `json:"wall_limit"`
		PriceUnit string    `json:"price_unit"`
	}
	jsonAtLength struct {
		Length  number       `json:"length"`
		Answers []jsonAnswer `json:"answers"`
	}
	jsonAnswer struct {
		Material    string    `json:"material"`
		Compression *jsonPick `json:"compression"`
		Tension     *jsonPick `json:"tension"`
		Both        *jsonPick `json:"both"`
		Difference  number    `json:"mass_difference"` // compression less tension, kg
		Ratio       number    `json:"mass_ratio"`
	}
	jsonPick struct {
		Carries    bool            `json:"carries"`
		Size       *jsonSize       `json:"size"`
		Mass       number          `json:"mass"`
		Cost       number          `json:"cost"`
		Lightest   bool            `json:"lightest_offered"`
		HangsOn    string          `json:"hangs_on"`
		Slender    number          `json:"slenderness"`
		Transition number          `json:"transition"`
		Checks     []jsonRodCheck  `json:"checks"`
		Governing  *jsonRodGoverns `json:"governing"`
	}
	jsonSize struct {
		Tube   [2]float64 `json:"tube"`
		Given  [2]string  `json:"given"`
		Gauge  string     `json:"gauge,omitempty"`
		Price  number     `json:"price"`
		Part   string     `json:"part,omitempty"`
		Source string     `json:"source"`
	}
	jsonRodCheck struct {
		Under    string `json:"under"`
		Check    string `json:"check"`
		Demand   number `json:"demand"`
		Capacity number `json:"capacity"`
		Unit     string `json:"unit"`
		Reserve  number `json:"reserve_factor"`
		Source   string `json:"source"`
	}
	jsonRodGoverns struct {
		Under   string `json:"under"`
		Check   string `json:"check"`
		Reserve number `json:"reserve_factor"`
	}
)

// JSON returns the study for other programs, numbers at full precision.
func (r RodStudy) JSON() ([]byte, error) {
	f := r.Factors
	out := jsonRod{
		Format: "sixlink-rod/1", Program: jsonProgram{"sixlink", r.Version}, Caution: Caution,
		Length: number(r.Length), Compression: number(given(r.Compression)), Tension: number(given(r.Tension)),
		DesignFactors: jsonFactors{Yield: f.Yield, Ultimate: f.Ultimate, Buckling: f.Buckling}, Target: number(r.Target), Stock: toStock(r.Stock, r.Limits),
		Pass: r.Carries(), Answers: toAnswers(r.Answers), Lengths: []jsonAtLength{}, NotChecked: r.NotChecked(), Notes: r.Notes(),
	}
	for _, a := range r.Answers {
		out.Materials = append(out.Materials, toMaterial(a.Metal))
	}
	for _, l := range r.Lengths {
		out.Lengths = append(out.Lengths, jsonAtLength{number(l.Length), toAnswers(l.Answers)})
	}
	return encode(out)
}

func toStock(list stock.List, limits stock.Limits) jsonStock {
	pair := func(r stock.Range) [2]number { return [2]number{number(given(r.Min)), number(given(r.Max))} }
	return jsonStock{list.Name, len(list.Sizes), pair(limits.OD), pair(limits.Wall), list.PriceUnit}
}

func toAnswers(answers []sizing.Answer) []jsonAnswer {
	out := []jsonAnswer{}
	for _, a := range answers {
		x, ok := a.Exchange()
		if !ok {
			x = sizing.Exchange{Difference: nan, Ratio: nan}
		}
		out = append(out, jsonAnswer{
			a.Metal.Name, toPick(a.Picks[sizing.InCompression]), toPick(a.Picks[sizing.InTension]), toPick(a.Picks[sizing.InBoth]),
			number(x.Difference), number(x.Ratio),
		})
	}
	return out
}

func toSize(s stock.Size) *jsonSize {
	return &jsonSize{[2]float64{s.Tube.OD, s.Tube.Wall}, s.Given, s.Gauge, number(s.Price), s.Part, s.Source}
}

func toPick(p *sizing.Pick) *jsonPick {
	if p == nil {
		return nil
	}
	if p.Offered == 0 {
		return &jsonPick{Mass: number(nan), Cost: number(nan), Slender: number(nan), Transition: number(nan), Checks: []jsonRodCheck{}}
	}
	g := p.Governs()
	out := &jsonPick{
		Carries: p.Carries, Size: toSize(p.Size), Mass: number(p.Mass), Cost: number(sizing.Cost(p.Size, p.Strut().Length)), Lightest: p.First,
		HangsOn: sizing.KindNames[p.Reason.Kind], Slender: number(p.Reason.Slenderness), Transition: number(p.Reason.Transition),
		Governing: &jsonRodGoverns{sizing.DirectionNames[g.Direction], g.Check, number(g.Reserve)},
	}
	for _, f := range p.Found {
		out.Checks = append(out.Checks, jsonRodCheck{
			sizing.DirectionNames[f.Direction], f.Check, number(f.Demand), number(f.Capacity), f.Unit, number(f.Reserve), f.Source,
		})
	}
	return out
}
