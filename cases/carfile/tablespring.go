package carfile

// mostPoints bounds the points of a curve: our own choice, with no published source.
const mostPoints = 100

// springKeys describe the spring of a rocker beyond its points.
var springKeys = []Key{
	{Name: "rate", Kind: Number, Dimension: ForcePerLength, Range: Range{Max: 1e5, Above: true}, Absent: "no load case by damper_speed", Doc: "the rate of the spring", Also: []string{"spring_rate", "stiffness"}},
	{
		Name: "preload", Kind: Number, Dimension: Force, Range: Range{Max: 1e6}, With: "rate", Absent: "that under the static load of the wheel, unless free_length is given",
		Doc: "the force of the spring in the position drawn",
	},
	{
		Name: "free_length", Kind: Number, Dimension: Length, Range: Range{Max: 5000, Above: true}, With: "rate", Absent: "preload says how the spring stands",
		Doc: "the distance of the spring's two points at which it has no force",
	},
	{Name: "bump_stop", Kind: Mapping, With: "rate", Absent: "no bump stop", Doc: "the bump stop on the line of the spring", Keys: []Key{
		{Name: "gap", Kind: Number, Dimension: Length, Range: Range{Min: -500, Max: 500}, Required: true, Doc: "the shortening of the spring from the position drawn until the stop touches"},
		series("compression", Length, Range{Max: 500}, "the compressions of the stop at the points of its curve, from 0"),
		series("force", Force, Range{Max: 1e6}, "its forces there"),
	}, Also: []string{"bumpstop", "packer"}},
	{Name: "damper", Kind: Mapping, With: "rate", Absent: "no damper: damper_speed is 0", Doc: "the damper on the line of the spring", Keys: []Key{
		series("speed", Speed, Range{Min: -20, Max: 20}, "the speeds at the points of its curve, shortening positive"),
		series("force", Force, Range{Min: -1e6, Max: 1e6}, "its forces there, against shortening positive"),
	}},
}

func series(name string, d Dimension, r Range, doc string) Key {
	return Key{Name: name, Kind: Numbers, Parts: []string{"first", "second", "…"}, Most: mostPoints, Dimension: d, Range: r, Required: true, Doc: doc}
}

var torsionBarSpringKey = Key{
	Name: "torsion_bar_spring", Kind: Mapping, With: "torsion_bar", Absent: "no load case by damper_speed", Doc: "the torsion bar as a spring", Keys: []Key{
		{Name: "rate", Kind: Number, Dimension: TorquePerAngle, Range: Range{Max: 1e7, Above: true}, Required: true, Doc: "the rate of the torsion bar"},
		{Name: "preload", Kind: Number, Dimension: Moment, Range: Range{Min: -1e5, Max: 1e5}, Absent: "that under the static load of the wheel", Doc: "the torque of the torsion bar in the position drawn"},
	},
}
