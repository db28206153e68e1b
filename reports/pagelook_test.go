package reports_test

import (
	"fmt"
	"testing"

	"sixlink/reports"
)

// contrastScript returns texts whose contrast to what is behind them is below 4.5 to 1:
// WCAG 2.1, 1.4.3, with relative luminance and contrast ratio as defined there.
const contrastScript = `(() => {
  const parse = (c) => { const m = c.match(/[\d.]+/g).map(Number); return m.length < 4 ? [...m, 1] : m; };
  const over = (top, below) => [0, 1, 2].map((i) => top[i] * top[3] + below[i] * (1 - top[3]));
  const channel = (v) => (v /= 255) <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const luminance = (c) => 0.2126 * channel(c[0]) + 0.7152 * channel(c[1]) + 0.0722 * channel(c[2]);
  const behind = (e) => {
    const layers = [];
    for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor); layers.push(c); if (c[3] === 1) break; }
    return layers.reverse().reduce((below, c) => over(c, below), [255, 255, 255]);
  };
  const out = [], seen = new Set();
  let n = 0;
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const e = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !e.checkVisibility() || e.closest("script, style, title, desc, option, tr:nth-child(n+9) td:not(.fail)")) continue;
    const svg = e instanceof SVGElement, s = getComputedStyle(e);
    const box = svg && e.previousElementSibling && e.previousElementSibling.matches("polygon.fill-hot") ? parse(getComputedStyle(e.previousElementSibling).fill) : behind(e);
    const key = e.tagName + s.color + s.fill + box;
    n++;
    if (seen.has(key)) continue;
    seen.add(key);
    const [a, b] = [luminance(over(parse(svg ? s.fill : s.color), box)), luminance(box)];
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    if (!(ratio >= 4.5)) out.push(ratio.toFixed(2) + " " + e.tagName + " " + walk.currentNode.data.trim().slice(0, 40));
  }
  return {Low: out, Texts: n};
})()`

// contrast: every text in both schemes, as the system has it and as the reader chooses,
// of a car that fails, so that its marks are on the page.
func contrast(t *testing.T, b *browser, _ reports.Report) {
	r := report(t, "tube: [16, 1.5]", "tube: [8, 0.5]")
	if r.Pass {
		t.Fatal("the car is to fail")
	}
	for _, scheme := range []string{"light", "dark"} {
		b.open(t, r, 1280, scheme)
		for _, choice := range []string{"auto", "light", "dark"} {
			eval[bool](t, b, fmt.Sprintf(`document.getElementById("scheme-%s").click()`, choice)+`, true`)
			got := eval[struct {
				Low   []string
				Texts int
			}](t, b, contrastScript)
			if got.Texts < 800 {
				t.Errorf("%s, %s: only %d texts looked at", scheme, choice, got.Texts)
			}
			for _, low := range got.Low {
				t.Errorf("%s, %s: contrast %s", scheme, choice, low)
			}
			dark := eval[bool](t, b, `getComputedStyle(document.documentElement).backgroundColor.match(/\d+/g)[0] < 128`)
			if want := choice == "dark" || choice == "auto" && scheme == "dark"; dark != want {
				t.Errorf("%s, %s: dark is %v", scheme, choice, dark)
			}
		}
	}
}

// overlapScript returns pairs of texts that lie on each other, outside tables, which part
// their cells themselves; of those it returns the ones that run out of their cell.
const overlapScript = `(() => {
  const out = [], boxes = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode, e = text.parentElement;
    if (!text.data.trim() || !e.checkVisibility() || e.closest("script, style, title, desc, option, table, #readout, .skip")) continue;
    const range = document.createRange();
    range.selectNodeContents(text);
    for (const r of range.getClientRects()) boxes.push({l: r.left, r: r.right, t: r.top + r.height * 0.15, b: r.bottom - r.height * 0.15, text: text.data.trim().slice(0, 30), e});
  }
  boxes.sort((a, b) => a.t - b.t);
  boxes.forEach((a, i) => {
    for (let j = i + 1; j < boxes.length && boxes[j].t < a.b - 1; j++) {
      const b = boxes[j];
      const own = a.e.closest(".view"), other = b.e.closest(".view");
      if (own !== other && (own || other)) continue; // a view scrolls in its own box
      if (Math.min(a.r, b.r) - Math.max(a.l, b.l) > 1 && Math.min(a.b, b.b) - Math.max(a.t, b.t) > 1) out.push(a.text + " / " + b.text);
    }
  });
  for (const c of document.querySelectorAll("th, tr:nth-child(-n+40) td")) if (c.scrollWidth > c.clientWidth + 1 && c.checkVisibility()) out.push("runs out of its cell: " + c.textContent.slice(0, 40));
  for (const e of document.querySelectorAll("svg.chart text")) { const r = e.getBoundingClientRect(), p = e.ownerSVGElement.getBoundingClientRect(); if (r.left < p.left - 1 || r.right > p.right + 1) out.push("runs out of its chart: " + e.textContent); }
  return {Found: out.slice(0, 20), Texts: boxes.length, Wide: document.documentElement.scrollWidth - document.documentElement.clientWidth};
})()`

// widths: nothing lies on anything else, and the page never scrolls sideways.
func widths(t *testing.T, b *browser, r reports.Report) {
	b.open(t, r, 1280, "light")
	for _, width := range []int64{360, 768, 1280, 1920} {
		b.size(t, width, "light")
		for corner := range 4 {
			b.pick(t, corner, 6)
			got := eval[struct {
				Found       []string
				Texts, Wide int
			}](t, b, overlapScript)
			if got.Texts < 100 {
				t.Errorf("%d px: only %d texts looked at", width, got.Texts)
			}
			if got.Wide > 0 {
				t.Errorf("%d px: the page is %d px too wide", width, got.Wide)
			}
			for _, pair := range got.Found {
				t.Errorf("%d px, corner %d: %s", width, corner, pair)
			}
		}
	}
}
