package cli_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sixlink/cases/carfile/cartest"
	"sixlink/cli"
)

var updateRefusals = flag.Bool("update", false, "write testdata/refusals.golden anew; read the difference before keeping it")

// A refusal is a command line that is refused for one fault, with what stands in in.csv,
// in.yaml or log.csv, by the last of its arguments that names it.
type refusal struct{ args, text string }

const (
	rod  = "rod --length 450 --tension 6000"
	life = "life hillclimb-pushrod-duty.yaml"
	vary = "vary hillclimb-pushrod.yaml"
	head = "part,date,km,event\n"
)

// refusals are bad inputs other than car files, whose own table package carfile has.
var refusals = []refusal{
	{"cheque hillclimb-pushrod.yaml", ""},
	{"--loud check", ""},
	{"check", ""},
	{"check a.yaml b.yaml", ""},
	{"check nowhere.yaml", ""},
	{"check .", ""},
	{"check hillclimb-pushrod.yaml --jason out", ""},
	{"check hillclimb-pushrod.yaml --json", ""},
	{"check hillclimb-pushrod.yaml --json a --json b", ""},
	{"check hillclimb-pushrod.yaml --json --workbook w", ""},
	{"check hillclimb-pushrod.yaml --json a --workbook a", ""},
	{"check hillclimb-pushrod.yaml --json hillclimb-pushrod.yaml", ""},
	{"check hillclimb-pushrod.yaml --json nowhere/out.json", ""},
	{"check hillclimb-pushrod.yaml --json .", ""},
	{"check hillclimb-pushrod.yaml --date 2026-02-30", ""},
	{"check hillclimb-pushrod.yaml --date 1.2.2026", ""},
	{"check --watch=maybe hillclimb-pushrod.yaml", ""},
	{"working hillclimb-pushrod.yaml --member rod", ""},
	{"working hillclimb-pushrod.yaml --corner front --member rod", ""},
	{"working hillclimb-pushrod.yaml --corner front_left --member pushrod", ""},
	{"working hillclimb-pushrod.yaml --corner front_left --member rod --case Bumps", ""},
	{"materials Unobtainium", ""},
	{"new hillclimb-pushrod.yaml", ""},
	{"completion csh", ""},
	{"rod", ""},
	{"rod --length 450", ""},
	{"rod --length 0 --tension 6000", ""},
	{"rod --length -450 --tension 6000", ""},
	{"rod --length 450,5 --tension 6000", ""},
	{"rod --length 18ins --tension 6000", ""},
	{"rod --length 450kg --tension 6000", ""},
	{"rod --length 7/8in --tension 6000", ""},
	{"rod --length 450 --compression NaN", ""},
	{"rod --length 450 --compression 1e12", ""},
	{"rod --length 450 --tension 0x10", ""},
	{rod + " --target 0.5", ""},
	{rod + " --target high", ""},
	{rod + " --od-limit 10", ""},
	{rod + " --od-limit 30:10", ""},
	{rod + " --wall-limit a:b", ""},
	{rod + " --stock metric", ""},
	{rod + " --stock .", ""},
	{rod + " --stock nowhere.csv", ""},
	{rod + " --stock in.csv", ""},
	{rod + " --stock in.csv", "od,wall\n"},
	{rod + " --stock in.csv", "od,wal\n20,1\n"},
	{rod + " --stock in.csv", "od,wall,od\n20,1,20\n"},
	{rod + " --stock in.csv", "od (kg),wall\n20,1\n"},
	{rod + " --stock in.csv", "od,wall,price (EUR/kg)\n20,1,3\n"},
	{rod + " --stock in.csv", "od,wall,part (mm)\n20,1,3\n"},
	{rod + " --stock in.csv", "od,wall\nx,1\n"},
	{rod + " --stock in.csv", "od;wall\n20;0,5\n"},
	{rod + " --stock in.csv", "od,wall\n-1,1\n"},
	{rod + " --stock in.csv", "od,wall\n20,1 N\n"},
	{rod + " --stock in.csv", "od,wall\n10,6\n"},
	{rod + " --stock in.csv", "od,wall\n,1\n"},
	{rod + " --stock in.csv", "od,wall\n10\n"},
	{rod + " --stock in.csv", "od,wall,material\n20,1,E355+M\n"},
	{rod + " --stock in.csv", "od,wall\n\"20,1\n"},
	{rod + " --stock in.csv", "od,wall\n\x00,1\n"},
	{rod + " --stock in.csv", "od,wall,part\n20,1,\u202e\n"},
	{rod + " --stock in.csv", "od,wall" + strings.Repeat(",x", 100) + "\n"},
	{rod + " --stock in.csv", "od,wall\n" + strings.Repeat("20,1\n", 1001)},
	{rod + " --stock in.csv", "od,wall\n\xff,1\n"},
	{rod + " --stock in.yaml", ""},
	{rod + " --stock in.yaml", "- 20\n"},
	{rod + " --stock in.yaml", "format: sixlink/1\nsizes: [{od: 20, wall: 1}]\n"},
	{rod + " --stock in.yaml", "format: sixlink-stock/1\nsizes: []\n"},
	{rod + " --stock in.yaml", "format: sixlink-stock/1\nsizes: [{od: 20, wal: 1}]\n"},
	{rod + " --stock in.yaml", "format: sixlink-stock/1\nsizes: [{od: 1 kg, wall: 1}]\n"},
	{rod + " --stock in.yaml", "format: sixlink-stock/1\nsizes: [{od: 20, wall: .nan}]\n"},
	{vary, ""},
	{vary + " --vary vehicle.mass", ""},
	{vary + " --vary vehicle.mass=500:600", ""},
	{vary + " --vary vehicle.mass=500:600:0", ""},
	{vary + " --vary vehicle.mass=500:600:-50", ""},
	{vary + " --vary vehicle.mass=500:600:1e-9", ""},
	{vary + " --vary vehicle.mass=-5:600:50", ""},
	{vary + " --vary vehicle.mass=5mm:600:50", ""},
	{vary + " --vary vehicle.mas=500:600:50", ""},
	{vary + " --vary vehicle=1:2:1", ""},
	{vary + " --vary cases[99].speed=1:2:1", ""},
	{vary + " --vary a[=1", ""},
	{vary + " --vary vehicle.mass=500 --vary vehicle.mass=501", ""},
	{vary + " --move front.rod --along 0,0,1=0:1:1", ""},
	{vary + " --move front.rod.inner", ""},
	{vary + " --move front.rod.inner --along 0,0,0=0:1:1", ""},
	{vary + " --move front.rod.inner --along 0,1=0:1:1", ""},
	{vary + " --along 0,0,1=0:1:1", ""},
	{vary + " --vary vehicle.mass=500 --target 2", ""},
	{vary + " --vary vehicle.mass=500 --corner left", ""},
	{vary + " --vary vehicle.mass=500 --shard 0/2", ""},
	{vary + " --vary vehicle.mass=500 --shard 2/2 --shard-file s", ""},
	{vary + " --vary vehicle.mass=500 --shard x --shard-file s", ""},
	{vary + " --vary vehicle.mass=500 --shard 0/0 --shard-file s", ""},
	{vary + " --vary vehicle.mass=500 --shard-file s", ""},
	{"tolerance hillclimb-pushrod.yaml", ""},
	{"tolerance hillclimb-pushrod-scatter.yaml --samples 0", ""},
	{"tolerance hillclimb-pushrod-scatter.yaml --samples 1e4", ""},
	{"tolerance hillclimb-pushrod-scatter.yaml --seed -1", ""},
	{"merge", ""},
	{"merge in.csv", ""},
	{"merge in.csv", "hello\n"},
	{"merge in.csv", `{"format":"sixlink-shard/1"`},
	{"merge in.csv", `{"format":"sixlink-shard/2"`},
	{"merge .", ""},
	{"life hillclimb-pushrod.yaml", ""},
	{life + " --next 40", ""},
	{life + " --mileage in.csv --next -1", head},
	{life + " --mileage nowhere.csv", ""},
	{life + " --mileage in.csv", "part,km\n"},
	{life + " --mileage in.csv", head + "A,2026-01-02,x,\n"},
	{life + " --mileage in.csv", head + "A,2026-01-02,-5,\n"},
	{life + " --mileage in.csv", head + "A,2.1.2026,5,\n"},
	{life + " --mileage in.csv", head + "A,2026-02-30,5,\n"},
	{life + " --mileage in.csv", head + ",2026-01-02,5,\n"},
	{life + " --mileage in.csv", head + "A,2026-01-02,5\n"},
	{life + " --mileage in.csv", head + "A,2026-01-02,5,\nA,2026-01-01,5,\n"},
	{life + " --mileage in.csv", head + "A\"B,2026-01-01,5,\n"},
}

