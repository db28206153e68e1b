package cli

import (
	"errors"
	"os"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases/carfile"
	"sixlink/members/stock"
)

// The limits of what the options of rod and size take.
var (
	lengths = carfile.Range{Max: 20000, Above: true}
	forces  = carfile.Range{Max: 1e7, Above: true}
	sizes   = carfile.Range{Max: 500}
	targets = carfile.Range{Min: 1, Max: 100}
	factors = carfile.Range{Min: 1, Max: 10}
)

// stockFlags choose what may be chosen from.
func stockFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "stock", Value: stock.Names[0], Usage: "the stock: " + strings.Join(stock.Names, ", ") + ", or a `FILE` (.csv, .yaml) with od, wall and perhaps material, price, part"},
		&cli.StringFlag{Name: "target", Value: "1", Usage: "the reserve factor `RF` that every check must reach"},
		&cli.StringFlag{Name: "od-limit", Usage: "the least and the largest outer diameter as `MIN:MAX`; either may be left out"},
		&cli.StringFlag{Name: "wall-limit", Usage: "the least and the largest wall as `MIN:MAX`; either may be left out"},
	}
}

// terms are what stockFlags say.
type terms struct {
	list   stock.List
	limits stock.Limits
	target float64
}

// readTerms reads them; the materials of a stock are those of the table and of the cars.
func readTerms(c *cli.Context, cars ...carfile.File) (t terms, err error) {
	if t.target, err = quantity(c, "target", carfile.Pure, targets); err != nil {
		return t, usage("%v; a reserve factor below 1 fails", err)
	}
	if t.limits.OD, err = limit(c, "od-limit"); err != nil {
		return t, err
	}
	if t.limits.Wall, err = limit(c, "wall-limit"); err != nil {
		return t, err
	}
	var own []string
	for _, f := range cars {
		own = append(own, f.Materials()...)
	}
	t.list, err = readStock(c.String("stock"), own)
	return t, err
}

// readStock returns a stock by its name, or reads it.
func readStock(name string, own []string) (stock.List, error) {
	if list, ok := stock.Named(name); ok {
		return list, nil
	}
	if _, err := os.Stat(name); errors.Is(err, os.ErrNotExist) && !strings.ContainsAny(name, "./\\") {
		return stock.List{}, usage("--stock %q: there is no such file, and the stocks by standard are %s: name one of them, or a file", name, strings.Join(stock.Names, ", "))
	}
	src, err := readFile(name, "the list of tubes")
	if err != nil {
		return stock.List{}, err
	}
	list, err := carfile.ReadStock(name, src, own...)
	if err != nil {
		return stock.List{}, located{err}
	}
	return list, nil
}

// quantity reads the value of an option; 0 where it is not given and has no default.
func quantity(c *cli.Context, flag string, d carfile.Dimension, r carfile.Range) (float64, error) {
	text := c.String(flag)
	if text == "" && !c.IsSet(flag) {
		return 0, nil
	}
	v, err := carfile.Quantity(text, d, r)
	if err != nil {
		return 0, usage("--%s: %v", flag, err)
	}
	return v, nil
}

// limit reads a range of lengths.
func limit(c *cli.Context, flag string) (stock.Range, error) {
	if !c.IsSet(flag) {
		return stock.Range{}, nil
	}
	v, err := carfile.Quantities(c.String(flag), carfile.Length, sizes, true)
	switch {
	case err != nil:
		return stock.Range{}, usage("--%s: %v", flag, err)
	case len(v) != 2:
		return stock.Range{}, usage("--%s %q: write MIN:MAX, such as 10:30; either may be left out, such as :30", flag, c.String(flag))
	case v[1] != 0 && v[1] < v[0]:
		return stock.Range{}, usage("--%s %q: the largest is less than the least: write MIN:MAX", flag, c.String(flag))
	}
	return stock.Range{Min: v[0], Max: v[1]}, nil
}
