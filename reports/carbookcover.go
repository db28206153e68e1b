package reports

// carBookHelp tells how a car's workbook is filled in.
var carBookHelp = []string{
	"This workbook is a car file. sixlink check reads it as it stands, like one in text; sixlink convert turns one into the other.",
	"Cells with a grey ground are to be filled in. An empty cell leaves its value out; the note of a heading, or the last column, says what it is, its limits, and what then holds.",
	"Numbers are in the unit of their heading or of the column beside them. A text with a unit of its own, such as 0.875 in, is read as it stands. Another unit may stand in a heading: od (in).",
	"A cell may hold a formula: its result is read as the spreadsheet program saved it. So save the workbook after every change.",
	"Sheets, columns and, where the first column is a key or an axle, rows that begin with # are not read: there is room for your own workings. Anything else that is not understood is refused with its cell.",
	"Hardpoints are those of the left-hand side. Rows of front right and rear right say where the right-hand side is no mirror image.",
	"What has no column of its own goes into the sheet More by its path, such as front.members.rod.ends.both.bearing or cases[Bump].travel.front_left. sixlink schema --reference lists every key.",
}

// readMe writes the first sheet.
func (b *carBook) readMe(r Report, c CarBook) {
	b.do(b.file.SetSheetName("Sheet1", readMe))
	b.printSetup(r, readMe, "portrait")
	b.do(b.file.SetColWidth(readMe, "A", "A", leafWidth))
	g := &cellRows{}
	row := 0
	put := func(style, text string) {
		row++
		g.open(row, lineHeight*cellLines(text, leafWidth-2)+3)
		g.text(0, b.styles[style], text)
		g.close()
	}
	put("title", r.title())
	put("caution", Caution)
	put("text", "")
	for _, text := range append(c.Remarks, carBookHelp...) {
		put("text", text)
	}
	b.keep(readMe, g)
}
