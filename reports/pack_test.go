package reports_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/reports"
)

// example runs a car of the examples.
func example(t *testing.T, name string) reports.Report {
	t.Helper()
	results := cartest.Run(t, "../examples/"+name+".yaml")
	return reports.Report{Version: "test", File: name + ".yaml", SHA256: strings.Repeat("0123456789abcdef", 4), Results: results}
}

// packCars are the cars that every form of page is held to: the examples, one that fails,
// and ones whose texts are as long and as strange as a file may have them.
func packCars(t *testing.T) map[string]reports.Report {
	t.Helper()
	out := map[string]reports.Report{}
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod", "hillclimb-pushrod-complete", "hillclimb-pullrod-complete"} {
		out[name] = example(t, name)
	}
	out["failing"] = report(t, "tube: [20, 1.5]", "tube: [10, 1]")
	out["sides unlike"] = report(t, oneSided...)
	long := report(t)
	long.Car.Name, long.Car.Revision = strings.Repeat("Wide", 120), strings.Repeat("revision-", 40)
	long.File, long.Car.Notes = strings.Repeat("W", 300)+".yaml", strings.Repeat("a note of the car file. ", 200)
	long.Cases[2].Name, long.Cases[2].Basis = strings.Repeat("W", 300), strings.Repeat("a basis that goes on ", 100)
	long.Corners[0].Members[1].Number, long.Corners[0].Members[1].Notes = strings.Repeat("N", 90), strings.Repeat("a part note ", 700)
	out["long"] = long
	strange := report(t)
	strange.Car.Name = hostile
	strange.Cases[0].Name, strange.Corners[0].Members[0].Number = hostile, hostile
	out["strange"] = strange
	return out
}

// Whatever page of the pack is torn out, it says what it belongs to and what it is not.
func TestPackEveryPageSaysWhatItIs(t *testing.T) {
	for name, r := range packCars(t) {
		t.Run(name, func(t *testing.T) {
			data := pack(t, r)
			all := pages(t, data)
			total := pageCount(t, data)
			if len(all) != total {
				t.Fatalf("%d pages read, pdfinfo counts %d", len(all), total)
			}
			if !strings.Contains(all[0].text(), reports.Caution) {
				t.Error("the whole caution is not on the first page")
			}
			revision := "revision " + r.Car.Revision[:min(5, len(r.Car.Revision))]
			for i, p := range all {
				text := p.text()
				for _, must := range []string{reports.ShortCaution, "SHA-256 " + r.SHA256, revision, fmt.Sprintf("page %d of %d", i+1, total)} {
					if !strings.Contains(text, must) {
						t.Errorf("page %d does not say %q", i+1, must)
					}
				}
			}
		})
	}
}

// No word lies outside the margins, and no two words over each other. Boxes are those of
// the font, higher than the letters; 0.4 points are what rounding takes.
func TestPackWordsHaveTheirPlaces(t *testing.T) {
	const millimetre, slack = 72 / 25.4, 0.4
	for name, r := range packCars(t) {
		t.Run(name, func(t *testing.T) {
			for i, p := range pages(t, pack(t, r)) {
				for j, w := range p.Words {
					if w.X1 < 20*millimetre-slack || w.X2 > p.Width-14*millimetre+slack || w.Y1 < 8*millimetre || w.Y2 > p.Height-6*millimetre {
						t.Errorf("page %d: %q lies outside the margins", i+1, w.Text)
					}
					for _, v := range p.Words[:j] {
						if min(w.X2, v.X2)-max(w.X1, v.X1) > slack && min(w.Y2, v.Y2)-max(w.Y1, v.Y1) > slack {
							t.Errorf("page %d: %q and %q lie over each other", i+1, w.Text, v.Text)
						}
					}
				}
			}
		})
	}
}

