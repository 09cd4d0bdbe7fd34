// Begins what the page needs: keys everywhere, dropping everywhere, and the page's own script.

import { watchDrops } from "./drop.js";
import { redo, say, send, typing, undo } from "./page.js";

watchDrops();

addEventListener("keydown", (event) => {
  if (typing(event)) return;
  if (event.key === "/") { event.preventDefault(); focusSearch(); }
  if (event.key === "u") undo();
  if (event.key === "i") redo();
  if (event.key === "?") location.href = "/help";
});
function focusSearch() {
  const field = document.querySelector("main input[type=search]") ?? document.getElementById("seek");
  field.focus(); field.select();
}
document.addEventListener("click", (event) => {
  const act = event.target.closest("[data-act]")?.dataset.act;
  if (act === "undo") undo();
  if (act === "redo") redo();
  for (const open of document.querySelectorAll("details.more[open], details.menu[open]")) {
    if (!open.contains(event.target)) open.open = false;
  }
});
document.addEventListener("submit", (event) => {
  const sure = event.target.dataset.sure;
  if (sure && !confirm(sure)) event.preventDefault();
});

// fields that take a plant offer those of the diary
let asking;
document.addEventListener("input", (event) => {
  if (!event.target.matches("[data-plants]")) return;
  clearTimeout(asking);
  asking = setTimeout(() => offerPlants(event.target.value), 120);
});
document.addEventListener("focusin", (event) => { if (event.target.matches("[data-plants]")) offerPlants(event.target.value); });
async function offerPlants(typed) {
  const list = document.getElementById("plants-list");
  if (!list) return;
  const answer = await fetch(`/plants.json?q=${encodeURIComponent(typed)}`);
  const found = await answer.json();
  list.replaceChildren(...found.map((one) => {
    const option = document.createElement("option");
    option.value = one.kind === "seedling" ? one.key : one.kind === "unnamed" ? one.key : one.title;
    option.label = one.title;
    return option;
  }));
}

const choose = document.querySelector("details.choose");
if (choose && matchMedia("(max-width: 46rem)").matches) choose.open = false;

// filters act at once; a part that is slow to make comes after the page
for (const form of document.querySelectorAll("form[data-auto]")) {
  form.addEventListener("change", () => form.requestSubmit());
  form.addEventListener("submit", () => {
    for (const field of form.elements) if (field.name && !field.value) field.disabled = true;
  });
}
for (const part of document.querySelectorAll("[data-fetch]")) {
  fetch(part.dataset.fetch).then(async (answer) => { if (answer.ok) part.innerHTML = await answer.text(); });
}

const page = document.body.dataset.page;
if (page === "recording" || page === "plant") (await import("./clips.js")).begin();
if (page === "recording") (await import("./transcript.js")).begin();
if (page === "review") (await import("./review.js")).begin();
if (page === "find" || page === "lists") (await import("./moments.js")).begin();
if (page === "compare") (await import("./compare.js")).begin();
if (document.getElementById("compare")) chooseToCompare();
if (page === "register") importing();
document.body.dataset.ready = "yes"; // keys and clicks are heard from now on

function chooseToCompare() {
  const bar = document.getElementById("compare");
  const ticks = [...document.querySelectorAll("input[form=compare]")];
  const count = () => {
    const chosen = ticks.filter((tick) => tick.checked);
    bar.hidden = chosen.length < 2;
    bar.querySelector("[data-count]").textContent = chosen.length;
    for (const tick of ticks) tick.disabled = !tick.checked && chosen.length >= 4;
  };
  for (const tick of ticks) tick.addEventListener("change", count);
  count();
}

function importing() {
  const form = document.getElementById("import");
  const plan = document.getElementById("plan");
  const text = async () => {
    const file = form.elements.file.files[0];
    return file ? file.text() : form.elements.text.value;
  };
  const run = async (more) => {
    try { plan.innerHTML = (await send("/register/import", { text: await text(), ...more })).html; } catch (error) { say(error.message); }
  };
  form.addEventListener("submit", (event) => { event.preventDefault(); run({}); });
  plan.addEventListener("click", (event) => {
    const how = event.target.closest("[data-import]")?.dataset.import;
    if (how) run({ apply: true, overwrite: how === "overwrite" });
  });
}
