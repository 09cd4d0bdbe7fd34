// Recordings dropped or chosen: sent in pieces that can be taken up again, with what is done of each.

import { say, send } from "./page.js";

const PIECE = 4 * 1024 * 1024;
const uploads = new Map(); // name -> {sent, size, stopped, file}
const WORDS = { looking: "looking at it", listening: "listening", reading: "reading what was said", pictures: "choosing pictures", done: "done" };
const STATES = { waiting: "waiting its turn", stopped: "stopped; what was heard is kept", done: "done", failed: "" };
let list = document.getElementById("works");
let asking = null;
let opened = false;
const mine = new Set();

export function watchDrops() {
  let depth = 0;
  const veil = document.getElementById("drop");
  const files = (event) => [...(event.dataTransfer?.types ?? [])].includes("Files");
  addEventListener("dragenter", (event) => { if (files(event)) { depth += 1; veil.hidden = false; event.preventDefault(); } });
  addEventListener("dragover", (event) => { if (files(event)) event.preventDefault(); });
  addEventListener("dragleave", () => { depth -= 1; if (depth <= 0) { depth = 0; veil.hidden = true; } });
  addEventListener("drop", (event) => {
    if (!files(event)) return;
    event.preventDefault(); depth = 0; veil.hidden = true;
    take([...event.dataTransfer.files]);
  });
  document.getElementById("files")?.addEventListener("change", (event) => { take([...event.target.files]); event.target.value = ""; });
  document.addEventListener("click", async (event) => {
    const onward = event.target.closest("[data-go-on]");
    if (!onward) return;
    onward.disabled = true;
    try { const work = await send(`/recordings/${onward.dataset.goOn}/go-on`); mine.add(work.name); ask(); } catch (error) { say(error.message); }
  });
  if (list || document.body.dataset.page === "add") ask();
}

function take(files) {
  if (!list) {
    list = document.createElement("ol");
    list.id = "works"; list.className = "works";
    document.getElementById("main").prepend(list);
  }
  list.scrollIntoView({ block: "nearest" });
  for (const file of files) { mine.add(file.name); transfer(file); }
}

async function transfer(file) {
  const state = { sent: 0, size: file.size, stopped: false, file, told: "" };
  uploads.set(file.name, state);
  show();
  let waits = 0;
  try {
    const begun = await send("/uploads", { name: file.name, size: file.size, modified: file.lastModified });
    state.id = begun.upload;
    state.sent = begun.from;
    for (;;) {
      if (state.stopped) return;
      let answer;
      try {
        answer = await fetch(`/uploads/${begun.upload}?from=${state.sent}`, { method: "PUT", body: file.slice(state.sent, state.sent + PIECE) });
      } catch {
        // the network is away: wait, and go on from where the server is
        waits = Math.min(waits + 1, 6);
        state.told = "the connection is away; it goes on by itself";
        show();
        await new Promise((done) => setTimeout(done, 500 * 2 ** waits));
        try { state.sent = (await send("/uploads", { name: file.name, size: file.size, modified: file.lastModified })).from; } catch { /* still away */ }
        continue;
      }
      const found = await answer.json();
      if (answer.status === 409) { state.sent = found.from; if (found.busy) await new Promise((done) => setTimeout(done, 700)); continue; }
      if (!answer.ok) throw new Error(found.told);
      waits = 0; state.told = ""; state.sent = found.from;
      show();
      if (found.work) { mine.add(found.work.name); uploads.delete(file.name); break; }
    }
    ask();
  } catch (error) { state.told = error.message; state.failed = true; show(); }
}

async function ask() {
  clearTimeout(asking);
  try {
    const answer = await fetch("/works", { headers: { Accept: "application/json" } });
    show((await answer.json()).works);
  } catch { asking = setTimeout(ask, 4000); }
}

let works = [];
function show(found) {
  if (found) works = found;
  if (!list) return;
  const only = list.dataset.only;
  const rows = [];
  for (const [name, one] of uploads) rows.push(row({ key: `u${name}`, name, state: one.failed ? "failed" : one.stopped ? "stopped" : "working", told: one.told || `being copied: ${size(one.sent)} of ${size(one.size)}`, share: one.sent / one.size, upload: one }));
  for (const work of works) {
    if (only && work.state === "done") continue;
    if (only && work.recording !== only && !mine.has(work.name) && !(work.kind === "read" && work.state !== "done")) continue;
    if (document.body.dataset.page !== "add" && !only && !mine.has(work.name)) continue;
    rows.push(row({ key: work.id, name: work.name, state: work.state, told: told(work), share: work.progress?.share, work }));
  }
  list.replaceChildren(...rows);
  const busy = works.some((work) => work.state === "waiting" || work.state === "working");
  clearTimeout(asking);
  if (busy) asking = setTimeout(ask, 700);
  const finished = works.filter((work) => mine.has(work.name) && work.kind === "add");
  if (!opened && finished.length && !uploads.size && finished.every((work) => work.state === "done")) {
    opened = true;
    location.href = finished.length === 1 ? finished[0].page : "/review";
  }
  if (only && works.some((work) => work.kind === "read" && work.recording === only && work.state === "done" && seen.has(work.id))) location.reload();
  for (const work of works) if (work.state === "working") seen.add(work.id);
}
const seen = new Set();

function told(work) {
  if (work.state === "failed") return work.message;
  if (work.state !== "working") return work.message && work.state === "done" ? `done. ${work.message}` : STATES[work.state];
  const progress = work.progress;
  if (!progress) return "beginning";
  const parts = [WORDS[progress.stage] ?? progress.stage];
  if (progress.share) parts.push(`${Math.round(progress.share * 100)} %`);
  if (progress.left_s) parts.push(`about ${progress.left_s < 90 ? `${Math.round(progress.left_s)} s` : `${Math.round(progress.left_s / 60)} min`} left`);
  return parts.join(" · ");
}

function row({ name, state, told: words, share, work, upload }) {
  const item = document.createElement("li");
  item.className = `work ${state}`;
  const title = document.createElement("span");
  title.className = "name";
  title.textContent = name;
  const buttons = document.createElement("span");
  const button = (label, act) => { const one = document.createElement("button"); one.type = "button"; one.className = "quiet"; one.textContent = label; one.addEventListener("click", act); buttons.append(one); };
  if (upload) {
    if (state === "working") button("Stop", () => { upload.stopped = true; upload.told = "stopped"; show(); });
    else button("Go on", () => transfer(upload.file));
    if (state !== "working") button("Forget it", async () => { uploads.delete(name); if (upload.id) await fetch(`/uploads/${upload.id}`, { method: "DELETE" }); show(); });
  } else if (work) {
    if (state === "working" || state === "waiting") button("Stop", async () => { await send(`/works/${work.id}/cancel`); ask(); });
    if (state === "stopped" || state === "failed") button("Go on", async () => { await send(`/works/${work.id}/resume`); ask(); });
    if (state === "done" && work.page) { const link = document.createElement("a"); link.className = "button"; link.href = work.page; link.textContent = "Open"; buttons.append(link); }
  }
  const line = document.createElement("span");
  line.className = "small state";
  line.textContent = words;
  item.append(title, buttons, line);
  if (state === "working") {
    const bar = document.createElement("progress");
    bar.max = 1;
    bar.setAttribute("aria-label", `${name}: how far`);
    if (share) bar.value = share;
    item.append(bar);
  }
  return item;
}

function size(bytes) { return bytes < 1e6 ? `${Math.round(bytes / 1e3)} kB` : bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(2)} GB`; }
