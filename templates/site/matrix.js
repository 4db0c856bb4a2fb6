"use strict";
// The matrix: filters hide cells, sorting and grouping arrange rows, turning swaps rows and columns. The state is in the address.
// A large matrix comes with its row heads alone; its cells lie in a script beside it and are drawn as their rows come into view.

function featureMatrixCells(data) {
  startMatrix(document.getElementById("matrix"), document.getElementById("filters"), data);
}

// What filters ask of a cell, from its drawing.
function readTile(cell, tones) {
  const tile = cell.querySelector(".tile");
  const [, tone, evidence] = tile.classList;
  return {
    tone,
    evidence: evidence?.startsWith("by-") ? evidence.slice(3) : "documented",
    order: tones.indexOf(tone),
    features: (cell.dataset.f ?? "").split(" "),
    systems: (cell.dataset.s ?? "").split(" "),
    speed: tile.querySelector(".fps")?.classList[1] ?? "not-measured",
    marks: [...tile.querySelectorAll(".marks i")].map((mark) => mark.className),
  };
}

function element(name, className, ...content) {
  const made = document.createElement(name);
  if (className) made.className = className;
  made.append(...content);
  return made;
}

// The same drawing as the template's tile.
function drawTile(tile, href) {
  const link = element("a", `tile ${tile.tone}${tile.evidence === "documented" ? "" : ` by-${tile.evidence}`}`, element("b", "", tile.word));
  link.href = href;
  if (tile.more) link.title = tile.more;
  if (tile.marks.length > 0) link.append(element("span", "marks", ...tile.marks.map((mark) => element("i", mark))));
  if (tile.below) link.append(element("small", "", tile.below));
  if (tile.speedText) link.append(element("small", `fps ${tile.speed}`, tile.speedText));
  return element("td", "", link);
}