// Every one of them is refused in the words of the golden file: with 2, nothing on standard
// output and no file written, and with place, limit and remedy.
func TestRefusals(t *testing.T) {
	golden, err := filepath.Abs("testdata/refusals.golden")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../examples")); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	var all strings.Builder
	for _, r := range refusals {
		for _, name := range []string{"in.csv", "in.yaml"} {
			if err := os.WriteFile(name, []byte(r.text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		all.WriteString("=== sixlink " + r.args + "\n" + refused(t, r) + "\n")
	}
	if *updateRefusals {
		if err := os.WriteFile(golden, []byte(all.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(all.String(), "\n")); d != "" {
		t.Errorf("-want +got:\n%s", d)
	}
	t.Logf("%d bad inputs other than car files", len(refusals))
}

// refused runs a command that is to be refused and returns its message.
func refused(t *testing.T, r refusal) string {
	t.Helper()
	before, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var out, message bytes.Buffer
	if status := cli.Run(append([]string{"sixlink"}, strings.Fields(r.args)...), &out, &message); status != 2 || out.Len() > 0 {
		t.Errorf("%s: exit status %d, standard output %q", r.args, status, out.String())
	}
	if after, err := os.ReadDir("."); err != nil || len(after) != len(before) {
		t.Errorf("%s: %d files in the folder, want %d (error %v)", r.args, len(after), len(before), err)
	}
	if _, err := cartest.Complaint(message.String()); err != nil {
		t.Errorf("%s: %v", r.args, err)
	}
	return message.String()
}
