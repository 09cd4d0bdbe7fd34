// The few questions asked when something is put right, each a dialog that gives back events.

import { clock, say } from "./page.js";

const choices = JSON.parse(document.getElementById("choices")?.textContent ?? "{}");

function ask(id, fill, keep) {
  const dialog = document.getElementById(id);
  const form = dialog.querySelector("form");
  form.reset();
  fill(form);
  form.onsubmit = (event) => {
    if (event.submitter?.value === "leave") return;
    const answer = keep(form);
    if (answer === false) event.preventDefault();
  };
  dialog.showModal();
  return form;
}
const show = (form, name, on) => { const part = form.querySelector(`[data-for=${name}]`); if (part) part.hidden = !on; };

function fitTrait(form) {
  const trait = form.elements.trait.value;
  const words = choices.values[trait] ?? [];
  const list = document.getElementById("values-list");
  list.replaceChildren(...words.map((word) => { const option = document.createElement("option"); option.value = word; return option; }));
  show(form, "part", trait === "colour" || trait === "marking");
  show(form, "unit", choices.lengths.includes(trait));
  show(form, "modifiers", trait === "colour");
  form.elements.value.inputMode = choices.lengths.includes(trait) || choices.counts.includes(trait) ? "decimal" : "text";
  form.elements.value.setAttribute("list", choices.plants.includes(trait) ? "plants-list" : "values-list");
  form.elements.value.toggleAttribute("data-plants", choices.plants.includes(trait));
}

const list = (text) => text.split(/[\s,;]+/).filter(Boolean);

/** Change an observation: one event for each field that was changed. */
export function change(one, done) {
  const form = ask("dlg-observation", (f) => {
    f.querySelector("h2").textContent = "Put it right";
    f.querySelector("[data-words]").textContent = one.text ? `heard: “${one.text}”` : "";
    f.elements.trait.value = one.trait;
    f.elements.part.value = one.part ?? "";
    f.elements.value.value = typeof one.value === "number" ? Math.round(one.value * 10) / 10 : one.value;
    f.elements.unit.value = "mm";
    f.elements.modifiers.value = one.modifiers.join(" ");
    f.elements.trait.onchange = () => fitTrait(f);
    fitTrait(f);
  }, (f) => {
    const at = { recording: one.recording, start_ms: one.start_ms, end_ms: one.end_ms };
    const seen = { trait: one.trait, value: one.value, part: one.part, plant: one.plant };
    const { trait, part, value, unit, modifiers } = Object.fromEntries([...f.elements].filter((e) => e.name).map((e) => [e.name, e.value]));
    const events = [];
    const before = typeof one.value === "number" ? String(Math.round(one.value * 10) / 10) : one.value;
    const shades = list(modifiers);
    const shaded = trait === "colour" && shades.join(" ") !== one.modifiers.join(" ");
    const length = choices.lengths.includes(trait);
    if (value.trim() !== before || shaded || trait !== one.trait) {
      events.push({ kind: "SetValue", change: { trait, value: value.trim(), unit: length ? unit : null, modifiers: trait === "colour" ? shades : null }, at, seen });
    } else if (length && unit !== "mm") {
      events.push({ kind: "SetUnit", change: { unit }, at, seen });
    }
    if ((trait === "colour" || trait === "marking") && part !== (one.part ?? "")) events.push({ kind: "SetPart", change: { part: part || null }, at, seen });
    if (trait !== one.trait) events.push({ kind: "SetTrait", change: { trait }, at, seen });
    if (!events.length) events.push({ kind: "Confirm", at, seen });
    for (const event of events) if (event.kind === "SetValue") delete event.change.trait, event.trait = trait;
    done(events);
  });
  form.elements.value.focus();
  form.elements.value.select();
}

/** Note a value that was missed, at marked words or at a moment. */
export function add(where, done) {
  const form = ask("dlg-observation", (f) => {
    f.querySelector("h2").textContent = "Note a value";
    f.querySelector("[data-words]").textContent = where.text ? `“${where.text}”` : `at ${clock(where.start_ms)}`;
    f.elements.trait.onchange = () => fitTrait(f);
    f.elements.part.value = "bloom";
    fitTrait(f);
  }, (f) => {
    const trait = f.elements.trait.value;
    const parted = trait === "colour" || trait === "marking";
    done([{
      kind: "Add",
      change: {
        trait, value: f.elements.value.value.trim(),
        part: parted ? f.elements.part.value || null : null,
        unit: choices.lengths.includes(trait) ? f.elements.unit.value : null,
        modifiers: trait === "colour" ? list(f.elements.modifiers.value) : [],
      },
      at: { recording: where.recording, start_ms: where.start_ms, end_ms: where.end_ms },
    }]);
  });
  form.elements.trait.focus();
}

/** Which plant: {title, words, follow, times}; gives {title, follow, from, to}. */
export function plant({ title, words = "", follow = false, times = null }, done) {
  const form = ask("dlg-plant", (f) => {
    f.querySelector("[data-title]").textContent = title;
    f.querySelector("[data-words]").textContent = words;
    show(f, "follow", follow);
    show(f, "times", times !== null);
    if (times) { f.elements.from.value = clock(times[0]); f.elements.to.value = clock(times[1]); }
  }, (f) => {
    const answer = { title: f.elements.title.value.trim(), follow: follow && f.elements.follow.value === "all" };
    if (times) {
      // as long as the printed second is left as it is, the exact moment stands
      const read = (field, ms) => (f.elements[field].value === clock(ms) ? ms : moment(f.elements[field].value));
      answer.from = read("from", times[0]);
      answer.to = read("to", times[1]);
      if (!(answer.to > answer.from)) { say("A clip must end after it starts: write the times as 1:23"); return false; }
    }
    done(answer);
    return true;
  });
  form.elements.title.focus();
}

function moment(text) {
  return Math.round(text.split(":").reduce((sum, piece) => sum * 60 + Number(piece.replace(",", ".")), 0) * 1000);
}

export function day(now, done) {
  ask("dlg-day", (f) => { f.elements.day.value = now; }, (f) => done(f.elements.day.value));
}

export function mishearing(heard, done) {
  const form = ask("dlg-mishearing", (f) => { f.elements.heard.value = heard; }, (f) =>
    done({ heard: f.elements.heard.value.trim(), meant: f.elements.meant.value.trim() }));
  form.elements[heard ? "meant" : "heard"].focus();
}