function startMatrix(table, form, large) {
  const count = document.getElementById("count");
  const tones = [...form.elements.tone.options].map((option) => option.value);
  const corner = table.tHead.rows[0].cells[0];
  const columns = [...table.tHead.rows[0].cells].slice(1).map((head, i) => ({ head, i, text: head.textContent.toLowerCase(), id: head.dataset.column }));
  const tiles = large?.tiles.map(([word, below, more, tone, evidence, marks, features, systems, speed, speedText]) => ({
    word, below, more, tone, evidence, marks, features, systems, speed: speed || "not-measured", speedText, order: tones.indexOf(tone),
  }));
  const rows = [...table.tBodies[0].rows].map((line, place) => {
    const [head, ...cells] = line.cells;
    const own = tiles ? large.rows[place].map((i) => tiles[i]) : cells.map((cell) => readTile(cell, tones));
    return {
      head, place, id: line.dataset.id, year: line.dataset.year, engine: line.dataset.engine, feature: line.dataset.feature,
      weight: Number(line.dataset.weight), text: `${head.textContent} ${line.dataset.engine} ${line.dataset.genre}`.toLowerCase(),
      tiles: own, worth: own.reduce((sum, tile) => sum + tile.order, 0), cells: tiles ? null : cells, on: own.map(() => true),
    };
  });
  let shownColumns = columns;
  const drawer = tiles && new IntersectionObserver(
    (entries) => entries.filter((entry) => entry.isIntersecting).forEach((entry) => fill(entry.target)),
    { root: table.closest(".scroll"), rootMargin: "900px 0px" },
  );

  // Draws the cells of a row of a large matrix.
  function fill(line) {
    drawer.unobserve(line);
    const row = line.matrixRow;
    line.replaceChildren(row.head, ...shownColumns.map((column) => {
      const cut = table.dataset.setups ? column.id.lastIndexOf(".") : column.id.length;
      const setup = column.id.slice(cut + 1);
      const cell = drawTile(row.tiles[column.i], `${row.id}/${column.id.slice(0, cut)}.html${setup ? `#${setup}` : ""}`);
      cell.classList.toggle("off", !row.on[column.i]);
      return cell;
    }));
  }

  function lineOf(row) {
    if (!tiles) return element("tr", "", row.head, ...shownColumns.map((column) => row.cells[column.i]));
    const later = element("td", "later");
    later.colSpan = shownColumns.length;
    const line = element("tr", "", row.head, later);
    line.matrixRow = row;
    drawer.observe(line);
    return line;
  }

  function comparer(sort) {
    if (sort === "year") return (a, b) => (a.year || "9999").localeCompare(b.year || "9999") || a.place - b.place;
    if (sort === "weight") return (a, b) => b.weight - a.weight || a.place - b.place;
    if (sort === "best") return (a, b) => a.worth - b.worth || a.place - b.place;
    if (sort === "worst") return (a, b) => b.worth - a.worth || a.place - b.place;
    const index = columns.findIndex((column) => column.id === sort);
    if (index >= 0) return (a, b) => a.tiles[index].order - b.tiles[index].order || a.place - b.place;
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
      if (!groups.has(name)) groups.set(name, []);
      groups.get(name).push(row);
    }
    return [...groups].sort(([a], [b]) => (a === form.dataset.none) - (b === form.dataset.none) || a.localeCompare(b));
  }

  function groupHead(name, span, scope) {
    const head = element("th", "", name);
    head.colSpan = span;
    head.scope = scope;
    return head;
  }

  // Marks every cell that the filters leave; the number of cells left.
  function filter(state, usedColumns) {
    const known = new Map();
    const matches = (tile) => {
      if (!known.has(tile)) {
        known.set(tile,
          (!state.system || tile.systems.includes(state.system)) && (!state.feature || tile.features.includes(state.feature)) &&
          (!state.tone || tile.tone === state.tone) && (!state.mark || tile.marks.includes(state.mark)) &&
          (!state.evidence || tile.evidence === state.evidence) && (!state.speed || tile.speed === state.speed));
      }
      return known.get(tile);
    };
    let cells = 0;
    for (const row of rows) {
      const missing = state.words.filter((word) => !row.text.includes(word));
      row.isShown = false;
      for (const { i, text } of columns) {
        row.on[i] = matches(row.tiles[i]) && missing.every((word) => text.includes(word));
        row.cells?.[i].classList.toggle("off", !row.on[i]);
        if (!row.on[i]) continue;
        row.isShown = true;
        cells += 1;
        usedColumns.add(i);
      }
    }
    return cells;
  }

  function draw() {
    const state = readState();
    const usedColumns = new Set();
    const cells = filter(state, usedColumns);
    const shown = rows.filter((row) => row.isShown).sort(comparer(state.sort));
    shownColumns = columns.filter(({ i }) => usedColumns.has(i));
    drawer?.disconnect();
    const groups = grouped(shown, state.group);
    const head = document.createElement("thead");
    const body = document.createElement("tbody");
    for (const column of columns) column.head.scope = state.turn ? "row" : "col";
    for (const row of rows) row.head.scope = state.turn ? "col" : "row";
    if (state.turn) {
      const order = groups.flatMap(([, members]) => members);
      if (state.group) head.append(element("tr", "group", document.createElement("td"), ...groups.map(([name, members]) => groupHead(name, members.length, "colgroup"))));
      head.append(element("tr", "", corner, ...order.map((row) => row.head)));
      for (const column of shownColumns) body.append(element("tr", "", column.head, ...order.map((row) => row.cells[column.i])));
    } else {
      head.append(element("tr", "", corner, ...shownColumns.map((column) => column.head)));
      for (const [name, members] of groups) {
        if (state.group) body.append(element("tr", "group", groupHead(name, shownColumns.length + 1, "rowgroup")));
        body.append(...members.map(lineOf));
      }
    }
    corner.textContent = state.turn ? corner.dataset.turned : corner.dataset.straight;
    table.replaceChildren(head, body);
    count.textContent = form.dataset.count
      .replace("{titles}", shown.length).replace("{all-titles}", rows.length)
      .replace("{cells}", cells).replace("{all-cells}", rows.length * columns.length);
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
    const name = column.head.querySelector("a").textContent;
    const button = element("button", "order", "↓");
    button.type = "button";
    button.setAttribute("aria-label", `Sort by ${name}`);
    button.addEventListener("click", () => {
      form.elements.sort.value = column.id;
      draw();
    });
    column.head.append(button);
    const option = element("option", "", name);
    option.value = column.id;
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
if (!matrix.dataset.later) startMatrix(matrix, document.getElementById("filters"), null);