// The envelope of the pack has the reserve factors of the JSON, cut to two decimals, each
// on the line of its member with its verdict.
func TestPackEnvelopeIsThatOfTheJSON(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod-complete"} {
		r := example(t, name)
		data, err := r.JSON()
		if err != nil {
			t.Fatal(err)
		}
		var parsed struct {
			Members []struct {
				Corner, Member string
				Governing      struct {
					Reserve float64 `json:"reserve_factor"`
				}
			}
		}
		if err := json.Unmarshal(data, &parsed); err != nil {
			t.Fatal(err)
		}
		var rows []string
		for _, p := range pages(t, pack(t, r)) {
			rows = append(rows, p.rows()...)
		}
		if len(parsed.Members) != 24 {
			t.Fatalf("%d members in the JSON", len(parsed.Members))
		}
		for _, m := range parsed.Members {
			begin := strings.ReplaceAll(m.Corner+" "+m.Member, "_", " ") + " "
			end := fmt.Sprintf(" %.2f pass", math.Floor(m.Governing.Reserve*100)/100)
			if !slices.ContainsFunc(rows, func(s string) bool {
				return strings.HasPrefix(s, begin) && strings.Contains(s, " E355+N ") && strings.HasSuffix(s, end)
			}) {
				t.Errorf("%s: no line %q … %q", name, begin, end)
			}
		}
	}
}

// The signs of equations and the words of drawings come out of the file as text, so that they can be searched.
func TestPackTextIsSelectable(t *testing.T) {
	r := report(t, "tube: [20, 1.5], material: E355+N", "tube: [20, 1.5], material: E355+N, column: EN 1993-1-1 a")
	text := wholeText(pages(t, pack(t, r)))
	for _, sign := range []string{"σ", "λ̄", "²", "√", "·", "≥", "−", "×", "λ₁", "π", "tension: positive", "compression: negative", "z up"} {
		if !strings.Contains(text, sign) {
			t.Errorf("no %q in the text", sign)
		}
	}
}

// Each governing check of a left-hand member ends with its reserve factor to seven digits,
// under a bookmark with the name of the member.
func TestPackWorksOutWhatGoverns(t *testing.T) {
	r := example(t, "hillclimb-pullrod-complete")
	data := pack(t, r)
	text, marks := wholeText(pages(t, data)), bookmarks(t, data)
	for _, corner := range []int{cases.FrontLeft, cases.RearLeft} {
		for member, name := range cases.MemberNames {
			f, ok := r.Judged(corner, member).Governs()
			if !ok {
				t.Fatalf("nothing governs %s", name)
			}
			digits, err := strconv.ParseFloat(strconv.FormatFloat(f.Reserve, 'e', 6, 64), 64)
			if err != nil {
				t.Fatal(err)
			}
			if want := "= " + strconv.FormatFloat(digits, 'f', -1, 64); !strings.Contains(text, want) {
				t.Errorf("%s: no %q", name, want)
			}
			title := map[int]string{cases.FrontLeft: "Front left ", cases.RearLeft: "Rear left "}[corner] + strings.ReplaceAll(name, "_", " ") + ": " + f.Title()
			if !slices.ContainsFunc(marks, func(m string) bool { return strings.Contains(m, title) }) {
				t.Errorf("no bookmark %q", title)
			}
		}
	}
	if !strings.Contains(text, "Front axle: left and right are alike") || slices.ContainsFunc(marks, func(m string) bool { return strings.Contains(m, "Front right") }) {
		t.Error("the right-hand side is not said to be alike, or is shown again")
	}
}

// Sides that are not alike are both worked out.
func TestPackWorksOutBothSides(t *testing.T) {
	r := report(t, oneSided...)
	marks := bookmarks(t, pack(t, r))
	for _, want := range []string{"Front left rod", "Front right rod"} {
		if !slices.ContainsFunc(marks, func(m string) bool { return strings.Contains(m, want) }) {
			t.Errorf("no bookmark %q", want)
		}
	}
}

