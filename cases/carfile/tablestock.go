package carfile

// StockFormat is the value of the key format of a list of tubes.
const StockFormat = "sixlink-stock/1"

// mostTubes bounds a list of tubes, as mostEntries does the lists of a car file: sizing
// tries them at every member.
const mostTubes = 1000

// stockKey is the table of a list of the user's own: as YAML, and, by the rows of its
// list sizes, the columns of one as CSV.
var stockKey = Key{Kind: Mapping, Doc: "a list of tubes", Keys: []Key{
	{Name: "format", Kind: Choice, Required: true, Choices: []string{StockFormat}, Doc: "the format of the file and its version"},
	{Name: "name", Kind: Text, Absent: "the name of the file", Doc: "the name of the list", Also: []string{"title"}},
	{Name: "currency", Kind: Text, Absent: "prices without a currency", Doc: "the currency of the prices"},
	{Name: "sizes", Kind: List, Required: true, Most: mostTubes, Keys: sizeKeys, Doc: "the tubes", Also: []string{"tubes", "stock"}},
}}

var sizeKeys = []Key{
	{Name: "od", Kind: Number, Dimension: Length, Range: sizes, Required: true, Doc: "the outer diameter", Also: []string{"outer_diameter", "diameter"}},
	{Name: "wall", Kind: Number, Dimension: Length, Range: sizes, Required: true, Doc: "the wall", Also: []string{"thickness", "wall_thickness"}},
	{Name: "material", Kind: Text, Absent: "of any material", Doc: "the material of which alone the size is in stock"},
	{Name: "price", Kind: Number, Range: Range{Max: 1e6}, Absent: "no price", Doc: "the price of a metre", Also: []string{"cost"}},
	{Name: "part", Kind: Text, Doc: "the number under which it is ordered", Also: []string{"part_number", "order_number"}},
	{Name: "source", Kind: Text, Absent: "the file and the line", Doc: "where the size comes from", Also: []string{"supplier"}},
}
