package carfile

var hardpointsKey = Key{
	Name: "hardpoints", Kind: Mapping, Absent: "every hardpoint stands in this file", Also: []string{"points", "points_file", "coordinates_file"},
	Doc: "a CSV file of hardpoints with the columns name, x, y, z: a point stands there or in this file", Fixed: true,
	Keys: []Key{
		{Name: "file", Kind: Text, Required: true, Doc: "the CSV file, from the folder of the car file", Also: []string{"csv", "path"}},
		{Name: "unit", Kind: Choice, Choices: []string{"mm", "cm", "m", "in", "ft"}, Absent: "the heading of the CSV file says it, such as x (in)", Doc: "the unit of its numbers", Also: []string{"units"}},
		{
			Name: "axes", Kind: Mapping, Absent: "those in the heading of the CSV file, such as x rearward (in), or those of this file",
			Doc: "the axes in which the CSV file is drawn", Keys: axesKey.Keys, Also: axesKey.Also,
		},
		{
			Name: "origin", Kind: Numbers, Parts: xyz, Dimension: Length, Range: reach, Fixed: true, Absent: "the two files have one origin",
			Doc: "where the origin of this file lies in the CSV file, in the axes of that one", Also: []string{"offset"},
		},
		{
			Name: "other_points", Kind: Choice, Choices: []string{refuseOthers, ignoreOthers}, Default: refuseOthers,
			Doc: "what becomes of points of the CSV file that are no points of a car file",
		},
	},
}

// The words for what becomes of points that no car file has.
const (
	refuseOthers = "refuse"
	ignoreOthers = "ignore"
)

// pointRow is the table of the columns of a CSV file of hardpoints.
var pointRow = Key{Kind: Mapping, Keys: []Key{
	{Name: "name", Kind: Text, Required: true, Doc: "the name of the point, such as front.rod.inner or Front Rod Inner", Also: []string{"point", "hardpoint", "id", "label"}},
	coordinate("x"), coordinate("y"), coordinate("z"),
	{Name: "notes", Kind: Prose, Doc: "notes for the reader", Also: []string{"note", "comment", "remark", "remarks", "description"}},
}}

func coordinate(name string) Key {
	return Key{Name: name, Kind: Number, Dimension: Length, Range: reach, Required: true, Doc: "the " + name + " of the point"}
}
