package fatigue

// The partial factors γ_Mf on fatigue strength: EN 1993-1-9:2005, Table 3.1, from memory.
// Damage tolerant: cracks are looked for and found before they matter. Safe life: they are
// not. The consequence of failure is that for people first.
const (
	TolerantLow  = 1.0
	TolerantHigh = 1.15
	SafeLifeLow  = 1.15
	SafeLifeHigh = 1.35
)

// SourcePartial is the source of the partial factors.
const SourcePartial = "EN 1993-1-9:2005, Table 3.1, from memory"
