"use strict";
// Puts in place what the page already holds: no number is made here.
(() => {
  const facts = JSON.parse(document.getElementById("facts").textContent);
  const byId = (id) => document.getElementById(id);
  const corners = [...document.querySelectorAll(".corner")];
  const readout = byId("readout");
  const picker = byId("picker");
  const select = byId("case");
  const shown = corners.map((c, i) => facts.worst[i]); // the case on each corner's board
  const first = corners.map((c) => [...c.querySelectorAll(".view")].map((view) => view.cloneNode(true)));
  let corner = 0;
  let member = "";

  const element = (name, text) => {
    const e = document.createElement(name);
    e.textContent = text;
    return e;
  };

  // changed makes the changes in a copy of a drawing.
  const changed = (original, changes) => {
    const view = original.cloneNode(true);
    const elements = [view.querySelector("svg"), ...view.querySelectorAll("svg *")];
    for (let n = 0; n < changes.length; n += 3) {
      const element = elements[changes[n]];
      const name = facts.lines[changes[n + 1]];
      if (name === "") element.textContent = facts.lines[changes[n + 2]];
      else if (changes[n + 2] < 0) element.removeAttribute(name);
      else element.setAttribute(name, facts.lines[changes[n + 2]]);
    }
    return view;
  };

  // board returns the drawings of a corner in a case: the first ones, changed.
  const board = (i, k) => first[i].map((view, v) => changed(view, facts.changes[i][k][v]));

  const show = (i, k) => {
    corner = i;
    corners.forEach((c, n) => { c.hidden = n !== i; });
    if (shown[i] !== k) {
      corners[i].querySelector(".views").replaceChildren(...board(i, k));
      corners[i].querySelector(".says").textContent = facts.says[i][k];
      const rows = corners[i].querySelectorAll(".members tbody tr");
      facts.facts[i][k].forEach((f, n) => {
        rows[n].querySelectorAll("td").forEach((td, c) => {
          td.textContent = f.cells[c];
          td.classList.toggle("fail", f.cells[c] === "FAIL");
        });
      });
      shown[i] = k;
    }
    select.value = String(k);
    byId("says").textContent = facts.says[i][k];
    tell(member);
  };

  // tell shows the numbers of a member and marks it in every drawing.
  const known = (key) => [...facts.facts[corner][shown[corner]], ...facts.others[corner][shown[corner]]].find((x) => x.key === key);
  const tell = (key) => {
    const f = known(key) || facts.facts[corner][shown[corner]][facts.low[corner][shown[corner]]];
    member = f.key;
    corners[corner].querySelectorAll("[data-key]").forEach((e) => e.classList.toggle("on", e.dataset.key === member));
    byId("readout-head").textContent = f.name;
    readout.querySelector("dl").replaceChildren(...f.rows.map(([name, text]) => {
      const pair = document.createElement("div");
      pair.append(element("dt", name), element("dd", text));
      return pair;
    }));
    const working = f.working || [];
    readout.querySelector("details").hidden = working.length === 0;
    readout.querySelector("pre").textContent = working.map((n) => facts.lines[n]).join("\n");
  };

  const point = (event) => {
    const at = event.target.closest ? event.target.closest("[data-key]") : null;
    if (at && corners[corner].contains(at) && at.dataset.key !== member && known(at.dataset.key)) tell(at.dataset.key);
  };
  for (const kind of ["mouseover", "focusin", "click"]) byId("corners").addEventListener(kind, point);
  picker.addEventListener("submit", (event) => event.preventDefault());
  picker.addEventListener("change", () => show(Number(picker.elements.corner.value), Number(select.value)));
  byId("worst").addEventListener("click", () => show(corner, facts.worst[corner]));

  // A slider moves the drawing of a corner through the positions that the page holds; the
  // other slider goes back to the position drawn.
  document.querySelectorAll(".travel").forEach((sheet, i) => {
    const original = sheet.querySelector(".view").cloneNode(true);
    const sliders = [...sheet.querySelectorAll("input[type=range]")];
    const drawn = sliders.map((s) => s.value);
    sliders.forEach((slider, which) => slider.addEventListener("input", () => {
      sliders.forEach((s, n) => { if (n !== which) s.value = drawn[n]; });
      const n = Number(slider.dataset.from) + Number(slider.value);
      sheet.querySelector(".view").replaceWith(changed(original, facts.travel[i].changes[n]));
      sheet.querySelector(".position").textContent = facts.travel[i].says[n];
    }));
  });

  // A heading sorts by what stands below it; what has no value stays last.
  const collator = new Intl.Collator("en", { numeric: true });
  const value = (row, column) => {
    const cell = row.cells[column];
    const text = cell.textContent;
    if (text === "–" || text === "") return null;
    const number = Number(cell.dataset.v ?? text.replace("−", "-"));
    return Number.isNaN(number) ? text : number;
  };
  const compare = (a, b, up) => {
    if (a === null || b === null) return (a === null) - (b === null);
    const order = typeof a === "number" && typeof b === "number" ? a - b : collator.compare(a, b);
    return up ? order : -order;
  };
  const sort = (th) => {
    const table = th.closest("table");
    const up = th.getAttribute("aria-sort") !== "ascending";
    const keyed = [...table.tBodies[0].rows].map((row) => [value(row, th.cellIndex), row]);
    keyed.sort((a, b) => compare(a[0], b[0], up));
    table.tBodies[0].append(...keyed.map((k) => k[1]));
    for (const other of th.parentNode.cells) other.setAttribute("aria-sort", "none");
    th.setAttribute("aria-sort", up ? "ascending" : "descending");
  };
  for (const th of document.querySelectorAll(".block thead th")) {
    const button = element("button", th.textContent);
    button.type = "button";
    button.addEventListener("click", () => sort(th));
    th.setAttribute("aria-sort", "none");
    th.dataset.head = th.textContent; // for paper, on which a button is not repeated
    th.replaceChildren(button);
  }

  // Each corner's members can be gone to by key in the table as well.
  for (const th of document.querySelectorAll(".members tbody th")) {
    const button = element("button", th.textContent);
    button.type = "button";
    th.replaceChildren(button);
  }

  document.documentElement.classList.add("scripted");
  document.querySelectorAll(".needs-script").forEach((e) => { e.hidden = false; });
  const start = Number(picker.elements.corner.value);
  show(start, facts.worst[start]);
})();
