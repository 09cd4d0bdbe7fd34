// The transcript: it follows the playing, a word is a place to go to, words can be marked.

import { chooseObservation, choose, state } from "./clips.js";
import { typing } from "./page.js";

let words = [];
let now = null;
let cursor = -1;
let anchor = -1;
let held = 0; // until when the reader's own scrolling is respected

export function begin() {
  collect();
  document.addEventListener("refreshed", collect);
  state.player?.addEventListener("time", (event) => follow(event.detail));
  document.addEventListener("click", (event) => {
    const word = event.target.closest(".w");
    if (!word || String(getSelection()) !== "") return;
    cursor = words.indexOf(word);
    go(word);
  });
  document.addEventListener("selectionchange", () => { setTimeout(marking, 60); });
  document.getElementById("transcript").addEventListener("wheel", () => { held = Date.now() + 4000; }, { passive: true });
  addEventListener("keydown", (event) => {
    if (!event.target.closest?.("#transcript") || typing(event)) return;
    const by = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: 10, ArrowUp: -10 }[event.key];
    if (by) { event.preventDefault(); move(by, event.shiftKey); }
    if (event.key === "Enter" && words[cursor]) { event.preventDefault(); go(words[cursor]); }
    if (event.key === "Escape") { anchor = -1; mark(null); }
  });
}

function collect() {
  words = [...document.querySelectorAll("#transcript .w")];
  now = null;
}

function go(word) {
  const recording = JSON.parse(document.querySelector("[data-recording]").dataset.recording);
  if (word.dataset.o) {
    const observation = document.getElementById(`o${word.dataset.o}`);
    if (observation) { chooseObservation(observation); observation.scrollIntoView({ block: "nearest" }); }
  } else {
    const line = word.closest("[data-clip-number]");
    if (line) { chooseObservation(null); choose(document.getElementById(`c${line.dataset.clipNumber}`), { scroll: !matchMedia("(max-width: 62rem)").matches }); }
  }
  state.player?.play({ ...recording, start: Number(word.dataset.s), end: null, told: "" });
}

function follow(ms) {
  let low = 0, high = words.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (Number(words[middle].dataset.s) <= ms) low = middle + 1; else high = middle;
  }
  const word = words[low - 1];
  if (word === now) return;
  now?.classList.remove("now");
  now = word ?? null;
  if (!word) return;
  word.classList.add("now");
  if (!state.player.playing || Date.now() < held) return;
  const box = document.getElementById("transcript");
  const at = word.getBoundingClientRect(), frame = box.getBoundingClientRect();
  if (at.top < frame.top + 30 || at.bottom > frame.bottom - 50) box.scrollTop += at.top - frame.top - frame.height / 3;
}

function move(by, marking) {
  if (!words.length) return;
  if (marking && anchor < 0) anchor = Math.max(0, cursor);
  if (!marking) anchor = -1;
  words[cursor]?.classList.remove("cursor");
  cursor = Math.min(words.length - 1, Math.max(0, cursor + by));
  words[cursor].classList.add("cursor");
  words[cursor].scrollIntoView({ block: "nearest" });
  if (anchor >= 0) mark(words.slice(Math.min(anchor, cursor), Math.max(anchor, cursor) + 1));
  else mark(null);
}

/** Words marked with the mouse or a finger. */
function marking() {
  if (anchor >= 0 || document.querySelector("dialog[open]")) return;
  const selection = getSelection();
  if (selection.isCollapsed || !selection.rangeCount) { if (document.activeElement?.closest?.("#wordbar") == null) mark(null); return; }
  const range = selection.getRangeAt(0);
  const box = document.getElementById("transcript");
  if (!box.contains(range.commonAncestorContainer)) return;
  mark(words.filter((word) => range.intersectsNode(word)));
}

function mark(chosen) {
  for (const word of document.querySelectorAll(".w.marked")) word.classList.remove("marked");
  const bar = document.getElementById("wordbar");
  bar.hidden = !chosen?.length;
  if (!chosen?.length) { state.words = null; return; }
  for (const word of chosen) word.classList.add("marked");
  const { recording, kind, title } = JSON.parse(document.querySelector("[data-recording]").dataset.recording);
  state.words = {
    recording, kind, title,
    start_ms: Number(chosen[0].dataset.s),
    end_ms: Math.max(Number(chosen[0].dataset.s) + 1, Number(chosen.at(-1).dataset.e)),
    text: chosen.map((word) => word.textContent).join(" "),
  };
}
