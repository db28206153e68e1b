package materials

// constants are elastic constants as published: E, Ec, G in MPa, density in kg/m³.
// Those in Msi and lb/in³ were turned into SI by hand with the factors of NIST SP 811,
// App. B.8 (6.894 757 MPa; 27.680 g/cm³), and stand to 1 MPa and 0.1 kg/m³.
type constants struct {
	e, ec, g, nu, density float64
	source                string
	memory                string // the values from memory of that source
}

var (
	structural        = constants{210000, 0, 81000, 0.3, 7850, "EN 1993-1-1:2005, 3.2.6", "E, G, nu, density"}
	borrowedSteel     = constants{210000, 0, 81000, 0.3, 7850, "borrowed: the constants of structural steel, EN 1993-1-1:2005, 3.2.6", "E, G, nu, density"}
	lowAlloy          = constants{199948, 199948, 75842, 0.32, 7833.4, "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.0", ""}
	hardening         = constants{196501, 0, 77221, 0.27, 7833.4, "MIL-HDBK-5J (31 Jan 2003), 2.6", ""} // 28.5, 11.2 Msi, 0.282 to 0.283 lb/in³
	eurocode9         = constants{70000, 0, 27000, 0.3, 2700, "EN 1999-1-1:2007, 3.2.5", "E, G, nu, density"}
	borrowedEurocode9 = constants{70000, 0, 27000, 0.3, 2700, "borrowed: EN 1999-1-1:2007, 3.2.5", "E, G, nu, density"}
	al6061            = constants{68258, 69637, 26200, 0.33, 2712.6, "MIL-HDBK-5J (31 Jan 2003), ch. 3", "E, Ec, G, nu, density"} // 9.9, 10.1, 3.8 Msi, 0.098
	al7075            = constants{71016, 72395, 26890, 0.33, 2795.7, "MIL-HDBK-5J (31 Jan 2003), ch. 3", "E, Ec, G, nu, density"} // 10.3, 10.5, 3.9 Msi, 0.101
	al2024            = constants{72395, 73774, 27579, 0.33, 2768.0, "MIL-HDBK-5J (31 Jan 2003), ch. 3", "E, Ec, G, nu, density"} // 10.5, 10.7, 4.0 Msi, 0.100
	al2014            = constants{72395, 73774, 27579, 0.33, 2795.7, "MIL-HDBK-5J (31 Jan 2003), ch. 3", "E, Ec, G, nu, density"} // the same, 0.101
	tiBar             = constants{116521, 118590, 42747, 0.31, 4428.8, "MIL-HDBK-5J (31 Jan 2003), 5.4.1", "E, Ec"}               // 16.9, 17.2, 6.2 Msi, 0.160
	tiSheet           = constants{110316, 113074, 42747, 0.31, 4428.8, "MIL-HDBK-5J (31 Jan 2003), 5.4.1", ""}                    // 16.0, 16.4, 6.2 Msi
	ti3               = constants{103421, 0, 0, 0.3, 4484.2, "nu assumed, no published value at hand", "E, density"}              // 15 Msi, 0.162
)

