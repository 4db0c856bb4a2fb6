"use strict";
// The matrix: filters hide cells, sorting and grouping arrange rows, turning swaps rows and columns. The state is in the address.

function startMatrix(table, form) {
  const count = document.getElementById("count");
  const columns = [...table.tHead.rows[0].cells].slice(1).map((head) => ({ head, text: head.textContent.toLowerCase(), id: head.dataset.column }));
  const corner = table.tHead.rows[0].cells[0];
  const tones = [...form.elements.tone.options].map((option) => option.value);
  const rows = [...table.tBodies[0].rows].map((row, place) => {
    const [head, ...cells] = row.cells;
    return {
      head,
      place,
      year: row.dataset.year,
      engine: row.dataset.engine,
      feature: row.dataset.feature,
      weight: Number(row.dataset.weight),
      text: `${head.textContent} ${row.dataset.engine} ${row.dataset.genre}`.toLowerCase(),
      cells: cells.map((cell) => readCell(cell)),
    };
  });
  const all = { titles: rows.length, cells: rows.length * columns.length };

  function readCell(cell) {
    const tile = cell.querySelector(".tile");
    const [, tone, evidence] = tile.classList;
    return {
      cell,
      tone,
      evidence: evidence ? evidence.slice(3) : "documented",
      order: tones.indexOf(tone),
      features: (cell.dataset.f ?? "").split(" "),
      systems: (cell.dataset.s ?? "").split(" "),
      speed: tile.querySelector(".fps")?.classList[1] ?? "not-measured",
      marks: [...tile.querySelectorAll(".marks i")].map((mark) => mark.className),
    };
  }

  function matches(row, column, cell, state) {
    return (
      state.words.every((word) => row.text.includes(word) || column.text.includes(word)) &&
      (!state.system || cell.systems.includes(state.system)) &&
      (!state.feature || cell.features.includes(state.feature)) &&
      (!state.tone || cell.tone === state.tone) &&
      (!state.mark || cell.marks.includes(state.mark)) &&
      (!state.evidence || cell.evidence === state.evidence) &&
      (!state.speed || cell.speed === state.speed)
    );
  }

  const worth = (row) => row.cells.reduce((sum, cell) => sum + cell.order, 0);

  function comparer(sort) {
    if (sort === "year") return (a, b) => (a.year || "9999").localeCompare(b.year || "9999") || a.place - b.place;
    if (sort === "weight") return (a, b) => b.weight - a.weight || a.place - b.place;
    if (sort === "best") return (a, b) => worth(a) - worth(b) || a.place - b.place;
    if (sort === "worst") return (a, b) => worth(b) - worth(a) || a.place - b.place;
    const index = columns.findIndex((column) => column.id === sort);
    if (index >= 0) return (a, b) => a.cells[index].order - b.cells[index].order || a.place - b.place;
    return (a, b) => a.place - b.place;
  }

  function readState() {
    const state = Object.fromEntries(new FormData(form));
    state.words = state.words.toLowerCase().split(/\s+/).filter(Boolean);
    return state;
  }

  function grouped(shown, group) {
    if (!group) return [["", shown]];
    const groups = new Map();
    for (const row of shown) {
      const name = row[group] || form.dataset.none;
      groups.set(name, [...(groups.get(name) ?? []), row]);
    }
    return [...groups].sort(([a], [b]) => (a === form.dataset.none) - (b === form.dataset.none) || a.localeCompare(b));
  }

  function element(name, cells, className) {
    const made = document.createElement(name);
    if (className) made.className = className;
    made.append(...cells);
    return made;
  }

  function groupHead(name, span, scope) {
    const head = document.createElement("th");
    head.colSpan = span;
    head.scope = scope;
    head.textContent = name;
    return head;
  }

  function draw() {
    const state = readState();
    let cellCount = 0;
    const usedColumns = new Set();
    const shown = rows
      .filter((row) => {
        let any = false;
        row.cells.forEach((cell, i) => {
          const on = matches(row, columns[i], cell, state);
          cell.cell.classList.toggle("off", !on);
          if (!on) return;
          any = true;
          cellCount += 1;
          usedColumns.add(i);
        });
        return any;
      })
      .sort(comparer(state.sort));
    const shownColumns = columns.map((column, i) => ({ ...column, i })).filter(({ i }) => usedColumns.has(i));
    const groups = grouped(shown, state.group);
    const head = document.createElement("thead");
    const body = document.createElement("tbody");
    for (const { head: th } of columns) th.scope = state.turn ? "row" : "col";
    for (const { head: th } of rows) th.scope = state.turn ? "col" : "row";
    if (state.turn) {
      const order = groups.flatMap(([, members]) => members);
      if (state.group) {
        const blank = document.createElement("td");
        head.append(element("tr", [blank, ...groups.map(([name, members]) => groupHead(name, members.length, "colgroup"))], "group"));
      }
      head.append(element("tr", [corner, ...order.map((row) => row.head)]));
      for (const column of shownColumns) body.append(element("tr", [column.head, ...order.map((row) => row.cells[column.i].cell)]));
    } else {
      head.append(element("tr", [corner, ...shownColumns.map((column) => column.head)]));
      for (const [name, members] of groups) {
        if (state.group) body.append(element("tr", [groupHead(name, shownColumns.length + 1, "rowgroup")], "group"));
        for (const row of members) body.append(element("tr", [row.head, ...shownColumns.map((column) => row.cells[column.i].cell)]));
      }
    }
    corner.textContent = state.turn ? corner.dataset.turned : corner.dataset.straight;
    table.replaceChildren(head, body);
    count.textContent = form.dataset.count
      .replace("{titles}", shown.length)
      .replace("{all-titles}", all.titles)
      .replace("{cells}", cellCount)
      .replace("{all-cells}", all.cells);
    writeAddress();
  }

  function writeAddress() {
    const kept = new URLSearchParams();
    for (const [name, value] of new FormData(form)) if (value) kept.set(name, value);
    const text = kept.toString();
    if (text !== location.hash.slice(1)) history.replaceState(null, "", text ? `#${text}` : location.pathname + location.search);
    for (const link of document.querySelectorAll(".views a")) link.hash = text;
  }

  function readAddress() {
    const wanted = new URLSearchParams(location.hash.slice(1));
    for (const field of form.elements) {
      if (!field.name) continue;
      if (field.type === "checkbox") field.checked = wanted.get(field.name) === field.value;
      else field.value = wanted.get(field.name) ?? "";
      if (field.selectedIndex === -1) field.value = "";
    }
  }

  for (const column of columns) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "order";
    button.textContent = "↓";
    button.setAttribute("aria-label", `Sort by ${column.head.querySelector("a").textContent}`);
    button.addEventListener("click", () => {
      form.elements.sort.value = column.id;
      draw();
    });
    column.head.append(button);
    const option = document.createElement("option");
    option.value = column.id;
    option.textContent = column.head.querySelector("a").textContent;
    form.elements.sort.append(option);
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", draw);
  form.addEventListener("reset", () => setTimeout(draw));
  window.addEventListener("hashchange", () => {
    readAddress();
    draw();
  });
  form.hidden = false;
  readAddress();
  form.querySelector("details").open = matchMedia("(width > 40rem)").matches;
  draw();
}

const matrix = document.getElementById("matrix");
const filters = document.getElementById("filters");
if (matrix && filters) startMatrix(matrix, filters);
