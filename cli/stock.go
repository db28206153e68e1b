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
	ratios  = carfile.Range{Max: 100, Above: true}
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

func readTerms(c *cli.Context) (t terms, err error) {
	if t.target, err = quantity(c, "target", carfile.Pure, ratios); err != nil {
		return t, err
	}
	if t.limits.OD, err = limit(c, "od-limit"); err != nil {
		return t, err
	}
	if t.limits.Wall, err = limit(c, "wall-limit"); err != nil {
		return t, err
	}
	t.list, err = readStock(c.String("stock"))
	return t, err
}

// readStock returns a stock by its name, or reads it.
func readStock(name string) (stock.List, error) {
	if list, ok := stock.Named(name); ok {
		return list, nil
	}
	src, err := readFile(name)
	if errors.Is(err, os.ErrNotExist) || err != nil && !strings.ContainsAny(name, "./\\") {
		return stock.List{}, usage("--stock %q: there is no such file, and the stocks by standard are %s", name, strings.Join(stock.Names, ", "))
	}
	if err != nil {
		return stock.List{}, err
	}
	list, err := carfile.ReadStock(name, src)
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