// published are the values of the documents. Those in ksi were turned into MPa by hand
// with the factor of NIST SP 811, App. B.8 (6.894 757), and stand to 0.1 MPa; 0 where
// the document, as far as it is known, gives none.
var published = []struct {
	name         string
	wall, wallTo float64    // mm
	strength     [8]float64 // MPa: Su, Sy, Scy, Ssu, Sbru at e/D 1.5 and 2.0, Sbry at 1.5 and 2.0
	elongation   float64    // %
	basis        string
	source       string // of the strengths
	elastic      constants
	memory       string // the strengths from memory of that source
}{
	{"E235+C", 1.5, 0, [8]float64{480, 0, 0, 0, 0, 0, 0, 0}, 6, "specification minimum", "EN 10305-1, mechanical properties, E235 +C", structural, ""},
	{"E235+LC", 1.5, 0, [8]float64{420, 0, 0, 0, 0, 0, 0, 0}, 10, "specification minimum", "EN 10305-1, mechanical properties, E235 +LC", structural, ""},
	{"E235+SR", 1.5, 0, [8]float64{420, 350, 0, 0, 0, 0, 0, 0}, 16, "specification minimum", "EN 10305-1, mechanical properties, E235 +SR", structural, ""},
	{"E235+A", 1.5, 0, [8]float64{315, 0, 0, 0, 0, 0, 0, 0}, 25, "specification minimum", "EN 10305-1, mechanical properties, E235 +A", structural, ""},
	{"E235+N", 1.5, 0, [8]float64{340, 235, 0, 0, 0, 0, 0, 0}, 25, "specification minimum", "EN 10305-1, mechanical properties, E235 +N", structural, ""},
	{"E255+C", 1.5, 0, [8]float64{580, 0, 0, 0, 0, 0, 0, 0}, 5, "specification minimum", "EN 10305-1, mechanical properties, E255 +C", structural, ""},
	{"E255+LC", 1.5, 0, [8]float64{520, 0, 0, 0, 0, 0, 0, 0}, 8, "specification minimum", "EN 10305-1, mechanical properties, E255 +LC", structural, ""},
	{"E255+SR", 1.5, 0, [8]float64{520, 375, 0, 0, 0, 0, 0, 0}, 12, "specification minimum", "EN 10305-1, mechanical properties, E255 +SR", structural, ""},
	{"E255+A", 1.5, 0, [8]float64{390, 0, 0, 0, 0, 0, 0, 0}, 21, "specification minimum", "EN 10305-1, mechanical properties, E255 +A", structural, ""},
	{"E255+N", 1.5, 0, [8]float64{440, 255, 0, 0, 0, 0, 0, 0}, 21, "specification minimum", "EN 10305-1, mechanical properties, E255 +N", structural, ""},
	{"E355+C", 1.5, 0, [8]float64{640, 0, 0, 0, 0, 0, 0, 0}, 4, "specification minimum", "EN 10305-1, mechanical properties, E355 +C", structural, ""},
	{"E355+LC", 1.5, 0, [8]float64{580, 0, 0, 0, 0, 0, 0, 0}, 7, "specification minimum", "EN 10305-1, mechanical properties, E355 +LC", structural, ""},
	{"E355+SR", 1.5, 0, [8]float64{580, 450, 0, 0, 0, 0, 0, 0}, 10, "specification minimum", "EN 10305-1, mechanical properties, E355 +SR", structural, ""},
	{"E355+A", 1.5, 0, [8]float64{450, 0, 0, 0, 0, 0, 0, 0}, 22, "specification minimum", "EN 10305-1, mechanical properties, E355 +A", structural, ""},
	{"E355+N", 1.5, 0, [8]float64{490, 355, 0, 0, 0, 0, 0, 0}, 22, "specification minimum", "EN 10305-1, mechanical properties, E355 +N", structural, ""},
	{"C35E+C", 1.5, 0, [8]float64{590, 0, 0, 0, 0, 0, 0, 0}, 5, "specification minimum", "EN 10305-1, mechanical properties, C35E +C", structural, ""},
	{"C35E+LC", 1.5, 0, [8]float64{540, 0, 0, 0, 0, 0, 0, 0}, 7, "specification minimum", "EN 10305-1, mechanical properties, C35E +LC", structural, ""},
	{"C35E+A", 1.5, 0, [8]float64{440, 0, 0, 0, 0, 0, 0, 0}, 22, "specification minimum", "EN 10305-1, mechanical properties, C35E +A", structural, ""},
	{"C35E+N", 1.5, 0, [8]float64{460, 280, 0, 0, 0, 0, 0, 0}, 21, "specification minimum", "EN 10305-1, mechanical properties, C35E +N", structural, ""},
	{"C45E+C", 1.5, 0, [8]float64{720, 0, 0, 0, 0, 0, 0, 0}, 4, "specification minimum", "EN 10305-1, mechanical properties, C45E +C", structural, ""},
	{"C45E+LC", 1.5, 0, [8]float64{670, 0, 0, 0, 0, 0, 0, 0}, 6, "specification minimum", "EN 10305-1, mechanical properties, C45E +LC", structural, ""},
	{"C45E+A", 1.5, 0, [8]float64{510, 0, 0, 0, 0, 0, 0, 0}, 20, "specification minimum", "EN 10305-1, mechanical properties, C45E +A", structural, ""},
	{"C45E+N", 1.5, 0, [8]float64{540, 340, 0, 0, 0, 0, 0, 0}, 18, "specification minimum", "EN 10305-1, mechanical properties, C45E +N", structural, ""},
	{"E235+N welded", 1.5, 0, [8]float64{340, 235, 0, 0, 0, 0, 0, 0}, 25, "specification minimum", "EN 10305-2, mechanical properties, E235 +N", structural, "strengths"},
	{"E275+N welded", 1.5, 0, [8]float64{410, 275, 0, 0, 0, 0, 0, 0}, 21, "specification minimum", "EN 10305-2, mechanical properties, E275 +N", structural, "strengths"},
	{"E355+N welded", 1.5, 0, [8]float64{490, 355, 0, 0, 0, 0, 0, 0}, 22, "specification minimum", "EN 10305-2, mechanical properties, E355 +N", structural, "strengths"},
	{"4130 normalized", 1.5, 0.188 * 25.4, [8]float64{655.0, 517.1, 517.1, 393.0, 0, 1379.0, 0, 889.4}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.0", lowAlloy, "Scy Ssu Sbry2.0"},
	{"4130 normalized", 6, 0, [8]float64{620.5, 482.6, 482.6, 372.3, 0, 1310.0, 0, 827.4}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.0", lowAlloy, "strengths"},
	{"4130 HT-125", 1.5, 0.188 * 25.4, [8]float64{861.8, 689.5, 751.5, 517.1, 1337.6, 1730.6, 1006.6, 1206.6}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.0", lowAlloy, ""},
	{"4130 HT-150", 1.5, 0.188 * 25.4, [8]float64{1034.2, 930.8, 972.2, 620.5, 1592.7, 1965.0, 1447.9, 1599.6}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.0", lowAlloy, ""},
	{"4340 HT-150", 5, 2.5 / 2 * 25.4, [8]float64{1034.2, 930.8, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.3", lowAlloy, ""},
	{"4340 HT-180", 5, 2.5 / 2 * 25.4, [8]float64{1241.1, 1123.8, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.3", lowAlloy, ""},
	{"4340 HT-200", 5, 2.5 / 2 * 25.4, [8]float64{1379.0, 1213.5, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.3", lowAlloy, ""},
	{"4340 HT-220", 5, 1.7 / 2 * 25.4, [8]float64{1516.8, 1379.0, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.3", lowAlloy, ""},
	{"4340 HT-260", 5, 1.7 / 2 * 25.4, [8]float64{1792.6, 1482.4, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.3.1.3", lowAlloy, ""},
	{"17-4PH H900", 5, 0, [8]float64{1310.0, 1172.1, 0, 848.1, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.6.9.0(b)", hardening, "Ssu"},
	{"17-4PH H1025", 5, 0, [8]float64{1068.7, 999.7, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.6.9.0", hardening, "strengths"},
	{"15-5PH H900", 5, 0, [8]float64{1310.0, 1172.1, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.6.7.0", hardening, "strengths"},
	{"15-5PH H1025", 5, 0, [8]float64{1068.7, 999.7, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 2.6.7.0", hardening, "strengths"},
	{"25CrMo4+QT", 2, 8, [8]float64{900, 700, 0, 0, 0, 0, 0, 0}, 12, "specification minimum", "EN 10297-1", borrowedSteel, "strengths"},
	{"25CrMo4+QT", 12, 20, [8]float64{800, 600, 0, 0, 0, 0, 0, 0}, 14, "specification minimum", "EN 10297-1", borrowedSteel, "strengths"},
	{"25CrMo4+QT", 30, 50, [8]float64{700, 450, 0, 0, 0, 0, 0, 0}, 15, "specification minimum", "EN 10297-1", borrowedSteel, "strengths"},
	{"6082-T6", 2, 5, [8]float64{290, 250, 0, 0, 0, 0, 0, 0}, 8, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6082 T6 EP/ET", eurocode9, "strengths"},
	{"6082-T6", 10, 15, [8]float64{310, 260, 0, 0, 0, 0, 0, 0}, 10, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6082 T6 EP/ET", eurocode9, "strengths"},
	{"6082-T6 drawn", 2, 5, [8]float64{310, 255, 0, 0, 0, 0, 0, 0}, 8, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6082 T6 DT", eurocode9, "strengths"},
	{"6061-T6", 2, 20, [8]float64{260, 240, 0, 0, 0, 0, 0, 0}, 8, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6061 T6", eurocode9, ""},
	{"6060-T6", 2, 15, [8]float64{170, 140, 0, 0, 0, 0, 0, 0}, 8, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6060 T6", eurocode9, ""},
	{"6063-T6", 2, 25, [8]float64{195, 160, 0, 0, 0, 0, 0, 0}, 8, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6063 T6", eurocode9, ""},
	{"6005A-T6", 2, 5, [8]float64{255, 215, 0, 0, 0, 0, 0, 0}, 8, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-6005A T6", eurocode9, ""},
	{"7020-T6", 2, 15, [8]float64{350, 290, 0, 0, 0, 0, 0, 0}, 10, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-7020 T6 EP,ET,ER/B", eurocode9, "strengths"},
	{"7020-T6 drawn", 2, 20, [8]float64{350, 280, 0, 0, 0, 0, 0, 0}, 10, "characteristic", "EN 1999-1-1:2007, Table 3.2b, EN AW-7020 T6 DT", eurocode9, "strengths"},
	{"6082-T6 EN 755-2", 2, 5, [8]float64{290, 250, 0, 0, 0, 0, 0, 0}, 8, "specification minimum", "EN 755-2", borrowedEurocode9, "strengths"},
	{"6082-T6 EN 755-2", 10, 25, [8]float64{310, 260, 0, 0, 0, 0, 0, 0}, 10, "specification minimum", "EN 755-2", borrowedEurocode9, "strengths"},
	{"7020-T6 EN 755-2", 2, 0, [8]float64{350, 290, 0, 0, 0, 0, 0, 0}, 10, "specification minimum", "EN 755-2", borrowedEurocode9, "strengths"},
	{"6061-T6 EN 755-2", 2, 0, [8]float64{260, 240, 0, 0, 0, 0, 0, 0}, 8, "specification minimum", "EN 755-2", borrowedEurocode9, "strengths"},
	{"6061-T6 EN 754-2", 2, 0, [8]float64{290, 240, 0, 0, 0, 0, 0, 0}, 10, "specification minimum", "EN 754-2", borrowedEurocode9, "strengths"},
	{"6082-T6 EN 754-2", 2, 5, [8]float64{310, 255, 0, 0, 0, 0, 0, 0}, 8, "specification minimum", "EN 754-2", borrowedEurocode9, "strengths"},
	{"6061-T6 drawn", 2, 0, [8]float64{289.6, 241.3, 234.4, 186.2, 461.9, 606.7, 337.8, 386.1}, 0, "S/A", "MIL-HDBK-5J (31 Jan 2003), Table 3.6.2.0", al6061, "strengths"},
	{"6061-T6 extrusion", 2, 0, [8]float64{262.0, 241.3, 234.4, 179.3, 420.6, 551.6, 337.8, 386.1}, 0, "A", "MIL-HDBK-5J (31 Jan 2003), Table 3.6.2.0", al6061, "strengths"},
	{"7075-T6", 2, 0, [8]float64{530.9, 455.1, 441.3, 317.2, 689.5, 848.1, 592.9, 634.3}, 0, "A", "MIL-HDBK-5J (31 Jan 2003), Table 3.7.6.0", al7075, "strengths"},
	{"7075-T651 plate", 2, 0, [8]float64{530.9, 461.9, 0, 0, 0, 999.7, 0, 0}, 0, "A", "MIL-HDBK-5J (31 Jan 2003), Table 3.7.6.0(b)", al7075, ""},
	{"7075-T73 bar", 2, 0, [8]float64{468.8, 386.1, 379.2, 289.6, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 3.7.6.0", al7075, "strengths"},
	{"2024-T3 sheet", 2, 0.128 * 25.4, [8]float64{441.3, 324.1, 268.9, 268.9, 717.1, 889.4, 503.3, 606.7}, 0, "A", "MIL-HDBK-5J (31 Jan 2003), Table 3.2.3.0(b1)", al2024, "strengths"},
	{"2024-T3 drawn tube", 2, 0, [8]float64{441.3, 289.6, 289.6, 268.9, 675.7, 861.8, 441.3, 544.7}, 0, "A/S", "MIL-HDBK-5J (31 Jan 2003), Table 3.2.3.0", al2024, "strengths"},
	{"2014-T6 bar", 2, 0, [8]float64{448.2, 379.2, 365.4, 262.0, 675.7, 854.9, 530.9, 606.7}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 3.2.1.0", al2014, "strengths"},
	{"Ti-6Al-4V", 2, 0, [8]float64{896.3, 827.4, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 5.4.1.0(c1)", tiBar, ""},
	{"Ti-6Al-4V bar to 0.5 in", 2, 0.25 * 25.4, [8]float64{930.8, 861.8, 0, 0, 0, 0, 0, 0}, 0, "S", "MIL-HDBK-5J (31 Jan 2003), Table 5.4.1.0(c1)", tiBar, "strengths"},
	{"Ti-6Al-4V sheet", 2, 0, [8]float64{923.9, 868.7, 0, 0, 0, 1875.4, 0, 0}, 0, "A", "MIL-HDBK-5J (31 Jan 2003), 5.4.1", tiSheet, ""},
	{"Ti-3Al-2.5V CWSR", 1, 0, [8]float64{861.8, 723.9, 0, 0, 0, 0, 0, 0}, 10, "specification minimum", "AMS 4944/4945", ti3, "strengths"},
	{"Ti-3Al-2.5V annealed", 1, 0, [8]float64{620.5, 517.1, 0, 0, 0, 0, 0, 0}, 15, "specification minimum", "AMS 4943", ti3, "strengths"},
}
