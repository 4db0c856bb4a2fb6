"use strict";
// The pages are complete without this file. It opens explanations in place.

document.documentElement.classList.add("scripted");

// Explanations: a cell's page, shown in a dialog over the page it was asked from.

if (window.parent !== window) {
  document.documentElement.classList.add("framed");
  for (const link of document.querySelectorAll("a[href]")) {
    if (!link.getAttribute("href").startsWith("#")) link.target = "_top";
  }
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape") window.parent.postMessage("close", "*");
  });
}

function openTarget() {
  const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!target) return;
  const closed = [];
  for (let around = target.closest("details"); around; around = around.parentElement.closest("details")) closed.push(around);
  for (const details of closed) details.open = true;
  if (closed.length > 0) target.scrollIntoView();
}

openTarget();
window.addEventListener("hashchange", openTarget);

let dialog = null;

function makeDialog() {
  const made = document.createElement("dialog");
  made.setAttribute("aria-label", "Why");
  const head = document.createElement("div");
  head.className = "head";
  const whole = document.createElement("a");
  whole.textContent = "Open as a page";
  const close = document.createElement("button");
  close.type = "button";
  close.textContent = "Close";
  close.addEventListener("click", () => made.close());
  head.append(whole, close);
  const frame = document.createElement("iframe");
  frame.title = "Explanation";
  made.append(head, frame);
  made.addEventListener("click", (event) => {
    if (event.target === made) made.close();
  });
  made.addEventListener("close", () => frame.removeAttribute("src"));
  window.addEventListener("message", (event) => {
    if (event.source === frame.contentWindow && event.data === "close") made.close();
  });
  document.body.append(made);
  return made;
}

document.addEventListener("click", (event) => {
  const tile = event.target.closest("a.tile");
  if (!tile || tile.closest(".verdict") || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  if (document.documentElement.classList.contains("framed")) return;
  event.preventDefault();
  dialog ??= makeDialog();
  dialog.querySelector("iframe").src = tile.href;
  dialog.querySelector(".head a").href = tile.href;
  dialog.showModal();
  dialog.querySelector("button").focus();
});

// Both panes of a picture in one place: the slider says how much of the left one shows, also by arrow keys.
function startSplit(figure) {
  const panes = figure.querySelector(".panes");
  const [left, right] = [...panes.querySelectorAll("p")].map((line) => line.textContent);
  const line = document.createElement("label");
  line.className = "slider";
  const slider = document.createElement("input");
  slider.type = "range";
  slider.min = "0";
  slider.max = "100";
  slider.step = "1";
  slider.value = "50";
  slider.setAttribute("aria-label", `Move between ${left} and ${right}`);
  const show = () => {
    panes.style.setProperty("--at", `${slider.value}%`);
    slider.setAttribute("aria-valuetext", `${slider.value} % ${left}, ${100 - slider.value} % ${right}`);
  };
  if (figure.classList.contains("own")) {
    const [image] = panes.getElementsByTagName("img");
    figure.style.setProperty("--widest", `min(45rem, ${image.getAttribute("width")}px)`);
  }
  slider.addEventListener("input", show);
  line.append(slider);
  panes.after(line);
  figure.classList.add("split");
  show();
}

for (const figure of document.querySelectorAll(".splits .pair, .own")) startSplit(figure);
