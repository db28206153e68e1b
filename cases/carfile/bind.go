package carfile

import (
	"fmt"
	"math"
	"reflect"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members"
)

// A Binding sets values of a file into a car without making the car afresh. Where each
// value goes was found by making cars that differ in it alone, so that there is no
// second list of the keys; what does not go there in proportion cannot be bound.
//
// A binding does not refuse what the reader would refuse of a car as a whole, such as
// exchanged pick-ups. It may be used by several goroutines, each with a car of its own
// that shares nothing with the others.
type Binding struct {
	Units []string
	Base  []float64

	values []Value
	spots  []spot
	tubes  []tubeSpot
}

// A spot is one number of a car that follows from one value: factor times it.
type spot struct {
	value  int
	way    []int // fields and indices; pointers are followed
	factor float64
}

// A tubeSpot is the round tube of a member; the indices are those of its values, −1
// where it stays as it is.
type tubeSpot struct {
	axle, link     int
	od, wall       int
	base           members.Tube
	thinner, limit float64 // the walls for which the strengths of its metal hold: above, to
}

// Bind binds the values at these paths. The error says which value cannot be bound.
func (f File) Bind(paths []string) (*Binding, error) {
	v, err := f.Variant(paths)
	if err != nil {
		return nil, err
	}
	b := &Binding{values: v.Values()}
	for _, value := range b.values {
		b.Base, b.Units = append(b.Base, value.Base), append(b.Units, value.Unit())
	}
	base, err := v.Car(b.Base)
	if err != nil {
		return nil, err
	}
	for i := range b.values {
		if err := b.probe(v, base, i); err != nil {
			return nil, err
		}
	}
	return b, b.verify(v)
}

// Apply sets the values into a car; lengths, E·A and E·I follow. It allocates nothing,
// but for a tube that changes where the car does not hold it as a *members.Tube.
func (b *Binding) Apply(c *cases.Car, x []float64) {
	for _, s := range b.spots {
		at(reflect.ValueOf(c).Elem(), s.way).SetFloat(s.factor*x[s.value] + 0)
	}
	for _, t := range b.tubes {
		strut := &c.Axles[t.axle].Parts[t.link].Strut
		if own, ok := strut.Section.(*members.Tube); ok { // of a car whose tubes are changed in place
			*own = t.tube(x)
		} else if tube := t.tube(x); strut.Section != members.Section(tube) {
			strut.Section = tube
		}
	}
	for i := range c.Axles {
		c.Axles[i].Refresh()
	}
}

func (t tubeSpot) tube(x []float64) members.Tube {
	out := t.base
	if t.od >= 0 {
		out.OD = x[t.od]
	}
	if t.wall >= 0 {
		out.Wall = x[t.wall]
	}
	return out
}

// Within tells whether the values are such as Apply can set: each in its range, and each
// wall one that its tube can have and that its metal has the same strengths for.
func (b *Binding) Within(x []float64) bool {
	for i, v := range b.values {
		if !v.Range.holds(x[i]) {
			return false
		}
	}
	for _, t := range b.tubes {
		tube := t.tube(x)
		if !(tube.Wall <= tube.OD/2) || !(tube.Wall > t.thinner) || t.limit > 0 && !(tube.Wall <= t.limit) {
			return false
		}
	}
	return true
}

// at follows a way from a struct.
func at(v reflect.Value, way []int) reflect.Value {
	for _, i := range way {
		switch v.Kind() {
		case reflect.Struct:
			v = v.Field(i)
		case reflect.Array, reflect.Slice:
			v = v.Index(i)
		}
		if v.Kind() == reflect.Pointer {
			v = v.Elem()
		}
	}
	return v
}

// numbersOf calls do for every float64 of a value, with the way to it.
func numbersOf(v reflect.Value, way []int, do func(v reflect.Value, way []int)) {
	if v.Kind() == reflect.Pointer && !v.IsNil() {
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.Float64:
		do(v, way)
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				numbersOf(v.Field(i), append(way, i), do)
			}
		}
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			numbersOf(v.Index(i), append(way, i), do)
		}
	}
}

// probe finds where one value goes, from two cars that differ from the base in it alone.
func (b *Binding) probe(v *Variant, base cases.Car, i int) error {
	x, probes := append([]float64(nil), b.Base...), 0
	first, firstAt := cases.Car{}, 0.0
	delta := 1e-3 * max(math.Abs(b.Base[i]), 1)
	for _, d := range []float64{delta, -delta, delta / 2, -delta / 2} {
		x[i] = b.Base[i] + d
		car, err := v.Car(x)
		if err != nil {
			continue
		}
		if probes++; probes == 1 {
			first, firstAt = car, x[i]
			continue
		}
		return b.place(i, [3]cases.Car{base, first, car}, [3]float64{b.Base[i], firstAt, x[i]})
	}
	return fmt.Errorf("%s cannot be set by itself: its range about %s has no other car", b.values[i].Path, short(b.Base[i]))
}

