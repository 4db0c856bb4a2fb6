"use strict";
// Two cards: choosing another pair, weighing on changed terms, and pictures laid one over the other. The page was given what every title
// may come to in every completion; here is only multiplied, added, and the extreme taken. No cell is decided again.

// Exact decimals: whole numbers of 10^-30.
const unit = 10n ** 30n;

function exact(text) {
  const match = /^(\d*)(?:\.(\d*))?(?:e-(\d+))?$/i.exec(text.trim());
  if (!match || (!match[1] && !match[2])) return null;
  const digits = match[1] + (match[2] ?? "");
  const places = (match[2] ?? "").length + Number(match[3] ?? 0);
  return places > 30 ? null : BigInt(digits) * 10n ** BigInt(30 - places);
}

const times = (a, b) => (a * b) / unit;
const least = (a, b) => (a < b ? a : b);
const greatest = (a, b) => (a > b ? a : b);

function power(base, exponent) {
  let product = unit;
  for (let i = 0; i < exponent; i += 1) product = times(product, base);
  return product;
}

// Rounds to a number of decimals, halves to the even neighbour.
function rounded(value, decimals) {
  const step = 10n ** BigInt(30 - decimals);
  const size = value < 0n ? -value : value;
  let whole = size / step;
  const rest = size % step;
  if (rest * 2n > step || (rest * 2n === step && whole % 2n === 1n)) whole += 1n;
  return (value < 0n ? -whole : whole) * step;
}

function shortNumber(value, decimals = 2) {
  const kept = rounded(value, decimals);
  const size = kept < 0n ? -kept : kept;
  const rest = (size % unit).toString().padStart(30, "0").slice(0, decimals).replace(/0+$/, "");
  return `${kept < 0n ? "-" : ""}${size / unit}${rest ? `.${rest}` : ""}`;
}

function interval([low, high]) {
  return shortNumber(low) === shortNumber(high) ? shortNumber(low) : `${shortNumber(low)} to ${shortNumber(high)}`;
}

function difference([low, high]) {
  const signed = (value) => (value > 0n ? "+" : "") + shortNumber(value);
  return shortNumber(low) === shortNumber(high) ? signed(low) : `${signed(low)} to ${signed(high)}`;
}

// Worth of a standing: q^s (1 - (1 - q)(1 - r^c)); 0 where the title does not run.
function worthOf(standing, severe, cosmetic) {
  if (!standing) return 0n;
  return times(power(severe, standing[0]), unit - times(unit - severe, unit - power(cosmetic, standing[1])));
}

// What a sum can be, apart by who misses a must-have: [nobody, first, second, both], each an interval or null.
const nothing = [[0n, 0n], null, null, null];
const hull = (a, b) => (a && b ? [least(a[0], b[0]), greatest(a[1], b[1])] : (a ?? b));
const either = (a, b) => a.map((one, i) => hull(one, b[i]));

function both(a, b) {
  const sum = [null, null, null, null];
  for (let i = 0; i < 4; i += 1) {
    for (let j = 0; j < 4; j += 1) {
      if (a[i] && b[j]) sum[i | j] = hull(sum[i | j], [a[i][0] + b[j][0], a[i][1] + b[j][1]]);
    }
  }
  return sum;
}

function tallyOf(groups, worths, weightOf) {
  const ofSpan = (span, stake) => {
    const side = stake % 2;
    const weight = weightOf(stake >> 1, side);
    const ends = Array.isArray(span) ? span : [span, span];
    const tally = [null, null, null, null];
    for (const [at, index] of [
      [0, 0],
      [2, 1 << side],
    ]) {
      if (at >= ends.length || ends[at] < 0) continue;
      const [low, high] = [times(weight, worths[ends[at]]), times(weight, worths[ends[at + 1]])];
      tally[index] = side === 0 ? [low, high] : [-high, -low];
    }
    return tally;
  };
  return groups
    .map(([stakes, ...branches]) =>
      branches.map((branch) => branch.map((span, i) => ofSpan(span, stakes[i])).reduce(both, nothing)).reduce(either),
    )
    .reduce(both, nothing);
}

const overall = (tally) => {
  const [low, high] = tally.reduce(hull);
  return [rounded(low, 18), rounded(high, 18)];
};

function winnerOf(data, tally) {
  if (data.winner) return data.winner;
  const winners = new Set();
  tally.forEach((ends, misses) => {
    if (!ends) return;
    if (misses === 1) winners.add("second");
    else if (misses === 2) winners.add("first");
    else {
      const [low, high] = [rounded(ends[0], 18), rounded(ends[1], 18)];
      if (high > 0n) winners.add("first");
      if (low < 0n) winners.add("second");
      if (low <= 0n && high >= 0n && (low === 0n || high === 0n)) winners.add("equal");
    }
  });
  return winners.size === 1 ? [...winners][0] : "undecided";
}

// One view (the picture, or the picture at the speed floor) on given terms.
function weigh(data, terms) {
  const worths = data.standings.map((standing) => worthOf(standing, terms.severe, terms.cosmetic));
  const tally = tallyOf(data.groups, worths, (title) => terms.weights[title]);
  const scoreOf = (side) => overall(tallyOf(data.groups, worths, (title, whose) => (whose === side ? terms.weights[title] : 0n)));
  const [low, high] = overall(tally);
  const second = scoreOf(1);
  return {
    winner: winnerOf(data, tally),
    difference: [data.neverBelow ? greatest(low, 0n) : low, data.neverAbove ? least(high, 0n) : high],
    first: scoreOf(0),
    second: [-second[1], -second[0]],
    titles: Object.fromEntries(Object.entries(data.titles).map(([id, groups]) => [id, tallyOf(groups, worths, (title) => terms.weights[title]).reduce(hull)])),
  };
}

