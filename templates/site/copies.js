"use strict";
// Copies: the tables of a page lie in one script beside it, because a page opened from a folder may not read files. The texts are made
// here as the commands make them, letter for letter; a test compares the two.

const featureMatrixData = new Map();

function featureMatrixTables(tables) {
  for (const [name, [title, note, columns, rows]] of Object.entries(tables)) {
    featureMatrixData.set(name, {
      title,
      note,
      columns: columns.map((column) => (Array.isArray(column) ? { heading: column[0], isNumber: true } : { heading: column, isNumber: false })),
      rows: rows.map((row) => row.map((cell) => (Array.isArray(cell) ? { text: cell[0], number: cell[1] } : { text: cell, number: null }))),
    });
  }
}

const featureMatrixFormats = {
  md: (table) => {
    const row = (cells) => `| ${cells.map(escapeMarkdown).join(" | ")} |\n`;
    return (
      `**${escapeMarkdown(table.title)}**\n\n${table.note ? `${escapeMarkdown(table.note)}\n\n` : ""}` +
      row(table.columns.map((column) => column.heading)) +
      `|${table.columns.map((column) => (column.isNumber ? " ---: " : " --- ")).join("|")}|\n` +
      table.rows.map((cells) => row(cells.map((cell) => cell.text))).join("")
    );
  },
  bbcode: (table) => {
    const escape = (text) => text.replaceAll("[", "(").replaceAll("]", ")");
    const note = table.note ? `${escape(table.note)}\n` : "";
    return `[b]${escape(table.title)}[/b]\n${note}[code]\n${escape(textRows(table))}[/code]\n`;
  },
  csv: (table) =>
    [table.columns.map((column) => quote(column.heading)), ...table.rows.map((row) => row.map((cell) => (cell.number === null ? quote(cell.text) : String(cell.number))))]
      .map((cells) => `${cells.join(",")}\n`)
      .join(""),
  json: (table) =>
    `${escapeJson(
      JSON.stringify(
        {
          title: table.title,
          note: table.note,
          columns: table.columns.map((column) => column.heading),
          rows: table.rows.map((row) => row.map((cell) => cell.number ?? cell.text)),
        },
        null,
        2,
      ),
    )}\n`,
  txt: (table) => `${clean(table.title)}\n${table.note ? `${clean(table.note)}\n` : ""}\n${textRows(table)}`,
};

const widestColumn = 60;

// Control characters become spaces.
function clean(text) {
  return text.replace(/\p{Cc}/gu, " ");
}

function escapeMarkdown(text) {
  return clean(text).replace(/[\\|`*_[\]<>&#!~]/g, "\\$&");
}

function quote(text) {
  const kept = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[,"\r\n]/.test(kept) ? `"${kept.replaceAll('"', '""')}"` : kept;
}

function escapeJson(json) {
  const code = (letter) => `\\u${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`;
  return json.replace(/\\u([0-9a-f]{4})|\\(.)|[&'+<>`\u007f-\uffff]/g, (all, hex, short) => {
    if (hex) return `\\u${hex.toUpperCase()}`;
    if (short) return short === '"' ? code('"') : all;
    return code(all);
  });
}

function wrap(text, width) {
  const lines = [];
  let rest = text;
  while (rest.length > width) {
    let at = rest.lastIndexOf(" ", width);
    if (at <= 0) at = width;
    lines.push(rest.slice(0, at));
    rest = rest.slice(at).trimStart();
  }
  lines.push(rest);
  return lines;
}

function textRows(table) {
  const widths = table.columns.map((column, i) =>
    Math.min(widestColumn, Math.max(clean(column.heading).length, ...table.rows.map((row) => clean(row[i].text).length))),
  );
  const row = (cells) => {
    const wrapped = cells.map((cell, i) => wrap(clean(cell), widths[i]));
    const height = Math.max(...wrapped.map((lines) => lines.length));
    const lines = Array.from({ length: height }, (_, line) =>
      wrapped
        .map((parts, i) => (table.columns[i].isNumber ? (parts[line] ?? "").padStart(widths[i]) : (parts[line] ?? "").padEnd(widths[i])))
        .join("  ")
        .trimEnd(),
    );
    return `${lines.join("\n")}\n`;
  };
  return (
    row(table.columns.map((column) => column.heading)) +
    `${widths.map((width) => "-".repeat(width)).join("  ")}\n` +
    table.rows.map((cells) => row(cells.map((cell) => cell.text))).join("")
  );
}

function loadTable(name, source) {
  if (featureMatrixData.has(name)) return Promise.resolve(featureMatrixData.get(name));
  return new Promise((done, failed) => {
    const script = document.createElement("script");
    script.src = source;
    script.addEventListener("load", () => done(featureMatrixData.get(name)));
    script.addEventListener("error", () => failed(new Error(source)));
    document.head.append(script);
  });
}

async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
  } catch {
    const area = document.createElement("textarea");
    area.value = text;
    document.body.append(area);
    area.select();
    document.execCommand("copy");
    area.remove();
  }
}

for (const line of document.querySelectorAll(".copies")) {
  const said = line.querySelector("[role=status]");
  for (const button of line.querySelectorAll("button")) {
    button.addEventListener("click", async () => {
      try {
        await copyText(featureMatrixFormats[button.dataset.format](await loadTable(line.dataset.table, line.dataset.source)));
        said.textContent = `Copied as ${button.textContent}.`;
      } catch {
        said.textContent = "It could not be read.";
      }
    });
  }
  line.hidden = false;
}