// place records the spots of a value from three cars and their values.
func (b *Binding) place(i int, cars [3]cases.Car, x [3]float64) error {
	var ways [][]int
	var numbers [3][]float64
	for k := range cars {
		numbersOf(reflect.ValueOf(&cars[k]), nil, func(v reflect.Value, way []int) {
			if k == 0 {
				ways = append(ways, append([]int(nil), way...))
			}
			numbers[k] = append(numbers[k], v.Float())
		})
	}
	if len(numbers[1]) != len(numbers[0]) || len(numbers[2]) != len(numbers[0]) {
		return fmt.Errorf("%s changes more than numbers", b.values[i].Path)
	}
	follows := following(cars[0])
	for n, way := range ways {
		y := [3]float64{numbers[0][n], numbers[1][n], numbers[2][n]}
		if y[0] == y[1] && y[0] == y[2] || follows[key(way)] {
			continue
		}
		factor := math.Round(y[1] / x[1])
		if b.values[i].Relative {
			factor = y[0] // x is 1
		}
		for k := range y {
			if factor*x[k]+0 != y[k]+0 {
				return fmt.Errorf("%s does not go into the car in proportion", b.values[i].Path)
			}
		}
		b.spots = append(b.spots, spot{i, way, factor})
	}
	return b.placeTubes(i, cars)
}

// following are the numbers that Apply works out by itself.
func following(c cases.Car) map[string]bool {
	out := map[string]bool{}
	own := map[*float64]bool{}
	for i := range c.Axles {
		for _, s := range c.Axles[i].Held() {
			for j := range s.Parts {
				l := &s.Corner.Links[j]
				own[&s.Parts[j].Strut.Length], own[&l.EA], own[&l.EI] = true, true, true
			}
		}
	}
	numbersOf(reflect.ValueOf(&c).Elem(), nil, func(v reflect.Value, way []int) {
		if v.CanAddr() && own[v.Addr().Interface().(*float64)] {
			out[key(way)] = true
		}
	})
	return out
}

func key(way []int) string { return fmt.Sprint(way) }

// placeTubes records the tubes that a value changes.
func (b *Binding) placeTubes(i int, cars [3]cases.Car) error {
	for axle := range cars[0].Axles {
		for link := range loads.NumLinks {
			was, now := cars[0].Axles[axle].Parts[link].Strut, cars[1].Axles[axle].Parts[link].Strut
			if was.Section == now.Section {
				continue
			}
			old, round := was.Round()
			tube, _ := now.Round()
			if !round || cars[0].Axles[axle].Parts[link].Laminate != nil {
				return fmt.Errorf("%s changes a section that is no round tube of metal", b.values[i].Path)
			}
			t := b.tubeOf(axle, link, was, old)
			if tube.OD != old.OD {
				t.od = i
			}
			if tube.Wall != old.Wall {
				t.wall = i
			}
		}
	}
	return nil
}

// tubeOf returns the record of the tube of a member, a new one if there is none.
func (b *Binding) tubeOf(axle, link int, strut members.Strut, tube members.Tube) *tubeSpot {
	for k := range b.tubes {
		if t := &b.tubes[k]; t.axle == axle && t.link == link {
			return t
		}
	}
	t := tubeSpot{axle: axle, link: link, od: -1, wall: -1, base: tube, limit: strut.Metal.WallTo}
	for _, m := range materials.All() {
		if m.Name == strut.Metal.Name && m.WallTo > 0 && m.WallTo < tube.Wall {
			t.thinner = max(t.thinner, m.WallTo)
		}
	}
	b.tubes = append(b.tubes, t)
	return &b.tubes[len(b.tubes)-1]
}

// verify holds the binding to the reader: with all values moved at once both must come
// to the same car.
func (b *Binding) verify(v *Variant) error {
	for _, share := range []float64{1e-3, -1e-3, 5e-4, 0} {
		x := append([]float64(nil), b.Base...)
		for i := range x {
			x[i] += share * max(math.Abs(x[i]), 1) * float64(1+i%3) / 3
			if !b.values[i].Range.holds(x[i]) {
				x[i] = b.Base[i]
			}
		}
		want, err := v.Car(x)
		if err != nil || !b.Within(x) {
			continue
		}
		got, _ := v.Car(b.Base) // it was made before
		b.Apply(&got, x)
		if got.Doubts = want.Doubts; !reflect.DeepEqual(got, want) {
			return fmt.Errorf("the values cannot be set together: what follows from one depends on another")
		}
		if share != 0 {
			return nil
		}
	}
	return nil
}