// Each line of the contents names the page on which its title stands, and stands as a
// bookmark too.
func TestPackContentsLeadToTheirPages(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pushrod-complete"} {
		data := pack(t, example(t, name))
		all := pages(t, data)
		marks := bookmarks(t, data)
		n := 0
		line := regexp.MustCompile(`^([\d.]+ .*) (\d+)$`)
		for _, p := range all[1:] {
			if !strings.Contains(p.text(), " Contents ") {
				break
			}
			for _, row := range p.rows() {
				m := line.FindStringSubmatch(row)
				if m == nil || strings.Contains(row, "SHA-256") {
					continue
				}
				n++
				page, _ := strconv.Atoi(m[2])
				if page < 1 || page > len(all) || !strings.Contains(all[page-1].text(), m[1]) {
					t.Errorf("%s: %q does not stand on page %d", name, m[1], page)
				}
				if !slices.ContainsFunc(marks, func(s string) bool { return strings.Join(strings.Fields(s), " ") == m[1] }) {
					t.Errorf("%s: %q is no bookmark", name, m[1])
				}
			}
		}
		if n != len(marks) || n < 20 {
			t.Errorf("%s: %d lines of the contents, %d bookmarks", name, n, len(marks))
		}
	}
}

// What a file says stays text, and what the font lacks is seen to be missing.
func TestPackKeepsStrangeNamesAsText(t *testing.T) {
	r := packCars(t)["strange"]
	all := pages(t, pack(t, r))
	for i, p := range all {
		if strings.Contains(p.text(), "😀") || strings.Contains(p.text(), "漢") {
			t.Errorf("page %d: letters that no font of the file has", i+1)
		}
	}
	if got, want := all[0].text(), `<script>alert(1)</script> (\) %PDF endstream endobj {nb}`; !strings.Contains(got, want) || !strings.Contains(got, "\uFFFD") {
		t.Errorf("the cover says %q", got)
	}
}

// A car that fails says so on the cover, in its table and at its working.
func TestPackSaysFail(t *testing.T) {
	r := packCars(t)["failing"]
	if r.Pass {
		t.Fatal("the car passes")
	}
	data := pack(t, r)
	all := pages(t, data)
	if !strings.Contains(all[0].text(), "FAIL: ") || strings.Contains(all[0].text(), "PASS") {
		t.Errorf("the cover says %q", all[0].text())
	}
	if !slices.ContainsFunc(bookmarks(t, data), func(m string) bool { return strings.HasSuffix(m, "FAIL") }) {
		t.Error("no bookmark says FAIL")
	}
}

// The date is the one that the user gives, and never that of the clock.
func TestPackHasTheDateOfTheUser(t *testing.T) {
	r := report(t)
	if cover := pages(t, pack(t, r))[0].text(); !strings.Contains(cover, " Date Car file ") {
		t.Errorf("without a date the cover says %q", cover)
	}
	r.Date = "2031-02-03"
	if cover := pages(t, pack(t, r))[0].text(); !strings.Contains(cover, " Date 2031-02-03 ") {
		t.Errorf("the cover says %q", cover)
	}
}

// The same report gives the same bytes.
func TestPackIsDeterministic(t *testing.T) {
	r := example(t, "hillclimb-pushrod-complete")
	first := pack(t, r)
	if again := pack(t, example(t, "hillclimb-pushrod-complete")); !bytes.Equal(first, again) {
		t.Error("two runs give different bytes")
	}
}

// Notes, what is not checked, and the whole caution are in the pack.
func TestPackCarriesDoubts(t *testing.T) {
	r := report(t)
	flat := wholeText(pages(t, pack(t, r)))
	want := append([]string{reports.Caution}, r.NotChecked...)
	for _, n := range r.Notes {
		want = append(want, string(n.Severity)+": "+n.Text)
	}
	for _, text := range want {
		if !strings.Contains(flat, strings.Join(strings.Fields(text), " ")) {
			t.Errorf("the pack does not say %q", text)
		}
	}
}