// The price at which a card gives as much score for the money as the other does at its price.
function breakEven(own, other, price) {
  if (!price || other[0] <= 0n || other[1] <= 0n) return null;
  return [(price[0] * own[0]) / other[1], (price[1] * own[1]) / other[0]];
}

function startWeighing(form) {
  const views = [...document.querySelectorAll(".weighed")].map((beam) => ({ beam: beam.querySelector("svg"), data: JSON.parse(beam.dataset.difference) }));
  const order = form.dataset.order.split(" ").map((pair) => pair.split("="));
  const names = { first: form.dataset.first, second: form.dataset.second, equal: "equal", undecided: "undecided" };
  const now = document.getElementById("terms-now");

  for (const cell of document.querySelectorAll("[data-weight]")) {
    const input = document.createElement("input");
    input.type = "number";
    input.min = "0";
    input.step = "any";
    input.name = `w.${cell.dataset.weight}`;
    input.setAttribute("form", form.id);
    input.setAttribute("value", cell.textContent);
    input.setAttribute("aria-label", `Weight of ${cell.parentElement.cells[0].textContent}`);
    cell.replaceChildren(input);
  }

  const fields = () => [...form.elements].filter((field) => field.name);
  const isChanged = () => fields().some((field) => field.value !== field.defaultValue);

  function readTerms() {
    const value = (name) => {
      const field = form.elements[name];
      const number = exact(field.value);
      const isFine = number !== null && (field.max === "" || number <= exact(field.max));
      field.setAttribute("aria-invalid", String(!isFine));
      return isFine ? number : exact(field.defaultValue);
    };
    const price = (side) => {
      const ends = ["low", "high"].map((end) => exact(form.elements[`${side}-${end}`].value));
      return ends.includes(null) ? null : ends;
    };
    return {
      severe: value("severe"),
      cosmetic: value("cosmetic"),
      weights: order.map(([id]) => value(`w.${id}`)),
      prices: { first: price("first"), second: price("second") },
    };
  }

  function drawBeam(svg, [low, high]) {
    const [from, to] = [Number(low) / 1e30, Number(high) / 1e30];
    const farthest = Math.max(Math.abs(from), Math.abs(to));
    const scale = farthest > 0 ? 44 / farthest : 0;
    const start = 50 - to * scale;
    const width = (to - from) * scale;
    svg.querySelector(".open").setAttribute("x", start);
    svg.querySelector(".open").setAttribute("width", width);
    const ends = svg.querySelectorAll(".end");
    ends[0].setAttribute("d", `M${start} 1V9`);
    ends[1].setAttribute("d", `M${start + width} 1V9`);
  }

  function amount(price, currency) {
    if (!price) return "not known";
    const [low, high] = price.map((end) => shortNumber(end, 0));
    return `${low === high ? low : `${low} to ${high}`}${currency ? ` ${currency}` : ""}`;
  }

  function show() {
    const terms = readTerms();
    const results = views.map(({ data }) => weigh(data, terms));
    results.forEach((result, i) => drawBeam(views[i].beam, result.difference));
    const put = (name, text) => document.querySelectorAll(`[data-live=${name}]`).forEach((cell, i) => { cell.textContent = text(results[i]); });
    put("verdict", (result) => names[result.winner]);
    put("difference", (result) => difference(result.difference));
    put("first", (result) => interval(result.first));
    put("second", (result) => interval(result.second));
    for (const cell of document.querySelectorAll("[data-swing]")) cell.textContent = difference(results[0].titles[cell.dataset.swing]);
    const { first, second } = results[0];
    const even = { first: breakEven(first, second, terms.prices.second), second: breakEven(second, first, terms.prices.first) };
    for (const line of document.querySelectorAll("[data-even]")) line.textContent = amount(even[line.dataset.even], line.dataset.currency);
    now.textContent = isChanged() ? `${now.dataset.changed} ${names[results[0].winner]}, ${difference(results[0].difference)}.` : now.dataset.own;
    document.documentElement.classList.toggle("other-terms", isChanged());
    const kept = new URLSearchParams(fields().filter((field) => field.value !== field.defaultValue).map((field) => [field.name, field.value])).toString();
    if (kept !== location.hash.slice(1)) history.replaceState(null, "", kept ? `#${kept}` : location.pathname + location.search);
  }

  function readAddress() {
    const wanted = new URLSearchParams(location.hash.slice(1));
    for (const field of fields()) field.value = wanted.get(field.name) ?? field.defaultValue;
    show();
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  document.addEventListener("input", (event) => {
    if (event.target.form === form) show();
  });
  form.addEventListener("reset", () => setTimeout(show));
  window.addEventListener("hashchange", readAddress);
  form.hidden = false;
  readAddress();
}

// The pair's page lies under the card that comes first in the edition. Terms go along in the address.
function startChooser(form) {
  form.hidden = false;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const chosen = [form.elements.first, form.elements.second].sort((a, b) => a.selectedIndex - b.selectedIndex).map((field) => field.value);
    if (chosen[0] === chosen[1]) {
      form.querySelector("[role=status]").textContent = form.dataset.alike;
      return;
    }
    const kept = new URLSearchParams([...new URLSearchParams(location.hash.slice(1))].filter(([name]) => !/^(first|second)-/.test(name)));
    location.href = `${form.dataset.root}compare/${chosen[0]}/${chosen[1]}.html${kept.size > 0 ? `#${kept}` : ""}`;
  });
}

const chooser = document.getElementById("chooser");
if (chooser) startChooser(chooser);
const ownTerms = document.getElementById("terms");
if (ownTerms) startWeighing(ownTerms);
